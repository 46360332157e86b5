// Which window fills which screen when screens come and go: the Table view is always seen, the others wait for their own.
#include "device/seats.hpp"

#include <doctest/doctest.h>

using device::Seat;
using device::seated;
using device::without_own;

namespace {

std::vector<Seat> table_and_far() { return {{.wished = 0}, {.wished = 1}}; }
std::vector<std::optional<std::size_t>> screens(const std::vector<Seat>& seats) {
    std::vector<std::optional<std::size_t>> all{};
    for (const Seat& seat : seats) all.push_back(seat.screen);
    return all;
}
using On = std::vector<std::optional<std::size_t>>;

}  // namespace

TEST_CASE("each window fills the screen it wished for") {
    CHECK(screens(seated(table_and_far(), {"A", "B"})) == On{0, 1});
    CHECK(screens(seated({{.wished = 1}, {.wished = 0}}, {"A", "B"})) == On{1, 0});
}

TEST_CASE("a window whose screen is gone waits, and takes it again when it is back, whatever its number is then") {
    auto seats = seated(table_and_far(), {"A", "B", "C"});
    seats = seated(seats, {"A", "C"});
    CHECK(screens(seats) == On{0, std::nullopt});
    seats = seated(seats, {"A", "C", "B"});
    CHECK(screens(seats) == On{0, 2});
}

TEST_CASE("the first window takes what is left, lies under no other, and goes home when its own screen is back") {
    auto seats = seated(table_and_far(), {"A", "B"});
    seats = seated(seats, {"B"});
    CHECK(screens(seats) == On{0, std::nullopt});
    seats = seated(seats, {"B", "A"});
    CHECK(screens(seats) == On{1, 0});
}

TEST_CASE("with one screen only the first window is shown; with none, none is") {
    CHECK(screens(seated(table_and_far(), {"A"})) == On{0, std::nullopt});
    CHECK(screens(seated({{.wished = 5}}, {"A"})) == On{0});
    CHECK(screens(seated(table_and_far(), {})) == On{std::nullopt, std::nullopt});
}

TEST_CASE("two windows that wish for one screen do not share it") {
    CHECK(screens(seated({{.wished = 0}, {.wished = 0}}, {"A", "B"})) == On{0, std::nullopt});
}

TEST_CASE("the screen that is missing is named, not the window that waits for it; of several, each") {
    using Places = std::vector<std::size_t>;
    auto seats = seated(table_and_far(), {"A", "B"});
    CHECK(without_own(seats, {"A", "B"}).empty());
    CHECK(without_own(seated(seats, {"A"}), {"A"}) == Places{1});
    CHECK(without_own(seated(seats, {"B"}), {"B"}) == Places{0});  // the first took B, the second waits: A is what is missing
    CHECK(without_own(seated(seats, {"B", "A"}), {"B", "A"}).empty());
    auto three = seated({{.wished = 0}, {.wished = 1}, {.wished = 2}}, {"A", "B", "C"});
    CHECK(without_own(seated(three, {"C"}), {"C"}) == Places{0, 1});
    CHECK(without_own(seated(table_and_far(), {"A"}), {"A"}) == Places{1});  // never there
    CHECK(without_own(seated({{.wished = 0}, {.wished = 0}}, {"A", "B"}), {"A", "B"}) == Places{1});
    CHECK(without_own(seated(table_and_far(), {}), {}) == Places{0, 1});
}
