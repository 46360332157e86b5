#include "plan_page.hpp"

#include "guide/procedure.hpp"
#include "screen/pages.hpp"

namespace graftside {
namespace {

using Use = screen::PlanSeen::Use;

Use use_of(const guide::CaseState& state) {
    if (state.closed) return Use::Over;
    if (state.plan) return Use::Change;
    const guide::Step* step = guide::current_step(state);
    return step != nullptr && step->closes == guide::Closes::Plan ? Use::Agree : Use::NotYet;
}

/// What is looked at is worked out anew only where it differs from the base.
void look(screen::PlanSeen& seen, const screen::PlanPage& page) {
    seen.inputs = screen::looked_at(seen.base, page);
    seen.plan = seen.inputs == seen.base ? seen.base_plan : plan::make(seen.inputs);
}

}  // namespace

screen::PlanSeen plan_of(const guide::CaseState& state, const screen::PlanPage& page) {
    screen::PlanSeen seen{.use = use_of(state), .base = guide::inputs_in_use(state)};
    // A plan in use is shown as it was agreed, never worked out anew by another formula.
    seen.base_plan = state.plan && state.moved == 0 ? *state.plan : plan::make(seen.base);
    look(seen, page);
    return seen;
}

screen::PlanSeen plan_of(const plan::Inputs& drafted, const screen::PlanPage& page) {
    screen::PlanSeen seen{.use = Use::Begin, .base = drafted, .base_plan = plan::make(drafted)};
    look(seen, page);
    return seen;
}

screen::Strip strip_of(const plan::Inputs& drafted, const screen::Around& around, const screen::Words& words) {
    return {.eye = words("strip.eye_unknown"),
            .reference = words("strip.case", {drafted.file.reference}),
            .time = screen::time_of_day(around, words)};
}

}  // namespace graftside
