// What stands on the glass, read back pixel by pixel. Lengths and areas are checked against plane geometry.
#include "device/glass.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

using namespace device_test;
using namespace picture;
using device::Pixels;
using device::Rgb;

namespace {

Rgb colour(Ink ink) { return colours()[static_cast<std::size_t>(ink)]; }

/// How much of a pixel is inked, for white on black.
double cover(const Pixels& pixels, int x, int y) { return pixels.at(x, y).g / 255.0; }

double area(const Pixels& pixels) {
    double sum = 0;
    for (int y = 0; y < pixels.height; ++y)
        for (int x = 0; x < pixels.width; ++x) sum += cover(pixels, x, y);
    return sum;
}

struct Bounds {
    int left = 1 << 20, right = -1, top = 1 << 20, bottom = -1;  // right and bottom are one beyond
};

/// Around all pixels at least half inked.
Bounds bounds(const Pixels& pixels) {
    Bounds out;
    for (int y = 0; y < pixels.height; ++y)
        for (int x = 0; x < pixels.width; ++x) {
            if (cover(pixels, x, y) < 0.5) continue;
            out.left = std::min(out.left, x), out.right = std::max(out.right, x + 1);
            out.top = std::min(out.top, y), out.bottom = std::max(out.bottom, y + 1);
        }
    return out;
}

/// Whether the circle is inked at each of 3600 angles, counter-clockwise from 3 o'clock.
std::vector<bool> round_walk(const Pixels& pixels, Point centre_px, double radius_px) {
    std::vector<bool> out;
    for (int i = 0; i < 3600; ++i) {
        const double angle = i * std::numbers::pi / 1800;
        const double x = centre_px.x + radius_px * std::cos(angle), y = centre_px.y - radius_px * std::sin(angle);
        out.push_back(cover(pixels, static_cast<int>(std::floor(x)), static_cast<int>(std::floor(y))) >= 0.5);
    }
    return out;
}

int starts(const std::vector<bool>& walk) {
    int count = 0;
    for (std::size_t i = 0; i < walk.size(); ++i) count += walk[i] && !walk[(i + walk.size() - 1) % walk.size()] ? 1 : 0;
    return count;
}

}  // namespace

TEST_CASE("a square of 10 mm is 10 mm on the glass") {
    for (const double px_per_mm : {4.0, 3.7795, 6.43}) {
        CAPTURE(px_per_mm);
        Glass glass(px_per_mm);
        const Bounds found = bounds(glass.draw({Panel{.box = {10, 20, 10, 10}, .fill = Ink::Text}}));
        CHECK(std::abs(found.right - found.left - 10 * px_per_mm) <= 1);
        CHECK(std::abs(found.bottom - found.top - 10 * px_per_mm) <= 1);
        CHECK(std::abs(found.left - 10 * px_per_mm) <= 0.5);
        CHECK(std::abs(found.top - 20 * px_per_mm) <= 0.5);
    }
}

TEST_CASE("colours are those of the palette, to the last bit") {
    Glass glass(4);
    Shapes shapes;
    for (int i = 0; i < inks; ++i) shapes.push_back(Panel{.box = {5.0 + 8 * i, 10, 6, 6}, .fill = static_cast<Ink>(i)});
    const Pixels pixels = glass.draw(shapes);
    CHECK(pixels.at(0, 0) == colour(Ink::Ground));
    for (int i = 0; i < inks; ++i) {
        CAPTURE(i);
        CHECK(pixels.at(static_cast<int>((8.0 + 8 * i) * 4), 13 * 4) == colour(static_cast<Ink>(i)));
    }
}

TEST_CASE("a dashed ring has its gaps, a solid one has none") {
    Glass glass(4);
    const Point centre{80, 70};
    Ring ring{.centre = centre, .radius = 40, .width = 2, .ink = Ink::Text};
    const auto solid = round_walk(glass.draw({ring}), {320, 280}, 160);
    CHECK(std::ranges::count(solid, true) == 3600);

    ring.dash = 6, ring.gap = 4;
    const auto dashed = round_walk(glass.draw({ring}), {320, 280}, 160);
    CHECK(starts(dashed) == 25);  // 2 pi 40 mm is 251.3 mm: 25 dashes with their gaps
    CHECK(static_cast<double>(std::ranges::count(dashed, true)) / 3600 == doctest::Approx(0.6).epsilon(0.02));
}

