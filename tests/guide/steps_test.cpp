// Steps, gates, pauses, the end of a case. Rules: common practice, no source, unless a line names one.
#include "support/sample.hpp"

#include <doctest/doctest.h>

using namespace guide;
using sample::Case;

// A typed side, not a ticked one: in one eye unit's 4113 operations 13 wrong sides were caught at the team pause
// (evidence from a conference paper; the rule is the project's).
TEST_CASE("the side is entered from the consent and must be the plan's") {
    Case c;
    c.up_to("side");
    CHECK_FALSE(c.does(FinishStep{.step = "side"}));
    CHECK_FALSE(c.does(EnterSide{.side = "left"}));
    CHECK(c.refusal.why == Refused::SideDiffers);
    CHECK(current_step(c.state)->id == "side");
    CHECK(c.does(EnterSide{.side = "right"}));
    CHECK(current_step(c.state)->id == "sign-in");
}

TEST_CASE("steps are done in their order, once") {
    Case c;
    CHECK_FALSE(c.does(FinishStep{.step = "sign-in"}));
    CHECK(c.refusal == Refusal{.why = Refused::WrongStep, .values = {"Tissue in the building"}});
    CHECK(c.does(FinishStep{.step = "tissue-here"}));
    CHECK_FALSE(c.does(FinishStep{.step = "tissue-here"}));
    CHECK(c.refusal.why == Refused::AlreadyDone);
    CHECK_FALSE(c.does(FinishStep{.step = "no-such-step"}));
    CHECK(c.refusal.why == Refused::UnknownId);
}

TEST_CASE("nothing touches the host before the donor is good") {
    Case c;
    c.up_to("donor-good");
    REQUIRE(c.does(SkipStep{.step = "donor-good", .why = "test"}));
    CHECK_FALSE(c.does(FinishStep{.step = "mark-centre"}));
    CHECK(c.refusal == Refusal{.why = Refused::GateShut, .values = {"Donor good"}});
}

TEST_CASE("the anaesthetist's word is a gate and cannot be skipped") {
    Case c;
    c.up_to("ready-to-open");
    CHECK_FALSE(c.does(SkipStep{.step = "ready-to-open", .why = "in a hurry"}));
    CHECK(c.refusal.why == Refused::GateShut);
}

TEST_CASE("a step is skipped or opened again only with a reason") {
    Case c;
    CHECK_FALSE(c.does(SkipStep{.step = "tissue-here", .why = ""}));
    CHECK(c.refusal.why == Refused::NeedsReason);
    REQUIRE(c.does(SkipStep{.step = "tissue-here", .why = "second donor used"}));
    CHECK_FALSE(confirmed(c.state, "tissue-here"));
    CHECK_FALSE(c.does(ReopenStep{.step = "tissue-here", .why = ""}));
    CHECK(c.does(ReopenStep{.step = "tissue-here", .why = "looked again"}));
    CHECK(current_step(c.state)->id == "tissue-here");
}

TEST_CASE("a plan without a target is never accepted, nor one for the other eye") {
    Case c;
    plan::Plan refused = sample::plan();
    refused.target.reset();
    CHECK_FALSE(c.does(AcceptPlan{.inputs = sample::inputs(), .plan = refused}));
    CHECK(c.refusal.why == Refused::PlanRefused);
    plan::Inputs other = sample::inputs();
    other.file.side = eye::Side::Left;
    CHECK_FALSE(c.does(AcceptPlan{.inputs = other, .plan = sample::plan()}));
    CHECK(c.refusal.why == Refused::SideDiffers);
}

TEST_CASE("a plan agreed early closes its step when the step comes") {
    Case c;
    REQUIRE(c.does(AcceptPlan{.inputs = sample::inputs(), .plan = sample::plan()}));
    c.up_to("time-out");
    CHECK(confirmed(c.state, "agree-plan"));
}

TEST_CASE("the sign out waits for an owed reason, and so does the record") {
    Case c;
    c.up_to("lower");
    c.count(12);
    REQUIRE(c.does(EndCut{.how = CutEnd::AtPlan}));
    c.up_to("sign-out");
    CHECK_FALSE(c.does(FinishStep{.step = "sign-out"}));
    CHECK(c.refusal.why == Refused::ReasonOwed);
    CHECK_FALSE(c.does(CloseCase{.how = CaseEnd::Done}));
    REQUIRE(c.does(GiveReason{.event = 0, .why = "counted late"}));
    CHECK(c.does(FinishStep{.step = "sign-out"}));
    CHECK(c.does(CloseCase{.how = CaseEnd::Done}));
}

