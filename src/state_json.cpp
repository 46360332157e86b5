// `state` as JSON and as text: see the contract in README.md. Absent is null, never 0.
#include "eye/frame.hpp"
#include "guide/tissue.hpp"
#include "open_case.hpp"
#include "scan_json.hpp"
#include "screen/format.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace graftside {
namespace {

using nlohmann::ordered_json;

template <class T>
ordered_json or_null(const std::optional<T>& value) {
    return value ? ordered_json(*value) : ordered_json(nullptr);
}

std::string name(guide::Suction suction) {
    switch (suction) {
        case guide::Suction::Off:
            return "off";
        case guide::Suction::On:
            return "on";
        case guide::Suction::Lost:
            return "lost";
    }
    return {};
}

std::string name(guide::Source source) {
    switch (source) {
        case guide::Source::Table:
            return "table";
        case guide::Source::Desk:
            return "desk";
        case guide::Source::FootSwitch:
            return "foot-switch";
    }
    return {};
}

std::string name(guide::CaseEnd end) {
    switch (end) {
        case guide::CaseEnd::Done:
            return "done";
        case guide::CaseEnd::Converted:
            return "converted";
        case guide::CaseEnd::Abandoned:
            return "abandoned";
    }
    return {};
}

ordered_json blade_json(const guide::CaseState& state) {
    const guide::Blade blade = guide::blade(state);
    return {{"seating", blade.seating},
            {"spokes_turned", blade.spokes_turned},
            {"raised", blade.raised},
            {"position", blade.position},
            {"to_zero", blade.to_zero},
            {"to_go", or_null(blade.to_go)},
            {"planned", or_null(blade.planned)},
            {"travel_um", blade.travel.um()},
            {"reliable", blade.reliable},
            {"over", blade.over}};
}

ordered_json clocks_json(const guide::CaseState& state, const measure::Instant& now) {
    ordered_json clocks = ordered_json::object();
    for (const auto& [id, spells] : state.clocks) {
        const auto reading = guide::clock_reading(state, id, now);
        if (!reading) continue;
        clocks[id] = {{"seconds", static_cast<double>(reading->ms) / 1000.0}, {"running", reading->running}, {"exact", reading->exact}};
    }
    return clocks;
}

ordered_json sutures_json(const guide::CaseState& state) {
    ordered_json sutures = ordered_json::array();
    const instrument::Trephine& trephine = state.inputs.trephine;
    for (const guide::Tied& tied : state.sutures) {
        const measure::Angle at = measure::centideg(tied.centideg);
        sutures.push_back({{"n", tied.n},
                           {"mark", or_null(eye::mark_place(at, trephine.marks, trephine.mark_offset).mark)},
                           {"deg", at.deg()},
                           {"clock", eye::clock_text(at)},
                           {"at", measure::rfc3339(tied.at)},
                           {"redone", tied.redone}});
    }
    return sutures;
}

ordered_json counts_json(const guide::CaseState& state) {
    ordered_json counts = ordered_json::object();
    for (const auto& [item, tally] : state.counts) {
        ordered_json checks = ordered_json::array();
        for (const guide::Check& check : tally.checks) {
            checks.push_back(
                {{"by", check.said.by}, {"seen", check.said.seen}, {"expected", check.said.expected}, {"at", measure::rfc3339(check.at)}});
        }
        ordered_json differences = ordered_json::array();
        for (const guide::Recorded& one : tally.differences) {
            differences.push_back(
                {{"seen", one.said.seen}, {"expected", one.said.expected}, {"why", one.said.why}, {"at", measure::rfc3339(one.at)}});
        }
        counts[item] = {{"opened", tally.opened},
                        {"passed_back", tally.passed_back},
                        {"expected", tally.expected()},
                        {"checks", checks},
                        {"differences", differences}};
    }
    return counts;
}

/// When the step that completes a pause was done.
ordered_json pause_json(const guide::CaseState& state, guide::Pause pause) {
    for (const guide::Phase& phase : state.brief.procedure.phases) {
        for (const guide::Step& step : phase.steps) {
            if (step.pause == pause && guide::confirmed(state, step.id)) return measure::rfc3339(state.steps.at(step.id).at);
        }
    }
    return nullptr;
}

ordered_json departures_json(const guide::CaseState& state) {
    ordered_json departures = ordered_json::array();
    for (const guide::Away& away : state.departures) {
        departures.push_back({{"what", away.what},
                              {"at", measure::rfc3339(away.at)},
                              {"back", away.back ? ordered_json(measure::rfc3339(*away.back)) : nullptr}});
    }
    return departures;
}

ordered_json steps_json(const guide::CaseState& state) {
    ordered_json steps = ordered_json::object();
    for (const auto& [id, done] : state.steps) steps[id] = {{"at", measure::rfc3339(done.at)}, {"skipped", done.skipped}};
    return steps;
}

}  // namespace

