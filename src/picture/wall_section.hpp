// A section through the cornea at the thinnest place, with the blade, a tick a spoke, the plan line, and the band in
// which the blade may be: a picture to glance at, to scale in depth.
#pragma once

#include "measure/length.hpp"
#include "picture/lettering.hpp"

#include <optional>
#include <string>
#include <vector>

namespace picture {

struct WallSection {
    std::optional<measure::Length> wall{};  // thinnest; none: no depth is claimed, the section is left open below
    measure::Length advance{};
    int position = 0;  // spokes below zero, negative while raised
    std::optional<int> planned{};
    std::optional<measure::Length> band_low{}, band_high{};  // where the blade may be, 95 %; none: not shown
    std::string surface_label{};
    std::vector<std::string> foot{};  // lines under the section, "thinnest 612 µm, at 7:30"
};

Shapes draw(const WallSection& section, const Box& box, const Lettering& lettering);

}  // namespace picture
