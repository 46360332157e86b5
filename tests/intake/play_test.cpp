// The contract of a play script.
#include "intake/play.hpp"
#include "intake/play_table.hpp"
#include "problems.hpp"

#include <set>
#include <variant>

using namespace intake;
using namespace guide;

namespace {

const std::string head = R"({"at": "2026-11-25T09:41:07.250Z", "who": "scrub", "do": )";

std::string told(const std::string& line) {
    const auto read = read_play_line(line, "s.jsonl", 7);
    return read ? "" : measure::text(read.error());
}

/// The intent of a line whose `do` and further fields are given.
Intent intent(const std::string& rest) {
    const auto read = read_play_line(head + rest + "}", "s.jsonl", 1);
    REQUIRE_MESSAGE(read, rest);
    return read->intent;
}

template <class T>
T as(const std::string& rest) {
    const Intent made = intent(rest);
    const T* found = std::get_if<T>(&made);
    REQUIRE_MESSAGE(found != nullptr, rest);
    return *found;
}

}  // namespace

TEST_CASE("a line bears its time, who, what, where from and what is expected") {
    const auto read = read_play_line(
        R"({"at": "2026-11-25T10:41:07.250+01:00", "who": "circulating", "do": "count-spoke", "from": "foot-switch", "expect": "refused"})",
        "s", 3);
    REQUIRE(read);
    CHECK(read->line == 3);
    CHECK(measure::rfc3339(read->at) == "2026-11-25T10:41:07.250+01:00");
    CHECK(read->at.boot == 1);
    CHECK(read->at.boottime_ms == read->at.utc_ms);
    CHECK(read->who == Who::Circulating);
    CHECK(std::get<CountSpoke>(read->intent).source == Source::FootSwitch);
    CHECK(read->expect_refused);
    const auto plain = read_play_line(head + "\"go-deeper\"}", "s", 1);
    REQUIRE(plain);
    CHECK(!plain->expect_refused);
    CHECK(plain->who == Who::Scrub);
}

