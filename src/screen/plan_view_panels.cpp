// Panels of the Plan view: for each figure how it comes about, where it is from and how sure it is; why this number of spokes
// and not one more; what would be if a reading were wrong.
#include "eye/frame.hpp"
#include "measure/expect.hpp"
#include "plan/sources.hpp"
#include "plan/wall.hpp"
#include "screen/format.hpp"
#include "screen/pages.hpp"
#include "screen/plan_view.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>

namespace screen {
namespace {

using Panel = PlanModel::Panel;
using plan::Note;

/// Whole micrometres, with a minus as print has it.
std::string whole(measure::Length length) {
    const long um = std::lround(length.um());
    return fmt::format("{}{}", um < 0 ? "−" : "", std::abs(um));
}
std::string percent(double share) { return fmt::format("{:.0f}", share * 100); }
std::string clock(int deg) { return eye::short_clock_text(measure::centideg(100 * deg)); }
std::string u95(const plan::Wall& wall) { return fmt::format("{}", std::lround(1.96 * wall.u.um())); }

/// The rung of so many spokes; none beyond the ladder.
const plan::Rung* rung(const plan::Plan& plan, int spokes) {
    const auto found = std::find_if(plan.ladder.begin(), plan.ladder.end(), [=](const plan::Rung& one) { return one.spoke == spokes; });
    return found == plan.ladder.end() ? nullptr : &*found;
}

std::optional<int> planned(const plan::Plan& plan) { return plan.target ? plan.target->spokes : std::nullopt; }

struct Parts {
    const PlanSeen& seen;
    const Words& words;

