// The hand's column in each state of the cut and of the open eye. Which targets there are and how they press are the guide's own
// rules; common practice, no source.
#include "screen/desk_seen.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace models;
using guide::Source;
using screen::Look;
using screen::Press;

TEST_CASE("the spoke target stays first, biggest and under one id from the first spoke to the last") {
    Seen seen("lower");
    for (int turned = 0; turned <= 13; ++turned) {
        const auto hand = seen.hand();
        CAPTURE(turned);
        CHECK(hand.front().id == "spoke");
        CHECK(hand.front().weight == screen::Weight::Spoke);
        // Filled until the plan's 8 spokes below zero, that is 3 + 8 turned; hollow from there on.
        CHECK(hand.front().look == (turned < 11 ? Look::Filled : Look::Hollow));
        CHECK(hand.front().label == (turned < 11 ? "+1 spoke" : "+1 if turned"));
        CHECK(hand.front().press == Press::Tap);
        CHECK(hand.front().why_not.empty());
        seen.at.count(1);
    }
}

TEST_CASE("what went otherwise mid-cut has its way back beside the count, and takes no place from it; the count taken over comes first") {
    Seen seen("lower");
    const auto before = seen.hand();
    REQUIRE(seen.at.does(guide::Depart{.what = "patient-moved", .note = ""}));
    auto hand = seen.hand();
    REQUIRE(hand.size() == before.size() + 1);
    CHECK(hand.back().id == "come-back");
    CHECK(hand.back().label == "Patient is still");
    CHECK(hand.back().apart);
    CHECK(hand.back().look == Look::Filled);
    CHECK(hand.front().id == "spoke");
    CHECK(hand.front().look == Look::Hollow);  // no more is to be turned, but what was turned counts
    CHECK(hand.front().label == "+1 if turned");
    CHECK(hand.front().why_not.empty());
    REQUIRE(seen.at.does(guide::HoldCount{.source = Source::Desk}, guide::Who::Circulating));
    CHECK(find(seen.hand(), "come-back") == std::nullopt);
    CHECK(seen.hand().back().id == "take-count");
    REQUIRE(seen.at.does(guide::HoldCount{.source = Source::Table}));
    hand = seen.hand();
    REQUIRE(seen.at.does(guide::ComeBack{.what = "patient-moved"}));
    CHECK(guide::open_departures(seen.at.state).empty());
    CHECK(seen.hand().size() == before.size());
}

TEST_CASE("what goes otherwise mid-cut has its lines marked as usual practice, and nothing is to be had ready for what waits") {
    Seen seen("lower");
    CHECK(seen.table().card.foot.front().label == "Next, have ready");
    REQUIRE(seen.at.does(guide::Depart{.what = "anaesthetist-stop"}));
    REQUIRE(seen.table().card.foot.size() == 1);
    CHECK(seen.table().card.foot.front().label == "Usual practice");
}

TEST_CASE("while a label that does not fit holds a step up, the way on from it does not lead") {
    Seen seen("tissue-number");
    CHECK(find(seen.hand(), "finish-tissue-number")->look == Look::Filled);
    for (const char* number : {"G123417654321", "A999917123456"})
        REQUIRE(seen.at.does(guide::Scan{.bytes = number, .label = guide::Isbt{.donation = guide::Donation{.number = number}}}));
    CHECK(find(seen.hand(), "finish-tissue-number")->look == Look::Hollow);
}

TEST_CASE("a late tap says of what it was: done so long ago") {
    Seen seen;
    seen.at.up_to("entered");
    const auto late = find(seen.hand(), "ago-15");
    REQUIRE(late != std::nullopt);
    CHECK(late->label == "Done 15 s ago");
    CHECK(words("de")("hand.done_ago", {words("de")("hand.ago_15")}) == "War vor 15 s");
}

