// Rules that hold whatever the figures, tried with fixed seeds.
#include "sample.hpp"

#include <doctest/doctest.h>

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
        CHECK(b.wall->thinnest_deg == (*a.wall->thinnest_deg + 40) % 360);
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
