// Why this number of spokes and not one more, and what would be if a reading were wrong.
#include "eye/frame.hpp"
#include "measure/expect.hpp"
#include "plan/sources.hpp"
#include "plan/wall.hpp"
#include "screen/format.hpp"
#include "screen/pages.hpp"
#include "screen/plan_view_panels.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace screen {
namespace {

using Panel = PlanModel::Panel;
using plan::Note;

std::string limit_text(const plan::CaseFile& file, const Words& words) { return short_text(file.aim.entry_limit * 100, words); }

/// What share of the wall is aimed at: as used, else as the case was opened with.
std::optional<int> aim_permille(const PlanSeen& seen) {
    if (seen.plan.target && seen.plan.target->share_permille > 0) return seen.plan.target->share_permille;
    if (seen.base.file.aim.goal == plan::Goal::Share) return seen.base.file.aim.share_permille;
    return std::nullopt;
}

void add_aim(Panel& made, const PanelParts& parts, const plan::Rung& next) {
    const auto permille = aim_permille(parts.seen);
    if (!permille) return;
    const measure::Length most = measure::nm(*permille * parts.seen.plan.wall->thinnest.nm() / 1000);
    const bool over = next.travel > most;
    const measure::Length by = over ? next.travel - most : most - next.travel;
    made.rows.push_back(
        {parts.words("plan-view.aim"), parts.words(over ? "plan-view.over_aim" : "plan-view.within_aim",
                                                   {short_text(*permille / 10.0, parts.words), whole_um(most), whole_um(by)})});
}

void add_limit(Panel& made, const PanelParts& parts, const plan::Rung& next) {
    const bool over = next.entry_chance > parts.file().aim.entry_limit;
    made.rows.push_back({parts.words("plan-view.limit"),
                         parts.words(over ? "plan-view.over_limit" : "plan-view.within_limit",
                                     {chance_text(next.entry_chance, parts.words), limit_text(parts.file(), parts.words)})});
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

std::string at_text(const plan::Reading& one) { return eye::short_clock_text(one.at); }

Target step(int by) {
    return turn_to("doubt" + fmt::format("{:+d}", by), fmt::format("{}{}", by < 0 ? "−" : "+", std::abs(by)), "",
                   {.page = "plan-doubt", .argument = std::to_string(by)});
}

}  // namespace

std::string plan_outcome(const plan::Plan& plan, const Words& words) {
    if (!plan.target) return words("plan-view.outcome_refused");
    const std::string spokes = spokes_text(*plan.target, 0, words);
    const auto count = planned_spokes(plan);
    const plan::Rung* at = count ? rung_of(plan, *count) : nullptr;
    if (!plan.wall || at == nullptr) return spokes;
    return words("plan-view.outcome",
                 {spokes, whole_um(plan.wall->thinnest), whole_percent(at->share), chance_text(at->entry_chance, words)});
}

Panel why_panel(const PanelParts& parts) {
    const plan::Plan& plan = parts.seen.plan;
    const auto spokes = planned_spokes(plan);
    Panel made{.title = spokes ? parts.words("plan-view.why", {std::to_string(*spokes), std::to_string(*spokes + 1)})
                               : parts.words(plan.target ? "plan-view.why_no_number" : "plan-view.why_none")};
    if (!plan.target) {
        for (const Note& note : plan.notes) {
            if (note.level == Note::Level::Stop) parts.add(made, note);
        }
        return made;
    }
    const plan::Rung* next = spokes ? rung_of(plan, *spokes + 1) : nullptr;
    if (next != nullptr && plan.wall) {
        made.value = parts.words("plan-view.next_rung", {std::to_string(next->spoke), whole_um(next->travel), whole_percent(next->share)});
        add_aim(made, parts, *next);
        add_limit(made, parts, *next);
        made.rows.push_back(
            {parts.words("plan.left"), parts.words("plan-view.um_pm", {whole_um(next->reserve), whole_um(next->reserve_u95)})});
    }
    made.rows.push_back({parts.words("plan-view.so"), bound_text(parts.seen, parts.words)});
    const auto before = planned_spokes(parts.seen.base_plan);
    if (plan.target->bound_by == plan::Bound::Surgeon && before && before != spokes)
        made.rows.push_back({parts.words("plan-view.case_gives"), spokes_text(*parts.seen.base_plan.target, 0, parts.words)});
    return made;
}

Panel reading_panel(const PanelParts& parts, const PlanPage& page, std::size_t index) {
    const auto& before = wanted(parts.seen.base, page).file.thickness.readings;
    const auto& now = parts.file().thickness.readings;
    if (index >= before.size() || index >= now.size()) return {.title = parts.words("plan-view.not_known")};
    const Words& words = parts.words;
    const int sd95 = static_cast<int>(std::lround(1.96 * plan::reading_sd(parts.file().thickness.method).um()));
    const bool doubted = page.doubted == index;
    Panel made{.title = words("plan-view.reading_at", {at_text(before[index])}),
               .value = doubted ? words("plan-view.what_if_value", {whole_um(now[index].thickness), whole_um(before[index].thickness)})
                                : words("plan-view.um_pm", {whole_um(before[index].thickness), std::to_string(sd95)})};
    made.rows.push_back({words(doubted ? "plan-view.then" : "plan-view.now"), plan_outcome(parts.seen.plan, words)});
    made.rows.push_back(parts.source(plan::source::repeatability));
    made.rows.push_back(parts.sure("sure_reading", {std::to_string(sd95)}));
    for (const int by : {-30, -10, -5, 5, 10, 30}) made.targets.push_back(step(by));
    if (doubted) made.targets.push_back(turn_to("doubt-none", words("plan-view.doubt_none"), "", {.page = "plan-doubt-none"}));
    made.targets.push_back(turn_to("mend", words("plan-view.mend"), "", {.page = "plan-mend", .argument = std::to_string(index)}));
    return made;
}

std::string why_not_more(const PlanSeen& seen, const Words& words) {
    const auto spokes = planned_spokes(seen.plan);
    if (!seen.plan.target) return words("plan-view.stopped");
    const plan::Rung* next = spokes ? rung_of(seen.plan, *spokes + 1) : nullptr;
    if (next == nullptr || seen.plan.target->bound_by == plan::Bound::Surgeon) return bound_text(seen, words);
    const std::string n = std::to_string(next->spoke);
    if (seen.plan.target->bound_by == plan::Bound::Aim)
        return words("plan-view.line_aim", {n, whole_percent(next->share), short_text(seen.plan.target->share_permille / 10.0, words)});
    return words("plan-view.line_limit", {n, chance_text(next->entry_chance, words), limit_text(seen.inputs.file, words)});
}

}  // namespace screen
