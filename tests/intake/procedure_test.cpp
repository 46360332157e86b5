#include "intake/procedure.hpp"
#include "problems.hpp"

using namespace intake;
using guide::Closes;

namespace {

// Line numbers in the rows count from here: id is line 1.
const std::string good = R"(id = "own-graft"
title = "Own graft"
[[phase]]
id = "host"
title = "Host"
departures = ["lost"]
[[phase.step]]
id = "side"
title = "Enter the side"
do = ["From the consent."]
who = "circulating"
closes = "side"
[[phase.step]]
id = "zero"
title = "Zero {eye}"
do = ["Flush all round."]
who = "scrub"
[[phase.step]]
id = "raise"
title = "Raise {raise}"
do = ["Raise.", "Say it."]
who = "surgeon"
needs = ["zero"]
[[phase.step]]
id = "lower"
title = "Turn, {lower}"
do = ["Turn."]
who = "surgeon"
closes = "cut"
needs = ["zero", "raise"]
starts = ["host"]
[[departure]]
id = "lost"
title = "Lost"
do = ["Stop."]
back = "Go on"
)";

test::Lines problems(const std::string& text) { return test::lines(read_procedure(text, "p.toml")); }

}  // namespace

TEST_CASE("a procedure reads with the stated defaults") {
    const auto read = read_procedure(good, "p.toml");
    REQUIRE(read);
    CHECK(read->id == "own-graft");
    REQUIRE(read->phases.size() == 1);
    REQUIRE(read->phases[0].steps.size() == 4);
    CHECK(read->phases[0].departures == std::vector<std::string>{"lost"});
    CHECK(read->phases[0].steps[1] ==
          guide::Step{
              .id = "zero", .title = "Zero {eye}", .lines = {"Flush all round."}, .who = "scrub", .closes = Closes::Tap, .may_skip = true});
    CHECK(read->departures[0] ==
          guide::Departure{.id = "lost", .title = "Lost", .level = guide::Departure::Level::Watch, .lines = {"Stop."}, .back = "Go on"});
}

TEST_CASE("everything a step may have is read") {
    const auto read = read_procedure(
        test::replaced(good, "id = \"zero\"\ntitle = \"Zero {eye}\"\ndo = [\"Flush all round.\"]\nwho = \"scrub\"", R"(id = "zero"
title = "T"
do = ["a", "b"]
who = "anaesthetist"
say = "s"
button = "Done so"
closes = "sutures"
sutures = 4
only = "running"
needs = ["side"]
starts = ["open-sky"]
stops = ["suction", "host"]
cautions = ["c"]
ready = ["r"]
open-now = ["n"]
open-later = ["l"]
nurse = "stay"
pause = "time-out"
quiet = true
may-skip = false
picture = "clock-face"
departures = ["lost"])"),
        "p.toml");
    CHECK(test::lines(read) == test::Lines{});
    REQUIRE(read);
    CHECK(read->phases[0].steps[1] == guide::Step{.id = "zero",
                                                  .title = "T",
                                                  .lines = {"a", "b"},
                                                  .who = "anaesthetist",
                                                  .say = "s",
                                                  .button = "Done so",
                                                  .closes = Closes::Sutures,
                                                  .sutures = 4,
                                                  .only = "running",
                                                  .needs = {"side"},
                                                  .starts = {"open-sky"},
                                                  .stops = {"suction", "host"},
                                                  .cautions = {"c"},
                                                  .ready = {"r"},
                                                  .open_now = {"n"},
                                                  .open_later = {"l"},
                                                  .nurse = guide::Nurse::Stay,
                                                  .pause = guide::Pause::TimeOut,
                                                  .quiet = true,
                                                  .may_skip = false,
                                                  .picture = "clock-face",
                                                  .departures = {"lost"}});
}

