// Times that a person may correct, and how far. That a clock stops after it started is all there is to know, no source.
#include "guide/timed.hpp"

#include "support/sample.hpp"

#include <doctest/doctest.h>

using namespace guide;
using sample::Case;

namespace {

CorrectTime to(Seq event, std::int64_t utc_ms) { return {.event = event, .utc_ms = utc_ms, .why = "tapped late"}; }

}  // namespace

TEST_CASE("steps, both ends of each clock and sutures have a time, the newest first, each event once") {
    Case c;
    c.up_to("cardinals");
    c.tie(1);
    const auto all = timed(c.state);
    REQUIRE_FALSE(all.empty());
    CHECK(all.front() == Timed{.is = Timed::Is::Suture, .n = 1, .seq = c.state.last, .at = c.now, .tapped = c.now});
    for (std::size_t i = 1; i < all.size(); ++i) CHECK(all[i - 1].seq > all[i].seq);
    CHECK(find_timed(c.state, c.state.clocks.at("suction").back().to_seq)->is == Timed::Is::ClockOff);
    CHECK(find_timed(c.state, c.state.clocks.at("suction").back().from_seq)->is == Timed::Is::ClockOn);
    CHECK(find_timed(c.state, c.state.steps.at("entered").seq)->id == "entered");
    CHECK_FALSE(find_timed(c.state, 1));
}

TEST_CASE("a corrected start or stop moves its clock's reading by as much, and nothing else") {
    Case c;
    c.up_to("suction-on");
    c.later(10);
    c.up_to("cardinals");
    const Spell spell = c.state.clocks.at("suction").back();
    REQUIRE(spell.to);
    const auto seconds = [&](const ClockId& clock) { return clock_reading(c.state, clock, c.now)->ms / 1000; };
    const std::int64_t suction = seconds("suction"), decompressed = seconds("decompressed");
    REQUIRE(c.does(to(spell.from_seq, spell.from.utc_ms - 2000)));
    CHECK(seconds("suction") == suction + 2);
    REQUIRE(c.does(to(spell.to_seq, spell.to->utc_ms - 1000)));
    CHECK(seconds("suction") == suction + 1);
    CHECK(seconds("decompressed") == decompressed + 2);  // two corrections of a second each have gone by
    REQUIRE(c.does(to(spell.from_seq, spell.from.utc_ms)));
    CHECK(seconds("suction") == suction - 1);
}

