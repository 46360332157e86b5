#include "screen/plan_views.hpp"

#include "screen/models.hpp"
#include "screen/sample_parts.hpp"

#include <utility>

namespace samples {

using screen::PlanPage;
using screen::PlanSeen;

namespace {

plan::Inputs bare() {
    plan::Inputs made = sample::inputs();
    made.file.white_to_white_horizontal = measure::from_mm(11.9);
    made.file.white_to_white_vertical = measure::from_mm(11.2);
    made.file.thickness.method = plan::Method::Oct;
    made.file.thickness.measured = measure::Day{.year = 2026, .month = 11, .day = 16};
    made.file.thickness.central = measure::from_um(551);
    for (const double mm : {6.0, 6.5, 7.0, 7.5, 8.0, 8.5, 9.0}) made.trephine.diameters.push_back(measure::from_mm(mm));
    for (int quarter = 26; quarter <= 36; ++quarter) made.punch.diameters.push_back(measure::from_mm(quarter * 0.25));
    made.punch.diameters.insert(made.punch.diameters.begin(), measure::from_mm(6));
    made.punch.diameters.push_back(measure::from_mm(9.5));
    return made;
}

PlanPage asking(const std::string& figure) {
    PlanPage page{};
    page.asked = figure;
    return page;
}

PlanPage column(const std::string& name) {
    PlanPage page{};
    page.column = name;
    return page;
}

/// What is odd about a case all at once: old readings through scar, a number over the limit, a small host in keratoconus.
plan::Inputs odd() {
    plan::Inputs made = eight_readings();
    made.file.reason = plan::Reason::Keratoconus;
    made.file.thickness.measured = measure::Day{.year = 2026, .month = 9, .day = 1};
    made.file.thickness.through_scar = true;
    made.file.aim = {.goal = plan::Goal::Spokes, .spokes = 10};
    made.limits.clearance = measure::from_mm(1.5);
    return made;
}

plan::Inputs refused() {
    plan::Inputs made = bare();
    made.file.donor.diameter = measure::from_mm(9.25);
    return made;
}

plan::Inputs to_entry() {
    plan::Inputs made = eight_readings();
    made.file.aim = {.goal = plan::Goal::ToEntry};
    made.file.thickness.central.reset();
    return made;
}

/// Before the plan is agreed only the case's clock runs; a plan in use is changed after the cut.
screen::Strip strip_in(const screen::Words& words, PlanSeen::Use use) {
    using Use = PlanSeen::Use;
    screen::Strip made{.eye = words("strip.right"),
                       .reference = words("strip.case", {"K-0147"}),
                       .sizes = words("strip.sizes", {words.figure("7.50"), words.figure("7.75")}),
                       .phase = words("plan-view.title"),
                       .clocks = {{words("clock.case"), "00:38:10", true}},
                       .time = {words("clock.day"), "09:41", false}};
    if (use == Use::Change) made.clocks.insert(made.clocks.begin(), {words("clock.open-sky"), "01:42", true});
    if (use == Use::Over) made.clocks = {{words("clock.stopped", {words("clock.case")}), "01:12:10", false}};
    return made;
}

struct Walk {
    const screen::Words& words;
    std::vector<Sample> views{};

    void see(const std::string& name, const plan::Inputs& inputs, PlanSeen::Use use, const PlanPage& page = {}) {
        screen::ScreenState screen{.page = "plan"};
        screen.plan = page;
        PlanSeen seen = plan_seen(inputs, use, page);
        seen.strip = strip_in(words, use);
        views.push_back({"plan " + name, screen::plan_view(seen, screen, words)});
    }
};

}  // namespace

plan::Inputs eight_readings() {
    plan::Inputs made = bare();
    int hour_half = 24;
    for (const double um : {664.0, 651.0, 646.0, 634.0, 629.0, 618.0, 633.0, 655.0}) {
        const int half = hour_half % 24;
        made.file.thickness.readings.push_back({.ring = measure::from_mm(7.5),
                                                .at = eye::from_clock(half / 2 == 0 ? 12 : half / 2, half % 2 * 30),
                                                .thickness = measure::from_um(um)});
        hour_half += 3;
    }
    return made;
}

plan::Inputs three_rings() {
    plan::Inputs made = bare();
    for (const double ring : {3.0, 6.0, 9.0}) {
        for (int hour = 1; hour <= 12; ++hour) {
            const double r = ring / 2, tilt = hour > 6 ? -0.6 * ring : 0.4 * ring;
            made.file.thickness.readings.push_back({.ring = measure::from_mm(ring),
                                                    .at = eye::from_clock(hour, 0),
                                                    .thickness = measure::from_um_tenths(551 * (1 + 0.0088 * r * r) + tilt)});
        }
    }
    return made;
}

PlanSeen plan_seen(const plan::Inputs& inputs, PlanSeen::Use use, const PlanPage& page) {
    PlanSeen seen{.use = use, .base = inputs, .base_plan = plan::make(inputs)};
    seen.inputs = screen::looked_at(inputs, page);
    seen.plan = plan::make(seen.inputs);
    seen.strip = strip("Plan");
    return seen;
}

std::vector<Sample> plan_views(const std::string& language) {
    using Use = PlanSeen::Use;
    Walk walk{.words = models::words(language)};
    const plan::Inputs eight = eight_readings();
    for (const std::string name : {"measured", "depth", "sizes"}) {
        walk.see("agree " + name, eight, Use::Agree, column(name));
        walk.see("change " + name, eight, Use::Change, column(name));
        walk.see("rings " + name, three_rings(), Use::NotYet, column(name));
        walk.see("odd " + name, odd(), Use::Agree, column(name));
        walk.see("refused " + name, refused(), Use::Begin, column(name));
        walk.see("entry " + name, to_entry(), Use::Over, column(name));
    }
    for (const std::string figure : {"thinnest", "central", "reading-5", "spokes", "travel", "share", "left", "chance", "why", "oversize",
                                     "clearance", "sutures", "cautions"}) {
        walk.see("ask " + figure, eight, Use::Agree, asking(figure));
        walk.see("odd ask " + figure, odd(), Use::Change, asking(figure));
    }
    walk.see("refused ask why", refused(), Use::Begin, asking("why"));
    PlanPage doubt = asking("reading-5");
    doubt.doubted = 5;
    doubt.doubted_um = -30;
    walk.see("what if", eight, Use::Agree, doubt);
    doubt.asked.clear();
    walk.see("what if seen", eight, Use::Change, doubt);
    PlanPage changed{};
    changed.changed = eight;
    changed.changed->file.aim = {.goal = plan::Goal::Spokes, .spokes = 9};
    walk.see("changed", eight, Use::Change, changed);
    PlanPage turned{};
    turned.turned = 6;
    walk.see("turned", eight, Use::Agree, turned);
    screen::ScreenState form = screen::after_plan({}, {.page = "plan-mend", .argument = "5"}, eight);
    walk.views.push_back({"plan form mend", screen::plan_reading(eight, form, walk.words)});
    form.draft["plan-um"] = "61";
    walk.views.push_back({"plan form wrong", screen::plan_reading(eight, form, walk.words)});
    form = screen::after_plan({}, {.page = "plan-mend", .argument = "new"}, eight);
    walk.views.push_back({"plan form add", screen::plan_reading(eight, form, walk.words)});
    return std::move(walk.views);
}

}  // namespace samples
