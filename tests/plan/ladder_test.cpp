#include "plan/ladder.hpp"
#include "sample.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <fstream>
#include <sstream>
#include <string>

using namespace plan;
using measure::from_um;

namespace {

struct Golden {
    instrument::Reach reach{};
    WallFigures wall{};
    Length travelled{};
    double chance = 0;
};

std::vector<Golden> golden() {
    std::ifstream file(TESTS_DIR "/plan/golden/chance.tsv");
    std::vector<Golden> rows{};
    for (std::string line; std::getline(file, line);) {
        std::istringstream cells(line);
        std::string kind;
        double mean = 0, sd = 0, n = 0, wall = 0, u = 0, travelled = 0, chance = 0;
        if (cells >> kind; kind != "chance") continue;
        cells >> mean >> sd >> n >> wall >> u >> travelled >> chance;
        REQUIRE_FALSE(cells.fail());
        rows.push_back({.reach = {.mean = mean, .sd = sd, .n = static_cast<int>(n), .source = {}},
                        .wall = {.thinnest = from_um(wall), .u_um = u},
                        .travelled = from_um(travelled),
                        .chance = chance});
    }
    return rows;
}

const instrument::Reach study{.mean = 1.046, .sd = 0.082, .n = 11, .source = {}};

}  // namespace

// Clin Ophthalmol 2014;8:2391-6: aimed at 80 %, reached 83.7 +- 6.53 % in 11 eyes, least 71.3, most 95.35 %, 95 % interval of
// the mean 79.8 to 87.6 % (the paper's own, with 1.96).
TEST_CASE("the reach factor is the depth study's figures over its aim") {
    CHECK(83.7 / 80 == doctest::Approx(study.mean).epsilon(0.0005));
    CHECK(6.53 / 80 == doctest::Approx(study.sd).epsilon(0.005));
    CHECK(80 * study.mean - 1.96 * 80 * study.sd / std::sqrt(11.0) == doctest::Approx(79.8).epsilon(0.001));
    CHECK(80 * study.mean + 1.96 * 80 * study.sd / std::sqrt(11.0) == doctest::Approx(87.6).epsilon(0.001));
    // All eleven lie inside the 95 % interval that the ladder gives for the next blade.
    auto trephine = sample::trephine();
    trephine.advance = from_um(80);
    const auto rungs = ladder(trephine, {.thinnest = from_um(100), .u_um = 0});
    const double reached = 100 - rungs[1].reserve.um();
    CHECK(reached - rungs[1].reserve_u95.um() < 71.3);
    CHECK(reached + rungs[1].reserve_u95.um() > 95.35);
}

// Student's t with 10 degrees of freedom at the study's figures, as any table of t gives them.
TEST_CASE("with an exact wall the chance of entering is 0.060, 1.92, 7.93, 23.23 and 46.99 %") {
    struct Row {
        int share;
        double percent;
    };
    for (const Row& row : {Row{70, 0.060}, Row{80, 1.92}, Row{85, 7.93}, Row{90, 23.23}, Row{95, 46.99}}) {
        CAPTURE(row.share);
        const double percent = 100 * entry_chance(study, {.thinnest = from_um(600), .u_um = 0}, from_um(6.0 * row.share));
        CHECK(std::abs(percent - row.percent) <= (row.share == 70 ? 0.0005 : 0.005));
    }
}

// The same with a scatter known for certain: the normal distribution, 0.6, 5.5, 21 and 47 %.
TEST_CASE("with endless cuts the chance becomes that of the normal distribution") {
    instrument::Reach endless = study;
    endless.sd = 6.53 / 80;
    endless.n = 1'000'000;
    for (const auto& [share, percent] : {std::pair(80, 0.6), std::pair(85, 5.5), std::pair(90, 21.0), std::pair(95, 47.0)}) {
        const int in_question = share;
        CAPTURE(in_question);
        const double z = (1 - endless.mean * share / 100) / (endless.sd * share / 100);
        const double chance = entry_chance(endless, {.thinnest = from_um(600), .u_um = 0}, from_um(6.0 * share));
        CHECK(chance == doctest::Approx(0.5 * std::erfc(z / std::sqrt(2.0))).epsilon(1e-4));
        CHECK(std::abs(100 * chance - percent) <= (percent < 10 ? 0.1 : 0.5));
    }
}

