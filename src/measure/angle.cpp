#include "measure/angle.hpp"

#include <cmath>

namespace measure {

Angle from_deg(double deg) { return centideg(static_cast<int>(std::lround(std::fmod(deg, 360.0) * 100.0))); }

}  // namespace measure
