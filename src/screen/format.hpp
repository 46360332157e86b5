// Figures as text, and the placeholders of the procedure filled. Pure; how many places a figure has is decided here, its decimal
// sign by the words: a zero before it, its unit apart, never a trailing figure that is not meant.
#pragma once

#include "guide/state.hpp"
#include "screen/words.hpp"

#include <cstdint>
#include <string>

namespace screen {

/// "01:42", from an hour on "1:02:44"; "about " before it when it is not exact.
std::string reading_text(const guide::ClockReading& reading, const Words& words);
/// "12.7": a duration in minutes, for where "min" stands beside; minutes and seconds would be read as a time of day.
std::string minutes_text(double seconds, const Words& words);
/// The same of a clock: "about 12.7" when it is not exact.
std::string minutes_text(const guide::ClockReading& reading, const Words& words);
/// "1.046": depth over travel.
std::string reach_text(double reach, const Words& words);
/// The whole number a text begins with; 0 if it begins with none.
std::int64_t number_in(const std::string& text);
/// "7.50": millimetres as sizes are spoken of.
std::string size_text(measure::Length size, const Words& words);
/// "+0.25": by how much the donor is larger.
std::string oversize_text(measure::Length oversize, const Words& words);
/// "62.5": as many places as there are.
std::string short_text(double value, const Words& words);
/// What a note of the plan says.
/// "Saugtrepan": an instrument by the id of its profile; one that the words do not know stands with its id.
std::string instrument_text(const std::string& id, const Words& words);
std::string note_text(const plan::Note& note, const Words& words);
/// Where a figure comes from: what is no publication in the reader's language, a publication as it is.
std::string source_text(const std::string& source, const Words& words);
/// "612 µm", whole.
std::string um_text(measure::Length length);
/// "16 interrupted" in words.
std::string pattern_text(const plan::Pattern& pattern, const Words& words);
/// "3 to zero, then 8" or "3 to zero, then to entry".
std::string spokes_text(const plan::Target& target, int moved, const Words& words);
/// "under 1 in 100".
std::string chance_text(double chance, const Words& words);
/// "spare trephine · sutures": a list whose lines break after a dot only, never within an item.
std::string listed(const std::vector<std::string>& texts);
/// "Needles"; the id where the unit counts no such thing.
std::string count_title(const guide::CaseState& state, const guide::ItemId& item);
/// A text of the procedure with {eye} {host} {donor} {raise} {planned} {sutures} {lower} {aim} filled from the state.
std::string filled(std::string text, const guide::CaseState& state, const Words& words);

}  // namespace screen
