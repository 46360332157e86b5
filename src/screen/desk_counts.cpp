// The Desk's pages for counts: which item, what was opened and passed back, how many are seen, and by whom.
#include "screen/desk_pages.hpp"
#include "screen/format.hpp"
#include "screen/letters.hpp"

#include <utility>

namespace screen {
namespace {

using guide::CaseState;

DeskPage counts_page(const CaseState& state, const Words& words) {
    DeskPage made{.heading = words("desk.counts"), .line = words("desk.counts_line")};
    for (const guide::CountItem& item : state.brief.unit.counts) {
        made.actions.push_back(
            desk_open(desk_nth_key(made.actions.size()), "count-" + item.id, item.title, {.page = "count", .argument = item.id}));
        made.actions.back().line = words("desk.expected", {std::to_string(state.counts.at(item.id).expected())});
    }
    made.actions.push_back(desk_back(words));
    return made;
}

/// In a drawer that has no room for a heading each target says of what it tells.
DeskPage count_page(const CaseState& state, const guide::ItemId& item, const Around& around, const Words& words) {
    DeskPage made{.heading = count_title(state, item)};
    const auto tally = state.counts.find(item);
    if (tally == state.counts.end()) return {.heading = item, .actions = {desk_back(words)}};
    made.line = words("count.line", {std::to_string(tally->second.opened), std::to_string(tally->second.passed_back)});
    const bool named = around.alone && guide::cutting(state);
    const auto label = [&](const std::string& id, const std::string& of) { return named ? words(of, {made.heading}) : words(id); };
    made.actions = {
        desk_act("O", "opened", label("desk.opened", "desk.opened_of"), {guide::MoveItems{.item = item, .by = 1}}),
        desk_act("P", "passed-back", label("desk.passed_back", "desk.passed_back_of"), {guide::MoveItems{.item = item, .by = -1}}),
        desk_open("S", "seen", label("desk.seen", "desk.how_many_of"), {.page = "seen", .argument = item}), desk_back(words)};
    return made;
}

/// How many are seen, then who saw them. Where a keyboard types, names are a list of keys; under a finger they stand at the field.
DeskPage seen_page(const CaseState& state, const DeskState& desk, const Around& around, const Words& words) {
    const std::string label = words("desk.seen_of", {count_title(state, desk.argument)});
    return desk_field_page(label, desk.typed, words("desk.seen_line"),
                           desk_open("Enter", "seen-by", words("desk.next"),
                                     {.page = around.alone ? "by" : "who", .argument = desk.argument + "=" + desk.typed}),
                           words);
}

/// "needles=7"
std::pair<guide::ItemId, std::string> item_and_seen(const std::string& argument) {
    const auto at = argument.rfind('=');
    return {argument.substr(0, at), at == std::string::npos ? "" : argument.substr(at + 1)};
}

/// The unit's two by a key each, with what each has seen at this gate; anybody else by initials.
DeskPage who_page(const CaseState& state, const std::string& argument, const Words& words) {
    const auto [item, seen] = item_and_seen(argument);
    DeskPage made{.heading = words("desk.who", {count_title(state, item), seen}), .line = words("desk.who_line")};
    for (const std::string& name : {state.brief.unit.circulating_name, state.brief.unit.scrub_name}) {
        made.actions.push_back(desk_act(desk_nth_key(made.actions.size()), "by-" + name, with_capital(name),
                                        {guide::CheckCount{.item = item, .seen = static_cast<int>(number_in(seen)), .by = name}}));
        if (const auto before = guide::check_that_holds(state, item, name))
            made.actions.back().line = words("count.seen", {std::to_string(*before)});
    }
    made.actions.push_back(desk_open("T", "initials", words("count.somebody"), {.page = "initials", .argument = argument}));
    made.actions.push_back(desk_back(words));
    return made;
}

DeskPage by_page(const CaseState& state, const DeskState& desk, const Words& words) {
    const auto [item, seen] = item_and_seen(desk.argument);
    const std::string label = words("desk.by", {count_title(state, item), seen});
    return desk_field_page(label, desk.typed, words("desk.by_line"),
                           desk_act("Enter", "checked", words("desk.write"),
                                    {guide::CheckCount{.item = item, .seen = static_cast<int>(number_in(seen)), .by = desk.typed}}),
                           words);
}

}  // namespace

std::optional<DeskPage> desk_counts_page(const CaseState& state, const DeskState& desk, const Around& around, const Words& words) {
    if (desk.page == "counts") return counts_page(state, words);
    if (desk.page == "count") return count_page(state, desk.argument, around, words);
    if (desk.page == "seen") return seen_page(state, desk, around, words);
    if (desk.page == "who") return who_page(state, desk.argument, words);
    if (desk.page == "by" || desk.page == "initials") return by_page(state, desk, words);
    return std::nullopt;
}

}  // namespace screen
