#include "eye/limbus.hpp"

#include <doctest/doctest.h>

#include <initializer_list>

using namespace eye;
using measure::from_mm;

namespace {

constexpr double usual_offset_mm = 0.58;  // Ophthalmic Surg Lasers 1998;29:106-13

}  // namespace

// Plain geometry on the mean white-to-white of 390 people, 11.71 mm (Cornea 2005;24:259-61): a round limbus, centred cut.
TEST_CASE("a centred cut in a round limbus keeps half the difference of the diameters") {
    struct Row {
        double host_mm, clearance_mm, offset_mm;
    };
    for (const Row& row : {Row{7.5, 2.105, 1.525}, Row{8.0, 1.855, 1.275}, Row{8.5, 1.605, 1.025}}) {
        const auto found =
            clearance({.horizontal = from_mm(11.71), .vertical = from_mm(11.71)}, {.diameter = from_mm(row.host_mm), .x = {}, .y = {}});
        CAPTURE(row.host_mm);
        CHECK(found == Clearance{.least = from_mm(row.clearance_mm), .deg = 0});
        CHECK(found.least.mm() - usual_offset_mm == doctest::Approx(row.offset_mm).epsilon(1e-9));
    }
    CHECK(clearance({.horizontal = from_mm(11), .vertical = from_mm(11)}, {.diameter = from_mm(8.5), .x = {}, .y = {}}).least ==
          from_mm(1.25));
}

TEST_CASE("in an eye wider than high the least is above, and the lower of two equal directions is named") {
    CHECK(clearance({.horizontal = from_mm(11.8), .vertical = from_mm(11.1)}, {.diameter = from_mm(7.5), .x = {}, .y = {}}) ==
          Clearance{.least = from_mm(1.8), .deg = 90});
    CHECK(clearance({.horizontal = from_mm(11.0), .vertical = from_mm(11.8)}, {.diameter = from_mm(7.5), .x = {}, .y = {}}) ==
          Clearance{.least = from_mm(1.75), .deg = 0});
}

TEST_CASE("a cut off centre loses what it is off by in that direction") {
    const Limbus round{.horizontal = from_mm(11.71), .vertical = from_mm(11.71)};
    CHECK(clearance(round, {.diameter = from_mm(8), .x = {}, .y = from_mm(-0.58)}) == Clearance{.least = from_mm(1.275), .deg = 270});
    CHECK(clearance(round, {.diameter = from_mm(8), .x = from_mm(-0.3), .y = {}}) == Clearance{.least = from_mm(1.555), .deg = 180});
}

TEST_CASE("a cut that reaches over the limbus has a clearance below zero") {
    const auto found =
        clearance({.horizontal = from_mm(11.8), .vertical = from_mm(11.1)}, {.diameter = from_mm(9), .x = {}, .y = from_mm(1.5)});
    CHECK(found == Clearance{.least = from_mm(-0.45), .deg = 90});
}
