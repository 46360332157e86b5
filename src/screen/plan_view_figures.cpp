// The Plan view's figures: readings, the blade ladder and the two sizes, and what each of their targets does.
#include "eye/frame.hpp"
#include "measure/expect.hpp"
#include "screen/format.hpp"
#include "screen/plan_view_maker.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace screen {
namespace {

constexpr int readings_a_page = 8, ringed_a_page = 5;
constexpr int rungs_a_turn = 3;
constexpr int bare_rungs = 16;  // of a ladder about which nothing can be told

std::string method_id(plan::Method method) {
    switch (method) {
        case plan::Method::Ultrasound:
            return "form.method_ultrasound";
        case plan::Method::Oct:
            return "form.method_oct";
        case plan::Method::Scheimpflug:
            return "form.method_scheimpflug";
        case plan::Method::SlitScanning:
            return "form.method_slit-scanning";
    }
    measure::expect(false);
    return {};
}

}  // namespace

Target asks(const std::string& figure, std::string label, std::string line) {
    return turn_to("ask-" + figure, std::move(label), std::move(line), {.page = "plan-ask", .argument = figure});
}

// ---- measured ----

std::string PlanMaker::by() const {
    const plan::Thickness& thickness = file().thickness;
    const std::string method = words_(method_id(thickness.method));
    if (!thickness.measured) return words_("plan-view.by_no_date", {method});
    const int days = measure::days_between(*thickness.measured, file().date);
    return words_(days == 1 ? "plan-view.by_one_day" : "plan-view.by", {method, measure::iso(*thickness.measured), std::to_string(days)});
}

Target PlanMaker::reading(std::size_t index, bool one_ring) const {
    const plan::Reading& one = file().thickness.readings[index];
    const std::string at = eye::short_clock_text(one.at);
    Target made = asks("reading-" + std::to_string(index), whole_um(one.thickness),
                       one_ring ? at : words_("plan-view.on_ring", {at, short_text(one.ring.mm(), words_)}));
    if (page_.doubted == index) made.look = Look::Watch;
    return made;
}

void PlanMaker::measured() {
    made_.measured = by();
    const auto& readings = file().thickness.readings;
    const bool one_ring =
        std::all_of(readings.begin(), readings.end(), [&](const plan::Reading& one) { return one.ring == readings.front().ring; });
    const int n = static_cast<int>(readings.size()), from = std::clamp(page_.readings_from, 0, std::max(0, n - 1));
    const int to = std::min(n, from + (one_ring ? readings_a_page : ringed_a_page));
    for (int i = from; i < to; ++i) made_.readings.push_back(reading(static_cast<std::size_t>(i), one_ring));
    if (file().thickness.central)
        made_.readings.push_back(asks("central", whole_um(*file().thickness.central), words_("plan-view.centre")));
    if (to - from < n) {
        made_.readings.push_back(turn_to("readings-more", words_("plan-view.more"), fmt::format("{}–{}/{}", from + 1, to, n),
                                         {.page = "plan-readings", .argument = std::to_string(to < n ? to : 0)}));
    }
    if (seen_.use != PlanSeen::Use::Over)
        made_.readings.push_back(turn_to("add-reading", "+", words_("plan-view.add"), {.page = "plan-mend", .argument = "new"}));
    made_.map = thickness_map(seen_.inputs, plan(), words_);
    made_.profile = wall_profile(seen_.inputs, plan(), words_);
    if (!plan().wall) {
        made_.thinnest = asks("thinnest", words_("plan-view.not_known"), words_("plan-view.thinnest"));
        return;
    }
    const plan::Wall& wall = *plan().wall;
    const std::string line = wall.thinnest_at ? words_("plan-view.thinnest_at", {eye::short_clock_text(*wall.thinnest_at)})
                                              : words_("plan-view.thinnest_centre");
    made_.thinnest =
        asks("thinnest", words_("plan-view.um_pm", {whole_um(wall.thinnest), std::to_string(std::lround(1.96 * wall.u.um()))}), line);
}

// ---- how deep ----

/// Back to the case's own aim where that gave this number and nothing else is changed.
Show PlanMaker::proposing(int spokes) const {
    plan::Inputs as_before = seen_.inputs;
    as_before.file.aim = seen_.base.file.aim;
    const auto& before = seen_.base_plan.target;
    if (as_before == seen_.base && before && before->spokes == spokes) return {.page = "plan-aim", .argument = ""};
    return {.page = "plan-spokes", .argument = std::to_string(spokes)};
}

PlanModel::Rung PlanMaker::bare(int spokes) const {
    PlanModel::Rung made{.spokes = std::to_string(spokes),
                         .travel = whole_um(plan::travel(seen_.inputs.trephine, spokes)),
                         .share = "–",
                         .left = "–",
                         .chance = words_("plan-view.no_claim")};
    made.planned = plan().target && plan().target->spokes == spokes;
    made.target = turn_to("rung-" + made.spokes, made.spokes, "", proposing(spokes));
    if (made.planned) made.target.look = Look::Filled;
    return made;
}

