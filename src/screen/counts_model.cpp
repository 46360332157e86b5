// The counts: who agrees, what somebody sees instead, and a difference that is recorded because it could not be settled.
#include "screen/format.hpp"
#include "screen/keypad.hpp"
#include "screen/letters.hpp"
#include "screen/pages.hpp"

#include <algorithm>
#include <charconv>
#include <set>

namespace screen {
namespace {

using guide::CaseState;
using guide::CheckCount;

constexpr auto record_difference = "record-difference";
constexpr int fewest_missing = 8, most_excess = 4;  // how far from the expected number a count can be told by one tap

std::vector<std::string> people(const CaseState& state) { return {state.brief.unit.scrub_name, state.brief.unit.circulating_name}; }

/// One sees what is expected of every item, as far as that is not written yet.
std::vector<guide::Intent> all_seen(const CaseState& state, const std::string& by) {
    std::vector<guide::Intent> checks{};
    for (const guide::CountItem& item : state.brief.unit.counts) {
        const int expected = state.counts.at(item.id).expected();
        if (guide::check_that_holds(state, item.id, by) == std::optional(expected)) continue;
        checks.push_back(CheckCount{.item = item.id, .seen = expected, .by = by});
    }
    return checks;
}

bool any_counted(const CaseState& state) {
    return std::any_of(state.counts.begin(), state.counts.end(), [](const auto& item) { return item.second.opened > 0; });
}

Target check_target(const CaseState& state, const std::string& id, const std::string& by, const Words& words) {
    auto checks = all_seen(state, by);
    const bool done = checks.empty();
    Target made = target(id, words("count.agree", {with_capital(by)}), words("count.agree_line"), std::move(checks));
    // While somebody differs, to agree is to have counted anew: it stays open, in its place, and no longer leads.
    const bool differs = differing(state).has_value();
    made.look = differs ? Look::Hollow : Look::Filled;
    if (differs) made.line = words("count.agree_anew");
    if (done) made.why_not = words("count.agreed");
    if (!any_counted(state)) made.why_not = words("count.none");
    return made;
}

/// Who is asked whether the difference is seen too: while one alone saw it the unit's two, then whoever holds another number.
std::optional<std::string> to_be_asked(const CaseState& state, const guide::ItemId& item, const guide::Difference& found) {
    std::vector<std::string> all = people(state);
    for (const guide::Check& check : state.counts.at(item).checks) all.push_back(check.said.by);
    const auto asked = std::find_if(all.begin(), all.end(), [&](const std::string& by) {
        if (found.by.contains(guide::same_person(by))) return false;
        return found.by.size() == 1 || guide::check_that_holds(state, item, by).has_value();
    });
    return asked == all.end() ? std::nullopt : std::optional(*asked);
}

std::string undo_label(const std::string& title, int by, const Words& words) {
    return words("count.undo", {title, (by > 0 ? "+" : "−") + std::to_string(std::abs(by))});
}

/// The newest tap of + or −, named: what a sighting or the Desk wrote since is not what goes. Dead where there is none; in one
/// place all the same, which has room for the longest name.
Target undo_target(const CaseState& state, const Words& words) {
    const auto& all = state.brief.unit.counts;
    const auto longest =
        std::max_element(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.title.size() < b.title.size(); });
    const auto* moved = state.undoable.empty() ? nullptr : std::get_if<guide::ItemsMoved>(&state.undoable.back().fact);
    Target made = target("undo", words("count.undo_none"), "", {guide::UndoTap{}});
    made.why_not = words("count.no_undo");
    if (moved != nullptr) {
        made = target("undo", undo_label(count_title(state, moved->item), moved->by, words),
                      words(moved->by > 0 ? "count.opened" : "count.back"), {guide::UndoTap{.event = state.undoable.back().seq}});
    }
    made.in_place_of = {target("undo", undo_label(longest == all.end() ? "" : longest->title, 10, words), "", {guide::UndoTap{}})};
    return made;
}

/// Neither of the two whom the unit names: leads to the letters. `argument` is "ITEM=NUMBER", or nothing for all as expected.
Target somebody(const std::string& argument, const Words& words) {
    Target made =
        turn_to("by-somebody", words("count.somebody"), words("count.agree_line"), {.page = "count-initials", .argument = argument});
    made.weight = Weight::Elsewhere;
    return made;
}

/// Of those who see the difference the first who is neither of the unit's two: they have no target of their own.
std::optional<std::string> outsider(const CaseState& state, const guide::Difference& found) {
    std::set<std::string> own{};
    for (const std::string& by : people(state)) own.insert(guide::same_person(by));
    const auto other = std::find_if(found.by.begin(), found.by.end(), [&](const auto& one) { return !own.contains(one.first); });
    return other == found.by.end() ? std::nullopt : std::optional(other->second);
}

/// What leads on from a difference: against another number whoever is left with it counts again; else somebody sees it too; when
/// two do, it is recorded.
Target lead_on(const CaseState& state, const guide::ItemId& item, const Words& words) {
    const guide::Difference found = *guide::difference(state, item);
    const std::string seen = std::to_string(found.seen), expected = std::to_string(found.expected);
    const auto other = outsider(state, found);
    if (found.disputed && other) {
        return target("counted-again", words("count.now_sees", {with_capital(*other), expected}), count_title(state, item),
                      {CheckCount{.item = item, .seen = found.expected, .by = *other}});
    }
    if (const auto by = to_be_asked(state, item, found))
        return target("also-sees", words("count.also", {seen}), with_capital(*by),
                      {CheckCount{.item = item, .seen = found.seen, .by = *by}});
    return turn_to(record_difference, words("count.record_short", {seen, expected}), count_title(state, item),
                   {.page = "count-record", .argument = item});
}

/// Below the unit's two: that a count differs, and while somebody differs what leads on from that. It keeps one place.
Target third_target(const CaseState& state, const Words& words) {
    const auto item = differing(state);
    Target made = item ? lead_on(state, *item, words) : count_differs(words);
    if (made.id == record_difference) made.look = Look::Hollow;  // before that, what a recount shows comes first
    made.in_place_of = {count_differs(words)};
    return made;
}

/// Two miss the same and nobody disputes it: it is searched for, then recorded.
bool is_missed(const CaseState& state, const guide::ItemId& item, const Words& words) {
    const guide::Difference found = *guide::difference(state, item);
    return found.seen < found.expected && lead_on(state, item, words).id == record_difference;
}

/// "7 seen by scrub nurse, 8 expected."
std::string seen_by_text(const guide::Difference& found, const Words& words) {
    std::string by{};
    for (const auto& [person, told] : found.by) by = by.empty() ? told : words("view.last", {by, told});
    return words(found.disputed ? "count.differs_still" : "count.differs",
                 {std::to_string(found.seen), by, std::to_string(found.expected)});
}

std::pair<guide::ItemId, int> item_and_number(const std::string& argument) {
    const auto at = argument.rfind('=');
    int number = 0;
    if (at == std::string::npos) return {argument, number};
    std::from_chars(argument.data() + at + 1, argument.data() + argument.size(), number);
    return {argument.substr(0, at), number};
}

void seen_page(PickModel& made, const CaseState& state, const guide::ItemId& item, const Words& words) {
    const int expected = state.counts.at(item).expected();
    made.title = words("page.count_seen", {count_title(state, item)});
    made.lines = {words("page.count_expected", {std::to_string(expected)})};
    for (int n = std::max(0, expected - fewest_missing); n <= expected + most_excess; ++n) {
        if (n == expected) continue;
        const int off = std::abs(n - expected);
        const std::string line = words.counted(n < expected ? "page.count_missing" : "page.count_excess", {std::to_string(off)});
        made.choices.push_back(turn_to("seen-" + std::to_string(n), std::to_string(n), line,
                                       {.page = "count-by", .argument = item + "=" + std::to_string(n)}));
        made.choices.back().weight = Weight::Elsewhere;
    }
}

void by_page(PickModel& made, const CaseState& state, const std::string& argument, const Words& words) {
    const auto [item, seen] = item_and_number(argument);
    made.title = words("page.count_by", {count_title(state, item), std::to_string(seen)});
    made.lines = {words("page.count_expected", {std::to_string(state.counts.at(item).expected())})};
    for (const std::string& by : people(state)) {
        made.choices.push_back(choice("by-" + std::to_string(made.choices.size() + 1), with_capital(by),
                                      words("count.sees", {std::to_string(seen)}), {CheckCount{.item = item, .seen = seen, .by = by}}));
    }
    made.choices.push_back(somebody(argument, words));
    made.choices.back().line = words("count.sees", {std::to_string(seen)});
}

void record_page(PickModel& made, const CaseState& state, const guide::ItemId& item, const Words& words) {
    made.title = words("count.record");
    if (const auto found = guide::difference(state, item)) made.lines = {difference_text(state, item, *found, words)};
    made.lines.push_back(words("page.count_record_line"));
    made.choices =
        reason_choices("count", words, [&](const std::string& why) { return guide::RecordDifference{.item = item, .why = why}; });
    for (Target& one : made.choices) {
        one.line = words("hand.hold");
        one.press = Press::Hold;
        one.look = Look::Watch;
    }
}

}  // namespace

