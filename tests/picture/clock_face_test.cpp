#include "picture/clock_face.hpp"
#include "picture/bounds.hpp"
#include "support/lettering.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace picture;

namespace {

Lettering lettering() { return support::lettering(screen::table_typography({223, 125})); }

ClockFace face(eye::Side side, eye::Seat seat) {
    return {.side = side, .seat = seat, .seat_label = "surgeon sits here", .nasal_label = "nasal", .temporal_label = "temporal"};
}

/// The rim: the widest ring.
Ring rim(const Shapes& shapes) {
    Ring widest;
    for (const auto& shape : shapes) {
        if (const auto* ring = std::get_if<Ring>(&shape); ring != nullptr && ring->radius > widest.radius) widest = *ring;
    }
    return widest;
}

std::vector<Text> texts(const Shapes& shapes) {
    std::vector<Text> all;
    for (const auto& shape : shapes) {
        if (const auto* text = std::get_if<Text>(&shape)) all.push_back(*text);
    }
    return all;
}

/// The middle of a label as seen from the middle of the dial.
Point from_centre(const Shapes& shapes, const std::string& label, const Lettering& letters) {
    for (const auto& text : texts(shapes)) {
        if (text.text != label) continue;
        const Point at = bounds(text, letters).centre(), centre = rim(shapes).centre;
        return {at.x - centre.x, at.y - centre.y};
    }
    FAIL("no label " << label);
    return {};
}

double nearest(const Box& box, Point p) {
    return std::hypot(std::max({0.0, box.x - p.x, p.x - box.right()}), std::max({0.0, box.y - p.y, p.y - box.bottom()}));
}

}  // namespace

TEST_CASE("a surgeon at the head sees 12 at the bottom and, in a right eye, 3 and nasal at the left") {
    // As one faces the eye 3 o'clock is right (ISO 8429) and nasal in a right eye; from the head everything is turned by half.
    const auto letters = lettering();
    const Shapes right = draw(face(eye::Side::Right, eye::Seat::Head), {0, 0, 150, 120}, letters);
    CHECK(from_centre(right, "12", letters).y > 20);
    CHECK(std::abs(from_centre(right, "12", letters).x) < 0.01);
    CHECK(from_centre(right, "6", letters).y < -20);
    CHECK(from_centre(right, "3", letters).x < -20);
    CHECK(from_centre(right, "9", letters).x > 20);
    CHECK(from_centre(right, "nasal", letters).x < 0);
    CHECK(from_centre(right, "temporal", letters).x > 0);
    const Shapes left = draw(face(eye::Side::Left, eye::Seat::Head), {0, 0, 150, 120}, letters);
    CHECK(from_centre(left, "3", letters).x < -20);
    CHECK(from_centre(left, "nasal", letters).x > 0);
    CHECK(from_centre(left, "temporal", letters).x < 0);
}

TEST_CASE("a surgeon at the temple sees the temporal meridian at the bottom: 9 in a right eye, 3 in a left") {
    const auto letters = lettering();
    const Shapes right = draw(face(eye::Side::Right, eye::Seat::Temporal), {0, 0, 150, 120}, letters);
    CHECK(from_centre(right, "9", letters).y > 20);
    CHECK(from_centre(right, "nasal", letters).y < -20);
    const Shapes left = draw(face(eye::Side::Left, eye::Seat::Temporal), {0, 0, 150, 120}, letters);
    CHECK(from_centre(left, "3", letters).y > 20);
}

TEST_CASE("labels stand outside the rim, inside the box and apart, at every size, seat and side") {
    const auto letters = lettering();
    for (const auto side : {eye::Side::Right, eye::Side::Left}) {
        for (const auto seat : {eye::Seat::Head, eye::Seat::Temporal}) {
            for (double w = 50; w <= 260; w += 7) {
                for (double h = 45; h <= 200; h += 7) {
                    const Box box{5, 5, w, h};
                    const Shapes shapes = draw(face(side, seat), box, letters);
                    const Ring ring = rim(shapes);
                    const auto all = texts(shapes);
                    bool outside = true, inside = true, apart = true;
                    for (std::size_t i = 0; i < all.size(); ++i) {
                        const Box own = bounds(all[i], letters);
                        outside = outside && nearest(own, ring.centre) >= ring.radius + 0.5;
                        inside = inside && own.x >= box.x - 1e-6 && own.right() <= box.right() + 1e-6 && own.y >= box.y - 1e-6 &&
                                 own.bottom() <= box.bottom() + 1e-6;
                        for (std::size_t k = i + 1; k < all.size(); ++k) apart = apart && !overlap(own, bounds(all[k], letters));
                    }
                    CAPTURE(w);
                    CAPTURE(h);
                    CHECK(outside);
                    CHECK(inside);
                    CHECK(apart);
                }
            }
        }
    }
}

