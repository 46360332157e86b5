// What the views hold, whatever the glass: the side hidden until it is entered, the words read aloud, counts, clocks, the banner's
// order, and no wording left unfilled. Common practice, no source, unless one is named.
#include "screen/models.hpp"
#include "screen/pages.hpp"
#include "screen/samples.hpp"

#include <doctest/doctest.h>

using namespace models;
using screen::Look;
using screen::Press;

// The side is entered blind from the consent: wrong-eye surgery was the commonest sentinel event in one service,
// J Ophthalmol 2015:454096.
TEST_CASE("no view before the side is entered tells it") {
    Seen seen;
    for (const std::string step : {"tissue-here", "tissue-number", "tissue-accepted", "back-up", "person", "side"}) {
        seen.at.up_to(step);
        CAPTURE(step);
        auto model = seen.table();
        CHECK(std::holds_alternative<std::monostate>(model.card.picture));
        if (step == "side") model.hand.clear();  // there both sides are named, alike
        for (const std::string side : {"right", "left", "Right", "Left", "RIGHT", "LEFT", "nasal", "temporal"})
            CHECK_FALSE(says(texts(model), side));
        const auto page = screen::page(seen.at.state, {.page = "departures", .argument = ""}, seen.around, words());
        for (const std::string side : {"right", "left", "Right", "RIGHT", "LEFT"}) CHECK_FALSE(says(texts(page), side));
    }
    const auto hand = seen.hand();
    REQUIRE(find(hand, "side-right") != std::nullopt);
    REQUIRE(find(hand, "side-left") != std::nullopt);
    CHECK(find(hand, "side-right")->look == find(hand, "side-left")->look);
    REQUIRE(seen.at.does(guide::EnterSide{.side = "right"}));
    CHECK(says(texts(seen.table()), "RIGHT"));
}

TEST_CASE("what is read aloud before the plan is agreed names the proposed spokes, and no plan is agreed by a tap") {
    Seen seen("plan");
    const auto model = seen.table();
    CHECK(model.card.say.find("8\u00A0spokes, 16\u00A0interrupted sutures.") != std::string::npos);
    CHECK(model.hand.front().id == "accept-plan");
    CHECK(model.hand.front().press == Press::Hold);
    seen.around.proposed->target.reset();
    CHECK_FALSE(seen.hand().front().why_not.empty());
}

TEST_CASE("nobody agrees to a count of nothing") {
    Seen seen("opening-count");
    CHECK_FALSE(find(seen.hand(), "check-scrub")->why_not.empty());
    REQUIRE(seen.at.does(guide::MoveItems{.item = "needles", .by = 2}));
    CHECK(find(seen.hand(), "check-scrub")->why_not.empty());
    CHECK(find(seen.hand(), "check-circulating")->why_not.empty());
    REQUIRE(seen.at.does(guide::CheckCount{.item = "needles", .seen = 2, .by = seen.at.state.brief.unit.scrub_name}));
    CHECK_FALSE(find(seen.hand(), "check-scrub")->why_not.empty());
    CHECK(find(seen.hand(), "check-circulating")->why_not.empty());
}

TEST_CASE("a step says which clock it turns only where it turns one") {
    Seen seen("button-out");
    CHECK(seen.hand().front().line == "starts clock: Open sky");
    REQUIRE(find(seen.hand(), "ago-15") != std::nullopt);
    CHECK(find(seen.hand(), "ago-15")->weight == screen::Weight::Theatre);  // tapped in gloves while the eye is open
    seen.at.up_to("donor-on");
    REQUIRE_FALSE(guide::clock_running(seen.at.state, "donor-out"));
    CHECK(seen.hand().front().line.empty());
    CHECK(find(seen.hand(), "ago-15") == std::nullopt);
}

TEST_CASE("the strip shows two clocks at most: the one that matters now, then the case") {
    const auto labels = [](const screen::TableModel& model) {
        std::vector<std::string> all{};
        for (const auto& clock : model.strip.clocks) all.push_back(clock.label);
        return all;
    };
    using Labels = std::vector<std::string>;
    Seen seen("lower");
    CHECK(labels(seen.table()) == Labels{"Suction on", "Case"});
    seen.at.up_to("ready-to-open");
    CHECK(labels(seen.table()) == Labels{"Case"});
    seen.at.up_to("scissors");
    CHECK(labels(seen.table()) == Labels{"Entered", "Case"});
    seen.at.up_to("cardinals");
    CHECK(labels(seen.table()) == Labels{"Open sky", "Case"});
    seen.at.up_to("next-four");
    CHECK(labels(seen.table()) == Labels{"Open sky, stopped", "Case"});
}

