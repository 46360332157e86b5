// The Far view: one figure or one clock face of the same state, never a control. Arcminutes and distance: look.md's table (120 for
// the numeral, 22 for text, at 3 m); a minute of arc at 3 m is 0.873 mm.
#include "guide/tissue.hpp"
#include "picture/bounds.hpp"
#include "screen/audit.hpp"
#include "screen/desk.hpp"
#include "screen/frame.hpp"
#include "screen/models.hpp"
#include "screen/samples.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>

using namespace screen;
using picture::Box;

namespace {

FarModel seen(models::Seen& seen) {
    seen.around.now = seen.at.now;
    return far(seen.at.state, seen.around, models::words());
}
FarModel::Numeral numeral(models::Seen& at) {
    const FarModel model = seen(at);
    REQUIRE(std::holds_alternative<FarModel::Numeral>(model.shown));
    return std::get<FarModel::Numeral>(model.shown);
}

std::set<std::string> texts(const Frame& frame) {
    std::set<std::string> all{};
    for (const auto& shape : frame.shapes)
        if (const auto* text = std::get_if<picture::Text>(&shape)) all.insert(text->text);
    return all;
}
/// Where a line of text stands; none where it does not.
std::optional<Box> place_of(const Frame& frame, const std::string& line, const Canvas& canvas) {
    for (const auto& shape : frame.shapes) {
        const auto* text = std::get_if<picture::Text>(&shape);
        if (text != nullptr && text->text == line) return picture::bounds(*text, canvas.lettering);
    }
    return std::nullopt;
}

}  // namespace

TEST_CASE("while the blade goes down: first to zero, then to go, then stop, then over in amber") {
    models::Seen at("lower");
    CHECK(numeral(at).digits == "3");
    CHECK(numeral(at).under == "spokes to zero");
    at.at.count(3);
    CHECK(numeral(at).digits == "8");
    CHECK(numeral(at).under == "spokes to go");
    at.at.count(8);
    CHECK(numeral(at).digits == "0");
    CHECK(numeral(at).under == "depth reached, stop");
    CHECK_FALSE(numeral(at).watch);
    at.at.count(1);
    CHECK(numeral(at).digits == "+1");
    CHECK(numeral(at).watch);
}

