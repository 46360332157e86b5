// The card in the middle: what to do now, its picture, what is read aloud.
#include "eye/frame.hpp"
#include "measure/expect.hpp"
#include "screen/format.hpp"
#include "screen/own_past.hpp"
#include "screen/pages.hpp"

#include <algorithm>
#include <cstdlib>

namespace screen {
namespace {

using guide::CaseState;
using guide::Closes;
using guide::Step;

/// The rung of the ladder at a blade position; none beyond it, or where no depth is claimed.
const plan::Rung* rung_at(const CaseState& state, int position) {
    if (!state.plan) return nullptr;
    const auto found =
        std::find_if(state.plan->ladder.begin(), state.plan->ladder.end(), [&](const plan::Rung& rung) { return rung.spoke == position; });
    return found == state.plan->ladder.end() ? nullptr : &*found;
}

picture::WallSection section(const CaseState& state, const Words& words) {
    const guide::Blade blade = guide::blade(state);
    picture::WallSection made{.advance = state.inputs.trephine.advance,
                              .position = blade.position,
                              .planned = blade.planned,
                              .surface_label = words("section.surface")};
    if (!blade.reliable) {
        made.foot = {words("section.not_reliable")};
        return made;
    }
    if (!state.plan || !state.plan->wall || state.plan->ladder.empty()) {
        made.foot = {words("section.no_depth")};
        return made;
    }
    const plan::Wall& wall = *state.plan->wall;
    made.wall = wall.thinnest;
    const std::string where = wall.thinnest_at ? words("section.at", {eye::short_clock_text(*wall.thinnest_at)}) : words("section.centre");
    // The band is named before it shows: a line that came later would shift the scale under the reader's eye.
    made.foot = {words("section.thinnest", {um_text(wall.thinnest), where}), words("section.band")};
    const plan::Rung* rung = blade.position > 0 ? rung_at(state, blade.position) : nullptr;
    if (rung != nullptr) {
        // Where the blade may be: its expected reach, with the 95 % interval of what is left.
        made.band_low = std::max(measure::nm(0), wall.thinnest - rung->reserve - rung->reserve_u95);
        made.band_high = wall.thinnest - rung->reserve + rung->reserve_u95;
    }
    return made;
}

}  // namespace

std::vector<std::string> usual_lines(const CaseState& state, const guide::Departure& departure, const Words& words) {
    std::vector<std::string> made{};
    for (const std::string& line : departure.lines) made.push_back(filled(line, state, words));
    // Said when the trephine is off the eye already: what is to be done with it is done.
    if (departure.id == "entered-by-trephine" && state.suction == guide::Suction::Off && made.size() > 1) made.erase(made.begin());
    if (departure.id == "suction-lost" && !guide::groove_begun(state)) {
        made.resize(std::min<std::size_t>(1, made.size()));
        made.insert(made.end(), {words("lost.uncut"), words("lost.uncut_usual")});
    }
    return made;
}

std::optional<std::string> depth_title(const CaseState& state, const Words& words) {
    const guide::Blade blade = guide::blade(state);
    if (blade.over > 0) return words(blade.over == 1 ? "cut.one_over" : "cut.over", {std::to_string(blade.over)});
    if (blade.planned && blade.to_go == 0 && blade.position > 0) return words("cut.reached");
    return std::nullopt;
}

/// Where suction was lost, what remains of the count: it is never resumed.
std::string kept_line(const CaseState& state, const Words& words) {
    const guide::Blade blade = guide::blade(state);
    if (blade.position <= 0) return "";
    return blade.planned ? words("figure.kept_of", {std::to_string(*blade.planned)}) : words("figure.kept");
}

Figure blade_figure(const CaseState& state, const Words& words) {
    const guide::Blade blade = guide::blade(state);
    const std::string below = std::to_string(std::max(0, blade.position));
    if (state.suction == guide::Suction::Lost) {
        const bool above = blade.position < 0;
        return {.numeral = std::to_string(std::abs(blade.position)),
                .under = words(above ? "figure.above_at_loss" : "figure.at_loss"),
                .line = kept_line(state, words)};
    }
    if (blade.to_zero > 0) {
        const std::string then = blade.to_go ? words.counted("figure.then", {std::to_string(*blade.to_go)}) : words("figure.then_entry");
        return {.numeral = std::to_string(blade.to_zero), .under = words("figure.to_zero"), .line = then, .to_zero = true};
    }
    if (!blade.planned) {
        const auto& target = state.plan->target;
        const std::string expected =
            target->entry_from && target->entry_to
                ? words("figure.expected", {std::to_string(*target->entry_from), std::to_string(*target->entry_to)})
                : words("figure.watch");
        return {.numeral = below, .under = words("figure.below"), .line = expected};
    }
    if (blade.over > 0) {
        // Never a bare figure: where the spokes to go stood, a 1 would be read as one to go.
        return {.numeral = "+" + std::to_string(blade.over),
                .under = words("figure.over"),
                .line = words("figure.past", {below, std::to_string(*blade.planned)}),
                .over = true};
    }
    return {.numeral = std::to_string(*blade.to_go),
            .under = words.counted("figure.to_go", {std::to_string(*blade.to_go)}),
            .line = words("figure.of", {below, std::to_string(*blade.planned)})};
}

namespace {

Row usual_row(const Words& words) { return {words("card.usual"), words("card.surgeon_decides")}; }

void add_usual(Card& made, const CaseState& state, const guide::Departure& departure, const Words& words) {
    for (const std::string& line : usual_lines(state, departure, words)) made.rows.push_back({"", line});
    made.foot = {usual_row(words)};
}

/// What is to be had ready for what follows, and which packs are opened.
void add_packs(Card& made, const Step& step, const Words& words) {
    if (!step.ready.empty()) made.foot.push_back({words("card.ready"), listed(step.ready)});
    if (!step.open_now.empty()) made.foot.push_back({words("card.open_now"), listed(step.open_now)});
    if (!step.open_later.empty()) made.foot.push_back({words("card.open_later"), listed(step.open_later)});
}

/// What is usual once suction is lost, beside how far the blade came.
Card lost_card(const CaseState& state, const Words& words) {
    Card made{.title = words("lost.title"), .level = Banner::Level::Watch, .figure = blade_figure(state, words)};
    const guide::Departure* lost = guide::find_departure(state.brief.procedure, "suction-lost");
    if (lost != nullptr) add_usual(made, state, *lost, words);
    return made;
}

void depth_card(Card& made, const CaseState& state, const Words& words) {
    const guide::Blade blade = guide::blade(state);
    made.figure = blade_figure(state, words);
    made.picture = section(state, words);
    made.cautions.clear();
    const guide::Departure* meanwhile = departure_standing(state);
    if (auto title = depth_title(state, words)) {
        made.title = *std::move(title);
        if (blade.over > 0) made.level = Banner::Level::Watch;
        made.lines = {words(blade.over > 0 ? "cut.over_line" : "cut.reached_line")};
    } else {
        made.title = meanwhile != nullptr ? meanwhile->title : filled(words("cut.title"), state, words);
        if (meanwhile != nullptr) made.level = level_of(*meanwhile);
        // What is usual then stands where it is said how to go on: both would contradict each other.
        if (meanwhile != nullptr) {
            made.lines = usual_lines(state, *meanwhile, words);
            made.foot = {usual_row(words)};
        }
        made.lines.resize(std::min<std::size_t>(meanwhile != nullptr ? 2 : 1, made.lines.size()));
        return;
    }
    if (meanwhile != nullptr) made.cautions = {meanwhile->title};
}

void suture_card(Card& made, const CaseState& state, const Words& words) {
    const auto next = guide::next_suture(state);
    made.picture = clock_face(state, words);
    made.cautions.clear();
    if (!next) return;
    const plan::Suture& suture = state.plan->order[static_cast<std::size_t>(*next - 1)];
    made.title = words("suture.title", {std::to_string(*next), eye::short_clock_text(measure::centideg(suture.centideg))});
    std::string line =
        suture.opposite && *suture.opposite < *next ? words("suture.opposite", {std::to_string(*suture.opposite)}) + " " : "";
    const std::string marks = std::to_string(state.inputs.trephine.marks);
    line += suture.host_mark ? words("suture.mark", {std::to_string(*suture.host_mark), marks})
                             : words("suture.between", {std::to_string(suture.between->first), std::to_string(suture.between->second)});
    line += " " + (suture.donor_mark ? words("suture.dot", {std::to_string(*suture.donor_mark)}) : words("suture.no_dot"));
    made.lines = {line};
    // What is looked at between the sutures: 180 degrees matters most, then the diamond of folds (textbook; common practice).
    if (*next == 3) made.lines.push_back(words("suture.halves"));
    if (*next == 5) made.lines.push_back(words("suture.diamond"));
}

void plan_card(Card& made, const CaseState& state, const Around& around, const Words& words) {
    if (!around.proposed) return;
    const plan::Plan& plan = *around.proposed;
    const plan::CaseFile& file = state.inputs.file;
    made.rows = {{words("plan.host"), words("unit.mm", {size_text(file.host_diameter, words)})},
                 {words("plan.donor"), words("unit.mm", {size_text(file.donor.diameter, words)})}};
    if (plan.target) made.rows.push_back({words("plan.blade"), spokes_text(*plan.target, 0, words)});
    if (plan.wall)
        made.rows.push_back({words("plan.wall"), words("plan.wall_value", {um_text(plan.wall->thinnest),
                                                                           um_text(measure::from_um(1.96 * plan.wall->u.um()))})});
    if (plan.target && plan.target->spokes && *plan.target->spokes < static_cast<int>(plan.ladder.size())) {
        const plan::Rung& rung = plan.ladder[static_cast<std::size_t>(*plan.target->spokes)];
        made.rows.push_back({words("plan.left"), words("plan.left_value", {um_text(rung.reserve), um_text(rung.reserve_u95)})});
        made.rows.push_back({words("plan.chance"), chance_text(rung.entry_chance, words)});
    }
    made.rows.push_back({words("plan.sutures"), pattern_text(file.pattern, words)});
    made.cautions.clear();
    for (const plan::Note& note : plan.notes) {
        if (note.level == plan::Note::Level::Stop) made.cautions.push_back(note_text(note, words));
    }
    if (!plan.ladder.empty()) made.cautions.push_back(words("plan.caution"));
}

/// The case as it will stand once the plan is agreed: what is read aloud before that names its spokes.
CaseState as_proposed(CaseState state, const Around& around) {
    if (!state.plan && around.proposed) state.plan = *around.proposed;
    return state;
}

Card departure_card(const CaseState& state, const guide::Departure& departure, const Words& words) {
    Card made{.title = departure.title, .level = level_of(departure)};
    add_usual(made, state, departure, words);
    return made;
}

}  // namespace

picture::ClockFace clock_face(const CaseState& state, const Words& words) {
    const plan::CaseFile& file = state.inputs.file;
    picture::ClockFace face{
        .side = file.side, .seat = file.seat, .marks = state.inputs.trephine.marks, .mark_offset = state.inputs.trephine.mark_offset};
    face.dots = guide::confirmed(state, "donor-on") ? state.inputs.punch.dots : 0;
    for (const guide::Tied& tied : state.sutures) face.done.push_back(measure::centideg(tied.centideg));
    for (const plan::Suture& suture : state.plan ? state.plan->order : std::vector<plan::Suture>{}) {
        if (face.next.size() == 2 || !face.dots) break;
        if (guide::find_tied(state, suture.n) == nullptr) face.next.push_back({.n = suture.n, .at = measure::centideg(suture.centideg)});
    }
    face.seat_label = words("face.seat");
    face.nasal_label = words("face.nasal");
    face.temporal_label = words("face.temporal");
    return face;
}

Card card(const CaseState& state, const Step& step, const Around& around, const Words& words) {
    if (const guide::Departure* away = departure_shown(state)) return departure_card(state, *away, words);
    if (step.closes == Closes::Cut && state.suction == guide::Suction::Lost) return lost_card(state, words);
    Card made{.title = filled(step.title, state, words)};
    const std::string said = filled(step.say, step.closes == Closes::Plan ? as_proposed(state, around) : state, words);
    made.say = said.empty() ? "" : words("card.say", {said});
    for (const std::string& line : step.lines) made.lines.push_back(filled(line, state, words));
    for (const std::string& caution : step.cautions) made.cautions.push_back(filled(caution, state, words));
    if (step.picture == "clock-face") made.picture = clock_face(state, words);
    if (step.picture == "section") made.picture = section(state, words);
    if (step.picture == "open") made.picture = picture::OpenEye{.label = words("open.label")};
    add_packs(made, step, words);
    if (step.closes == Closes::Cut) depth_card(made, state, words);
    if (step.closes == Closes::Sutures) suture_card(made, state, words);
    if (step.closes == Closes::Plan) plan_card(made, state, around, words);
    if (step.closes == Closes::Close) made.rows = record_rows(state, around, words);
    if (step.id == "debrief") made.rows = debrief_rows(state, around, words);
    if (step.closes == Closes::Counts) counts_card(made, state, words);
    return made;
}

}  // namespace screen
