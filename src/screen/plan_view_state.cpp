// What a touch on the Plan view does to the screen: nothing here is recorded, and leaving the view forgets it.
#include "eye/frame.hpp"
#include "screen/plan_view.hpp"

#include <algorithm>
#include <charconv>

namespace screen {
namespace {

constexpr std::int64_t least_um = 300, most_um = 1200, least_ring_um = 1000, most_ring_um = 12000;  // formats.md

std::optional<int> whole(const std::string& text) {
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    return error == std::errc{} && end == text.data() + text.size() ? std::optional(value) : std::nullopt;
}

/// A decimal of at most three places, with a point or a comma, in thousandths; nothing else is one.
std::optional<std::int64_t> thousandths(const std::string& text) {
    const auto point = text.find_first_of(".,");
    const auto before = whole(text.substr(0, point));
    if (!before || *before < 0 || text.size() > 8) return std::nullopt;
    if (point == std::string::npos) return 1000LL * *before;
    std::string after = text.substr(point + 1);
    if (after.empty() || after.size() > 3) return std::nullopt;
    after.resize(3, '0');
    const auto parts = whole(after);
    return parts && *parts >= 0 ? std::optional(1000LL * *before + *parts) : std::nullopt;
}

/// "7:30" is half past seven; "7" and "7.30", as some write it, are taken too.
std::optional<measure::Angle> hour(std::string text) {
    std::replace(text.begin(), text.end(), '.', ':');
    if (text.find(':') == std::string::npos) text += ":00";
    return eye::from_clock_text(text);
}

std::string typed(const ScreenState& screen, const std::string& field) {
    const auto found = screen.draft.find(field);
    return found == screen.draft.end() ? "" : found->second;
}

plan::Inputs& changing(ScreenState& screen, const plan::Inputs& base) {
    if (!screen.plan.changed) screen.plan.changed = base;
    screen.plan.doubted.reset();
    screen.plan.doubted_um = 0;
    return *screen.plan.changed;
}

/// Back to none where nothing is changed any more.
void settle(ScreenState& screen, const plan::Inputs& base) {
    if (screen.plan.changed == base) screen.plan.changed.reset();
}

std::string decimal(std::int64_t of_thousand) {
    std::string after = std::to_string(1000 + of_thousand % 1000).substr(1);
    while (!after.empty() && after.back() == '0') after.pop_back();
    return std::to_string(of_thousand / 1000) + (after.empty() ? "" : "." + after);
}

void open_form(ScreenState& screen, const plan::Inputs& inputs, const std::string& which) {
    screen.page = "plan-reading";
    screen.argument = which;
    screen.draft["plan-at"] = screen.draft["plan-um"] = "";
    screen.draft["plan-ring"] = decimal(inputs.file.host_diameter.nm() / 1000);
    screen.field = "plan-at";
    const auto& readings = inputs.file.thickness.readings;
    const auto index = whole(which);
    if (!index || *index < 0 || static_cast<std::size_t>(*index) >= readings.size()) return;
    const plan::Reading& one = readings[static_cast<std::size_t>(*index)];
    screen.draft["plan-at"] = eye::short_clock_text(one.at);
    screen.draft["plan-um"] = decimal(one.thickness.nm());
    screen.draft["plan-ring"] = decimal(one.ring.nm() / 1000);
    screen.field = "plan-um";
}

void put_in(ScreenState& screen, const plan::Inputs& base) {
    const TypedReading typed = typed_reading(wanted(base, screen.plan), screen);
    if (!typed.reading) return;
    auto& readings = changing(screen, base).file.thickness.readings;
    const auto index = whole(screen.argument);
    if (index && static_cast<std::size_t>(*index) < readings.size()) {
        readings[static_cast<std::size_t>(*index)] = *typed.reading;
    } else {
        readings.push_back(*typed.reading);
    }
    screen.page = "plan";
    screen.plan.asked.clear();
}

void take_out(ScreenState& screen, const plan::Inputs& base) {
    auto& readings = changing(screen, base).file.thickness.readings;
    const auto index = whole(screen.argument);
    if (index && *index >= 0 && static_cast<std::size_t>(*index) < readings.size()) readings.erase(readings.begin() + *index);
    screen.page = "plan";
    screen.plan.asked.clear();
    screen.plan.readings_from = 0;
}

void doubt(ScreenState& screen, int by) {
    const std::string& asked = screen.plan.asked;
    const auto index = asked.starts_with("reading-") ? whole(asked.substr(8)) : std::nullopt;
    if (!index) return;
    const auto reading = static_cast<std::size_t>(*index);
    if (screen.plan.doubted != reading) screen.plan.doubted_um = 0;
    screen.plan.doubted = reading;
    screen.plan.doubted_um += by;
    if (screen.plan.doubted_um == 0) screen.plan.doubted.reset();
}

void ask(ScreenState& screen, const std::string& figure) {
    screen.plan.asked = screen.plan.asked == figure ? "" : figure;
    screen.plan.from = 0;
}

/// The surgeon's own number.
void propose(ScreenState& screen, const plan::Inputs& base, int spokes) {
    plan::Aim& aim = changing(screen, base).file.aim;
    aim = {.goal = plan::Goal::Spokes, .share_permille = 0, .spokes = spokes, .entry_limit = base.file.aim.entry_limit};
    screen.plan.asked.clear();
}

void turn(ScreenState& screen, const Show& show, const plan::Inputs& base) {
    PlanPage& page = screen.plan;
    const int by = whole(show.argument).value_or(0);
    if (show.page == "plan-column") page.column = show.argument, page.asked.clear();
    if (show.page == "plan-ask") ask(screen, show.argument);
    if (show.page == "plan-more") page.from = by;
    if (show.page == "plan-turn") page.turned += by;
    if (show.page == "plan-readings") page.readings_from = by;
    if (show.page == "plan-doubt") doubt(screen, by);
    if (show.page == "plan-spokes") propose(screen, base, by), page.turned = 0;
    if (show.page == "plan-aim") changing(screen, base).file.aim = base.file.aim, page.turned = 0;
    if (show.page == "plan-host") changing(screen, base).file.host_diameter = measure::nm(1000LL * by);
    if (show.page == "plan-donor") changing(screen, base).file.donor.diameter = measure::nm(1000LL * by);
    if (show.page == "plan-reset") page = {.column = page.column};
    if (show.page == "plan-doubt-none") page.doubted.reset(), page.doubted_um = 0;
}

}  // namespace

plan::Inputs wanted(const plan::Inputs& base, const PlanPage& page) { return page.changed.value_or(base); }

plan::Inputs looked_at(const plan::Inputs& base, const PlanPage& page) {
    plan::Inputs made = wanted(base, page);
    auto& readings = made.file.thickness.readings;
    if (page.doubted && *page.doubted < readings.size()) {
        plan::Reading& one = readings[*page.doubted];
        one.thickness = one.thickness + measure::nm(1000LL * page.doubted_um);
    }
    return made;
}

TypedReading typed_reading(const plan::Inputs& inputs, const ScreenState& screen) {
    const auto at = hour(typed(screen, "plan-at"));
    if (!at) return {.field = "plan-at", .problem = "plan-view.allowed_at"};
    const auto um = thousandths(typed(screen, "plan-um"));
    if (!um || *um % 100 != 0 || *um < 1000 * least_um || *um > 1000 * most_um)
        return {.field = "plan-um", .problem = "plan-view.allowed_um"};
    const auto ring = thousandths(typed(screen, "plan-ring"));
    if (!ring || *ring < least_ring_um || *ring > most_ring_um) return {.field = "plan-ring", .problem = "plan-view.allowed_ring"};
    const plan::Reading made{.ring = measure::nm(1000 * *ring), .at = *at, .thickness = measure::nm(*um)};
    const auto& readings = inputs.file.thickness.readings;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const bool itself = screen.argument == std::to_string(i);
        if (!itself && readings[i].ring == made.ring && readings[i].at == made.at)
            return {.field = "plan-at", .problem = "plan-view.taken"};
    }
    return {.reading = made};
}

bool of_plan_view(const Show& show) { return show.page.starts_with("plan"); }

ScreenState after_plan(ScreenState screen, const Show& show, const plan::Inputs& base) {
    if (show.page == "plan-mend") {
        open_form(screen, wanted(base, screen.plan), show.argument);
    } else if (show.page == "plan-put") {
        put_in(screen, base);
    } else if (show.page == "plan-remove") {
        take_out(screen, base);
    } else if (show.page == "plan" || show.page == "plan-why") {
        screen.page = show.page;
        screen.argument = show.argument;
    } else {
        turn(screen, show, base);
    }
    settle(screen, base);
    return screen;
}

}  // namespace screen
