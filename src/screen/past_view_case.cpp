// One past case again, as it was recorded: what its locked record says, its clocks and its marks on a line of minutes.
#include "eye/frame.hpp"
#include "guide/tissue.hpp"
#include "measure/expect.hpp"
#include "screen/format.hpp"
#include "screen/pages.hpp"
#include "screen/past_view_parts.hpp"
#include "screen/scan_text.hpp"

#include <algorithm>
#include <utility>

namespace screen {
namespace {

using guide::CaseState;
using measure::Instant;

constexpr double ms_a_minute = 60'000;

/// The first moment that any clock was started.
Instant time_zero(const CaseState& state) {
    std::optional<Instant> first{};
    for (const auto& clock : state.clocks) {
        for (const guide::Spell& spell : clock.second) {
            if (!first || spell.from.utc_ms < first->utc_ms) first = spell.from;
        }
    }
    return first.value_or(Instant{});
}

double minutes(const Instant& from, const Instant& to) { return static_cast<double>(measure::elapsed(from, to).ms) / ms_a_minute; }

std::string cut_text(const guide::CutEnd end, const Words& words) {
    switch (end) {
        case guide::CutEnd::AtPlan:
            return words("past-view.cut_at_plan");
        case guide::CutEnd::Entered:
            return words("past-view.cut_entered");
        case guide::CutEnd::Surgeon:
            return words("past-view.cut_surgeon");
    }
    measure::expect(false);
    return "";
}

void add(PastModel& made, std::string label, std::string value) {
    made.rows.push_back({.label = std::move(label), .value = std::move(value)});
}

/// The packs that were read and used, by what is in them: one row each, however many were opened.
void add_packs(PastModel& made, const CaseState& state, const Words& words) {
    std::string trephine{}, punch{}, other{};
    for (const guide::ScanSeen& scan : state.scans) {
        const guide::Item& item = scan.said.item;
        if (item.kind != guide::ItemKind::Pack || scan.put_aside || scan.completed) continue;
        std::string& text = item.instrument == state.inputs.trephine.id ? trephine
                            : item.instrument == state.inputs.punch.id  ? punch
                                                                        : other;
        text += (text.empty() ? "" : ", ") + item_text(item, words);
    }
    for (const auto& [id, text] : {std::pair("trephine_lot", trephine), std::pair("punch_lot", punch), std::pair("other_packs", other)})
        if (!text.empty()) add(made, words(std::string("paper.") + id), text);
}

/// What was read, told and counted.
void add_told(PastModel& made, const CaseState& state, const Words& words) {
    if (const guide::ScanSeen* tissue = guide::tissue_read(state))
        add(made, words("paper.donation"), guide::tissue_text(tissue->said.item));
    add_packs(made, state, words);
    for (const auto& one : state.materials) {
        const std::string lot = one.fact.lot.empty() ? "" : ", " + words("paper.lot", {one.fact.lot});
        add(made, words("packs.sutures"), one.fact.material + lot);
    }
    if (state.ring && !state.ring->long_axis_centideg) add(made, words("past-view.ring"), words("ring.round"));
    if (state.ring && state.ring->long_axis_centideg)
        add(made, words("past-view.ring"),
            words("past-view.oval", {eye::short_clock_text(measure::centideg(*state.ring->long_axis_centideg))}));
    if (state.knots) add(made, words("packs.knots"), words("packs.knots_" + std::string(guide::name(state.knots->fact.side))));
    for (const auto& entry : state.specimens) {
        const guide::SpecimenTold& told = entry.second.fact;
        add(made, words("packs." + std::string(guide::name(told.what))), words("specimen.to_" + std::string(guide::name(told.to))));
    }
    for (const guide::CountItem& item : state.brief.unit.counts) {
        const guide::Tally& tally = state.counts.at(item.id);
        add(made, item.title, words("count.line", {std::to_string(tally.opened), std::to_string(tally.passed_back)}));
    }
}

void record_part(PastModel& made, const CaseState& state, const Words& words) {
    if (state.closed) add(made, words("past-view.ended"), end_text(*state.closed, words));
    for (const Row& row : record_rows(state, {}, words)) add(made, row.label, row.value);
    if (!state.seatings.empty() && state.seatings.back().ended)
        add(made, words("past-view.cut"), cut_text(*state.seatings.back().ended, words));
    if (state.depth) add(made, words("past-view.depth"), um_text(*state.depth));
    add_told(made, state, words);
    picture::ClockFace face = clock_face(state, words);
    face.next.clear();
    made.picture = std::move(face);
}

/// The time from the first start of a clock to its last stop, and each spell as a stretch.
void add_clock(PastModel& made, const CaseState& state, const guide::ClockId& id, std::string label, const Words& words) {
    const auto reading = guide::clock_reading(state, id, {});
    if (!reading) return;
    const Instant zero = time_zero(state);
    picture::SpanMark mark{};
    for (const guide::Spell& spell : state.clocks.at(id))
        mark.spans.push_back({minutes(zero, spell.from), minutes(zero, spell.to.value_or(spell.from))});
    const std::string from = measure::hour_minute(state.clocks.at(id).front().from);
    made.rows.push_back({.label = std::move(label),
                         .value = words("past-view.clock_value", {from, minutes_text(*reading, words)}),
                         .mark = std::move(mark)});
}

void clocks_part(PastModel& made, const CaseState& state, const Words& words) {
    for (const guide::Phase& phase : state.brief.procedure.phases) add_clock(made, state, phase.id, phase.title, words);
    for (const char* id : {"suction", "decompressed", "open-sky", "donor-out", "case"})
        add_clock(made, state, id, clock_title(id, words), words);
}

/// What was marked at a moment.
struct Moment {
    Instant at{};
    std::string label{}, value{};
};

std::vector<Moment> moments(const CaseState& state, const Words& words) {
    std::vector<Moment> all{};
    for (const auto& [id, done] : state.steps) {
        const guide::Step* step = guide::find_step(state.brief.procedure, id);
        const std::string at = measure::hour_minute(done.at);
        all.push_back({.at = done.at,
                       .label = step == nullptr ? id : filled(step->title, state, words),
                       .value = done.skipped ? words("past-view.skipped", {at}) : at});
    }
    for (const guide::Away& away : state.departures) {
        const std::string title = guide::departure_title(state.brief.procedure, away.what);
        all.push_back({.at = away.at, .label = words("past-view.departed", {title}), .value = measure::hour_minute(away.at)});
    }
    for (const auto& [at, text] : state.notes)
        all.push_back({.at = at, .label = words("past-view.note", {text}), .value = measure::hour_minute(at)});
    std::stable_sort(all.begin(), all.end(), [](const Moment& a, const Moment& b) { return a.at.utc_ms < b.at.utc_ms; });
    return all;
}

void marks_part(PastModel& made, const CaseState& state, const Words& words) {
    const Instant zero = time_zero(state);
    for (const Moment& moment : moments(state, words)) {
        const double at = minutes(zero, moment.at);
        made.rows.push_back({.label = moment.label, .value = moment.value, .mark = picture::IntervalMark{at, at, at}});
    }
}

/// The last moment that a row shows.
double most_minutes(const PastModel& model) {
    double most = 0;
    for (const PastRow& row : model.rows) {
        if (const auto* moment = std::get_if<picture::IntervalMark>(&row.mark)) most = std::max(most, moment->at);
        const auto* spans = std::get_if<picture::SpanMark>(&row.mark);
        if (spans != nullptr) most = std::max(most, spans->spans.back().to);
    }
    return most;
}

}  // namespace

void one_case_page(PastModel& made, const CaseState& state, const PastPage& page, const Words& words) {
    const plan::CaseFile& file = state.inputs.file;
    made.title = words("past-view.case", {file.reference, measure::iso(file.date)});
    made.lines = {
        words("past-view.case_again", {words(file.side == eye::Side::Right ? "side.right" : "side.left"),
                                       words("strip.sizes", {size_text(file.host_diameter, words), size_text(file.donor.diameter, words)}),
                                       reason_text(file.reason, words)}),
        words("past-view.read_only")};
    if (page.page == "record") return record_part(made, state, words);
    if (page.page == "clocks") clocks_part(made, state, words);
    if (page.page == "marks") marks_part(made, state, words);
    if (made.rows.empty()) made.rows = {sentence(words("past-view.no_marks"))};
    made.axis = minutes_axis(most_minutes(made), words);
}

}  // namespace screen
