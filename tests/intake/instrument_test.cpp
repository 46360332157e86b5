#include "intake/instrument.hpp"
#include "problems.hpp"

using namespace intake;
using measure::from_mm;
using measure::from_um;

namespace {

const std::string trephine = R"(kind = "trephine"
id = "own-trephine"
name = "Own trephine"
advance_um = 62.5
spokes_per_turn = 4
lower = "counter-clockwise"
raise = 2
marks = 12
sizes_mm = [7, 7.25]
)";
const std::string punch = "kind = \"punch\"\nid = \"p\"\nname = \"P\"\nsizes_mm = [7.75]\n";

test::Lines trephine_problems(const std::string& text) { return test::lines(read_trephine(text, "t.toml")); }

}  // namespace

TEST_CASE("a trephine reads exactly; what is not said has the stated default") {
    const auto read = read_trephine(trephine, "t.toml");
    REQUIRE(read);
    CHECK(*read == instrument::Trephine{.id = "own-trephine",
                                        .name = "Own trephine",
                                        .advance = measure::nm(62'500),
                                        .spokes_per_turn = 4,
                                        .lower = instrument::Turn::CounterClockwise,
                                        .raise = 2,
                                        .marks = 12,
                                        .mark_offset = {},
                                        .diameters = {from_mm(7), from_mm(7.25)},
                                        .suction = true,
                                        .reach = published_reach()});
}

// 83.7 +- 6.53 % reached where 80 % was aimed at, n = 11: Clin Ophthalmol 2014;8:2391-6.
TEST_CASE("the published reach is that of the one open study") {
    CHECK(published_reach().mean == doctest::Approx(83.7 / 80).epsilon(0.0005));
    CHECK(published_reach().sd == doctest::Approx(6.53 / 80).epsilon(0.005));
    CHECK(published_reach().n == 11);
    CHECK(published_reach().source.find("2014;8:2391-6") != std::string::npos);
}

TEST_CASE("an own audit's reach replaces the published one, whole or not at all") {
    const auto read = read_trephine(
        trephine + "suction = false\nmark_offset_deg = -7.5\n[reach]\nmean = 1\nsd = 0.05\nn = 40\nsource = \"own audit\"\n", "t");
    REQUIRE(read);
    CHECK(read->reach == instrument::Reach{.mean = 1, .sd = 0.05, .n = 40, .source = "own audit"});
    CHECK(!read->suction);
    CHECK(read->mark_offset == measure::centideg(-750));
    CHECK(trephine_problems(trephine + "[reach]\nmean = 1.0\n") ==
          test::Lines{"t.toml:10:1: reach.sd: found nothing; allowed a number from 0.001 to 0.5",
                      "t.toml:10:1: reach.n: found nothing; allowed a whole number from 3 to 100000",
                      "t.toml:10:1: reach.source: found nothing; allowed text of 1 to 200 characters on one line, no blanks at its ends"});
}

TEST_CASE("one thing changed in a trephine is told at its place") {
    struct Row {
        std::string name, from, to;
        test::Lines lines;
    };
    const std::vector<Row> rows{
        {"the advance has no hidden default",
         "advance_um = 62.5\n",
         "",
         {"t.toml:1:1: advance_um: found nothing; allowed a number from 10 to 250 um in whole tenths"}},
        {"finer than tenths",
         "62.5",
         "62.55",
         {"t.toml:4:14: advance_um: found 62.55; allowed a number from 10 to 250 um in whole tenths"}},
        {"too small", "62.5", "9.9", {"t.toml:4:14: advance_um: found 9.9; allowed a number from 10 to 250 um in whole tenths"}},
        {"too large", "62.5", "250.1", {"t.toml:4:14: advance_um: found 250.1; allowed a number from 10 to 250 um in whole tenths"}},
        {"a punch", "\"trephine\"", "\"punch\"", {"t.toml:1:8: kind: found \"punch\"; allowed \"trephine\""}},
        {"no kind", "kind = \"trephine\"\n", "", {"t.toml:1:1: kind: found nothing; allowed \"trephine\""}},
        {"another way of turning",
         "counter-clockwise",
         "left",
         {"t.toml:6:9: lower: found \"left\"; allowed \"clockwise\", \"counter-clockwise\""}},
        {"sizes not in order", "[7, 7.25]", "[7.25, 7]", {"t.toml:9:19: sizes_mm: found 7; allowed sizes from small to large, each once"}},
        {"a size twice", "[7, 7.25]", "[7, 7.0]", {"t.toml:9:16: sizes_mm: found 7; allowed sizes from small to large, each once"}},
        {"no size", "[7, 7.25]", "[]", {"t.toml:9:12: sizes_mm: found a list of 0 values; allowed at least one size"}},
        {"no sizes", "sizes_mm = [7, 7.25]\n", "", {"t.toml:1:1: sizes_mm: found nothing; allowed a list: a number from 1 to 12 mm"}},
        {"one size, no list", "[7, 7.25]", "7", {"t.toml:9:12: sizes_mm: found 7; allowed a list: a number from 1 to 12 mm"}},
        {"a size that is none", "[7, 7.25]", "[7, \"8\"]", {"t.toml:9:16: sizes_mm[2]: found \"8\"; allowed a number from 1 to 12 mm"}},
        {"an id with blanks",
         "own-trephine",
         "own trephine",
         {"t.toml:2:6: id: found \"own trephine\"; allowed an id of small letters, digits and hyphens, such as \"first-four\""}},
        {"an unknown key",
         "marks = 12",
         "marks = 12\nmaker = \"x\"",
         {"t.toml:9:1: maker: found an unknown key; allowed kind, id, name, advance_um, spokes_per_turn, lower, raise, marks, "
          "mark_offset_deg, sizes_mm, suction, reach"}},
    };
    for (const Row& row : rows) {
        CAPTURE(row.name);
        CHECK(trephine_problems(test::replaced(trephine, row.from, row.to)) == row.lines);
    }
}

TEST_CASE("the ends of an advance are allowed: 10 and 250 um") {
    for (const char* raw : {"10", "250", "60", "62.5", "10.1"}) {
        const std::string um = raw;
        CAPTURE(um);
        CHECK(trephine_problems(test::replaced(trephine, "62.5", um)) == test::Lines{});
    }
}

TEST_CASE("a punch reads with four dots and vacuum unless it says otherwise") {
    const auto read = read_punch(punch, "p.toml");
    REQUIRE(read);
    CHECK(*read == instrument::Punch{.id = "p", .name = "P", .diameters = {from_mm(7.75)}, .dots = 4, .vacuum = true});
    const auto other = read_punch(punch + "dots = 8\nvacuum = false\n", "p.toml");
    REQUIRE(other);
    CHECK(other->dots == 8);
    CHECK(!other->vacuum);
    CHECK(test::lines(read_punch(punch + "raise = 3\n", "p.toml")) ==
          test::Lines{"p.toml:5:1: raise: found an unknown key; allowed kind, id, name, sizes_mm, dots, vacuum"});
}
