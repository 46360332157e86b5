#include "screen/own_past.hpp"

#include "past/summary.hpp"
#include "screen/format.hpp"
#include "screen/pages.hpp"

#include <algorithm>
#include <cmath>

namespace screen {
namespace {

using guide::CaseState;

/// Null where fewer than five own cases tell it.
const past::Time* usual(const Around& around, const std::string& id) {
    const past::Time* found = around.own_past == nullptr ? nullptr : past::find_time(*around.own_past, id);
    return found != nullptr && found->seconds.n >= past::least_cases ? found : nullptr;
}

double seconds_of(const guide::ClockReading& reading) { return static_cast<double>(reading.ms) / 1000; }

/// "6.2 min, usual 5.0 to 7.5"; the time alone, as the clock shows it, where nothing is usual.
std::string against_usual(const guide::ClockReading& reading, const past::Time* usual, const Words& words) {
    if (usual == nullptr) return reading_text(reading, words);
    return words("own_past.usual",
                 {minutes_text(reading, words), minutes_text(usual->seconds.q1, words), minutes_text(usual->seconds.q3, words)});
}

std::vector<std::string> phases_from_now(const CaseState& state) {
    const guide::Phase* now = guide::current_phase(state);
    std::vector<std::string> ids{};
    for (const guide::Phase& phase : state.brief.procedure.phases) {
        if (&phase == now || !ids.empty()) ids.push_back(phase.id);
    }
    return ids;
}

measure::Instant later(measure::Instant at, double seconds) { return measure::earlier(at, -std::llround(seconds * 1000)); }

std::string otherwise_text(const CaseState& state, const Words& words) {
    std::string all{};
    const auto add = [&all](const std::string& text) { all.append(all.empty() ? "" : " · ").append(text); };
    for (const guide::Away& away : state.departures) add(guide::departure_title(state.brief.procedure, away.what));
    for (const std::string& text : recorded_differences(state, words)) add(text);
    return all.empty() ? words("own_past.nothing") : all;
}

/// This cut's reach, and the unit's with the interval of its mean.
std::string reach_line(const CaseState& state, const Around& around, const Words& words) {
    const auto this_cut = past::reach(past::summary(state));
    const std::string here = this_cut ? words("own_past.reach", {reach_text(*this_cut, words)}) : words("own_past.not_measured");
    const past::Cuts cuts = around.own_past == nullptr ? past::Cuts{} : around.own_past->cuts;
    if (!cuts.reach || !cuts.measured_with.contains(state.inputs.trephine.id)) return here;
    const past::Spread& own = *cuts.reach;
    return words("own_past.reach_own", {here, reach_text(own.mean, words), reach_text(own.mean_low, words),
                                        reach_text(own.mean_high, words), std::to_string(own.n)});
}

int own_cases(const Around& around) { return around.own_past == nullptr ? 0 : around.own_past->cases; }

}  // namespace

std::vector<Row> expected_rows(const CaseState& state, const Around& around, const Words& words) {
    const guide::Phase* phase = guide::current_phase(state);
    if (around.own_past == nullptr || phase == nullptr || state.closed) return {};
    std::vector<Row> rows{};
    const auto reading = guide::clock_reading(state, phase->id, around.now).value_or(guide::ClockReading{});
    if (const past::Time* found = usual(around, phase->id))
        rows.push_back({words("own_past.this_phase", {phase->title}), against_usual(reading, found, words)});
    const auto rest = past::still_to_go(around.own_past->list, phases_from_now(state), seconds_of(reading));
    if (!rest) return rows;
    const auto clock = [&](double seconds) { return measure::hour_minute(later(around.now, seconds)); };
    rows.push_back({words("own_past.end"), words("own_past.end_value", {clock(rest->median), clock(rest->q1), clock(rest->q3)})});
    return rows;
}

std::vector<std::string> recorded_differences(const CaseState& state, const Words& words) {
    std::vector<std::string> all{};
    for (const guide::CountItem& item : state.brief.unit.counts) {
        const auto tally = state.counts.find(item.id);
        if (tally == state.counts.end()) continue;
        for (const guide::Recorded& one : tally->second.differences) {
            const std::string said =
                words("paper.difference", {item.title, std::to_string(one.said.seen), std::to_string(one.said.expected)});
            all.push_back(one.said.why.empty() ? said : said + ": " + one.said.why);
        }
    }
    return all;
}

std::vector<Row> debrief_rows(const CaseState& state, const Around& around, const Words& words) {
    std::vector<Row> rows{{words("closed.otherwise"), otherwise_text(state, words)}};
    if (!state.seatings.empty()) rows.push_back({words("own_past.reach_label"), reach_line(state, around, words)});
    if (const auto open = guide::clock_reading(state, "open-sky", around.now))
        rows.push_back({words("clock.open-sky"), against_usual(*open, usual(around, "open-sky"), words)});
    const int cases = own_cases(around);
    rows.push_back({words("own_past.cases"), words.counted(cases < past::least_cases ? "own_past.too_few" : "own_past.cases_value",
                                                           {std::to_string(cases), std::to_string(past::least_cases)})});
    return rows;
}

Target phase_times_target(const Words& words) { return turn_to("phase-times", words("own_past.phases"), "", {.page = "phase-times"}); }

void phase_times_page(PickModel& made, const CaseState& state, const Around& around, const Words& words) {
    made.title = words("own_past.phases");
    const int cases = own_cases(around);
    const bool known = cases >= past::least_cases;
    made.lines = {
        words.counted(known ? "own_past.phases_line" : "own_past.phases_alone",
                      known ? std::vector{std::to_string(cases)} : std::vector{std::to_string(cases), std::to_string(past::least_cases)})};
    made.table = {{words("own_past.phase"), words("own_past.this_case"), known ? words("own_past.unit") : ""}};
    for (const guide::Phase& phase : state.brief.procedure.phases) {
        const auto reading = guide::clock_reading(state, phase.id, around.now);
        if (!reading) continue;
        TableRow row{.label = phase.title, .value = minutes_text(*reading, words)};
        if (const past::Time* found = usual(around, phase.id))
            row.beside = words("own_past.range", {minutes_text(found->seconds.q1, words), minutes_text(found->seconds.q3, words)});
        made.table.push_back(std::move(row));
    }
}

}  // namespace screen
