// What the Plan view says and does. Figures are worked out beside the checks from the readings by the rules of the case file's
// contract (480 um is 8 spokes of 60 um, 0.80 of 618 um is 494.4 um), or are the plan's own, never the view's.
#include "screen/plan_view.hpp"

#include "screen/models.hpp"
#include "screen/new_case.hpp"
#include "screen/plan_views.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace screen;
using samples::eight_readings;
using Use = PlanSeen::Use;

namespace {

/// The view as it is worked: a target is touched, what it shows is turned to, the next view is made.
struct Seen {
    plan::Inputs base = eight_readings();
    Use use = Use::Agree;
    ScreenState screen{.page = "plan"};

    PlanSeen seen() const { return samples::plan_seen(base, use, screen.plan); }
    PlanModel model() const { return plan_view(seen(), screen, models::words()); }
    void touch(const Target& target) {
        CAPTURE(target.id);
        REQUIRE(target.why_not.empty());
        const Show& show = std::get<Show>(target.act);
        screen = of_plan_view(show) ? after_plan(screen, show, base) : after(screen, show);
    }
};

const Target& in(const std::vector<Target>& all, const std::string& id) {
    for (const Target& one : all)
        if (one.id == id) return one;
    FAIL("no target ", id);
    return all.front();
}

const PlanModel::Rung& rung(const PlanModel& model, int spokes) { return model.rungs.at(static_cast<std::size_t>(spokes - 1)); }

bool says(const PlanModel::Panel& panel, const std::string& part) {
    for (const Row& row : panel.rows)
        if (row.value.find(part) != std::string::npos) return true;
    return panel.value.find(part) != std::string::npos;
}

bool cautions(const PlanModel& model, const std::string& part) {
    for (const auto& one : model.cautions)
        if (one.text.find(part) != std::string::npos) return true;
    return false;
}

/// How many lines on the glass tell an error: each line in such a row keeps away from its borders.
int errors_clear(const FormModel& model, const Canvas& canvas) {
    const Frame frame = draw(model, canvas);
    const double cap = canvas.lettering.cap(picture::Type::Text);
    int told = 0;
    for (const auto& [target, box] : frame.touchables) {
        for (const auto& shape : frame.shapes) {
            const auto* text = std::get_if<picture::Text>(&shape);
            const bool in =
                text != nullptr && text->at.y > box.y && text->at.y < box.bottom() && text->at.x > box.x && text->at.x < box.right();
            if (!in || !target.id.starts_with("field-")) continue;
            for (const auto& field : model.fields)
                told += field.target.id == target.id && field.problem.find(text->text) != std::string::npos ? 1 : 0;
            CHECK(text->at.y - cap - box.y >= cap * 0.4);
            CHECK(box.bottom() - text->at.y >= cap * 0.4);
        }
    }
    return told;
}

const guide::AcceptPlan& accepts(const Target& target) {
    return std::get<guide::AcceptPlan>(std::get<std::vector<guide::Intent>>(target.act).front());
}

}  // namespace

TEST_CASE("the readings stand with their instrument and age, and the thinnest where it was read") {
    const PlanModel model = Seen{}.model();
    // 16 to 25 November are 9 days.
    CHECK(model.measured == "OCT, 2026-11-16, 9 days before");
    CHECK(in(model.readings, "ask-reading-0").label == "664");
    CHECK(in(model.readings, "ask-reading-0").line == "12");
    CHECK(in(model.readings, "ask-reading-5").label == "618");
    CHECK(in(model.readings, "ask-reading-5").line == "7:30");
    CHECK(model.thinnest.label.starts_with("618 ± "));
    CHECK(model.thinnest.line == "thinnest, at 7:30");
}

