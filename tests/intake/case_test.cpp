// The contract of a case file: each row changes one thing of a good file and says which lines a person reads.
#include "intake/case.hpp"
#include "good_case.hpp"
#include "problems.hpp"

#include <string>
#include <vector>

using namespace intake;
using measure::centideg;
using measure::from_mm;
using measure::from_um;

namespace {

const std::string& good = test::good_case;
test::Lines problems(const std::string& text) { return test::lines(read_case(text, "k.toml")); }

}  // namespace

TEST_CASE("a case with only what is required reads, with the stated defaults") {
    const auto read = read_case(good, "k.toml");
    REQUIRE(read);
    plan::CaseFile expected{.reference = "K-0147",
                            .date = {.year = 2026, .month = 11, .day = 25},
                            .side = eye::Side::Right,
                            .reason = plan::Reason::Scar,
                            .seat = eye::Seat::Head,
                            .keratometry_D = 43.5,
                            .white_to_white_horizontal = from_mm(11.8),
                            .white_to_white_vertical = from_mm(11.1)};
    expected.thickness.method = plan::Method::Oct;
    expected.thickness.readings = {{.ring = from_mm(7.5), .at = centideg(9000), .thickness = from_um(655)},
                                   {.ring = from_mm(7.5), .at = centideg(22500), .thickness = from_um(612)}};
    expected.host_diameter = from_mm(7.5);
    expected.donor.diameter = from_mm(7.75);
    expected.aim = {.goal = plan::Goal::Share, .share_permille = 800, .spokes = 0, .entry_limit = 0.05};
    expected.pattern = {.interrupted = 16, .loops = 0, .running = 0};
    expected.first_suture = centideg(9000);
    CHECK(*read == CaseDocument{.file = expected, .trephine = "suction-trephine", .punch = "vacuum-punch"});
}

TEST_CASE("everything optional is read") {
    const auto read = read_case(R"(
[case]
reference = "Größe 7"
date = 2026-11-25
eye = "left"
reason = "keratoconus"
seat = "temporal"
invented = true
[eye]
radius_mm = 7.5
white_to_white_mm = [12, 11]
axial_length_mm = 24
lens = "aphakic"
[thickness]
method = "slit-scanning"
measured = 2026-11-12
central_um = 538
through_scar = true
edge = "looks-normal"
[host]
trephine = "t"
diameter_mm = 8
centre_mm = [0.5, -0.25]
[donor]
punch = "p"
diameter_mm = 8.25
storage = "culture"
stored = 2026-11-09
expires = 2026-12-01
endothelium_per_mm2 = 2650
donation = "G123498654321"
[aim]
spokes = 9
entry_limit = 0.1
[sutures]
pattern = "8 interrupted + 16 running"
first = "7:30"
)",
                                "k.toml");
    REQUIRE(read);
    const plan::CaseFile& file = read->file;
    CHECK(file.reference == "Größe 7");
    CHECK(file.side == eye::Side::Left);
    CHECK(file.reason == plan::Reason::Keratoconus);
    CHECK(file.seat == eye::Seat::Temporal);
    CHECK(file.invented);
    CHECK(file.keratometry_D == 45.0);  // 337.5 / 7.5, keratometric index 1.3375
    CHECK(file.axial_length_mm == 24.0);
    CHECK(file.lens == plan::Lens::Aphakic);
    CHECK(file.thickness.measured == measure::Day{.year = 2026, .month = 11, .day = 12});
    CHECK(file.thickness.central == from_um(538));
    CHECK(file.thickness.through_scar);
    CHECK(file.thickness.edge_looks_normal);
    CHECK(file.centre_x == from_mm(0.5));
    CHECK(file.centre_y == from_mm(-0.25));
    CHECK(file.donor.storage == plan::Storage::Culture);
    CHECK(file.donor.stored == measure::Day{2026, 11, 9});
    CHECK(file.donor.expires == measure::Day{.year = 2026, .month = 12, .day = 1});
    CHECK(file.donor.endothelium_per_mm2 == 2650);
    CHECK(file.donor.donation == "G123498654321");
    CHECK(file.aim == plan::Aim{.goal = plan::Goal::Spokes, .share_permille = 0, .spokes = 9, .entry_limit = 0.1});
    CHECK(file.pattern == plan::Pattern{.interrupted = 8, .loops = 16, .running = 1});
    CHECK(file.first_suture == centideg(22500));
}

