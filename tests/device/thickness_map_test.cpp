// The thickness map's pixels: bands have the legend's colours, lines lie where the values are, the cut stands where it should.
// Fields are made so that the value at a place is known by plane geometry; colours are those of the palette handed in.
#include "picture/thickness_map.hpp"
#include "device/glass.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

using namespace device_test;
using namespace picture;
using device::Pixels;
using device::Rgb;

namespace {

constexpr double px_per_mm = 4;

Rgb colour(Ink ink) { return colours()[static_cast<std::size_t>(ink)]; }

/// The colour of a band of six, straight between the five inks of the palette: the lowest has the first, the highest the last.
Rgb relief(int band) {
    const double at = band / 5.0 * (reliefs - 1);
    const int from = std::min(static_cast<int>(at), reliefs - 2);
    const Rgb a = colour(static_cast<Ink>(static_cast<int>(Ink::Relief1) + from));
    const Rgb b = colour(static_cast<Ink>(static_cast<int>(Ink::Relief1) + from + 1));
    const auto mixed = [&](std::uint8_t x, std::uint8_t y) { return static_cast<std::uint8_t>(std::lround(x + (y - x) * (at - from))); };
    return {mixed(a.r, b.r), mixed(a.g, b.g), mixed(a.b, b.b)};
}

bool near(Rgb a, Rgb b) { return std::abs(a.r - b.r) <= 2 && std::abs(a.g - b.g) <= 2 && std::abs(a.b - b.b) <= 2; }

/// `value` and `inside` at mm from the middle of the box, y up.
template <class Value, class Inside>
Contours contours(const Box& box, int n, Value value, Inside inside) {
    Contours made{.box = box, .columns = n, .rows = n, .low = 540, .high = 660, .step = 20, .line_width = 0.5, .line = Ink::Text};
    for (int row = 0; row < n; ++row) {
        for (int column = 0; column < n; ++column) {
            const double x = (column / (n - 1.0) - 0.5) * box.w, y = (0.5 - row / (n - 1.0)) * box.h;
            made.values.push_back(static_cast<float>(value(x, y)));
            made.inside.push_back(static_cast<float>(inside(x, y)));
        }
    }
    return made;
}

Rgb at(const Pixels& pixels, double x_mm, double y_mm) {
    return pixels.at(static_cast<int>(std::floor(x_mm * px_per_mm)), static_cast<int>(std::floor(y_mm * px_per_mm)));
}

}  // namespace

TEST_CASE("every band of the map has its own colour, the lowest the first ink, the highest the last") {
    Glass glass(px_per_mm);
    // A plane: 2 um a mm to the right, 600 in the middle; a band is 10 mm wide.
    const Box box{20, 20, 60, 60};
    const Pixels pixels = glass.draw({contours(
        box, 7, [](double x, double) { return 600 + 2 * x; }, [](double, double) { return 100; })});
    for (int band = 0; band < 6; ++band) {
        CAPTURE(band);
        const double x = 20 + 10 * band + 5;
        CHECK(near(at(pixels, x, 30), relief(band)));
        CHECK(near(at(pixels, x, 70), relief(band)));
    }
    CHECK(at(pixels, 19, 50) == colour(Ink::Ground));
    CHECK(at(pixels, 81, 50) == colour(Ink::Ground));
}

TEST_CASE("a line stands between bands where the value is, half a millimetre wide, and none at the ends of the scale") {
    Glass glass(px_per_mm);
    const Box box{20, 20, 60, 60};
    const Pixels pixels = glass.draw({contours(
        box, 7, [](double x, double) { return 600 + 2 * x; }, [](double, double) { return 100; })});
    for (int edge = 1; edge < 6; ++edge) {
        CAPTURE(edge);
        const int x = (20 + 10 * edge) * 4;  // 2 px wide: one on each side
        CHECK(pixels.at(x - 1, 200) == colour(Ink::Text));
        CHECK(pixels.at(x, 200) == colour(Ink::Text));
        CHECK(pixels.at(x - 3, 200) != colour(Ink::Text));
        CHECK(pixels.at(x + 2, 200) != colour(Ink::Text));
    }
    CHECK(near(pixels.at(80, 200), relief(0)));
    CHECK(near(pixels.at(319, 200), relief(5)));
}

TEST_CASE("a legend of the same scale has the map's colour for a value, wherever the value stands") {
    Glass glass(px_per_mm);
    // A dome like a cornea: thinner in the middle, 545 + 0.06 r2; r = 30 mm is 599 um.
    const auto dome = [](double x, double y) { return 545 + 0.06 * (x * x + y * y); };
    const Contours map = contours({20, 20, 80, 80}, 41, dome, [](double, double) { return 100; });
    // The legend rises from its foot: 120 um over 60 mm.
    const Contours legend = contours(
        {120, 20, 10, 60}, 3, [](double, double y) { return 600 + 2 * y; }, [](double, double) { return 100; });
    const Pixels pixels = glass.draw({map, legend});
    for (const auto& [x, y] :
         std::vector<std::pair<double, double>>{{0, 0}, {10, 3}, {-20, 8}, {5, -22}, {-22, -24}, {33, 20}, {-30, 24}}) {
        const double um = dome(x, y), from_line = std::abs(std::remainder(um - 540, 20));
        CAPTURE(um);
        REQUIRE(from_line > 2);
        const double legend_y = 50 - (um - 600) / 2;
        CHECK(near(at(pixels, 60 + x, 60 - y), at(pixels, 125, legend_y)));
        CHECK(near(at(pixels, 60 + x, 60 - y), relief(static_cast<int>(std::floor((um - 540) / 20)))));
    }
    CHECK_FALSE(near(at(pixels, 60, 60), at(pixels, 60 + 36, 60)));
}

