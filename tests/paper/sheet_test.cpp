#include "guide/decide.hpp"
#include "guide/timed.hpp"
#include "paper/fhir.hpp"
#include "paper/printed.hpp"

#include <doctest/doctest.h>

#include <algorithm>

// What a handover sheet has to hold is common practice, no source; the figures are those of the demo script and the demo case.

namespace {

using printed::says;

std::size_t times_said(const std::string& text, const std::string& words) {
    std::size_t count = 0;
    for (auto at = text.find(words); at != std::string::npos; at = text.find(words, at + 1)) ++count;
    return count;
}

std::string value_of(const paper::Section& section, const std::string& label) {
    const auto row = std::find_if(section.rows.begin(), section.rows.end(), [&](const paper::Pair& one) { return one.label == label; });
    REQUIRE(row != section.rows.end());
    return row->value;
}

const std::string none = "not recorded";

}  // namespace

TEST_CASE("the played demo case is all on its sheet") {
    const std::string text = printed::text_of(printed::sheet_pdf(printed::demo()));
    for (const std::string words : {
             "RIGHT EYE",
             "Case DEMO-1",
             "INVENTED CASE",
             "2026-11-25",
             "host 7.50 mm",
             "donor 7.75 mm",
             "+0.25 mm",
             "Record locked",
             "3 to zero, then 8",
             "8 below zero (11 down, 0 up)",
             "no, one seating",
             "Entered by the trephine",
             "60 µm",
             "16 interrupted",
             "16 of 16",
             "round",
             "cold",
             "2026-12-02",
             "2580 /mm² (2322 to 2838)",
             "2 opened, 0 back",
             "2 seen by scrub nurse 08:33",
             "2 seen by circulating nurse 08:34",
             "08:02, 08:05, 08:35",  // sign in, time out, sign out
             "Taps written late",
             "0011 2233 4455 6677",
             "aaaa4711",
             "count sheet decide",
         }) {
        CAPTURE(words);
        CHECK(says(text, words));
    }
}

TEST_CASE("times are those of the script: suction 1 min 13 s, open sky 5 min, decompressed 6 min") {
    // Script: suction on 08:10:20, off 08:11:33; button out 08:14:33, entered 08:13:33, fourth suture 08:19:33.
    const paper::Sheet sheet = paper::sheet(printed::demo(), printed::words());
    const auto bar = [&](const std::string& label) {
        const auto found = std::find_if(sheet.times.begin(), sheet.times.end(), [&](const paper::Bar& one) { return one.label == label; });
        REQUIRE(found != sheet.times.end());
        return *found;
    };
    CHECK(bar("Suction on").value == "08:10 · 1:13");
    CHECK(bar("Open sky").value == "08:14 · 5:00");
    CHECK(bar("Entered").value == "08:13 · 6:00");
    REQUIRE(bar("Open sky").spans.size() == 1);
    CHECK(bar("Open sky").spans[0].to - bar("Open sky").spans[0].from == doctest::Approx(5).epsilon(1e-9));
    CHECK(std::count_if(sheet.times.begin(), sheet.times.end(), [](const paper::Bar& one) { return one.phase; }) == 6);
}

TEST_CASE("every suture stands on the sheet where it was tied") {
    // The order for 16: 12, 6, 3, 9, 1:30, 7:30, 4:30, 10:30 (the usual order, common practice, no source). Mark 1 is at 12.
    const paper::Sheet sheet = paper::sheet(printed::demo(), printed::words());
    REQUIRE(sheet.placed.size() == 16);
    CHECK(sheet.placed[0] == "1.  12  mark 1");
    CHECK(sheet.placed[1] == "2.  6  mark 9");
    CHECK(sheet.placed[5] == "6.  7:30  mark 11");
    CHECK(sheet.face.done.size() == 16);
    CHECK(sheet.face.numbered.size() == 16);
}

