// What went otherwise and its way back: what is replaced is set, made and looked at again. Common practice, no source.
#include "support/sample.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace guide;
using sample::Case;

namespace {

/// The small procedure with two ways back that open steps again: the trephine's, and the donor's.
Case with_replacements() {
    Brief brief = sample::brief();
    brief.procedure.phases[1].steps[0].starts = {"donor-out"};
    brief.procedure.departures.push_back({.id = "instrument-replaced", .title = "Replaced", .back = "Checked", .reopens = {"zero"}});
    brief.procedure.departures.push_back(
        {.id = "donor-lost", .title = "Donor lost", .back = "Back-up is here", .reopens = {"punch", "donor-good", "seat"}});
    brief.procedure.departures.push_back({.id = "abandoned", .title = "Abandoned", .back = "On after all"});
    return Case(brief);
}

void away_and_back(Case& c, const DepartureId& what) {
    REQUIRE(c.does(Depart{.what = what, .note = ""}));
    REQUIRE(c.does(ComeBack{.what = what}));
}

int facts_of(const Case& c, const auto& is) {
    return static_cast<int>(std::count_if(c.events.begin(), c.events.end(), [&](const Event& event) { return is(event.fact); }));
}

bool opened_again(const Fact& fact) { return std::holds_alternative<StepReopened>(fact); }

}  // namespace

TEST_CASE("an instrument replaced before suction: zero is set again, then raised and seated, before suction is taken [H-03]") {
    Case c = with_replacements();
    c.up_to("suction-on");
    away_and_back(c, "instrument-replaced");
    CHECK(current_step(c.state)->id == "zero");
    CHECK(c.state.steps.contains("mark-centre"));
    CHECK_FALSE(c.does(TurnSuction{.to = Suction::On}));
    CHECK(c.refusal.why == Refused::NotZeroed);
    CHECK_FALSE(c.does(CountSpoke{.source = Source::Table}));
    REQUIRE(c.does(FinishStep{.step = "zero"}));
    CHECK_FALSE(c.does(TurnSuction{.to = Suction::On}));
    CHECK(c.refusal.why == Refused::NotRaised);
    c.up_to("suction-on");
    CHECK(c.does(TurnSuction{.to = Suction::On}));
}

TEST_CASE("nothing is opened again that was not done, nor once the ring holds the eye") {
    for (const StepId step : {"time-out", "zero", "lower", "suction-off", "ink", "cardinals"}) {
        CAPTURE(step);
        Case c = with_replacements();
        c.up_to(step);
        const auto done = c.state.steps;
        away_and_back(c, "instrument-replaced");
        CHECK(c.state.steps == done);
        CHECK(facts_of(c, opened_again) == 0);
    }
}

TEST_CASE("a donor lost before the cut: the back-up is punched and looked at before the ring is seated and suction taken [H-02]") {
    Case c = with_replacements();
    c.up_to("suction-on");
    REQUIRE(clock_running(c.state, "donor-out"));
    away_and_back(c, "donor-lost");
    CHECK(current_step(c.state)->id == "punch");
    CHECK_FALSE(clock_running(c.state, "donor-out"));
    for (const StepId gone : {"punch", "donor-good", "seat"}) CHECK_FALSE(c.state.steps.contains(gone));
    for (const StepId kept : {"mark-centre", "zero", "raise"}) CHECK(c.state.steps.contains(kept));
    CHECK_FALSE(c.does(TurnSuction{.to = Suction::On}));
    REQUIRE(c.does(FinishStep{.step = "punch"}));
    CHECK(clock_running(c.state, "donor-out"));
    c.up_to("suction-on");
    CHECK(c.does(TurnSuction{.to = Suction::On}));
}

TEST_CASE("the time in which the back-up is made is the donor's phase again, not the host's") {
    Case c = with_replacements();
    c.up_to("seat");
    REQUIRE(clock_running(c.state, "host"));
    away_and_back(c, "donor-lost");
    CHECK(clock_running(c.state, "donor"));
    CHECK_FALSE(clock_running(c.state, "host"));
    c.up_to("seat");
    CHECK(clock_running(c.state, "host"));
    CHECK_FALSE(clock_running(c.state, "donor"));
}

TEST_CASE("while something is being replaced no suction is taken, and the refusal says what stands; the case can be abandoned [H-02]") {
    Case c = with_replacements();
    c.up_to("suction-on");
    REQUIRE(c.does(Depart{.what = "donor-lost", .note = ""}));
    for (const Intent& intent : {Intent{TurnSuction{.to = Suction::On}}, Intent{CountSpoke{.source = Source::Table}}}) {
        CHECK_FALSE(c.does(intent));
        CHECK(c.refusal == Refusal{.why = Refused::DepartureOpen, .values = {"Donor lost", "Back-up is here"}});
    }
    CHECK(c.state.suction == Suction::Off);
    REQUIRE(c.does(Depart{.what = "abandoned", .note = ""}));
    CHECK_FALSE(c.does(TurnSuction{.to = Suction::On}));
    CHECK(c.does(CloseCase{.how = CaseEnd::Abandoned, .why = "no back-up"}));
}

TEST_CASE("a departure whose way back opens nothing again shuts no gate") {
    Case c = with_replacements();
    c.up_to("suction-on");
    REQUIRE(c.does(Depart{.what = "eye-bulging", .note = ""}));
    CHECK(c.does(TurnSuction{.to = Suction::On}));
}

