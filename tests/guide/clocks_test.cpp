// Clocks: started and stopped on the spoken words, corrected afterwards, by the boot clock. Rules: common practice, no source.
#include "support/sample.hpp"

#include <doctest/doctest.h>

using namespace guide;
using sample::Case;

namespace {

std::int64_t seconds(const Case& c, const ClockId& clock) {
    const auto reading = clock_reading(c.state, clock, c.now);
    REQUIRE(reading.has_value());
    return reading->ms / 1000;
}

}  // namespace

TEST_CASE("the case clock and the phase's start with the first thing done, not when the file is opened") {
    Case c;
    CHECK_FALSE(clock_reading(c.state, "case", c.now).has_value());
    c.later(3600);
    REQUIRE(c.does(FinishStep{.step = "tissue-here"}));
    c.later(10);
    CHECK(seconds(c, "case") == 10);
    CHECK(seconds(c, "ready") == 10);
}

TEST_CASE("a note alone starts no clock: the first thing done does") {
    Case c;
    REQUIRE(c.does(WriteNote{.text = "the list runs late"}, Who::Circulating));
    CHECK(c.state.notes.size() == 1);
    CHECK(c.state.clocks.empty());
    c.later(600);
    REQUIRE(c.does(FinishStep{.step = "tissue-here"}));
    c.later(10);
    CHECK(seconds(c, "case") == 10);
}

TEST_CASE("one phase's clock stops where the next one starts") {
    Case c;
    c.up_to("zero");
    CHECK_FALSE(clock_running(c.state, "ready"));
    CHECK_FALSE(clock_running(c.state, "donor"));
    CHECK(clock_running(c.state, "host"));
    CHECK(seconds(c, "ready") + seconds(c, "donor") + seconds(c, "host") == seconds(c, "case"));
}

TEST_CASE("a late tap says how long ago it was") {
    Case c;
    c.up_to("button-out");
    c.later(40);
    REQUIRE(c.does(FinishStep{.step = "button-out", .ago_s = 30}));
    CHECK(seconds(c, "open-sky") == 30);
}

TEST_CASE("the first start counts; a second is refused while the clock runs") {
    Case c;
    c.up_to("entered");
    REQUIRE(c.does(MarkClock{.clock = "decompressed", .start = true}, Who::Circulating));
    CHECK_FALSE(c.does(MarkClock{.clock = "decompressed", .start = true}));
    CHECK(c.refusal.why == Refused::AlreadyDone);
    c.later(20);
    REQUIRE(c.does(FinishStep{.step = "entered"}));
    CHECK(c.state.clocks.at("decompressed").size() == 1);
    CHECK_FALSE(c.does(MarkClock{.clock = "lunch", .start = true}));
}

TEST_CASE("spells add up") {
    Case c;
    REQUIRE(c.does(MarkClock{.clock = "donor-out", .start = true}));
    c.later(9);
    REQUIRE(c.does(MarkClock{.clock = "donor-out", .start = false}));
    c.later(100);
    REQUIRE(c.does(MarkClock{.clock = "donor-out", .start = true}));
    c.later(5);
    CHECK(seconds(c, "donor-out") == 15);
}

TEST_CASE("a time is corrected with a reason, and the old one stays in the ledger") {
    Case c;
    c.up_to("entered");
    c.later(60);
    REQUIRE(c.does(FinishStep{.step = "entered"}));
    const Spell spell = c.state.clocks.at("decompressed").back();
    c.later(60);
    CHECK_FALSE(c.does(CorrectTime{.event = spell.from_seq, .utc_ms = spell.from.utc_ms - 20'000, .why = ""}));
    CHECK_FALSE(c.does(CorrectTime{.event = 1, .utc_ms = 0, .why = "no time of its own"}));
    REQUIRE(c.does(CorrectTime{.event = spell.from_seq, .utc_ms = spell.from.utc_ms - 20'000, .why = "said earlier"}));
    // 60 s, three taps of a second each, and the 20 s by which the start was corrected.
    CHECK(seconds(c, "decompressed") == 60 + 3 + 20);
}

TEST_CASE("a clock that runs across a restart of the machine says about") {
    Case c;
    REQUIRE(c.does(MarkClock{.clock = "donor-out", .start = true}));
    measure::Instant after = c.now;
    after.utc_ms += 90'000;
    after.boottime_ms = 500;
    after.boot = 8;
    const auto reading = clock_reading(c.state, "donor-out", after);
    CHECK(reading->ms == 90'000);
    CHECK_FALSE(reading->exact);
}
