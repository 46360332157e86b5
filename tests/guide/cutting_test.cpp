// The blade. Rules: common practice, no source, unless a line names one.
#include "support/sample.hpp"

#include <doctest/doctest.h>

using namespace guide;
using sample::Case;

namespace {

Case cutting_case() {
    Case c;
    c.up_to("lower");
    return c;
}

constexpr CountSpoke spoke{.source = Source::Table};

}  // namespace

TEST_CASE("the blade starts three spokes above zero, comes back to zero, and then has the plan to go") {
    Case c = cutting_case();
    CHECK(blade(c.state).to_zero == 3);
    CHECK(blade(c.state).to_go == 8);
    c.count(3);
    CHECK(blade(c.state).position == 0);
    CHECK(blade(c.state).to_zero == 0);
    CHECK(blade(c.state).to_go == 8);
    c.count(5);
    CHECK(blade(c.state).to_go == 3);
    CHECK(blade(c.state).travel == measure::from_um(300));
    CHECK(blade(c.state).spokes_turned == 8);
    CHECK(blade(c.state).raised == 3);
}

TEST_CASE("a spoke past the plan counts at once and owes a reason [a blade that has turned has turned]") {
    Case c = cutting_case();
    c.count(11);
    CHECK(blade(c.state).to_go == 0);
    CHECK(c.state.reasons_owed.empty());
    REQUIRE(c.does(spoke));
    CHECK(blade(c.state).over == 1);
    CHECK(blade(c.state).position == 9);
    REQUIRE(c.state.reasons_owed.size() == 1);
    const Seq owed = c.state.reasons_owed.front();
    CHECK_FALSE(c.does(GiveReason{.event = owed, .why = ""}));
    CHECK(c.does(GiveReason{.event = owed, .why = "surgeon asked for one more"}));
    CHECK(c.state.reasons_owed.empty());
}

TEST_CASE("the surgeon goes deeper by one spoke: the plan moves and the next spoke owes nothing") {
    Case c = cutting_case();
    c.count(11);
    REQUIRE(c.does(GoDeeper{}));
    CHECK(blade(c.state).planned == 9);
    CHECK(blade(c.state).to_go == 1);
    c.count(1);
    CHECK(blade(c.state).over == 0);
    CHECK(c.state.reasons_owed.empty());
}

TEST_CASE("the gates before suction: zero before raise, raise before seating, suction before turning") {
    Case c;
    c.up_to("zero");
    CHECK_FALSE(c.does(spoke));
    CHECK(c.refusal.why == Refused::NotZeroed);
    CHECK_FALSE(c.does(TurnSuction{.to = Suction::On}));
    CHECK(c.refusal.why == Refused::NotZeroed);
    c.up_to("raise");
    CHECK_FALSE(c.does(FinishStep{.step = "seat"}));
    CHECK_FALSE(c.does(TurnSuction{.to = Suction::On}));
    CHECK(c.refusal.why == Refused::NotRaised);
    CHECK(blade(c.state).position == 0);
    c.up_to("seat");
    CHECK(blade(c.state).position == -3);
    c.up_to("suction-on");
    CHECK_FALSE(c.does(spoke));
    CHECK(c.refusal.why == Refused::NoSuction);
    CHECK(c.does(TurnSuction{.to = Suction::On}));
    CHECK(c.does(spoke));
}

TEST_CASE("a skipped zero does not open the gate to suction") {
    Case c;
    c.up_to("zero");
    REQUIRE(c.does(SkipStep{.step = "zero", .why = "test"}));
    CHECK_FALSE(c.does(FinishStep{.step = "raise"}));
    CHECK(c.refusal.why == Refused::NotZeroed);
}

TEST_CASE("zero again when knocked: what rests on it is open again too") {
    Case c;
    c.up_to("suction-on");
    REQUIRE(c.does(ReopenStep{.step = "zero", .why = "knocked"}));
    CHECK(current_step(c.state)->id == "zero");
    CHECK_FALSE(c.state.steps.contains("raise"));
    CHECK_FALSE(c.state.steps.contains("seat"));
    CHECK(c.state.steps.contains("mark-centre"));
}