TEST_CASE("what no event holds is said to be not recorded, and no row is left out") {
    const paper::Sheet before = paper::sheet(printed::opened(), printed::words()), after = paper::sheet(printed::demo(), printed::words());
    const auto labels = [](const paper::Section& section) {
        std::vector<std::string> made{};
        for (const paper::Pair& row : section.rows) made.push_back(row.label);
        return made;
    };
    CHECK(labels(before.depth) == labels(after.depth));
    CHECK(labels(before.sutures) == labels(after.sutures));
    CHECK(labels(before.tissue) == labels(after.tissue));
    CHECK(labels(before.counts) == labels(after.counts));
    for (const std::string label : {"Planned spokes", "Counted", "Second cut", "Suction on for", "Entered by the trephine"}) {
        CAPTURE(label);
        CHECK(value_of(before.depth, label) == none);
        CHECK(value_of(after.depth, label) != none);
    }
    CHECK(value_of(before.sutures, "Ring reflection") == none);
    CHECK(value_of(after.tissue, "Storage") == "cold; day 3");
    CHECK(value_of(after.tissue, "Trephine, pack") == none);
    for (const std::string label : {"Suture material", "Specimens", "Tissue bank told", "Grafted"}) {
        CAPTURE(label);
        CHECK(value_of(before.tissue, label) == none);
        CHECK_FALSE(says(value_of(after.tissue, label), none));
    }
    for (const std::string label : {"Accepted by surgeon", "Back-up"}) {
        CHECK(value_of(before.tissue, label) == none);
        CHECK(value_of(after.tissue, label) == "step tapped 08:01");
    }
    CHECK(value_of(before.sutures, "Knots") == none);
    CHECK(value_of(after.sutures, "Knots") == "buried on the host side, told 08:32");
    CHECK(printed::pages_of(printed::sheet_pdf(printed::opened())) == 1);
}

TEST_CASE("what was read from labels is on the sheet: number, day in storage, lots; what speaks against it under otherwise") {
    paper::Record record = printed::opened();
    record.state.inputs.file.donor.stored.reset();  // then the label's day counts
    const measure::Day collected{2026, 11, 16}, expires{2027, 1, 31};
    guide::Item tissue{.kind = guide::ItemKind::Tissue, .donation = "Z549917123456", .collected = collected};
    guide::Item trephine{.kind = guide::ItemKind::Pack, .lot = "T77", .expires = expires, .instrument = "suction-trephine"};
    guide::Item wrong = trephine, other{.kind = guide::ItemKind::Pack, .gtin = "09506000134352", .lot = "N10"};
    wrong.lot = "T88";
    printed::add(record, {guide::Scanned{.bytes = "a", .item = tissue}, guide::Scanned{.bytes = "b", .item = trephine},
                          guide::Scanned{.bytes = "c", .item = wrong, .against = {{guide::Against::WrongSize, {"8.00", "7.50"}}}},
                          guide::ItemPutAside{.event = record.state.last + 3, .why = "wrong box"},
                          guide::Scanned{.bytes = "d", .item = other}, guide::TissueTold{guide::TissueWord::Grafted, ""}});
    const paper::Section rows = paper::tissue_section(record, printed::words());
    CHECK(says(value_of(rows, "Donation number"), "Z549917123456"));
    CHECK(value_of(rows, "Storage") == "cold; day 9, over 7 days");  // 16 to 25 November
    CHECK(value_of(rows, "Trephine, pack") == "lot T77, expires 2027-01-31");
    CHECK(value_of(rows, "Punch, pack") == none);
    CHECK(value_of(rows, "Other packs read") == "09506000134352 lot N10");
    CHECK(says(value_of(rows, "Grafted"), "yes"));
    const auto lines = paper::otherwise(record, printed::words());
    REQUIRE(lines.size() == 2);
    CHECK(says(lines[0], "8.00 mm; planned is 7.50 mm"));
    CHECK(says(lines[0], "Read in: Lot T88: "));
    CHECK(says(lines[1], "Lot T88 put aside: wrong box"));
    CHECK(says(paper::fhir(record, printed::words()), "\"Z549917123456\""));
    CHECK_FALSE(says(paper::fhir(record, printed::words()), "product code and division"));
    tissue.product = "T0416", tissue.division = "003";
    printed::add(record, {guide::Scanned{.bytes = "a", .item = tissue, .completes = 3}});
    CHECK(says(paper::fhir(record, printed::words()), "T0416 003"));  // the donor's other cornea has the same number
}

