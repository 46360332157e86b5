// Parts that the pages over past cases share.
#pragma once

#include "screen/past_view.hpp"

#include <string>

namespace screen {

using PastRow = PastModel::Row;

void times_page(PastModel& made, const PastSeen& seen, const Words& words);
void cuts_page(PastModel& made, const PastSeen& seen, const Words& words);
void reach_page(PastModel& made, const PastSeen& seen, const Words& words);
void otherwise_page(PastModel& made, const PastSeen& seen, const Words& words);
/// One case again: its record with the clock face, its clocks, its marks.
void one_case_page(PastModel& made, const guide::CaseState& state, const PastPage& page, const Words& words);

PastRow heading(std::string text);
PastRow sentence(std::string text);
/// Minutes from 0 on, with few ticks.
picture::Axis minutes_axis(double most, const Words& words);
/// The title of a clock that the program knows by itself; its id otherwise.
std::string clock_title(const std::string& id, const Words& words);
std::string end_text(guide::CaseEnd end, const Words& words);
std::string reason_text(plan::Reason reason, const Words& words);

}  // namespace screen
