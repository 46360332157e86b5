#include "eye/frame.hpp"
#include "guide/tissue.hpp"
#include "paper/format.hpp"
#include "paper/sheet.hpp"

#include <algorithm>

namespace paper {
namespace {

constexpr double ms_a_minute = 60'000;

double minutes(const measure::Instant& from, const measure::Instant& to) {
    return static_cast<double>(measure::elapsed(from, to).ms) / ms_a_minute;
}

/// The moment from which the time line counts: the first that any clock was started.
measure::Instant time_zero(const guide::CaseState& state, const measure::Instant& otherwise) {
    std::optional<measure::Instant> first{};
    for (const auto& clock : state.clocks) {
        for (const guide::Spell& spell : clock.second) {
            if (!first || spell.from.utc_ms < first->utc_ms) first = spell.from;
        }
    }
    return first.value_or(otherwise);
}

Bar bar(const Record& record, const guide::ClockId& id, std::string label, const Words& words) {
    Bar made{.label = std::move(label), .value = words("paper.not_recorded")};
    const auto reading = guide::clock_reading(record.state, id, last_moment(record));
    if (!reading) return made;
    const std::vector<guide::Spell>& spells = record.state.clocks.at(id);
    const measure::Instant zero = time_zero(record.state, last_moment(record));
    for (const guide::Spell& spell : spells) {
        made.spans.push_back({minutes(zero, spell.from), minutes(zero, spell.to.value_or(last_moment(record)))});
    }
    made.value = words("paper.clock_value", {measure::hour_minute(spells.front().from), duration_text(*reading, words)});
    if (spells.size() > 1) made.value += ", " + words("paper.spells", {number(spells.size())});
    if (reading->running) made.value += ", " + words("paper.still_running");
    return made;
}

std::vector<Bar> bars(const Record& record, const Words& words) {
    std::vector<Bar> made{};
    for (const guide::Phase& phase : record.state.brief.procedure.phases) {
        made.push_back(bar(record, phase.id, phase.title, words));
        made.back().phase = true;
    }
    for (const char* clock : {"suction", "decompressed", "open-sky", "donor-out", "case"}) {
        made.push_back(bar(record, clock, words(std::string("clock.") + clock), words));
    }
    return made;
}

picture::ClockFace face_as_placed(const guide::CaseState& state, const Words& words) {
    const plan::Inputs& inputs = state.inputs;
    picture::ClockFace face{.side = inputs.file.side,
                            .seat = inputs.file.seat,
                            .marks = inputs.trephine.marks,
                            .mark_offset = inputs.trephine.mark_offset,
                            .dots = 0,
                            .seat_label = words("face.seat"),
                            .nasal_label = words("face.nasal"),
                            .temporal_label = words("face.temporal")};
    for (const guide::Tied& tied : state.sutures) {
        face.done.push_back(measure::centideg(tied.centideg));
        face.numbered.push_back({.n = tied.n, .at = measure::centideg(tied.centideg)});
    }
    return face;
}

/// "6.  7:30  mark 11"
std::vector<std::string> placed(const guide::CaseState& state, const Words& words) {
    std::vector<guide::Tied> tied = state.sutures;
    std::sort(tied.begin(), tied.end(), [](const guide::Tied& a, const guide::Tied& b) { return a.n < b.n; });
    std::vector<std::string> made{};
    for (const guide::Tied& one : tied) {
        made.push_back(words("paper.placed", {number(one.n), hour_text(one.centideg), mark_text(one.centideg, state.inputs, words)}));
    }
    return made;
}

/// Which sutures were cut out, and how often.
std::string redone_text(const guide::CaseState& state, const Words& words) {
    std::string text{};
    for (const auto& cut : state.cut_sutures) {
        text += (text.empty() ? "" : ", ") + words("paper.redone_value", {number(cut.first), number(cut.second)});
    }
    return text.empty() ? words("paper.none") : text;
}

std::string ring_text(const guide::CaseState& state, const Words& words) {
    if (!state.ring) return words("paper.not_recorded");
    const auto axis = state.ring->long_axis_centideg;
    return axis ? words("paper.oval", {hour_text(*axis), hour_text(*axis + 18000)}) : words("paper.round");
}

/// The side on which the knots are buried as told, else when the step was done.
std::string knots_text(const guide::CaseState& state, const Words& words) {
    if (!state.knots) return step_text(state, "knots", "paper.knots_value", words);
    const std::string side = words("paper.knots_" + std::string(guide::name(state.knots->fact.side)));
    return words("paper.knots_told", {side, measure::hour_minute(state.knots->at)});
}

Section suture_section(const guide::CaseState& state, const Words& words) {
    const std::string tied = words("paper.tied_value", {number(state.sutures.size()), number(guide::sutures_planned(state))});
    Section made{.title = words("paper.sutures"),
                 .rows = {{words("paper.pattern"), pattern_text(state.inputs.file.pattern, words)},
                          {words("paper.tied"), tied},
                          {words("paper.redone"), redone_text(state, words)},
                          {words("paper.ring"), ring_text(state, words)},
                          {words("paper.knots"), knots_text(state, words)}}};
    if (state.inputs.file.pattern.running > 0 && state.inputs.file.pattern.interrupted > 0) {
        made.rows.push_back({words("paper.running"), step_text(state, "running", "paper.at", words)});
    }
    return made;
}

std::string late_text(const Record& record, const Words& words) {
    std::string text{};
    for (const auto& late : all_of<guide::WrittenLate>(record)) {
        if (!text.empty()) text += "; ";
        text += words("paper.late_value", {number(late.fact->first), number(late.fact->last), measure::hour_minute(late.event->at)});
    }
    return text.empty() ? words("paper.none") : text;
}

std::string seal_text(const Record& record, const Words& words) {
    switch (record.seal.state) {
        case Seal::State::None:
            return words(record.state.closed ? "paper.not_sealed" : "paper.not_closed");
        case Seal::State::Whole:
            return words("paper.sealed", {record.seal.fingerprint});
        case Seal::State::Wrong:
            return words("paper.seal_wrong", {record.seal.fingerprint});
    }
    return {};
}

Section record_few(const Record& record, const Words& words) {
    return {.rows = {{words("paper.late"), late_text(record, words)},
                     {words("paper.corrected"), number(all_of<guide::TimeCorrected>(record).size())},
                     {words("paper.restarted"), number(all_of<guide::RunStarted>(record).size())},
                     {words("paper.reasons_owed"), number(record.state.reasons_owed.size())}}};
}

Section record_section(const Record& record, const Words& words) {
    const std::string chain = record.seal.trouble.empty() ? words("paper.chain_whole") : record.seal.trouble;
    return {.title = words("paper.record"),
            .rows = {{words("paper.hash", {number(record.events.size())}), record.seal.hash},
                     {words("paper.chain"), chain},
                     {words("paper.seal"), seal_text(record, words)}}};
}

/// What the plan warned of when it was agreed, and what always stands beside a depth.
std::vector<std::string> cautions(const guide::CaseState& state, const Words& words) {
    std::vector<std::string> made{};
    if (state.plan) {
        for (const plan::Note& note : state.plan->notes) {
            if (note.level != plan::Note::Level::Info) made.push_back(note_text(note, words));
        }
    }
    if (!state.plan || state.plan->ladder.empty()) made.push_back(words("plan.caution"));
    return made;
}

Lines otherwise_lines(const Record& record, const Words& words) {
    Lines made{.title = words("paper.otherwise"), .entries = otherwise(record, words)};
    if (made.entries.empty()) made.entries.push_back(words("paper.nothing_otherwise"));
    return made;
}

std::string status_word(const Record& record) {
    if (record.seal.state == Seal::State::Wrong || !record.seal.trouble.empty()) return "damaged";
    if (!record.state.closed) return "open";
    return record.seal.state == Seal::State::Whole ? "locked" : "unsealed";
}

}  // namespace

Sheet sheet(const Record& record, const Words& words) {
    const guide::CaseState& state = record.state;
    const plan::CaseFile& file = state.inputs.file;
    const std::string status = "paper.status_" + status_word(record);
    return {
        .title = words("paper.handover"),
        .side = words(file.side == eye::Side::Right ? "strip.right" : "strip.left"),
        .reference = words("paper.case", {file.reference}),
        .under = words("paper.under", {measure::iso(file.date), size_text(file.host_diameter, words), size_text(file.donor.diameter, words),
                                       oversize_text(file.donor.diameter - file.host_diameter, words)}),
        .status = words(status),
        .status_line = state.side.empty() ? words("paper.side_not_entered") : words(status + "_line"),
        .invented = file.invented ? words("paper.invented") : "",
        .times_title = words("paper.times"),
        .times = bars(record, words),
        .depth = depth_section(record, words),
        .sutures = suture_section(state, words),
        .tissue = tissue_section(record, words),
        .counts = count_section(record, words),
        .record_few = record_few(record, words),
        .record = record_section(record, words),
        .face = face_as_placed(state, words),
        .placed = placed(state, words),
        .otherwise = otherwise_lines(record, words),
        .cautions = {.title = words("paper.cautions"), .entries = cautions(state, words)},
        .not_a_device = words("paper.not_a_device"),
        .more = [words](std::size_t count) { return words("paper.more", {number(count)}); }};
}

}  // namespace paper
