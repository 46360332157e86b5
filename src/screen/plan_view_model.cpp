// What the Plan view says: readings, ladder, sizes, cautions, and what each of its targets does.
#include "eye/frame.hpp"
#include "measure/expect.hpp"
#include "screen/format.hpp"
#include "screen/pages.hpp"
#include "screen/plan_view.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace screen {
namespace {

using plan::Note;

constexpr int readings_a_page = 8, ringed_a_page = 5;
constexpr int rungs_a_turn = 3;
constexpr int bare_rungs = 16;  // of a ladder about which nothing can be told

/// Whole micrometres, with a minus as print has it.
std::string whole(measure::Length length) {
    const long um = std::lround(length.um());
    return fmt::format("{}{}", um < 0 ? "−" : "", std::abs(um));
}

Target asks(const std::string& figure, std::string label, std::string line) {
    return turn_to("ask-" + figure, std::move(label), std::move(line), {.page = "plan-ask", .argument = figure});
}

class Maker {
public:
    Maker(const PlanSeen& seen, const PlanPage& page, const Words& words) : seen_(seen), page_(page), words_(words) {}

    PlanModel made() {
        frame();
        measured();
        ladder();
        sizes();
        cautions();
        foot();
        made_.panel = plan_panel(seen_, page_, words_);
        if (made_.panel) made_.column = made_.panel->column;
        weigh();
        return std::move(made_);
    }

private:
    const plan::CaseFile& file() const { return seen_.inputs.file; }
    const plan::Plan& plan() const { return seen_.plan; }
    bool doubting() const { return page_.doubted.has_value(); }

    void frame();
    std::optional<Banner> banner() const;
    void measured();
    std::string by() const;
    Target reading(std::size_t index, bool one_ring) const;
    void ladder();
    PlanModel::Rung rung(const plan::Rung& of) const;
    PlanModel::Rung bare(int spokes) const;
    Show proposing(int spokes) const;
    int middle() const;
    void sizes();
    struct Stock {
        const std::vector<measure::Length>& profile;
        const std::vector<measure::Length>& shelf;  // empty: the unit does not say
    };
    picture::SizeRuler ruler(const char* label, measure::Length chosen, const Stock& stock) const;
    void steps(const char* which, measure::Length chosen, const std::vector<measure::Length>& held);
    void cautions();
    void foot();
    Target hold() const;
    std::string why_not() const;
    void weigh();

