// The pictures of the plan: where on the glass a place of the eye, a degree of the cut and a size stand, by plane geometry.
#include "picture/bounds.hpp"
#include "picture/shapes_of.hpp"
#include "picture/size_rulers.hpp"
#include "picture/thickness_map.hpp"
#include "picture/wall_profile.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace picture;
using pictures::all;
using pictures::lettering;

namespace {

bool says(const Shapes& shapes, const std::string& text) {
    const auto texts = all<Text>(shapes);
    return std::any_of(texts.begin(), texts.end(), [&](const Text& one) { return one.text == text; });
}

/// A bowl: 540 um in the middle and 0.7 um a mm2 more, known to 4.5 mm.
ThicknessMap bowl() {
    ThicknessMap map{.low_um = 540,
                     .high_um = 560,
                     .step_um = 5,
                     .limbus_across = measure::from_mm(12),
                     .limbus_upright = measure::from_mm(11),
                     .cut = measure::from_mm(7.5),
                     .cut_x = measure::from_mm(0.4),
                     .cut_y = measure::from_mm(-0.2),
                     .measured = {{0, 0}, {3.75, 0}},
                     .thinnest = Point{0.4, 3.55},
                     .unit = "µm"};
    map.field = {.half_mm = 6, .across = 61};
    for (int row = 0; row < 61; ++row) {
        for (int column = 0; column < 61; ++column) {
            const double x = -6 + 0.2 * column, y = 6 - 0.2 * row;
            map.field.um.push_back(static_cast<float>(540 + 0.7 * (x * x + y * y)));
            map.field.known.push_back(static_cast<float>(4.5 - std::hypot(x, y)));
        }
    }
    return map;
}

}  // namespace

TEST_CASE("the cut stands where it is on the eye, 12 o'clock up and 3 o'clock to the right") {
    const Box box{10, 20, 120, 100};
    const ThicknessMap map = bowl();
    const MapPlace at = place(map, box, lettering());
    const auto rings = all<Ring>(draw(map, box, lettering()));
    const auto cut = std::find_if(rings.begin(), rings.end(), [](const Ring& ring) { return ring.ink == Ink::Accent; });
    REQUIRE(cut != rings.end());
    CHECK(cut->radius == doctest::Approx(3.75 * at.scale));
    CHECK(cut->centre.x == doctest::Approx(at.centre.x + 0.4 * at.scale));
    CHECK(cut->centre.y == doctest::Approx(at.centre.y + 0.2 * at.scale));  // 0.2 mm toward 6: down
    const auto thinnest = std::find_if(rings.begin(), rings.end(), [](const Ring& ring) { return ring.ink == Ink::Text; });
    REQUIRE(thinnest != rings.end());
    CHECK(thinnest->centre.y == doctest::Approx(at.centre.y - 3.55 * at.scale));
}

TEST_CASE("the map stays in its box, and figures stand on the lines that they name") {
    const Box box{10, 20, 120, 100};
    const ThicknessMap map = bowl();
    const MapPlace at = place(map, box, lettering());
    const Shapes shapes = draw(map, box, lettering());
    for (const Text& text : all<Text>(shapes)) {
        const Box of = bounds(text, lettering());
        CAPTURE(text.text);
        CHECK(of.x >= box.x);
        CHECK(of.right() <= box.right());
        CHECK(of.y >= box.y);
        CHECK(of.bottom() <= box.bottom());
    }
    int named = 0;
    for (const Panel& pill : all<Panel>(shapes)) {
        const double r = std::hypot(pill.box.centre().x - at.centre.x, pill.box.centre().y - at.centre.y) / at.scale;
        const double um = 540 + 0.7 * r * r;
        CHECK(std::abs(std::remainder(um, 5)) < 1);
        CHECK(says(shapes, std::to_string(static_cast<int>(std::lround(um / 5)) * 5)));
        ++named;
    }
    CHECK(named >= 2);
    CHECK(says(shapes, "560"));
    CHECK(says(shapes, "µm"));
}

TEST_CASE("the map says whose view of the eye it is, clear of the eye, hours and legend, on a box of any shape") {
    ThicknessMap map = bowl();
    map.turned = "as one faces the eye";
    for (const Box& box : {Box{10, 20, 120, 100}, Box{10, 20, 160, 90}, Box{0, 0, 80, 140}, Box{5, 5, 95, 70}, Box{5, 5, 70, 70}}) {
        CAPTURE(box.w);
        CAPTURE(box.h);
        const MapPlace at = place(map, box, lettering());
        std::string said{};
        for (const Text& text : all<Text>(draw(map, box, lettering()))) {
            const Box of = bounds(text, lettering());
            CHECK(of.bottom() <= box.bottom() + 1e-6);
            CHECK(of.right() <= box.right() + 1e-6);
            if (map.turned.find(text.text) == std::string::npos) continue;
            said += (said.empty() ? "" : " ") + text.text;
            for (const Point& corner : {Point{of.x, of.y}, Point{of.right(), of.y}})
                CHECK(std::hypot(corner.x - at.centre.x, corner.y - at.centre.y) > 6 * at.scale);
            for (const Text& other : all<Text>(draw(map, box, lettering())))
                if (map.turned.find(other.text) == std::string::npos) CHECK_FALSE(overlap(of, bounds(other, lettering())));
        }
        CHECK(said == map.turned);
    }
}