std::string state_json(const guide::CaseState& state, const std::string& seal, std::uint64_t not_on_disk, const measure::Instant& now) {
    const guide::Phase* phase = guide::current_phase(state);
    const guide::Step* step = guide::current_step(state);
    const std::string side = state.inputs.file.side == eye::Side::Right ? "right" : "left";
    ordered_json json{{"case", state.inputs.file.reference},
                      {"eye", side},
                      {"phase", phase == nullptr ? ordered_json(nullptr) : ordered_json(phase->id)},
                      {"step", step == nullptr ? ordered_json(nullptr) : ordered_json(step->id)},
                      {"holder", state.holder ? ordered_json(name(*state.holder)) : nullptr},
                      {"blade", blade_json(state)},
                      {"suction", name(state.suction)},
                      {"clocks", clocks_json(state, now)},
                      {"sutures", sutures_json(state)},
                      {"counts", counts_json(state)},
                      {"pauses",
                       {{"sign-in", pause_json(state, guide::Pause::SignIn)},
                        {"time-out", pause_json(state, guide::Pause::TimeOut)},
                        {"sign-out", pause_json(state, guide::Pause::SignOut)}}},
                      {"departures", departures_json(state)},
                      {"scans", scans_json(state)},
                      {"tissue", tissue_json(state, measure::day_of(now))},
                      {"told", told_json(state)},
                      {"reasons_owed", state.reasons_owed},
                      {"not_on_disk", not_on_disk},
                      {"closed", state.closed.has_value()},
                      {"ended", state.closed ? ordered_json(name(*state.closed)) : ordered_json(nullptr)},
                      {"sealed", !seal.empty()},
                      {"seal", seal.empty() ? ordered_json(nullptr) : ordered_json(seal)},
                      {"side_entered", !state.side.empty()},
                      {"events", state.last},
                      {"steps", steps_json(state)}};
    if (state.ring)
        json["ring"] = state.ring->long_axis_centideg ? ordered_json(*state.ring->long_axis_centideg / 100.0) : ordered_json("round");
    return json.dump(2) + "\n";
}

namespace {

/// A clock by its words, a phase by its title.
std::string clock_name(const guide::CaseState& state, const std::string& id, const screen::Words& words) {
    if (words.has("clock." + id)) return words("clock." + id);
    const auto& phases = state.brief.procedure.phases;
    const auto phase = std::ranges::find(phases, id, &guide::Phase::id);
    return phase == phases.end() ? id : phase->title;
}

}  // namespace

std::string state_text(const guide::CaseState& state, const std::string& seal, const measure::Instant& now, const screen::Words& words) {
    const guide::Step* step = guide::current_step(state);
    const guide::Blade blade = guide::blade(state);
    std::string text =
        words("state.case", {state.inputs.file.reference, state.side.empty() ? words("strip.eye_unknown") : words("strip." + state.side)}) +
        "\n";
    text += state.closed ? words(seal.empty() ? "closed.not_sealed" : "state.closed") + " (" +
                               words("state.ended_" + std::string(name(*state.closed))) + ")\n"
                         : words("state.step", {step == nullptr ? "" : screen::filled(step->title, state, words)}) + "\n";
    const std::string planned = blade.planned ? std::to_string(*blade.planned) : words(state.plan ? "plan.to_entry" : "plan.open");
    text += words("state.blade", {std::to_string(blade.position), planned, std::to_string(blade.spokes_turned)}) + "\n";
    if (state.suction == guide::Suction::Lost) text += words("lost.title") + "\n";
    if (!blade.reliable) text += words("section.not_reliable") + "\n";
    text += words("state.sutures", {std::to_string(state.sutures.size()), std::to_string(guide::sutures_planned(state))}) + "\n";
    for (const auto& [id, spells] : state.clocks) {
        const auto reading = guide::clock_reading(state, id, now);
        if (reading)
            text += words("state.clock", {clock_name(state, id, words), screen::reading_text(*reading, words),
                                          words(reading->running ? "state.running" : "state.stopped")}) +
                    "\n";
    }
    if (const guide::ScanSeen* scan = guide::standing_scan(state)) {
        for (const guide::Objection& one : scan->said.against) {
            const auto values = one.what == guide::Against::WrongSize ? words.figures(one.values) : one.values;
            text += words("state.scan", {std::to_string(scan->seq), words("scan." + std::string(guide::name(one.what)), values)}) + "\n";
        }
    }
    if (!state.reasons_owed.empty()) text += words("refused.reason-owed") + "\n";
    if (!seal.empty()) text += words("state.seal", {seal}) + "\n";
    return text;
}

}  // namespace graftside