// R's pt and integrate, see golden/chance.R for the command.
TEST_CASE("the chance of entering agrees with R to 1e-9") {
    const auto rows = golden();
    REQUIRE(rows.size() >= 40);
    for (const Golden& row : rows) {
        CAPTURE(row.wall.u_um);
        CAPTURE(row.travelled.um());
        CHECK(std::abs(entry_chance(row.reach, row.wall, row.travelled) - row.chance) <= 1e-9);
    }
}

TEST_CASE("at zero nothing has entered") {
    CHECK(entry_chance(study, {.thinnest = from_um(600), .u_um = 20}, {}) == 0);
    const auto rungs = ladder(sample::trephine(), {.thinnest = from_um(612), .u_um = 6});
    CHECK(rungs[0] == Rung{.spoke = 0,
                           .travel = {},
                           .share = 0,
                           .reserve = from_um(612),
                           .reserve_u95 = measure::from_um_tenths(1.96 * 6),
                           .entry_chance = 0});
}

// t(0.975, 10) = 2.228139 (any table; JCGM 100 table G.2 prints 2.23): 2.228139 x 0.082 x sqrt(12 / 11) x 480 = 91.599 um.
TEST_CASE("the reserve is what the blade is expected to leave, with both errors") {
    const auto rungs = ladder(sample::trephine(), {.thinnest = from_um(612), .u_um = 6});
    CHECK(rungs[8].travel == from_um(480));
    CHECK(rungs[8].share == doctest::Approx(0.784314).epsilon(1e-6));
    CHECK(rungs[8].reserve == measure::from_um_tenths(612 - 1.046 * 480));
    CHECK(rungs[8].reserve_u95 == measure::from_um_tenths(std::hypot(91.599, 11.76)));
}

TEST_CASE("the ladder ends at the first rung that is as good as through") {
    const auto rungs = ladder(sample::trephine(), {.thinnest = from_um(612), .u_um = 6});
    CHECK(rungs.back().entry_chance > 0.999);
    CHECK(rungs[rungs.size() - 2].entry_chance <= 0.999);
    auto fine = sample::trephine();
    fine.advance = from_um(10);
    const auto long_one = ladder(fine, {.thinnest = from_um(1200), .u_um = 6});
    CHECK(long_one.size() > 60);
    CHECK(long_one.back().entry_chance > 0.999);
}

TEST_CASE("the chance of entering grows with every spoke") {
    for (const double advance : {10.0, 47.3, 60.0, 62.5, 250.0}) {
        for (const double wall : {300.0, 540.0, 612.0, 1200.0}) {
            for (const double u : {0.0, 0.5, 6.0, 40.0}) {
                CAPTURE(advance);
                CAPTURE(wall);
                CAPTURE(u);
                auto trephine = sample::trephine();
                trephine.advance = from_um(advance);
                const auto rungs = ladder(trephine, {.thinnest = from_um(wall), .u_um = u});
                for (std::size_t i = 1; i < rungs.size(); ++i) CHECK(rungs[i].entry_chance > rungs[i - 1].entry_chance);
            }
        }
    }
}

TEST_CASE("chances are worded without false precision, tested before any rounding") {
    struct Row {
        double chance;
        ChanceWords words;
    };
    const std::vector<Row> rows{{0, {"chance.under", {}}},      {0.00999, {"chance.under", {}}}, {0.01, {"chance.about", 100}},
                                {0.0193, {"chance.about", 50}}, {0.0444, {"chance.about", 25}},  {0.048, {"chance.about", 20}},
                                {0.05, {"chance.about", 20}},   {0.0526, {"chance.about", 19}},  {0.2323, {"chance.about", 4}},
                                {0.5, {"chance.about", 2}},     {0.5001, {"chance.half", {}}},   {0.8999, {"chance.half", {}}},
                                {0.9, {"chance.sure", {}}},     {1, {"chance.sure", {}}}};
    for (const Row& row : rows) {
        CAPTURE(row.chance);
        CHECK(chance_words(row.chance) == row.words);
    }
}
