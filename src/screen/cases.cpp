#include "screen/cases.hpp"

#include <algorithm>

namespace screen {
namespace {

constexpr std::size_t a_page = 8;

Target row(std::string id, std::string label, std::string line, Show show) {
    Target made{.id = std::move(id), .label = std::move(label), .line = std::move(line), .act = std::move(show)};
    made.weight = Weight::Elsewhere;
    return made;
}

std::string standing(const CaseLine& line, const Words& words) {
    if (line.sealed) return words("list.locked", {line.when});
    return words(line.closed ? "list.closed" : "list.open", {line.when});
}

/// The part of a long list that is turned to, and the target that turns further.
void turn_pages(PickModel& made, std::vector<Target> all, const std::string& which, const std::string& from, const Words& words) {
    const std::size_t first = std::min(all.size(), from.empty() ? 0 : static_cast<std::size_t>(std::stoul(from)));
    const std::size_t last = std::min(all.size(), first + a_page);
    made.choices.assign(all.begin() + static_cast<std::ptrdiff_t>(first), all.begin() + static_cast<std::ptrdiff_t>(last));
    if (all.size() <= a_page) return;
    const std::size_t next = last < all.size() ? last : 0;
    made.foot.push_back(row("more", words("list.more"),
                            words("list.of", {std::to_string(first + 1), std::to_string(last), std::to_string(all.size())}),
                            {.page = "cases", .argument = which + std::to_string(next)}));
}

/// What is chosen before draping.
void set_up_page(PickModel& made, const CaseList& list, const Words& words) {
    made.title = words("set_up.title");
    made.lines = {words("set_up.line")};
    Target draped = row("draped", words("set_up.draped"), words("set_up.draped_line"), {.page = "draped"});
    Target undraped = row("undraped", words("set_up.undraped"), words("set_up.undraped_line"), {.page = "undraped"});
    (list.alone ? undraped : draped).look = Look::Filled;
    if (!list.may_be_alone) undraped.why_not = words(list.has_desk ? "set_up.has_desk" : "set_up.pedal_types");
    made.choices = {std::move(draped), std::move(undraped),
                    row("measure", words("set_up.measure"), words("set_up.measure_line"), {.page = "measure"}),
                    row("dim", words(list.dimmed ? "set_up.bright" : "set_up.dim"), words("set_up.dim_line"), {.page = "dim"})};
    made.foot = {row("back", words("page.back"), "", {.page = "cases"})};
}

}  // namespace

PickModel cases(const CaseList& list, const ScreenState& screen, const Words& words) {
    PickModel made{};
    std::vector<Target> all{};
    if (screen.argument == "set-up") {
        set_up_page(made, list, words);
    } else if (screen.argument.starts_with("files")) {
        made.title = words("list.files");
        made.lines = {words("list.files_line", {list.folder})};
        for (const CaseFileLine& file : list.files) {
            all.push_back(row("file-" + file.name, file.name, words(file.invented ? "list.invented" : "list.file"),
                              {.page = "open-file", .argument = file.path}));
        }
        made.foot = {row("back", words("page.back"), "", {.page = "cases"})};
        turn_pages(made, std::move(all), "files", screen.argument.substr(5), words);
    } else {
        made.title = words("list.title");
        made.lines = {words(list.cases.empty() ? "list.none" : "list.line")};
        for (const CaseLine& line : list.cases) {
            all.push_back(
                row("case-" + line.reference, line.reference, standing(line, words), {.page = "take-up", .argument = line.reference}));
        }
        made.foot = {row("new", words("list.new"), words("list.new_line"), {.page = "new"}),
                     row("files", words("list.from_file"), "", {.page = "cases", .argument = "files"})};
        turn_pages(made, std::move(all), "", screen.argument, words);
        made.foot.push_back(row("past", words("past-view.open"), "", {.page = "past", .argument = "times"}));
        if (list.under_way) made.foot.back().why_not = words("past-view.not_now");
        made.foot.push_back(row("set-up", words("set_up.open"), "", {.page = "cases", .argument = "set-up"}));
        made.foot.push_back(row("quit", words("list.quit"), words("hand.hold"), {.page = "quit"}));
        made.foot.back().press = Press::Hold;
    }
    if (!list.problems.empty()) made.lines = list.problems;
    return made;
}

}  // namespace screen
