// Panels of the Plan view: for each figure how it comes about, where it is from and how sure it is. Why this number of spokes, and
// what a reading would change, stand in plan_view_why.cpp.
#include "screen/plan_view_panels.hpp"

#include "eye/frame.hpp"
#include "plan/sources.hpp"
#include "screen/format.hpp"
#include "screen/pages.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdlib>

namespace screen {
namespace {

using Panel = PlanModel::Panel;
using plan::Note;

std::string clock(int deg) { return eye::short_clock_text(measure::centideg(100 * deg)); }
std::string advance(const PanelParts& parts) { return short_text(parts.trephine().advance.um(), parts.words); }
std::string mean(const PanelParts& parts) { return short_text(parts.trephine().reach.mean, parts.words); }
std::string scatter(const PanelParts& parts) { return short_text(parts.trephine().reach.sd, parts.words); }
std::string cuts(const PanelParts& parts) { return std::to_string(parts.trephine().reach.n); }

Panel thinnest(const PanelParts& parts) {
    const plan::Plan& plan = parts.seen.plan;
    Panel made{.title = parts.words("plan.wall")};
    if (!plan.wall) {
        made.value = parts.words("plan-view.not_known");
        return made;
    }
    const plan::Wall& wall = *plan.wall;
    made.value = parts.words("plan-view.um_pm", {whole_um(wall.thinnest), half_interval(wall)});
    made.rows.push_back(parts.how("how_thinnest_" + wall.basis));
    made.rows.push_back(parts.source(wall.basis == "centre" ? plan::source::profile : plan::source::repeatability));
    made.rows.push_back(parts.sure("sure_thinnest", {half_interval(wall)}));
    if (wall.rms) made.rows.push_back({parts.words("plan-view.scatter"), parts.words("plan-view.scatter_value", {whole_um(*wall.rms)})});
    return made;
}

/// The rung that the heads of the ladder speak of: the planned one, else the first.
const plan::Rung* spoken(const plan::Plan& plan) {
    if (const auto spokes = planned_spokes(plan)) return rung_of(plan, *spokes);
    return plan.target && plan.target->entry_from ? rung_of(plan, *plan.target->entry_from) : nullptr;
}

/// What settled the number: the aim and the limit, the surgeon, or the aqueous.
std::string how_spokes(const plan::Plan& plan) {
    if (!plan.target) return "how_spokes";
    switch (plan.target->bound_by) {
        case plan::Bound::Aim:
        case plan::Bound::EntryLimit:
            return "how_spokes";
        case plan::Bound::Surgeon:
            return "how_own_spokes";
        case plan::Bound::ToEntry:
            return "how_to_entry";
    }
    return "how_spokes";
}

Panel spokes(const PanelParts& parts) {
    const plan::Plan& plan = parts.seen.plan;
    Panel made{.title = parts.words("plan-view.spokes_below"), .value = parts.words("plan.open")};
    if (plan.target) made.value = spokes_text(*plan.target, 0, parts.words);
    made.rows = {parts.how(how_spokes(plan), {std::to_string(parts.trephine().raise)}), parts.source(plan::source::usual),
                 parts.sure("sure_spokes")};
    return made;
}

Panel travel(const PanelParts& parts, const plan::Rung& at) {
    return {.title = parts.words.counted("plan-view.travel_at", {std::to_string(at.spoke)}),
            .value = um_text(at.travel),
            .rows = {parts.how("how_travel", {std::to_string(at.spoke), advance(parts)}), parts.source(plan::source::profiles),
                     parts.sure("sure_travel", {mean(parts), scatter(parts), cuts(parts)})}};
}

Panel share(const PanelParts& parts, const plan::Rung& at) {
    return {.title = parts.words.counted("plan-view.share_at", {std::to_string(at.spoke)}),
            .value = parts.words("plan-view.percent", {whole_percent(at.share)}),
            .rows = {parts.how("how_share", {whole_um(at.travel), whole_um(parts.seen.plan.wall->thinnest)}),
                     parts.source(plan::source::depth), parts.sure("sure_share", {mean(parts)})}};
}

Panel left(const PanelParts& parts, const plan::Rung& at) {
    const plan::Wall& wall = *parts.seen.plan.wall;
    return {.title = parts.words.counted("plan-view.left_at", {std::to_string(at.spoke)}),
            .value = parts.words("plan-view.um_pm", {whole_um(at.reserve), whole_um(at.reserve_u95)}),
            .rows = {parts.how("how_left", {whole_um(wall.thinnest), mean(parts), whole_um(at.travel)}),
                     parts.source(parts.trephine().reach.source.empty() ? plan::source::depth : parts.trephine().reach.source),
                     parts.sure("sure_left", {whole_um(at.reserve_u95), cuts(parts), half_interval(wall)})}};
}

Panel chance(const PanelParts& parts, const plan::Rung& at) {
    return {.title = parts.words.counted("plan-view.chance_at", {std::to_string(at.spoke)}),
            .value = chance_text(at.entry_chance, parts.words),
            .rows = {parts.how("how_chance", {mean(parts), scatter(parts), cuts(parts)}),
                     parts.source(parts.trephine().reach.source.empty() ? plan::source::depth : parts.trephine().reach.source),
                     parts.sure("sure_chance")}};
}

Panel of_ladder(const PanelParts& parts, const std::string& figure) {
    if (figure == "spokes") return spokes(parts);
    const plan::Rung* at = spoken(parts.seen.plan);
    if (at == nullptr || !parts.seen.plan.wall) {
        return {.title = parts.words("plan-view.head_" + figure),
                .value = parts.words("plan-view.not_known"),
                .rows = {{parts.words("plan-view.why_none"), parts.words("note.no-depth-claim")}}};
    }
    if (figure == "travel") return travel(parts, *at);
    if (figure == "share") return share(parts, *at);
    return figure == "left" ? left(parts, *at) : chance(parts, *at);
}

// ---- sizes ----

bool about_oversize(const Note& note) {
    return note.code.starts_with("oversize") || note.code.starts_with("same-size") || note.code.starts_with("undersize") ||
           note.code.starts_with("half-option");
}

bool about_the_cut(const Note& note) { return note.code.starts_with("clearance") || note.code == "cut-leaves-cornea"; }

bool about_sutures(const Note& note) {
    return note.code == "second-opposite" || note.code == "between-marks" || note.code == "running-between" || note.code == "odd-sutures";
}

template <class Is>
void add_notes(Panel& made, const PanelParts& parts, Is is) {
    for (const Note& note : parts.seen.plan.notes) {
        if (is(note)) parts.add(made, note);
    }
}

Panel oversize(const PanelParts& parts) {
    Panel made{.title = parts.words("plan-view.oversize"),
               .value = parts.words("unit.mm", {oversize_text(parts.seen.plan.sizes.oversize, parts.words)})};
    made.rows = {parts.how("how_oversize",
                           {size_text(parts.file().donor.diameter, parts.words), size_text(parts.file().host_diameter, parts.words)})};
    add_notes(made, parts, about_oversize);
    add_notes(made, parts, [](const Note& note) { return note.code == "button-range"; });
    return made;
}

Panel clearance(const PanelParts& parts) {
    const plan::Sizes& sizes = parts.seen.plan.sizes;
    Panel made{.title = parts.words("plan-view.clearance", {clock(sizes.clearance_deg)}),
               .value = parts.words("unit.mm", {size_text(sizes.clearance, parts.words)})};
    made.rows = {parts.how("how_clearance", {parts.words.figure(fmt::format("{:.1f}", parts.file().white_to_white_horizontal.mm())),
                                             parts.words.figure(fmt::format("{:.1f}", parts.file().white_to_white_vertical.mm()))}),
                 parts.sure("sure_clearance", {size_text(sizes.clearance_usual_offset, parts.words)})};
    add_notes(made, parts, about_the_cut);
    return made;
}

Panel sutures(const PanelParts& parts) {
    const plan::Plan& plan = parts.seen.plan;
    Panel made{.title = parts.words("plan.sutures"), .value = pattern_text(parts.file().pattern, parts.words)};
    made.rows = {parts.how("how_sutures", {size_text(parts.file().host_diameter, parts.words), size_text(plan.spacing, parts.words)})};
    std::string order{};
    for (const plan::Suture& one : plan.order) {
        if (one.n > 8) break;
        order += (order.empty() ? "" : ", ") + eye::short_clock_text(measure::centideg(one.centideg));
    }
    if (!order.empty()) made.rows.push_back({parts.words("plan-view.order"), order + (plan.order.size() > 8 ? " …" : "")});
    add_notes(made, parts, about_sutures);
    return made;
}

Panel cautions(const PanelParts& parts) {
    Panel made{.title = parts.words("plan-view.cautions"), .value = parts.words("plan-view.cautions_line")};
    add_notes(made, parts, [](const Note& note) { return note.level != Note::Level::Info || note.code == "ladder-may-not-enter"; });
    add_notes(made, parts, [](const Note& note) { return note.code == "surgeon-decides"; });
    return made;
}

Panel central(const PanelParts& parts) {
    const auto& central = parts.file().thickness.central;
    return {.title = parts.words("plan-view.central"),
            .value = central ? um_text(*central) : parts.words("plan-view.not_known"),
            .rows = {parts.how("how_central"), parts.source(plan::source::profile), parts.sure("sure_central")}};
}

// ---- which ----

std::optional<std::size_t> reading_index(const std::string& asked) {
    std::size_t value = 0;
    if (!asked.starts_with("reading-")) return std::nullopt;
    const auto [end, error] = std::from_chars(asked.data() + 8, asked.data() + asked.size(), value);
    return error == std::errc{} && end == asked.data() + asked.size() ? std::optional(value) : std::nullopt;
}

struct Placed {
    Panel panel{};
    int column = 0;
};

Placed placed(const PanelParts& parts, const PlanPage& page) {
    const std::string& asked = page.asked;
    if (asked == "thinnest") return {thinnest(parts), 0};
    if (asked == "central") return {central(parts), 0};
    if (const auto index = reading_index(asked)) return {reading_panel(parts, page, *index), 0};
    if (asked == "why") return {why_panel(parts), 1};
    if (asked == "oversize") return {oversize(parts), 2};
    if (asked == "clearance") return {clearance(parts), 2};
    if (asked == "sutures") return {sutures(parts), 2};
    if (asked == "cautions") return {cautions(parts), 2};
    return {of_ladder(parts, asked), 1};
}

}  // namespace

std::string whole_um(measure::Length length) {
    const long um = std::lround(length.um());
    return fmt::format("{}{}", um < 0 ? "−" : "", std::abs(um));
}

std::string whole_percent(double share) { return fmt::format("{:.0f}", share * 100); }
std::string half_interval(const plan::Wall& wall) { return fmt::format("{}", std::lround(1.96 * wall.u.um())); }

const plan::Rung* rung_of(const plan::Plan& plan, int spokes) {
    const auto found = std::find_if(plan.ladder.begin(), plan.ladder.end(), [=](const plan::Rung& one) { return one.spoke == spokes; });
    return found == plan.ladder.end() ? nullptr : &*found;
}

std::optional<int> planned_spokes(const plan::Plan& plan) { return plan.target ? plan.target->spokes : std::nullopt; }

Row PanelParts::how(const std::string& id, const std::vector<std::string>& values) const {
    return {words("plan-view.how"), words("plan-view." + id, values)};
}

Row PanelParts::source(const std::string& text) const { return {words("plan-view.source"), source_text(text, words)}; }

Row PanelParts::sure(const std::string& id, const std::vector<std::string>& values) const {
    return {words("plan-view.sure"), words("plan-view." + id, values)};
}

void PanelParts::add(Panel& panel, const Note& note) const {
    const char* label = note.level == Note::Level::Stop    ? "plan-view.stops"
                        : note.level == Note::Level::Watch ? "plan_text.watches"
                                                           : "plan_text.infos";
    panel.rows.push_back({words(label), note_text(note, words)});
    panel.rows.push_back(source(note.source));
}

std::optional<Panel> plan_panel(const PlanSeen& seen, const PlanPage& page, const Words& words) {
    if (page.asked.empty()) return std::nullopt;
    auto [panel, column] = placed({seen, words}, page);
    panel.column = column;
    panel.from = page.from;
    panel.close = turn_to("close-" + page.asked, words("plan-view.close"), "", {.page = "plan-ask", .argument = page.asked});
    panel.more = turn_to("panel-more", words("plan-view.more"), "", {.page = "plan-more", .argument = "0"});
    for (Target* one : {&panel.close, &panel.more}) one->weight = Weight::Elsewhere;
    for (Target& one : panel.targets) one.weight = Weight::Elsewhere;
    return std::move(panel);
}

}  // namespace screen