TEST_CASE("each word of what closes a step is its own meaning") {
    const std::vector<std::pair<std::string, Closes>> words{{"tap", Closes::Tap},
                                                            {"hold", Closes::Hold},
                                                            {"plan", Closes::Plan},
                                                            {"counts", Closes::Counts},
                                                            {"suction-on", Closes::SuctionOn},
                                                            {"suction-off", Closes::SuctionOff},
                                                            {"sutures", Closes::Sutures},
                                                            {"ring", Closes::Ring},
                                                            {"close", Closes::Close}};
    for (const auto& row : words) {
        const std::string word = row.first;
        CAPTURE(word);
        const auto read = read_procedure(test::replaced(good, "who = \"scrub\"", "who = \"scrub\"\ncloses = \"" + word + "\""), "p");
        REQUIRE(read);
        CHECK(read->phases[0].steps[1].closes == row.second);
    }
}

TEST_CASE("one thing changed in a good procedure is told at its place") {
    struct Row {
        std::string name, from, to;
        test::Lines lines;
    };
    const std::string clocks = "suction, decompressed, open-sky, donor-out, case or a phase id";
    const std::string names = "in braces only eye, host, donor, raise, planned, sutures, spokes, lower, aim";
    const std::string blind = "no {eye} up to the step that closes with \"side\": the side is entered blind";
    const std::vector<Row> rows{
        {"title of 28 characters", "\"Enter the side\"", "\"Äääääääääääääääääääääääääääa\"", {}},
        {"title of 29 characters",
         "\"Enter the side\"",
         "\"Äääääääääääääääääääääääääääaa\"",
         {"p.toml:9:9: phase[1].step[1].title: found \"Äääääääääääääääääääääääääääaa\"; allowed text of 1 to 28 characters on one line, no "
          "blanks at its ends"}},
        {"a step's id twice",
         "id = \"zero\"",
         "id = \"side\"",
         {"p.toml:1:1: phase.step.id: found no \"zero\"; allowed a step with this id: the count of spokes rests on it",
          "p.toml:14:6: phase[1].step[2].id: found \"side\"; allowed each id once",
          "p.toml:23:10: phase[1].step[3].needs[1]: found \"zero\"; allowed the id of an earlier step",
          "p.toml:30:10: phase[1].step[4].needs[1]: found \"zero\"; allowed the id of an earlier step"}},
        {"no kebab-case",
         "id = \"side\"",
         "id = \"The_side\"",
         {"p.toml:8:6: phase[1].step[1].id: found \"The_side\"; allowed an id of small letters, digits and hyphens, such as "
          "\"first-four\""}},
        {"a need of itself",
         "needs = [\"zero\"]",
         "needs = [\"raise\"]",
         {"p.toml:23:10: phase[1].step[3].needs[1]: found \"raise\"; allowed the id of an earlier step"}},
        {"a need of a later step",
         "needs = [\"zero\"]",
         "needs = [\"zero\", \"lower\"]",
         {"p.toml:23:18: phase[1].step[3].needs[2]: found \"lower\"; allowed the id of an earlier step"}},
        {"no such clock",
         "starts = [\"host\"]",
         "starts = [\"hots\"]",
         {"p.toml:31:11: phase[1].step[4].starts[1]: found \"hots\"; allowed " + clocks}},
        {"no such departure in a phase",
         "departures = [\"lost\"]",
         "departures = [\"last\"]",
         {"p.toml:6:15: phase[1].departures[1]: found \"last\"; allowed the id of a [[departure]]"}},
        {"no such departure in a step",
         "starts = [\"host\"]",
         "departures = [\"last\"]",
         {"p.toml:31:15: phase[1].step[4].departures[1]: found \"last\"; allowed the id of a [[departure]]"}},
        {"no cut",
         "closes = \"cut\"\n",
         "",
         {"p.toml:1:1: phase.step.closes: found no \"cut\"; allowed exactly one step with closes = \"cut\""}},
        {"two cuts",
         "who = \"scrub\"",
         "who = \"scrub\"\ncloses = \"cut\"",
         {"p.toml:30:10: phase[1].step[4].closes: found \"cut\"; allowed exactly one step with closes = \"cut\""}},
        {"two sides",
         "who = \"scrub\"",
         "who = \"scrub\"\ncloses = \"side\"",
         {"p.toml:18:10: phase[1].step[2].closes: found \"side\"; allowed at most one step with closes = \"side\""}},
        {"no raise",
         "id = \"raise\"",
         "id = \"rise\"",
         {"p.toml:1:1: phase.step.id: found no \"raise\"; allowed a step with this id: the count of spokes rests on it",
          "p.toml:30:18: phase[1].step[4].needs[2]: found \"raise\"; allowed the id of an earlier step"}},
        {"sutures without their closing",
         "who = \"scrub\"",
         "who = \"scrub\"\nsutures = 4",
         {"p.toml:18:11: phase[1].step[2].sutures: found 4; allowed only with closes = \"sutures\""}},
        {"the eye shown before the side is entered",
         "From the consent.",
         "The {eye} eye.",
         {"p.toml:10:7: phase[1].step[1].do[1]: found \"The {eye} eye.\"; allowed " + blind}},
        {"an unknown placeholder",
         "Flush all round.",
         "Flush at {depth}.",
         {"p.toml:16:7: phase[1].step[2].do[1]: found \"Flush at {depth}.\"; allowed " + names}},
        {"a brace alone", "\"Go on\"", "\"Go on }\"", {"p.toml:36:8: departure[1].back: found \"Go on }\"; allowed " + names}},
        {"three lines",
         "[\"Raise.\", \"Say it.\"]",
         "[\"a\", \"b\", \"c\"]",
         {"p.toml:21:6: phase[1].step[3].do: found a list of 3 values; allowed a list of 1 to 2 lines"}},
        {"no line",
         "[\"Flush all round.\"]",
         "[]",
         {"p.toml:16:6: phase[1].step[2].do: found a list of 0 values; allowed a list of 1 to 2 lines"}},
        {"a step without its title",
         "title = \"Enter the side\"\n",
         "",
         {"p.toml:7:1: phase[1].step[1].title: found nothing; allowed text of 1 to 28 characters on one line, no blanks at its ends"}},
        {"a phase called as a clock",
         "id = \"host\"",
         "id = \"case\"",
         {"p.toml:4:6: phase[1].id: found \"case\"; allowed an id that is no clock's name",
          "p.toml:31:11: phase[1].step[4].starts[1]: found \"host\"; allowed " + clocks}},
        {"nobody",
         "who = \"scrub\"",
         "who = \"nurse\"",
         {"p.toml:17:7: phase[1].step[2].who: found \"nurse\"; allowed \"scrub\", \"circulating\", \"surgeon\", \"anaesthetist\", "
          "\"all\""}},
        {"no such picture",
         "who = \"scrub\"",
         "who = \"scrub\"\npicture = \"photo\"",
         {"p.toml:18:11: phase[1].step[2].picture: found \"photo\"; allowed \"\", \"clock-face\", \"open\", \"section\""}},
        {"an unknown key of a departure",
         "back = \"Go on\"",
         "back = \"Go on\"\nway = 1",
         {"p.toml:37:1: departure[1].way: found an unknown key; allowed id, title, level, do, back, reopens"}},
        {"a departure that opens steps again", "back = \"Go on\"", "back = \"Go on\"\nreopens = [\"zero\", \"raise\"]", {}},
        {"a departure that opens a step again which is none",
         "back = \"Go on\"",
         "back = \"Go on\"\nreopens = [\"zero\", \"host\"]",
         {"p.toml:37:20: departure[1].reopens[2]: found \"host\"; allowed the id of a step"}},
        {"a departure twice",
         "[[departure]]",
         "[[departure]]\nid = \"lost\"\ntitle = \"L\"\ndo = [\"x\"]\nback = \"b\"\n[[departure]]",
         {"p.toml:38:6: departure[2].id: found \"lost\"; allowed each id once"}},
    };
    for (const Row& row : rows) {
        CAPTURE(row.name);
        CHECK(problems(test::replaced(good, row.from, row.to)) == row.lines);
    }
}

TEST_CASE("a procedure without phases, and a phase without steps, are told") {
    const test::Lines lines = problems("id = \"x\"\ntitle = \"X\"\n");
    REQUIRE(!lines.empty());
    CHECK(lines.front() == "p.toml:1:1: phase: found nothing; allowed at least one [[phase]]");
    const test::Lines empty = problems("id = \"x\"\ntitle = \"X\"\n[[phase]]\nid = \"a\"\ntitle = \"A\"\n");
    REQUIRE(!empty.empty());
    CHECK(empty.back() == "p.toml:3:1: phase[1].step: found nothing; allowed at least one [[phase.step]]");
}