TEST_CASE("lost suction keeps the count, in words: a figure would be read as spokes to go") {
    models::Seen at("lower");
    at.at.count(5);
    REQUIRE(at.at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
    const FarModel model = seen(at);
    const auto* said = std::get_if<FarModel::Said>(&model.shown);
    REQUIRE(said != nullptr);
    CHECK(said->text == "Suction lost. 2\u00A0spokes below zero.");
    CHECK(said->level == Banner::Level::Watch);
    models::Seen above("lower");
    REQUIRE(above.at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
    CHECK(std::get<FarModel::Said>(seen(above).shown).text == "Suction lost. 3\u00A0spokes above zero.");
    CHECK(above.table().card.figure->numeral + " " + above.table().card.figure->under == "3 above zero at loss");
}

TEST_CASE("the running clock has the step's name over it, which gives way to it where both have no room; figure and dial stand alone") {
    for (const Glass& glass : {Glass{344, 194}, Glass{200, 340}}) {
        models::Seen at("scissors");
        const FarModel model = seen(at);
        CHECK(model.step == "To do: Scissors round");
        const auto shown = texts(draw(model, samples::canvas(glass, Reader::Far)));
        CHECK(shown.contains(glass.portrait() ? "Scissors round" : "To do: Scissors round"));
    }
    models::Seen troubled("suction-on");
    troubled.around.clock_jumped = true;
    FarModel model = seen(troubled);
    model.muted = "muted, and not by a short word";
    const Frame small = draw(model, samples::canvas({223, 125}, Reader::Far));
    CHECK_FALSE(texts(small).contains("To do: Suction on"));
    CHECK(std::find(small.gave_way.begin(), small.gave_way.end(), "To do: Suction on") != small.gave_way.end());
    for (const std::string step : {"lower", "cardinals"}) {
        models::Seen at(step);
        CHECK(seen(at).step.empty());
    }
}

TEST_CASE("what goes otherwise mid-cut is named on the Far view in a few words, in every language; of a unit's own the Table tells") {
    const auto brief = [](const std::string& what) {
        models::Seen at("lower");
        REQUIRE(at.at.does(guide::Depart{.what = what, .note = ""}));
        return seen(at).banner->brief;
    };
    CHECK(brief("donor-lost-after") == "donor lost");
    CHECK(brief("anaesthetist-stop") == "asked to stop");
    CHECK(brief("tilt") == "ring is tilted");
    models::Seen own("lower");
    for (guide::Departure& one : own.at.state.brief.procedure.departures)
        if (one.id == "tilt") one.id = "fire-alarm";
    REQUIRE(own.at.does(guide::Depart{.what = "fire-alarm", .note = ""}));
    CHECK(seen(own).banner->brief == "see the table");
    const models::Seen lower("lower");
    for (const std::string& language : models::languages)
        for (const guide::Departure* one : departures_of(lower.at.state, *guide::current_step(lower.at.state))) {
            CAPTURE(one->id);
            CHECK(models::words(language).has("far.brief." + one->id));
        }
}

TEST_CASE("the figure agrees with the Table view's at every spoke") {
    models::Seen at("lower");
    for (int i = 0; i < 13; ++i) {
        CHECK(numeral(at).digits == at.table().card.figure->numeral);
        at.at.count(1);
    }
}

TEST_CASE("while suturing: the clock face with one disc, the next suture, and no words round it") {
    models::Seen at("next-four");
    at.at.tie(1);
    const FarModel model = seen(at);
    REQUIRE(std::holds_alternative<FarModel::Dial>(model.shown));
    const auto& dial = std::get<FarModel::Dial>(model.shown);
    CHECK(dial.suture == "suture 6 at");
    CHECK(dial.at == "7:30");
    CHECK(dial.face.next.size() == 1);
    CHECK(dial.face.done.size() == 5);
    CHECK(dial.face.seat_label.empty());
}

TEST_CASE("who holds the count stands on Table, Desk and Far view from the first step of the host until the cut is done") {
    const auto told = [](models::Seen& at) {
        const bool far_says = seen(at).holder == "spoke: table";
        CHECK((at.table().strip.holder == "spoke count: table") == far_says);
        return far_says;
    };
    for (const std::string step : {"centre", "zero", "raise", "seat", "suction-on", "lower"}) {
        CAPTURE(step);
        models::Seen at(step);
        CHECK(told(at));
        CHECK(desk(at.at.state, {}, at.around, models::words()).strip.holder == "spoke count: table");
        REQUIRE(at.at.does(guide::HoldCount{.source = guide::Source::Desk}));
        CHECK(seen(at).holder == "spoke: desk");
    }
    for (const std::string step : {"tissue-here", "donor-good", "suction-off", "cardinals"}) {
        CAPTURE(step);
        models::Seen at(step);
        CHECK_FALSE(told(at));
        CHECK(seen(at).holder.empty());
    }
    models::Seen over("seat");
    REQUIRE(over.at.does(guide::CloseCase{.how = guide::CaseEnd::Abandoned, .why = "another day"}));
    CHECK_FALSE(told(over));
}

TEST_CASE("the side is not shown before it is entered") {
    models::Seen at("tissue-number");
    CHECK(seen(at).eye == "SIDE ?");
    models::Seen later("plan");
    CHECK(seen(later).eye == "RIGHT EYE");
}

// A bare figure is read as spokes: the three who first saw the view took a minute's 1 for one.
TEST_CASE("elsewhere the running clock with its seconds, and once") {
    models::Seen at("donor-on");
    at.at.later(125);
    const FarModel model = seen(at);
    CHECK_FALSE(model.clock);
    const auto& clock = std::get<ClockShown>(model.shown);
    CHECK(clock.label == "open sky");
    CHECK(clock.value.substr(0, 3) == "02:");
}

TEST_CASE("a clock that is not exact says so") {
    models::Seen at("lower");
    at.at.now.boot += 1;  // the machine was started anew
    REQUIRE(seen(at).clock);
    CHECK(seen(at).clock->value.substr(0, 1) == "~");
}

TEST_CASE("what went otherwise stands there in its words; not on disk stands there whatever is shown") {
    models::Seen at("donor-on");
    REQUIRE(at.at.does(guide::Depart{.what = "eye-bulging", .note = ""}));
    const FarModel model = seen(at);
    REQUIRE(std::holds_alternative<FarModel::Said>(model.shown));
    CHECK(std::get<FarModel::Said>(model.shown).text == "Eye bulging, close now");
    CHECK(std::get<FarModel::Said>(model.shown).level == Banner::Level::Stop);
    CHECK_FALSE(model.banner);
    at.around.not_on_disk = 1;
    REQUIRE(seen(at).banner);
    CHECK(seen(at).banner->text == "not on disk");
    at.around.screens_lost = {"table"};
    at.around.clock_jumped = true;
    CHECK(seen(at).banner->text == "not on disk");
    at.around.not_on_disk = 0;
    CHECK(seen(at).banner->text == "screen missing");
    at.around.screens_lost.clear();
    CHECK(seen(at).banner->text == "PC clock jumped");
}

TEST_CASE("what goes otherwise while the blade can turn stands beside the figure, never in its place") {
    models::Seen at("lower");
    at.at.count(5);
    REQUIRE(at.at.does(guide::Depart{.what = "anaesthetist-stop"}));
    CHECK(std::holds_alternative<FarModel::Numeral>(seen(at).shown));
    REQUIRE(seen(at).banner);
    CHECK(seen(at).banner->text == "Anaesthetist asks to stop");
    CHECK(seen(at).banner->brief == "asked to stop");  // where that takes more than a line
    CHECK(seen(at).banner->level == Banner::Level::Stop);
    REQUIRE(at.at.does(guide::ComeBack{.what = "anaesthetist-stop"}));
    CHECK_FALSE(seen(at).banner);
}

TEST_CASE("muted is said only where there is a voice") {
    models::Seen at("lower");
    at.around.muted = true;
    CHECK(seen(at).muted.empty());
    at.around.volume = 70;
    CHECK(seen(at).muted == "muted");
    CHECK_FALSE(seen(at).banner);  // which is left free for what is graver
}

TEST_CASE("over a banner no clock stands without its label: under the hour of a suture neither stands where both have no room") {
    const auto texts_on = [](const std::string& step, const Glass& glass, bool muted, const std::string& language) {
        models::Seen at(step);
        at.around.clock_jumped = true;
        at.around.volume = 70;
        at.around.muted = muted;
        at.around.now = at.at.now;
        const FarModel model = far(at.at.state, at.around, models::words(language));
        REQUIRE(model.clock);
        const std::set<std::string> shown = texts(draw(model, samples::canvas(glass, Reader::Far)));
        return std::pair(shown.contains(model.clock->value), shown.contains(model.clock->label));
    };
    const Glass wide{344, 194}, upright{200, 340}, tall{268, 476};
    for (const std::string& language : models::languages) {
        CHECK(texts_on("next-four", wide, false, language) == std::pair(true, true));
        CHECK(texts_on("next-four", wide, true, language) == std::pair(false, false));
        CHECK(texts_on("lower", wide, false, language) == std::pair(true, true));
        CHECK(texts_on("lower", wide, true, language) == std::pair(true, true));
        CHECK(texts_on("next-four", upright, true, language) == std::pair(true, true));
        CHECK(texts_on("lower", tall, true, language) == std::pair(true, true));
    }
}

TEST_CASE("over the running clock the step stands beside a muted voice and a banner too, and no two texts touch") {
    for (const Glass& glass : {Glass{344, 194}, Glass{598, 336}, Glass{200, 340}}) {
        CAPTURE(glass.width_mm);
        models::Seen at("seat");
        at.around.volume = 70;
        at.around.muted = at.around.clock_jumped = true;
        const Canvas canvas = samples::canvas(glass, Reader::Far);
        const Frame frame = draw(seen(at), canvas);
        const std::set<std::string> shown = texts(frame);
        CHECK(std::any_of(shown.begin(), shown.end(), [](const std::string& text) { return text.starts_with("To do: Seat"); }));
        for (const auto& one : audit(frame, canvas)) CHECK(one.is != Finding::Is::TextsOverlap);
    }
}

TEST_CASE(
    "what holds the guide up stands in one line under the running clock; never mid-cut, nor beside the next suture, nor while quiet") {
    const auto line = [](models::Seen& at) {
        const FarModel model = seen(at);
        return model.banner ? model.banner->text : "";
    };
    const auto scan = [](models::Seen& at) {
        for (const char* number : {"G123417654321", "A999917123456"})
            REQUIRE(at.at.does(guide::Scan{.bytes = number, .label = guide::Isbt{.donation = guide::Donation{.number = number}}}));
        REQUIRE(guide::standing_scan(at.at.state) != nullptr);
    };
    models::Seen tissue("tissue-number");
    CHECK(line(tissue).empty());
    scan(tissue);
    CHECK(line(tissue) == "scan does not fit");
    tissue.around.clock_jumped = true;
    CHECK(line(tissue) == "scan does not fit");
    tissue.around.screens_lost = {"table"};
    CHECK(line(tissue) == "screen missing");
    for (const std::string step : {"lower", "scissors", "next-four"}) {
        CAPTURE(step);
        models::Seen at(step);
        scan(at);
        CHECK(line(at).empty());
    }
    models::Seen count("count-before-last");
    const auto item = count.at.state.brief.unit.counts.front().id;
    REQUIRE(count.at.does(guide::CheckCount{.item = item, .seen = count.at.state.counts.at(item).expected() + 1, .by = "scrub nurse"}));
    CHECK(line(count) == "Needles: count differs");
    const auto shown = texts(draw(seen(count), samples::canvas({344, 194}, Reader::Far)));
    CHECK(shown.contains("Needles: count differs"));
    CHECK(std::holds_alternative<ClockShown>(seen(count).shown));
}

TEST_CASE("the sign of lost suction stands clear of clock and muted voice, over a banner too") {
    for (const Glass& glass : {Glass{344, 194}, Glass{200, 340}}) {
        models::Seen at("lower");
        at.at.count(5);
        REQUIRE(at.at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
        at.at.later(3700);
        at.around.volume = 70;
        at.around.muted = at.around.clock_jumped = true;
        const Canvas canvas = samples::canvas(glass, Reader::Far);
        std::vector<Box> signs{}, others{};
        for (const auto& shape : draw(seen(at), canvas).shapes) {
            if (const auto* text = std::get_if<picture::Text>(&shape)) others.push_back(picture::bounds(*text, canvas.lettering));
            const auto* polygon = std::get_if<picture::Polygon>(&shape);
            if (polygon == nullptr) continue;
            const auto& [a, b] = std::pair(polygon->points.at(0), polygon->points.at(2));
            const Box box{std::min(a.x, b.x), std::min(a.y, b.y), std::abs(a.x - b.x), std::abs(a.y - b.y)};
            (polygon->ink == picture::Ink::Amber ? signs : others).push_back(box);
        }
        CHECK(signs.size() == 2);  // beside the digits and beside the banner
        for (const Box& sign : signs)
            for (const Box& other : others) CHECK_FALSE(picture::overlap(sign, other));
    }
}

TEST_CASE("what stands alone stands in the middle of the glass, clear of who counts") {
    for (const auto& on : samples::glasses()) {
        CAPTURE(on.name);
        const Canvas canvas = samples::canvas(on.glass, Reader::Far);
        models::Seen at("seat");
        const FarModel model = seen(at);
        const auto& clock = std::get<ClockShown>(model.shown);
        const Box value = *place_of(draw(model, canvas), clock.value, canvas),
                  holder = *place_of(draw(model, canvas), model.holder, canvas);
        CHECK(value.centre().x == doctest::Approx(on.glass.width_mm / 2).epsilon(0.01));
        CHECK(value.y - holder.bottom() >= canvas.type.of(picture::Type::Text) / 2);
        REQUIRE(at.at.does(guide::CloseCase{.how = guide::CaseEnd::Abandoned, .why = "another day"}));
        const Frame over = draw(seen(at), canvas);
        const auto locked = place_of(over, "Record locked", canvas);
        CHECK((locked ? *locked : *place_of(over, "Record", canvas)).centre().x == doctest::Approx(on.glass.width_mm / 2).epsilon(0.01));
    }
}

TEST_CASE("no Far view has a control, on any glass") {
    models::Seen at("lower");
    for (const auto& on : samples::glasses()) CHECK(draw(seen(at), samples::canvas(on.glass, Reader::Far)).touchables.empty());
}

TEST_CASE("on an upright glass of 200 mm by 340 mm the same holds, and nothing lies over anything") {
    const Glass upright{200, 340};
    const Typography type = far_typography(upright);
    CHECK(type.of(picture::Type::Numeral) >= 104.7);
    for (const auto role : {picture::Type::Text, picture::Type::Lead, picture::Type::Value}) CHECK(type.of(role) >= 19.2);
    CHECK(far_reach_mm(type) == 3000);
    CHECK(far_reach_mm(far_typography({268, 476})) == 3000);
    CHECK(far_reach_mm(far_typography({136, 217})) < 2000);
    const Canvas canvas = samples::canvas(upright, Reader::Far);
    for (const auto& sample : samples::all()) {
        if (reader(sample.view) != Reader::Far) continue;
        CAPTURE(sample.name);
        const Frame frame = draw(sample.view, canvas);
        CHECK(frame.short_of.empty());
        CHECK(audit(frame, canvas).empty());
    }
}

TEST_CASE("on a glass of 344 mm by 194 mm the numeral takes 120 arcmin and all text 22 at 3 m; a smaller glass is told as nearer") {
    const Typography large = far_typography({344, 194}), small = far_typography({223, 125});
    CHECK(large.of(picture::Type::Numeral) >= 104.7);
    for (const auto role : {picture::Type::Text, picture::Type::Lead, picture::Type::Value}) CHECK(large.of(role) >= 19.2);
    CHECK(far_reach_mm(large) == 3000);
    CHECK(far_reach_mm(small) == doctest::Approx(3000 * 1.02 * 125 / 194.0).epsilon(0.01));
    models::Seen at("lower");
    CHECK(draw(seen(at), samples::canvas({344, 194}, Reader::Far)).short_of.empty());
    CHECK_FALSE(draw(seen(at), samples::canvas({223, 125}, Reader::Far)).short_of.empty());
}