TEST_CASE("what was told for the handover stands on the sheet: knots, suture material, specimens with their labels, the bank") {
    using namespace guide;
    paper::Record record = printed::demo(84);
    REQUIRE_FALSE(record.state.closed);
    printed::add(
        record,
        {KnotsTold{.side = KnotSide::Donor}, SuturesNamed{.material = "nylon 10-0", .lot = "N10"}, SuturesNamed{.material = "nylon 11-0"},
         SpecimenTold{.what = Specimen::HostButton, .to = SentTo::Pathology, .side = "right"},
         SpecimenTold{.what = Specimen::Medium, .to = SentTo::Discarded}, BankTold{.contact = "R. B.", .text = "grafted"}});
    const paper::Sheet sheet = paper::sheet(record, printed::words());
    CHECK(says(value_of(sheet.sutures, "Knots"), "buried on the donor side, told "));
    CHECK(value_of(sheet.tissue, "Suture material") == "nylon 10-0, lot N10; nylon 11-0");
    CHECK(value_of(sheet.tissue, "Specimens") == "host button: pathology, medium: discarded; labels: right");
    CHECK(says(value_of(sheet.tissue, "Tissue bank told"), "R. B., "));
    CHECK(says(value_of(sheet.tissue, "Tissue bank told"), ": grafted"));
    printed::add(record, {KnotsTold{.side = KnotSide::NotBuried}});
    CHECK(says(value_of(paper::sheet(record, printed::words()).sutures, "Knots"), "not buried, told "));
    CHECK(value_of(paper::tissue_section(printed::opened(), printed::words()), "Tissue bank told") == none);
}

TEST_CASE("what was told of the tissue comes before the taps on its steps; unfit stands before accepted") {
    using namespace guide;
    paper::Record record = printed::demo(84);
    printed::add(record, {TissueTold{TissueWord::BackUpNamed, "second donor"}, TissueTold{TissueWord::Accepted, ""}});
    const auto row = [&](const std::string& label) { return value_of(paper::tissue_section(record, printed::words()), label); };
    CHECK(says(row("Back-up"), "told "));
    CHECK(says(row("Back-up"), ": second donor"));
    CHECK(says(row("Accepted by surgeon"), "told "));
    printed::add(record, {TissueTold{TissueWord::Unfit, "scar"}});
    CHECK(says(row("Accepted by surgeon"), "found unfit, told "));
    CHECK(says(row("Accepted by surgeon"), ": scar"));
}

TEST_CASE("tissue that was accepted by the tap on its step stands in the bundle as well, once, and not over what was told") {
    using namespace guide;
    const auto accepted = [](const paper::Record& record) {
        return times_said(paper::fhir(record, printed::words()), "Donor tissue accepted by the surgeon");
    };
    CHECK(accepted(printed::opened()) == 0);
    paper::Record record = printed::demo(84);
    CHECK(says(paper::fhir(record, printed::words()), "By the tap on its step."));
    CHECK(accepted(record) == 1);
    printed::add(record, {TissueTold{TissueWord::Accepted, ""}});
    CHECK_FALSE(says(paper::fhir(record, printed::words()), "By the tap on its step."));
    CHECK(accepted(record) == 1);
    printed::add(record, {TissueTold{TissueWord::Unfit, "scar"}});
    CHECK(accepted(record) == 0);
}

