#include "intake/unit.hpp"
#include "problems.hpp"

using namespace intake;

namespace {

const std::string counts = "[[count]]\nid = \"needles\"\ntitle = \"Needles\"\n";

test::Lines problems(const std::string& text) { return test::lines(read_unit(text, "u.toml")); }

}  // namespace

TEST_CASE("a unit that only says what is counted has the stated defaults and no limits") {
    const auto read = read_unit(counts, "u.toml");
    REQUIRE(read);
    UnitFile expected;
    expected.unit.counts = {{.id = "needles", .title = "Needles"}};
    CHECK(*read == expected);
    CHECK(read->holder == guide::Source::Table);
    CHECK(!read->unit.limits.clearance);
    CHECK(!read->unit.limits.endothelium_per_mm2);
}

// 09506000134352 and 6291041500213 are GS1's own example numbers.
TEST_CASE("the unit's list says what a trade number stands for, each number once and with its check digit") {
    const auto pack = [](const std::string& gtin) {
        return "[[pack]]\ngtin = \"" + gtin + "\"\ninstrument = \"suction-trephine\"\nsize_mm = 7.5\n";
    };
    const auto read = read_unit(counts + pack("09506000134352") + pack("06291041500213"), "u.toml");
    REQUIRE(read);
    REQUIRE(read->unit.packs.size() == 2);
    CHECK(read->unit.packs[0] == guide::Pack{.gtin = "09506000134352", .instrument = "suction-trephine", .size = measure::from_mm(7.5)});
    const std::string allowed = "; allowed 14 digits in quotes, the last their check digit (zeros before a shorter number)";
    CHECK(problems(counts + pack("09506000134353")) == test::Lines{"u.toml:5:8: pack[1].gtin: found \"09506000134353\"" + allowed});
    CHECK(problems(counts + pack("6291041500213")) == test::Lines{"u.toml:5:8: pack[1].gtin: found \"6291041500213\"" + allowed});
    CHECK(problems(counts + pack("09506000134352") + pack("09506000134352")) ==
          test::Lines{"u.toml:9:8: pack[2].gtin: found \"09506000134352\"; allowed each number once"});
}

TEST_CASE("everything a unit may say is read") {
    const auto read = read_unit(R"(language = "de"
theme = "light"
hand = "left"
holder = "foot-switch"
[screens_mm]
table = [344, 193.5]
desk = [527, 296]
far = [698, 393]
[[count]]
id = "swabs"
title = "Swabs"
[names]
scrub = "AB"
circulating = "CD"
[limits]
clearance_mm = 1.25
endothelium_per_mm2 = 2000
)",
                                "u.toml");
    REQUIRE(read);
    CHECK(read->language == "de");
    CHECK(read->theme == Theme::Light);
    CHECK(read->hand == Hand::Left);
    CHECK(read->holder == guide::Source::FootSwitch);
    CHECK(read->table == Glass{.width = measure::from_mm(344), .height = measure::from_mm(193.5)});
    CHECK(read->desk->width == measure::from_mm(527));
    CHECK(read->far->height == measure::from_mm(393));
    CHECK(read->unit.scrub_name == "AB");
    CHECK(read->unit.circulating_name == "CD");
    CHECK(read->unit.limits == plan::Limits{.clearance = measure::from_mm(1.25), .endothelium_per_mm2 = 2000});
}

TEST_CASE("what is wrong with a unit is told at its place") {
    struct Row {
        std::string name, text;
        test::Lines lines;
    };
    const std::vector<Row> rows{
        {"nothing counted", "", {"u.toml:1:1: count: found nothing; allowed at least one [[count]] with id and title"}},
        {"an item twice", counts + counts, {"u.toml:5:6: count[2].id: found \"needles\"; allowed each id once"}},
        {"one person cannot be two",
         counts + "[names]\nscrub = \"AB\"\ncirculating = \"AB\"\n",
         {"u.toml:6:15: names.circulating: found \"AB\"; allowed another name than the scrub nurse's: two people count"}},
        {"no such holder",
         "holder = \"surgeon\"\n" + counts,
         {"u.toml:1:10: holder: found \"surgeon\"; allowed \"table\", \"desk\", \"foot-switch\""}},
        {"one side of a screen",
         counts + "[screens_mm]\ntable = 300\n",
         {"u.toml:5:9: screens_mm.table: found 300; allowed [width, height], each a number from 50 to 3000 mm"}},
        {"a limit below nothing",
         counts + "[limits]\nclearance_mm = -1\n",
         {"u.toml:5:16: limits.clearance_mm: found -1; allowed a number from 0 to 5 mm"}},
        {"unknown key",
         counts + "[limits]\nopen_sky_min = 20\n",
         {"u.toml:5:1: limits.open_sky_min: found an unknown key; allowed clearance_mm, endothelium_per_mm2"}},
    };
    for (const Row& row : rows) {
        CAPTURE(row.name);
        CHECK(problems(row.text) == row.lines);
    }
}

