// Which readings the thickness on the cut rests on, and whether a depth may be planned from it.
// The figures themselves are computed in eye/wall.hpp.
#pragma once

#include "eye/surface.hpp"
#include "plan/plan.hpp"

#include <string>

namespace plan {

/// What a reason for no depth is: the readings cannot carry one. The code of the note that says so.
struct WallFinding {
    std::optional<Wall> wall{};
    double exact_u_um = 0;                   // unrounded, for the ladder
    std::vector<double> u_round_um{};        // one standard deviation at each whole degree; empty without a wall
    std::optional<std::string> depth_bar{};  // why no depth is planned; none: it may be
    std::vector<std::string> bar_values{};   // what the words of that note take
    std::vector<Note> notes{};
    bool operator==(const WallFinding&) const = default;
};

WallFinding wall_from(const CaseFile& file);

/// The thickness surface of nine or more readings on two or more rings, also where the plan rests on the circle: for a
/// picture of it. None where the readings are no map, or carry none as far as the cut.
std::optional<eye::Surface> surface_from(const CaseFile& file);

/// Standard deviation of one reading by how it was taken.
Length reading_sd(Method method);

}  // namespace plan
