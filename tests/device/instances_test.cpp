// Shapes as records for the graphics card; what they look like is tested on the glass (drawing_test.cpp).
#include "device/instances.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <vector>

using namespace device;
using namespace picture;

namespace {

Fonts fonts() {
    Sizes sizes{.px_per_mm = 3.78};
    sizes.cap_mm.fill(4);
    auto loaded = Fonts::load(FONTS_DIR, sizes);
    REQUIRE(static_cast<bool>(loaded));
    return *std::move(loaded);
}

Drawing drawn(const Shapes& shapes) {
    static const Fonts with = fonts();
    static const Atlas atlas(with);
    return drawing(shapes, Palette{}, with, atlas);
}

std::vector<Kind> kinds(const Drawing& drawing) {
    std::vector<Kind> out;
    for (const Instance& instance : drawing.instances) out.push_back(static_cast<Kind>(static_cast<int>(instance.kind)));
    return out;
}

}  // namespace

TEST_CASE("one record a shape and a visible letter, in painting order, letters last") {
    const Drawing out = drawn({Disc{{5, 5}, 2}, Text{.text = "a b", .type = Type::Text}, Panel{.box = {0, 0, 5, 5}},
                               Text{.text = "-1", .type = Type::Numeral}, Polygon{{{0, 0}, {4, 0}, {0, 4}}}});
    const std::vector<Kind> expected = {Kind::Disc, Kind::Panel, Kind::Polygon, Kind::Letter, Kind::Letter, Kind::Numeral, Kind::Numeral};
    CHECK(kinds(out) == expected);
    const std::vector<Run> runs = {{Group::Fills, 0, 2}, {Group::Strokes, 2, 1}, {Group::Letters, 3, 4}};
    CHECK(out.runs == runs);
}

TEST_CASE("what has no size is left out") {
    CHECK(drawn({Line{.a = {3, 3}, .b = {3, 3}}, Panel{.box = {1, 1, 0, 5}}, Polygon{{{0, 0}, {1, 1}}}, Ring{.radius = 0},
                 Text{.text = "  "}})
              .instances.empty());
}

TEST_CASE("panels and level lines stand on whole pixels, within half a pixel of their place") {
    for (int i = 0; i < 40; ++i) {
        const double at = 10 + i * 0.07;
        CAPTURE(at);
        const Instance panel = drawn({Panel{.box = {at, at, 20, 8}}}).instances.at(0);
        const float left = panel.centre_x - panel.figure[0];
        CHECK(left == std::round(left));
        CHECK(std::abs(static_cast<double>(left) - at * 3.78) <= 0.5001);

        const Instance line = drawn({Line{.a = {10, at}, .b = {30, at}, .width = 0.3 + 0.02 * i}}).instances.at(0);
        const float top = line.centre_y - line.figure[1];
        CHECK(top == std::round(top));
        CHECK(line.figure[1] >= 0.5F);
        CHECK(std::abs(static_cast<double>(line.centre_y) - at * 3.78) <= 0.5001);
    }
}

TEST_CASE("a slanted line stays where it is") {
    const Instance line = drawn({Line{.a = {10, 20}, .b = {13, 24}, .width = 0.1}}).instances.at(0);
    CHECK(line.centre_x == doctest::Approx(11.5 * 3.78));
    CHECK(line.centre_y == doctest::Approx(22 * 3.78));
    CHECK(line.figure[0] == doctest::Approx(2.5 * 3.78));
    CHECK(line.figure[1] == doctest::Approx(0.05 * 3.78));
}

TEST_CASE("dashes fit a whole number of times round a closed ring and are left alone on an arc") {
    Ring ring{.centre = {50, 50}, .radius = 20, .dash = 3.1, .gap = 1.7};
    const Instance closed = drawn({ring}).instances.at(0);
    const double times = 2 * std::numbers::pi * static_cast<double>(closed.figure[0]) /
                         (static_cast<double>(closed.more[0]) + static_cast<double>(closed.more[1]));
    CHECK(times == doctest::Approx(std::round(times)).epsilon(1e-5));
    CHECK(closed.more[0] / closed.more[1] == doctest::Approx(3.1 / 1.7).epsilon(1e-5));
    ring.sweep_deg = 200;
    CHECK(drawn({ring}).instances.at(0).more[0] == doctest::Approx(3.1 * 3.78).epsilon(1e-5));
}