TEST_CASE("an undone tap was not a spoke; a raised blade is a spoke back and stays counted as turned") {
    Case c = cutting_case();
    c.count(5);
    REQUIRE(c.does(UndoTap{}));
    CHECK(blade(c.state).spokes_turned == 4);
    REQUIRE(c.does(RaiseBlade{}));
    CHECK(blade(c.state).position == 0);
    CHECK(blade(c.state).spokes_turned == 4);
    CHECK(blade(c.state).raised == 4);
}

TEST_CASE("undoing a tap over the plan takes its owed reason back as well") {
    Case c = cutting_case();
    c.count(12);
    REQUIRE(c.does(UndoTap{}));
    CHECK(c.state.reasons_owed.empty());
    CHECK(blade(c.state).over == 0);
}

TEST_CASE("after the cut no spoke can be undone") {
    Case c = cutting_case();
    c.count(11);
    const Seq last_spoke = c.state.last;
    REQUIRE(c.does(EndCut{.how = CutEnd::AtPlan}));
    CHECK_FALSE(c.does(UndoTap{.event = last_spoke}));
    CHECK(c.refusal.why == Refused::NothingToUndo);
}

TEST_CASE("one source holds the count; another takes it over or is refused") {
    Case c = cutting_case();
    c.count(1);
    CHECK(c.state.holder == Source::Table);
    CHECK_FALSE(c.does(CountSpoke{.source = Source::Desk}));
    CHECK(c.refusal.why == Refused::CountHeldElsewhere);
    REQUIRE(c.does(HoldCount{.source = Source::Desk}, Who::Circulating));
    CHECK(c.does(CountSpoke{.source = Source::Desk}));
    CHECK_FALSE(c.does(spoke));
    CHECK(blade(c.state).spokes_turned == 2);
}

TEST_CASE("suction lost: the count is kept, a spoke still counts but owes a reason, and a new seating counts anew") {
    Case c = cutting_case();
    c.count(8);
    REQUIRE(c.does(TurnSuction{.to = Suction::Lost}));
    CHECK(blade(c.state).position == 5);
    CHECK(open_departures(c.state).size() == 1);
    REQUIRE(c.does(spoke));
    CHECK(c.state.reasons_owed.size() == 1);
    // Not straight on: the blade stands below zero, and nothing has said that it was raised.
    CHECK_FALSE(c.does(TurnSuction{.to = Suction::On}));
    CHECK(c.refusal.why == Refused::NotZeroed);
    REQUIRE(c.does(ReopenStep{.step = "zero", .why = "re-seated in the same groove"}));
    CHECK_FALSE(c.does(TurnSuction{.to = Suction::On}));
    CHECK(c.refusal.why == Refused::NotZeroed);
    c.up_to("lower");
    CHECK(blade(c.state).seating == 2);
    CHECK(blade(c.state).to_zero == 3);
    CHECK(blade(c.state).to_go == 8);
    CHECK_FALSE(blade(c.state).reliable);
    CHECK(open_departures(c.state).empty());
    CHECK(c.state.seatings.front().position() == 6);
}

TEST_CASE("suction lost and finished by hand: the cut ends where it was") {
    Case c = cutting_case();
    c.count(8);
    REQUIRE(c.does(TurnSuction{.to = Suction::Lost}));
    REQUIRE(c.does(EndCut{.how = CutEnd::Surgeon}));
    CHECK(current_step(c.state)->id == "ink");
    CHECK(c.state.seatings.back().position() == 5);
}

TEST_CASE("suction let go before a spoke was turned is no second cut") {
    Case c = cutting_case();
    REQUIRE(c.does(TurnSuction{.to = Suction::Off}));
    CHECK(current_step(c.state)->id == "seat");
    c.up_to("lower");
    CHECK(blade(c.state).seating == 1);
    CHECK(blade(c.state).reliable);
}