TEST_CASE("each intent takes the fields of its members") {
    CHECK(as<EnterSide>(R"("enter-side", "side": "left")").side == "left");
    CHECK(as<AcceptPlan>(R"("accept-plan", "why": "thinner than read")").why == "thinner than read");
    CHECK(as<AcceptPlan>(R"("accept-plan")").why.empty());
    CHECK(as<FinishStep>(R"("finish-step", "step": "zero", "ago_s": 15)").step == "zero");
    CHECK(as<FinishStep>(R"("finish-step", "step": "zero", "ago_s": 15)").ago_s == 15);
    CHECK(as<ReopenStep>(R"("reopen-step", "step": "zero", "why": "knocked")").why == "knocked");
    CHECK(as<SkipStep>(R"("skip-step", "step": "debrief", "why": "late")").step == "debrief");
    CHECK(as<HoldCount>(R"("hold-count", "from": "desk")").source == Source::Desk);
    CHECK(as<HoldCount>(R"("hold-count", "from": "desk", "source": "foot-switch")").source == Source::FootSwitch);
    CHECK(as<HoldCount>(R"("hold-count")").source == Source::Table);
    CHECK(as<CountSpoke>(R"("count-spoke")").source == Source::Table);
    CHECK(as<CountSpoke>(R"("count-spoke", "from": "desk")").source == Source::Desk);
    as<RaiseBlade>(R"("raise-blade")");
    CHECK(as<UndoTap>(R"("undo-tap")").event == 0);
    CHECK(as<UndoTap>(R"("undo-tap", "event": 12)").event == 12);
    as<GoDeeper>(R"("go-deeper")");
    CHECK(as<EndCut>(R"("end-cut", "how": "at-plan")").how == CutEnd::AtPlan);
    CHECK(as<EndCut>(R"("end-cut", "how": "entered")").how == CutEnd::Entered);
    CHECK(as<EndCut>(R"("end-cut", "how": "surgeon")").how == CutEnd::Surgeon);
    CHECK(as<TurnSuction>(R"("turn-suction", "to": "on")").to == Suction::On);
    CHECK(as<TurnSuction>(R"("turn-suction", "to": "off")").to == Suction::Off);
    CHECK(as<TurnSuction>(R"("turn-suction", "to": "lost")").to == Suction::Lost);
    CHECK(as<MarkClock>(R"("mark-clock", "clock": "open-sky")").start);
    CHECK(!as<MarkClock>(R"("mark-clock", "clock": "open-sky", "start": false, "ago_s": 30)").start);
    CHECK(as<MarkClock>(R"("mark-clock", "clock": "open-sky", "start": false, "ago_s": 30)").ago_s == 30);
    CHECK(as<MarkClock>(R"("mark-clock", "clock": "open-sky")").clock == "open-sky");
    CHECK(as<TieSuture>(R"("tie-suture")").n == 0);
    CHECK(!as<TieSuture>(R"("tie-suture")").centideg);
    CHECK(as<TieSuture>(R"("tie-suture", "n": 3, "centideg": 4500)").centideg == 4500);
    CHECK(as<TieSuture>(R"("tie-suture", "n": 3, "clock_hour": "7:30")").centideg == 22500);
    CHECK(as<CutSuture>(R"("cut-suture", "n": 2, "why": "loose")").n == 2);
    CHECK(!as<SeeRing>(R"("see-ring")").long_axis_centideg);
    CHECK(as<SeeRing>(R"("see-ring", "long_axis_centideg": 0)").long_axis_centideg == 0);
    CHECK(as<SeeRing>(R"("see-ring", "clock_hour": "12:00")").long_axis_centideg == 9000);
    CHECK(as<MoveItems>(R"("move-items", "item": "needles", "by": -2)").by == -2);
    CHECK(as<CheckCount>(R"("check-count", "item": "needles", "seen": 6, "by": "scrub nurse")").seen == 6);
    CHECK(as<CheckCount>(R"("check-count", "item": "needles", "seen": 6, "by": "scrub nurse")").by == "scrub nurse");
    CHECK(as<Scan>(R"("scan", "bytes": "01\u001d10")").bytes ==
          "01\x1d"
          "10");
    CHECK(as<Overrule>(R"("overrule", "event": 9, "why": "x")").event == 9);
    CHECK(as<Depart>(R"("depart", "what": "suction-lost", "note": "leak")").note == "leak");
    CHECK(as<ComeBack>(R"("come-back", "what": "suction-lost")").what == "suction-lost");
    CHECK(as<GiveReason>(R"("give-reason", "event": 40, "why": "x")").event == 40);
    CHECK(as<WriteNote>(R"("write-note", "text": "ä")").text == "ä");
    CHECK(as<CorrectTime>(R"("correct-time", "event": 4, "utc_ms": 1795599667250, "why": "x")").utc_ms == 1'795'599'667'250);
    CHECK(as<CloseCase>(R"("close-case", "how": "done")").how == CaseEnd::Done);
    CHECK(as<CloseCase>(R"("close-case", "how": "converted", "why": "x")").how == CaseEnd::Converted);
    CHECK(as<CloseCase>(R"("close-case", "how": "abandoned", "why": "x")").how == CaseEnd::Abandoned);
}