TEST_CASE("no target of the cut changes its place when the depth is reached") {
    const auto ids = [](const std::vector<screen::Target>& hand) {
        std::vector<std::string> all{};
        for (const auto& one : hand) all.push_back(one.id);
        return all;
    };
    Seen seen("lower");
    seen.at.count(1);
    const auto before = ids(seen.hand());
    seen.at.count(10);
    CHECK(ids(seen.hand()) == before);
    seen.at.count(1);
    CHECK(ids(seen.hand()) == before);
}

TEST_CASE("before a spoke is turned the ring is let go of by a hold, seated anew, and there was no cut") {
    Seen seen("lower");
    CHECK(find(seen.hand(), "cut-done") == std::nullopt);
    const auto let_go = find(seen.hand(), "let-go");
    REQUIRE(let_go != std::nullopt);
    CHECK(let_go->press == Press::Hold);
    seen.at.count(1);
    CHECK(find(seen.hand(), "let-go") == std::nullopt);
    CHECK(seen.hand().back().id == "cut-done");  // in its place
    REQUIRE(seen.at.does(guide::UndoTap{}));
    for (const auto& one : std::get<std::vector<guide::Intent>>(let_go->act)) REQUIRE(seen.at.does(one));
    CHECK(seen.at.state.suction == guide::Suction::Off);
    CHECK(guide::current_step(seen.at.state)->id == "seat");
    CHECK(guide::open_departures(seen.at.state).empty());
    seen.at.up_to("lower");
    CHECK(guide::blade(seen.at.state).seating == 1);
    CHECK(guide::blade(seen.at.state).reliable);
    CHECK(guide::blade(seen.at.state).to_zero == 3);
}

