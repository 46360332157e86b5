// What the screen itself remembers and may lose in a crash: which page stands open, where a list was turned to, what was
// half typed. Never on the ledger, never read by the guide.
#pragma once

#include "screen/model.hpp"

#include <map>
#include <string>

namespace screen {

struct ScreenState {
    std::string page{};      // "" the Table view | "cases" | "new" | "departures" | "other-mark" | "redo" | "redo-why" |
                             // "reason" | "skip" | "ring" | "end" | "count-differs" | "count-seen" | "count-by" | "count-record"
    std::string argument{};  // what the page is about
    std::map<std::string, std::string> draft{};  // the new case, field by field, as typed
    std::string field{};                         // the field that is being filled
    bool operator==(const ScreenState&) const = default;
};

/// What a target does to the screen. Pages of the form: "field" picks a field, "key" types a letter, "erase" takes the last
/// one back, "pick" puts in a choice; every other page is turned to.
ScreenState after(ScreenState screen, const Show& show);

}  // namespace screen