TEST_CASE("one thing changed in a good case is told at its place") {
    struct Row {
        std::string name, from, to;
        test::Lines lines;
    };
    const std::vector<Row> rows{
        {"unknown key at the key",
         "eye = \"right\"",
         "eye = \"right\"\nsurname = \"x\"",
         {"k.toml:5:1: case.surname: found an unknown key; allowed reference, date, eye, reason, seat, invented"}},
        {"unknown table",
         "[aim]",
         "[aims]",
         {"k.toml:1:1: aim: found nothing; allowed a table with exactly one of share, spokes, goal",
          "k.toml:21:2: aims: found an unknown key; allowed case, eye, thickness, host, donor, aim, sutures"}},
        {"wrong value at the value",
         "eye = \"right\"",
         "eye = \"both\"",
         {"k.toml:4:7: case.eye: found \"both\"; allowed \"right\", \"left\""}},
        {"missing key at the header",
         "reason = \"scar\"\n",
         "",
         {"k.toml:1:1: case.reason: found nothing; allowed \"scar\", \"keratoconus\", \"oedema\", \"dystrophy\", \"regraft\", "
          "\"infection\", \"trauma\", \"other\""}},
        {"missing key at its own table's header",
         "trephine = \"suction-trephine\"\n",
         "",
         {"k.toml:15:1: host.trephine: found nothing; allowed an id of small letters, digits and hyphens, such as \"first-four\""}},
        {"a table that is none",
         "[aim]\nshare = 0.80\n",
         "",
         {"k.toml:1:1: aim: found nothing; allowed a table with exactly one of share, spokes, goal"}},
        {"date in quotes",
         "date = 2026-11-25",
         "date = \"2026-11-25\"",
         {"k.toml:3:8: case.date: found \"2026-11-25\"; allowed a date without quotes, such as 2026-11-25"}},
        {"date with a time",
         "date = 2026-11-25",
         "date = 2026-11-25T10:00:00Z",
         {"k.toml:3:8: case.date: found a date with a time; allowed a date without quotes, such as 2026-11-25"}},
        {"nan",
         "keratometry_D = 43.5",
         "keratometry_D = nan",
         {"k.toml:7:17: eye.keratometry_D: found nan; allowed a number from 30 to 70 D"}},
        {"inf",
         "share = 0.80",
         "share = inf",
         {"k.toml:22:9: aim.share: found inf; allowed a number from 0.3 to 0.95, at most three decimals"}},
        {"both curvatures",
         "keratometry_D = 43.5",
         "keratometry_D = 43.5\nradius_mm = 7.8",
         {"k.toml:8:1: eye.radius_mm: found keratometry_D as well; allowed exactly one of keratometry_D, radius_mm"}},
        {"no curvature",
         "keratometry_D = 43.5\n",
         "",
         {"k.toml:6:1: eye.keratometry_D: found nothing; allowed exactly one of keratometry_D, radius_mm"}},
        {"one white-to-white",
         "[11.8, 11.1]",
         "[11.8]",
         {"k.toml:8:21: eye.white_to_white_mm: found a list of 1 value; allowed two numbers from 9 to 14 mm, horizontal and vertical"}},
        {"white-to-white out of range",
         "[11.8, 11.1]",
         "[11.8, 14.1]",
         {"k.toml:8:28: eye.white_to_white_mm[2]: found 14.1; allowed a number from 9 to 14 mm"}},
        {"two aims",
         "share = 0.80",
         "share = 0.80\nspokes = 8",
         {"k.toml:23:1: aim.spokes: found share as well; allowed exactly one of share, spokes, goal"}},
        {"no aim", "share = 0.80", "", {"k.toml:21:1: aim.share: found nothing; allowed exactly one of share, spokes, goal"}},
        {"another goal", "share = 0.80", "goal = \"deep\"", {"k.toml:22:8: aim.goal: found \"deep\"; allowed \"to-entry\""}},
        {"half a spoke", "share = 0.80", "spokes = 7.5", {"k.toml:22:10: aim.spokes: found 7.5; allowed a whole number from 0 to 200"}},
        {"share too fine",
         "share = 0.80",
         "share = 0.8125",
         {"k.toml:22:9: aim.share: found 0.8125; allowed a number from 0.3 to 0.95, at most three decimals"}},
        {"a place measured twice, once by hour and once by degree",
         "meridian_deg = 225",
         "meridian_deg = 90",
         {"k.toml:13:3: thickness.readings[2]: found ring 7.5 mm at 12:00 again; allowed one reading a ring and meridian"}},
        {"a reading placed twice",
         "meridian_deg = 225",
         "clock = \"7:30\", meridian_deg = 225",
         {"k.toml:13:36: thickness.readings[2].meridian_deg: found clock as well; allowed exactly one of clock, meridian_deg"}},
        {"a reading without a place",
         "meridian_deg = 225, ",
         "",
         {"k.toml:13:3: thickness.readings[2].clock: found nothing; allowed exactly one of clock, meridian_deg"}},
        {"no such hour",
         "\"12:00\"",
         "\"13:00\"",
         {"k.toml:12:28: thickness.readings[1].clock: found \"13:00\"; allowed an hour of the dial such as \"7:30\", from \"1:00\" to "
          "\"12:59\""}},
        {"column in characters, not bytes",
         "{ ring_mm = 7.5, meridian_deg = 225, um = 612 }",
         "{ \"äöü\" = 1, ring_mm = 7.5, meridian_deg = 225, um = 12 }",
         {"k.toml:13:5: thickness.readings[2].äöü: found an unknown key; allowed ring_mm, clock, meridian_deg, um",
          "k.toml:13:56: thickness.readings[2].um: found 12; allowed a number from 300 to 1200 um in whole tenths"}},
        {"neither centre nor readings",
         "readings = [\n  { ring_mm = 7.5, clock = \"12:00\", um = 655 },\n  { ring_mm = 7.5, meridian_deg = 225, um = 612 },\n]\n",
         "",
         {"k.toml:9:1: thickness.central_um: found nothing; allowed central_um or readings"}},
        {"readings that are none",
         "readings = [\n  { ring_mm = 7.5, clock = \"12:00\", um = 655 },\n  { ring_mm = 7.5, meridian_deg = 225, um = 612 },\n]\n",
         "readings = []\n",
         {"k.toml:9:1: thickness.central_um: found nothing; allowed central_um or readings"}},
        {"readings no list",
         "readings = [\n  { ring_mm = 7.5, clock = \"12:00\", um = 655 },\n  { ring_mm = 7.5, meridian_deg = 225, um = 612 },\n]\n",
         "readings = 600\n",
         {"k.toml:11:12: thickness.readings: found 600; allowed a list of tables"}},
        {"a path as a reference",
         "\"K-0147\"",
         "\"../K\"",
         {"k.toml:2:13: case.reference: found \"../K\"; allowed 1 to 40 characters without / and \\, no dot at the start; never a "
          "patient's name"}},
        {"a newline in a value stays on one line",
         "\"K-0147\"",
         "\"K\\n1\"",
         {"k.toml:2:13: case.reference: found \"K\\n1\"; allowed 1 to 40 characters without / and \\, no dot at the start; never a "
          "patient's name"}},
        {"a key defined twice is no TOML",
         "eye = \"right\"",
         "eye = \"right\"\neye = \"left\"",
         {"k.toml:5:7: toml: found Error while parsing key-value pair: cannot redefine existing string 'eye'; allowed TOML 1.0"}},
    };
    for (const Row& row : rows) {
        CAPTURE(row.name);
        CHECK(problems(test::replaced(good, row.from, row.to)) == row.lines);
    }
}

