// The Plan view's frame, its cautions, and the hold that takes a plan into use.
#include "eye/frame.hpp"
#include "measure/expect.hpp"
#include "screen/format.hpp"
#include "screen/plan_view_maker.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace screen {

using plan::Note;

void PlanMaker::frame() {
    made_.strip = seen_.strip;
    if (made_.strip) {
        made_.strip->phase = words_("plan-view.title");
        made_.strip->sizes = words_("strip.sizes", {size_text(file().host_diameter, words_), size_text(file().donor.diameter, words_)});
    }
    int place = 0;
    for (const std::string column : {"measured", "depth", "sizes"}) {
        Target tab = turn_to("column-" + column, words_("plan-view.tab_" + column), "", {.page = "plan-column", .argument = column});
        if (page_.column == column) tab.look = Look::Filled, made_.column = place;
        made_.tabs.push_back(std::move(tab));
        ++place;
    }
    made_.banner = both(seen_.banner, banner());
}

/// What is looked at is not what counts: a what-if, or a change that is not in use.
std::optional<Banner> PlanMaker::banner() const {
    if (doubting() && *page_.doubted < file().thickness.readings.size()) {
        const plan::Reading& now = file().thickness.readings[*page_.doubted];
        const measure::Length before = now.thickness - measure::nm(1000LL * page_.doubted_um);
        return Banner{.level = Banner::Level::Watch,
                      .text = words_("plan-view.what_if", {eye::short_clock_text(now.at), whole_um(now.thickness), whole_um(before)})};
    }
    if (page_.changed) return Banner{.level = Banner::Level::Notice, .text = words_("plan-view.changed")};
    return std::nullopt;
}

// ---- always there ----

/// What stops the plan, a chance over the limit, what the figures rest on, then what is odd in this case and what goes for every case.
void PlanMaker::cautions() {
    constexpr auto over = "over-entry-limit";
    const auto add = [&](Banner::Level as, const auto& wanted) {
        for (const Note& note : plan().notes)
            if (wanted(note)) made_.cautions.push_back({.level = as, .text = note_text(note, words_)});
    };
    const auto general = [](const Note& note) {
        return note.code == "ladder-estimate" || note.code == "watch-the-chamber" || note.code == "ladder-leaves-out";
    };
    add(Banner::Level::Stop, [](const Note& note) { return note.level == Note::Level::Stop; });
    add(Banner::Level::Watch, [](const Note& note) { return note.code == over; });
    if (!plan().ladder.empty()) made_.cautions.push_back({.level = Banner::Level::Watch, .text = words_("plan.caution")});
    add(Banner::Level::Watch, [&](const Note& note) { return note.level == Note::Level::Watch && note.code != over && !general(note); });
    for (const Note& note : plan().notes) {
        if (note.code == "ladder-leaves-out")
            made_.cautions.push_back({.level = Banner::Level::Watch, .text = words_("plan-view.leaves_out", words_.figures(note.values))});
    }
    made_.all_cautions = asks("cautions", words_("plan-view.all_cautions"), "");
}

std::string PlanMaker::why_not() const {
    if (doubting()) return words_("plan-view.not_what_if");
    if (!plan().target) return words_("plan-view.unusable");
    switch (seen_.use) {
        case PlanSeen::Use::Begin:
        case PlanSeen::Use::Agree:
            return {};
        case PlanSeen::Use::Change:
            return page_.changed ? std::string{} : words_("plan-view.in_use");
        case PlanSeen::Use::NotYet:
            return words_("plan-view.not_yet");
        case PlanSeen::Use::Over:
            return words_("strip.closed");
    }
    measure::expect(false);
    return {};
}

Target PlanMaker::hold() const {
    const bool begins = seen_.use == PlanSeen::Use::Begin;
    Target made = turn_to("use-plan", words_(begins ? "plan-view.begin" : "plan-view.use"), made_.spokes, {.page = "plan-why"});
    if (begins) made.act = Show{.page = "make-planned"};
    if (seen_.use == PlanSeen::Use::Agree)
        made.act = std::vector<guide::Intent>{guide::AcceptPlan{.inputs = seen_.inputs, .plan = plan(), .why = ""}};
    const auto risky = [](const PlanModel::Rung& rung) { return rung.planned && rung.over; };
    made.look = std::any_of(made_.rungs.begin(), made_.rungs.end(), risky) ? Look::Watch : Look::Filled;
    made.why_not = why_not();
    if (made.why_not.empty()) made.press = Press::Hold;
    return made;
}

void PlanMaker::foot() {
    const bool changed = page_.changed || doubting();
    made_.foot.push_back(turn_to("back", words_("page.back"), changed ? words_("plan-view.drops") : "",
                                 {.page = seen_.use == PlanSeen::Use::Begin ? "new" : ""}));
    if (changed) made_.foot.push_back(turn_to("reset", words_("plan-view.reset"), words_("plan-view.as_given"), {.page = "plan-reset"}));
    made_.foot.push_back(hold());
}

/// What is looked at is chosen like on the other pages; the hold is one of the theatre's.
void PlanMaker::weigh() {
    const auto each = [&](std::vector<Target>& targets) {
        for (Target& one : targets) one.weight = Weight::Elsewhere;
    };
    for (auto* some : {&made_.tabs, &made_.readings, &made_.heads, &made_.steps, &made_.figures, &made_.foot}) each(*some);
    for (Target* one : {&made_.thinnest, &made_.earlier, &made_.later, &made_.why, &made_.all_cautions}) one->weight = Weight::Elsewhere;
    for (PlanModel::Rung& one : made_.rungs) one.target.weight = Weight::Elsewhere;
    made_.foot.back().weight = Weight::Theatre;
    if (seen_.use != PlanSeen::Use::Over) return;
    for (PlanModel::Rung& one : made_.rungs) one.target.why_not = words_("strip.closed");
    for (Target& one : made_.steps) one.why_not = words_("strip.closed");
}

PlanModel plan_view(const PlanSeen& seen, const ScreenState& screen, const Words& words) {
    return PlanMaker(seen, screen.plan, words).made();
}

}  // namespace screen