TEST_CASE("a needle that went missing after the final count is counted with the others, and the sign out waits for it") {
    Brief brief = sample::brief();
    brief.procedure.departures.push_back({.id = "needle-lost", .title = "Needle lost", .back = "Found", .reopens = {"final-count"}});
    Case c(brief);
    for (const bool counted_since : {false, true}) {
        CAPTURE(counted_since);
        c.up_to("lock");
        REQUIRE(confirmed(c.state, "sign-out"));
        if (counted_since) {
            for (const CountItem& item : c.state.brief.unit.counts) {
                for (const std::string by : {"scrub nurse", "circulating nurse"})
                    REQUIRE(c.does(CheckCount{.item = item.id, .seen = c.state.counts.at(item.id).expected(), .by = by}));
            }
        }
        away_and_back(c, "needle-lost");
        CHECK(current_step(c.state)->id == "final-count");
        CHECK_FALSE(confirmed(c.state, "sign-out"));
        CHECK_FALSE(counts_agree(c.state));
    }
}

TEST_CASE("a departure that opens a count again shuts no gate before suction") {
    Brief brief = sample::brief();
    brief.procedure.departures.push_back({.id = "needle-lost", .title = "Needle lost", .back = "Found", .reopens = {"final-count"}});
    Case c(brief);
    c.up_to("suction-on");
    REQUIRE(c.does(Depart{.what = "needle-lost", .note = ""}));
    CHECK(c.does(TurnSuction{.to = Suction::On}));
}

TEST_CASE("a spoke that is turned while something stands open counts; a new seating waits for it") {
    Case c = with_replacements();
    c.up_to("lower");
    REQUIRE(c.does(Depart{.what = "instrument-replaced", .note = ""}));
    c.count(5);
    REQUIRE(c.does(TurnSuction{.to = Suction::Lost}));
    REQUIRE(c.does(ReopenStep{.step = "zero", .why = "seated again"}));
    c.up_to("suction-on");
    CHECK_FALSE(c.does(TurnSuction{.to = Suction::On}));
    CHECK(c.refusal.why == Refused::DepartureOpen);
    REQUIRE(c.does(ComeBack{.what = "instrument-replaced"}));
    CHECK(current_step(c.state)->id == "zero");
    c.up_to("suction-on");
    CHECK(c.does(TurnSuction{.to = Suction::On}));
}

TEST_CASE("no tap that is undone brings back what was replaced") {
    Case c = with_replacements();
    REQUIRE(c.does(MoveItems{.item = "needles", .by = 1}));
    c.up_to("suction-on");
    away_and_back(c, "donor-lost");
    const auto done = c.state.steps;
    REQUIRE(c.does(UndoTap{}));
    CHECK(c.state.steps == done);
    CHECK(fold(c.events) == c.state);
}

TEST_CASE("a departure told by mistake is taken back by its number, and leaves blade, clocks, counts and steps as they were") {
    Case c = with_replacements();
    c.up_to("lower");
    c.count(5);
    REQUIRE(c.does(MoveItems{.item = "needles", .by = 1}));
    const CaseState before = c.state;
    REQUIRE(c.does(Depart{.what = "instrument-replaced", .note = ""}));
    REQUIRE(c.does(UndoTap{.event = c.state.departures.back().seq}));
    CHECK(c.state.departures.empty());
    CHECK(c.state.seatings == before.seatings);
    CHECK(c.state.clocks == before.clocks);
    CHECK(c.state.counts == before.counts);
    CHECK(c.state.steps == before.steps);
    CHECK(c.state.undoable == before.undoable);
    CHECK(c.state == fold(c.events));
}

TEST_CASE("of two that stand open the one that is named is taken back; one that is come back from stays in the record") {
    Case c = with_replacements();
    c.up_to("suction-on");
    REQUIRE(c.does(Depart{.what = "donor-lost", .note = ""}));
    REQUIRE(c.does(Depart{.what = "abandoned", .note = ""}));
    const Seq first = c.state.departures[0].seq;
    REQUIRE(c.does(UndoTap{.event = first}));
    REQUIRE(c.state.departures.size() == 1);
    CHECK(c.state.departures[0].what == "abandoned");
    CHECK_FALSE(c.does(UndoTap{.event = first}));
    CHECK(c.refusal.why == Refused::NothingToUndo);
    REQUIRE(c.does(ComeBack{.what = "abandoned"}));
    CHECK_FALSE(c.does(UndoTap{.event = c.state.departures[0].seq}));
    CHECK(c.state.departures.size() == 1);
}

TEST_CASE("an undo without a number goes back a tap of the blade or a suture, and never a departure") {
    Case c = with_replacements();
    c.up_to("lower");
    c.count(5);
    REQUIRE(c.does(Depart{.what = "eye-bulging", .note = ""}));
    REQUIRE(c.does(UndoTap{}));
    CHECK(blade(c.state).spokes_turned == 4);
    CHECK(c.state.departures.size() == 1);
}

TEST_CASE("what happened to the blade is taken back by the blade's own undo, not by that of its departure") {
    Case lost = with_replacements();
    lost.up_to("lower");
    lost.count(4);
    REQUIRE(lost.does(TurnSuction{.to = Suction::Lost}));
    REQUIRE(lost.state.departures.size() == 1);
    CHECK_FALSE(lost.does(UndoTap{.event = lost.state.departures[0].seq}));
    CHECK(lost.refusal.why == Refused::NothingToUndo);
    CHECK(lost.state.suction == Suction::Lost);

    Case entered = with_replacements();
    entered.up_to("lower");
    entered.count(4);
    REQUIRE(entered.does(EndCut{.how = CutEnd::Entered}));
    REQUIRE(entered.state.departures.size() == 1);
    CHECK_FALSE(entered.does(UndoTap{.event = entered.state.departures[0].seq}));
    CHECK(eye_entered(entered.state));
}