TEST_CASE("an arc runs counter-clockwise as one looks at the glass") {
    Glass glass(4);
    const auto walk =
        round_walk(glass.draw({Ring{.centre = {80, 70}, .radius = 40, .width = 2, .ink = Ink::Text, .from_deg = 30, .sweep_deg = 90}}),
                   {320, 280}, 160);
    for (int tenth = 0; tenth < 3600; ++tenth) {
        if (std::abs(tenth - 300) < 8 || std::abs(tenth - 1200) < 8) continue;
        CAPTURE(tenth);
        CHECK(walk[static_cast<std::size_t>(tenth)] == (tenth > 300 && tenth < 1200));
    }
}

TEST_CASE("an arc across 3 o'clock has no seam, and a sweep below 0 runs clockwise") {
    Glass glass(4);
    Ring ring{.centre = {80, 70}, .radius = 40, .width = 2, .ink = Ink::Text, .from_deg = 330, .sweep_deg = 60};
    const auto across = round_walk(glass.draw({ring}), {320, 280}, 160);
    ring.from_deg = 30, ring.sweep_deg = -60;
    const auto clockwise = round_walk(glass.draw({ring}), {320, 280}, 160);
    CHECK(starts(across) == 1);
    CHECK(static_cast<double>(std::ranges::count(across, true)) == doctest::Approx(600).epsilon(0.02));
    CHECK(across == clockwise);
}

TEST_CASE("both ends of an arc are smooth") {
    Glass glass(4);
    // the ends lie on a level line a quarter of the way down the pixels of row 280, which are so covered by a quarter
    const Pixels pixels = glass.draw({Ring{.centre = {80, 70.0625}, .radius = 40, .width = 2, .ink = Ink::Text, .sweep_deg = 180}});
    CHECK(cover(pixels, 480, 280) == doctest::Approx(0.25).epsilon(0.1));
    CHECK(cover(pixels, 160, 280) == doctest::Approx(0.25).epsilon(0.1));
}

TEST_CASE("areas are those of plane geometry") {
    Glass glass(4);
    struct Row {
        std::string name{};
        Shape shape{};
        double px2 = 0;
    };
    constexpr double pi = std::numbers::pi;
    const std::vector<Row> rows = {
        {"a disc: pi r2", Disc{{80, 70}, 20.3, Ink::Text}, pi * 81.2 * 81.2},
        {"a small disc", Disc{{80.1, 70.2}, 1, Ink::Text}, pi * 16},
        {"a ring: 2 pi r w", Ring{.centre = {80, 70}, .radius = 40, .width = 1.5, .ink = Ink::Text}, 2 * pi * 160 * 6},
        {"a thin ring", Ring{.centre = {80, 70}, .radius = 40, .width = 0.1, .ink = Ink::Text}, 2 * pi * 160 * 0.4},
        {"a wedge: pi r2 / 6", Ring{.centre = {80, 70}, .radius = 10, .width = 20, .ink = Ink::Text, .from_deg = 20, .sweep_deg = 60},
         pi * 6400 / 6},
        {"a slanted line: l w", Line{.a = {20, 20}, .b = {60, 50}, .width = 0.7, .ink = Ink::Text}, 200 * 2.8},
        {"a slanted dashed line", Line{.a = {20, 20}, .b = {60, 50}, .width = 0.7, .ink = Ink::Text, .dash = 3, .gap = 2}, 200 * 2.8 * 0.6},
        {"a triangle", Polygon{{{20, 20}, {60, 20}, {35, 55}}, Ink::Text}, 0.5 * 160 * 140},
        {"a triangle the other way round", Polygon{{{20, 20}, {35, 55}, {60, 20}}, Ink::Text}, 0.5 * 160 * 140},
        {"a panel with round corners: w h - (4 - pi) r2", Panel{.box = {20, 20, 40, 30}, .radius = 6, .fill = Ink::Text},
         160 * 120 - (4 - pi) * 24 * 24},
    };
    for (const Row& row : rows) {
        CAPTURE(row.name);
        CHECK(area(glass.draw({row.shape})) == doctest::Approx(row.px2).epsilon(0.02));
    }
}

TEST_CASE("a line ends where it ends, without caps, and level lines are sharp") {
    Glass glass(4);
    const Pixels pixels = glass.draw({Line{.a = {10, 20.1}, .b = {30, 20.1}, .width = 0.5, .ink = Ink::Text}});
    const Bounds found = bounds(pixels);
    CHECK(found.left == 40);
    CHECK(found.right == 120);
    CHECK(found.bottom - found.top == 2);
    CHECK(area(pixels) == doctest::Approx(160).epsilon(0.001));
}