std::string difference_text(const CaseState& state, const guide::ItemId& item, const guide::Difference& found, const Words& words) {
    return words("count.differs_in", {count_title(state, item), seen_by_text(found, words)});
}

std::optional<guide::ItemId> differing(const CaseState& state) {
    for (const guide::CountItem& item : state.brief.unit.counts) {
        if (guide::open_difference(state, item.id)) return item.id;
    }
    return std::nullopt;
}

std::string differing_title(const CaseState& state, const guide::ItemId& item, const Words& words) {
    return words(is_missed(state, item, words) ? "count.search" : "count.again", {count_title(state, item)});
}

bool has_confirmed(const CaseState& state, const std::string& by) { return all_seen(state, by).empty(); }

std::optional<Target> difference_answer(const CaseState& state, const Words& words) {
    const auto item = differing(state);
    if (!item) return std::nullopt;
    Target made = lead_on(state, *item, words);
    return made.id == record_difference ? std::nullopt : std::optional(std::move(made));
}

Target count_differs(const Words& words) { return turn_to("count-differs", words("count.other"), "", {.page = "count-differs"}); }

Target somebody_confirms(const Words& words) {
    Target made = somebody("", words);
    made.label = words("count.agree", {made.label});
    return made;
}

Target circulating_check(const CaseState& state, const Words& words) {
    return check_target(state, "check-circulating", state.brief.unit.circulating_name, words);
}