TEST_CASE("a corrected time moves the sheet's time line and the time of what was done; both stand under otherwise") {
    paper::Record record = printed::demo(92);
    REQUIRE_FALSE(record.state.closed);
    const auto bar = [&] {
        const paper::Sheet sheet = paper::sheet(record, printed::words());
        return *std::find_if(sheet.times.begin(), sheet.times.end(), [](const paper::Bar& one) { return one.label == "Suction on"; });
    };
    REQUIRE(bar().value == "08:10 · 1:13");  // 08:10:20 to 08:11:33 by the script
    const guide::Spell spell = record.state.clocks.at("suction").front();
    const double from = bar().spans.front().from;
    printed::add(record, {guide::TimeCorrected{spell.from_seq, spell.from.utc_ms - 60'000, "tapped late"}});
    CHECK(bar().value == "08:09 · 2:13");
    CHECK(bar().spans.front().from == doctest::Approx(from - 1).epsilon(1e-9));
    const guide::StepDone sign_in = record.state.steps.at("sign-in");
    REQUIRE(measure::hour_minute(sign_in.at) == "08:02");
    printed::add(record, {guide::TimeCorrected{sign_in.seq, sign_in.at.utc_ms + 120'000, "tapped early"}});
    CHECK(says(value_of(paper::count_section(record, printed::words()), "Sign in, time out, sign out"), "08:04"));
    const auto lines = paper::otherwise(record, printed::words());
    REQUIRE(lines.size() == 2);
    CHECK(says(lines[0], "Time corrected, 08:10 to 08:09, of"));
}

TEST_CASE("what one tap wrote and was corrected as one is one line on the sheet, and another correction is another") {
    paper::Record record = printed::demo(92);
    const auto correct = [&](guide::Seq event, std::int64_t by_ms) {
        measure::Instant at = record.events.back().at;
        at.utc_ms += 1000, at.boottime_ms += 1000;
        const std::int64_t utc_ms = guide::find_timed(record.state, event)->at.utc_ms + by_ms;
        const auto facts = guide::decide(record.state, guide::Who::Circulating, guide::CorrectTime{event, utc_ms, "tapped late"}, at);
        REQUIRE(facts);
        for (const guide::Fact& fact : *facts) {
            record.events.push_back({.seq = record.state.last + 1, .at = at, .who = guide::Who::Circulating, .fact = fact});
            record.state = guide::apply(std::move(record.state), record.events.back());
        }
        return facts->size();
    };
    REQUIRE(correct(record.state.steps.at("button-out").seq, -2000) == 2);
    CHECK(paper::otherwise(record, printed::words()).size() == 1);
    CHECK(says(paper::otherwise(record, printed::words()).front(), "Time corrected, 08:14 to 08:14, of Button out, Open sky: tapped late"));
    REQUIRE(correct(record.state.steps.at("sign-in").seq, -1000) == 1);
    CHECK(paper::otherwise(record, printed::words()).size() == 2);
}

TEST_CASE("a case that is not closed, not sealed or not whole says so at the top") {
    CHECK(paper::sheet(printed::demo(44), printed::words()).status == "CASE STILL OPEN");
    paper::Record record = printed::demo();
    record.seal.state = paper::Seal::State::None;
    CHECK(paper::sheet(record, printed::words()).status == "Closed, not locked");
    record.seal.state = paper::Seal::State::Wrong;
    CHECK(paper::sheet(record, printed::words()).status == "RECORD NOT WHOLE");
    record.seal.state = paper::Seal::State::Whole;
    record.seal.trouble = "event 12 was changed";
    CHECK(paper::sheet(record, printed::words()).status == "RECORD NOT WHOLE");
    CHECK(says(printed::text_of(printed::sheet_pdf(record)), "event 12 was changed"));
}

TEST_CASE("a depth after a second seating is not told") {
    paper::Record record = printed::demo(56);  // the cut has ended, suction is off
    REQUIRE(record.state.seatings.size() == 1);
    CHECK(says(value_of(paper::depth_section(record, printed::words()), "Expected left (95 %)"), "±"));
    printed::add(record, {guide::SuctionTurned{guide::Suction::On}});
    for (int i = 0; i < 8; ++i) printed::add(record, {guide::SpokeTurned{}});
    REQUIRE(guide::blade(record.state).position == 5);  // where a first seating would have had a figure
    const paper::Section depth = paper::depth_section(record, printed::words());
    CHECK_FALSE(says(value_of(depth, "Expected left (95 %)"), "±"));
    CHECK(says(value_of(depth, "Second cut"), "2 seatings"));
}

TEST_CASE("a depth that was measured stands apart from the one that was expected") {
    paper::Record record = printed::demo(56);
    CHECK(value_of(paper::depth_section(record, printed::words()), "Depth measured") == none);
    printed::add(record, {guide::DepthMeasured{measure::nm(512'400), "OCT in theatre"}});
    CHECK(value_of(paper::depth_section(record, printed::words()), "Depth measured") == "512 µm, OCT in theatre");
}

TEST_CASE("entered by the trephine is yes by the cut's end or by the departure, else no, and not recorded while the cut goes on") {
    const auto entered = [](const paper::Record& record) {
        return value_of(paper::depth_section(record, printed::words()), "Entered by the trephine");
    };
    paper::Record cutting = printed::demo(46);
    REQUIRE(guide::cutting(cutting.state));
    CHECK(entered(cutting) == none);
    paper::Record by_end = cutting, by_departure = cutting, at_plan = cutting;
    printed::add(by_end, {guide::CutEnded{guide::CutEnd::Entered, 7}});
    CHECK(says(entered(by_end), "yes"));
    printed::add(by_departure, {guide::Departed{"entered-by-trephine", ""}});
    CHECK(entered(by_departure) == "yes");
    printed::add(at_plan, {guide::CutEnded{guide::CutEnd::AtPlan, 8}});
    CHECK(entered(at_plan) == "no");
}

TEST_CASE("what went otherwise stands with its time, its reason, and whether it was late or taken back") {
    paper::Record record = printed::demo(44);
    const guide::Seq next = record.state.last + 1;
    printed::add(record, {guide::Departed{"tilt", "from the nose"}, guide::SpokeTurned{.by = 1, .owes_reason = true},
                          guide::SuctionTurned{guide::Suction::Lost}, guide::TapUndone{next + 2}, guide::ReasonGiven{next + 1, "one more"},
                          guide::CameBack{"tilt"}, guide::WrittenLate{next, next}, guide::StepSkipped{"debrief", "no time"}});
    const auto lines = paper::otherwise(record, printed::words());
    REQUIRE(lines.size() == 4);
    CHECK(says(lines[0], "Suction lost, taken back"));
    CHECK(says(lines[1], "Ring is tilted: from the nose, over at "));
    CHECK(says(lines[1], "written late"));
    CHECK(says(lines[2], ": one more"));
    CHECK(says(lines[3], "Skipped, Debrief, two minutes: no time"));
    const paper::Section rows = paper::sheet(record, printed::words()).record_few;
    CHECK(says(value_of(rows, "Taps written late"), "events " + std::to_string(next) + " to " + std::to_string(next)));
}

TEST_CASE("a recorded difference is on the sheet however many notes were written before it [H-13]") {
    paper::Record record = printed::demo(44);
    const std::string item = record.state.brief.unit.counts.front().id;
    std::vector<guide::Fact> facts(40, guide::NoteWritten{.text = "A long word of what was done and by whom it was told to the desk"});
    facts.push_back(guide::DifferenceRecorded{.item = item, .seen = 1, .expected = 2, .why = "searched, not found"});
    printed::add(record, facts);
    CHECK(says(paper::otherwise(record, printed::words()).front(), "searched, not found"));
    const std::string text = printed::text_of(printed::sheet_pdf(record));
    CHECK(says(text, "searched, not found"));
    CHECK(says(text, "difference recorded"));
    CHECK(says(text, "more, see the JSON"));
}

TEST_CASE("what went otherwise stands before what was put right and before notes") {
    using namespace guide;
    paper::Record record = printed::demo(44);
    printed::add(record,
                 {NoteWritten{.text = "a note"}, ItemPutAside{.event = 1, .why = "another size"}, Departed{.what = "tilt", .note = ""},
                  DifferenceRecorded{.item = record.state.brief.unit.counts.front().id, .seen = 1, .expected = 2, .why = "found"}});
    const auto lines = paper::otherwise(record, printed::words());
    const auto place = [&](const std::string& part) {
        return std::find_if(lines.begin(), lines.end(), [&](const std::string& one) { return says(one, part); }) - lines.begin();
    };
    CHECK(place("found") < place("tilted"));
    CHECK(place("tilted") < place("another size"));
    CHECK(place("another size") < place("a note"));
    CHECK(place("a note") < static_cast<std::ptrdiff_t>(lines.size()));
}

TEST_CASE("whatever was written, one page, nothing outside it, nothing on anything else, and the rest is counted") {
    for (const paper::Record& record : {printed::opened(), printed::demo(), printed::crowded()}) {
        for (const auto size : {paper::Size::A4, paper::Size::Letter}) {
            const auto lettering = printed::press().lettering(paper::sheet_caps());
            const auto shapes = paper::draw(paper::sheet(record, printed::words()), size, lettering);
            CAPTURE(record.events.size());
            CHECK(printed::faults(shapes, size, lettering) == "");
            const std::string pdf = printed::sheet_pdf(record, size);
            CHECK(printed::pages_of(pdf) == 1);
            CHECK_FALSE(says(printed::text_of(pdf), "<"));  // an id without words stands in angle brackets
        }
    }
    const std::string text = printed::text_of(printed::sheet_pdf(printed::crowded()));
    CHECK(times_said(text, "more, see the JSON") == 4);  // otherwise, counts, cautions, and the last of the tissue
    CHECK(says(text, "24 of 24"));
    CHECK(says(text, "Pad and shield"));
    CHECK(says(text, "Specimens"));
    CHECK(says(text, "LOT-OF-20-LETTERS-0"));
    CHECK(says(text, "24. "));
    CHECK(says(text, "3 (1×), 7 (1×)"));
    CHECK(says(text, "aaaa4711"));
}

TEST_CASE("suction that was lost stands once, as what happened to the blade, with when it was over") {
    paper::Record record = printed::demo(44);
    printed::add(record,
                 {guide::SuctionTurned{guide::Suction::Lost}, guide::Departed{"suction-lost", ""}, guide::CameBack{"suction-lost"}});
    const auto count = [&](const std::string& part) {
        const auto lines = paper::otherwise(record, printed::words());
        return std::count_if(lines.begin(), lines.end(), [&](const std::string& line) { return says(line, part); });
    };
    CHECK(count("Suction lost") == 1);
    CHECK(count("Suction lost, over at ") == 1);
    printed::add(record, {guide::Departed{"suction-lost", ""}});  // told as a departure alone, with nothing on the eye
    CHECK(count("Suction lost") == 2);
}

TEST_CASE("a departure that was taken back says so once") {
    paper::Record record = printed::demo(44);
    printed::add(record, {guide::Departed{"tilt", ""}});
    printed::add(record, {guide::TapUndone{record.state.last}});
    const auto lines = paper::otherwise(record, printed::words());
    REQUIRE(lines.size() == 1);
    CHECK(lines.front().ends_with("Ring is tilted, taken back"));
}
