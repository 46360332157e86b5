#include "guide/tissue.hpp"
#include "screen/desk_pages.hpp"
#include "screen/format.hpp"
#include "screen/letters.hpp"

#include <algorithm>
#include <array>

namespace screen {
Target desk_keyed(std::string key, Target target) {
    target.key = std::move(key);
    target.weight = Weight::Pointer;
    return target;
}

Target desk_back(const Words& words) { return desk_keyed("Esc", turn_to("desk-back", words("desk.back"), "", {})); }

Target desk_act(std::string key, std::string id, std::string label, std::vector<guide::Intent> intents) {
    return desk_keyed(std::move(key), target(std::move(id), std::move(label), "", std::move(intents)));
}

Target desk_open(std::string key, std::string id, std::string label, Show show) {
    return desk_keyed(std::move(key), turn_to(std::move(id), std::move(label), "", std::move(show)));
}

std::string desk_nth_key(std::size_t i) {
    constexpr std::string_view keys = "123456789ACDEFGHIJKLMNOPQRSTUVWXYZ";
    return i < keys.size() ? std::string(1, keys[i]) : "";
}

Target desk_held(Target target, const Words& words) {
    target.press = Press::Hold;
    target.line = words("hand.hold");
    return target;
}

DeskPage desk_field_page(const std::string& label, const std::string& text, std::string line, Target enter, const Words& words) {
    DeskPage made{.heading = label, .line = std::move(line), .field = Typed{.text = text}};
    if (text.empty()) enter.why_not = words("desk.type_first");
    made.actions = {std::move(enter), desk_back(words)};
    return made;
}

bool desk_closes(const guide::Step& step) { return step.closes == guide::Closes::Tap || step.closes == guide::Closes::Hold; }

namespace {

using guide::CaseState;

constexpr std::array clocks = {"suction", "decompressed", "open-sky", "donor-out", "case"};

void add_foot(std::vector<Target>& actions, const CaseState& state, const Around& around, const Words& words) {
    if (around.foot_switch.empty()) return;
    if (state.holder == std::optional(guide::Source::FootSwitch)) {
        if (guide::cutting(state) && around.bounced == std::optional<std::string>("spoke"))
            actions.push_back(desk_act("I", "count-it", words("cut.count_it"), {guide::CountSpoke{.source = guide::Source::FootSwitch}}));
        return;
    }
    actions.push_back(
        desk_held(desk_act("J", "foot-counts", words("desk.foot"), {guide::HoldCount{.source = guide::Source::FootSwitch}}), words));
}

/// The spoke, its undoing and the blade raised, while the desk counts; else the count may be taken over.
void add_count(std::vector<Target>& actions, const CaseState& state, const Around& around, const Words& words) {
    const bool ours = state.holder == std::optional(guide::Source::Desk);
    if (around.alone && !ours && guide::spokes_ahead(state))
        return add_foot(actions, state, around, words);  // the count is on the same screen
    if (guide::cutting(state) && ours) {
        actions.push_back(desk_act(words("drawer.space"), "spoke", words("cut.spoke"), {guide::CountSpoke{.source = guide::Source::Desk}}));
        const bool waits = guide::blade(state).to_go == 0 || departure_standing(state) != nullptr;
        actions.back().look = waits ? Look::Hollow : Look::Filled;
        if (around.bounced == std::optional<std::string>("spoke"))
            actions.push_back(desk_act("I", "count-it", words("cut.count_it"), {guide::CountSpoke{.source = guide::Source::Desk}}));
        actions.push_back(desk_act("U", "undo", words("hand.undo"), {guide::UndoTap{}}));
        actions.push_back(desk_act("R", "raised", words("cut.raised"), {guide::RaiseBlade{}}));
    }
    if (!guide::spokes_ahead(state)) return;
    if (!ours)
        actions.push_back(
            desk_held(desk_act("H", "take-count", words("desk.take"), {guide::HoldCount{.source = guide::Source::Desk}}), words));
    add_foot(actions, state, around, words);
}

/// The present step, where it is the circulating nurse's or everybody's to close by one tap; of a count her half of it.
void add_step(std::vector<Target>& actions, const CaseState& state, const Words& words) {
    const guide::Step* step = guide::current_step(state);
    if (step == nullptr || departure_shown(state) != nullptr) return;
    if (step->closes == guide::Closes::Counts) {
        Target hers = desk_keyed("F", circulating_check(state, words));
        hers.line.clear();  // its name wants the whole row
        if (hers.why_not.empty()) actions.push_back(std::move(hers));
        if (auto answer = difference_answer(state, words)) actions.push_back(desk_keyed("G", *std::move(answer)));
        return;
    }
    const bool hers = step->who == "circulating" || step->pause != guide::Pause::None;
    if (!hers || !desk_closes(*step)) return;
    actions.push_back(desk_act("F", "finish-" + step->id, filled(step->button, state, words), {guide::FinishStep{.step = step->id}}));
    actions.back().look = held_up_by_scan(state, *step) ? Look::Hollow : Look::Filled;
    if (step->closes == guide::Closes::Hold) actions.back() = desk_held(std::move(actions.back()), words);
}

Target papers_target(const Words& words) { return desk_open("P", "papers", words("papers.open"), {.page = "papers"}); }

/// There notes wait as well.
bool in_quiet(const CaseState& state) {
    const guide::Step* step = guide::current_step(state);
    return step != nullptr && step->quiet;
}

/// While the blade can turn and in the quiet part tissue, times and files wait.
bool must_wait(const CaseState& state) { return guide::cutting(state) || in_quiet(state); }

void add_what_waits(std::vector<Target>& actions, const CaseState& state, const Words& words) {
    actions.push_back(desk_open("T", "tissue", words("packs.open"), {.page = "tissue"}));
    if (guide::standing_scan(state) != nullptr) {
        actions.back().look = Look::Watch;
        actions.back().line = words("packs.stands");
    }
    actions.push_back(desk_open("W", "times", words("times.title"), {.page = "times"}));
    if (guide::eye_entered(state)) actions.push_back(papers_target(words));
}

DeskPage closed_page(const Around& around, const Words& words) {
    DeskPage made{.heading = words("closed.title"), .actions = {papers_target(words)}};
    desk_add_station(made.actions, around, words);
    return made;
}

DeskPage main_page(const CaseState& state, const Around& around, const Words& words) {
    DeskPage made{.heading = words("desk.actions"), .line = words("desk.scan")};
    if (in_quiet(state)) made.line = words("desk.quiet");
    if (state.closed) return closed_page(around, words);
    // What was just changed is read back where the next thing is chosen.
    if (state.changed != 0 && state.changed == state.last) made.line = desk_changes(state, words).front().value;
    desk_say_what_stands(made, state, words);
    if (const guide::Departure* away = departure_standing(state)) {
        made.actions.push_back(desk_act("B", "come-back", away->back, {guide::ComeBack{.what = away->id}}));
        made.actions.back().look = Look::Filled;
    }
    if (auto undo = undo_told(state, words)) {
        undo->line.clear();  // its name wants the whole row
        made.actions.push_back(desk_keyed("Z", *std::move(undo)));
    }
    if (auto bulging = bulging_target(state)) made.actions.push_back(desk_keyed("E", *std::move(bulging)));
    add_step(made.actions, state, words);
    add_count(made.actions, state, around, words);
    if (!in_quiet(state)) made.actions.push_back(desk_open("N", "note", words("desk.note"), {.page = "note"}));
    made.actions.push_back(desk_open("C", "clocks", words("desk.clocks"), {.page = "clocks"}));
    made.actions.push_back(desk_open("K", "counts", words("desk.counts"), {.page = "counts"}));
    // Not while something stands open: first it is come back from.
    if (state.plan && guide::spokes_ahead(state) && departure_standing(state) == nullptr)
        made.actions.push_back(desk_open("L", "plan", words("desk.plan"), {.page = "plan"}));
    if (!must_wait(state)) add_what_waits(made.actions, state, words);
    made.actions.push_back(desk_open("X", "otherwise", words("desk.otherwise"), {.page = "otherwise"}));
    made.actions.back().look = Look::Watch;
    desk_add_station(made.actions, around, words);
    return made;
}

std::string reading(const CaseState& state, const std::string& clock, const Around& around, const Words& words) {
    const auto found = guide::clock_reading(state, clock, around.now);
    return found ? reading_text(*found, words) : words("desk.never");
}

DeskPage clocks_page(const CaseState& state, const Around& around, const Words& words) {
    DeskPage made{.heading = words("desk.clocks"), .line = words("desk.clocks_line")};
    for (const std::string clock : clocks) {
        const bool runs = guide::clock_running(state, clock);
        const std::string label = words(runs ? "desk.stop" : "desk.start", {words("clock." + clock)});
        made.actions.push_back(desk_open(desk_nth_key(made.actions.size()), "clock-" + clock, label, {.page = "clock", .argument = clock}));
        made.actions.back().line = reading(state, clock, around, words);
    }
    made.actions.push_back(desk_back(words));
    return made;
}

/// When the clock was started or stopped: a late tap is corrected at once.
DeskPage clock_page(const CaseState& state, const std::string& clock, const Words& words) {
    const bool start = !guide::clock_running(state, clock);
    DeskPage made{.heading = words(start ? "desk.start" : "desk.stop", {words("clock." + clock)}), .line = words("desk.when")};
    for (const int ago_s : {0, 15, 30, 60}) {
        const std::string label = ago_s == 0 ? words("desk.now") : words("hand.ago_" + std::to_string(ago_s));
        made.actions.push_back(desk_act(ago_s == 0 ? "Enter" : desk_nth_key(made.actions.size() - 1), "clock-ago-" + std::to_string(ago_s),
                                        label, {guide::MarkClock{.clock = clock, .start = start, .ago_s = ago_s}}));
    }
    made.actions.push_back(desk_back(words));
    return made;
}

/// On the one screen the Table's own targets tell what befalls the blade; twice the same is not offered.
bool told_beside(const CaseState& state, const Around& around, const guide::Departure& departure) {
    return around.alone && guide::cutting(state) && state.suction == guide::Suction::On &&
           (departure.id == "suction-lost" || departure.id == "entered-by-trephine");
}

/// Beside the figure a narrow drawer has room for two of a few words: what stops a hand comes first, named as on the Far view.
DeskPage otherwise_page(const CaseState& state, const Around& around, const Words& words) {
    DeskPage made{.heading = words("page.departures"), .line = words("page.departures_line")};
    const guide::Step* step = guide::current_step(state);
    const bool narrow = around.alone && guide::cutting(state);
    auto all = step == nullptr ? std::vector<const guide::Departure*>{} : departures_of(state, *step);
    const auto stops = [](const guide::Departure* one) { return one->level == guide::Departure::Level::Stop; };
    if (narrow) std::stable_partition(all.begin(), all.end(), stops);
    for (const guide::Departure* departure : all) {
        const bool held = departure->id == "converted" || departure->id == "abandoned";
        if (told_beside(state, around, *departure) || (narrow && held)) continue;
        const auto brief = narrow ? brief_name(*departure, words) : std::nullopt;
        made.actions.push_back(desk_act(desk_nth_key(made.actions.size()), departure->id, brief ? with_capital(*brief) : departure->title,
                                        {guide::Depart{.what = departure->id, .note = ""}}));
        made.actions.back().look = departure->level == guide::Departure::Level::Stop ? Look::Stop : Look::Watch;
        if (held) made.actions.back().why_not = words("desk.held_on_table");
    }
    made.actions.push_back(desk_back(words));
    return made;
}

DeskPage note_page(const DeskState& desk, const Words& words) {
    return desk_field_page(words("desk.note"), desk.typed, words("desk.note_line"),
                           desk_act("Enter", "write", words("desk.write"), {guide::WriteNote{.text = desk.typed}}), words);
}

DeskPage page_of(const CaseState& state, const DeskState& desk, const Around& around, const Words& words) {
    // On the one screen such a page gives way; at a Desk of its own what is half typed stays.
    const bool waits = around.alone && must_wait(state);
    if (desk.page == "papers" && !waits) return desk_papers_page(state, desk, words);
    if (desk.page == "sound") return desk_sound_page(around, words);
    if (desk.page == "screen") return desk_screen_page(state, around, words);
    if (desk.page == "reader") return desk_reader_page(desk, words);
    if (state.closed) return main_page(state, around, words);
    if (desk.page == "note" && !(around.alone && in_quiet(state))) return note_page(desk, words);
    if (desk.page == "clocks") return clocks_page(state, around, words);
    if (desk.page == "clock") return clock_page(state, desk.argument, words);
    if (auto page = desk_counts_page(state, desk, around, words)) return *std::move(page);
    if (desk.page == "plan" && state.plan) return desk_spokes_page(state, desk, words);
    if (desk.page == "plan-why" && state.plan) return desk_plan_why_page(state, desk, words);
    if (desk.page == "otherwise") return otherwise_page(state, around, words);
    if (waits) return main_page(state, around, words);
    if (auto page = desk_tissue_page(state, desk, words)) return *std::move(page);
    if (auto page = desk_told_page(state, desk, words)) return *std::move(page);
    if (auto page = desk_times_page(state, desk, words)) return *std::move(page);
    return main_page(state, around, words);
}

/// On the one screen the hand's own targets stand beside the drawer: nothing is offered twice.
void leave_to_the_hand(std::vector<Target>& actions, const std::vector<Target>& hand) {
    const auto the_same = [](const Target& action, const Target& one) {
        return action.id == one.id || (action.id == "otherwise" && one.id == "something-else");
    };
    std::erase_if(actions, [&](const Target& action) {
        return std::any_of(hand.begin(), hand.end(), [&](const Target& one) { return the_same(action, one); });
    });
}

}  // namespace

DeskPage desk_page(const CaseState& state, const DeskState& desk, const Around& around, const Words& words) {
    DeskPage made = page_of(state, desk, around, words);
    if (!around.alone) return made;
    const guide::Step* step = guide::current_step(state);
    if (step != nullptr) leave_to_the_hand(made.actions, hand(state, *step, around, words));
    const bool room = step != nullptr && !step->quiet && !guide::cutting(state);
    // Where nothing may lie over the Table view there are no keys; what cannot be done without them and read back is not offered.
    if (!room) std::erase_if(made.actions, [](const Target& one) { return one.id == "plan"; });
    if (room && made.field) made.keys = desk_keys(state, desk, words);
    if (room || !made.field) return made;
    made.line = words("drawer.no_keys");
    for (Target& one : made.actions)
        if (one.why_not == words("desk.type_first")) one.why_not = words("drawer.keyboard");
    return made;
}

}  // namespace screen