TEST_CASE("figures on the map's lines do not crowd: the height of a letter lies between two, and more between those of the legend") {
    ThicknessMap map = bowl();
    for (int side = 50; side <= 160; side += 2) {
        map.step_um = side % 4 == 0 ? 1 : 2;
        CAPTURE(side);
        const Shapes shapes = draw(map, {0, 0, side * 1.2, static_cast<double>(side)}, lettering());
        const double cap = lettering().cap(Type::Text);
        const auto pills = all<Panel>(shapes);
        for (std::size_t i = 0; i < pills.size(); ++i)
            for (std::size_t k = i + 1; k < pills.size(); ++k) CHECK(gap(pills[i].box, pills[k].box) >= cap * 0.9);
        std::vector<double> legend{};
        for (const Text& text : all<Text>(shapes))
            if (text.align == Align::Left && text.text.size() == 3 && text.text != "µm") legend.push_back(text.at.y);
        REQUIRE(legend.size() > 1);
        for (std::size_t i = 1; i < legend.size(); ++i) CHECK(legend[i - 1] - legend[i] >= cap * 1.8);
    }
}

TEST_CASE("the grid is read between its places") {
    const ThicknessMap map = bowl();
    CHECK(um_at(map.field, {1.3, -2.1}) == doctest::Approx(540 + 0.7 * (1.69 + 4.41)).epsilon(0.0001));
    CHECK(known_at(map.field, {0, 3}) == doctest::Approx(1.5).epsilon(0.01));
    CHECK(known_at(map.field, {5, 0}) < 0);
}

TEST_CASE("a map of nothing has neither colour nor legend, but the eye and the cut") {
    ThicknessMap map = bowl();
    map.field = {};
    const Shapes shapes = draw(map, {10, 20, 120, 100}, lettering());
    CHECK(all<Contours>(shapes).empty());
    CHECK_FALSE(says(shapes, "560"));
    CHECK(all<Ring>(shapes).size() >= 2);
    CHECK(says(shapes, "12"));
}

TEST_CASE("the cut is unrolled clockwise from 12") {
    CHECK(along(90) == 0);
    CHECK(along(0) == 0.25);
    CHECK(along(270) == 0.5);
    CHECK(along(180) == 0.75);
    CHECK(along(225) == doctest::Approx(0.625));  // 7:30
}

TEST_CASE(
    "no figure of the profile stands without its unit: where the title has no room the unit does, and where the plot has none nothing is "
    "drawn") {
    WallProfile profile{.title = "Round the cut from 12, µm", .unit = "µm"};
    profile.um.assign(360, 640);
    profile.half_um.assign(360, 10);
    const double least = least_height(lettering());
    int bare = 0;
    for (const double w : {30.0, 60.0, 150.0}) {
        for (const double h : {least - 0.1, least, least * 1.5, 70.0}) {
            CAPTURE(w);
            CAPTURE(h);
            const Shapes shapes = draw(profile, {10, 10, w, h}, lettering());
            CHECK(shapes.empty() == (h < least));
            if (shapes.empty()) continue;
            CHECK(says(shapes, profile.title) == (lettering().width(Type::Text, profile.title) <= w));
            CHECK(says(shapes, profile.title) != says(shapes, profile.unit));
            bare += says(shapes, profile.unit) ? 1 : 0;
        }
    }
    CHECK(bare > 0);
}

TEST_CASE("the thinnest place of the profile stands lowest, at its hour, inside the band") {
    WallProfile profile{.title = "Round the cut"};
    for (int deg = 0; deg < 360; ++deg) {
        profile.um.push_back(640 + 20 * std::cos((deg - 45) * 3.14159265358979 / 180));
        profile.half_um.push_back(10);
    }
    profile.thinnest = WallProfile::Place{.deg = 225, .um = 620};
    const Shapes shapes = draw(profile, {10, 10, 150, 70}, lettering());
    const auto rings = all<Ring>(shapes);
    REQUIRE(rings.size() == 1);
    double lowest = 0, left = 1e9, right = 0;
    for (const Line& line : all<Line>(shapes)) {
        if (line.ink != Ink::Text) continue;
        lowest = std::max({lowest, line.a.y, line.b.y});
        left = std::min(left, line.a.x), right = std::max(right, line.b.x);
    }
    CHECK(rings[0].centre.y == doctest::Approx(lowest).epsilon(0.001));
    CHECK(rings[0].centre.x == doctest::Approx(left + 0.625 * (right - left)).epsilon(0.002));
    const auto bands = all<Polygon>(shapes);
    CHECK(bands.size() == 180);
    for (const Polygon& one : bands)
        CHECK(one.points[3].y - one.points[0].y == doctest::Approx(bands[0].points[3].y - bands[0].points[0].y));
}

TEST_CASE("both rulers have one scale, so that the oversize is its own length on the donor's") {
    SizeRulers rulers;
    for (const double mm : {6.0, 7.0, 7.5, 8.0, 9.0}) rulers.host.sizes.push_back(measure::from_mm(mm));
    for (const double mm : {6.0, 7.5, 7.75, 8.0}) rulers.donor.sizes.push_back(measure::from_mm(mm));
    rulers.host.chosen = measure::from_mm(7.5);
    rulers.donor.chosen = measure::from_mm(8);
    const Shapes shapes = draw(rulers, {0, 0, 100, 60}, lettering());
    const auto discs = all<Disc>(shapes);
    REQUIRE(discs.size() == 2);
    std::vector<Line> rules;
    for (const Line& line : all<Line>(shapes))
        if (line.ink == Ink::Mark) rules.push_back(line);
    REQUIRE(rules.size() == 2);
    const double mm = (rules[0].b.x - rules[0].a.x) / 3;  // 6 to 9
    CHECK(discs[0].centre.x == doctest::Approx(rules[0].a.x + 1.5 * mm));
    CHECK(discs[1].centre.x - discs[0].centre.x == doctest::Approx(0.5 * mm));
    rulers.donor.is_held = false;
    CHECK(all<Disc>(draw(rulers, {0, 0, 100, 60}, lettering())).size() == 1);
}
