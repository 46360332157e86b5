#include "picture/wall_section.hpp"
#include "picture/bounds.hpp"
#include "support/lettering.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace picture;

namespace {

Lettering lettering() { return support::lettering(screen::table_typography({223, 125})); }

// The invented case of the pictures: 612 um at the thinnest place, 60 um a spoke, 8 planned.
WallSection section(int position) {
    return {.wall = measure::from_um(612),
            .advance = measure::from_um(60),
            .position = position,
            .planned = 8,
            .band_low = measure::from_um(155),
            .band_high = measure::from_um(222),
            .surface_label = "surface",
            .foot = {"thinnest 612 µm, at 7:30", "band: where the blade may be"}};
}

template <class T>
std::vector<T> all(const Shapes& shapes, Ink ink) {
    std::vector<T> made;
    for (const auto& shape : shapes) {
        if (const auto* one = std::get_if<T>(&shape); one != nullptr && one->ink == ink) made.push_back(*one);
    }
    return made;
}

std::vector<Text> texts(const Shapes& shapes) {
    std::vector<Text> made;
    for (const auto& shape : shapes) {
        if (const auto* one = std::get_if<Text>(&shape)) made.push_back(*one);
    }
    return made;
}

Panel panel(const Shapes& shapes, Ink fill) {
    for (const auto& shape : shapes) {
        if (const auto* one = std::get_if<Panel>(&shape); one != nullptr && one->fill == fill) return *one;
    }
    FAIL("no panel");
    return {};
}

double tip(const Shapes& shapes) {
    const auto blades = all<Polygon>(shapes, Ink::Steel);
    REQUIRE(blades.size() == 1);
    double lowest = -1e9;
    for (const auto& p : blades[0].points) lowest = std::max(lowest, p.y);
    return lowest;
}

const Box box{0, 0, 70, 110};

}  // namespace

TEST_CASE("depth is to scale: the tip at its spokes, the plan line at the plan, the band where it was stated") {
    const auto letters = lettering();
    for (int position = -3; position <= 9; ++position) {
        CAPTURE(position);
        const Shapes shapes = draw(section(position), box, letters);
        const Panel tissue = panel(shapes, Ink::Tissue);
        const double per_um = tissue.box.h / 612;
        CHECK(tip(shapes) == doctest::Approx(tissue.box.y + position * 60 * per_um).epsilon(1e-9));
        const auto plan = all<Line>(shapes, Ink::Accent);
        REQUIRE(plan.size() == 2);
        CHECK(plan[0].a.y == doctest::Approx(tissue.box.y + 480 * per_um).epsilon(1e-9));
        const Panel band = panel(shapes, Ink::Band);
        CHECK(band.box.y == doctest::Approx(tissue.box.y + 155 * per_um).epsilon(1e-9));
        CHECK(band.box.h == doctest::Approx(67 * per_um).epsilon(1e-9));
    }
}

TEST_CASE("the scale does not move while the blade comes down") {
    const auto letters = lettering();
    const Box first = panel(draw(section(-3), box, letters), Ink::Tissue).box;
    for (int position = -2; position <= 9; ++position) CHECK(panel(draw(section(position), box, letters), Ink::Tissue).box == first);
}

TEST_CASE("a raised blade stands above the surface, and is seen") {
    const auto letters = lettering();
    const Shapes shapes = draw(section(-3), box, letters);
    CHECK(tip(shapes) < panel(shapes, Ink::Tissue).box.y - 3);
    CHECK(tip(shapes) > box.y + 5);
}

TEST_CASE("ticks go a spoke at a time to the last whole spoke of the wall") {
    const Shapes shapes = draw(section(3), box, lettering());
    CHECK(all<Line>(shapes, Ink::Mark).size() == 10);  // 0 to 10 of 612 / 60 = 10.2, the plan's own drawn apart
    CHECK(all<Line>(shapes, Ink::Cornea).size() == 2);
}

TEST_CASE("without a wall nothing is claimed below: no lower edge, no tick past what is planned") {
    WallSection open = section(3);
    open.wall = std::nullopt;
    open.band_low = open.band_high = std::nullopt;
    const Shapes shapes = draw(open, box, lettering());
    CHECK(all<Line>(shapes, Ink::Cornea).size() == 1);
    CHECK(all<Line>(shapes, Ink::Mark).size() == 8);  // 0 to 7; 8 is the plan's
    open.planned = std::nullopt;
    CHECK(all<Line>(draw(open, box, lettering()), Ink::Mark).size() == 4);  // 0 to 3: what has been turned
}

TEST_CASE("texts never overlap, leave the box or stand on the tissue, at every size and position") {
    const auto letters = lettering();
    for (double w = 44; w <= 160; w += 9) {
        for (double h = 45; h <= 220; h += 9) {
            for (const int position : {-3, 0, 3, 8, 11}) {
                const Box here{10, 10, w, h};
                const Shapes shapes = draw(section(position), here, letters);
                const auto words = texts(shapes);
                const Box tissue = panel(shapes, Ink::Tissue).box;
                bool apart = true, inside = true, off_tissue = true;
                for (std::size_t i = 0; i < words.size(); ++i) {
                    const Box own = bounds(words[i], letters);
                    inside = inside && own.x >= here.x - 1e-6 && own.right() <= here.right() + 1e-6 &&
                             own.bottom() <= here.bottom() + letters.cap(Type::Text);
                    off_tissue = off_tissue && !overlap(own, tissue);
                    for (std::size_t k = i + 1; k < words.size(); ++k) apart = apart && !overlap(own, bounds(words[k], letters));
                }
                CAPTURE(w);
                CAPTURE(h);
                CAPTURE(position);
                CHECK(apart);
                CHECK(inside);
                CHECK(off_tissue);
            }
        }
    }
}
