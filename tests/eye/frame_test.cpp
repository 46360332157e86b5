#include "eye/frame.hpp"

#include <doctest/doctest.h>

#include <initializer_list>
#include <string>
#include <vector>

using namespace eye;
using measure::centideg;

// ISO 8429: the dial as one faces the eye, 0 degrees at 3 o'clock, counter-clockwise.
TEST_CASE("clock hours stand on the dial of ISO 8429") {
    CHECK(from_clock(3, 0) == centideg(0));
    CHECK(from_clock(12, 0) == centideg(9000));
    CHECK(from_clock(9, 0) == centideg(18000));
    CHECK(from_clock(6, 0) == centideg(27000));
    CHECK(from_clock(10, 30) == centideg(13500));
    CHECK(from_clock(7, 30) == centideg(22500));
}

TEST_CASE("every minute of the dial is read back as it was written") {
    for (int hour = 1; hour <= 12; ++hour) {
        for (int minute = 0; minute < 60; ++minute) {
            const std::string text = clock_text(from_clock(hour, minute));
            CAPTURE(text);
            CHECK(from_clock_text(text) == from_clock(hour, minute));
            CHECK(text == std::to_string(hour) + (minute < 10 ? ":0" : ":") + std::to_string(minute));
        }
    }
}

TEST_CASE("a direction is said to the nearest minute of the dial, half a degree") {
    CHECK(clock_text(centideg(9024)) == "12:00");
    CHECK(clock_text(centideg(9026)) == "11:59");
    CHECK(clock_text(centideg(0)) == "3:00");
    CHECK(short_clock_text(centideg(27000)) == "6");
    CHECK(short_clock_text(centideg(22500)) == "7:30");
    CHECK(short_clock_text(centideg(9000)) == "12");
}

TEST_CASE("what is no clock hour is refused") {
    const std::vector<std::string> bad{"",      "12",    "0:00",  "00:30", "13:00", "7:60", "7:3",
                                       "07:30", " 7:30", "7:30 ", "7.30",  "a:30",  "1:b0", "-1:00"};
    for (const auto& text : bad) {
        CAPTURE(text);
        CHECK_FALSE(from_clock_text(text).has_value());
    }
}

// ISO 8429 and anatomy: the nose is on the observer's right of the patient's right eye as one faces it.
TEST_CASE("3 o'clock is nasal in a right eye and temporal in a left") {
    CHECK(nasal(Side::Right) == from_clock(3, 0));
    CHECK(temporal(Side::Left) == from_clock(3, 0));
    CHECK(nasal(Side::Left) == from_clock(9, 0));
    CHECK(temporal(Side::Right) == from_clock(9, 0));
}

// Common practice, no source: who sits at the head sees the eye upside down.
TEST_CASE("the surgeon's picture has the seat at the bottom and is turned, never mirrored") {
    for (const Side side : {Side::Right, Side::Left}) {
        for (const Seat seat : {Seat::Head, Seat::Temporal}) {
            CHECK(surgeon_from_eye(seat_meridian(side, seat), side, seat) == centideg(27000));
            const Angle a = surgeon_from_eye(centideg(1000), side, seat);
            const Angle b = surgeon_from_eye(centideg(1700), side, seat);
            CHECK(centideg(b.centideg() - a.centideg()) == centideg(700));
        }
    }
    CHECK(surgeon_from_eye(from_clock(12, 0), Side::Right, Seat::Head) == centideg(27000));
    CHECK(surgeon_from_eye(from_clock(3, 0), Side::Right, Seat::Head) == centideg(18000));
    CHECK(surgeon_from_eye(from_clock(9, 0), Side::Right, Seat::Temporal) == centideg(27000));
    CHECK(surgeon_from_eye(from_clock(3, 0), Side::Left, Seat::Temporal) == centideg(27000));
}

// alpha = 90 - (k - 1) 360 / N: of 16 marks number 11 is at 225 degrees, 7:30.
TEST_CASE("host marks run clockwise from 12 o'clock and turn with the ring") {
    CHECK(mark_angle(1, 16, {}) == from_clock(12, 0));
    CHECK(mark_angle(11, 16, {}) == from_clock(7, 30));
    CHECK(mark_angle(1, 16, centideg(500)) == centideg(9500));
    for (const int marks : {1, 4, 7, 8, 11, 12, 16, 24}) {
        for (int mark = 1; mark <= marks; ++mark) {
            CAPTURE(marks);
            CAPTURE(mark);
            CHECK(mark_place(mark_angle(mark, marks, centideg(350)), marks, centideg(350)) == MarkPlace{.mark = mark, .between = {}});
        }
    }
}

TEST_CASE("a place is on a mark within half a degree, else between its neighbours clockwise") {
    CHECK(mark_place(centideg(9050), 16, {}) == MarkPlace{.mark = 1, .between = {}});
    CHECK(mark_place(centideg(8950), 16, {}) == MarkPlace{.mark = 1, .between = {}});
    CHECK(mark_place(centideg(8949), 16, {}) == MarkPlace{.mark = {}, .between = std::pair(1, 2), .part_permille = 23});
    CHECK(mark_place(centideg(9051), 16, {}) == MarkPlace{.mark = {}, .between = std::pair(16, 1), .part_permille = 977});
    CHECK(mark_place(from_clock(1, 0), 16, {}) == MarkPlace{.mark = {}, .between = std::pair(2, 3), .part_permille = 333});
    CHECK(mark_place(from_clock(1, 0), 0, {}) == MarkPlace{});
}