TEST_CASE("dashes of a line have their lengths, starting with a dash") {
    Glass glass(4);
    const Pixels pixels = glass.draw({Line{.a = {10, 20}, .b = {30, 20}, .width = 1, .ink = Ink::Text, .dash = 3, .gap = 2}});
    for (int x = 40; x < 120; ++x) {
        CAPTURE(x);
        CHECK((cover(pixels, x, 80) > 0.5) == ((x - 40) % 20 < 12));
    }
}

TEST_CASE("an edge lies inside its panel") {
    Glass glass(4);
    const Pixels pixels = glass.draw({Panel{.box = {10, 10, 20, 20}, .fill = Ink::Card, .edge = Ink::Red, .edge_width = 1}});
    for (int x = 30; x < 130; ++x) {
        CAPTURE(x);
        const bool in = x >= 40 && x < 120, inner = x >= 44 && x < 116;
        CHECK(pixels.at(x, 80) == colour(inner ? Ink::Card : in ? Ink::Red : Ink::Ground));
    }
}

TEST_CASE("shapes are painted in order and all text above them") {
    Glass glass(4);
    const Panel below{.box = {10, 10, 60, 30}, .fill = Ink::Card}, above{.box = {10, 10, 60, 30}, .fill = Ink::Red};
    CHECK(glass.draw({below, above}).at(100, 100) == colour(Ink::Red));
    CHECK(glass.draw({above, below}).at(100, 100) == colour(Ink::Card));
    const Text text{.at = {20, 30}, .text = "HHH", .type = Type::Strong, .ink = Ink::Text};
    CHECK(glass.draw({below, text, above}).rgb == glass.draw({below, above, text}).rgb);
    CHECK(glass.draw({text, above}).rgb != glass.draw({above}).rgb);
}

TEST_CASE("lettering stands on its baseline, as tall and as wide as measured") {
    Glass glass(4);
    const device::Fonts made = fonts(4);
    const auto drawn = [&](Align align) { return bounds(glass.draw({Text{{100, 70}, "HEH", Type::Text, Ink::Text, align}})); };
    const Bounds left = drawn(Align::Left), centre = drawn(Align::Centre), right = drawn(Align::Right);
    CHECK(left.bottom == 280);
    CHECK(left.bottom - left.top == 20);  // 5 mm at 4 px/mm
    const double width = made.width_px(Type::Text, "HEH");
    CHECK(std::abs(left.left - right.left - width) <= 1);
    CHECK(std::abs(left.left - centre.left - width / 2) <= 1);
    CHECK(std::abs((centre.left + centre.right) / 2.0 - 400) <= 1);  // HEH is nearly the same both ways
}

TEST_CASE("letters that are read from 3 m are drawn, as tall as asked to two pixels") {
    for (const double cap_mm : {27.0, 60.0}) {
        CAPTURE(cap_mm);
        Glass glass(4, cap_mm);
        const Bounds found = bounds(glass.draw({Text{{10, 100}, "HE", Type::Text, Ink::Text}}));
        CHECK(std::abs(found.bottom - 400) <= 2);
        CHECK(std::abs(found.bottom - found.top - 4 * cap_mm) <= 2);
    }
}

TEST_CASE("the giant digits are drawn at exact size and do not jump") {
    Glass glass(4);
    const auto drawn = [&](const std::string& digits) { return bounds(glass.draw({Text{{100, 120}, digits, Type::Numeral, Ink::Text}})); };
    const Bounds seven = drawn("7");
    CHECK(seven.bottom == 480);
    CHECK(std::abs(seven.bottom - seven.top - 120) <= 2);
    const double step = fonts(4).step_px(Type::Numeral, U'0');
    CHECK(std::abs(drawn("17").right - seven.right - step) <= 1);
    CHECK(std::abs(drawn("87").right - seven.right - step) <= 1);
}

TEST_CASE("a picture of the window can be kept") {
    Glass glass(4);
    const std::string path = "window_test.png";
    const auto saved = device::save_png(path, glass.draw({Disc{{50, 50}, 20, Ink::Text}}));
    CHECK(static_cast<bool>(saved));
    std::remove(path.c_str());
    CHECK_FALSE(static_cast<bool>(device::save_png("/nowhere/window_test.png", glass.draw({}))));
}
