// The blade on the handover sheet: planned, counted, what is expected left, and how it ended.
#include "eye/frame.hpp"
#include "paper/format.hpp"
#include "paper/sheet.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace paper {
namespace {

std::string planned_text(const guide::CaseState& state, const Words& words) {
    if (!state.plan || !state.plan->target) return words("paper.not_recorded");
    const plan::Target& target = *state.plan->target;
    const std::string raise = number(target.raise);
    if (!target.spokes) return words("plan.spokes_entry", {raise});
    const std::string text = words("plan.spokes", {raise, number(*target.spokes + state.moved)});
    return state.moved == 0 ? text : text + ", " + words("paper.moved", {number(state.moved)});
}

std::string seating_text(const guide::Seating& seating, const Words& words) {
    return words("paper.counted_value", {number(seating.position()), number(seating.down), number(seating.up)});
}

std::string counted_text(const guide::CaseState& state, const Words& words) {
    if (state.seatings.empty()) return words("paper.not_recorded");
    std::string text{};
    for (const guide::Seating& seating : state.seatings) text += (text.empty() ? "" : "; ") + seating_text(seating, words);
    return text;
}

std::string seatings_text(const guide::CaseState& state, const Words& words) {
    if (state.seatings.empty()) return words("paper.not_recorded");
    if (state.seatings.size() == 1) return words("paper.second_cut_no");
    return words("paper.second_cut_yes", {number(state.seatings.size())});
}

/// Whether the chamber was entered by the trephine: at which seating and spoke. Asked of the seatings and of the departures.
std::string entered_text(const Record& record, const Words& words) {
    const guide::CaseState& state = record.state;
    bool ended = false;
    for (const guide::Seating& seating : state.seatings) {
        if (seating.ended == guide::CutEnd::Entered) return words("paper.entered_yes", {number(seating.position())});
        ended = ended || seating.ended.has_value();
    }
    const auto said = [](const guide::Away& away) { return away.what == "entered-by-trephine"; };
    if (std::any_of(state.departures.begin(), state.departures.end(), said)) return words("paper.yes");
    return ended ? words("paper.no") : words("paper.not_recorded");
}

std::string thinnest_text(const guide::CaseState& state, const Words& words) {
    if (!state.plan || !state.plan->wall) return words("paper.not_recorded");
    const plan::Wall& wall = *state.plan->wall;
    const std::string where = wall.thinnest_at ? hour_text(wall.thinnest_at->centideg()) : words("paper.place_unknown");
    return words("paper.thinnest_value", {whole_um(wall.thinnest), number(std::lround(1.96 * wall.u.um())), where});
}

/// The rung of the ladder at which the blade was left; none where no depth may be told.
const plan::Rung* rung_at_end(const guide::CaseState& state) {
    const guide::Blade blade = guide::blade(state);
    if (!state.plan || state.seatings.empty() || !blade.reliable || blade.position < 0) return nullptr;
    const auto at = static_cast<std::size_t>(blade.position);
    return at < state.plan->ladder.size() ? &state.plan->ladder[at] : nullptr;
}

std::string left_text(const guide::CaseState& state, const Words& words) {
    if (!state.seatings.empty() && !guide::blade(state).reliable) return words("section.not_reliable");
    const plan::Rung* rung = rung_at_end(state);
    if (rung == nullptr) return words("section.no_depth");
    return words("paper.left_value", {whole_um(rung->reserve), whole_um(rung->reserve_u95), chance_text(rung->entry_chance, words)});
}

/// What was measured afterwards, not estimated: the newest word of it.
std::string measured_text(const Record& record, const Words& words) {
    const auto measured = all_of<guide::DepthMeasured>(record);
    if (measured.empty()) return words("paper.not_recorded");
    const guide::DepthMeasured& newest = *measured.back().fact;
    const std::string text = words("paper.um", {whole_um(newest.depth)});
    return newest.how.empty() ? text : text + ", " + newest.how;
}

std::string suction_text(const Record& record, const Words& words) {
    const auto reading = guide::clock_reading(record.state, "suction", last_moment(record));
    return reading ? duration_text(*reading, words) : words("paper.not_recorded");
}

std::size_t spokes_undone(const Record& record) {
    const auto spokes = all_of<guide::SpokeTurned>(record);
    return static_cast<std::size_t>(
        std::count_if(spokes.begin(), spokes.end(), [&](const auto& one) { return taken_back(record, one.event->seq); }));
}

}  // namespace

Section depth_section(const Record& record, const Words& words) {
    const guide::CaseState& state = record.state;
    const instrument::Trephine& trephine = state.inputs.trephine;
    return {.title = words("paper.depth"),
            .rows = {{words("paper.planned"), planned_text(state, words)},
                     {words("paper.counted"), counted_text(state, words)},
                     {words("paper.undone"), number(spokes_undone(record))},
                     {words("paper.second_cut"), seatings_text(state, words)},
                     {words("paper.suction"), suction_text(record, words)},
                     {words("paper.entered"), entered_text(record, words)},
                     {words("paper.thinnest"), thinnest_text(state, words)},
                     {words("paper.left"), left_text(state, words)},
                     {words("paper.measured"), measured_text(record, words)},
                     {words("paper.advance"), words("paper.advance_value", {short_text(trephine.advance.um(), words), trephine.name})}}};
}

}  // namespace paper
