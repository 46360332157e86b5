// The two cutting instruments as their profiles state them; every figure is the user's to set from the leaflet in the pack.
#pragma once

#include "measure/angle.hpp"
#include "measure/length.hpp"

#include <string>
#include <vector>

namespace instrument {

using measure::Angle;
using measure::Length;

enum class Turn { Clockwise, CounterClockwise };  // as seen from above

/// Real reach over nominal travel: mean and sample SD from n cuts, dimensionless.
struct Reach {
    double mean = 0;
    double sd = 0;
    int n = 0;
    std::string source{};
    bool operator==(const Reach&) const = default;
};

struct Trephine {
    std::string id{};
    std::string name{};
    Length advance{};  // blade travel a spoke; required, no hidden default
    int spokes_per_turn = 0;
    Turn lower = Turn::Clockwise;
    int raise = 0;  // spokes above zero before the ring is seated
    int marks = 0;
    Angle mark_offset{};
    std::vector<Length> diameters{};
    bool suction = true;
    Reach reach{};
    bool operator==(const Trephine&) const = default;
};

struct Punch {
    std::string id{};
    std::string name{};
    std::vector<Length> diameters{};
    int dots = 4;  // ink dots on the donor, evenly spaced, the first at 12 o'clock
    bool vacuum = true;
    bool operator==(const Punch&) const = default;
};

}  // namespace instrument
