// Lists to choose from: what went otherwise, another mark, which suture again, why, the long axis of the ring reflection.
#include "eye/frame.hpp"
#include "guide/tissue.hpp"
#include "measure/expect.hpp"
#include "screen/format.hpp"
#include "screen/own_past.hpp"
#include "screen/pages.hpp"

#include <algorithm>

namespace screen {
namespace {

using guide::CaseState;
using guide::Step;

constexpr auto bulging = "eye-bulging";

Target back(const Words& words) { return turn_to("back", words("page.back"), "", {}); }

Target differing_choice(const Words& words) {
    Target made = count_differs(words);
    made.weight = Weight::Elsewhere;
    made.look = Look::Watch;
    return made;
}

void departures_page(PickModel& made, const CaseState& state, const Words& words) {
    made.title = words("page.departures");
    made.lines = {words("page.departures_line")};
    made.foot.push_back(turn_to("to-list", words("closed.list"), "", {.page = "cases"}));
    const Step* step = guide::current_step(state);
    if (step == nullptr) return;
    // In the quiet part no page without the octagon is turned to.
    if (!step->quiet)
        made.foot.push_back(turn_to("to-plan", words(state.plan ? "plan-view.change" : "plan-view.open"), "", {.page = "plan"}));
    if (may_wipe(state)) made.foot.push_back(turn_to("wipe", words("wipe.lock"), "", {.page = "wipe"}));
    if (step->closes == guide::Closes::Counts) {
        made.choices.push_back(differing_choice(words));
        made.choices.push_back(somebody_confirms(words));
    }
    for (const guide::Departure* departure : departures_of(state, *step)) {
        if (departure->id == bulging) continue;  // it stands at the foot, as on every page
        Target made_target = choice(departure->id, departure->title, "", {guide::Depart{.what = departure->id, .note = ""}});
        made_target.weight = Weight::Elsewhere;
        made_target.look = departure->level == guide::Departure::Level::Stop ? Look::Stop : Look::Watch;
        made.choices.push_back(std::move(made_target));
    }
    // The card has no room for it beside the octagon. Last, where no finger expects a departure.
    if (auto undo = undo_told(state, words); undo && departure_shown(state) != nullptr && bulging_target(state)) {
        undo->weight = Weight::Elsewhere;
        made.choices.push_back(*std::move(undo));
    }
}

void end_page(PickModel& made, const CaseState& state, const std::string& what, const Words& words) {
    made.title = guide::departure_title(state.brief.procedure, what);
    if (guide::eye_open(state)) {
        made.lines = {words("page.eye_open")};
        std::vector<guide::Intent> stops{};
        for (const std::string clock : {"decompressed", "open-sky"}) {
            if (guide::clock_running(state, clock)) stops.push_back(guide::MarkClock{.clock = clock, .start = false});
        }
        made.choices.push_back(choice("eye-closed", words("page.eye_closed"), words("hand.hold"), std::move(stops)));
        made.choices.back().press = Press::Hold;
        made.choices.back().look = Look::Watch;
        return;
    }
    made.lines = {words("page.end_line")};
    const guide::CaseEnd how = what == "converted" ? guide::CaseEnd::Converted : guide::CaseEnd::Abandoned;
    for (const std::string& why : reasons("end", words)) {
        made.choices.push_back(
            choice("why-" + std::to_string(made.choices.size() + 1), why, words("hand.hold"), {guide::CloseCase{.how = how, .why = why}}));
        made.choices.back().press = Press::Hold;
        made.choices.back().look = Look::Watch;
    }
}

bool taken(const CaseState& state, measure::Angle at) {
    return std::any_of(state.sutures.begin(), state.sutures.end(),
                       [&](const guide::Tied& tied) { return measure::apart_centideg(measure::centideg(tied.centideg), at) <= 50; });
}

void other_mark_page(PickModel& made, const CaseState& state, int n, const Words& words) {
    made.title = words("page.other_mark", {std::to_string(n)});
    made.lines = {words("page.other_mark_line")};
    const instrument::Trephine& trephine = state.inputs.trephine;
    for (int mark = 1; mark <= trephine.marks; ++mark) {
        const measure::Angle at = eye::mark_angle(mark, trephine.marks, trephine.mark_offset);
        Target one = choice("mark-" + std::to_string(mark), eye::short_clock_text(at),
                            words("page.mark", {std::to_string(mark), std::to_string(trephine.marks)}),
                            {guide::TieSuture{.n = n, .centideg = at.centideg()}});
        if (taken(state, at)) one.why_not = words("page.mark_taken");
        made.choices.push_back(std::move(one));
    }
}

void redo_page(PickModel& made, const CaseState& state, const Words& words) {
    made.title = words("page.redo");
    made.lines = {words(state.sutures.empty() ? "refused.no-suture" : "page.redo_line")};
    for (const guide::Tied& tied : state.sutures) {
        const std::string n = std::to_string(tied.n);
        const std::string at = words("suture.tied_line", {eye::short_clock_text(measure::centideg(tied.centideg))});
        made.choices.push_back(turn_to("redo-" + n, words("page.redo_one", {n}), at, {.page = "redo-why", .argument = n}));
        made.choices.back().weight = Weight::Elsewhere;
    }
}

/// From the card of a suture that broke the guide goes on at the suture that is out: nothing else is left of the card.
void redo_why_page(PickModel& made, const CaseState& state, const std::string& n, const Words& words) {
    made.title = words("page.redo_why", {n});
    made.choices = reason_choices(
        "redo", words, [&](const std::string& why) { return guide::CutSuture{.n = static_cast<int>(number_in(n)), .why = why}; });
    const guide::Departure* away = departure_shown(state);
    if (away == nullptr || away->id != "suture-broke") return;
    for (Target& one : made.choices) std::get<std::vector<guide::Intent>>(one.act).push_back(guide::ComeBack{.what = away->id});
}

void ring_page(PickModel& made, const Words& words) {
    made.title = words("page.ring");
    made.lines = {words("page.ring_line")};
    for (const int hour : {12, 1, 2, 3, 4, 5}) {
        for (const int minute : {0, 30}) {
            const measure::Angle at = eye::from_clock(hour, minute);
            const measure::Angle other = measure::centideg(at.centideg() + 18000);
            made.choices.push_back(choice("axis-" + std::to_string(at.centideg()),
                                          words("page.axis", {eye::short_clock_text(at), eye::short_clock_text(other)}), "",
                                          {guide::SeeRing{.long_axis_centideg = at.centideg()}}));
        }
    }
}

/// One target and nothing else: what a cloth or a drop does elsewhere does nothing.
void wipe_page(PickModel& made, const Words& words) {
    made.title = words("wipe.title");
    made.lines = {words("wipe.line")};
    made.foot = {turn_to("unlock", words("wipe.unlock"), words("hand.hold"), {})};
    made.foot.front().press = Press::Hold;
    made.foot.front().look = Look::Filled;
}

void skip_page(PickModel& made, const CaseState& state, const std::string& step, const Words& words) {
    const Step* found = guide::find_step(state.brief.procedure, step);
    made.title = words("page.skip", {found == nullptr ? step : filled(found->title, state, words)});
    made.choices = reason_choices("skip", words, [&](const std::string& why) { return guide::SkipStep{.step = step, .why = why}; });
}

void reason_page(PickModel& made, const CaseState& state, const Words& words) {
    made.title = words("page.reason");
    made.lines = {words("page.reason_line")};
    made.choices = reason_choices("over", words, [&](const std::string& why) {
        return guide::GiveReason{.event = state.reasons_owed.empty() ? 0 : state.reasons_owed.front(), .why = why};
    });
}

}  // namespace

Target choice(std::string id, std::string label, std::string line, std::vector<guide::Intent> intents) {
    Target made = target(std::move(id), std::move(label), std::move(line), std::move(intents));
    made.weight = Weight::Elsewhere;
    return made;
}

std::vector<std::string> reasons(const std::string& kind, const Words& words) {
    std::vector<std::string> all{};
    for (int i = 1; words.has("why." + kind + "_" + std::to_string(i)); ++i) all.push_back(words("why." + kind + "_" + std::to_string(i)));
    return all;
}

std::vector<Target> reason_choices(const std::string& kind, const Words& words,
                                   const std::function<guide::Intent(const std::string&)>& intent) {
    std::vector<Target> choices{};
    for (const std::string& why : reasons(kind, words)) {
        choices.push_back(choice("why-" + std::to_string(choices.size() + 1), why, "", {intent(why)}));
    }
    return choices;
}

std::vector<const guide::Departure*> departures_of(const CaseState& state, const Step& step) {
    std::vector<const guide::Departure*> all{};
    const auto away = guide::open_departures(state);
    const auto open = [&](const guide::DepartureId& id) {
        return std::any_of(away.begin(), away.end(), [&](const guide::Away& one) { return one.what == id; });
    };
    const auto add = [&](const std::vector<guide::DepartureId>& ids) {
        for (const guide::DepartureId& id : ids) {
            const guide::Departure* one = guide::find_departure(state.brief.procedure, id);
            const bool stands =
                (id == "suction-lost" && state.suction == guide::Suction::Lost) || (id == "entered-by-trephine" && open(id));
            if (one != nullptr && !stands && std::find(all.begin(), all.end(), one) == all.end()) all.push_back(one);
        }
    };
    add(step.departures);
    add(guide::phase_of(state.brief.procedure, step.id)->departures);
    if (guide::eye_open(state)) add({bulging});  // also where the trephine entered before the guide opens the eye
    return all;
}

std::optional<std::string> brief_name(const guide::Departure& departure, const Words& words) {
    const std::string id = "far.brief." + departure.id;
    return words.has(id) ? std::optional(words(id)) : std::nullopt;
}

bool held_up_by_scan(const CaseState& state, const Step& step) { return !step.quiet && guide::standing_scan(state) != nullptr; }

Banner::Level level_of(const guide::Departure& departure) {
    return departure.level == guide::Departure::Level::Stop ? Banner::Level::Stop : Banner::Level::Watch;
}

const guide::Departure* departure_standing(const CaseState& state) {
    auto open = guide::open_departures(state);
    if (open.empty()) return nullptr;
    // Suction lost has a card of its own while the cut stands open. Its way back goes through the steps of a new seating, where what
    // still stands from before comes up.
    if (open.back().what == "suction-lost" && state.suction != guide::Suction::Off) {
        const Step* step = guide::current_step(state);
        std::erase_if(open, [](const guide::Away& away) { return away.what == "suction-lost"; });
        if (open.empty() || step == nullptr || step->closes == guide::Closes::Cut) return nullptr;
    }
    return guide::find_departure(state.brief.procedure, open.back().what);
}

const guide::Departure* departure_shown(const CaseState& state) {
    // Nothing comes between the hand and the count while the blade can turn.
    const bool blade_turns = guide::cutting(state) && state.suction == guide::Suction::On;
    return blade_turns ? nullptr : departure_standing(state);
}

std::optional<Target> bulging_target(const CaseState& state) {
    const Step* step = guide::current_step(state);
    if (step == nullptr) return std::nullopt;
    const auto all = departures_of(state, *step);
    const auto found = std::find_if(all.begin(), all.end(), [](const guide::Departure* one) { return one->id == bulging; });
    if (found == all.end() || *found == departure_shown(state)) return std::nullopt;
    Target made = target(bulging, (*found)->title, "", {guide::Depart{.what = bulging, .note = ""}});
    made.look = Look::Stop;
    return made;
}

bool may_wipe(const CaseState& state) {
    const Step* step = guide::current_step(state);
    return step != nullptr && !step->quiet && !state.closed && !guide::cutting(state) && departure_shown(state) == nullptr;
}

PickModel page(const CaseState& state, const ScreenState& screen, const Around& around, const Words& words) {
    PickModel made{.strip = strip(state, around, words), .banner = banner(around, words)};
    made.foot = {back(words)};
    if (const auto octagon = bulging_target(state)) made.foot.push_back(*octagon);
    if (screen.page == "departures") departures_page(made, state, words);
    if (screen.page == "wipe") wipe_page(made, words);
    if (screen.page == "end") end_page(made, state, screen.argument, words);
    if (screen.page == "other-mark") other_mark_page(made, state, static_cast<int>(number_in(screen.argument)), words);
    if (screen.page == "redo") redo_page(made, state, words);
    if (screen.page == "redo-why") redo_why_page(made, state, screen.argument, words);
    if (screen.page == "reason") reason_page(made, state, words);
    if (screen.page == "skip") skip_page(made, state, screen.argument, words);
    if (screen.page == "ring") ring_page(made, words);
    if (screen.page == "phase-times") phase_times_page(made, state, around, words);
    if (screen.page.starts_with("count-")) count_page(made, state, screen, words);
    return made;
}

}  // namespace screen