TEST_CASE("let go of with the blade raised further, it is set to zero again") {
    Case c = cutting_case();
    REQUIRE(c.does(RaiseBlade{}));
    CHECK(blade(c.state).to_zero == 4);
    REQUIRE(c.does(TurnSuction{.to = Suction::Off}));
    CHECK(current_step(c.state)->id == "zero");
    CHECK(blade(c.state).position == 0);
    c.up_to("seat");
    CHECK(blade(c.state).position == -3);
    c.up_to("lower");
    CHECK(blade(c.state).to_zero == 3);
}

TEST_CASE("suction lost before a spoke was turned is over once the ring is let go") {
    Case c = cutting_case();
    REQUIRE(c.does(TurnSuction{.to = Suction::Lost}));
    REQUIRE(c.does(TurnSuction{.to = Suction::Off}));
    CHECK(current_step(c.state)->id == "seat");
    CHECK(open_departures(c.state).empty());
}

TEST_CASE("entered by the trephine: the cut ends, the eye is decompressed, and it is on the record") {
    Case c = cutting_case();
    c.count(9);
    REQUIRE(c.does(EndCut{.how = CutEnd::Entered}));
    CHECK(clock_running(c.state, "decompressed"));
    CHECK(open_departures(c.state).back().what == "entered-by-trephine");
    CHECK(c.state.seatings.back().ended == CutEnd::Entered);
    c.later(60);
    REQUIRE(c.does(TurnSuction{.to = Suction::Off}));
    c.up_to("button-out");
    CHECK(c.state.clocks.at("decompressed").size() == 1);
}

TEST_CASE("an entry that is taken back leaves neither decompressed eye nor departure, come back from or not") {
    for (const bool come_back : {false, true}) {
        CAPTURE(come_back);
        Case c = cutting_case();
        c.count(9);
        REQUIRE(c.does(EndCut{.how = CutEnd::Entered}));
        if (come_back) REQUIRE(c.does(ComeBack{.what = "entered-by-trephine"}));
        REQUIRE(c.does(UndoTap{}));
        CHECK(c.state.departures.empty());
        CHECK_FALSE(c.state.clocks.contains("decompressed"));
        CHECK_FALSE(c.state.seatings.back().ended.has_value());
    }
}

TEST_CASE("an entry that is seen only after the cut: the eye is open from then, until it is taken back") {
    Case c = cutting_case();
    c.count(9);
    REQUIRE(c.does(EndCut{.how = CutEnd::Surgeon}));
    REQUIRE(c.does(TurnSuction{.to = Suction::Off}));
    c.later(20);
    CHECK_FALSE(eye_open(c.state));
    REQUIRE(c.does(Depart{.what = "entered-by-trephine"}));
    CHECK(eye_open(c.state));
    CHECK(c.state.clocks.at("decompressed").back().from == c.now);
    const Seq told = open_departures(c.state).back().seq;

    SUBCASE("told by mistake: it never was") {
        REQUIRE(c.does(UndoTap{.event = told}));
        CHECK(c.state.departures.empty());
        CHECK_FALSE(c.state.clocks.contains("decompressed"));
    }
    SUBCASE("told again while it stands: once is enough") {
        CHECK_FALSE(c.does(Depart{.what = "entered-by-trephine"}));
        CHECK(c.refusal.why == Refused::AlreadyDone);
    }
    SUBCASE("told again later by mistake: what is taken back is the second telling alone") {
        REQUIRE(c.does(ComeBack{.what = "entered-by-trephine"}));
        c.later(30);
        REQUIRE(c.does(Depart{.what = "entered-by-trephine"}));
        REQUIRE(c.does(UndoTap{.event = open_departures(c.state).back().seq}));
        CHECK(eye_open(c.state));
        CHECK(c.state.clocks.at("decompressed").size() == 1);
    }
    SUBCASE("told by mistake, its clock stopped by hand: it never was all the same") {
        c.later(10);
        REQUIRE(c.does(MarkClock{.clock = "decompressed", .start = false}));
        REQUIRE(c.does(UndoTap{.event = told}));
        CHECK_FALSE(eye_entered(c.state));
    }
    SUBCASE("another departure that is taken back leaves the eye open") {
        REQUIRE(c.does(Depart{.what = "suction-lost"}));
        REQUIRE(c.does(UndoTap{.event = open_departures(c.state).back().seq}));
        CHECK(eye_open(c.state));
    }
    SUBCASE("opened by the surgeon since: the clock runs on, and the way back is no undo") {
        c.up_to("button-out");
        CHECK(c.state.clocks.at("decompressed").size() == 1);
        CHECK_FALSE(may_take_back(c.state, open_departures(c.state).back()));
        CHECK_FALSE(c.does(UndoTap{.event = told}));
        CHECK(eye_open(c.state));
    }
}