TEST_CASE("what is wrong with a line is told with its number") {
    struct Row {
        std::string name, line, told;
    };
    const std::vector<Row> rows{
        {"no JSON", "{\"at\": ", "s.jsonl:7:8: json: found no JSON from here on; allowed one JSON object a line"},
        {"column in characters", "{\"ä\" x", "s.jsonl:7:6: json: found no JSON from here on; allowed one JSON object a line"},
        {"no object", "[1]", "s.jsonl:7:1: json: found [1]; allowed an object such as {\"at\": …, \"who\": …, \"do\": …}"},
        {"unknown do", head + "\"count-spokes\"}", "s.jsonl:7:1: do: found \"count-spokes\"; allowed an intent of `graftside play --list`"},
        {"no do", R"({"at": "2026-11-25T09:41:07Z", "who": "scrub"})", "s.jsonl:7:1: do: found nothing; allowed text"},
        {"the program is nobody", R"({"at": "2026-11-25T09:41:07Z", "who": "program", "do": "go-deeper"})",
         "s.jsonl:7:1: who: found \"program\"; allowed scrub|circulating|surgeon"},
        {"no time", R"({"at": "2026-11-25", "who": "scrub", "do": "go-deeper"})",
         "s.jsonl:7:1: at: found \"2026-11-25\"; allowed a time such as \"2026-11-25T09:41:07.250Z\""},
        {"missing field", head + "\"finish-step\"}", "s.jsonl:7:1: step: found nothing; allowed text"},
        {"unknown field", head + "\"finish-step\", \"step\": \"zero\", \"stop\": 1}",
         "s.jsonl:7:1: stop: found an unknown field; allowed at, who, do, from, expect, step, ago_s"},
        {"a field of another intent", head + "\"go-deeper\", \"why\": \"x\"}",
         "s.jsonl:7:1: why: found an unknown field; allowed at, who, do, from, expect"},
        {"a word not allowed", head + "\"turn-suction\", \"to\": \"of\"}", "s.jsonl:7:1: to: found \"of\"; allowed off|on|lost"},
        {"a fraction", head + "\"move-items\", \"item\": \"x\", \"by\": 1.0}",
         "s.jsonl:7:1: by: found 1.0; allowed a whole number from -999 to 999"},
        {"too large", head + "\"undo-tap\", \"event\": 18446744073709551615}",
         "s.jsonl:7:1: event: found 18446744073709551615; allowed a whole number from 0 to 9007199254740992"},
        {"a number as text", head + "\"write-note\", \"text\": 5}", "s.jsonl:7:1: text: found 5; allowed text"},
        {"another expectation", head + "\"go-deeper\", \"expect\": \"done\"}", "s.jsonl:7:1: expect: found \"done\"; allowed refused"},
        {"two places", head + "\"tie-suture\", \"centideg\": 0, \"clock_hour\": \"3:00\"}",
         "s.jsonl:7:1: clock_hour: found centideg as well; allowed one of the two"},
        {"no such hour", head + "\"tie-suture\", \"clock_hour\": \"3\"}",
         "s.jsonl:7:1: clock_hour: found \"3\"; allowed an hour of the dial such as \"7:30\""},
        {"a key twice", head + "\"write-note\", \"text\": \"a\", \"text\": \"b\"}",
         "s.jsonl:7:1: text: found the key twice; allowed each key once"},
        {"a word with a bar", head + "\"turn-suction\", \"to\": \"on|lost\"}", "s.jsonl:7:1: to: found \"on|lost\"; allowed off|on|lost"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.name);
        CHECK(told(row.line) == row.told);
    }
}

TEST_CASE("a script is told all its wrong lines, also one whose time goes back; blank lines are passed over") {
    const std::string at_7 = head + "\"go-deeper\"}\n";
    const std::string at_6 = test::replaced(at_7, ":07.250Z", ":06.250Z");
    CHECK(test::lines(read_play(at_7 + "\n" + at_7 + " \r\n", "s")) == test::Lines{});
    const auto read = read_play("\n" + at_7 + at_7, "s");
    REQUIRE(read);
    REQUIRE(read->size() == 2);
    CHECK((*read)[0].line == 2);
    CHECK((*read)[1].line == 3);
    CHECK(test::lines(read_play(at_7 + at_6 + "x\n", "s")) ==
          test::Lines{"s:2:1: at: found 2026-11-25T09:41:06.250Z; allowed no time before 2026-11-25T09:41:07.250Z",
                      "s:3:1: json: found no JSON from here on; allowed one JSON object a line"});
    CHECK(read_play("", "s")->empty());
}

TEST_CASE("every intent can be played, and the list that is printed names each with its fields") {
    std::set<std::size_t> made;
    const std::string list = play_list();
    for (const PlayIntent& row : play_intents()) {
        CAPTURE(std::string(row.name));
        made.insert(row.make(PlayValues{}).index());
        CHECK(list.find("\n" + std::string(row.name) + "\n") != std::string::npos);
        for (const PlayField& field : row.fields) CHECK(list.find("    " + std::string(field.name)) != std::string::npos);
    }
    CHECK(made.size() == std::variant_size_v<Intent>);
}