TEST_CASE("a refusal and what is not on disk are said in full; the rest is named behind the most urgent, so that nothing waits unseen") {
    using Level = screen::Banner::Level;
    screen::Around around{.not_on_disk = 2, .trouble = "The disk is full.", .screens_lost = {"far"}, .file_changed = true};
    around.clock_jumped = around.no_sound = around.size_unknown = true;
    around.refusal = "Not yet.";
    const auto banner = [&] { return screen::banner(around, words()); };
    const std::string disk = words()("banner.not_on_disk", {"2", "The disk is full."});
    const std::string lost = "no screen for Far", rest = "case file changed, PC clock jumped, no sound, screen size not known.";
    CHECK(banner()->level == Level::Watch);
    CHECK(banner()->text == "Not yet. " + disk + " Also: " + lost + ", " + rest);
    CHECK(banner()->brief == "Not yet. Note: 2 taps not on disk, " + lost + ", " + rest);  // where room is least, and yet all of it
    CHECK(screen::banner({.refusal = "Not yet."}, words())->level == Level::Watch);
    CHECK(screen::banner({.notice = "Seen."}, words())->level == Level::Notice);
    around.refusal.reset();
    around.not_on_disk = 0;
    around.trouble.clear();
    CHECK(banner()->text == words()("banner.screens_lost", {"Far"}) + " Also: " + rest);
    around.screens_lost.clear();
    CHECK(banner()->text.starts_with(words()("banner.file_changed") + " Also: PC clock jumped"));
    CHECK(banner()->level == Level::Watch);  // of what is named last too
    around.file_changed = false;
    CHECK(banner()->text.starts_with(words()("banner.clock_jumped") + " Also: no sound"));
    around.clock_jumped = false;
    CHECK(banner()->level == Level::Notice);
    around.no_sound = false;
    CHECK(banner()->text == words()("banner.size_unknown"));
    around.size_unknown = false;
    CHECK_FALSE(banner().has_value());
    around.trouble = "The disk is full.";  // of the mirror: all is on the disk
    CHECK(banner()->text == "The disk is full.");
    around.notice = "The size is kept.";
    CHECK(banner()->text == "The size is kept. The disk is full.");
}

TEST_CASE("a missing screen is not named on the view that it belongs to: that one says that it stands on another") {
    const auto& say = words();
    screen::Around around{.screens_lost = {"table"}};
    const auto banner = [&] { return screen::banner(around, say)->text; };
    CHECK(banner() == say("banner.own_screen_lost"));
    CHECK(banner().find(say("view.table")) == std::string::npos);
    around.screens_lost = {"table", "desk", "far"};
    CHECK(banner() == say("banner.own_screen_lost") + " Also: no screen for Desk and Far.");
    around.here = guide::Source::Desk;
    CHECK(banner() == say("banner.own_screen_lost") + " Also: no screen for Table and Far.");
    around.screens_lost = {"table"};
    CHECK(banner() == say("banner.screens_lost", {"Table"}));
    const sample::Case at(models::brief());
    CHECK(screen::far(at.state, around, say).banner->text == say("far.screens_lost"));
    around.screens_lost = {"far"};
    CHECK_FALSE(screen::far(at.state, around, say).banner.has_value());
}

TEST_CASE("what a view itself has to say stands beside the station's, at the graver level") {
    using Level = screen::Banner::Level;
    const screen::Banner notice{.level = Level::Notice, .text = "A."}, watch{.level = Level::Watch, .text = "B."};
    CHECK_FALSE(screen::both({}, {}));
    CHECK(screen::both({}, watch)->text == "B.");
    CHECK(screen::both(notice, {})->text == "A.");
    CHECK(screen::both(notice, watch)->text == "A. B.");
    CHECK(screen::both(notice, watch)->level == Level::Watch);
    CHECK(screen::both(watch, notice)->level == Level::Watch);
    const screen::Banner long_one{.level = Level::Notice, .text = "A as long as it is.", .brief = "A."};
    CHECK(screen::both(long_one, watch)->brief == "A. B.");
}

