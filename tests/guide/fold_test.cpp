// The fold as such: applying one more event to a prefix is folding the longer list.
#include "support/sample.hpp"

#include <doctest/doctest.h>

#include <random>

using namespace guide;
using sample::Case;

TEST_CASE("folding all is folding a prefix and applying the rest, for a whole case") {
    Case c;
    c.up_to("no step of this name");
    REQUIRE(c.state.closed.has_value());
    CaseState step_by_step{};
    for (const Event& event : c.events) step_by_step = apply(std::move(step_by_step), event);
    CHECK(step_by_step == c.state);
    CHECK(fold(c.events) == c.state);
}

TEST_CASE("whatever is tapped in whatever order, an accepted spoke moves the blade by one and nothing else does [seeded]") {
    std::mt19937 random(20261125);
    for (int run = 0; run < 40; ++run) {
        Case c;
        c.up_to("lower");
        for (int i = 0; i < 60; ++i) {
            const int before = blade(c.state).position;
            const int seatings = blade(c.state).seating;
            const int pick = static_cast<int>(random() % 7);
            CAPTURE(pick);
            const Intent intent = pick == 0   ? Intent(RaiseBlade{})
                                  : pick == 1 ? Intent(UndoTap{})
                                  : pick == 2 ? Intent(GoDeeper{})
                                  : pick == 3 ? Intent(HoldCount{.source = random() % 2 == 0 ? Source::Table : Source::Desk})
                                  : pick == 4 ? Intent(WriteNote{.text = "a note"})
                                              : Intent(CountSpoke{.source = random() % 4 == 0 ? Source::Desk : Source::Table});
            const bool taken = c.does(intent);
            const int moved = blade(c.state).position - before;
            CHECK(blade(c.state).seating == seatings);
            if (std::holds_alternative<CountSpoke>(intent)) CHECK(moved == (taken ? 1 : 0));
            if (std::holds_alternative<RaiseBlade>(intent)) CHECK(moved == -1);
            if (pick >= 2 && pick <= 4) CHECK(moved == 0);
            CHECK(fold(c.events) == c.state);
        }
    }
}