PlanModel::Rung PlanMaker::rung(const plan::Rung& of) const {
    PlanModel::Rung made = bare(of.spoke);
    made.share = words_("plan-view.percent", {fmt::format("{:.0f}", of.share * 100)});
    made.left = words_("plan-view.pm", {whole_um(of.reserve), whole_um(of.reserve_u95)});
    made.chance = chance_text(of.entry_chance, words_);
    made.entry_chance = of.entry_chance;
    made.over = of.entry_chance > file().aim.entry_limit;
    return made;
}

int PlanMaker::middle() const {
    const int last = static_cast<int>(made_.rungs.size()) - 1;
    const auto& target = plan().target;
    const int at = target && target->spokes ? *target->spokes : (target && target->entry_from ? *target->entry_from : std::min(8, last));
    return std::clamp(at - 1 + page_.turned, 0, std::max(0, last - 1));
}

void PlanMaker::ladder() {
    for (const char* figure : {"spokes", "travel", "share", "left", "chance"})
        made_.heads.push_back(
            asks(figure, words_(std::string("plan-view.head_") + figure), words_(std::string("plan-view.short_") + figure)));
    // Nought spokes are no cut: the ladder begins with the first.
    for (const plan::Rung& one : plan().ladder) {
        if (one.spoke > 0) made_.rungs.push_back(rung(one));
    }
    for (int spokes = 1; plan().ladder.empty() && spokes <= bare_rungs; ++spokes) made_.rungs.push_back(bare(spokes));
    made_.middle = middle();
    made_.earlier =
        turn_to("rungs-earlier", words_("plan-view.earlier"), "", {.page = "plan-turn", .argument = std::to_string(-rungs_a_turn)});
    made_.later = turn_to("rungs-later", words_("plan-view.later"), "", {.page = "plan-turn", .argument = std::to_string(rungs_a_turn)});
    const auto spokes = plan().target ? plan().target->spokes : std::nullopt;
    const std::string label = spokes ? words_("plan-view.why", {std::to_string(*spokes), std::to_string(*spokes + 1)})
                                     : words_(plan().target ? "plan-view.why_no_number" : "plan-view.why_none");
    made_.why = asks("why", label, why_not_more(seen_, words_));
    made_.spokes = plan().target ? spokes_text(*plan().target, 0, words_) : words_("plan.refused");
}

// ---- sizes ----

picture::SizeRuler PlanMaker::ruler(const char* label, measure::Length chosen, const Stock& stock) const {
    const auto among = [&](const std::vector<measure::Length>& sizes) {
        return std::find(sizes.begin(), sizes.end(), chosen) != sizes.end();
    };
    const bool profile = among(stock.profile), shelf = stock.shelf.empty() || among(stock.shelf);
    using Said = std::pair<const char*, const char*>;
    const auto [held, short_held] = !profile              ? Said{"plan-view.not_held", "plan-view.short_not_held"}
                                    : stock.shelf.empty() ? Said{"plan-view.held", "plan-view.short_held"}
                                    : shelf               ? Said{"plan-view.stocked", "plan-view.stocked"}
                                                          : Said{"plan-view.not_stocked", "plan-view.not_stocked"};
    return {.label = words_(label),
            .value = words_("unit.mm", {size_text(chosen, words_)}),
            .held = words_(held),
            .short_held = words_(short_held),
            .is_held = profile && shelf,
            .chosen = chosen,
            .sizes = stock.profile};
}

/// To the next size that the profile holds, on either side.
void PlanMaker::steps(const char* which, measure::Length chosen, const std::vector<measure::Length>& held) {
    const auto above = std::upper_bound(held.begin(), held.end(), chosen);
    const auto from = std::lower_bound(held.begin(), held.end(), chosen);
    const auto step = [&](const char* way, const char* sign, std::optional<measure::Length> to) {
        Target made =
            turn_to(std::string(which) + "-" + way, sign, to ? size_text(*to, words_) : "", {.page = std::string("plan-") + which});
        if (to) std::get<Show>(made.act).argument = std::to_string(to->nm() / 1000);
        if (!to) made.why_not = words_("plan-view.last_size");
        return made;
    };
    made_.steps.push_back(step("smaller", "−", from == held.begin() ? std::nullopt : std::optional(*(from - 1))));
    made_.steps.push_back(step("larger", "+", above == held.end() ? std::nullopt : std::optional(*above)));
}

void PlanMaker::sizes() {
    const auto& host = seen_.inputs.trephine.diameters;
    const auto& donor = seen_.inputs.punch.diameters;
    const plan::Limits& unit = seen_.inputs.limits;
    made_.rulers = {.host = ruler("plan.host", file().host_diameter, {host, unit.hosts_in_stock}),
                    .donor = ruler("plan.donor", file().donor.diameter, {donor, unit.donors_in_stock})};
    steps("host", file().host_diameter, host);
    steps("donor", file().donor.diameter, donor);
    const plan::Sizes& sizes = plan().sizes;
    const std::string at = eye::short_clock_text(measure::centideg(100 * sizes.clearance_deg));
    made_.figures = {
        asks("oversize", words_("unit.mm", {oversize_text(sizes.oversize, words_)}), words_("plan-view.oversize")),
        asks("clearance", words_("unit.mm", {size_text(sizes.clearance, words_)}), words_("plan-view.clearance", {at})),
        asks("sutures", pattern_text(file().pattern, words_), words_("plan-view.spacing", {size_text(plan().spacing, words_)}))};
}

}  // namespace screen