    const plan::CaseFile& file() const { return seen.inputs.file; }
    const instrument::Trephine& trephine() const { return seen.inputs.trephine; }
    Row how(const std::string& id, const std::vector<std::string>& values = {}) const {
        return {words("plan-view.how"), words("plan-view." + id, values)};
    }
    Row source(const std::string& text) const { return {words("plan-view.source"), text}; }
    Row sure(const std::string& id, const std::vector<std::string>& values = {}) const {
        return {words("plan-view.sure"), words("plan-view." + id, values)};
    }
    /// A note of the plan: what it says, and where that is from.
    void add(Panel& panel, const Note& note) const {
        const char* label = note.level == Note::Level::Stop    ? "plan-view.stops"
                            : note.level == Note::Level::Watch ? "plan_text.watches"
                                                               : "plan_text.infos";
        panel.rows.push_back({words(label), words("note." + note.code, note.values)});
        panel.rows.push_back(source(note.source));
    }
    std::string advance() const { return fmt::format("{:g}", trephine().advance.um()); }
    std::string mean() const { return fmt::format("{:g}", trephine().reach.mean); }
    std::string scatter() const { return fmt::format("{:g}", trephine().reach.sd); }
    std::string cuts() const { return std::to_string(trephine().reach.n); }
};

Panel thinnest(const Parts& parts) {
    const plan::Plan& plan = parts.seen.plan;
    Panel made{.title = parts.words("plan.wall")};
    if (!plan.wall) {
        made.value = parts.words("plan-view.not_known");
        return made;
    }
    const plan::Wall& wall = *plan.wall;
    made.value = parts.words("plan-view.um_pm", {whole(wall.thinnest), u95(wall)});
    made.rows.push_back(parts.how("how_thinnest_" + wall.basis));
    made.rows.push_back(parts.source(wall.basis == "centre" ? plan::source::profile : plan::source::repeatability));
    made.rows.push_back(parts.sure("sure_thinnest", {u95(wall)}));
    if (wall.rms) made.rows.push_back({parts.words("plan-view.scatter"), parts.words("plan-view.scatter_value", {whole(*wall.rms)})});
    return made;
}

/// The rung that the heads of the ladder speak of: the planned one, else the first.
const plan::Rung* spoken(const plan::Plan& plan) {
    if (const auto spokes = planned(plan)) return rung(plan, *spokes);
    return plan.target && plan.target->entry_from ? rung(plan, *plan.target->entry_from) : nullptr;
}

Panel spokes(const Parts& parts) {
    const plan::Plan& plan = parts.seen.plan;
    Panel made{.title = parts.words("plan-view.spokes_below"), .value = parts.words("plan.open")};
    if (plan.target) made.value = spokes_text(*plan.target, 0, parts.words);
    made.rows = {parts.how("how_spokes", {std::to_string(parts.trephine().raise)}), parts.source(plan::source::usual),
                 parts.sure("sure_spokes")};
    return made;
}

Panel travel(const Parts& parts, const plan::Rung& at) {
    return {.title = parts.words("plan-view.travel_at", {std::to_string(at.spoke)}),
            .value = um_text(at.travel),
            .rows = {parts.how("how_travel", {std::to_string(at.spoke), parts.advance()}), parts.source(plan::source::profiles),
                     parts.sure("sure_travel", {parts.mean(), parts.scatter(), parts.cuts()})}};
}

Panel share(const Parts& parts, const plan::Rung& at) {
    return {.title = parts.words("plan-view.share_at", {std::to_string(at.spoke)}),
            .value = parts.words("plan-view.percent", {percent(at.share)}),
            .rows = {parts.how("how_share", {whole(at.travel), whole(parts.seen.plan.wall->thinnest)}), parts.source(plan::source::depth),
                     parts.sure("sure_share", {parts.mean()})}};
}

Panel left(const Parts& parts, const plan::Rung& at) {
    const plan::Wall& wall = *parts.seen.plan.wall;
    return {.title = parts.words("plan-view.left_at", {std::to_string(at.spoke)}),
            .value = parts.words("plan-view.um_pm", {whole(at.reserve), whole(at.reserve_u95)}),
            .rows = {parts.how("how_left", {whole(wall.thinnest), parts.mean(), whole(at.travel)}),
                     parts.source(parts.trephine().reach.source.empty() ? plan::source::depth : parts.trephine().reach.source),
                     parts.sure("sure_left", {whole(at.reserve_u95), parts.cuts(), u95(wall)})}};
}

Panel chance(const Parts& parts, const plan::Rung& at) {
    return {.title = parts.words("plan-view.chance_at", {std::to_string(at.spoke)}),
            .value = chance_text(at.entry_chance, parts.words),
            .rows = {parts.how("how_chance", {parts.mean(), parts.scatter(), parts.cuts()}),
                     parts.source(parts.trephine().reach.source.empty() ? plan::source::depth : parts.trephine().reach.source),
                     parts.sure("sure_chance")}};
}

Panel of_ladder(const Parts& parts, const std::string& figure) {
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

// ---- why this number ----

std::string limit_text(const plan::CaseFile& file) { return fmt::format("{:g}", file.aim.entry_limit * 100); }

/// What share of the wall is aimed at: as used, else as the case was opened with.
std::optional<int> aim_permille(const PlanSeen& seen) {
    if (seen.plan.target && seen.plan.target->share_permille > 0) return seen.plan.target->share_permille;
    if (seen.base.file.aim.goal == plan::Goal::Share) return seen.base.file.aim.share_permille;
    return std::nullopt;
}

void add_aim(Panel& made, const Parts& parts, const plan::Rung& next) {
    const auto permille = aim_permille(parts.seen);
    if (!permille) return;
    const measure::Length most = measure::nm(*permille * parts.seen.plan.wall->thinnest.nm() / 1000);
    const bool over = next.travel > most;
    const measure::Length by = over ? next.travel - most : most - next.travel;
    made.rows.push_back({parts.words("plan-view.aim"), parts.words(over ? "plan-view.over_aim" : "plan-view.within_aim",
                                                                   {fmt::format("{:g}", *permille / 10.0), whole(most), whole(by)})});
}

void add_limit(Panel& made, const Parts& parts, const plan::Rung& next) {
    const bool over = next.entry_chance > parts.file().aim.entry_limit;
    made.rows.push_back(
        {parts.words("plan-view.limit"), parts.words(over ? "plan-view.over_limit" : "plan-view.within_limit",
                                                     {chance_text(next.entry_chance, parts.words), limit_text(parts.file())})});
}

std::string bound_text(const PlanSeen& seen, const Words& words) {
    switch (seen.plan.target->bound_by) {
        case plan::Bound::Aim:
            return words("plan-view.bound_aim");
        case plan::Bound::EntryLimit:
            return words("plan-view.bound_limit");
        case plan::Bound::Surgeon:
            return words("plan-view.bound_surgeon");
        case plan::Bound::ToEntry:
            return words("plan-view.bound_entry");
    }
    measure::expect(false);
    return {};
}

Panel why(const Parts& parts) {
    const plan::Plan& plan = parts.seen.plan;
    const auto spokes = planned(plan);
    Panel made{.title = spokes ? parts.words("plan-view.why", {std::to_string(*spokes), std::to_string(*spokes + 1)})
                               : parts.words("plan-view.why_no_number")};
    if (!plan.target) {
        for (const Note& note : plan.notes) {
            if (note.level == Note::Level::Stop) parts.add(made, note);
        }
        return made;
    }
    const plan::Rung* next = spokes ? rung(plan, *spokes + 1) : nullptr;
    if (next != nullptr && plan.wall) {
        made.value = parts.words("plan-view.next_rung", {std::to_string(next->spoke), whole(next->travel), percent(next->share)});
        add_aim(made, parts, *next);
        add_limit(made, parts, *next);
        made.rows.push_back({parts.words("plan.left"), parts.words("plan-view.um_pm", {whole(next->reserve), whole(next->reserve_u95)})});
    }
    made.rows.push_back({parts.words("plan-view.so"), bound_text(parts.seen, parts.words)});
    const auto before = planned(parts.seen.base_plan);
    if (plan.target->bound_by == plan::Bound::Surgeon && before && before != spokes)
        made.rows.push_back({parts.words("plan-view.case_gives"), spokes_text(*parts.seen.base_plan.target, 0, parts.words)});
    return made;
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
void add_notes(Panel& made, const Parts& parts, Is is) {
    for (const Note& note : parts.seen.plan.notes) {
        if (is(note)) parts.add(made, note);
    }
}

Panel oversize(const Parts& parts) {
    Panel made{.title = parts.words("plan-view.oversize"),
               .value = parts.words("unit.mm", {fmt::format("{:+.2f}", parts.seen.plan.sizes.oversize.mm())})};
    made.rows = {parts.how("how_oversize", {size_text(parts.file().donor.diameter), size_text(parts.file().host_diameter)})};
    add_notes(made, parts, about_oversize);
    add_notes(made, parts, [](const Note& note) { return note.code == "button-range"; });
    return made;
}

Panel clearance(const Parts& parts) {
    const plan::Sizes& sizes = parts.seen.plan.sizes;
    Panel made{.title = parts.words("plan-view.clearance", {clock(sizes.clearance_deg)}),
               .value = parts.words("unit.mm", {size_text(sizes.clearance)})};
    made.rows = {parts.how("how_clearance", {fmt::format("{:.1f}", parts.file().white_to_white_horizontal.mm()),
                                             fmt::format("{:.1f}", parts.file().white_to_white_vertical.mm())}),
                 parts.sure("sure_clearance", {size_text(sizes.clearance_usual_offset)})};
    add_notes(made, parts, about_the_cut);
    return made;
}

Panel sutures(const Parts& parts) {
    const plan::Plan& plan = parts.seen.plan;
    Panel made{.title = parts.words("plan.sutures"), .value = pattern_text(parts.file().pattern, parts.words)};
    made.rows = {parts.how("how_sutures", {size_text(parts.file().host_diameter), size_text(plan.spacing)})};
    std::string order{};
    for (const plan::Suture& one : plan.order) {
        if (one.n > 8) break;
        order += (order.empty() ? "" : ", ") + eye::short_clock_text(measure::centideg(one.centideg));
    }
    if (!order.empty()) made.rows.push_back({parts.words("plan-view.order"), order + (plan.order.size() > 8 ? " …" : "")});
    add_notes(made, parts, about_sutures);
    return made;
}

Panel cautions(const Parts& parts) {
    Panel made{.title = parts.words("plan-view.cautions"), .value = parts.words("plan-view.cautions_line")};
    add_notes(made, parts, [](const Note& note) { return note.level != Note::Level::Info || note.code == "ladder-may-not-enter"; });
    add_notes(made, parts, [](const Note& note) { return note.code == "surgeon-decides"; });
    return made;
}

// ---- readings ----

std::string at_text(const plan::Reading& one) { return eye::short_clock_text(one.at); }

Target step(int by) {
    return turn_to("doubt" + fmt::format("{:+d}", by), fmt::format("{}{}", by < 0 ? "−" : "+", std::abs(by)), "",
                   {.page = "plan-doubt", .argument = std::to_string(by)});
}

std::string outcome(const plan::Plan& plan, const Words& words) {
    if (!plan.target) return words("plan-view.outcome_refused");
    const std::string spokes = spokes_text(*plan.target, 0, words);
    const auto count = planned(plan);
    const plan::Rung* at = count ? rung(plan, *count) : nullptr;
    if (!plan.wall || at == nullptr) return spokes;
    return words("plan-view.outcome", {spokes, whole(plan.wall->thinnest), percent(at->share), chance_text(at->entry_chance, words)});
}

Panel reading(const Parts& parts, const PlanPage& page, std::size_t index) {
    const auto& before = wanted(parts.seen.base, page).file.thickness.readings;
    const auto& now = parts.file().thickness.readings;
    if (index >= before.size() || index >= now.size()) return {.title = parts.words("plan-view.not_known")};
    const Words& words = parts.words;
    const int sd95 = static_cast<int>(std::lround(1.96 * plan::reading_sd(parts.file().thickness.method).um()));
    const bool doubted = page.doubted == index;
    Panel made{.title = words("plan-view.reading_at", {at_text(before[index])}),
               .value = doubted ? words("plan-view.what_if_value", {whole(now[index].thickness), whole(before[index].thickness)})
                                : words("plan-view.um_pm", {whole(before[index].thickness), std::to_string(sd95)})};
    made.rows.push_back({words(doubted ? "plan-view.then" : "plan-view.now"), outcome(parts.seen.plan, words)});
    made.rows.push_back(parts.source(plan::source::repeatability));
    made.rows.push_back(parts.sure("sure_reading", {std::to_string(sd95)}));
    for (const int by : {-30, -10, -5, 5, 10, 30}) made.targets.push_back(step(by));
    if (doubted) made.targets.push_back(turn_to("doubt-none", words("plan-view.doubt_none"), "", {.page = "plan-doubt-none"}));
    made.targets.push_back(turn_to("mend", words("plan-view.mend"), "", {.page = "plan-mend", .argument = std::to_string(index)}));
    return made;
}

Panel central(const Parts& parts) {
    const auto& central = parts.file().thickness.central;
    return {.title = parts.words("plan-view.central"),
            .value = central ? um_text(*central) : parts.words("plan-view.not_known"),
            .rows = {parts.how("how_central"), parts.source(plan::source::profile), parts.sure("sure_central")}};
}

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

Placed placed(const Parts& parts, const PlanPage& page) {
    const std::string& asked = page.asked;
    if (asked == "thinnest") return {thinnest(parts), 0};
    if (asked == "central") return {central(parts), 0};
    if (const auto index = reading_index(asked)) return {reading(parts, page, *index), 0};
    if (asked == "why") return {why(parts), 1};
    if (asked == "oversize") return {oversize(parts), 2};
    if (asked == "clearance") return {clearance(parts), 2};
    if (asked == "sutures") return {sutures(parts), 2};
    if (asked == "cautions") return {cautions(parts), 2};
    return {of_ladder(parts, asked), 1};
}

}  // namespace

std::string why_not_more(const PlanSeen& seen, const Words& words) {
    const auto spokes = planned(seen.plan);
    if (!seen.plan.target) return words("plan-view.stopped");
    const plan::Rung* next = spokes ? rung(seen.plan, *spokes + 1) : nullptr;
    if (next == nullptr || seen.plan.target->bound_by == plan::Bound::Surgeon) return bound_text(seen, words);
    const std::string n = std::to_string(next->spoke);
    if (seen.plan.target->bound_by == plan::Bound::Aim)
        return words("plan-view.line_aim", {n, percent(next->share), fmt::format("{:g}", seen.plan.target->share_permille / 10.0)});
    return words("plan-view.line_limit", {n, chance_text(next->entry_chance, words), limit_text(seen.inputs.file)});
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
