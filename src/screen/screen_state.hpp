// What the screen itself remembers and may lose in a crash: which page stands open, where a list was turned to, what was
// half typed. Never on the ledger, never read by the guide.
#pragma once

#include "screen/model.hpp"

#include <map>
#include <string>

namespace screen {

/// What is looked at on the Plan view, and what was changed there and is not in use yet.
struct PlanPage {
    std::string column{"depth"};  // "measured" | "depth" | "sizes"
    std::string asked{};          // the figure whose panel stands open; "reading-3" for a reading
    int from = 0;                 // the first row of the panel
    int turned = 0;               // rungs by which the ladder is turned on
    int readings_from = 0;
    std::optional<plan::Inputs> changed{};
    std::optional<std::size_t> doubted{};  // a reading, from 0: what if it is wrong by so much
    int doubted_um = 0;
    bool operator==(const PlanPage&) const = default;
};

/// What is looked at on the pages of past cases, and which cases their figures are of.
struct PastPage {
    std::string
        page{};  // "times" | "cuts" | "reach" | "otherwise" | "list" | "filter" | "reason"; of one case "record" | "clocks" | "marks"
    std::optional<eye::Side> side{};
    std::optional<plan::Reason> reason{};
    bool year = false;                    // those of the last twelve months alone
    bool invented = false;                // rehearsals instead of cases
    std::string under{};                  // the page that the filter was turned to from
    std::string one{};                    // the case that is looked at again
    std::size_t from = 0, list_from = 0;  // the first row or choice; that of the list while one case is looked at
    bool operator==(const PastPage&) const = default;
};

struct ScreenState {
    std::string page{};      // "" the Table view | "cases" | "new" | "past" | "departures" | "other-mark" | "redo" | "redo-why" |
                             // "wipe" | "phase-times" | "reason" | "skip" | "ring" | "end" | "count-differs" | "count-seen" | "count-by" |
                             // "count-record" | "count-initials"
    std::string argument{};  // what the page is about
    std::map<std::string, std::string> draft{};   // the new case, field by field, as typed
    std::map<std::string, std::string> habits{};  // of a surgeon: what a new case begins with
    std::string field{};                          // the field that is being filled
    bool turned = false;                          // its keypad, to the other side
    PlanPage plan{};                              // of the pages "plan", "plan-reading" and "plan-why"
    PastPage past{};                              // of the page "past"
    bool operator==(const ScreenState&) const = default;
};

/// What is typed on the page "count-initials", in the draft.
inline constexpr auto initials_field = "initials";

/// What a target does to the screen. Pages of the form: "field" picks a field, "key" types a letter, "turn" turns the keypad over, "erase"
/// takes the last one back, "pick" puts in a choice; every other page is turned to.
ScreenState after(ScreenState screen, const Show& show);

}  // namespace screen
