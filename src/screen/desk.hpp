// The Desk view: keyboard first, mouse second. Each action bears its key and does the same by a click. What is done here is the
// circulating nurse's and comes from the desk; a typed letter or digit is an action only where it stands beside one, so that
// nothing typed ever counts a spoke by chance: that is the space bar's alone, while the desk holds the count.
#pragma once

#include "screen/pages.hpp"

#include <string>
#include <utility>
#include <vector>

namespace screen {

/// What the Desk remembers and may lose in a crash.
struct DeskState {
    std::string page{};      // "" | "note" | "clocks" | "clock" | "counts" | "count" | "seen" | "who" | "by" | "initials" | "otherwise" |
                             // "sound" | "screen" | "plan" | "plan-why" | "papers" | "reader" | those of desk_pages.hpp
    std::string argument{};  // what the page is about: a clock, an item, "ITEM=NUMBER", spokes, what a reader's test came to
    std::string typed{};     // in a field
    std::vector<std::pair<std::string, std::string>> told{};  // what the machine answered, by what was asked for
    std::size_t turned = 0;                                   // pages by which a long list of actions is turned on
    bool operator==(const DeskState&) const = default;
};

/// Whether letters go into a field, and not to actions.
bool has_field(const DeskState& desk);
/// What a target of the Desk does to the Desk alone.
DeskState turned_to(const Show& show);
/// What a key under a finger does to the field: Show "key" with a letter, "erase", or "put" with all of it.
DeskState keyed_in(DeskState desk, const Show& show);
/// A letter more or, for U+0008, one less; bounded.
DeskState typed(DeskState desk, char32_t letter);

DeskModel desk(const guide::CaseState& state, const DeskState& desk, const Around& around, const Words& words);
/// Before a case stands open.
DeskModel empty_desk(const DeskState& desk, const Around& around, const Words& words);

}  // namespace screen