    const PlanSeen& seen_;
    const PlanPage& page_;
    const Words& words_;
    PlanModel made_{};
};

void Maker::frame() {
    made_.strip = seen_.strip;
    if (made_.strip) {
        made_.strip->phase = words_("plan-view.title");
        made_.strip->sizes = words_("strip.sizes", {size_text(file().host_diameter), size_text(file().donor.diameter)});
    }
    int place = 0;
    for (const std::string column : {"measured", "depth", "sizes"}) {
        Target tab = turn_to("column-" + column, words_("plan-view.tab_" + column), "", {.page = "plan-column", .argument = column});
        if (page_.column == column) tab.look = Look::Filled, made_.column = place;
        made_.tabs.push_back(std::move(tab));
        ++place;
    }
    made_.banner = seen_.banner ? seen_.banner : banner();
}

/// What is looked at is not what counts: a what-if, or a change that is not in use.
std::optional<Banner> Maker::banner() const {
    if (doubting() && *page_.doubted < file().thickness.readings.size()) {
        const plan::Reading& now = file().thickness.readings[*page_.doubted];
        const measure::Length before = now.thickness - measure::nm(1000LL * page_.doubted_um);
        return Banner{.level = Banner::Level::Watch,
                      .text = words_("plan-view.what_if", {eye::short_clock_text(now.at), whole(now.thickness), whole(before)})};
    }
    if (page_.changed) return Banner{.level = Banner::Level::Notice, .text = words_("plan-view.changed")};
    return std::nullopt;
}

// ---- measured ----

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

std::string Maker::by() const {
    const plan::Thickness& thickness = file().thickness;
    const std::string method = words_(method_id(thickness.method));
    if (!thickness.measured) return words_("plan-view.by_no_date", {method});
    const int days = measure::days_between(*thickness.measured, file().date);
    return words_(days == 1 ? "plan-view.by_one_day" : "plan-view.by", {method, measure::iso(*thickness.measured), std::to_string(days)});
}

Target Maker::reading(std::size_t index, bool one_ring) const {
    const plan::Reading& one = file().thickness.readings[index];
    const std::string at = eye::short_clock_text(one.at);
    Target made = asks("reading-" + std::to_string(index), whole(one.thickness),
                       one_ring ? at : words_("plan-view.on_ring", {at, fmt::format("{:g}", one.ring.mm())}));
    if (page_.doubted == index) made.look = Look::Watch;
    return made;
}

void Maker::measured() {
    made_.measured = by();
    const auto& readings = file().thickness.readings;
    const bool one_ring =
        std::all_of(readings.begin(), readings.end(), [&](const plan::Reading& one) { return one.ring == readings.front().ring; });
    const int n = static_cast<int>(readings.size()), from = std::clamp(page_.readings_from, 0, std::max(0, n - 1));
    const int to = std::min(n, from + (one_ring ? readings_a_page : ringed_a_page));
    for (int i = from; i < to; ++i) made_.readings.push_back(reading(static_cast<std::size_t>(i), one_ring));
    if (file().thickness.central) made_.readings.push_back(asks("central", whole(*file().thickness.central), words_("plan-view.centre")));
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
    const std::string line = wall.thinnest_deg
                                 ? words_("plan-view.thinnest_at", {eye::short_clock_text(measure::centideg(100 * *wall.thinnest_deg))})
                                 : words_("plan-view.thinnest_centre");
    made_.thinnest =
        asks("thinnest", words_("plan-view.um_pm", {whole(wall.thinnest), std::to_string(std::lround(1.96 * wall.u.um()))}), line);
}

// ---- how deep ----

/// Back to the case's own aim where that gave this number and nothing else is changed.
Show Maker::proposing(int spokes) const {
    plan::Inputs as_before = seen_.inputs;
    as_before.file.aim = seen_.base.file.aim;
    const auto& before = seen_.base_plan.target;
    if (as_before == seen_.base && before && before->spokes == spokes) return {.page = "plan-aim", .argument = ""};
    return {.page = "plan-spokes", .argument = std::to_string(spokes)};
}

PlanModel::Rung Maker::bare(int spokes) const {
    PlanModel::Rung made{.spokes = std::to_string(spokes),
                         .travel = whole(plan::travel(seen_.inputs.trephine, spokes)),
                         .share = "–",
                         .left = "–",
                         .chance = words_("plan-view.no_claim")};
    made.planned = plan().target && plan().target->spokes == spokes;
    made.target = turn_to("rung-" + made.spokes, made.spokes, "", proposing(spokes));
    if (made.planned) made.target.look = Look::Filled;
    return made;
}

PlanModel::Rung Maker::rung(const plan::Rung& of) const {
    PlanModel::Rung made = bare(of.spoke);
    made.share = words_("plan-view.percent", {fmt::format("{:.0f}", of.share * 100)});
    made.left = words_("plan-view.pm", {whole(of.reserve), whole(of.reserve_u95)});
    made.chance = chance_text(of.entry_chance, words_);
    made.entry_chance = of.entry_chance;
    made.over = of.entry_chance > file().aim.entry_limit;
    return made;
}

int Maker::middle() const {
    const int last = static_cast<int>(made_.rungs.size()) - 1;
    const auto& target = plan().target;
    const int at = target && target->spokes ? *target->spokes : (target && target->entry_from ? *target->entry_from : std::min(8, last));
    return std::clamp(at - 1 + page_.turned, 0, std::max(0, last - 1));
}

void Maker::ladder() {
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

picture::SizeRuler Maker::ruler(const char* label, measure::Length chosen, const Stock& stock) const {
    const auto among = [&](const std::vector<measure::Length>& sizes) {
        return std::find(sizes.begin(), sizes.end(), chosen) != sizes.end();
    };
    const bool profile = among(stock.profile), shelf = stock.shelf.empty() || among(stock.shelf);
    const char* held = !profile ? "plan-view.not_held" : (!shelf ? "plan-view.not_stocked" : "plan-view.held");
    return {.label = words_(label),
            .value = words_("unit.mm", {size_text(chosen)}),
            .held = words_(profile && shelf && !stock.shelf.empty() ? "plan-view.stocked" : held),
            .is_held = profile && shelf,
            .chosen = chosen,
            .sizes = stock.profile};
}

/// To the next size that the profile holds, on either side.
void Maker::steps(const char* which, measure::Length chosen, const std::vector<measure::Length>& held) {
    const auto above = std::upper_bound(held.begin(), held.end(), chosen);
    const auto from = std::lower_bound(held.begin(), held.end(), chosen);
    const auto step = [&](const char* way, const char* sign, std::optional<measure::Length> to) {
        Target made = turn_to(std::string(which) + "-" + way, sign, to ? size_text(*to) : "", {.page = std::string("plan-") + which});
        if (to) std::get<Show>(made.act).argument = std::to_string(to->nm() / 1000);
        if (!to) made.why_not = words_("plan-view.last_size");
        return made;
    };
    made_.steps.push_back(step("smaller", "−", from == held.begin() ? std::nullopt : std::optional(*(from - 1))));
    made_.steps.push_back(step("larger", "+", above == held.end() ? std::nullopt : std::optional(*above)));
}

void Maker::sizes() {
    const auto& host = seen_.inputs.trephine.diameters;
    const auto& donor = seen_.inputs.punch.diameters;
    const plan::Limits& unit = seen_.inputs.limits;
    made_.rulers = {.host = ruler("plan.host", file().host_diameter, {host, unit.hosts_in_stock}),
                    .donor = ruler("plan.donor", file().donor.diameter, {donor, unit.donors_in_stock})};
    steps("host", file().host_diameter, host);
    steps("donor", file().donor.diameter, donor);
    const plan::Sizes& sizes = plan().sizes;
    const std::string at = eye::short_clock_text(measure::centideg(100 * sizes.clearance_deg));
    made_.figures = {asks("oversize", words_("unit.mm", {fmt::format("{:+.2f}", sizes.oversize.mm())}), words_("plan-view.oversize")),
                     asks("clearance", words_("unit.mm", {size_text(sizes.clearance)}), words_("plan-view.clearance", {at})),
                     asks("sutures", pattern_text(file().pattern, words_), words_("plan-view.spacing", {size_text(plan().spacing)}))};
}

// ---- always there ----

/// What stops the plan, then what is odd in this case, then what goes for every case.
void Maker::cautions() {
    const auto add = [&](Note::Level level, Banner::Level as) {
        for (const Note& note : plan().notes) {
            const bool general = note.code == "ladder-estimate" || note.code == "watch-the-chamber" || note.code == "ladder-leaves-out";
            if (note.level == level && !general) made_.cautions.push_back({.level = as, .text = words_("note." + note.code, note.values)});
        }
    };
    add(Note::Level::Stop, Banner::Level::Stop);
    if (!plan().ladder.empty()) made_.cautions.push_back({.level = Banner::Level::Watch, .text = words_("plan.caution")});
    add(Note::Level::Watch, Banner::Level::Watch);
    for (const Note& note : plan().notes) {
        if (note.code == "ladder-leaves-out")
            made_.cautions.push_back({.level = Banner::Level::Watch, .text = words_("plan-view.leaves_out", note.values)});
    }
    made_.all_cautions = asks("cautions", words_("plan-view.all_cautions"), "");
}

std::string Maker::why_not() const {
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

Target Maker::hold() const {
    const bool begins = seen_.use == PlanSeen::Use::Begin;
    Target made = turn_to("use-plan", words_(begins ? "plan-view.begin" : "plan-view.use"), made_.spokes, {.page = "plan-why"});
    if (begins) made.act = Show{.page = "make-planned"};
    if (seen_.use == PlanSeen::Use::Agree)
        made.act = std::vector<guide::Intent>{guide::AcceptPlan{.inputs = seen_.inputs, .plan = plan(), .why = ""}};
    made.look = Look::Filled;
    made.why_not = why_not();
    if (made.why_not.empty()) made.press = Press::Hold;
    return made;
}

void Maker::foot() {
    const bool changed = page_.changed || doubting();
    made_.foot.push_back(turn_to("back", words_("page.back"), changed ? words_("plan-view.drops") : "",
                                 {.page = seen_.use == PlanSeen::Use::Begin ? "new" : ""}));
    if (changed) made_.foot.push_back(turn_to("reset", words_("plan-view.reset"), words_("plan-view.as_given"), {.page = "plan-reset"}));
    made_.foot.push_back(hold());
}

/// What is looked at is chosen like on the other pages; the hold is one of the theatre's.
void Maker::weigh() {
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

}  // namespace

PlanModel plan_view(const PlanSeen& seen, const ScreenState& screen, const Words& words) { return Maker(seen, screen.plan, words).made(); }

}  // namespace screen
