// The list of cases: take one up, begin a new one from a file or by touch, rehearse on an invented one.
#pragma once

#include "screen/screen_state.hpp"
#include "screen/words.hpp"

#include <string>
#include <vector>

namespace screen {

struct CaseLine {
    std::string reference{}, when{};
    bool closed = false, sealed = false;
};
struct CaseFileLine {
    std::string path{}, name{};
    bool invented = false;
};

struct CaseList {
    std::vector<CaseLine> cases{};        // newest first
    std::vector<CaseFileLine> files{};    // case files that wait in the unit's folder, then the invented ones
    std::string folder{};                 // where files are looked for
    std::vector<std::string> problems{};  // of the last file that was tried
    bool dimmed = false, alone = false, may_be_alone = true, has_desk = false;
    bool under_way = false;  // a case stands open and is not over
};

/// Pages by `screen.argument`: "" the cases; "files" the case files; "set-up" what is chosen before draping.
PickModel cases(const CaseList& list, const ScreenState& screen, const Words& words);

}  // namespace screen
