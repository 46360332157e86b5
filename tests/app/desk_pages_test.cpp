// What the Desk says of tissue and packs, of times and for the handover, worked by the keyboard alone. The numbers on the labels are the
// standards' own examples; whose they are is invented. That expired tissue is the surgeon's to decide, with the bank, is common
// practice, no source.
#include "app/at_desk.hpp"
#include "device/files.hpp"
#include "guide/timed.hpp"
#include "guide/tissue.hpp"

#include <sys/stat.h>
#include <nlohmann/json.hpp>

using demo::AtDesk;
using demo::newest;
using demo::started;
using testplace::Folder;

namespace {

template <class Fact>
const Fact& told(const AtDesk& desk) {
    REQUIRE(std::holds_alternative<Fact>(newest(desk).fact));
    return std::get<Fact>(newest(desk).fact);
}

bool something_stands(const AtDesk& desk) { return guide::standing_scan(desk.state()) != nullptr; }

/// The lines of the script up to the one that ties this suture.
demo::Script up_to_suture(int n) {
    demo::Script lines{};
    for (const auto& line : demo::script()) {
        lines.push_back(line);
        const auto* tie = std::get_if<guide::TieSuture>(&line.intent);
        if (tie != nullptr && tie->n == n) break;
    }
    return lines;
}

/// A PDF needs the letters that the build lays beside the program.
graftside::Stock with_fonts() {
    graftside::Stock made = demo::stock();
    made.assets = SHARE_DIR;
    return made;
}

const std::u32string old_pack = U"010950600013435217200131101ABC";                  // expired in 2020
const std::u32string old_tissue = U"SEC:PL001499Z549917123456A00T041600320171231";  // expired in 2017

}  // namespace

TEST_CASE("a label that is typed goes the way of a scan, and what does not fit is put aside with a reason") {
    const Folder folder;
    AtDesk desk(started(folder));
    desk.types(U"tl");
    desk.types(old_pack + U"\n");
    CHECK(told<guide::Scanned>(desk).bytes == "010950600013435217200131101ABC");
    CHECK(newest(desk).who == guide::Who::Circulating);
    REQUIRE(something_stands(desk));
    desk.types(U"1");
    desk.types(U"p");
    desk.types(U"2");
    CHECK(told<guide::ItemPutAside>(desk).why == "expired");
    CHECK(newest(desk).who == guide::Who::Circulating);
    CHECK_FALSE(something_stands(desk));
}

TEST_CASE("the surgeon overrules by a hold, recorded as the surgeon's; expired tissue only with the contact at the bank") {
    const Folder folder;
    AtDesk desk(started(folder));
    desk.scans(old_tissue);
    REQUIRE(something_stands(desk));
    desk.types(U"t1o");
    CHECK(desk.desk.view(demo::at(9000)).field);  // whom at the bank
    desk.types(U"\n");                            // nobody: nothing happens
    desk.types(U"R.B.\n");
    const guide::Seq before = desk.state().last;
    desk.types(U"1");  // a tap is no hold
    CHECK(desk.state().last == before);
    desk.holds(U'1', 900);
    CHECK(told<guide::Overruled>(desk).contact == "R.B.");
    CHECK_FALSE(told<guide::Overruled>(desk).why.empty());
    CHECK(newest(desk).who == guide::Who::Surgeon);
    CHECK_FALSE(something_stands(desk));
}

TEST_CASE("an expired pack is overruled without a contact, since no bank knows of it") {
    const Folder folder;
    AtDesk desk(started(folder));
    desk.scans(old_pack);
    desk.types(U"t1o");
    CHECK_FALSE(desk.desk.view(demo::at(9000)).field);
    desk.holds(U'2', 900);
    CHECK(told<guide::Overruled>(desk).contact.empty());
    CHECK(newest(desk).who == guide::Who::Surgeon);
}

TEST_CASE("tissue: accepted and unfit are the surgeon's, the rest the circulating nurse's") {
    const Folder folder;
    AtDesk desk(started(folder));
    desk.types(U"ta");
    desk.holds(U'a', 900);
    CHECK(told<guide::TissueTold>(desk).what == guide::TissueWord::Accepted);
    CHECK(newest(desk).who == guide::Who::Surgeon);
    desk.types(U"tau");
    desk.types(U"folds\n");
    CHECK((told<guide::TissueTold>(desk) == guide::TissueTold{.what = guide::TissueWord::Unfit, .text = "folds"}));
    CHECK(newest(desk).who == guide::Who::Surgeon);
    desk.types(U"tal");
    desk.types(U"rim\n");
    CHECK((told<guide::TissueTold>(desk) == guide::TissueTold{.what = guide::TissueWord::LeftOver, .text = "rim"}));
    CHECK(newest(desk).who == guide::Who::Circulating);
}

TEST_CASE("a measured depth is typed, read back and written with how; one that no cornea has is refused") {
    const Folder folder;
    AtDesk desk(started(folder, up_to_suture(8)));
    desk.types(U"td");
    desk.types(U"9000\n");
    const guide::Seq before = desk.state().last;
    desk.types(U"1");
    REQUIRE(desk.desk.view(demo::at(9000)).banner);
    CHECK(desk.state().last == before);
    desk.escape();
    desk.types(U"td");
    desk.types(U"512\n");
    CHECK(desk.desk.view(demo::at(9000)).heading.starts_with("512 µm"));
    desk.types(U"1");
    CHECK((told<guide::DepthMeasured>(desk) == guide::DepthMeasured{.depth = measure::from_um(512), .how = "Ultrasound"}));
    CHECK(newest(desk).who == guide::Who::Circulating);
    desk.types(U"td");
    desk.types(U"515\n");
    desk.types(U"t");
    desk.types(U"a probe\n");
    CHECK((told<guide::DepthMeasured>(desk) == guide::DepthMeasured{.depth = measure::from_um(515), .how = "a probe"}));
}

