// A closed range of one quantity.
#pragma once

#include "measure/length.hpp"

namespace measure {

struct Interval {
    Length low{}, high{};
    bool operator==(const Interval&) const = default;
};

}  // namespace measure
