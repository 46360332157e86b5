// The Desk's page for the handover: which files may be written of the case, where they go, and which were written. Writing them is
// the program's.
#include "screen/desk_pages.hpp"

#include <utility>

namespace screen {

DeskPage desk_papers_page(const guide::CaseState& state, const DeskState& desk, const Words& words) {
    DeskPage made{.heading = words("papers.title"), .line = words(state.closed ? "papers.line" : "papers.open_line", {desk.argument})};
    constexpr std::pair<const char*, const char*> files[] = {{"P", "pdf"}, {"F", "fhir"}, {"C", "csv"}, {"J", "json"}};
    for (const auto& one : files) {
        made.actions.push_back(desk_open(one.first, std::string("hand-over-") + one.second, words(std::string("papers.") + one.second),
                                         {.page = "hand-over", .argument = one.second}));
        for (const auto& written : desk.told)
            if (written.first == one.second) made.actions.back().line = written.second;
    }
    made.actions.push_back(desk_back(words));
    return made;
}

}  // namespace screen
