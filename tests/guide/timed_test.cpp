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
    CHECK(all.front() == Timed{.is = Timed::Is::Suture, .n = 1, .seq = c.state.last, .at = c.now});
    for (std::size_t i = 1; i < all.size(); ++i) CHECK(all[i - 1].seq > all[i].seq);
    CHECK(find_timed(c.state, c.state.clocks.at("suction").back().to_seq)->is == Timed::Is::ClockOff);
    CHECK(find_timed(c.state, c.state.clocks.at("suction").back().from_seq)->is == Timed::Is::ClockOn);
    CHECK(find_timed(c.state, c.state.steps.at("entered").seq)->id == "entered");
    CHECK_FALSE(find_timed(c.state, 1));
}

TEST_CASE("a corrected start or stop moves its clock's reading by as much, and nothing else") {
    Case c;
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
