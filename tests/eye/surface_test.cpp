// The thickness surface of readings on several rings. Closed forms and properties; the surfaces are invented.
#include "eye/surface.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>
#include <random>

using namespace eye;
using measure::centideg;
using measure::from_mm;
using measure::from_um;

namespace {

const Length oct = from_um(6);

Cut cut(double mm, double x = 0, double y = 0) { return {.diameter = from_mm(mm), .x = from_mm(x), .y = from_mm(y)}; }

/// The profile of 80 normal eyes with a tilt downward and an oval: of the second order.
double smooth(const Point& p) {
    const double x = p.x.mm(), y = p.y.mm();
    return 540 * (1 + 0.0088 * (x * x + y * y)) + 4 * y - 1.5 * x + 0.8 * x * y;
}

/// A thinning off the centre, which no second order holds.
double coned(const Point& p) {
    const double x = p.x.mm() + 0.8, y = p.y.mm() + 1.2;
    return smooth(p) - 90 * std::exp(-(x * x + y * y) / 5);
}

template <class F>
std::vector<MapReading> rings(std::initializer_list<double> diameters, int meridians, F um, int turned_deg = 0) {
    std::vector<MapReading> readings{};
    for (const double ring : diameters) {
        for (int i = 0; i < (ring == 0 ? 1 : meridians); ++i) {
            const Point at = on_ring(from_mm(ring), centideg(100 * turned_deg + i * 36000 / meridians));
            readings.push_back({.at = at, .thickness = from_um(um(at))});
        }
    }
    return readings;
}

Surface fitted(const std::vector<MapReading>& readings, const Cut& to = cut(7.5)) {
    const auto fit = fit_surface(readings, to, oct);
    REQUIRE(fit.surface.has_value());
    return *fit.surface;
}

bool refused(const std::vector<MapReading>& readings, const Cut& to) { return !fit_surface(readings, to, oct).surface.has_value(); }

}  // namespace

TEST_CASE("a wall of the second order is found exactly, between the readings too and on a cut off the centre") {
    const Cut off = cut(7.5, 0.4, -0.6);
    const Surface surface = fitted(rings({0, 3, 6, 9}, 8, smooth), off);
    CHECK(surface.order == 2);
    CHECK(surface.rms.um() < 0.01);
    CHECK_FALSE(surface.scattered);
    CHECK(surface.odd.empty());
    for (int deg = 0; deg < 360; ++deg) {
        const Estimate here = surface.at(on_cut(off, measure::whole_deg(deg)));
        CHECK(std::abs(here.thickness.um() - smooth(on_cut(off, measure::whole_deg(deg)))) <= 0.06);
        CHECK(here.supported);
    }
}

// Eight readings of one ring and one at the centre: the centre stands alone, so it is known as well as one reading; on the
// ring five of the eight harmonics are free: leverage 5/8. A closed form.
TEST_CASE("the uncertainty is the reading's own where nothing else bears on it, and less where others do") {
    const Surface surface = fitted(rings({0, 8}, 8, smooth), cut(7.5));
    CHECK(surface.at({}).u.um() == doctest::Approx(6.0).epsilon(1e-4));
    CHECK(surface.at(on_ring(from_mm(8), centideg(2000))).u.um() == doctest::Approx(6 * std::sqrt(5.0 / 8)).epsilon(1e-4));
}

// The spread of many fits to readings that scatter by 6 um, against the u that one fit states.
TEST_CASE("the stated uncertainty is the scatter of repeated measurements") {
    std::mt19937 dice(31);
    std::normal_distribution<double> scatter(0, 6);
    const Point place = on_cut(cut(7.5, 0.3, 0.2), measure::whole_deg(200));
    const double u = fitted(rings({0, 3, 6, 9}, 8, smooth)).at(place).u.um();
    double squares = 0;
    const int rounds = 2000;
    for (int i = 0; i < rounds; ++i) {
        auto readings = rings({0, 3, 6, 9}, 8, smooth);
        for (auto& reading : readings) reading.thickness = reading.thickness + from_um(scatter(dice));
        // The lowest order alone: how often a higher one is called for by chance is not the question here.
        const auto fit = fit_surface(readings, cut(7.5), from_um(60));
        REQUIRE(fit.surface.has_value());
        squares += std::pow(fit.surface->at(place).thickness.um() - smooth(place), 2);
    }
    CHECK(std::sqrt(squares / rounds) == doctest::Approx(u).epsilon(0.05));
}

TEST_CASE("the order rises only where the readings call for it and can bear it") {
    CHECK(fitted(rings({0, 2, 4, 6, 8, 9}, 12, smooth)).order == 2);
    const Surface cone = fitted(rings({0, 2, 4, 6, 8, 9}, 12, coned));
    CHECK(cone.order == 4);
    for (int deg = 0; deg < 360; ++deg) {
        const Point here = on_cut(cut(7.5), measure::whole_deg(deg));
        CHECK(std::abs(cone.at(here).thickness.um() - coned(here)) <= 12);
    }
    // Too few for a higher order: the scatter about the second counts as the readings' own.
    const Surface poor = fitted(rings({0, 4, 9}, 8, coned));
    CHECK(poor.order == 2);
    CHECK(poor.scattered);
    CHECK(poor.sd > oct);
}

