// Host and donor diameters on two rulers of one scale, one over the other, so that the oversize is seen as a length: a tick a
// size that the profile holds, the chosen one marked, and whether it is held.
#pragma once

#include "measure/length.hpp"
#include "picture/lettering.hpp"

#include <string>
#include <vector>

namespace picture {

struct SizeRuler {
    std::string label{}, value{};  // "Host", "7.50 mm"
    std::string held{};            // "in stock", or what is wrong
    std::string short_held{};      // the same where there is less room
    bool is_held = true;
    measure::Length chosen{};
    std::vector<measure::Length> sizes{};
    bool operator==(const SizeRuler&) const = default;
};

struct SizeRulers {
    SizeRuler host{}, donor{};
    bool operator==(const SizeRulers&) const = default;
};

/// The host's ruler fills the upper half of the box, the donor's the lower.
Shapes draw(const SizeRulers& rulers, const Box& box, const Lettering& lettering);

}  // namespace picture
