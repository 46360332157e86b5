// The pages over past cases by touch: from the list of cases through figures, filter and one case back, on a ledger that stays as it was.
#include "app/demo.hpp"
#include "past_shelf.hpp"
#include "support/generated.hpp"

#include <filesystem>

using graftside::Session;
using testplace::Folder;

namespace {

constexpr int cases = 12;

measure::Instant at(std::int64_t s) { return demo::later(demo::script().front().at, s * 1000); }

/// Twelve invented cases of 2016 to 2025, even ones of the right eye, the last of them still open.
void fill(const std::string& path) {
    auto book = ledger::Ledger::open(path);
    REQUIRE(book);
    for (int number = 0; number < cases; ++number) {
        std::vector<guide::Event> events = sample::generated_case(number);
        if (number == cases - 1) events.pop_back();
        REQUIRE(book->append(sample::generated_reference(number), events).held == 0);
    }
}

Session started(const std::string& path, const std::string& case_file = "") {
    graftside::Options options = demo::options(path);
    options.on = measure::Day{.year = 2025, .month = 12, .day = 1};
    auto session = Session::start(options, demo::stock(), case_file, at(0));
    REQUIRE(session);
    return *std::move(session);
}

screen::PastModel page(const Session& session) {
    const auto view = session.view(at(1));
    const auto* model = std::get_if<screen::PastModel>(&view);
    REQUIRE(model != nullptr);
    return *model;
}

/// The hashes in which the record of each case ends.
std::vector<ledger::End> ends(const std::string& path) {
    auto book = ledger::Ledger::open(path, {.station_key = "", .vfs = "", .purpose = ledger::Purpose::Look});
    REQUIRE(book);
    return book->ends();
}

}  // namespace

TEST_CASE("list, figures, filter, list of past cases, one case, and back, all by targets, and the record is what it was") {
    const Folder folder;
    const std::string path = folder.file("a.ledger");
    fill(path);
    const auto before = ends(path);
    const std::string mirror = testplace::read(path + ".txt");
    {
        Session session = started(path);
        demo::tap(session, "past", at(1));
        CHECK(page(session).title == "Past cases: 11");
        for (const char* tab : {"cuts", "reach", "otherwise", "times"}) {
            demo::tap(session, std::string("past-") + tab, at(1));
            CHECK_FALSE(page(session).rows.empty());
        }
        demo::tap(session, "past-filter", at(1));
        demo::tap(session, "past-eye", at(1));
        CHECK(page(session).title == "Past cases: 6");
        demo::tap(session, "past-eye", at(1));
        CHECK(page(session).title == "Past cases: 5");
        demo::tap(session, "past-list", at(1));
        REQUIRE(page(session).choices.size() == 5);
        CHECK(page(session).choices.front().id == "past-case-" + sample::generated_reference(9));
        demo::tap(session, "past-case-" + sample::generated_reference(3), at(1));
        CHECK(page(session).title.starts_with(sample::generated_reference(3)));
        CHECK(std::holds_alternative<picture::ClockFace>(page(session).picture));
        for (const char* part : {"clocks", "marks", "record"}) demo::tap(session, std::string("past-") + part, at(1));
        session.touched({.act = std::vector<guide::Intent>{guide::WriteNote{.text = "later"}}}, at(1));
        demo::tap(session, "back", at(1));
        CHECK(page(session).choices.size() == 5);
        demo::tap(session, "back", at(1));
        CHECK(demo::has_target(session.view(at(1)), "new"));
    }
    CHECK((ends(path) == before));
    CHECK(testplace::read(path + ".txt") == mirror);
}

TEST_CASE("the last twelve months are counted from the day that comes in; the next time nothing is filtered") {
    const Folder folder;
    fill(folder.file("a.ledger"));
    Session session = started(folder.file("a.ledger"));
    demo::tap(session, "past", at(1));
    demo::tap(session, "past-filter", at(1));
    demo::tap(session, "past-year", at(1));
    CHECK(page(session).title == "Past cases: 1");  // the tenth, of 2025-10-10
    demo::tap(session, "past-kind", at(1));
    CHECK(page(session).title == "Past rehearsals: 0");
    demo::tap(session, "back", at(1));
    demo::tap(session, "back", at(1));  // out of the filter, then out of the past cases
    demo::tap(session, "past", at(1));
    CHECK(page(session).title == "Past cases: 11");
}

TEST_CASE("while a case is under way its figures are not turned to; once it is closed they are") {
    const Folder folder;
    const std::string path = folder.file("a.ledger");
    {
        Session session = started(path, demo::case_path());
        session.touched({.act = screen::Show{.page = "cases"}}, at(1));
        CHECK_FALSE(demo::target(session.view(at(1)), "past").why_not.empty());
        demo::tap(session, "past", at(1));
        CHECK(std::holds_alternative<screen::PickModel>(session.view(at(1))));
    }
    std::filesystem::remove(path);
    std::filesystem::remove(path + ".txt");
    demo::play(path, demo::script());
    Session session = started(path);
    demo::tap(session, "case-" + demo::reference(), at(4000));
    demo::tap(session, "to-list", at(4000));
    demo::tap(session, "past", at(4000));
    demo::tap(session, "past-filter", at(4000));
    demo::tap(session, "past-kind", at(4000));
    CHECK(page(session).title == "Past rehearsals: 1");
    demo::tap(session, "past-list", at(4000));
    demo::tap(session, "past-case-" + demo::reference(), at(4000));
    CHECK(std::get<picture::ClockFace>(page(session).picture).done.size() == 16);
}

TEST_CASE("where past cases cannot be read the banner says why and the list stays") {
    const Folder folder;
    const std::string path = folder.file("a.ledger");
    fill(path);
    std::string bytes = testplace::read(path);
    const auto place = bytes.find("generated");  // in the body of an event: its chain no longer holds
    REQUIRE(place != std::string::npos);
    bytes[place] = 'G';
    testplace::write(path, bytes);
    Session session = started(path);
    demo::tap(session, "past", at(1));
    CHECK_FALSE(demo::banner(session.view(at(1))).empty());
    CHECK(demo::has_target(session.view(at(1)), "new"));
}