TEST_CASE("the ladder is the plan's, the planned rung is marked, and rungs over the limit are") {
    const Seen seen;
    const PlanModel model = seen.model();
    const plan::Plan plan = plan::make(seen.base);
    REQUIRE(plan.target->spokes == 8);
    REQUIRE(model.rungs.size() == plan.ladder.size() - 1);  // nought spokes are no rung
    for (std::size_t i = 0; i < model.rungs.size(); ++i) {
        const PlanModel::Rung& shown = model.rungs[i];
        const plan::Rung& of = plan.ladder[i + 1];
        CAPTURE(shown.spokes);
        CHECK(shown.spokes == std::to_string(of.spoke));
        CHECK(shown.travel == std::to_string(60 * of.spoke));
        CHECK(shown.planned == (of.spoke == 8));
        CHECK(shown.over == (of.entry_chance > 0.05));
        CHECK(shown.entry_chance == of.entry_chance);
    }
    CHECK(rung(model, 8).share == "78 %");  // 480 / 618
    CHECK(rung(model, 8).target.look == Look::Filled);
    CHECK(rung(model, 9).over);
    CHECK_FALSE(rung(model, 8).over);
    CHECK(rung(model, 10).left.starts_with("−10 ± "));  // 618 - 1.046 x 600
}

TEST_CASE("a touched rung is the surgeon's own number, with its caution at once, and the case's own number again is its aim") {
    Seen seen;
    seen.touch(rung(seen.model(), 9).target);
    CHECK((seen.screen.plan.changed->file.aim == plan::Aim{.goal = plan::Goal::Spokes, .spokes = 9, .entry_limit = 0.05}));
    const PlanModel nine = seen.model();
    CHECK(rung(nine, 9).planned);
    CHECK_FALSE(rung(nine, 8).planned);
    CHECK(nine.spokes == "3 to zero, then 9");
    CHECK(cautions(nine, "9 spokes: the chance of entering is over the limit of 5 %."));
    REQUIRE(nine.banner);
    CHECK(nine.banner->level == Banner::Level::Notice);
    seen.touch(rung(nine, 8).target);
    CHECK_FALSE(seen.screen.plan.changed);
    CHECK_FALSE(seen.model().banner);
    seen.touch(rung(seen.model(), 7).target);
    CHECK_FALSE(cautions(seen.model(), "over the limit"));
}

TEST_CASE("why 8 and not 9: the aim is broken, by how much, and what the limit says of it") {
    Seen seen;
    const PlanModel model = seen.model();
    CHECK(model.why.label == "Why 8, not 9?");
    CHECK(model.why.line == "9: 87 % of the thinnest, aim 80 %");  // 540 / 618
    seen.touch(model.why);
    const auto panel = seen.model().panel;
    REQUIRE(panel);
    CHECK(panel->column == 1);
    CHECK(panel->value == "9 spokes: 540 µm, 87 %");
    CHECK(says(*panel, "80 % of the thinnest is 494 µm: over it by 46 µm."));
    CHECK(says(*panel, "over the limit of 5 %"));
    CHECK(says(*panel, "held by the aim"));
}

TEST_CASE("why not more where the limit holds it") {
    Seen seen;
    seen.base.file.aim.share_permille = 950;  // 0.95 of 618 is 587 um, 9 spokes are 540: the chance of 9 is over 5 %
    const PlanModel model = seen.model();
    CHECK(model.spokes == "3 to zero, then 8");
    CHECK(model.why.line.ends_with(", limit 5 %"));
    seen.touch(model.why);
    CHECK(says(*seen.model().panel, "within it by"));
    CHECK(says(*seen.model().panel, "held by the entry limit"));
}

