// The frame of the Table view: strip and path. Banner, card and hand have files of their own.
#include "guide/tissue.hpp"
#include "measure/expect.hpp"
#include "screen/format.hpp"
#include "screen/own_past.hpp"
#include "screen/pages.hpp"
#include "screen/scan_text.hpp"

namespace screen {
namespace {

using guide::CaseState;
using guide::Closes;
using guide::Step;

std::string phase_text(const CaseState& state, const Words& words) {
    const guide::Phase* phase = guide::current_phase(state);
    if (state.closed) return words("strip.closed");
    if (phase == nullptr) return "";
    const Step* step = guide::current_step(state);
    if (step->closes == Closes::Cut) return words("strip.cutting", {phase->title});
    if (step->closes == Closes::Sutures) {
        return words("strip.tied", {phase->title, std::to_string(state.sutures.size()), std::to_string(guide::sutures_planned(state))});
    }
    return phase->title;
}

void add_clock(std::vector<ClockShown>& shown, const CaseState& state, const std::string& clock, const Around& around, const Words& words) {
    const auto reading = guide::clock_reading(state, clock, around.now);
    if (!reading) return;
    const std::string label = words("clock." + clock);
    shown.push_back({.label = reading->running ? label : words("clock.stopped", {label}),
                     .value = reading_text(*reading, words),
                     .live = reading->running});
}

/// Two clocks at most: the one that matters now, and the case.
std::vector<ClockShown> clocks(const CaseState& state, const Around& around, const Words& words) {
    std::vector<ClockShown> shown{};
    for (const std::string clock : {"suction", "open-sky", "decompressed", "donor-out"}) {
        if (shown.empty() && guide::clock_running(state, clock)) add_clock(shown, state, clock, around, words);
    }
    if (shown.empty() && !state.closed) add_clock(shown, state, "open-sky", around, words);
    add_clock(shown, state, "case", around, words);
    return shown;
}

Line step_line(const CaseState& state, const Step& step, const Step* now, const Words& words) {
    const auto done = state.steps.find(step.id);
    Line line{.is = Line::Is::Later, .text = filled(step.title, state, words)};
    if (done != state.steps.end()) line.is = done->second.skipped ? Line::Is::Skipped : Line::Is::Done;
    if (now != nullptr && now->id == step.id) line.is = Line::Is::Now;
    return line;
}

std::vector<Line> path(const CaseState& state, const Words& words) {
    const guide::Phase* present = guide::current_phase(state);
    const Step* now = guide::current_step(state);
    std::vector<Line> lines{};
    bool before = present != nullptr;
    for (const guide::Phase& phase : state.brief.procedure.phases) {
        const bool here = present != nullptr && phase.id == present->id;
        if (here) before = false;
        Line line{.is = here ? Line::Is::Now : (before || present == nullptr ? Line::Is::Done : Line::Is::Later), .text = phase.title};
        for (const Step& step : phase.steps) {
            if (here && guide::applies(state, step)) line.inner.push_back(step_line(state, step, now, words));
        }
        lines.push_back(std::move(line));
    }
    return lines;
}

/// What was scanned and does not fit, as soon as it was scanned; not while the blade turns or the eye is open.
std::optional<Banner> stopped(const CaseState& state, const Step& step, const Words& words) {
    const guide::ScanSeen* scan = guide::standing_scan(state);
    if (scan == nullptr || step.quiet || guide::cutting(state)) return std::nullopt;
    return Banner{.level = Banner::Level::Watch, .text = stop_text(*scan, words), .brief = stop_reason(*scan, words)};
}

/// What is left to do with a locked case: read it.
TableModel closed_table(const CaseState& state, const Around& around, const Words& words) {
    TableModel model{.strip = strip(state, around, words), .path = path(state, words)};
    model.card = {.title = words("closed.title"), .lines = {words(around.seal.empty() ? "closed.not_sealed" : "closed.line")}};
    model.card.rows = record_rows(state, around, words);
    if (!around.seal.empty()) model.card.rows.push_back({words("closed.seal"), around.seal});
    model.hand = {turn_to("to-list", words("closed.list"), "", {.page = "cases"})};
    model.hand.front().look = Look::Filled;
    model.banner = banner(around, words);
    return model;
}

}  // namespace

std::vector<Row> record_rows(const CaseState& state, const Around& around, const Words& words) {
    const auto time = guide::clock_reading(state, "case", around.now).value_or(guide::ClockReading{});
    const guide::Blade blade = guide::blade(state);
    const auto differences = recorded_differences(state, words);
    std::string otherwise = std::to_string(state.departures.size() + differences.size());
    for (const std::string& text : differences) otherwise.append(" · ").append(text);
    const std::string planned = blade.planned ? std::to_string(*blade.planned) : words("plan.to_entry");
    return {{words("closed.time"), reading_text(time, words)},
            {words("closed.spokes"),
             words(blade.reliable ? "closed.spokes_value" : "closed.spokes_unsure", {std::to_string(blade.position), planned})},
            {words("closed.sutures"), std::to_string(state.sutures.size())},
            {words("closed.otherwise"), otherwise}};
}

std::string holder_id(const std::string& section, guide::Source holder) {
    switch (holder) {
        case guide::Source::Table:
            return section + "table";
        case guide::Source::Desk:
            return section + "desk";
        case guide::Source::FootSwitch:
            return section + "foot_switch";
    }
    measure::expect(false);
    return "";
}

ClockShown time_of_day(const Around& around, const Words& words) {
    return {.label = words("clock.day"), .value = measure::hour_minute(around.now), .live = false};
}

Strip strip(const CaseState& state, const Around& around, const Words& words) {
    const plan::CaseFile& file = state.inputs.file;
    Strip made{.eye = state.side.empty() ? words("strip.eye_unknown") : words("strip." + state.side),
               .reference = words(file.invented ? "strip.rehearsal" : "strip.case", {file.reference}),
               .sizes = words("strip.sizes", {size_text(file.host_diameter, words), size_text(file.donor.diameter, words)}),
               .phase = phase_text(state, words),
               .clocks = clocks(state, around, words),
               .time = time_of_day(around, words),
               .beat = around.beat,
               .muted = muted(around, words)};
    if (state.holder && guide::count_matters(state)) {
        made.holder = words(holder_id("holder.", *state.holder));
    }
    return made;
}

TableModel table(const CaseState& state, const Around& around, const Words& words) {
    const Step* step = guide::current_step(state);
    if (state.closed || step == nullptr) return closed_table(state, around, words);
    TableModel model{.strip = strip(state, around, words), .path = path(state, words)};
    model.card = card(state, *step, around, words);
    model.hand = hand(state, *step, around, words);
    model.banner = banner(around, words);
    if (!around.refusal) model.banner = both(model.banner, stopped(state, *step, words));
    return model;
}

View view(const CaseState& state, const ScreenState& screen, const Around& around, const Words& words) {
    if (screen.page.empty() || (screen.page == "wipe" && !may_wipe(state))) return table(state, around, words);
    if (screen.page == "count-initials") return count_initials(state, screen, words);
    return page(state, screen, around, words);
}

namespace {

/// The scan that a refusal names: an objection, then the event.
const guide::ScanSeen* refused_for(const guide::Refusal& refusal, const CaseState& state) {
    constexpr std::size_t named = 2;
    if (refusal.why != guide::Refused::ScanStands || refusal.values.size() < named) return nullptr;
    return guide::find_scan(state, static_cast<guide::Seq>(number_in(refusal.values[named - 1])));
}

}  // namespace

std::string refusal_text(const guide::Refusal& refusal, const CaseState& state, const Words& words) {
    const guide::ScanSeen* scan = refused_for(refusal, state);
    if (scan != nullptr) return stop_text(*scan, words);
    return words("refused." + std::string(guide::name(refusal.why)), refusal.values);
}

Target target(std::string id, std::string label, std::string line, std::vector<guide::Intent> intents) {
    return {.id = std::move(id), .label = std::move(label), .line = std::move(line), .act = std::move(intents)};
}

Target turn_to(std::string id, std::string label, std::string line, Show show) {
    return {.id = std::move(id), .label = std::move(label), .line = std::move(line), .act = std::move(show)};
}

}  // namespace screen
