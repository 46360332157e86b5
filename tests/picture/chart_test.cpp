// Marks over one axis: where each stands by the rule of three, and what labels give way.
#include "picture/chart.hpp"

#include "picture/bounds.hpp"
#include "picture/shapes_of.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace picture;
using pictures::all;
using pictures::lettering;

namespace {

/// A millimetre a unit, from 10 mm on.
const Axis axis{.low = 0, .high = 100, .ticks = {{0, "0"}, {50, "50"}, {100, "100"}}};
const Box row{10, 20, 100, 8};

}  // namespace

TEST_CASE("a value stands where its share of the axis is, and off the axis at its end") {
    CHECK(place(axis, row, 0) == 10);
    CHECK(place(axis, row, 25) == 35);
    CHECK(place(axis, row, 100) == 110);
    CHECK(place(axis, row, -5) == 10);
    CHECK(place(axis, row, 140) == 110);
}

TEST_CASE("a box reaches from quartile to quartile with the median in it, its line from the least to the most") {
    const Shapes made = draw(BoxMark{.least = 5, .q1 = 20, .median = 30, .q3 = 45, .most = 90}, axis, row, lettering());
    const auto boxes = all<Panel>(made);
    REQUIRE(boxes.size() == 1);
    CHECK(boxes[0].box.x == 30);
    CHECK(boxes[0].box.right() == doctest::Approx(55));
    const auto lines = all<Line>(made);
    CHECK(std::any_of(lines.begin(), lines.end(), [](const Line& one) { return one.a.x == 15 && one.b.x == 100; }));
    CHECK(
        std::any_of(lines.begin(), lines.end(), [](const Line& one) { return one.a.x == 40 && one.b.x == 40 && one.ink == Ink::Accent; }));
}

TEST_CASE("a figure is a point on its interval; a moment has no bar") {
    const Shapes made = draw(IntervalMark{.at = 10, .low = 4, .high = 23}, axis, row, lettering());
    const auto points = all<Disc>(made);
    REQUIRE(points.size() == 1);
    CHECK((points[0].centre == Point{20, 24}));
    const auto lines = all<Line>(made);
    CHECK(std::any_of(lines.begin(), lines.end(), [](const Line& one) { return one.a.x == 14 && one.b.x == 33; }));
    const auto moment = all<Line>(draw(IntervalMark{.at = 10, .low = 10, .high = 10}, axis, row, lettering()));
    CHECK(moment.size() == axis.ticks.size());
}

TEST_CASE("stretches stand from their start to their end, and the shortest can be seen") {
    const auto made = all<Panel>(draw(SpanMark{.spans = {{0, 10}, {40, 40}}}, axis, row, lettering()));
    REQUIRE(made.size() == 2);
    CHECK(made[0].box.x == 10);
    CHECK(made[0].box.w == 10);
    CHECK(made[1].box.x == 50);
    CHECK(made[1].box.w > 0.5);
}

TEST_CASE("nothing to mark draws nothing, not even the lines of the axis") { CHECK(draw(Mark{}, axis, row, lettering()).empty()); }

TEST_CASE("labels never touch; the last one always stands") {
    Axis many = axis;
    many.ticks.clear();
    for (int at = 0; at <= 100; at += 4) many.ticks.push_back({static_cast<double>(at), std::to_string(at)});
    const auto texts = all<Text>(labels(many, {10, 30, 100, 9}, lettering()));
    REQUIRE(texts.size() > 3);
    CHECK(texts.size() < many.ticks.size());
    CHECK(texts.back().text == "100");
    for (std::size_t i = 1; i < texts.size(); ++i) CHECK(bounds(texts[i - 1], lettering()).right() < bounds(texts[i], lettering()).x);
}