TEST_CASE("a closed case takes nothing more and no clock runs") {
    Case c;
    c.up_to("no step of this name");
    REQUIRE(c.state.closed == CaseEnd::Done);
    CHECK_FALSE(c.does(WriteNote{.text = "too late"}));
    CHECK(c.refusal.why == Refused::CaseClosed);
    for (const auto& [clock, spells] : c.state.clocks) {
        const std::string in_question = clock;
        CAPTURE(in_question);
        CHECK_FALSE(clock_running(c.state, clock));
    }
}

TEST_CASE("a case is converted or abandoned at any time, with a reason") {
    Case c;
    c.up_to("lower");
    CHECK_FALSE(c.does(CloseCase{.how = CaseEnd::Done}));
    CHECK_FALSE(c.does(CloseCase{.how = CaseEnd::Abandoned}));
    CHECK(c.refusal.why == Refused::NeedsReason);
    CHECK(c.does(CloseCase{.how = CaseEnd::Abandoned, .why = "bleeding"}));
}

TEST_CASE("only the surgeon overrules") {
    Case c;
    REQUIRE(c.does(Scan{.bytes = "=A99991712345600"}, Who::Circulating));
    CHECK_FALSE(c.does(Overrule{.event = c.state.last, .why = "tissue bank asked"}, Who::Circulating));
    CHECK(c.refusal.why == Refused::NeedsSurgeon);
    CHECK(c.does(Overrule{.event = c.state.last, .why = "tissue bank asked"}, Who::Surgeon));
}

TEST_CASE("a departure is recorded and come back from") {
    Case c;
    c.up_to("entered");
    CHECK_FALSE(c.does(Depart{.what = "no-such-thing"}));
    REQUIRE(c.does(Depart{.what = "eye-bulging", .note = ""}));
    CHECK(open_departures(c.state).size() == 1);
    CHECK(current_step(c.state)->id == "entered");
    CHECK_FALSE(c.does(ComeBack{.what = "suction-lost"}));
    REQUIRE(c.does(ComeBack{.what = "eye-bulging"}));
    CHECK(open_departures(c.state).empty());
}

TEST_CASE("every refusal has a name for its words") {
    for (int i = 0; i <= static_cast<int>(Refused::UnknownId); ++i) CHECK_FALSE(name(static_cast<Refused>(i)).empty());
}

TEST_CASE("a step whose condition still holds is not opened again by itself") {
    Case c;
    c.up_to("time-out");
    CHECK_FALSE(c.does(ReopenStep{.step = "side", .why = "to see it again"}));
    CHECK(c.refusal.why == Refused::AlreadyDone);
}

TEST_CASE("no record is locked over an open eye") {
    Case c;
    c.up_to("cardinals");
    REQUIRE(eye_open(c.state));
    for (const CaseEnd how : {CaseEnd::Converted, CaseEnd::Abandoned}) {
        CHECK_FALSE(c.does(CloseCase{.how = how, .why = "another method"}));
        CHECK(c.refusal.why == Refused::EyeOpen);
    }
    REQUIRE(c.does(MarkClock{.clock = "open-sky", .start = false}));
    CHECK_FALSE(c.does(CloseCase{.how = CaseEnd::Converted, .why = "another method"}));
    REQUIRE(c.does(MarkClock{.clock = "decompressed", .start = false}));
    CHECK(c.does(CloseCase{.how = CaseEnd::Converted, .why = "another method"}));
}

TEST_CASE("a clock is not started more than an hour ago, nor within a spell that it has run") {
    Case c;
    c.up_to("cardinals");
    c.later(300);
    c.tie(4);
    REQUIRE_FALSE(clock_running(c.state, "open-sky"));
    const auto before = clock_reading(c.state, "open-sky", c.now)->ms;
    c.later(10);
    CHECK_FALSE(c.does(MarkClock{.clock = "open-sky", .start = true, .ago_s = 60}));
    CHECK(c.refusal.why == Refused::TimeOutOfRange);
    CHECK_FALSE(c.does(MarkClock{.clock = "donor-out", .start = true, .ago_s = 86'400}));
    REQUIRE(c.does(MarkClock{.clock = "open-sky", .start = true, .ago_s = 5}));
    CHECK(clock_reading(c.state, "open-sky", c.now)->ms == before + 5000);
}

TEST_CASE("a time is corrected to within the case only") {
    Case c;
    c.up_to("cardinals");
    const Seq event = c.state.steps.at("donor-on").seq;
    CHECK_FALSE(c.does(CorrectTime{.event = event, .utc_ms = c.now.utc_ms + 3'600'000, .why = "wrong"}));
    CHECK(c.refusal.why == Refused::TimeOutOfRange);
    CHECK_FALSE(c.does(CorrectTime{.event = event, .utc_ms = c.now.utc_ms - 86'400'000, .why = "wrong"}));
    CHECK(c.does(CorrectTime{.event = event, .utc_ms = c.now.utc_ms - 1000, .why = "tapped early"}));
}
