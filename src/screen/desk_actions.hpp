// The actions of each page of the Desk.
#pragma once

#include "screen/desk.hpp"

namespace screen {

/// A page of the Desk: what stands over its actions, the actions, and the field if one is open.
struct DeskPage {
    std::string heading{}, line{};
    std::vector<Target> actions{};
    Keys keys{};
    std::optional<Typed> field{};
};

/// Before a case stands open.
DeskPage empty_desk_page(const DeskState& desk, const Around& around, const Words& words);
/// What a keyboard would do, under a finger: digits for a count, names for who saw it, letters for a note.
Keys desk_keys(const guide::CaseState& state, const DeskState& desk, const Words& words);
/// A target of the Desk with its key; and the one that leads back.
Target desk_keyed(std::string key, Target target);
Target desk_back(const Words& words);

/// A step that one key can close; any other is done on the Table view or by what happens.
bool desk_closes(const guide::Step& step);

/// The station's own, whatever became of the case: the screens and the voice.
void desk_add_station(std::vector<Target>& actions, const Around& around, const Words& words);
/// "sound"; and "screen", what the screens themselves do: the light, and the lock for wiping the Table view's.
DeskPage desk_sound_page(const Around& around, const Words& words);
DeskPage desk_screen_page(const guide::CaseState& state, const Around& around, const Words& words);

/// "reader": the next scan is a test of the reader's keyboard, and no part of a record.
Target desk_reader_target(const Words& words);
DeskPage desk_reader_page(const DeskState& desk, const Words& words);

DeskPage desk_page(const guide::CaseState& state, const DeskState& desk, const Around& around, const Words& words);

/// What was changed by word of mouth and which times were corrected, each with its time of day, newest first.
std::vector<Row> desk_changes(const guide::CaseState& state, const Words& words);

/// "plan": the surgeon's number of spokes is typed, what it comes to stands beside it; "plan-why": the reason puts it in use.
DeskPage desk_spokes_page(const guide::CaseState& state, const DeskState& desk, const Words& words);
DeskPage desk_plan_why_page(const guide::CaseState& state, const DeskState& desk, const Words& words);

}  // namespace screen
