// The contract of a file of readings: each row changes one thing of a good one and says which lines a person reads.
#include "intake/readings.hpp"
#include "good_case.hpp"
#include "intake/case.hpp"
#include "intake/kind.hpp"
#include "problems.hpp"

#include <string>
#include <vector>

using namespace intake;
using measure::centideg;
using measure::from_mm;
using measure::from_um;

namespace {

const std::string good = "ring_mm,clock,um\n7.5,12:00,655\n7.5,7:30,612.5\n";

test::Lines problems(const std::string& text) { return test::lines(read_readings(text, "r.csv")); }

std::vector<plan::Reading> readings(const std::string& text) {
    const auto read = read_readings(text, "r.csv");
    CHECK(test::lines(read) == test::Lines{});
    return read ? *read : std::vector<plan::Reading>{};
}

const std::vector<plan::Reading> expected{{.ring = from_mm(7.5), .at = centideg(9000), .thickness = from_um(655)},
                                          {.ring = from_mm(7.5), .at = centideg(22500), .thickness = from_um(612.5)}};

}  // namespace

TEST_CASE("however a table program writes them, the same readings are read") {
    for (const std::string& text : std::vector<std::string>{
             good,
             "ring_mm,clock,um\r\n7.5,12:00,655\r\n7.5,7:30,612.5",
             "\xEF\xBB\xBFring_mm,clock,um\n7.5,12:00,655\n7.5,7:30,612.5\n\n",
             "# invented\n\nring_mm, clock, um\n 7.5 , 12:00 , 655\n# no reading at 3:00\n7.50,7:30,612.5\n",
             "\"ring_mm\",\"clock\",\"um\"\n\"7.5\",\"12:00\",\"655\"\n\"7.5\" ,\"7:30\",612.5\n",
             "um,ring_mm,clock\n655,7.5,12:00\n612.5,7.5,7:30\n",
             "ring_mm,meridian_deg,um\n7.5,90,655\n7.5,225,612.5\n",
         }) {
        CAPTURE(text);
        CHECK(readings(text) == expected);
    }
}

TEST_CASE("each thing wrong in readings is told at its place") {
    struct Row {
        std::string name, from, to;
        test::Lines lines;
    };
    const std::vector<Row> rows{
        {"no header",
         "ring_mm,clock,um\n",
         "",
         {"r.csv:1:1: header: found 7.5,12:00,655; allowed ring_mm,clock,um or ring_mm,meridian_deg,um, the names in any order"}},
        {"parted by semicolons",
         "ring_mm,clock,um",
         "ring_mm;clock;um",
         {"r.csv:1:1: header: found ring_mm;clock;um; allowed ring_mm,clock,um or ring_mm,meridian_deg,um, the names in any order"}},
        {"a name twice",
         "ring_mm,clock,um",
         "ring_mm,um,um",
         {"r.csv:1:1: header: found ring_mm,um,um; allowed ring_mm,clock,um or ring_mm,meridian_deg,um, the names in any order"}},
        {"too thin", "655", "65.5", {"r.csv:2:11: um: found 65.5; allowed a number from 300 to 1200 um in whole tenths"}},
        {"a decimal comma in quotes",
         "612.5",
         "\"612,5\"",
         {"r.csv:3:10: um: found \"612,5\"; allowed a number from 300 to 1200 um in whole tenths"}},
        {"a decimal comma", "612.5", "612,5", {"r.csv:3:1: row: found 4 values; allowed 3 values, parted by commas"}},
        {"no value", "655", "", {"r.csv:2:11: um: found \"\"; allowed a number from 300 to 1200 um in whole tenths"}},
        {"nan", "655", "nan", {"r.csv:2:11: um: found nan; allowed a number from 300 to 1200 um in whole tenths"}},
        {"a ring of the whole eye", "7.5,12", "75,12", {"r.csv:2:1: ring_mm: found 75; allowed a number from 1 to 12 mm"}},
        {"no such hour",
         "12:00",
         " 13:00",
         {"r.csv:2:6: clock: found \"13:00\"; allowed an hour of the dial such as \"7:30\", from \"1:00\" to \"12:59\""}},
        {"a place twice", "7:30", "12:00", {"r.csv:3:1: row: found ring 7.5 mm at 12:00 again; allowed one reading a ring and meridian"}},
        {"an open quote",
         "12:00",
         "\"12:00",
         {"r.csv:2:15: row: found quotes that do not close before the comma; allowed a value, or a value in double quotes"}},
        {"more after a quote",
         "12:00",
         "\"12\":00",
         {"r.csv:2:9: row: found quotes that do not close before the comma; allowed a value, or a value in double quotes"}},
        {"columns are counted in characters",
         "7.5,12:00,655",
         "\"ä\",12:00,65",
         {"r.csv:2:1: ring_mm: found \"ä\"; allowed a number from 1 to 12 mm",
          "r.csv:2:11: um: found 65; allowed a number from 300 to 1200 um in whole tenths"}},
    };
    for (const Row& row : rows) {
        CAPTURE(row.name);
        CHECK(problems(test::replaced(good, row.from, row.to)) == row.lines);
    }
}

