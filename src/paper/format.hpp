// Figures as text on paper: how many places they have is decided here, their decimal sign by the words. Pure.
#pragma once

#include "guide/state.hpp"
#include "paper/words.hpp"

#include <string>

namespace paper {

/// "7.50 mm", as sizes are spoken of.
std::string size_text(measure::Length size, const Words& words);
/// "+0.25 mm"
std::string oversize_text(measure::Length oversize, const Words& words);
/// "62.5": as many places as there are.
std::string short_text(double value, const Words& words);
/// What a note of the plan says.
std::string note_text(const plan::Note& note, const Words& words);
/// "618", whole micrometres.
std::string whole_um(measure::Length length);
/// "14:05", from an hour on "1:14:05"; "about" before it where it is not exact.
std::string duration_text(const guide::ClockReading& reading, const Words& words);
/// "16 interrupted"
std::string pattern_text(const plan::Pattern& pattern, const Words& words);
/// "under 1 in 100"
std::string chance_text(double chance, const Words& words);
/// "7:30", "12": as hours are said.
std::string hour_text(int centideg);
/// "mark 11", "between 2 and 3"; empty where the ring leaves no marks.
std::string mark_text(int centideg, const plan::Inputs& inputs, const Words& words);
/// When a step was done, in a sentence of the words with one fill-in; "not recorded" when it was skipped or is not done.
std::string step_text(const guide::CaseState& state, const guide::StepId& id, const char* what, const Words& words);
std::string number(auto value) { return std::to_string(value); }

}  // namespace paper
