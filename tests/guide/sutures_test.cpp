// Sutures and the clocks that end with the fourth. Rules: common practice, no source.
#include "support/sample.hpp"

#include <doctest/doctest.h>

using namespace guide;
using sample::Case;

namespace {

Case suturing_case() {
    Case c;
    c.up_to("cardinals");
    return c;
}

}  // namespace

TEST_CASE("sutures go to their planned places in the plan's order and close the steps by their number") {
    Case c = suturing_case();
    CHECK(next_suture(c.state) == 1);
    c.tie(4);
    CHECK(c.state.sutures[1].centideg == 27000);
    CHECK(current_step(c.state)->id == "next-four");
    c.tie(4);
    CHECK(current_step(c.state)->id == "count-before-last");
    c.up_to("rest");
    c.tie(8);
    CHECK(current_step(c.state)->id == "tension");
    CHECK_FALSE(next_suture(c.state).has_value());
}

TEST_CASE("the fourth suture stops both clocks of the open eye") {
    Case c = suturing_case();
    c.tie(3);
    CHECK(clock_running(c.state, "decompressed"));
    CHECK(clock_running(c.state, "open-sky"));
    c.tie(1);
    CHECK_FALSE(clock_running(c.state, "decompressed"));
    CHECK_FALSE(clock_running(c.state, "open-sky"));
}

TEST_CASE("a suture on another mark is recorded where it went; a taken mark is refused") {
    Case c = suturing_case();
    c.tie(1);
    REQUIRE(c.does(TieSuture{.n = 2, .centideg = 24750}));
    CHECK(find_tied(c.state, 2)->centideg == 24750);
    CHECK_FALSE(c.does(TieSuture{.n = 3, .centideg = 24770}));
    CHECK(c.refusal.why == Refused::MarkTaken);
    CHECK_FALSE(c.does(TieSuture{.n = 2, .centideg = 18000}));
    CHECK(c.refusal.why == Refused::AlreadyDone);
}

TEST_CASE("a suture is redone: out with a reason, then in again, and the record says how often") {
    Case c = suturing_case();
    c.tie(6);
    CHECK_FALSE(c.does(CutSuture{.n = 2, .why = ""}));
    CHECK_FALSE(c.does(CutSuture{.n = 9, .why = "loose"}));
    REQUIRE(c.does(CutSuture{.n = 2, .why = "loose"}));
    CHECK(next_suture(c.state) == 2);
    CHECK(current_step(c.state)->id == "next-four");
    CHECK_FALSE(clock_running(c.state, "open-sky"));
    REQUIRE(c.does(TieSuture{.n = 2}));
    CHECK(find_tied(c.state, 2)->redone == 1);
}

TEST_CASE("a cardinal that breaks with four tied starts a second spell of the open-eye clocks") {
    Case c = suturing_case();
    c.tie(4);
    c.later(120);
    REQUIRE(c.does(CutSuture{.n = 1, .why = "broke"}));
    CHECK(current_step(c.state)->id == "cardinals");
    CHECK(c.state.clocks.at("open-sky").size() == 2);
    CHECK(clock_running(c.state, "open-sky"));
    REQUIRE(c.does(TieSuture{.n = 1}));
    CHECK_FALSE(clock_running(c.state, "open-sky"));
}