TEST_CASE("the record can be read through before it is locked, and it is locked by a hold") {
    Seen seen("lock");
    const auto model = seen.table();
    REQUIRE(model.card.rows.size() == 4);
    CHECK(model.card.rows[1].value == "8, planned 8");
    CHECK(model.card.rows[2].value == "16");
    CHECK(model.hand.front().press == Press::Hold);
}

TEST_CASE("every view of the shipped guide is filled, and has a target that leads on") {
    Seen seen;
    for (const auto& phase : brief().procedure.phases) {
        for (const auto& step : phase.steps) {
            if (!guide::applies(seen.at.state, step)) continue;
            if (step.id == "opening-count") {
                seen.at.up_to(step.id);
                REQUIRE(seen.at.does(guide::MoveItems{.item = "needles", .by = 1}));
            }
            seen.at.up_to(step.id);
            const auto model = seen.table();
            CAPTURE(step.id);
            CHECK(std::any_of(model.hand.begin(), model.hand.end(),
                              [](const screen::Target& one) { return one.why_not.empty() && one.look == Look::Filled; }));
            for (const auto& text : texts(model)) {
                CAPTURE(text);
                CHECK_FALSE(unfilled(text));
            }
        }
    }
}

TEST_CASE("what went otherwise while the blade can turn says what is usual, not to go on counting") {
    Seen at("lower");
    at.at.count(5);
    REQUIRE(at.at.does(guide::Depart{.what = "tilt"}));
    const screen::Card card = at.table().card;
    const guide::Departure* tilt = guide::find_departure(at.at.state.brief.procedure, "tilt");
    CHECK(card.title == tilt->title);
    REQUIRE(card.lines.size() == 2);
    CHECK(card.lines.front() == tilt->lines.front());
}

TEST_CASE("entered by the trephine, told once it is off the eye, does not ask for suction off again") {
    for (const std::string step : {"lower", "ink-marks"}) {
        Seen at(step);
        if (step == "lower") at.at.count(5);
        REQUIRE(at.at.does(guide::Depart{.what = "entered-by-trephine", .note = ""}));
        const auto rows = at.table().card.rows;
        CAPTURE(step);
        REQUIRE_FALSE(rows.empty());
        CHECK((rows.front().value == "Stop turning. Suction off at once. Lift straight up.") == (step == "lower"));
    }
}

TEST_CASE("suction lost before the blade was below zero does not speak of a groove to go on in") {
    Seen at("lower");
    at.at.count(2);
    REQUIRE(at.at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
    std::string uncut{};
    for (const screen::Row& row : at.table().card.rows) uncut += row.value + " ";
    CHECK(uncut == "Stop turning. Ring off. Blade not below zero: there is no groove. Usual: re-seat the ring and count anew. ");
    Seen cut("lower");
    cut.at.count(5);
    REQUIRE(cut.at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
    CHECK(cut.table().card.rows.at(1).value == "Usual: finish by hand from the groove.");
}

TEST_CASE("one spoke is one spoke, on Table and Far view, in either language") {
    Seen at("lower");
    at.at.count(10);
    CHECK(at.table().card.figure->under == "spoke to go");
    CHECK_FALSE(at.table().card.figure->over);
    CHECK(std::get<screen::FarModel::Numeral>(screen::far(at.at.state, at.around, words()).shown).under == "spoke to go");
    CHECK(screen::blade_figure(at.at.state, words("de")).under == "Speiche noch");
}

TEST_CASE("a figure past the plan is marked as that: on the glass it has another ink than what is left to go") {
    Seen at("lower");
    at.at.count(12);
    CHECK(at.table().card.figure->over);
    const auto canvas = samples::canvas({344, 194});
    for (const auto& shape : screen::draw(at.table(), canvas).shapes) {
        const auto* text = std::get_if<picture::Text>(&shape);
        if (text != nullptr && text->type == picture::Type::Numeral) CHECK(text->ink == picture::Ink::Amber);
    }
}
