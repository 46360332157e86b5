// Rules that hold whatever the figures, tried with fixed seeds.
#include "eye/surface.hpp"
#include "sample.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>

using namespace plan;
using sample::from_mm;
using sample::from_um;

namespace {

Inputs random_case(std::mt19937& dice) {
    std::uniform_int_distribution<int> um(450, 800);
    std::uniform_int_distribution<int> count(5, 12);
    std::uniform_int_distribution<int> permille(500, 950);
    Inputs inputs = sample::scar();
    inputs.file.thickness.readings = {};
    const int n = count(dice);
    for (int i = 0; i < n; ++i) {
        inputs.file.thickness.readings.push_back(
            {.ring = from_mm(7.5), .at = measure::centideg(i * 36000 / n), .thickness = from_um(um(dice) + i / 16.0)});
    }
    inputs.file.aim.share_permille = permille(dice);
    return inputs;
}

/// A smooth eye with the instrument's own scatter, read at eight directions on three rings and at the centre.
Inputs random_map(std::mt19937& dice) {
    std::uniform_real_distribution<double> centre(500, 640), tilt(-6, 6);
    std::uniform_int_distribution<int> permille(600, 900);
    std::normal_distribution<double> scatter(0, 6);
    const double tm = centre(dice), tx = tilt(dice), ty = tilt(dice);
    Inputs inputs = sample::scar();
    inputs.file.thickness.central = measure::from_um_tenths(tm + scatter(dice));
    inputs.file.thickness.readings = {};
    for (const double ring : {4.0, 6.0, 9.0}) {
        for (int i = 0; i < 8; ++i) {
            const double x = ring / 2 * std::cos(i * 0.7853981634), y = ring / 2 * std::sin(i * 0.7853981634);
            const double um = tm * (1 + 0.0088 * ring * ring / 4) + tx * x + ty * y + scatter(dice);
            inputs.file.thickness.readings.push_back(
                {.ring = from_mm(ring), .at = measure::centideg(4500 * i), .thickness = measure::from_um_tenths(um)});
        }
    }
    inputs.file.aim.share_permille = permille(dice);
    inputs.file.centre_x = from_mm(tilt(dice) / 20);
    inputs.file.centre_y = from_mm(tilt(dice) / 20);
    return inputs;
}

int spokes(const Plan& plan) { return plan.target ? plan.target->spokes.value_or(0) : 0; }

}  // namespace

TEST_CASE("the same inputs give the same plan") {
    std::mt19937 dice(1);
    for (int i = 0; i < 20; ++i) {
        const Inputs inputs = random_case(dice);
        CHECK(make(inputs) == make(inputs));
    }
}

TEST_CASE("turning or mirroring the readings changes where, never how deep") {
    std::mt19937 dice(2);
    for (int i = 0; i < 100; ++i) {
        const Inputs plain = random_case(dice);
        Inputs turned = plain, mirrored = plain;
        for (auto& reading : turned.file.thickness.readings) reading.at = measure::centideg(reading.at.centideg() + 4000);
        for (auto& reading : mirrored.file.thickness.readings) reading.at = measure::centideg(18000 - reading.at.centideg());
        const Plan a = make(plain), b = make(turned), c = make(mirrored);
        REQUIRE(a.wall.has_value());
        CAPTURE(i);
        CHECK(b.wall->thinnest == a.wall->thinnest);
        CHECK(c.wall->thinnest == a.wall->thinnest);
        CHECK(spokes(b) == spokes(a));
        CHECK(spokes(c) == spokes(a));
        if (plain.file.thickness.readings.size() % 2 == 0 || 36000 % plain.file.thickness.readings.size() != 0) continue;
        CHECK(b.wall->thinnest_at == measure::centideg(a.wall->thinnest_at->centideg() + 4000));
    }
}

// Less tissue everywhere can never plan a deeper cut.
TEST_CASE("an eye thinner all round never gets more spokes") {
    std::mt19937 dice(3);
    for (int i = 0; i < 200; ++i) {
        const Inputs thick = random_case(dice);
        Inputs thin = thick;
        for (auto& reading : thin.file.thickness.readings) reading.thickness = reading.thickness - from_um(20);
        CAPTURE(i);
        CHECK(spokes(make(thin)) <= spokes(make(thick)));
    }
}

TEST_CASE("a thinner reading at the thinnest place never raises the planned spokes") {
    std::mt19937 dice(4);
    for (int i = 0; i < 200; ++i) {
        const Inputs plain = random_case(dice);
        Inputs thinner = plain;
        auto& readings = thinner.file.thickness.readings;
        const auto least = std::min_element(readings.begin(), readings.end(),
                                            [](const Reading& a, const Reading& b) { return a.thickness < b.thickness; });
        least->thickness = least->thickness - from_um(30);
        CAPTURE(i);
        CHECK(spokes(make(thinner)) <= spokes(make(plain)));
    }
}

