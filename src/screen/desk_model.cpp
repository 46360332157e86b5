// What the Desk shows beside its actions: the present step and what to open, times, counts, and what was written last.
#include "guide/tissue.hpp"
#include "measure/expect.hpp"
#include "screen/desk_pages.hpp"
#include "screen/format.hpp"
#include "screen/letters.hpp"
#include "screen/own_past.hpp"
#include "screen/scan_text.hpp"

#include <algorithm>
#include <utility>

namespace screen {
namespace {

using guide::CaseState;

bool suction_lost(const CaseState& state) { return guide::cutting(state) && state.suction == guide::Suction::Lost; }

/// What the blade has done: to be told to whoever comes to the door, and read where the Table view is out of sight. The finer line only
/// where nothing went otherwise.
std::vector<Row> spokes_rows(const CaseState& state, bool away, const Words& words) {
    const Figure figure = blade_figure(state, words);
    std::vector<Row> made{{words("desk.spokes"), figure.numeral + " " + figure.under}};
    if (!away || suction_lost(state)) made.push_back({"", figure.line});
    if (!guide::blade(state).reliable) made.push_back({"", words("section.not_reliable")});
    return made;
}

/// What stands in the way of the present step: a departure that is not come back from, or suction lost before the ring is seated anew.
const guide::Departure* in_the_way(const CaseState& state, const guide::Step& step) {
    if (const guide::Departure* away = departure_standing(state)) return away;
    const bool lost = suction_lost(state) && step.closes == guide::Closes::Cut;
    return lost ? guide::find_departure(state.brief.procedure, "suction-lost") : nullptr;
}

/// Not while something went otherwise, the ring is seated anew, or what was scanned waits to be put aside.
bool stays(const CaseState& state, const guide::Step& step, const guide::Departure* away) {
    return step.nurse == guide::Nurse::Stay || away != nullptr || suction_lost(state) || guide::standing_scan(state) != nullptr;
}

/// What is usual then, marked as that.
void add_usual(std::vector<Row>& rows, const guide::Departure& away, const CaseState& state, const Words& words) {
    std::string label = words("card.usual");
    for (const std::string& line : usual_lines(state, away, words)) rows.push_back({std::exchange(label, ""), line});
}

/// The circulating nurse's own step, and where it is done.
std::string own_step_id(const guide::Step& step) { return desk_closes(step) ? "desk.own_step" : "desk.own_step_table"; }

/// Two count, and she is one of them.
void show_count(DeskModel& made, const CaseState& state, const guide::Step& step, const Words& words) {
    for (const std::string& line : step.lines) made.how.push_back(filled(line, state, words));
    std::vector<std::string> confirmed{};
    for (const std::string& one : {state.brief.unit.scrub_name, state.brief.unit.circulating_name})
        if (has_confirmed(state, one)) confirmed.push_back(words("count.done", {with_capital(one)}));
    if (!confirmed.empty()) made.how = std::move(confirmed);
    const auto item = differing(state);
    if (!item) return;
    made.title = differing_title(state, *item, words);
    made.level = Banner::Level::Watch;
    made.how = {difference_text(state, *item, *guide::difference(state, *item), words)};
}

void show_step(DeskModel& made, const CaseState& state, const Words& words) {
    const guide::Step* step = guide::current_step(state);
    if (step == nullptr) return;
    const guide::Departure* away = in_the_way(state, *step);
    const auto depth = guide::cutting(state) && !suction_lost(state) ? depth_title(state, words) : std::nullopt;
    made.title = away != nullptr ? away->title : depth ? *depth : filled(step->title, state, words);
    if (step->closes == guide::Closes::Counts && away == nullptr) show_count(made, state, *step, words);
    made.stay = stays(state, *step, away);
    made.nurse = words(made.stay ? "desk.stay" : step->who != "circulating" ? "desk.may_leave" : own_step_id(*step));
    if (depth && guide::blade(state).over > 0) made.level = Banner::Level::Watch;
    if (away != nullptr) made.level = level_of(*away);
    if (guide::cutting(state)) made.step = spokes_rows(state, away != nullptr, words);
    if (away != nullptr) {  // the packs of the step that waits are not what is to be done now
        add_usual(made.step, *away, state, words);
        return;
    }
    if (step->who == "circulating")
        for (const std::string& line : step->lines) made.how.push_back(filled(line, state, words));
    if (!step->open_now.empty()) made.step.push_back({words("card.open_now"), listed(step->open_now)});
    if (!step->open_later.empty()) made.step.push_back({words("card.open_later"), listed(step->open_later)});
    if (!step->ready.empty()) made.step.push_back({words("card.ready"), listed(step->ready)});
}

std::string pause_id(guide::Pause pause) {
    switch (pause) {
        case guide::Pause::None:
            return "";
        case guide::Pause::SignIn:
            return "desk.sign_in";
        case guide::Pause::TimeOut:
            return "desk.time_out";
        case guide::Pause::SignOut:
            return "desk.sign_out";
    }
    measure::expect(false);
    return "";
}

/// The clocks that have run, then the three pauses with when they were done.
void show_times(DeskModel& made, const CaseState& state, const Around& around, const Words& words) {
    for (const std::string clock : {"suction", "decompressed", "open-sky", "donor-out", "case"}) {
        const auto reading = guide::clock_reading(state, clock, around.now);
        if (!reading) continue;
        const std::string label = words("clock." + clock);
        made.times.push_back({reading->running ? label : words("clock.stopped", {label}), reading_text(*reading, words)});
    }
    for (const guide::Phase& phase : state.brief.procedure.phases) {
        for (const guide::Step& step : phase.steps) {
            if (step.pause == guide::Pause::None) continue;
            const auto done = state.steps.find(step.id);
            made.times.push_back(
                {words(pause_id(step.pause)), done == state.steps.end() ? words("desk.not_yet") : measure::hour_minute(done->second.at)});
        }
    }
}

/// What was read last and what became of it; of a part of a label, to which number it was joined.
Row newest_scan(const CaseState& state, const Words& words) {
    const guide::ScanSeen& scan = state.scans.back();
    std::string said = joined_text(state, scan, words);
    if (said.empty()) {
        const bool unread = scan.said.item.kind == guide::ItemKind::Unread;
        said = unread ? words("packs.scan_unread") : words("scan.item", {item_text(scan.said.item, words), standing_text(scan, words)});
    }
    return {measure::hour_minute(scan.at), said};
}

/// A row of the record and when it was written.
using Written = std::pair<measure::Instant, Row>;

Written written(const measure::Instant& at, std::string said) { return {at, {measure::hour_minute(at), std::move(said)}}; }

std::string plan_changed_text(const guide::PlanChanged& change, const Words& words) {
    if (!change.spokes) return words("desk.plan_changed", {change.why});
    return words.counted("desk.plan_spokes", {std::to_string(*change.spokes), change.why});
}

/// Changes of the plan, then of times: what one tap wrote was corrected as one, and stands once.
std::vector<Written> changes(const CaseState& state, const Words& words) {
    std::vector<Written> all{};
    for (const auto& one : state.plans_changed) all.push_back(written(one.at, plan_changed_text(one.fact, words)));
    for (const auto& one : state.plans_moved) all.push_back(written(one.at, words("desk.plan_deeper")));
    std::vector<guide::Seq> told{};
    for (auto one = state.times_corrected.rbegin(); one != state.times_corrected.rend(); ++one) {
        const auto timed = guide::find_timed(state, one->fact.event);
        if (!timed || std::find(told.begin(), told.end(), timed->seq) != told.end()) continue;
        const auto tap = guide::of_one_tap(state, *timed);
        for (const guide::Timed& other : tap) told.push_back(other.seq);
        const auto meant = guide::one_a_tap(state);
        const auto named = std::find_if(meant.begin(), meant.end(), [&](const guide::Timed& other) {
            return std::find(tap.begin(), tap.end(), other) != tap.end() || other == *timed;
        });
        all.push_back(written(one->at, words("desk.time_corrected", {timed_text(state, named == meant.end() ? *timed : *named, words),
                                                                     measure::rfc3339(timed->at).substr(11, 8), one->fact.why})));
    }
    return all;
}

std::vector<Row> newest_first(std::vector<Written> all) {
    std::stable_sort(all.begin(), all.end(), [](const Written& a, const Written& b) { return a.first.utc_ms > b.first.utc_ms; });
    std::vector<Row> rows{};
    for (Written& one : all) rows.push_back(std::move(one.second));
    return rows;
}

std::vector<Row> record_of(const CaseState& state, const Words& words) {
    std::vector<Written> all = changes(state, words);
    // One that stands is told over the actions.
    if (!state.scans.empty() && guide::standing_scan(state) == nullptr) all.push_back({state.scans.back().at, newest_scan(state, words)});
    for (const guide::Away& away : state.departures)
        all.push_back(written(away.at, guide::departure_title(state.brief.procedure, away.what)));
    for (const auto& [at, text] : state.notes) all.push_back(written(at, words("desk.noted", {text})));
    return newest_first(std::move(all));
}

}  // namespace

std::vector<Row> desk_changes(const CaseState& state, const Words& words) { return newest_first(changes(state, words)); }

DeskModel desk(const CaseState& state, const DeskState& desk, const Around& around, const Words& words) {
    DeskModel made{.strip = strip(state, around, words), .banner = banner(around, words)};
    if (state.holder && guide::spokes_ahead(state)) made.strip.holder = words(holder_id("holder.", *state.holder));
    show_step(made, state, words);
    show_times(made, state, around, words);
    for (const guide::CountItem& item : state.brief.unit.counts) {
        const guide::Tally& tally = state.counts.at(item.id);
        const std::string expected = words("desk.expected", {std::to_string(tally.expected())});
        const auto found = guide::open_difference(state, item.id);
        const std::string seen = found ? words("count.seen", {std::to_string(found->seen)}) + ", " : std::string{};
        made.counts.push_back({item.title, seen + expected, found.has_value()});
    }
    made.expected = expected_rows(state, around, words);
    made.record = record_of(state, words);
    DeskPage page = desk_page(state, desk, around, words);
    made.heading = std::move(page.heading);
    made.line = std::move(page.line);
    made.actions = std::move(page.actions);
    made.keys = std::move(page.keys);
    made.turned = desk.turned;
    made.field = std::move(page.field);
    return made;
}

DeskModel empty_desk(const DeskState& desk, const Around& around, const Words& words) {
    DeskPage page = empty_desk_page(desk, around, words);
    DeskModel made{.title = words("desk.no_case"), .heading = page.heading, .line = page.line, .banner = banner(around, words)};
    made.actions = std::move(page.actions);
    made.strip.time = time_of_day(around, words);
    made.strip.beat = around.beat;
    made.strip.muted = muted(around, words);
    return made;
}

}  // namespace screen