TEST_CASE("every range is closed at both ends") {
    struct Row {
        std::string from, key;
        std::vector<std::string> inside, outside;
    };
    const std::vector<Row> rows{
        {"um = 655", "um", {"300", "1200", "612.5"}, {"299.9", "1200.1", "612.55", "\"612\""}},
        {"ring_mm = 7.5, clock", "ring_mm", {"1", "12"}, {"0.99", "12.01"}},
        {"share = 0.80", "share", {"0.30", "0.95", "0.805"}, {"0.299", "0.951", "80"}},
        {"share = 0.80", "spokes", {"0", "1", "200"}, {"-1", "201"}},
        {"share = 0.80", "share = 0.8\nentry_limit", {"0.001", "0.50"}, {"0.0009", "0.501", "5"}},
        {"keratometry_D = 43.5", "keratometry_D", {"30", "70", "43"}, {"29.9", "70.1"}},
        {"keratometry_D = 43.5", "radius_mm", {"4.83", "11.25"}, {"4.82", "11.26"}},
        {"white_to_white_mm = [11.8, 11.1]",
         "white_to_white_mm",
         {"[9, 14]", "[14, 9.0]"},
         {"[8.9, 11]", "[11, 14.1]", "[]", "[11, 11, 11]", "11.8"}},
        {"method = \"oct\"", "method = \"oct\"\ncentral_um", {"300", "1200"}, {"299", "1201"}},
        {"diameter_mm = 7.5\n", "centre_mm = [0, 0]\ndiameter_mm", {"1", "12"}, {"0.9", "12.1"}},
        {"share = 0.80",
         "share = 0.8\n[sutures]\npattern",
         {"\"8 interrupted\"", "\"24 interrupted\"", "\"16 running\"", "\"24 double running\"", "\"12 interrupted + 24 running\""},
         {"\"7 interrupted\"", "\"16\"", "\"interrupted\"", "\"16  interrupted\"", "\"-8 interrupted\"", "\"0 running\"",
          "\"8 interrupted + 8 double running\"", "\"16 interrupted and 8 running\"", "\"99999999999999999999 running\"", "16"}},
    };
    for (const Row& row : rows) {
        CAPTURE(row.key);
        const std::string key = row.key;
        const auto with = [&](const std::string& value) {
            std::string line = key + " = " + value;
            if (row.from.ends_with("clock")) line += ", clock";
            if (row.from.ends_with("\n")) line += "\n";
            return test::replaced(good, row.from, line);
        };
        for (const std::string& value : row.inside) {
            CAPTURE(value);
            CHECK(problems(with(value)) == test::Lines{});
        }
        for (const std::string& value : row.outside) {
            CAPTURE(value);
            CHECK(problems(with(value)).size() == 1);
        }
    }
}

TEST_CASE("all problems of an empty file are told, sorted by place") {
    CHECK(problems("") == std::vector<std::string>{
                              "k.toml:1:1: case: found nothing; allowed a table with reference, date, eye, reason",
                              "k.toml:1:1: eye: found nothing; allowed a table with keratometry_D or radius_mm, white_to_white_mm",
                              "k.toml:1:1: thickness: found nothing; allowed a table with method, and central_um or readings",
                              "k.toml:1:1: host: found nothing; allowed a table with trephine, diameter_mm",
                              "k.toml:1:1: donor: found nothing; allowed a table with punch, diameter_mm",
                              "k.toml:1:1: aim: found nothing; allowed a table with exactly one of share, spokes, goal",
                          });
    const std::string last_first = "[aim]\nshare = 2\n[case]\nreference = 7\n[eye]\n[host]\n[donor]\n[thickness]\n";
    int line = 0;
    const auto read = read_case(last_first, "k.toml");
    REQUIRE(!read);
    for (const measure::Problem& problem : read.error()) {
        CHECK(problem.line >= line);
        line = problem.line;
    }
    CHECK(line == 8);
}