TEST_CASE("an entry taken back leaves a clock that was started by hand before it") {
    for (const bool cut_goes_on : {false, true}) {
        CAPTURE(cut_goes_on);
        Case c = cutting_case();
        c.count(9);
        if (!cut_goes_on) {
            REQUIRE(c.does(EndCut{.how = CutEnd::Surgeon}));
            REQUIRE(c.does(TurnSuction{.to = Suction::Off}));
        }
        REQUIRE(c.does(MarkClock{.clock = "decompressed", .start = true}));
        c.later(5);
        REQUIRE(c.does(Depart{.what = "entered-by-trephine"}));
        if (cut_goes_on)
            REQUIRE(c.does(UndoTap{}));
        else
            REQUIRE(c.does(UndoTap{.event = open_departures(c.state).back().seq}));
        CHECK(c.state.departures.empty());
        CHECK(eye_open(c.state));
        CHECK(c.state.clocks.at("decompressed").size() == 1);
    }
}

TEST_CASE("a clock of the open eye that was started and stopped by mistake hides no entry that is told after it") {
    Case c = cutting_case();
    REQUIRE(c.does(MarkClock{.clock = "decompressed", .start = true}));
    REQUIRE(c.does(MarkClock{.clock = "decompressed", .start = false}));
    c.count(9);
    REQUIRE(c.does(EndCut{.how = CutEnd::Surgeon}));
    REQUIRE(c.does(TurnSuction{.to = Suction::Off}));
    REQUIRE(c.does(Depart{.what = "entered-by-trephine"}));
    CHECK(eye_open(c.state));
}

TEST_CASE("a cut to entry that is taken back leaves an entry that was told for itself") {
    Case c = cutting_case();
    c.count(9);
    REQUIRE(c.does(EndCut{.how = CutEnd::Surgeon}));
    REQUIRE(c.does(Depart{.what = "entered-by-trephine"}));
    REQUIRE(c.does(ComeBack{.what = "entered-by-trephine"}));
    REQUIRE(c.does(UndoTap{}));  // the cut was not done
    c.later(20);
    REQUIRE(c.does(EndCut{.how = CutEnd::Entered}));
    REQUIRE(c.does(UndoTap{}));
    CHECK(c.state.departures.size() == 1);
    CHECK(eye_open(c.state));
}

TEST_CASE("an eye that was closed is not opened by an entry told again, however it was told before") {
    Case c;
    c.up_to("agree-plan");
    plan::Inputs inputs = sample::inputs();
    plan::Plan plan = sample::plan();
    SUBCASE("by a cut to entry") {
        inputs.file.aim = {.goal = plan::Goal::ToEntry};
        plan.target = plan::Target{.spokes = std::nullopt, .raise = 3, .bound_by = plan::Bound::ToEntry, .entry_from = 9, .entry_to = 12};
        REQUIRE(c.does(AcceptPlan{.inputs = inputs, .plan = plan}));
        c.up_to("lower");
        c.count(20);
        REQUIRE(c.does(EndCut{.how = CutEnd::Entered}));
        REQUIRE(c.state.departures.empty());
        REQUIRE(c.does(TurnSuction{.to = Suction::Off}));
    }
    SUBCASE("by its departure") {
        c.up_to("lower");
        c.count(9);
        REQUIRE(c.does(EndCut{.how = CutEnd::Surgeon}));
        REQUIRE(c.does(TurnSuction{.to = Suction::Off}));
        REQUIRE(c.does(Depart{.what = "entered-by-trephine"}));
        REQUIRE(c.does(ComeBack{.what = "entered-by-trephine"}));
    }
    SUBCASE("by the step that opens the eye") { c.up_to("button-out"); }
    REQUIRE(c.does(MarkClock{.clock = "decompressed", .start = false}));
    REQUIRE(c.does(Depart{.what = "entered-by-trephine"}));
    CHECK_FALSE(eye_open(c.state));
}