TEST_CASE("a corrected step and a corrected suture bear the new time; what was written first stays in the ledger") {
    Case c;
    c.up_to("cardinals");
    c.tie(1);
    c.later(30);
    const Tied tied = c.state.sutures.back();
    REQUIRE(c.does(to(tied.seq, tied.at.utc_ms + 10'000)));
    CHECK(c.state.sutures.back().at.utc_ms == tied.at.utc_ms + 10'000);
    CHECK(c.state.sutures.back().at.boottime_ms == tied.at.boottime_ms + 10'000);
    const StepDone done = c.state.steps.at("button-out");
    REQUIRE(c.does(to(done.seq, done.at.utc_ms - 500)));
    CHECK(c.state.steps.at("button-out").at.utc_ms == done.at.utc_ms - 500);
    for (const Event& event : c.events)
        if (event.seq == tied.seq) CHECK(event.at.utc_ms == tied.at.utc_ms);
    CHECK(c.state == fold(c.events));
}

TEST_CASE("what one tap wrote is corrected as one, from whichever end; what another tap wrote at the same corrected time is not") {
    Case c;
    c.up_to("button-out");
    c.later(60);
    const auto seconds = [&](const ClockId& clock) { return clock_reading(c.state, clock, c.now)->ms / 1000; };
    REQUIRE(c.does(FinishStep{.step = "button-out"}));
    c.later(60);
    const StepDone done = c.state.steps.at("button-out");
    const Spell open = c.state.clocks.at("open-sky").back();
    REQUIRE(open.from == done.at);
    const std::int64_t before = seconds("open-sky");
    REQUIRE(c.does(to(done.seq, done.at.utc_ms - 20'000)));
    CHECK(seconds("open-sky") == before + 21);  // the correction took a second
    CHECK(c.state.steps.at("button-out").at.utc_ms == done.at.utc_ms - 20'000);
    REQUIRE(c.does(to(open.from_seq, done.at.utc_ms - 5'000)));
    CHECK(c.state.steps.at("button-out").at == c.state.clocks.at("open-sky").back().from);
    CHECK(c.state.steps.at("button-out").at.utc_ms == done.at.utc_ms - 5'000);
    const StepDone next = c.state.steps.at("entered");
    REQUIRE(c.does(to(next.seq, done.at.utc_ms - 5'000)));  // another tap, corrected to the same moment
    REQUIRE(c.does(to(next.seq, done.at.utc_ms - 9'000)));
    CHECK(c.state.steps.at("entered").at == c.state.clocks.at("decompressed").back().from);
    CHECK(c.state.steps.at("button-out").at.utc_ms == done.at.utc_ms - 5'000);
    CHECK(c.state == fold(c.events));
}

TEST_CASE("the tap that ends a phase moves its clock's end and the next one's start together, and stays between their other ends") {
    Case c;
    c.up_to("zero");
    const Spell donor = c.state.clocks.at("donor").back(), host = c.state.clocks.at("host").back();
    REQUIRE(donor.to == std::optional(host.from));
    REQUIRE(c.does(to(host.from_seq, host.from.utc_ms - 1000)));
    CHECK(c.state.clocks.at("donor").back().to == std::optional(c.state.clocks.at("host").back().from));
    CHECK_FALSE(c.does(to(host.from_seq, donor.from.utc_ms - 1)));
    CHECK(c.refusal.why == Refused::TimeOutOfRange);
}

TEST_CASE("of what one tap wrote, a moment corrected alone before stays apart, and a spell begun and ended by it moves whole") {
    Case c;
    c.up_to("donor-on");
    const auto told = [&](const Fact& fact) { c.state = apply(std::move(c.state), {.seq = c.state.last + 1, .at = c.now, .fact = fact}); };
    const StepDone done = c.state.steps.at("button-out");
    const Instant opened = c.state.clocks.at("open-sky").back().from;
    REQUIRE(opened == done.at);
    told(TimeCorrected{.event = done.seq, .utc_ms = done.at.utc_ms - 500, .why = "by an earlier release, which corrected it alone"});
    REQUIRE(c.does(to(done.seq, done.at.utc_ms - 700)));
    CHECK(c.state.steps.at("button-out").at.utc_ms == done.at.utc_ms - 700);
    CHECK(c.state.clocks.at("open-sky").back().from == opened);
    told(ClockMarked{.clock = "donor-out", .start = true});
    told(ClockMarked{.clock = "donor-out", .start = false});
    const Spell none = c.state.clocks.at("donor-out").back();
    REQUIRE(none.to == std::optional(none.from));
    REQUIRE(c.does(to(none.to_seq, none.from.utc_ms - 300)));
    CHECK(c.state.clocks.at("donor-out").back().from.utc_ms == none.from.utc_ms - 300);
    CHECK(c.state.clocks.at("donor-out").back().to == std::optional(c.state.clocks.at("donor-out").back().from));
}

TEST_CASE("the tap that began the case is not corrected past what came after it") {
    Case c;
    REQUIRE(c.does(FinishStep{.step = "tissue-here"}));
    const StepDone first = c.state.steps.at("tissue-here");
    c.later(60);
    REQUIRE(c.does(MarkClock{.clock = "donor-out", .start = true}));
    const std::int64_t second = c.now.utc_ms;
    c.later(60);
    CHECK_FALSE(c.does(to(first.seq, second + 1)));
    CHECK(c.refusal.why == Refused::TimeOutOfRange);
    REQUIRE(c.does(to(first.seq, second)));
    CHECK(c.state.clocks.at("case").back().from.utc_ms == second);
}

TEST_CASE("a start is not corrected past its stop nor into the spell before, and a stop not into the spell after") {
    Case c;
    for (const bool start : {true, false, true, false}) {
        c.later(60);
        REQUIRE(c.does(MarkClock{.clock = "donor-out", .start = start}));
    }
    const std::vector<Spell> spells = c.state.clocks.at("donor-out");
    REQUIRE(spells.size() == 2);
    const auto refused = [&](Seq event, std::int64_t utc_ms) {
        return !c.does(to(event, utc_ms)) && c.refusal.why == Refused::TimeOutOfRange;
    };
    CHECK(refused(spells[0].from_seq, spells[0].to->utc_ms + 1));
    CHECK(refused(spells[0].to_seq, spells[0].from.utc_ms - 1));
    CHECK(refused(spells[0].to_seq, spells[1].from.utc_ms + 1));
    CHECK(refused(spells[1].from_seq, spells[0].to->utc_ms - 1));
    CHECK(refused(spells[1].from_seq, spells[1].to->utc_ms + 1));
    CHECK(c.does(to(spells[0].to_seq, spells[1].from.utc_ms)));
    CHECK(c.does(to(spells[1].from_seq, spells[1].to->utc_ms)));
}

TEST_CASE("a step is not corrected past the one before it or after it, nor a suture; what one tap wrote stands in its own way never") {
    Case c;
    c.up_to("cardinals");
    c.tie(2);
    c.later(60);
    const auto refused = [&](Seq event, std::int64_t utc_ms) {
        return !c.does(to(event, utc_ms)) && c.refusal.why == Refused::TimeOutOfRange;
    };
    const StepDone entered = c.state.steps.at("entered"), out = c.state.steps.at("button-out"), on = c.state.steps.at("donor-on");
    CHECK(refused(out.seq, entered.at.utc_ms - 1));
    CHECK(refused(out.seq, on.at.utc_ms + 1));
    CHECK(c.does(to(out.seq, entered.at.utc_ms)));
    CHECK(c.does(to(out.seq, on.at.utc_ms)));
    const Tied first = c.state.sutures[0], second = c.state.sutures[1];
    CHECK(refused(second.seq, first.at.utc_ms - 1));
    CHECK(refused(first.seq, second.at.utc_ms + 1));
    CHECK(c.does(to(second.seq, first.at.utc_ms)));
}

TEST_CASE("where a step was told late, as done before the one told before it, there is no order that a correction must keep") {
    Case c;
    c.later(300);
    c.up_to("raise");
    REQUIRE(c.does(FinishStep{.step = "raise", .ago_s = 3}));
    const StepDone raised = c.state.steps.at("raise"), zero = c.state.steps.at("zero");
    REQUIRE(raised.at.utc_ms < zero.at.utc_ms);
    CHECK(c.does(to(raised.seq, raised.at.utc_ms - 1)));
    CHECK(c.does(to(raised.seq, zero.at.utc_ms + 1)));
    CHECK_FALSE(c.does(to(raised.seq, zero.at.utc_ms - 1)));
}

TEST_CASE("of what one tap wrote one moment stands in the list: the suture, else the step, else the clock") {
    Case c;
    REQUIRE(c.does(FinishStep{.step = "tissue-here"}));
    REQUIRE(timed(c.state).size() == 3);  // with the clocks of the case and its first phase
    REQUIRE(one_a_tap(c.state).size() == 1);
    CHECK(one_a_tap(c.state).front().id == "tissue-here");
    c.up_to("cardinals");
    c.tie(4);
    const auto taps = one_a_tap(c.state);
    CHECK(taps.front().is == Timed::Is::Suture);
    CHECK(taps.front().n == 4);
    for (const Timed& one : taps) CHECK(of_one_tap(c.state, one).front() == one);
    std::size_t all = 0;
    for (const Timed& one : taps) all += of_one_tap(c.state, one).size();
    CHECK(all == timed(c.state).size());
    REQUIRE(c.does(MarkClock{.clock = "donor-out", .start = true}));
    CHECK(one_a_tap(c.state).front().is == Timed::Is::ClockOn);
}
