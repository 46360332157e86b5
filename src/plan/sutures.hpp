// The order of the sutures and the chord between neighbours.
// First, then opposite, then the pair at right angles, then every gap halved, each followed by its opposite: the second
// suture, 180 degrees from the first, matters most (Ophthalmologe 2005;102:1128-36).
#pragma once

#include "plan/plan.hpp"

namespace plan {

/// The most that a case may ask for, and so the most that is said.
inline constexpr int most_interrupted = 32, most_bites = 64;

struct Sutures {
    Length spacing{};  // host D sin(pi / N), of the interrupted sutures, or of one running suture alone
    std::vector<Suture> order{};
    std::optional<Running> running{};
    std::vector<Note> notes{};
    bool operator==(const Sutures&) const = default;
};

Sutures sutures_from(const Inputs& inputs);

/// The bites of one running suture in the order in which they are sewn.
struct RunningPath {
    bool clockwise = true;
    std::vector<Angle> bites{};
    bool operator==(const RunningPath&) const = default;
};

/// One path a running suture. Beside interrupted sutures the bites go between them. The second of two goes the other way
/// round, its bites half-way between those of the first. Usual practice, no source.
std::vector<RunningPath> running_paths(const Pattern& pattern, const Running& running);

/// Places 0 to count - 1, clockwise from the first, in the order in which they are sewn; `count` even.
std::vector<int> pair_order(int count);

}  // namespace plan