TEST_CASE("beyond the scale the last band goes on, and a level field has no line") {
    Glass glass(px_per_mm);
    const auto level = [&](double um) {
        return glass.draw({contours(
            {20, 20, 40, 40}, 3, [um](double, double) { return um; }, [](double, double) { return 100; })});
    };
    CHECK(near(at(level(400), 40, 40), relief(0)));
    CHECK(near(at(level(900), 40, 40), relief(5)));
    CHECK(near(at(level(600), 40, 40), relief(3)));  // on a line's value all over
}

TEST_CASE("what is not known is not painted, and its edge is smooth") {
    Glass glass(px_per_mm);
    // Known within 20 mm of the middle.
    const Pixels pixels = glass.draw({contours(
        {20, 20, 60, 60}, 61, [](double, double) { return 590; }, [](double x, double y) { return 20 - std::hypot(x, y); })});
    CHECK(near(at(pixels, 50, 50), relief(2)));
    CHECK(near(at(pixels, 69.5, 50), relief(2)));
    CHECK(at(pixels, 70.6, 50) == colour(Ink::Ground));
    CHECK(at(pixels, 65, 65) == colour(Ink::Ground));
    double area = 0;  // by the red of the band, over black
    const double whole = relief(2).r;
    for (int y = 0; y < pixels.height; ++y)
        for (int x = 0; x < pixels.width; ++x) area += pixels.at(x, y).r / whole;
    CHECK(area == doctest::Approx(3.14159265 * 80 * 80).epsilon(0.01));
}

TEST_CASE("the whole map on the glass: the cut circle where it was cut, a place's colour the legend's for its thickness") {
    Glass glass(px_per_mm);
    // A bowl of 540 um and 2.2 um a mm2 more, known to 5 mm; the cut lies 0.4 mm to 3 o'clock and 0.3 mm to 6.
    const auto bowl = [](double x, double y) { return 540 + 2.2 * (x * x + y * y); };
    ThicknessMap map{.low_um = 540,
                     .high_um = 600,
                     .step_um = 10,
                     .limbus_across = measure::from_mm(12),
                     .limbus_upright = measure::from_mm(12),
                     .cut = measure::from_mm(7.5),
                     .cut_x = measure::from_mm(0.4),
                     .cut_y = measure::from_mm(-0.3)};
    map.field = {.half_mm = 6, .across = 61};
    for (int row = 0; row < 61; ++row) {
        for (int column = 0; column < 61; ++column) {
            const double x = -6 + 0.2 * column, y = 6 - 0.2 * row;
            map.field.um.push_back(static_cast<float>(bowl(x, y)));
            map.field.known.push_back(static_cast<float>(5 - std::hypot(x, y)));
        }
    }
    const Box box{10, 10, 150, 120};
    const Lettering lettering = fonts(px_per_mm).lettering();
    const Shapes shapes = draw(map, box, lettering);
    const Pixels pixels = glass.draw(shapes);
    const MapPlace on = place(map, box, lettering);
    int accent = 0;
    for (int deg = 0; deg < 360; deg += 5) {
        const double turn = deg * std::numbers::pi / 180;
        const Point cut = on.on_glass({0.4 + 3.75 * std::cos(turn), -0.3 + 3.75 * std::sin(turn)});
        accent += at(pixels, cut.x, cut.y) == colour(Ink::Accent) ? 1 : 0;
    }
    CHECK(accent >= 60);                                // of 72: all round, but for the figures on it
    const Point off = on.on_glass({0.4 - 3.35, -0.3});  // 0.4 mm inside, at 9 o'clock
    CHECK(at(pixels, off.x, off.y) != colour(Ink::Accent));
    const auto legend =
        std::find_if(shapes.rbegin(), shapes.rend(), [](const Shape& one) { return std::holds_alternative<Contours>(one); });
    REQUIRE(legend != shapes.rend());
    const Box bar = std::get<Contours>(*legend).box;
    int agreed = 0, looked = 0;
    for (const double r : {1.0, 2.4, 4.6}) {
        for (int deg = 10; deg < 360; deg += 20) {
            const double turn = deg * std::numbers::pi / 180, x = r * std::cos(turn), y = r * std::sin(turn), um = bowl(x, y);
            if (std::abs(std::remainder(um - 540, 10)) < 1.5) continue;
            const Point here = on.on_glass({x, y});
            const double share = (um - 540) / 60;
            agreed += near(at(pixels, here.x, here.y), at(pixels, bar.centre().x, bar.bottom() - share * bar.h)) ? 1 : 0;
            ++looked;
        }
    }
    CHECK(looked >= 30);
    CHECK(agreed >= looked * 2 / 3);  // the rest lies under figures and marks
    const Point beyond = on.on_glass({0, 5.4});
    CHECK(at(pixels, beyond.x, beyond.y) == colour(Ink::Ground));
}