// A quarter turn and a mirror keep every coordinate exact, so the cut's own centre can turn with the readings.
TEST_CASE("turning or mirroring a map and its cut changes where, never how deep") {
    std::mt19937 dice(7);
    for (int i = 0; i < 100; ++i) {
        const Inputs plain = random_map(dice);
        Inputs turned = plain, mirrored = plain;
        for (auto& reading : turned.file.thickness.readings) reading.at = measure::centideg(reading.at.centideg() + 9000);
        turned.file.centre_x = Length{} - plain.file.centre_y;
        turned.file.centre_y = plain.file.centre_x;
        for (auto& reading : mirrored.file.thickness.readings) reading.at = measure::centideg(18000 - reading.at.centideg());
        mirrored.file.centre_x = Length{} - plain.file.centre_x;
        mirrored.file.side = eye::Side::Left;
        const Plan a = make(plain), b = make(turned), c = make(mirrored);
        CAPTURE(i);
        REQUIRE(a.wall.has_value());
        REQUIRE(a.wall->basis == "map");
        for (const Plan* other : {&b, &c}) {
            CHECK(std::abs((other->wall->thinnest - a.wall->thinnest).nm()) <= 100);
            CHECK(std::abs((other->wall->u - a.wall->u).nm()) <= 100);
            CHECK(spokes(*other) == spokes(a));
        }
        const Angle on = *a.wall->thinnest_at;
        CHECK(measure::apart_centideg(*b.wall->thinnest_at, measure::centideg(on.centideg() + 9000)) <= 100);
        CHECK(measure::apart_centideg(*c.wall->thinnest_at, measure::centideg(18000 - on.centideg())) <= 100);
    }
}

TEST_CASE("in a map a thinner reading nearest the thinnest place never raises the planned spokes, nor does a thinner eye") {
    std::mt19937 dice(8);
    for (int i = 0; i < 100; ++i) {
        const Inputs plain = random_map(dice);
        const Plan before = make(plain);
        const auto place = eye::on_cut({.diameter = plain.file.host_diameter, .x = plain.file.centre_x, .y = plain.file.centre_y},
                                       *before.wall->thinnest_at);
        const auto distance = [&](const Reading& reading) {
            const auto at = eye::on_ring(reading.ring, reading.at);
            return std::hypot((at.x - place.x).mm(), (at.y - place.y).mm());
        };
        Inputs thinner = plain, thin = plain;
        auto& readings = thinner.file.thickness.readings;
        auto nearest = std::min_element(readings.begin(), readings.end(),
                                        [&](const Reading& a, const Reading& b) { return distance(a) < distance(b); });
        nearest->thickness = nearest->thickness - from_um(20);
        for (auto& reading : thin.file.thickness.readings) reading.thickness = reading.thickness - from_um(15);
        thin.file.thickness.central = *thin.file.thickness.central - from_um(15);
        CAPTURE(i);
        CHECK(spokes(make(thinner)) <= spokes(before));
        CHECK(spokes(make(thin)) <= spokes(before));
    }
}

TEST_CASE("the chance of entering grows with every spoke, and what is left shrinks") {
    std::mt19937 dice(9);
    for (int i = 0; i < 40; ++i) {
        const Plan plan = make(i % 2 == 0 ? random_case(dice) : random_map(dice));
        CAPTURE(i);
        for (std::size_t n = 1; n < plan.ladder.size(); ++n) {
            CHECK(plan.ladder[n].entry_chance > plan.ladder[n - 1].entry_chance);
            CHECK(plan.ladder[n].reserve < plan.ladder[n - 1].reserve);
            CHECK(plan.ladder[n].reserve_u95 > plan.ladder[n - 1].reserve_u95);
        }
    }
}

// Five even readings are the first that carry both harmonics; from there more can only help.
TEST_CASE("more even readings on the cut never raise the uncertainty of an even wall") {
    Length before = from_um(1000);
    for (int n = 5; n <= 24; ++n) {
        Inputs inputs = sample::scar();
        inputs.file.thickness.readings = {};
        for (int i = 0; i < n; ++i) {
            inputs.file.thickness.readings.push_back(
                {.ring = from_mm(7.5), .at = measure::centideg(i * 36000 / n), .thickness = from_um(640)});
        }
        const Length u = make(inputs).wall->u;
        CAPTURE(n);
        CHECK(u <= before);
        before = u;
    }
    CHECK(before == measure::from_um_tenths(6 * std::sqrt(5.0 / 24)));
}

TEST_CASE("the entry limit holds for every plan by share") {
    std::mt19937 dice(5);
    for (int i = 0; i < 100; ++i) {
        const Inputs inputs = random_case(dice);
        const Plan plan = make(inputs);
        if (!plan.target) continue;
        const Rung& rung = plan.ladder[static_cast<std::size_t>(*plan.target->spokes)];
        CAPTURE(i);
        CHECK(rung.entry_chance <= inputs.file.aim.entry_limit);
        CHECK(rung.share <= inputs.file.aim.share_permille / 1000.0 + 1e-12);
        CHECK(rung.travel <= plan.wall->thinnest);
    }
}

TEST_CASE("a wall worse known never gets more spokes under the same limit") {
    Inputs inputs = sample::scar();
    inputs.file.aim.share_permille = 950;
    inputs.file.thickness.method = Method::Scheimpflug;
    const int sure = spokes(make(inputs));
    inputs.file.thickness.method = Method::Ultrasound;
    CHECK(spokes(make(inputs)) <= sure);
}