/// As many from the first tap to the last, so that none moves another away from under a finger.
std::vector<Target> counts_hand(const CaseState& state, const Words& words) {
    return {check_target(state, "check-scrub", state.brief.unit.scrub_name, words), circulating_check(state, words),
            third_target(state, words), undo_target(state, words)};
}

void counts_card(Card& made, const CaseState& state, const Words& words) {
    for (const guide::CountItem& item : state.brief.unit.counts) {
        const guide::Tally& tally = state.counts.at(item.id);
        CountRow row{.title = item.title,
                     .value = std::to_string(tally.expected()),
                     .line = words("count.line", {std::to_string(tally.opened), std::to_string(tally.passed_back)})};
        row.expected = words("page.count_expected", {row.value});
        row.due = words("count.due", {row.value});
        if (const auto found = guide::difference(state, item.id))
            row.line = words("count.seen", {std::to_string(found->seen)}) + ", " + row.expected;
        row.fewer = target("fewer-" + item.id, "−", "", {guide::MoveItems{.item = item.id, .by = -1}});
        row.more = target("more-" + item.id, "+", "", {guide::MoveItems{.item = item.id, .by = 1}});
        row.fewer.weight = row.more.weight = Weight::Elsewhere;
        made.counts.push_back(std::move(row));
    }
    if (const auto item = differing(state)) {
        made.title = differing_title(state, *item, words);
        made.lines.clear();
        if (is_missed(state, *item, words)) made.lines = {words("count.search_line")};
        made.say.clear();
        made.cautions = {seen_by_text(*guide::difference(state, *item), words)};
    }
}

void count_page(PickModel& made, const CaseState& state, const ScreenState& screen, const Words& words) {
    if (screen.page == "count-differs") {
        made.title = words("count.other");
        for (const guide::CountItem& item : state.brief.unit.counts) {
            made.choices.push_back(turn_to("differs-" + item.id, item.title,
                                           words("page.count_expected", {std::to_string(state.counts.at(item.id).expected())}),
                                           {.page = "count-seen", .argument = item.id}));
            made.choices.back().weight = Weight::Elsewhere;
        }
        return;
    }
    if (!state.counts.contains(item_and_number(screen.argument).first)) return;
    if (screen.page == "count-seen") seen_page(made, state, screen.argument, words);
    if (screen.page == "count-by") by_page(made, state, screen.argument, words);
    if (screen.page == "count-record") record_page(made, state, screen.argument, words);
}

FormModel count_initials(const CaseState& state, const ScreenState& screen, const Words& words) {
    const auto [item, seen] = item_and_number(screen.argument);
    const auto found = screen.draft.find(initials_field);
    const std::string typed = found == screen.draft.end() ? "" : found->second;
    FormModel made{.title = words("count.whose"), .lines = {words("desk.by_line")}, .typed = Typed{.text = typed}};
    if (state.counts.contains(item)) made.title = words("desk.by", {count_title(state, item), std::to_string(seen)});
    auto checks = state.counts.contains(item) ? std::vector<guide::Intent>{CheckCount{.item = item, .seen = seen, .by = typed}}
                                              : all_seen(state, typed);
    made.keys = keypad(Pad::Words, screen.turned, words);
    const bool done = checks.empty();
    Target write = target("initials-done", words("desk.write"), "", std::move(checks));
    write.look = Look::Filled;
    if (done) write.why_not = words("count.agreed");
    if (!state.counts.contains(item) && !any_counted(state)) write.why_not = words("count.none");
    if (typed.empty()) write.why_not = words("desk.type_first");
    made.foot = {turn_to("back", words("page.back"), "", {}), erase_key(words), std::move(write)};
    for (Target& one : made.foot) one.weight = Weight::Theatre;
    return made;
}

}  // namespace screen