TEST_CASE("entering is the normal end when the aim is to entry: no departure, nothing to go") {
    Case c;
    c.up_to("agree-plan");
    plan::Inputs inputs = sample::inputs();
    inputs.file.aim = {.goal = plan::Goal::ToEntry};
    plan::Plan plan = sample::plan();
    plan.target = plan::Target{.spokes = std::nullopt, .raise = 3, .bound_by = plan::Bound::ToEntry, .entry_from = 9, .entry_to = 12};
    REQUIRE(c.does(AcceptPlan{.inputs = inputs, .plan = plan}));
    c.up_to("lower");
    c.count(20);
    CHECK_FALSE(blade(c.state).to_go.has_value());
    CHECK(blade(c.state).over == 0);
    REQUIRE(c.does(EndCut{.how = CutEnd::Entered}));
    CHECK(c.state.departures.empty());
}

TEST_CASE("a plan changed during the cut needs a reason and the counter follows at once") {
    Case c = cutting_case();
    c.count(5);
    plan::Plan changed = sample::plan();
    changed.target->spokes = 7;
    CHECK_FALSE(c.does(AcceptPlan{.inputs = sample::inputs(), .plan = changed}));
    CHECK(c.refusal.why == Refused::NeedsReason);
    REQUIRE(c.does(AcceptPlan{.inputs = sample::inputs(), .plan = changed, .why = "chamber shallow"}, Who::Surgeon));
    CHECK(blade(c.state).to_go == 5);
}

TEST_CASE("suction turned off in the cut ends it where the blade was: what has happened is never refused") {
    Case c = cutting_case();
    c.count(7);
    REQUIRE(c.does(TurnSuction{.to = Suction::Off}));
    CHECK(c.state.seatings.back().ended == CutEnd::Surgeon);
    CHECK(c.state.seatings.back().position() == 4);
    CHECK(current_step(c.state)->id == "ink");
}

TEST_CASE("the ring is off only when suction is: a cut that is done waits for it") {
    Case c = cutting_case();
    c.count(11);
    REQUIRE(c.does(EndCut{.how = CutEnd::AtPlan}));
    CHECK(current_step(c.state)->id == "suction-off");
    REQUIRE(c.does(TurnSuction{.to = Suction::Off}));
    CHECK(current_step(c.state)->id == "ink");
}

TEST_CASE("no suction without a plan") {
    Brief brief = sample::brief();
    std::erase_if(brief.procedure.phases.front().steps, [](const Step& step) { return step.closes == Closes::Plan; });
    Case c(brief);
    c.up_to("suction-on");
    CHECK_FALSE(c.does(TurnSuction{.to = Suction::On}));
    CHECK(c.refusal.why == Refused::NoPlan);
}

TEST_CASE("a new plan stands for itself: what the surgeon had added to the old one is not added again") {
    Case c = cutting_case();
    REQUIRE(c.does(GoDeeper{}));
    REQUIRE(c.does(AcceptPlan{.inputs = sample::inputs(), .plan = sample::plan(), .why = "back to the plan"}));
    CHECK(blade(c.state).planned == 8);
}

