// Counts: expected = opened + added - passed back; correct only by two named confirmations at each gate.
// Source: perioperative nurses' recommended practice 2006 (when and by whom), the form is the project's.
#include "support/sample.hpp"

#include <doctest/doctest.h>

using namespace guide;
using sample::Case;

namespace {

Case at_opening_count() {
    Case c;
    c.up_to("opening-count");
    return c;
}

CheckCount check(int seen, std::string by) { return {.item = "needles", .seen = seen, .by = std::move(by)}; }

}  // namespace

TEST_CASE("a gate of counts closes when two people have seen what is expected") {
    Case c = at_opening_count();
    REQUIRE(c.does(MoveItems{.item = "needles", .by = 4}));
    REQUIRE(c.does(check(4, "AB")));
    CHECK(current_step(c.state)->id == "opening-count");
    CHECK_FALSE(c.does(check(4, "AB")));
    CHECK(c.refusal.why == Refused::NeedsSecondPerson);
    REQUIRE(c.does(check(4, "CD")));
    CHECK(current_step(c.state)->id == "agree-plan");
}

TEST_CASE("a difference keeps the gate shut until it is recounted; an excess is a difference too") {
    Case c = at_opening_count();
    REQUIRE(c.does(MoveItems{.item = "needles", .by = 4}));
    REQUIRE(c.does(check(5, "AB")));
    REQUIRE(c.does(check(4, "CD")));
    REQUIRE(c.does(check(4, "EF")));
    CHECK(current_step(c.state)->id == "opening-count");
    CHECK_FALSE(c.does(FinishStep{.step = "opening-count"}));
    CHECK(c.refusal.why == Refused::CountDiffers);
    REQUIRE(c.does(check(4, "AB")));
    CHECK(current_step(c.state)->id == "agree-plan");
    CHECK(c.state.counts.at("needles").checks.size() == 4);
}

TEST_CASE("a needle opened after a check makes the check void") {
    Case c = at_opening_count();
    REQUIRE(c.does(MoveItems{.item = "needles", .by = 4}));
    REQUIRE(c.does(check(4, "AB")));
    REQUIRE(c.does(MoveItems{.item = "needles", .by = 1}));
    CHECK_FALSE(check_that_holds(c.state, "needles", "AB").has_value());
    REQUIRE(c.does(check(5, "CD")));
    CHECK(current_step(c.state)->id == "opening-count");
    REQUIRE(c.does(check(5, "AB")));
    CHECK(current_step(c.state)->id == "agree-plan");
}

TEST_CASE("a count between the gates does not close the next gate") {
    Case c = at_opening_count();
    c.up_to("next-four");
    REQUIRE(c.does(check(0, "AB")));
    REQUIRE(c.does(check(0, "CD")));
    c.up_to("count-before-last");
    CHECK(current_step(c.state)->id == "count-before-last");
}

TEST_CASE("no more can be passed back than was opened, and only what is counted") {
    Case c = at_opening_count();
    REQUIRE(c.does(MoveItems{.item = "needles", .by = 2}));
    CHECK_FALSE(c.does(MoveItems{.item = "needles", .by = -3}));
    CHECK(c.refusal.why == Refused::CountDiffers);
    CHECK_FALSE(c.does(MoveItems{.item = "forks", .by = 1}));
    CHECK(c.refusal.why == Refused::UnknownId);
    REQUIRE(c.does(MoveItems{.item = "needles", .by = -1}));
    CHECK(c.state.counts.at("needles").opened == 2);
    CHECK(c.state.counts.at("needles").passed_back == 1);
    REQUIRE(c.does(UndoTap{}));
    CHECK(c.state.counts.at("needles").expected() == 2);
}

// Resolved or recorded: what a count that differs may lead to (perioperative nurses' recommended practice 2006).
TEST_CASE("a difference that two people see can be recorded, and only then the gate opens without agreement [H-13]") {
    Case c = at_opening_count();
    const RecordDifference record{.item = "needles", .why = "searched, not found"};
    REQUIRE(c.does(MoveItems{.item = "needles", .by = 4}));
    CHECK_FALSE(c.does(record));
    CHECK(c.refusal.why == Refused::NoDifference);

    REQUIRE(c.does(check(3, "AB")));
    CHECK(difference(c.state, "needles") == Difference{.seen = 3, .expected = 4, .by = {{"ab", "AB"}}, .disputed = false});
    CHECK_FALSE(c.does(record));
    CHECK(c.refusal.why == Refused::NeedsSecondPerson);

    REQUIRE(c.does(check(4, "CD")));
    CHECK(difference(c.state, "needles")->disputed);
    CHECK_FALSE(c.does(record));
    CHECK(c.refusal.why == Refused::NeedsSecondPerson);

    REQUIRE(c.does(check(3, "CD")));
    CHECK_FALSE(c.does(RecordDifference{.item = "needles", .why = ""}));
    CHECK(c.refusal.why == Refused::NeedsReason);
    CHECK_FALSE(c.does(RecordDifference{.item = "forks", .why = "why"}));
    CHECK(current_step(c.state)->id == "opening-count");
    REQUIRE(c.does(record));
    CHECK(current_step(c.state)->id == "agree-plan");
    CHECK(c.state.counts.at("needles").differences.back().said ==
          DifferenceRecorded{.item = "needles", .seen = 3, .expected = 4, .why = "searched, not found"});
}

TEST_CASE("a recorded difference holds for its own gate only: the next count asks again") {
    Case c = at_opening_count();
    REQUIRE(c.does(MoveItems{.item = "needles", .by = 4}));
    for (const char* by : {"AB", "CD"}) REQUIRE(c.does(check(5, by)));
    REQUIRE(c.does(RecordDifference{.item = "needles", .why = "the pack held one more"}));
    c.up_to("count-before-last");
    CHECK(recorded_difference(c.state, "needles") == nullptr);
    CHECK(current_step(c.state)->id == "count-before-last");
}

TEST_CASE("a capital with an accent is the same letter; what is no letter is not turned into one [H-13]") {
    CHECK(same_person("ÄÖÜ") == same_person("äöü"));
    CHECK(same_person("ÉÞ") == same_person("éþ"));
    CHECK(same_person("×") != same_person("÷"));
    CHECK(same_person("ß") != same_person("Ä"));
}

TEST_CASE("a capital or a blank does not make a second person [H-13]") {
    Case c = at_opening_count();
    REQUIRE(c.does(MoveItems{.item = "needles", .by = 4}));
    REQUIRE(c.does(check(4, "EM")));
    for (const char* same : {"em", " EM", "Em ", "eM"}) {
        CHECK_FALSE(c.does(check(4, same)));
        CHECK(c.refusal.why == Refused::NeedsSecondPerson);
    }
    CHECK_FALSE(c.does(check(4, " ")));
    CHECK(current_step(c.state)->id == "opening-count");
    REQUIRE(c.does(check(4, "EN")));
    CHECK(current_step(c.state)->id == "agree-plan");
}