TEST_CASE("what if the reading at 7:30 is wrong by 30: figures follow, it is said, it cannot be used, and it is taken back") {
    Seen seen;
    seen.touch(in(seen.model().readings, "ask-reading-5"));
    REQUIRE(seen.model().panel);
    CHECK(says(*seen.model().panel, "618 ± 12 µm"));  // 1.96 x 6 um, the repeatability of OCT
    seen.touch(in(seen.model().panel->targets, "doubt-30"));
    const PlanModel model = seen.model();
    CHECK(looked_at(seen.base, seen.screen.plan).file.thickness.readings[5].thickness == measure::from_um(588));
    CHECK(model.panel->value == "588 µm, not 618 µm");
    CHECK(model.thinnest.label.starts_with("588 ± "));
    CHECK(model.spokes == "3 to zero, then 7");  // 0.80 x 588 = 470.4: 420 is within, 480 is not
    REQUIRE(model.banner);
    CHECK(model.banner->text.find("588 µm at 7:30, not 618") != std::string::npos);
    CHECK_FALSE(model.foot.back().why_not.empty());
    // Steps add up: 10 back is 20 less.
    seen.touch(in(model.panel->targets, "doubt+10"));
    CHECK(looked_at(seen.base, seen.screen.plan).file.thickness.readings[5].thickness == measure::from_um(598));
    CHECK_FALSE(seen.screen.plan.changed);  // never a change of the case
    CHECK(wanted(seen.base, seen.screen.plan) == seen.base);
    seen.touch(in(seen.model().foot, "reset"));
    CHECK(looked_at(seen.base, seen.screen.plan) == seen.base);
    CHECK(seen.model().foot.back().why_not.empty());
}

TEST_CASE("every figure has its panel, with a source or how it comes about; a second tap closes it") {
    Seen seen;
    const PlanModel model = seen.model();
    std::vector<Target> figures{model.thinnest, model.why, in(model.readings, "ask-central"), in(model.readings, "ask-reading-0")};
    figures.insert(figures.end(), model.heads.begin(), model.heads.end());
    figures.insert(figures.end(), model.figures.begin(), model.figures.end());
    figures.push_back(model.all_cautions);
    CHECK(figures.size() == 13);
    for (const Target& figure : figures) {
        CAPTURE(figure.id);
        seen.touch(figure);
        const auto panel = seen.model().panel;
        REQUIRE(panel);
        CHECK_FALSE(panel->title.empty());
        CHECK(panel->rows.size() >= 2);
        for (const Row& row : panel->rows) CHECK_FALSE(models::unfilled(row.label + row.value));
        seen.touch(panel->close);
        CHECK_FALSE(seen.model().panel);
    }
    for (const std::string figure : {"thinnest", "travel", "share", "left", "chance"}) {
        seen.screen.plan.asked = figure;
        const auto panel = seen.model().panel;
        REQUIRE(panel->rows.size() >= 3);
        CHECK(panel->rows[0].label == "How");
        CHECK(panel->rows[1].label == "Source");
        CHECK(panel->rows[2].label == "How sure");
    }
}

TEST_CASE("the hold agrees the plan that is looked at, changed or not") {
    Seen seen;
    CHECK(seen.model().foot.back().press == Press::Hold);
    CHECK(accepts(seen.model().foot.back()).inputs == seen.base);
    seen.touch(in(seen.model().steps, "host-larger"));
    seen.touch(rung(seen.model(), 7).target);
    CHECK(seen.model().foot.back().look == Look::Filled);
    Seen risky;
    risky.touch(rung(risky.model(), 9).target);
    REQUIRE(rung(risky.model(), 9).over);
    CHECK(risky.model().foot.back().look == Look::Watch);  // a chance of entering over the limit is never held as a safe plan is
    const guide::AcceptPlan intent = accepts(seen.model().foot.back());
    CHECK(intent.inputs.file.host_diameter == measure::from_mm(8));
    CHECK(intent.plan == plan::make(intent.inputs));
}

