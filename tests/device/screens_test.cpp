#include "device/screens.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace device;

// The limits are this project's own: 2 to 16 pixels a millimetre, both ways within 10 %.
TEST_CASE("a monitor's millimetres are believed only when plausible") {
    struct Row {
        std::string name{};
        Report report{};
        std::optional<double> expected{};
    };
    const std::vector<Row> rows = {
        // 16:9 of 21.5 inch (1 inch is 25.4 mm): 476 by 268 mm
        {.name = "full HD on 21.5 inch", .report = {1920, 1080, 476, 268}, .expected = 4.0317},
        {.name = "1024 by 600 on 10 inch", .report = {1024, 600, 219, 128}, .expected = 4.6816},
        {.name = "4K on 27 inch", .report = {3840, 2160, 598, 336}, .expected = 6.4250},
        {.name = "nothing reported", .report = {1920, 1080, 0, 0}, .expected = {}},
        {.name = "one side reported", .report = {1920, 1080, 476, 0}, .expected = {}},
        {.name = "the aspect in place of the size", .report = {1920, 1080, 160, 90}, .expected = 12.0},
        {.name = "centimetres", .report = {1920, 1080, 48, 27}, .expected = {}},
        {.name = "a projector's wall", .report = {1920, 1080, 2000, 1125}, .expected = {}},
        {.name = "least", .report = {1000, 1000, 500, 500}, .expected = 2.0},
        {.name = "under the least", .report = {1000, 1000, 501, 501}, .expected = {}},
        {.name = "most", .report = {1600, 1600, 100, 100}, .expected = 16.0},
        {.name = "over the most", .report = {1601, 1601, 100, 100}, .expected = {}},
        {.name = "ways 10 % apart", .report = {1100, 1000, 250, 250}, .expected = 4.2},
        {.name = "ways more than 10 % apart", .report = {1105, 1000, 250, 250}, .expected = {}},
        {.name = "turned, the size not", .report = {1080, 1920, 476, 268}, .expected = {}},
    };
    for (const Row& row : rows) {
        CAPTURE(row.name);
        const auto found = px_per_mm(row.report);
        REQUIRE(found.has_value() == row.expected.has_value());
        if (found) CHECK(*found == doctest::Approx(*row.expected).epsilon(0.0001));
    }
}

TEST_CASE("a told size stands in for a report and is held to the same rules") {
    const Report report{1920, 1080, 0, 0};
    const auto told = px_per_mm(report, {476, 268});
    REQUIRE(told.has_value());
    CHECK(*told == doctest::Approx(4.0317).epsilon(0.0001));
    CHECK_FALSE(px_per_mm(report, {268, 476}).has_value());
    CHECK_FALSE(px_per_mm(report, {-476, -268}).has_value());
}