TEST_CASE("in a groove that was begun the cut can be done with before a spoke of the new seating is turned") {
    for (const int spokes : {2, 5}) {
        CAPTURE(spokes);
        Seen seen("lower");
        seen.at.count(spokes);
        REQUIRE(seen.at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
        REQUIRE(seen.at.does(guide::ReopenStep{.step = "zero", .why = "re-seated"}));
        seen.at.up_to("lower");
        CHECK(seen.hand().back().id == (spokes > 3 ? "cut-done" : "let-go"));
        REQUIRE(seen.at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
        CHECK(seen.first() == (spokes > 3 ? "by-hand" : "re-seat"));
    }
}

TEST_CASE("the cut is done by a tap once the depth is reached, and by a hold before it") {
    Seen seen("lower");
    seen.at.count(10);
    CHECK(find(seen.hand(), "cut-done")->press == Press::Hold);
    CHECK(find(seen.hand(), "cut-done")->look == Look::Plain);
    seen.at.count(1);
    CHECK(find(seen.hand(), "cut-done")->press == Press::Tap);
    CHECK(find(seen.hand(), "cut-done")->look == Look::Filled);
}

TEST_CASE("a figure past the plan is never the figure of spokes to go") {
    Seen seen("lower");
    seen.at.count(10);
    CHECK(seen.table().card.figure->numeral == "1");
    CHECK(seen.table().card.figure->under == "spoke to go");
    seen.at.count(2);
    CHECK(seen.table().card.figure->numeral == "+1");
    CHECK(seen.table().card.figure->under == "over the plan");
}

TEST_CASE("spokes above zero are told as to zero, then as to go") {
    Seen seen("lower");
    CHECK(seen.table().card.figure->numeral == "3");
    CHECK(seen.table().card.figure->under == "to zero");
    seen.at.count(3);
    CHECK(seen.table().card.figure->numeral == "8");
    CHECK(seen.table().card.figure->under == "spokes to go");
}

TEST_CASE("only the holder of the count can count") {
    Seen seen("lower");
    seen.around.here = Source::Desk;
    CHECK_FALSE(seen.hand().front().why_not.empty());
    REQUIRE(find(seen.hand(), "take-count") != std::nullopt);
    CHECK(find(seen.hand(), "take-count")->press == Press::Hold);
    REQUIRE(seen.at.does(guide::HoldCount{.source = Source::Desk}));
    CHECK(seen.hand().front().why_not.empty());
    CHECK(find(seen.hand(), "take-count") == std::nullopt);
    seen.around.here = Source::Table;
    CHECK_FALSE(seen.hand().front().why_not.empty());
    REQUIRE(seen.at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
    CHECK_FALSE(find(seen.hand(), "spoke-lost")->why_not.empty());
}

TEST_CASE("what happens otherwise does not take the spoke target away while the blade can turn") {
    Seen seen("lower");
    seen.at.count(5);
    REQUIRE(seen.at.does(guide::Depart{.what = "tilt"}));
    CHECK(seen.first() == "spoke");
    // Nobody who told it is left without an answer: it is the title, and beside the depth once that is reached.
    const std::string told = guide::find_departure(seen.at.state.brief.procedure, "tilt")->title;
    CHECK(seen.table().card.title == told);
    CHECK(seen.table().card.figure->under == "spokes to go");
    seen.at.count(6);
    CHECK(seen.table().card.title != told);
    CHECK(seen.table().card.cautions == std::vector<std::string>{told});
    REQUIRE(seen.at.does(guide::EndCut{.how = guide::CutEnd::Surgeon}));
    REQUIRE(seen.at.does(guide::TurnSuction{.to = guide::Suction::Off}));
    CHECK(seen.first() == "come-back");
}

TEST_CASE("lost suction shows the count at loss and no spokes to go") {
    Seen seen("lower");
    seen.at.count(6);
    REQUIRE(seen.at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
    const auto model = seen.table();
    CHECK(model.card.title == "Suction lost");
    CHECK(model.card.figure->numeral == "3");
    CHECK(model.card.figure->line == "planned 8, kept on the record");
    REQUIRE(model.card.foot.size() == 1);
    CHECK(model.card.foot.front().label == "Usual practice");
    CHECK(says(texts(model), "Seat again only in the same groove."));
    CHECK(model.hand.front().id == "by-hand");
    CHECK(model.hand.front().press == Press::Hold);  // it stands where a spoke was tapped a moment ago
    CHECK(model.hand.front().line == "hold");
    CHECK_FALSE(says(texts(model), "to go"));
}

TEST_CASE("suction lost before the blade was below zero leaves no groove: a new seating leads") {
    Seen seen("lower");
    seen.at.count(3);
    REQUIRE(seen.at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
    const auto hand = seen.hand();
    CHECK(hand.front().id == "re-seat");
    CHECK(hand.front().press == Press::Hold);
    CHECK(hand.front().look == Look::Filled);
    CHECK(find(hand, "by-hand")->look == Look::Plain);
    CHECK(find(hand, "by-hand")->line == "no groove yet: hold");
    CHECK(find(hand, "spoke-lost") != std::nullopt);
}

TEST_CASE("'Eye bulging' is there without a hold from the open eye to the fourth suture, whatever else happened") {
    Seen seen("ready-to-open");
    const auto offered = [&] {
        const auto hand = seen.hand();
        const auto found = find(hand, "eye-bulging");
        return found != std::nullopt && found->press == Press::Tap && found->look == Look::Stop && found->why_not.empty();
    };
    const guide::Procedure procedure = seen.at.state.brief.procedure;
    for (const auto& step : guide::phase_of(procedure, "ready-to-open")->steps) {
        seen.at.up_to(step.id);
        CAPTURE(step.id);
        CHECK(offered());
    }
    seen.at.up_to("cardinals");
    for (int tied = 0; tied < 4; ++tied) {
        CAPTURE(tied);
        CHECK(offered());
        seen.at.tie(1);
    }
    CHECK_FALSE(offered());
    Seen early("lower");  // the trephine entered: the eye is open before the guide opens it
    early.at.count(5);
    CHECK(find(early.hand(), "eye-bulging") == std::nullopt);
    REQUIRE(early.at.does(guide::EndCut{.how = guide::CutEnd::Entered}));
    CHECK(find(early.hand(), "eye-bulging") != std::nullopt);
    REQUIRE(early.at.does(guide::ComeBack{.what = "entered-by-trephine"}));
    CHECK(find(early.hand(), "eye-bulging") != std::nullopt);
    Seen away("scissors");
    REQUIRE(away.at.does(guide::Depart{.what = "patient-moved"}));
    CHECK(find(away.hand(), "eye-bulging") != std::nullopt);
    REQUIRE(away.at.does(guide::Depart{.what = "eye-bulging"}));
    CHECK(find(away.hand(), "eye-bulging") == std::nullopt);
    CHECK(away.table().card.title == "Eye bulging, close now");
}

TEST_CASE("a press of the pedal that was left out can be counted while suction is lost too, as the pedal's") {
    Seen at("lower");
    at.around.foot_switch = "F9";
    REQUIRE(at.at.does(guide::HoldCount{.source = guide::Source::FootSwitch}));
    REQUIRE(at.at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
    CHECK_FALSE(find(at.hand(), "spoke-lost")->why_not.empty());
    at.around.bounced = "spoke";
    REQUIRE(find(at.hand(), "count-it") != std::nullopt);
    CHECK(std::get<guide::CountSpoke>(intent(*find(at.hand(), "count-it"))).source == guide::Source::FootSwitch);
}

TEST_CASE("where there is no Desk the pedal gets the count back on the Table view, by a hold") {
    Seen at("lower");
    CHECK(find(at.hand(), "foot-counts") == std::nullopt);
    at.around.foot_switch = "F9";
    REQUIRE(find(at.hand(), "foot-counts") != std::nullopt);
    CHECK(find(at.hand(), "foot-counts")->press == Press::Hold);
    REQUIRE(at.at.does(intent(*find(at.hand(), "foot-counts"))));
    CHECK(find(at.hand(), "foot-counts") == std::nullopt);
    REQUIRE(find(at.hand(), "take-count") != std::nullopt);
    at.around.has_desk = true;
    REQUIRE(at.at.does(intent(*find(at.hand(), "take-count"))));
    CHECK(find(at.hand(), "foot-counts") == std::nullopt);  // there it is given back with J
}

TEST_CASE("the undo of a suture names it, stands once where the next ones begin, and on the step after the last one too") {
    Seen begun("next-four");
    const auto first = begun.hand();
    CHECK(std::count_if(first.begin(), first.end(), [](const screen::Target& one) { return one.id == "undo"; }) == 1);
    Seen seen("rest");
    CHECK(find(seen.hand(), "undo")->label == "Undo suture 8");
    seen.at.tie(8);
    const guide::Step* now = guide::current_step(seen.at.state);
    REQUIRE(now->closes == guide::Closes::Ring);
    REQUIRE(find(seen.hand(), "undo") != std::nullopt);
    CHECK(find(seen.hand(), "undo")->label == "Undo suture 16");
    REQUIRE(seen.at.does(intent(*find(seen.hand(), "undo"))));
    CHECK(guide::current_step(seen.at.state)->id == "rest");
}

TEST_CASE("'Eye bulging' stands at the foot of every page that is opened from there, once and without a hold") {
    Seen seen("ready-to-open");
    const auto offered = [&](const std::string& name) {
        const auto shown = page(seen.at.state, {.page = name, .argument = "1"}, seen.around, models::words());
        const auto found = find(shown.foot, "eye-bulging");
        return found != std::nullopt && found->press == Press::Tap && found->look == Look::Stop &&
               find(shown.choices, "eye-bulging") == std::nullopt;
    };
    const auto on_every_page = [&] {
        for (const std::string name : {"other-mark", "redo", "redo-why", "departures", "reason", "skip"}) {
            CAPTURE(name);
            CHECK(offered(name) == (find(seen.hand(), "eye-bulging") != std::nullopt));
        }
    };
    const guide::Procedure procedure = seen.at.state.brief.procedure;
    for (const auto& step : guide::phase_of(procedure, "ready-to-open")->steps) {
        seen.at.up_to(step.id);
        CAPTURE(step.id);
        on_every_page();
        CHECK(offered("departures"));
    }
    seen.at.up_to("cardinals");
    for (int tied = 0; tied < 4; ++tied) {
        CAPTURE(tied);
        on_every_page();
        CHECK(offered("redo"));
        seen.at.tie(1);
    }
    CHECK_FALSE(offered("departures"));
    Seen closing("cardinals");
    seen = closing;
    REQUIRE(seen.at.does(guide::Depart{.what = "eye-bulging"}));
    CHECK_FALSE(offered("departures"));
}

TEST_CASE("the way back says which step is to be done again, and only where one is") {
    Seen seen("suction-on");
    const auto back = [&](const std::string& what) {
        REQUIRE(seen.at.does(guide::Depart{.what = what, .note = ""}));
        const std::string line = find(seen.hand(), "come-back")->line;
        REQUIRE(seen.at.does(guide::ComeBack{.what = what}));
        return line;
    };
    CHECK(back("patient-moved") == "back to the guide");
    CHECK(back("donor-lost-before") == "then again: Ink the four wells");
    CHECK(seen.table().card.title == "Ink the four wells");
    CHECK(back("instrument-replaced") == "then again: Set zero");
    CHECK(back("instrument-replaced") == "back to the guide");
}

TEST_CASE("beside the octagon a departure is taken back from the list of what else happens") {
    Seen seen("cardinals");
    const auto offered = [&] {
        const auto choices =
            std::get<screen::PickModel>(screen::view(seen.at.state, {.page = "departures"}, seen.around, models::words())).choices;
        return find(choices, "undo-told") != std::nullopt;
    };
    CHECK_FALSE(offered());
    REQUIRE(seen.at.does(guide::Depart{.what = "vitreous"}));
    CHECK(find(seen.hand(), "undo-told") == std::nullopt);
    CHECK(offered());
}

TEST_CASE("a ring that does not hold is told before suction counts as on, and it is seated again") {
    Seen seen("suction-on");
    REQUIRE(seen.at.does(guide::Depart{.what = "no-hold"}));
    CHECK(seen.table().card.title == "Ring does not hold");
    CHECK(find(seen.hand(), "come-back")->line == "then again: Seat and centre");
    REQUIRE(seen.at.does(guide::ComeBack{.what = "no-hold"}));
    CHECK(seen.table().card.title == "Seat and centre");
}

TEST_CASE("a title says how bad it is: what goes otherwise, lost suction, the plan passed; not a step, not the depth reached") {
    using Level = screen::Banner::Level;
    const auto level = [](Seen& seen) { return seen.table().card.level; };
    Seen cut("lower");
    CHECK(level(cut) == Level::Notice);
    REQUIRE(cut.at.does(guide::Depart{.what = "tilt"}));
    CHECK(level(cut) == Level::Watch);
    REQUIRE(cut.at.does(guide::ComeBack{.what = "tilt"}));
    cut.at.count(11);
    CHECK(cut.table().card.title == "Depth reached, stop");
    CHECK(level(cut) == Level::Notice);
    cut.at.count(1);
    CHECK(level(cut) == Level::Watch);
    Seen lost("lower");
    REQUIRE(lost.at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
    CHECK(level(lost) == Level::Watch);
    Seen open("scissors");
    REQUIRE(open.at.does(guide::Depart{.what = "eye-bulging"}));
    CHECK(level(open) == Level::Stop);
}

TEST_CASE("suction lost stands once however often it is told, and is over once the ring holds again or the loss is taken back") {
    for (const bool undone : {false, true}) {
        CAPTURE(undone);
        Seen seen("lower");
        seen.at.count(5);
        REQUIRE(seen.at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
        CHECK_FALSE(seen.at.does(guide::Depart{.what = "suction-lost"}));
        const auto choices =
            std::get<screen::PickModel>(screen::view(seen.at.state, {.page = "departures"}, seen.around, models::words())).choices;
        CHECK(find(choices, "suction-lost") == std::nullopt);
        if (undone) {
            REQUIRE(seen.at.does(guide::UndoTap{}));
        } else {
            REQUIRE(seen.at.does(guide::ReopenStep{.step = "zero", .why = "seated again"}));
            REQUIRE(seen.at.does(guide::Depart{.what = "no-hold"}));
            CHECK(seen.table().card.rows.back().value == "Groove begun: seat again only in that groove.");
            REQUIRE(seen.at.does(guide::ComeBack{.what = "no-hold"}));
            seen.at.up_to("suction-on");
            REQUIRE(seen.at.does(guide::TurnSuction{.to = guide::Suction::On}));
        }
        CHECK(guide::open_departures(seen.at.state).empty());
        CHECK(seen.table().card.title == "Lower the blade, clockwise");
    }
}

TEST_CASE("suction lost is on the Table although there was none, where a unit's guide lets it be told so") {
    Seen seen("suction-on");
    REQUIRE(seen.at.does(guide::Depart{.what = "suction-lost"}));
    CHECK(seen.table().card.title == "Suction lost");
    CHECK(seen.first() == "come-back");
}

TEST_CASE("what still stands from before the suction was lost comes up in the new seating, since suction waits for it") {
    Seen seen("lower");
    REQUIRE(seen.at.does(guide::Depart{.what = "instrument-replaced", .note = ""}));
    seen.at.count(5);
    REQUIRE(seen.at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
    CHECK(find(seen.hand(), "by-hand") != std::nullopt);
    CHECK(find(seen.hand(), "come-back") == std::nullopt);
    REQUIRE(seen.at.does(guide::ReopenStep{.step = "zero", .why = "seated again"}));
    CHECK(find(seen.hand(), "come-back")->label == "New one is checked");
    REQUIRE(seen.at.does(guide::ComeBack{.what = "instrument-replaced"}));
    CHECK(seen.first() == "finish-zero");
}

TEST_CASE("nothing asks for a reason while the eye is open") {
    Seen seen("entered");
    for (const std::string step : {"entered", "viscoelastic-in", "scissors", "button-out", "descemet-out", "planned-lens", "donor-on"}) {
        seen.at.up_to(step);
        CAPTURE(step);
        CHECK(find(seen.hand(), "skip") == std::nullopt);
    }
}

TEST_CASE("another method is a departure first; the case is closed from its card, and not over an open eye") {
    Seen seen("cardinals");
    REQUIRE(seen.at.does(guide::Depart{.what = "converted"}));
    const auto close = find(seen.hand(), "close-case");
    REQUIRE(close != std::nullopt);
    const auto page = [&] { return screen::page(seen.at.state, {.page = "end", .argument = "converted"}, seen.around, words()); };
    REQUIRE(page().choices.size() == 1);
    CHECK(page().choices.front().id == "eye-closed");
    CHECK(page().choices.front().press == Press::Hold);
    const auto stops = std::get<std::vector<guide::Intent>>(page().choices.front().act);
    for (const auto& intent : stops) REQUIRE(seen.at.does(intent));
    CHECK(page().choices.size() == 3);
    CHECK(page().choices.front().press == Press::Hold);
}

TEST_CASE("the target that asks for a reason says what for") {
    for (const int over : {1, 3}) {
        Seen seen("lower");
        seen.at.count(11 + over);
        REQUIRE(seen.at.does(guide::EndCut{.how = guide::CutEnd::Surgeon}));
        const auto hand = seen.hand();
        const auto reason = find(hand, "reason");
        REQUIRE(reason != std::nullopt);
        CHECK(reason->label == (over == 1 ? "Why 1 spoke?" : "Why 3 spokes?"));
        seen.at.up_to("next-four");
        CHECK(find(seen.hand(), "reason") == std::nullopt);  // it would move what is tapped between two sutures
        seen.at.up_to("even-out");
        CHECK(find(seen.hand(), "reason") != std::nullopt);
    }
}

TEST_CASE("each departure that one tap tells is taken back by one tap that names it, and the step stands as before") {
    for (const std::string step : {"tissue-number", "centre", "scissors", "chamber"}) {
        Seen seen(step);
        const auto before = seen.at.state;
        for (const guide::Departure* one : screen::departures_of(before, *guide::current_step(before))) {
            CAPTURE(step);
            CAPTURE(one->id);
            REQUIRE(seen.at.does(guide::Depart{.what = one->id}));
            const auto hand = seen.hand();
            const auto undo = screen::undo_told(seen.at.state, words());
            REQUIRE(undo);
            CHECK(undo->label == "Undo: " + one->title);
            // Beside the octagon of the open eye it stands at the Desk alone.
            CHECK((find(hand, "undo-told") != std::nullopt) == !screen::bulging_target(seen.at.state));
            CHECK(hand.front().id == "come-back");
            REQUIRE(seen.at.does(intent(*undo)));
            CHECK(seen.at.state.departures.empty());
            CHECK(seen.at.state.steps == before.steps);
            CHECK(seen.at.state.clocks == before.clocks);
            CHECK(find(seen.hand(), "undo-told") == std::nullopt);
        }
    }
}

TEST_CASE("on the card of a chamber entered the undo is the blade's own, while the ring holds") {
    Seen seen("lower");
    seen.at.count(9);
    REQUIRE(seen.at.does(guide::EndCut{.how = guide::CutEnd::Entered}));
    REQUIRE(find(seen.hand(), "undo-told") != std::nullopt);
    const guide::CaseState entered = seen.at.state;
    REQUIRE(seen.at.does(intent(*find(seen.hand(), "undo-told"))));
    CHECK(guide::cutting(seen.at.state));
    CHECK(guide::blade(seen.at.state).spokes_turned == 9);
    CHECK_FALSE(guide::eye_entered(seen.at.state));
    CHECK(seen.at.state.departures.empty());
    seen.at.state = entered;
    REQUIRE(seen.at.does(guide::TurnSuction{.to = guide::Suction::Off}));
    REQUIRE(find(seen.hand(), "come-back") != std::nullopt);
    CHECK(find(seen.hand(), "undo-told") == std::nullopt);
}

TEST_CASE("what was told of the ring reflection is taken back from the step after it, by what it was") {
    Seen seen("tension");
    REQUIRE(seen.at.does(guide::SeeRing{}));
    REQUIRE(guide::current_step(seen.at.state)->id == "knots");
    CHECK(find(seen.hand(), "undo-told")->label == "Undo: Round");
    REQUIRE(seen.at.does(intent(*find(seen.hand(), "undo-told"))));
    CHECK(guide::current_step(seen.at.state)->id == "tension");
    REQUIRE(seen.at.does(guide::SeeRing{.long_axis_centideg = 9000}));
    CHECK(find(seen.hand(), "undo-told")->label == "Undo: Oval");
    seen.at.up_to("viscoelastic-out");
    CHECK(find(seen.hand(), "undo-told") == std::nullopt);
}

TEST_CASE("a suture that is too tight, too loose or broke is taken out from where it is seen, tied again, and the guide goes on there") {
    const auto redone = [](Seen& seen, const std::string& step) {
        REQUIRE(find(seen.hand(), "redo") != std::nullopt);
        CHECK(std::get<screen::Show>(find(seen.hand(), "redo")->act).page == "redo");
        const auto why = page(seen.at.state, {.page = "redo-why", .argument = "5"}, seen.around, models::words());
        const auto tight = find(why.choices, "why-1");
        for (const auto& one : std::get<std::vector<guide::Intent>>(tight->act)) REQUIRE(seen.at.does(one));
        CHECK(guide::open_departures(seen.at.state).empty());
        CHECK(guide::find_tied(seen.at.state, 5) == nullptr);
        CHECK(seen.first() == "tied-5");
        REQUIRE(seen.at.does(intent(seen.hand().front())));
        CHECK(guide::find_tied(seen.at.state, 5)->redone == 1);
        CHECK(guide::current_step(seen.at.state)->id == step);
    };
    for (const std::string step : {"tension", "even-out"}) {
        CAPTURE(step);
        Seen seen(step);
        redone(seen, step);
    }
    Seen broke("chamber");
    CHECK(find(broke.hand(), "redo") == std::nullopt);
    REQUIRE(broke.at.does(guide::Depart{.what = "suture-broke"}));
    redone(broke, "chamber");
}