TEST_CASE("suction taken for lost by mistake: the tap is undone, the same seating and its clock go on") {
    Case c = cutting_case();
    c.count(8);
    const auto before = clock_reading(c.state, "suction", c.now)->ms;
    REQUIRE(c.does(TurnSuction{.to = Suction::Lost}));
    c.later(9);
    REQUIRE(c.does(UndoTap{}));
    CHECK(c.state.suction == Suction::On);
    CHECK(open_departures(c.state).empty());
    CHECK(clock_reading(c.state, "suction", c.now)->ms == before + 11'000);
    c.count(1);
    CHECK(blade(c.state).position == 6);
    CHECK(blade(c.state).reliable);
    CHECK(c.state.reasons_owed.empty());
}

TEST_CASE("a cut ended by a mistaken tap goes on while suction holds, with the same count") {
    Case c = cutting_case();
    c.count(6);
    REQUIRE(c.does(EndCut{.how = CutEnd::Entered}));
    CHECK(current_step(c.state)->id == "suction-off");
    REQUIRE(c.does(UndoTap{}));
    CHECK(current_step(c.state)->id == "lower");
    CHECK_FALSE(eye_entered(c.state));  // it was never decompressed, and nothing went otherwise
    CHECK(c.state.departures.empty());
    c.count(1);
    CHECK(blade(c.state).position == 4);
    REQUIRE(c.does(EndCut{.how = CutEnd::AtPlan}));
    REQUIRE(c.does(TurnSuction{.to = Suction::Off}));
    CHECK_FALSE(c.does(UndoTap{}));
    CHECK(c.refusal.why == Refused::NothingToUndo);
}

TEST_CASE("an undo while the blade can turn never takes back a count of things [H-07]") {
    Case c = cutting_case();
    c.count(2);
    REQUIRE(c.does(MoveItems{.item = "needles", .by = 1}));
    const int needles = c.state.counts.at("needles").expected();
    REQUIRE(c.does(UndoTap{}));
    CHECK(c.state.counts.at("needles").expected() == needles);
    CHECK(blade(c.state).spokes_turned == 1);
    REQUIRE(c.does(UndoTap{}));
    CHECK_FALSE(c.does(UndoTap{}));
    CHECK(c.refusal.why == Refused::NothingToUndo);
    CHECK(c.state.counts.at("needles").expected() == needles);
}

TEST_CASE("a ring that does not drop into the groove again: the cut is finished by hand from any step of the new seating") {
    for (const std::string step : {"zero", "raise", "seat", "suction-on"}) {
        CAPTURE(step);
        Case c = cutting_case();
        c.count(8);
        REQUIRE(c.does(TurnSuction{.to = Suction::Lost}));
        REQUIRE(c.does(ReopenStep{.step = "zero", .why = "to be seated again"}));
        c.up_to(step);
        REQUIRE(c.does(EndCut{.how = CutEnd::Surgeon}));
        CHECK(current_step(c.state)->id == "ink");
        CHECK(c.state.seatings.size() == 1);
        CHECK(c.state.seatings.back().position() == 5);
        CHECK(open_departures(c.state).empty());
    }
}

TEST_CASE("undo after a mistaken 'deeper' takes back the deeper, not a spoke that was turned") {
    Case c = cutting_case();
    c.count(5);
    REQUIRE(c.does(GoDeeper{}));
    CHECK(blade(c.state).planned == 9);
    REQUIRE(c.does(UndoTap{}));
    CHECK(blade(c.state).planned == 8);
    CHECK(blade(c.state).position == 2);
    REQUIRE(c.does(UndoTap{}));
    CHECK(blade(c.state).position == 1);
}

TEST_CASE("of two moves of the plan the one that is named is taken back, and the list keeps the other") {
    Case c = cutting_case();
    REQUIRE(c.does(GoDeeper{}));
    const Seq first = c.state.last;
    c.later(20);
    REQUIRE(c.does(GoDeeper{}));
    const Seq second = c.state.last;
    REQUIRE(c.does(UndoTap{.event = first}));
    CHECK(blade(c.state).planned == 9);
    REQUIRE(c.state.plans_moved.size() == 1);
    CHECK(c.state.plans_moved.front().seq == second);
}

TEST_CASE("a cut that ends with spokes to go did not end at the plan") {
    Case c = cutting_case();
    c.count(5);
    REQUIRE(c.does(EndCut{.how = CutEnd::AtPlan}));
    CHECK(c.state.seatings.back().ended == CutEnd::Surgeon);
}