TEST_CASE("before it is asked for, and of a plan that is refused, there is nothing to hold; a record that is locked takes no change") {
    Seen seen{.use = Use::NotYet};
    CHECK(seen.model().foot.back().why_not == "at its own step");
    seen.use = Use::Agree;
    seen.base.file.thickness.readings.clear();
    CHECK(seen.model().foot.back().why_not == "cannot be used");
    seen.screen.plan.asked = "why";
    REQUIRE(seen.model().panel);
    CHECK(seen.model().panel->title == seen.model().why.label);
    CHECK(seen.model().cautions.front().level == Banner::Level::Stop);
    seen = {.use = Use::Over};
    CHECK_FALSE(rung(seen.model(), 8).target.why_not.empty());
}

TEST_CASE("a plan in use is changed by a hold, a reason, and nothing less") {
    Seen seen{.use = Use::Change};
    CHECK(seen.model().foot.back().why_not == "in use now");
    seen.touch(rung(seen.model(), 9).target);
    const Target hold = seen.model().foot.back();
    CHECK(hold.press == Press::Hold);
    seen.touch(hold);
    CHECK(seen.screen.page == "plan-why");
    const PickModel why = plan_why(seen.seen(), models::words());
    REQUIRE(why.choices.size() == 4);
    for (const Target& one : why.choices) {
        CHECK(accepts(one).why == one.label);
        CHECK(accepts(one).plan.target->spokes == 9);
    }
}

TEST_CASE("sizes go to the next that the profile holds, and the plan follows at once") {
    Seen seen;
    CHECK(in(seen.model().steps, "host-smaller").line == "7.00");
    CHECK(in(seen.model().steps, "donor-larger").line == "8.00");
    seen.touch(in(seen.model().steps, "donor-larger"));
    CHECK(in(seen.model().figures, "ask-oversize").label == "+0.50 mm");
    CHECK(seen.model().rulers.donor.value == "8.00 mm");
    seen.base.file.host_diameter = measure::from_mm(9);
    seen.screen.plan = {};
    CHECK_FALSE(in(seen.model().steps, "host-larger").why_not.empty());
    seen.base.file.host_diameter = measure::from_mm(7.25);
    CHECK_FALSE(seen.model().rulers.host.is_held);
    CHECK(seen.model().rulers.host.held == "not in profile");
    seen.base.file.host_diameter = measure::from_mm(7.5);
    seen.base.limits.hosts_in_stock = {measure::from_mm(8)};
    CHECK(seen.model().rulers.host.held == "not on the shelf");
}

TEST_CASE("a reading is mended, added and taken out by the keypad, and what is no reading is not put in") {
    Seen seen;
    seen.touch(in(seen.model().readings, "ask-reading-5"));
    seen.touch(in(seen.model().panel->targets, "mend"));
    const auto form = [&] { return plan_reading(wanted(seen.base, seen.screen.plan), seen.screen, models::words()); };
    CHECK(form().fields[0].value == "7:30");
    CHECK(form().fields[1].value == "618");
    for (int i = 0; i < 3; ++i) seen.touch(in(form().foot, "erase"));
    for (const std::string key : {"5", "9"}) seen.touch(in(form().keys.all, "key-" + key));
    CHECK(form().fields[1].problem == "300 to 1200");
    CHECK(in(form().foot, "erase").why_not.empty());
    CHECK(in(form().foot, "put-reading").why_not == "incomplete");
    seen.touch(in(form().keys.all, "key-9"));
    seen.touch(in(form().foot, "put-reading"));
    CHECK(seen.screen.page == "plan");
    CHECK(seen.model().thinnest.label.starts_with("599 ± "));

    seen.touch(in(seen.model().readings, "add-reading"));
    for (const std::string key : {"2", ":", "0", "0"}) seen.touch(in(form().keys.all, "key-" + key));
    seen.screen.field = "plan-um";
    for (const std::string key : {"6", "4", "0"}) seen.touch(in(form().keys.all, "key-" + key));
    seen.touch(in(form().foot, "put-reading"));
    const auto& readings = seen.screen.plan.changed->file.thickness.readings;
    REQUIRE(readings.size() == 9);
    CHECK(
        (readings.back() == plan::Reading{.ring = measure::from_mm(7.5), .at = eye::from_clock(2, 0), .thickness = measure::from_um(640)}));

    seen.screen = after_plan(seen.screen, {.page = "plan-mend", .argument = "8"}, seen.base);
    seen.touch(in(form().foot, "remove-reading"));
    CHECK(seen.screen.plan.changed->file.thickness.readings.size() == 8);
}