TEST_CASE("a unit lists the sizes on its shelf, or says nothing of them") {
    const std::string one_item = "language = \"en\"\n[[count]]\nid = \"needles\"\ntitle = \"Needles\"\n";
    const auto listed = read_unit(one_item + "[stock]\nhost_mm = [7.5, 8]\ndonor_mm = [7.75]\n", "u.toml");
    REQUIRE(listed);
    CHECK(listed->unit.limits.hosts_in_stock == std::vector<measure::Length>{measure::from_mm(7.5), measure::from_mm(8)});
    CHECK(listed->unit.limits.donors_in_stock == std::vector<measure::Length>{measure::from_mm(7.75)});
    CHECK(read_unit(one_item, "u.toml")->unit.limits.hosts_in_stock.empty());
    CHECK(test::lines(read_unit(one_item + "[stock]\nhost_mm = [75]\n", "u.toml")) ==
          test::Lines{"u.toml:6:12: stock.host_mm[1]: found 75; allowed a number from 1 to 12 mm"});
}

TEST_CASE("sound is off and there is no pedal unless the unit says so") {
    const auto read = read_unit(counts, "u.toml");
    REQUIRE(read);
    CHECK_FALSE(read->sound.on);
    CHECK_FALSE(read->sound.suction_every_s);
    CHECK(read->foot_switch.key.empty());
}

TEST_CASE("what a unit wants to hear and its pedal are read, and what is wrong with them is told") {
    const auto read = read_unit(counts +
                                    "[sound]\non = true\nvolume = 40\nsutures = \"every\"\nsuction_every_s = 60\npatient = \"awake\"\n"
                                    "[foot_switch]\nkey = \"PageDown\"\nbounce_ms = 300\n",
                                "u.toml");
    REQUIRE(read);
    CHECK((read->sound == Sound{.on = true, .volume = 40, .sutures = Sound::Sutures::Every, .suction_every_s = 60, .awake = true}));
    CHECK((read->foot_switch == FootSwitch{.key = "PageDown", .bounce_ms = 300}));
    CHECK(problems(counts + "[sound]\nsuction_every_s = 50\n").size() == 1);
    CHECK(problems(counts + "[sound]\nvolume = 101\n").size() == 1);
    for (const std::string wrong : {"", "a", "F0", "F25", "Shift", "AB"})
        CHECK(problems(counts + "[foot_switch]\nkey = \"" + wrong + "\"\n").size() == 1);
    CHECK(problems(counts + "[foot_switch]\nbounce_ms = 300\n").size() == 1);
}

TEST_CASE("a pedal may type any key with a name; those that a hand types as well are known") {
    const auto pedal = [](const std::string& key) {
        const auto read = read_unit(counts + "[foot_switch]\nkey = \"" + key + "\"\n", "u.toml");
        CAPTURE(key);
        REQUIRE(read);
        CHECK(read->foot_switch.key == key);
        return read->foot_switch;
    };
    for (const std::string key : {"F1", "F24", "PageUp", "PageDown", "Home", "End", "Insert"}) CHECK_FALSE(also_typed(pedal(key)));
    for (const std::string key :
         {"A", "Z", "0", "9", "Space", "Enter", "Tab", "Escape", "Backspace", "Delete", "Left", "Right", "Up", "Down"})
        CHECK(also_typed(pedal(key)));
    CHECK_FALSE(also_typed({}));
}