TEST_CASE("at the sizes of the Table view all twelve hours and the words are there") {
    const auto letters = lettering();
    for (const Box box : {Box{0, 0, 74, 78}, Box{0, 0, 150, 75}, Box{0, 0, 110, 120}}) {
        CAPTURE(box.w);
        const auto all = texts(draw(face(eye::Side::Right, eye::Seat::Head), box, letters));
        CHECK(all.size() == 15);
    }
}

TEST_CASE("order numbers stand in discs inside the cut, apart, for the next two") {
    const auto letters = lettering();
    for (int first = 0; first < 36000; first += 1500) {
        for (const int step : {1500, 2250, 4500, 9000, 18000}) {
            ClockFace made = face(eye::Side::Right, eye::Seat::Head);
            made.next = {{23, measure::centideg(first)}, {24, measure::centideg(first + step)}};
            const Shapes shapes = draw(made, {0, 0, 110, 90}, letters);
            const Ring ring = rim(shapes);
            std::vector<Box> numbers;
            for (const auto& text : texts(shapes)) {
                if (text.text == "23" || text.text == "24") numbers.push_back(bounds(text, letters));
            }
            CAPTURE(first);
            CAPTURE(step);
            REQUIRE(numbers.size() == 2);
            CHECK(gap(numbers[0], numbers[1]) > 1);
            for (const auto& box : numbers)
                CHECK(std::hypot(box.centre().x - ring.centre.x, box.centre().y - ring.centre.y) < ring.radius * 0.66);
        }
    }
}

TEST_CASE("a suture done is a bar across the cut, the next one a thick accent with its number") {
    const auto letters = lettering();
    ClockFace made = face(eye::Side::Right, eye::Seat::Head);
    made.done = {eye::from_clock(12, 0), eye::from_clock(6, 0)};
    made.next = {{3, eye::from_clock(3, 0)}};
    const Shapes shapes = draw(made, {0, 0, 110, 90}, letters);
    const Ring ring = rim(shapes);
    int bars = 0, marks = 0, now = 0, dots = 0;
    for (const auto& shape : shapes) {
        if (const auto* disc = std::get_if<Disc>(&shape)) dots += disc->ink == Ink::Soft;
        const auto* line = std::get_if<Line>(&shape);
        if (line == nullptr) continue;
        const double a = std::hypot(line->a.x - ring.centre.x, line->a.y - ring.centre.y),
                     b = std::hypot(line->b.x - ring.centre.x, line->b.y - ring.centre.y);
        const bool across = std::min(a, b) < ring.radius * 0.66 && std::max(a, b) > ring.radius * 0.66 && std::max(a, b) <= ring.radius;
        bars += line->ink == Ink::Steel && across;
        now += line->ink == Ink::Accent && across && line->dash == 0 && line->width >= 2;
        marks += line->ink == Ink::Mark;
    }
    CHECK(bars == 2);
    CHECK(now == 1);
    CHECK(dots == 4);
    CHECK(marks == 13);  // 16 host marks less the three that carry a suture
}

TEST_CASE("an open eye is a black hole in the cornea with its word in it") {
    const auto letters = lettering();
    const Shapes shapes = draw(OpenEye{.label = "open"}, {0, 0, 80, 60}, letters);
    const auto all = texts(shapes);
    REQUIRE(all.size() == 1);
    const auto hole = std::find_if(shapes.begin(), shapes.end(), [](const Shape& shape) {
        const auto* disc = std::get_if<Disc>(&shape);
        return disc != nullptr && disc->ink == Ink::Black;
    });
    REQUIRE(hole != shapes.end());
    const Disc& disc = std::get<Disc>(*hole);
    const Box word = bounds(all[0], letters);
    CHECK(std::hypot(word.w / 2, word.h / 2) < disc.radius);
    CHECK(disc.radius < rim(shapes).radius);
}
