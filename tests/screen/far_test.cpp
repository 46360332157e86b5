// The Far view: one figure or one clock face of the same state, never a control. Arcminutes and distance: look.md's table (120 for
// the numeral, 22 for text, at 3 m); a minute of arc at 3 m is 0.873 mm.
#include "screen/audit.hpp"
#include "screen/desk.hpp"
#include "screen/frame.hpp"
#include "screen/models.hpp"
#include "screen/samples.hpp"

#include <doctest/doctest.h>

#include <set>

using namespace screen;

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

}  // namespace

TEST_CASE("while the blade goes down: first to zero, then to go, then stop, then over in amber") {
    models::Seen at("lower");
    CHECK(numeral(at).digits == "3");
    CHECK(numeral(at).under == "to zero");
    at.at.count(3);
    CHECK(numeral(at).digits == "8");
    CHECK(numeral(at).under == "to go");
    at.at.count(8);
    CHECK(numeral(at).digits == "0");
    CHECK(numeral(at).under == "depth reached, stop");
    CHECK_FALSE(numeral(at).watch);
    at.at.count(1);
    CHECK(numeral(at).digits == "+1");
    CHECK(numeral(at).watch);
}

TEST_CASE("lost suction keeps the count and is never a figure to go") {
    models::Seen at("lower");
    at.at.count(5);
    REQUIRE(at.at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
    CHECK(numeral(at).digits == "2");
    CHECK(numeral(at).under == "at suction loss");
    CHECK(numeral(at).watch);
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
        const bool far_says = seen(at).holder == "table counts";
        CHECK((at.table().strip.holder == "spokes: table") == far_says);
        return far_says;
    };
    for (const std::string step : {"centre", "zero", "raise", "seat", "suction-on", "lower"}) {
        CAPTURE(step);
        models::Seen at(step);
        CHECK(told(at));
        CHECK(desk(at.at.state, {}, at.around, models::words()).strip.holder == "spokes: table");
        REQUIRE(at.at.does(guide::HoldCount{.source = guide::Source::Desk}));
        CHECK(seen(at).holder == "desk counts");
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
    CHECK(seen(at).eye == "EYE ?");
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
    at.around.screens_lost = "Table";
    at.around.clock_jumped = true;
    CHECK(seen(at).banner->text == "not on disk");
    at.around.not_on_disk = 0;
    CHECK(seen(at).banner->text == "screen missing");
    at.around.screens_lost.clear();
    CHECK(seen(at).banner->text == "clock jumped");
}

TEST_CASE("muted is said only where there is a voice") {
    models::Seen at("lower");
    at.around.muted = true;
    CHECK(seen(at).muted.empty());
    at.around.volume = 70;
    CHECK(seen(at).muted == "muted");
    CHECK_FALSE(seen(at).banner);  // which is left free for what is graver
}

TEST_CASE("over a banner the clock has its label beside it; under the hour of a suture it does not stand without") {
    const auto texts_on = [](const std::string& step, const Glass& glass, bool muted) {
        models::Seen at(step);
        at.around.clock_jumped = true;
        at.around.volume = 70;
        at.around.muted = muted;
        const FarModel model = seen(at);
        REQUIRE(model.clock);
        std::set<std::string> shown{};
        for (const auto& shape : draw(model, samples::canvas(glass, Reader::Far)).shapes)
            if (const auto* text = std::get_if<picture::Text>(&shape)) shown.insert(text->text);
        return std::pair(shown.contains(model.clock->value), shown.contains(model.clock->label));
    };
    const Glass wide{344, 194}, upright{200, 340};
    CHECK(texts_on("next-four", wide, false) == std::pair(true, true));
    CHECK(texts_on("next-four", wide, true) == std::pair(false, false));
    CHECK(texts_on("lower", wide, true) == std::pair(true, false));
    CHECK(texts_on("next-four", upright, true) == std::pair(true, true));
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
