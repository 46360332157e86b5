// The blade ladder: what each spoke is expected to leave, and the chance that the blade has come through.
//
// The blade's real reach over its nominal travel scatters: factor m + k t, t Student's with n - 1 degrees of freedom,
// k = sd sqrt(1 + 1/n), from n measured cuts (a prediction of one more cut, mean and scatter both unknown). The thinnest
// place has one error u common to the whole circle. With u = 0 and the study's 1.046, 0.082, 11 the chance is
// 0.060, 1.92, 7.93, 23.23, 46.99 % at 70, 80, 85, 90, 95 % of the wall.
#pragma once

#include "plan/plan.hpp"

namespace plan {

struct WallFigures {
    Length thinnest{};
    double u_um = 0;  // one standard deviation
    bool operator==(const WallFigures&) const = default;
};

/// What is shown ends here; what is planned does not.
inline constexpr int shown_rungs = 60;

/// From 0 to the first rung whose chance is over 0.999. With an advance of 10 um or more that is within 400 rungs.
std::vector<Rung> ladder(const instrument::Trephine& trephine, const WallFigures& wall);

/// The rung of a plan that has a ladder, also of a number of spokes that lies beyond what the ladder shows; none without one.
std::optional<Rung> rung_at(const Plan& plan, const instrument::Trephine& trephine, int spoke);

/// Chance that the blade is through at the thinnest place, within 1e-9; 0 at or above zero.
double entry_chance(const instrument::Reach& reach, const WallFigures& wall, Length travelled);

/// Two cuts are the least that show a scatter.
bool usable(const instrument::Reach& reach);

}  // namespace plan