TEST_CASE("undoing the tap of the fourth suture lets the clocks run on as if they had never stopped") {
    Case c = suturing_case();
    c.tie(3);
    const auto before = clock_reading(c.state, "open-sky", c.now)->ms;
    c.tie(1);
    c.later(29);
    REQUIRE(c.does(UndoTap{}));
    CHECK(c.state.sutures.size() == 3);
    CHECK(current_step(c.state)->id == "cardinals");
    CHECK(clock_reading(c.state, "open-sky", c.now)->ms == before + 31'000);
}

// Before the last suture, not after it: perioperative nurses' recommended practice 2006.
TEST_CASE("a pattern of eight needs no more than eight, and the count comes before the eighth") {
    Case c;
    c.up_to("agree-plan");
    plan::Plan eight = sample::plan();
    eight.order.resize(8);
    REQUIRE(c.does(AcceptPlan{.inputs = sample::inputs(), .plan = eight}));
    c.up_to("count-before-last");
    CHECK(c.state.sutures.size() == 7);
    c.up_to("tension");
    CHECK(c.state.sutures.size() == 8);
    CHECK(confirmed(c.state, "rest"));
}

TEST_CASE("an added suture beyond the pattern says where it went") {
    Case c;
    c.up_to("leak-test");
    CHECK_FALSE(c.does(TieSuture{}));
    REQUIRE(c.does(TieSuture{.n = 0, .centideg = 1000}));
    CHECK(c.state.sutures.back().n == 17);
}

TEST_CASE("no suture before the cut is made") {
    Case c;
    c.up_to("zero");
    CHECK_FALSE(c.does(TieSuture{}));
    CHECK(c.refusal.why == Refused::WrongStep);
}

TEST_CASE("the step of the running suture is there only with one in the pattern") {
    Case c;
    c.up_to("agree-plan");
    plan::Inputs inputs = sample::inputs();
    inputs.file.pattern = {.interrupted = 16, .loops = 16, .running = 1};
    REQUIRE(c.does(AcceptPlan{.inputs = inputs, .plan = sample::plan()}));
    c.up_to("running");
    CHECK(current_step(c.state)->id == "running");
    Case without;
    without.up_to("running");
    CHECK(without.state.closed.has_value());
}

TEST_CASE("a ring reflection seen before its step does not close it") {
    Case c = suturing_case();
    REQUIRE(c.does(SeeRing{.long_axis_centideg = 9000}));
    c.up_to("tension");
    CHECK(current_step(c.state)->id == "tension");
    REQUIRE(c.does(SeeRing{}));
    CHECK(current_step(c.state)->id == "leak-test");
    CHECK_FALSE(c.state.ring->long_axis_centideg.has_value());
}

TEST_CASE("four sutures are all cardinals: the clocks stop with the fourth") {
    Case c;
    c.up_to("agree-plan");
    plan::Plan four = sample::plan();
    four.order.resize(4);
    REQUIRE(c.does(AcceptPlan{.inputs = c.state.inputs, .plan = four, .why = ""}));
    c.up_to("cardinals");
    c.tie(3);
    CHECK(clock_running(c.state, "open-sky"));
    c.tie(1);
    CHECK_FALSE(clock_running(c.state, "open-sky"));
}

namespace {

/// A step after the ring reflection in its phase.
Case with_knots() {
    Brief brief = sample::brief();
    brief.procedure.phases[4].steps.push_back({.id = "knots", .title = "Bury the knots"});
    return Case(brief);
}

}  // namespace

TEST_CASE("a ring reflection told by mistake is taken back by its number: its step is open again and what was seen before holds") {
    Case c = with_knots();
    c.up_to("tension");
    REQUIRE(c.does(SeeRing{}));
    REQUIRE(c.state.steps.contains("tension"));
    const auto clocks = c.state.clocks;
    const auto sutures = c.state.sutures;
    REQUIRE(ring_to_take_back(c.state) == c.state.ring_seq);
    REQUIRE(c.does(UndoTap{.event = c.state.ring_seq}));
    CHECK_FALSE(c.state.ring);
    CHECK(current_step(c.state)->id == "tension");
    CHECK(c.state.clocks == clocks);
    CHECK(c.state.sutures == sutures);

    REQUIRE(c.does(SeeRing{.long_axis_centideg = 4500}));
    REQUIRE(c.does(ReopenStep{.step = "tension", .why = "looked at again"}));
    REQUIRE(c.does(SeeRing{}));
    REQUIRE(c.does(UndoTap{.event = c.state.ring_seq}));
    REQUIRE(c.state.ring);
    CHECK(c.state.ring->long_axis_centideg == 4500);
    CHECK(current_step(c.state)->id == "tension");
    CHECK(c.state == fold(c.events));
}

TEST_CASE("once the guide has gone on past the ring reflection it is taken back no more, and a nameless undo never does it") {
    Case c = with_knots();
    c.up_to("tension");
    REQUIRE(c.does(SeeRing{}));
    const Seq seen = c.state.ring_seq;
    const auto tied = c.state.sutures.size();
    REQUIRE(c.does(UndoTap{}));
    CHECK(c.state.ring);
    CHECK(c.state.sutures.size() == tied - 1);
    c.up_to("sign-out");
    CHECK(ring_to_take_back(c.state) == 0);
    CHECK_FALSE(c.does(UndoTap{.event = seen}));
    CHECK(c.refusal.why == Refused::NothingToUndo);
}
