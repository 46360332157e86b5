#include "measure/figure.hpp"

#include <doctest/doctest.h>

using measure::figure;
using measure::NumberStyle;

// ISO 80000-1:2022, 7.3 (from memory): the decimal sign is a point or a comma; groups of three are parted by a space, never by a
// point or comma, and four figures need not be parted. What this project asks of it: README, "Wording".

TEST_CASE("a figure takes the decimal sign of its language") {
    const NumberStyle german{.decimal = ",", .group = "\u00a0"};
    CHECK(figure("7.50", german) == "7,50");
    CHECK(figure("+0.25", german) == "+0,25");
    CHECK(figure("-0.25", german) == "-0,25");
    CHECK(figure("\u22120.5", german) == "\u22120,5");
    CHECK(figure("612", german) == "612");
    CHECK(figure("7.50", {}) == "7.50");
    CHECK(figure("7.25 / 7.50", german) == "7,25 / 7,50");
}

TEST_CASE("thousands are parted by a space from five figures on, on the left of the decimal sign alone") {
    const NumberStyle german{.decimal = ",", .group = "\u00a0"};
    CHECK(figure("2250", german) == "2250");
    CHECK(figure("10000", german) == "10\u00a0000");
    CHECK(figure("-1234567.8901", german) == "-1\u00a0234\u00a0567,8901");
    CHECK(figure("100000", {.decimal = "."}) == "100000");
}

TEST_CASE("what is no plain figure is left alone") {
    const NumberStyle german{.decimal = ",", .group = "\u00a0"};
    for (const char* text : {"", "+", ".", "7.", ".5", "2026-11-25", "7:30", "K-0147", "1.2.3", "7.5 mm", "12345x", "10000-1"}) {
        CAPTURE(text);
        CHECK(figure(text, german) == text);
    }
}