TEST_CASE("a file without readings, with too many, too large or in other bytes is told as such") {
    CHECK(problems("") ==
          test::Lines{"r.csv:1:1: header: found nothing; allowed ring_mm,clock,um or ring_mm,meridian_deg,um, the names in any order"});
    CHECK(problems("ring_mm,clock,um\n") == test::Lines{"r.csv:1:1: file: found 0 readings; allowed 1 to 2000 readings under the header"});
    std::string many = "ring_mm,meridian_deg,um\n";
    for (int i = 0; i < 2000; ++i) many += "8," + std::to_string(i / 10.0) + ",600\n";
    CHECK(problems(many) == test::Lines{});
    CHECK(problems(many + "8,359,600\n").front() == "r.csv:1:1: file: found 2001 readings; allowed 1 to 2000 readings under the header");
    CHECK(problems(std::string(1024 * 1024 + 1, '#')).front() == "r.csv:1:1: file: found 1048577 bytes; allowed at most 1048576 bytes");
    CHECK(problems(good + "\xff").front() == "r.csv:4:1: file: found bytes that are no UTF-8; allowed UTF-8");
}

TEST_CASE("a file of readings is told by its name and checked alone") {
    CHECK(*kind_of(good, "k.csv") == Kind::Readings);
    CHECK(text(Kind::Readings) == "readings");
    CHECK(check(good, "k.csv").empty());
    CHECK(check("7.5", "k.csv").size() == 1);
}

TEST_CASE("a case names its file of readings, in its own folder, and not beside readings of its own") {
    const std::string listed =
        "readings = [\n  { ring_mm = 7.5, clock = \"12:00\", um = 655 },\n  { ring_mm = 7.5, meridian_deg = 225, um = 612 },\n]\n";
    const auto named = [&](const std::string& name) {
        return read_case(test::replaced(test::good_case, listed, "readings_csv = \"" + name + "\"\n"), "k.toml");
    };
    for (const char* name : {"r.csv", "K 7.csv", "maps/right.csv", "größe.csv"}) {
        const auto read = named(name);
        REQUIRE(read);
        CHECK(read->readings_csv == name);
        CHECK(read->file.thickness.readings.empty());
        CHECK(*read_case(write_case(*read), "w.toml") == *read);
    }
    for (const char* name : {"", ".csv", "r.txt", "/r.csv", "../r.csv", "a/../r.csv", "a/.r.csv", "a\\\\r.csv", "c:r.csv"}) {
        CAPTURE(std::string(name));
        const auto lines = test::lines(named(name));
        REQUIRE(lines.size() == 1);
        CHECK(lines.front().find("thickness.readings_csv: found") != std::string::npos);
        CHECK(lines.front().find("allowed the name of a .csv file in the case's folder") != std::string::npos);
    }
    CHECK(test::lines(read_case(test::replaced(test::good_case, "readings = [", "readings_csv = \"r.csv\"\nreadings = ["), "k.toml")) ==
          test::Lines{"k.toml:12:1: thickness.readings: found readings_csv as well; allowed exactly one of readings, readings_csv"});
}