TEST_CASE("what is typed is a reading only by the contract's ranges, and none stands where one is") {
    const plan::Inputs inputs = eight_readings();
    struct Entry {
        std::string at{}, um{}, ring{}, field{};
    };
    for (const Entry& entry : std::vector<Entry>{{"2:15", "640", "7.5", ""},
                                                 {"2.15", "640", "7.5", ""},
                                                 {"12", "300", "12", ""},
                                                 {"2", "640.5", "1", ""},
                                                 {"13.00", "640", "7.5", "plan-at"},
                                                 {"2.60", "640", "7.5", "plan-at"},
                                                 {"", "640", "7.5", "plan-at"},
                                                 {"2", "299.9", "7.5", "plan-um"},
                                                 {"2", "1200.1", "7.5", "plan-um"},
                                                 {"2", "640.55", "7.5", "plan-um"},
                                                 {"2", "6-0", "7.5", "plan-um"},
                                                 {"2", "640", "0.9", "plan-ring"},
                                                 {"2", "640", "12.1", "plan-ring"},
                                                 {"7.30", "640", "7.5", "plan-at"},
                                                 {"7:30", "640", "7.5", "plan-at"}}) {
        ScreenState screen{.page = "plan-reading", .argument = "new"};
        screen.draft = {{"plan-at", entry.at}, {"plan-um", entry.um}, {"plan-ring", entry.ring}};
        CAPTURE(entry.at);
        CAPTURE(entry.um);
        CAPTURE(entry.ring);
        CHECK(typed_reading(inputs, screen).field == entry.field);
        CHECK(typed_reading(inputs, screen).reading.has_value() == entry.field.empty());
    }
}

TEST_CASE("the map shows a reading's own thickness where it was read, and the cut where it is") {
    // Quarter by quarter the fit of order 2 goes through four readings that are a mean and an oval exactly.
    plan::Inputs inputs = eight_readings();
    inputs.file.centre_x = measure::from_mm(0.2);
    inputs.file.centre_y = measure::from_mm(-0.1);
    for (auto& one : inputs.file.thickness.readings)
        one.thickness = measure::from_um_tenths(640 + 15 * std::cos(2 * one.at.deg() * 3.14159265358979 / 180));
    const picture::ThicknessMap map = thickness_map(inputs, plan::make(inputs), models::words());
    CHECK(map.cut == measure::from_mm(7.5));
    for (const auto& one : inputs.file.thickness.readings) {
        const double turn = one.at.deg() * 3.14159265358979 / 180;
        const picture::Point at{0.2 + 3.75 * std::cos(turn), -0.1 + 3.75 * std::sin(turn)};
        CAPTURE(one.at.deg());
        CHECK(picture::um_at(map.field, at) == doctest::Approx(one.thickness.um()).epsilon(0.001));
        CHECK(picture::known_at(map.field, at) > 0.3);
    }
    CHECK(picture::um_at(map.field, {0.2, -0.1}) == doctest::Approx(551).epsilon(0.001));
    CHECK(picture::known_at(map.field, {5, 0}) < 0);
    CHECK(map.low_um <= 551);
    CHECK(map.high_um >= 655);
    // Without a reading in the middle only the ring beside the cut is known.
    inputs.file.thickness.central.reset();
    const picture::ThicknessMap ring = thickness_map(inputs, plan::make(inputs), models::words());
    CHECK(picture::known_at(ring.field, {0.2, -0.1}) < 0);
    CHECK(picture::known_at(ring.field, {3.95, -0.1}) > 0.5);
}