TEST_CASE("knots, suture material, specimens and the tissue bank are told by the keyboard") {
    const Folder folder;
    AtDesk desk(started(folder, up_to_suture(8)));
    desk.types(U"tk1");
    CHECK(told<guide::KnotsTold>(desk).side == guide::KnotSide::Host);
    desk.types(U"tst");
    desk.types(U"nylon 10-0\n");
    desk.types(U"N10\n");
    CHECK((told<guide::SuturesNamed>(desk) == guide::SuturesNamed{.material = "nylon 10-0", .lot = "N10"}));
    desk.scans(U"010950600013435217300131101ABC");
    const guide::Seq pack = newest(desk).seq;
    desk.types(U"ts1");
    desk.types(U"nylon 11-0\n");
    CHECK((told<guide::SuturesNamed>(desk) == guide::SuturesNamed{.material = "nylon 11-0", .lot = "1ABC", .pack = pack}));
    desk.types(U"tg11");
    desk.types(U"l");  // the other eye's label
    REQUIRE(desk.desk.view(demo::at(9000)).banner);
    CHECK(desk.state().specimens.empty());
    desk.types(U"r");
    CHECK((told<guide::SpecimenTold>(desk) ==
           guide::SpecimenTold{.what = guide::Specimen::HostButton, .to = guide::SentTo::Pathology, .side = "right"}));
    desk.types(U"33");  // the list stands: medium, discarded
    CHECK((told<guide::SpecimenTold>(desk) == guide::SpecimenTold{.what = guide::Specimen::Medium, .to = guide::SentTo::Discarded}));
    desk.escape();
    desk.types(U"tb");
    desk.types(U"R.B.\n");
    desk.types(U"1");  // the note as it stands
    CHECK(told<guide::BankTold>(desk).contact == "R.B.");
    // What the label says of its end is the bank's to compare; the day is the demo script's.
    CHECK(told<guide::BankTold>(desk).text.ends_with(". " + demo::stock().words("bank.use-not-told") + "."));
    CHECK(told<guide::BankTold>(desk).text.find("2026-12-02") != std::string::npos);
}

TEST_CASE("a wrong time is picked, typed anew and given a reason; what was written stays") {
    const Folder folder;
    AtDesk desk(started(folder, up_to_suture(8)));
    const auto times = guide::timed(desk.state());
    REQUIRE(times[0].id == "next-four");  // closed by the suture
    REQUIRE(times[1].n == 8);             // tied at 08:23:33 by the script, the seventh before 08:23:10
    desk.types(U"w1");                    // one row a tap: the suture
    desk.types(U"99:00\n");
    desk.types(U"\n");
    for (int i = 0; i < 5; ++i) desk.desk.key({.name = device::KeyName::Backspace, .time_ms = desk.ms}, desk.touch);
    desk.types(U"08:23:10\n");
    desk.types(U"1");
    const auto& corrected = told<guide::TimeCorrected>(desk);
    CHECK(corrected.event == times[0].seq);  // the newest of the two: what the same tap closed is corrected with it
    CHECK(desk.state().steps.at("next-four").at == desk.state().sutures.back().at);
    CHECK(measure::rfc3339({.utc_ms = corrected.utc_ms}) == "2026-11-25T08:23:10.000Z");
    CHECK_FALSE(corrected.why.empty());
    CHECK(measure::hour_minute(desk.state().sutures.back().at) == "08:23");
    CHECK(desk.state().sutures.back().at.utc_ms == corrected.utc_ms);
}

TEST_CASE("the handover files are written beside the ledger, for their owner alone, before the lock and after; failures are said") {
    const Folder folder;
    const std::string made = folder.file("handover");
    const auto sheet_says_open = [&] {
        const auto text = testplace::read(made + "/DEMO-1.json");
        return !nlohmann::json::parse(text)["state"]["closed"].get<bool>();
    };
    {
        AtDesk desk(started(folder, up_to_suture(8), with_fonts()));
        desk.types(U"p");
        CHECK(desk.desk.view(demo::at(9000)).line.find(made) != std::string::npos);
        desk.types(U"pfcj");
        for (const std::string name : {"DEMO-1.pdf", "DEMO-1.fhir.json", "DEMO-1.csv", "DEMO-1.json"}) {
            CAPTURE(name);
            struct stat seen {};
            REQUIRE(::stat((made + "/" + name).c_str(), &seen) == 0);
            CHECK((seen.st_mode & 0777U) == 0600U);
            CHECK(seen.st_size > 100);
        }
        CHECK(testplace::read(made + "/DEMO-1.pdf").starts_with("%PDF"));
        CHECK(sheet_says_open());
        for (const auto& action : desk.desk.view(demo::at(9000)).actions) CHECK((action.key == "Esc" || !action.line.empty()));
    }
    demo::Script rest(demo::script().begin() + static_cast<std::ptrdiff_t>(up_to_suture(8).size()), demo::script().end());
    AtDesk desk(started(folder, rest));
    REQUIRE(desk.state().closed);
    desk.types(U"pj");
    CHECK_FALSE(sheet_says_open());
    REQUIRE(::chmod(made.c_str(), 0700) == 0);
    REQUIRE(::unlink((made + "/DEMO-1.csv").c_str()) == 0);
    REQUIRE(::mkdir((made + "/DEMO-1.csv").c_str(), 0700) == 0);  // a folder in its place
    desk.types(U"c");
    CHECK(desk.desk.view(demo::at(9000)).banner);
}
