// Thickness round the cut circle, unrolled clockwise from 12 o'clock, with the band in which it lies, the readings on it and
// the thinnest place. The figures are made elsewhere.
#pragma once

#include "picture/lettering.hpp"

#include <optional>
#include <string>
#include <vector>

namespace picture {

struct WallProfile {
    struct Place {
        double deg = 0, um = 0;  // as one faces the eye, 0 at 3 o'clock, counter-clockwise
        bool operator==(const Place&) const = default;
    };
    std::vector<double> um{}, half_um{};  // by whole degree, 360 each; half the width of the 95 % band
    std::vector<Place> measured{};
    std::optional<Place> thinnest{};
    std::string title{}, unit{};  // "Round the circle from 12, µm", "µm"
    bool operator==(const WallProfile&) const = default;
};

/// Lower than this it cannot be read, and nothing of it is drawn.
double least_height(const Lettering& lettering);
/// Where a degree of the circle stands from the left, 0 to 1.
double along(double deg);

Shapes draw(const WallProfile& profile, const Box& box, const Lettering& lettering);

}  // namespace picture
