// How many spokes are planned, and what set the number.
#pragma once

#include "plan/plan.hpp"

namespace plan {

struct TargetFinding {
    std::optional<Target> target{};  // none: refused, the notes say why
    std::vector<Note> notes{};
    bool operator==(const TargetFinding&) const = default;
};

/// `ladder` is empty where no depth may be planned. `from_centre`: the share is capped at 70 %.
struct Footing {
    std::vector<Rung> ladder{};
    std::optional<Wall> wall{};
    bool from_centre = false;
    bool operator==(const Footing&) const = default;
};

TargetFinding target_from(const Inputs& inputs, const Footing& footing);

}  // namespace plan