TEST_CASE("readings on several rings are shown as their surface, and not beyond them") {
    const plan::Inputs inputs = samples::three_rings();
    const plan::Plan plan = plan::make(inputs);
    REQUIRE(plan.wall);
    REQUIRE(plan.wall->basis == "map");
    const picture::ThicknessMap map = thickness_map(inputs, plan, models::words());
    for (const int deg : {0, 90, 200, 315}) {
        const double turn = deg * 3.14159265358979 / 180;
        CAPTURE(deg);
        CHECK(picture::um_at(map.field, {3.75 * std::cos(turn), 3.75 * std::sin(turn)}) ==
              doctest::Approx(plan.wall->profile[static_cast<std::size_t>(deg)].um()).epsilon(0.002));
        CHECK(picture::known_at(map.field, {3.75 * std::cos(turn), 3.75 * std::sin(turn)}) > 0);
        CHECK(picture::known_at(map.field, {5.7 * std::cos(turn), 5.7 * std::sin(turn)}) < 0);
    }
}

TEST_CASE("the view fits its glass: the planned rung is on it, and the hold and the first caution") {
    for (const auto& on : samples::glasses()) {
        CAPTURE(on.name);
        const Frame frame = draw(Seen{}.model(), samples::canvas(on.glass));
        const auto touchable = [&](const std::string& id) {
            for (const Touchable& one : frame.touchables)
                if (one.target.id == id) return true;
            return false;
        };
        for (const std::string id : {"rung-8", "rung-9", "ask-why", "use-plan", "back", "ask-cautions"}) CHECK(touchable(id));
        bool caution = false;
        for (const auto& shape : frame.shapes) {
            const auto* text = std::get_if<picture::Text>(&shape);
            caution = caution || (text != nullptr && text->text.starts_with("An estimate: 11 eyes"));
        }
        CHECK(caution);
    }
}

TEST_CASE("in either language, on every glass, a caution stands over the hold, and the hold says how many spokes it is for") {
    for (const std::string& language : models::languages) {
        for (const auto& sample : samples::plan_views(language)) {
            const auto* model = std::get_if<PlanModel>(&sample.view);
            if (model == nullptr) continue;
            for (const auto& on : samples::glasses()) {
                CAPTURE(language);
                CAPTURE(on.name);
                CAPTURE(sample.name);
                const Frame frame = draw(*model, samples::canvas(on.glass));
                const auto stands = [&](const std::string& opening) {
                    return std::any_of(frame.shapes.begin(), frame.shapes.end(), [&](const picture::Shape& shape) {
                        const auto* text = std::get_if<picture::Text>(&shape);
                        return text != nullptr && text->text.starts_with(opening);
                    });
                };
                CHECK(stands(model->cautions.front().text.substr(0, 8)));
                if (model->foot.back().why_not.empty()) CHECK(stands(model->foot.back().line.substr(0, 6)));
            }
        }
    }
}

TEST_CASE("what follows from a doubted reading is on every glass") {
    Seen seen{};
    seen.touch(in(seen.model().readings, "ask-reading-5"));
    seen.touch(in(seen.model().panel->targets, "doubt-30"));
    const PlanModel model = seen.model();
    REQUIRE_FALSE(model.panel->rows.empty());
    for (const auto& on : samples::glasses()) {
        CAPTURE(on.name);
        const Frame frame = draw(model, samples::canvas(on.glass));
        CHECK(std::none_of(frame.short_of.begin(), frame.short_of.end(),
                           [&](const std::string& what) { return what == model.panel->rows.front().value; }));
    }
}

