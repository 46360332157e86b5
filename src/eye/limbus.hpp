// How far the cut circle stays inside the limbus.
// The limbus is an ellipse about the map's centre, its axes the horizontal and vertical white-to-white; the cut circle may
// lie off that centre. Frame of frame.hpp: x to 3 o'clock, y to 12. What distance is too small is not decided here.
#pragma once

#include "measure/length.hpp"

namespace eye {

using measure::Length;

struct Limbus {
    Length horizontal{}, vertical{};  // white-to-white, whole diameters
    bool operator==(const Limbus&) const = default;
};

struct Cut {
    Length diameter{};
    Length x{}, y{};  // centre, from the map's centre
    bool operator==(const Cut&) const = default;
};

struct Clearance {
    Length least{};  // to the nearest micrometre; 0 or less: the cut reaches the limbus
    int deg = 0;     // the ray of the least, lowest degree where several are equal
    bool operator==(const Clearance&) const = default;
};

/// The least of 360 rays from the cut's centre, one a whole degree: distance to the limbus minus the cut's radius.
/// Both diameters of the limbus are above 0.
Clearance clearance(const Limbus& limbus, const Cut& cut);

}  // namespace eye
