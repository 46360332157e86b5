// What the pages of the Desk are made of, and those pages that stand in files of their own. Each of these gives none where the page
// that is asked for is not its own.
#pragma once

#include "guide/timed.hpp"
#include "screen/desk_actions.hpp"

#include <cstdint>
#include <optional>

namespace screen {

Target desk_act(std::string key, std::string id, std::string label, std::vector<guide::Intent> intents);
Target desk_open(std::string key, std::string id, std::string label, Show show);
/// 1 to 9, then letters that are no action of a list.
std::string desk_nth_key(std::size_t i);
Target desk_held(Target target, const Words& words);
/// A field: Enter does what the first action says, with what was typed; while nothing is typed it is dead.
DeskPage desk_field_page(const std::string& label, const std::string& text, std::string line, Target enter, const Words& words);

/// "tissue", "scans", "scan", "aside", "contact", "overrule", "label", "tissue-said", "tell".
std::optional<DeskPage> desk_tissue_page(const guide::CaseState& state, const DeskState& desk, const Words& words);
/// Over the actions, while something stands that was scanned and does not fit: which item, and why.
void desk_say_what_stands(DeskPage& made, const guide::CaseState& state, const Words& words);
/// "depth", "depth-how", "depth-words", "knots", "sutures", "material", "lot", "specimens", "specimen", "specimen-side", "bank",
/// "bank-text", "bank-words"; and what leads to them.
std::optional<DeskPage> desk_told_page(const guide::CaseState& state, const DeskState& desk, const Words& words);
std::vector<Target> desk_told_actions(const guide::CaseState& state, const Words& words);
/// A pack that may be suture material: no instrument's, nothing against it, not named yet.
bool may_name_sutures(const guide::CaseState& state, const guide::ScanSeen& scan);
/// "counts", "count", "seen", "who", "by", "initials".
std::optional<DeskPage> desk_counts_page(const guide::CaseState& state, const DeskState& desk, const Around& around, const Words& words);
/// What a corrected moment is called.
std::string timed_text(const guide::CaseState& state, const guide::Timed& one, const Words& words);
/// "times", "time", "time-why".
std::optional<DeskPage> desk_times_page(const guide::CaseState& state, const DeskState& desk, const Words& words);
/// The moment with this time of the day, in milliseconds, that lies nearest to what was written: over midnight too.
std::int64_t nearest_utc_ms(const measure::Instant& written, std::int64_t of_day_ms);
/// "papers": its argument is the folder.
DeskPage desk_papers_page(const guide::CaseState& state, const DeskState& desk, const Words& words);

}  // namespace screen
