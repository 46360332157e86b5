#include "measure/length.hpp"

#include <cmath>

namespace measure {

Length from_um(double um) { return nm(std::llround(um * 1e3)); }

Length from_um_tenths(double um) { return nm(100 * std::llround(um * 10.0)); }

Length from_mm(double mm) { return nm(std::llround(mm * 1e6)); }

}  // namespace measure
