// The file of screens that were measured, as the program writes it: read back the same, and told like any other file where it is wrong.
#include "intake/screens.hpp"
#include "intake/kind.hpp"

#include <doctest/doctest.h>

using namespace intake;

namespace {

MeasuredScreen screen(const std::string& name, double width_mm, double height_mm) {
    return {.screen = {.name = name, .width_px = 1920, .height_px = 1080, .reported_width_mm = 480, .reported_height_mm = 270},
            .glass = {.width = measure::from_mm(width_mm), .height = measure::from_mm(height_mm)}};
}

}  // namespace

TEST_CASE("measured screens are read back as they were written, names and all") {
    const MeasuredScreens screens{screen("HDMI-1", 344.25, 193.64), screen("a \"quoted\" \\ name", 597.7, 336.2)};
    const auto read = read_screens(screens_text(screens), "screens.toml");
    REQUIRE(read);
    CHECK(*read == screens);
    CHECK(check(screens_text(screens), "screens.toml").empty());
    CHECK(*kind_of(screens_text(screens), "screens.toml") == Kind::Screens);
    const auto none = read_screens(screens_text({}), "screens.toml");
    REQUIRE(none);
    CHECK(none->empty());
}

TEST_CASE("a screen measured again stands there once, with the newer size; others stay") {
    const MeasuredScreens both = with({screen("HDMI-1", 344, 194), screen("DP-1", 500, 281)}, screen("HDMI-1", 350, 197));
    CHECK(both == MeasuredScreens{screen("DP-1", 500, 281), screen("HDMI-1", 350, 197)});
}

TEST_CASE("what is wrong in a file of screens is told at its place") {
    struct Row {
        std::string name{}, text{}, key{};
        int line = 0;
    };
    const std::string head = "[[screen]]\nname = \"HDMI-1\"\npixels = [1920, 1080]\nreported_mm = [480, 270]\n";
    const Row rows[] = {{"a glass of 20 mm", head + "glass_mm = [20, 194]\n", "screen[1].glass_mm", 5},
                        {"a glass of 4 m", head + "glass_mm = [4000, 194]\n", "screen[1].glass_mm", 5},
                        {"one number", head + "glass_mm = [344]\n", "screen[1].glass_mm", 5},
                        {"no glass", head, "screen[1].glass_mm", 1},
                        {"an unknown key", head + "glass_mm = [344, 194]\ndpi = 96\n", "screen[1].dpi", 6},
                        {"twice", head + "glass_mm = [344, 194]\n" + head + "glass_mm = [344, 194]\n", "screen[2].name", 7}};
    for (const auto& row : rows) {
        CAPTURE(row.name);
        const auto read = read_screens(row.text, "screens.toml");
        REQUIRE_FALSE(read);
        REQUIRE(read.error().size() == 1);
        CHECK(read.error().front().key == row.key);
        CHECK(read.error().front().line == row.line);
    }
}
