#include "eye/frame.hpp"
#include "measure/expect.hpp"
#include "paper/card.hpp"
#include "paper/format.hpp"
#include "plan/ladder.hpp"
#include "plan/sutures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace paper {
namespace {

/// What says that the planned number itself is in doubt: the card may have no room for all.
constexpr std::array<std::string_view, 5> first_cautions{"own-number-through", "over-entry-limit", "no-depth-claim", "aim-capped",
                                                         "fit-under-readings"};
constexpr int spare_spokes = 4;  // beyond the plan, or beyond where entry is all but sure

std::vector<Ticks> spokes(const plan::Target& target, const Words& words) {
    std::vector<Ticks> made{};
    if (target.raise > 0) {
        made.push_back({.label = words("paper.raise"), .planned = target.raise, .then = words("paper.raise_then")});
        made.push_back({.label = words("paper.to_zero"), .planned = target.raise, .then = words("paper.zero_then")});
    }
    if (target.spokes) {
        made.push_back(
            {.label = words("paper.below_zero"), .planned = *target.spokes, .spare = spare_spokes, .then = words("paper.over_why")});
    } else {
        const int sure = target.entry_to.value_or(target.entry_from.value_or(12));
        made.push_back({.label = words("paper.below_zero"), .planned = sure, .spare = spare_spokes, .then = words("figure.watch")});
    }
    return made;
}

std::string spokes_line(const plan::Target& target, const Words& words) {
    if (target.spokes) return words("plan.spokes", {number(target.raise), number(*target.spokes)});
    const std::string line = words("plan.spokes_entry", {number(target.raise)});
    if (!target.entry_from || !target.entry_to) return line;
    return line + ", " + words("figure.expected", {number(*target.entry_from), number(*target.entry_to)});
}

/// What the plan is expected to leave; to entry there is nothing to leave.
std::string left_text(const plan::Inputs& inputs, const plan::Plan& plan, const Words& words) {
    if (plan.ladder.empty()) return words("section.no_depth");
    if (!plan.target->spokes) return words("plan.to_entry");
    const auto rung = plan::rung_at(plan, inputs.trephine, *plan.target->spokes);
    return words("paper.left_value", {whole_um(rung->reserve), whole_um(rung->reserve_u95), chance_text(rung->entry_chance, words)});
}

std::vector<Pair> figures(const plan::Inputs& inputs, const plan::Plan& plan, const Words& words) {
    const instrument::Trephine& trephine = inputs.trephine;
    std::vector<Pair> rows{
        {words("plan.host"), size_text(inputs.file.host_diameter, words) + ", " + trephine.name},
        {words("plan.donor"), size_text(inputs.file.donor.diameter, words) + ", " + inputs.punch.name},
        {words("paper.oversize"), oversize_text(plan.sizes.oversize, words)},
        {words("paper.lower"), words(trephine.lower == instrument::Turn::Clockwise ? "turn.clockwise" : "turn.counter_clockwise")},
        {words("paper.advance"), words("paper.um", {short_text(trephine.advance.um(), words)})}};
    if (plan.wall) {
        const std::string where = plan.wall->thinnest_at ? hour_text(plan.wall->thinnest_at->centideg()) : words("paper.place_unknown");
        rows.push_back({words("paper.thinnest"), words("paper.thinnest_value", {whole_um(plan.wall->thinnest),
                                                                                number(std::lround(1.96 * plan.wall->u.um())), where})});
    }
    rows.push_back({words("paper.left"), left_text(inputs, plan, words)});
    return rows;
}

picture::ClockFace face(const plan::Inputs& inputs, const plan::Plan& plan, const Words& words) {
    picture::ClockFace made{.side = inputs.file.side,
                            .seat = inputs.file.seat,
                            .marks = inputs.trephine.marks,
                            .mark_offset = inputs.trephine.mark_offset,
                            .dots = 0,
                            .seat_label = words("face.seat"),
                            .nasal_label = words("face.nasal"),
                            .temporal_label = words("face.temporal")};
    for (const plan::Suture& suture : plan.order) made.numbered.push_back({.n = suture.n, .at = measure::centideg(suture.centideg)});
    return made;
}

std::vector<std::string> order(const plan::Inputs& inputs, const plan::Plan& plan, const Words& words) {
    std::vector<std::string> made{};
    for (const plan::Suture& one : plan.order) {
        made.push_back(words("paper.placed", {number(one.n), hour_text(one.centideg), mark_text(one.centideg, inputs, words)}));
    }
    return made;
}

std::vector<std::string> running(const plan::Inputs& inputs, const plan::Plan& plan, const Words& words) {
    std::vector<std::string> made{};
    if (!plan.running) return made;
    for (const plan::RunningPath& path : plan::running_paths(inputs.file.pattern, *plan.running)) {
        made.push_back(words("paper.running_path", {number(path.bites.size()), hour_text(path.bites.front().centideg()),
                                                    words(path.clockwise ? "turn.clockwise" : "turn.counter_clockwise")}));
    }
    return made;
}

std::vector<std::string> cautions(const plan::Plan& plan, const Words& words) {
    std::vector<std::string> made{words("paper.lost_suction")};
    if (plan.ladder.empty()) made.push_back(words("plan.caution"));
    for (const bool decisive : {true, false}) {
        for (const plan::Note& note : plan.notes) {
            const bool first = std::find(first_cautions.begin(), first_cautions.end(), note.code) != first_cautions.end();
            if (note.level == plan::Note::Level::Watch && first == decisive) made.push_back(note_text(note, words));
        }
    }
    return made;
}

std::vector<std::string> by_hand(const plan::Donor& donor, const Words& words) {
    std::vector<std::string> made{words("paper.hand_donor_place")};
    if (!donor.donation) made.push_back(words("paper.hand_donation"));
    for (const char* id : {"suction_on", "suction_off", "lost_at", "entered", "button_out", "donor_on", "fourth", "ring", "counts"}) {
        made.push_back(words(std::string("paper.hand_") + id));
    }
    return made;
}

}  // namespace

Card card(const guide::Brief& brief, const plan::Plan& plan, const Words& words) {
    measure::expect(plan.target.has_value());
    const plan::CaseFile& file = brief.inputs.file;
    std::vector<Pair> rows = figures(brief.inputs, plan, words);
    if (file.donor.donation) rows.push_back({words("paper.donation"), *file.donor.donation});
    return {.title = words("paper.card"),
            .if_dead = words("paper.if_dead"),
            .side = words(file.side == eye::Side::Right ? "strip.right" : "strip.left"),
            .reference = words("paper.case", {file.reference}),
            .under = words("paper.card_under", {measure::iso(file.date)}),
            .invented = file.invented ? words("paper.invented") : "",
            .spokes_title = words("paper.spokes"),
            .spokes_line = spokes_line(*plan.target, words),
            .spokes = spokes(*plan.target, words),
            .figures_title = words("paper.figures"),
            .sutures_title = words("paper.sutures_order"),
            .by_hand_title = words("paper.by_hand"),
            .cautions_title = words("paper.cautions"),
            .figures = std::move(rows),
            .face = face(brief.inputs, plan, words),
            .pattern = pattern_text(file.pattern, words),
            .running = running(brief.inputs, plan, words),
            .order = order(brief.inputs, plan, words),
            .by_hand = by_hand(file.donor, words),
            .cautions = cautions(plan, words),
            .not_a_device = words("paper.not_a_device"),
            .more = [words](std::size_t count) { return words("paper.more_card", {number(count)}); },
            .more_spokes = [words](std::size_t count) { return words("paper.more_spokes", {number(count)}); }};
}

}  // namespace paper
