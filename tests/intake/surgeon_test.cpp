// A surgeon's habits: read as a case file is, told where they are wrong.
#include "intake/surgeon.hpp"
#include "intake/kind.hpp"
#include "intake/problems.hpp"

#include <doctest/doctest.h>

using namespace intake;

namespace {

const std::string everything = R"(surgeon = "AB"
seat = "temporal"
pattern = "8 interrupted + 16 running"
first = "1:30"
share = 0.85
language = "en"
volume = 40
say_sutures = "every"
suction_every_s = 45
)";

}  // namespace

TEST_CASE("a surgeon's habits are read, each of them optional") {
    const auto read = read_surgeon(everything, "ab.toml");
    REQUIRE(read);
    CHECK(read->surgeon == "AB");
    CHECK(read->seat == eye::Seat::Temporal);
    CHECK(read->pattern == plan::Pattern{.interrupted = 8, .loops = 16, .running = 1});
    CHECK(read->first == measure::centideg(4500));  // half past one, as one faces the eye
    REQUIRE(read->aim);
    CHECK(read->aim->goal == plan::Goal::Share);
    CHECK(read->aim->share_permille == 850);
    CHECK(read->language == "en");
    CHECK(read->volume == 40);
    CHECK(heard_by(*read, {.on = true, .awake = true}) ==
          Sound{.on = true, .volume = 40, .sutures = Sound::Sutures::Every, .suction_every_s = 45, .awake = true});
    const auto bare = read_surgeon("surgeon = \"AB\"\n", "ab.toml");
    REQUIRE(bare);
    CHECK(*bare == SurgeonFile{.surgeon = "AB"});
    const Sound unit{.on = true, .volume = 55, .sutures = Sound::Sutures::None, .suction_every_s = 30};
    CHECK(heard_by(*bare, unit) == unit);
    const auto own = read_surgeon("surgeon = \"AB\"\nspokes = 9\n", "ab.toml");
    REQUIRE(own);
    REQUIRE(own->aim);
    CHECK(own->aim->goal == plan::Goal::Spokes);
    CHECK(own->aim->spokes == 9);
}

TEST_CASE("what is wrong in a surgeon's habits is told at its place") {
    struct Row {
        std::string text{}, key{};
        int line = 0;
    };
    const Row rows[] = {{"seat = \"head\"\n", "surgeon", 1},
                        {"surgeon = \"AB\"\nseat = \"side\"\n", "seat", 2},
                        {"surgeon = \"AB\"\npattern = \"7 interrupted\"\n", "pattern", 2},
                        {"surgeon = \"AB\"\nfirst = \"13:00\"\n", "first", 2},
                        {"surgeon = \"AB\"\nshare = 0.96\n", "share", 2},
                        {"surgeon = \"AB\"\nspokes = 8\nshare = 0.8\n", "share", 3},
                        {"surgeon = \"AB\"\nvolume = 101\n", "volume", 2},
                        {"surgeon = \"AB\"\nsay_sutures = \"all\"\n", "say_sutures", 2},
                        {"surgeon = \"AB\"\nsuction_every_s = 40\n", "suction_every_s", 2},
                        {"surgeon = \"AB\"\nglove = 7\n", "glove", 2}};
    for (const auto& row : rows) {
        CAPTURE(row.text);
        const auto read = read_surgeon(row.text, "ab.toml");
        REQUIRE_FALSE(read);
        REQUIRE(read.error().size() == 1);
        CHECK(read.error().front().key == row.key);
        CHECK(read.error().front().line == row.line);
    }
}

TEST_CASE("a file of habits is told from the others by its own key") {
    CHECK(*kind_of(everything, "ab.toml") == Kind::Surgeon);
    CHECK(check(everything, "ab.toml").empty());
    CHECK(text(Kind::Surgeon) == "surgeon");
}