TEST_CASE("a cut outside the readings is refused, however many they are") {
    CHECK(refused(rings({0, 2, 4}, 8, smooth), cut(8)));
    CHECK(refused(rings({0, 2, 4}, 24, smooth), cut(8)));
    CHECK(refused(rings({0, 1, 2, 3, 4}, 72, smooth), cut(8)));
    CHECK_FALSE(refused(rings({0, 3, 5, 7}, 8, smooth), cut(7.5)));
    CHECK(refused(rings({0, 3, 5, 7}, 8, smooth), cut(7.5, 2, 0)));
}

TEST_CASE("readings on one side, or on one meridian, are refused, and where it is open is told") {
    auto half = rings({0, 3, 6, 9}, 12, smooth);
    std::erase_if(half, [](const MapReading& reading) { return reading.at.x < from_mm(-0.01); });
    const auto fit = fit_surface(half, cut(7.5), oct);
    CHECK_FALSE(fit.surface.has_value());
    REQUIRE(fit.open.has_value());
    CHECK(measure::apart_centideg(*fit.open, measure::whole_deg(180)) <= 3000);

    std::vector<MapReading> meridian{};
    for (int i = -6; i <= 6; ++i) meridian.push_back({.at = {.x = from_mm(i * 0.75), .y = {}}, .thickness = from_um(600)});
    const auto line = fit_surface(meridian, cut(7.5), oct);
    CHECK_FALSE(line.surface.has_value());
    CHECK_FALSE(line.open.has_value());
}

// Four directions tell nothing of an oval that lies between them; the rise all round and a tilt they do tell.
TEST_CASE("readings that leave the oval open carry the rise and a tilt") {
    const auto tilted = [](const Point& p) {
        const double x = p.x.mm(), y = p.y.mm();
        return 540 * (1 + 0.0088 * (x * x + y * y)) + 4 * y - 1.5 * x;
    };
    const Surface surface = fitted(rings({0, 5, 9}, 4, tilted));
    CHECK(surface.order == 1);
    for (int deg = 0; deg < 360; deg += 5) {
        const Point here = on_cut(cut(7.5), measure::whole_deg(deg));
        CHECK(std::abs(surface.at(here).thickness.um() - tilted(here)) <= 0.06);
    }
}

TEST_CASE("a place between supported ones and one far outside are told apart") {
    const Surface surface = fitted(rings({0, 3, 6, 9}, 8, smooth));
    CHECK(surface.at({}).supported);
    CHECK_FALSE(surface.at({.x = from_mm(7), .y = {}}).supported);
    CHECK(surface.at({.x = from_mm(7), .y = {}}).u > surface.at({.x = from_mm(4), .y = {}}).u);
}

TEST_CASE("a reading that the others do not bear out is named and stays in the fit") {
    auto readings = rings({0, 3, 6, 9}, 8, smooth);
    readings[12].thickness = readings[12].thickness + from_um(70);
    const Surface surface = fitted(readings);
    CHECK(surface.order == 2);
    REQUIRE(surface.odd.size() == 1);
    CHECK(surface.odd[0].reading == 12);
    CHECK(surface.odd[0].off.um() == doctest::Approx(70).epsilon(0.01));
    CHECK(surface.at(readings[12].at).thickness.um() > smooth(readings[12].at) + 5);
}

TEST_CASE("turning all readings turns the surface, and mirroring them mirrors it") {
    std::mt19937 dice(5);
    std::normal_distribution<double> scatter(0, 6);
    std::uniform_int_distribution<int> turn(1, 359);
    for (int round = 0; round < 100; ++round) {
        const int by = turn(dice);
        auto plain = rings({0, 3, 6, 9}, 8, coned);
        auto turned = rings({0, 3, 6, 9}, 8, coned, by);
        auto mirrored = plain;
        for (std::size_t i = 0; i < plain.size(); ++i) {
            plain[i].thickness = plain[i].thickness + from_um(scatter(dice));
            turned[i].thickness = mirrored[i].thickness = plain[i].thickness;
            mirrored[i].at.x = Length{} - plain[i].at.x;
        }
        const Surface a = fitted(plain), b = fitted(turned), c = fitted(mirrored);
        CAPTURE(round);
        CHECK(b.order == a.order);
        CHECK(c.order == a.order);
        for (int deg = 0; deg < 360; deg += 30) {
            const Estimate here = a.at(on_cut(cut(7.5), measure::whole_deg(deg)));
            const Estimate there = b.at(on_cut(cut(7.5), measure::whole_deg(deg + by)));
            const Estimate opposite = c.at(on_cut(cut(7.5), measure::whole_deg(540 - deg)));
            CHECK(std::abs((there.thickness - here.thickness).nm()) <= 100);
            CHECK(std::abs((opposite.thickness - here.thickness).nm()) <= 100);
            CHECK(std::abs((there.u - here.u).nm()) <= 2);
        }
    }
}

TEST_CASE("more readings never raise the uncertainty of an even wall") {
    std::mt19937 dice(6);
    std::uniform_int_distribution<int> ring(10, 90), at(0, 35999);
    const auto even = [](const Point&) { return 640.0; };
    auto readings = rings({0, 4, 9}, 8, even);
    Surface before = fitted(readings);
    for (int more = 0; more < 60; ++more) {
        readings.push_back({.at = on_ring(from_mm(ring(dice) / 10.0), centideg(at(dice))), .thickness = from_um(640)});
        const Surface after = fitted(readings);
        for (int deg = 0; deg < 360; deg += 15)
            CHECK(after.at(on_cut(cut(7.5), measure::whole_deg(deg))).u <= before.at(on_cut(cut(7.5), measure::whole_deg(deg))).u);
        before = after;
    }
}