TEST_CASE("the chart's figures have their unit, and the map says how it is turned, on every glass") {
    for (const std::string& language : models::languages) {
        for (auto& sample : samples::plan_views(language)) {
            const auto* model = std::get_if<PlanModel>(&sample.view);
            if (model == nullptr || model->panel) continue;
            for (const auto& on : samples::glasses()) {
                CAPTURE(sample.name);
                CAPTURE(on.name);
                std::string said{};
                for (const auto& shape : draw(*model, samples::canvas(on.glass)).shapes)
                    if (const auto* text = std::get_if<picture::Text>(&shape)) said += " " + text->text;
                const auto& words = models::words(language);
                const bool map = said.find(" 12 3 6 9 ") != std::string::npos && said.find(" 9 12 ") == std::string::npos;
                if (map) CHECK(said.find(words("plan-view.turned")) != std::string::npos);
                const bool chart = said.find(" 12 3 6 9 12") != std::string::npos;
                if (chart) CHECK(said.find(words("plan-view.um")) != std::string::npos);
            }
        }
    }
}

TEST_CASE("an error in a form stands clear of the border of its row, on every glass") {
    for (const std::string& language : models::languages) {
        ScreenState form = after_plan({}, {.page = "plan-mend", .argument = "5"}, eight_readings());
        form.draft["plan-um"] = "61";
        const SizesInStock sizes{.host = {"7.50"}, .donor = {"7.75"}};
        const FormModel reading = plan_reading(eight_readings(), form, models::words(language)),
                        fresh = new_case({.page = "new"}, sizes, {{"case.reference", ""}, {"case.eye", ""}}, models::words(language));
        int told = 0;  // beside the keys two columns may have no room for the words, and show the sign alone
        for (const auto& on : samples::glasses()) {
            CAPTURE(on.name);
            CHECK(errors_clear(reading, samples::canvas(on.glass)) >= 1);
            told += errors_clear(fresh, samples::canvas(on.glass));
        }
        CHECK(told > 0);
    }
}

TEST_CASE("no caution drops out without being counted, and a chance over the limit comes before what goes for every case") {
    Seen seen{};
    seen.base.file.aim = {.goal = plan::Goal::Spokes, .spokes = 9};
    const PlanModel model = seen.model();
    REQUIRE(model.cautions.size() > 2);
    CHECK(model.cautions.front().text.find("over the limit") != std::string::npos);
    for (const auto& on : samples::glasses()) {
        CAPTURE(on.name);
        const Frame frame = draw(model, samples::canvas(on.glass));
        std::vector<std::string> texts{};
        for (const auto& shape : frame.shapes)
            if (const auto* text = std::get_if<picture::Text>(&shape)) texts.push_back(text->text);
        std::size_t shown = 0;
        constexpr std::size_t opening = 12;  // as much as a caution's first line surely holds
        for (const auto& caution : model.cautions)
            shown += std::any_of(texts.begin(), texts.end(),
                                 [&](const std::string& text) { return text.starts_with(caution.text.substr(0, opening)); })
                         ? 1U
                         : 0U;
        const std::size_t out = model.cautions.size() - shown;
        const bool said = std::any_of(texts.begin(), texts.end(), [&](const std::string& text) {
            return text == "More to watch: " + std::to_string(out) || text == "…";
        });
        CHECK(said == (out > 0));
    }
}

TEST_CASE("asked where the spokes come from, the panel names what settled them: aim and limit, the surgeon, or the aqueous") {
    const auto how = [](const plan::Aim& aim) {
        Seen seen{};
        if (aim.goal != plan::Goal::Share) seen.base.file.aim = aim;
        seen.screen = after_plan(seen.screen, {.page = "plan-ask", .argument = "spokes"}, seen.base);
        return seen.model().panel->rows.front().value;
    };
    CHECK(how({}).starts_with("The most spokes within the aim"));
    CHECK(how({.goal = plan::Goal::Spokes, .spokes = 10}).starts_with("The surgeon's own number"));
    CHECK(how({.goal = plan::Goal::ToEntry}).find("until aqueous shows") != std::string::npos);
}
