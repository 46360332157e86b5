// A case beside the unit's own past cases: when it may end, how long its parts usually take, what the debrief looks at. Usual is the
// middle half of the cases that were done; under five of them nothing is called usual. No judgement of people.
#pragma once

#include "screen/model.hpp"

namespace screen {

/// On the Desk: the present phase with what is usual, and the expected end with its spread. Empty where too little is known.
std::vector<Row> expected_rows(const guide::CaseState& state, const Around& around, const Words& words);
/// Count differences that were recorded, with what was done about them, as the sheet says it.
std::vector<std::string> recorded_differences(const guide::CaseState& state, const Words& words);
/// On the card of the debrief: what went otherwise, depth and own reach, open sky against what is usual.
std::vector<Row> debrief_rows(const guide::CaseState& state, const Around& around, const Words& words);
/// From there the page "phase-times": every phase against what is usual.
Target phase_times_target(const Words& words);
void phase_times_page(PickModel& made, const guide::CaseState& state, const Around& around, const Words& words);

}  // namespace screen
