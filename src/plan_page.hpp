// The Plan view between the case and the glass: what it is made from, and the case that is begun from it. Knows no window and
// writes nothing: what is agreed goes the way of every intent.
#pragma once

#include "guide/state.hpp"
#include "screen/plan_view.hpp"

namespace graftside {

/// The plan of an open case as it is looked at on a page of the Plan view.
screen::PlanSeen plan_of(const guide::CaseState& state, const screen::PlanPage& page);
/// The plan of a case that has not begun.
screen::PlanSeen plan_of(const plan::Inputs& drafted, const screen::PlanPage& page);
/// The strip over the plan of a case that has not begun: its side is not entered yet.
screen::Strip strip_of(const plan::Inputs& drafted, const screen::Around& around, const screen::Words& words);

}  // namespace graftside
