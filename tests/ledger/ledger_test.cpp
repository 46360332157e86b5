// Appending, loading, sealing, verifying, the list of cases and the mirror, on a disk that does as it is told.
#include "ledger/ledger.hpp"

#include "ledger/codec.hpp"
#include "ledger/place_for_tests.hpp"
#include "ledger/samples.hpp"

#include <doctest/doctest.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>

using namespace ledger;
using testplace::Folder;

namespace {

Ledger opened(const std::string& path, const Options& options = {}) {
    auto ledger = Ledger::open(path, options);
    if (!ledger) FAIL(ledger.error().detail);
    return *std::move(ledger);
}

std::vector<guide::Event> loaded(const Ledger& ledger, std::string_view reference) {
    auto events = ledger.load(reference);
    if (!events) FAIL(events.error().detail);
    return *std::move(events);
}

Verdict verdict(const Ledger& ledger, std::string_view reference) {
    auto said = ledger.verify(reference);
    if (!said) FAIL(said.error().detail);
    return *std::move(said);
}

unsigned mode_of(const std::string& path) {
    struct stat status {};
    REQUIRE(::stat(path.c_str(), &status) == 0);
    return status.st_mode & 0777;
}

Failure::What open_fails(const std::string& path, const Options& options = {}) {
    const auto ledger = Ledger::open(path, options);
    REQUIRE_FALSE(ledger);
    return ledger.error().what;
}

std::vector<guide::Event> closed_case(int spokes) {
    auto events = samples::events(1, 1 + spokes);
    events.push_back(samples::event(events.size() + 1, guide::CaseClosed{.how = guide::CaseEnd::Done}));
    return events;
}

}  // namespace

TEST_CASE("what is appended is on disk, and reads back equal after the ledger is opened again") {
    const Folder folder;
    const auto events = samples::events(1, 5);
    {
        auto ledger = opened(folder.file("a.ledger"));
        CHECK((ledger.append("K-0147", events) == Health{.on_disk = 5}));
        CHECK((loaded(ledger, "K-0147") == events));
    }
    const auto again = opened(folder.file("a.ledger"));
    CHECK((loaded(again, "K-0147") == events));
    CHECK(loaded(again, "K-0148").empty());
}

TEST_CASE("every kind of event goes through the ledger unchanged") {
    const Folder folder;
    std::vector<guide::Event> events;
    for (const auto& fact : samples::facts()) events.push_back(samples::event(events.size() + 1, fact));
    auto ledger = opened(folder.file("a.ledger"));
    CHECK(ledger.append("K-0147", events).held == 0);
    CHECK((loaded(ledger, "K-0147") == events));
}

TEST_CASE("ledger, mirror and key are for their owner alone, and a missing folder is made") {
    const Folder folder;
    const auto path = folder.file("new/deeper/a.ledger");
    auto ledger = opened(path);
    ledger.append("K-0147", closed_case(1));
    REQUIRE(ledger.seal("K-0147", samples::instant(9)));
    CHECK(mode_of(path) == 0600);
    CHECK(mode_of(path + ".txt") == 0600);
    CHECK(mode_of(path + ".key") == 0600);
    CHECK(mode_of(folder.file("new/deeper")) == 0700);
}

TEST_CASE("a ledger held by a program is in use for every other, to record or to look") {
    const Folder folder;
    const auto path = folder.file("a.ledger");
    {
        auto first = opened(path);
        CHECK(open_fails(path) == Failure::What::InUse);
        CHECK(open_fails(path, {.purpose = Purpose::Look}) == Failure::What::InUse);
        CHECK((first.append("K-0147", samples::events(1, 2)) == Health{.on_disk = 2}));
    }
    CHECK((loaded(opened(path, {.purpose = Purpose::Look}), "K-0147") == samples::events(1, 2)));
}

TEST_CASE("looking makes nothing and writes nothing") {
    const Folder folder;
    CHECK(open_fails(folder.file("none.ledger"), {.purpose = Purpose::Look}) == Failure::What::CannotOpen);
    CHECK_FALSE(std::filesystem::exists(folder.file("none.ledger")));
    { opened(folder.file("a.ledger")).append("K-0147", samples::events(1, 2)); }
    std::filesystem::remove(folder.file("a.ledger.txt"));
    const auto before = testplace::read(folder.file("a.ledger"));
    CHECK(loaded(opened(folder.file("a.ledger"), {.purpose = Purpose::Look}), "K-0147").size() == 2);
    CHECK(testplace::read(folder.file("a.ledger")) == before);
    CHECK_FALSE(std::filesystem::exists(folder.file("a.ledger.txt")));
}

TEST_CASE("SQLite is set as decided: no WAL, strict tables, our application id and version") {
    const Folder folder;
    { opened(folder.file("a.ledger")).append("K-0147", samples::events(1, 2)); }
    testplace::Sql sql(folder.file("a.ledger"));
    CHECK(sql.number("PRAGMA application_id") == 0x47524654);
    CHECK(sql.number("PRAGMA user_version") == 1);
    CHECK(sql.number("SELECT count(*) FROM pragma_table_list WHERE name IN ('events','seals') AND strict") == 2);
    // Bytes 18 and 19 of the header are 1 for a rollback journal and 2 for WAL (SQLite's file format, from memory).
    const auto header = testplace::read(folder.file("a.ledger")).substr(18, 2);
    CHECK(header == "\x01\x01");
    CHECK(sql.run("UPDATE events SET body='{}'") == SQLITE_CONSTRAINT);
    CHECK(sql.run("DELETE FROM events") == SQLITE_CONSTRAINT);
}

// Computed with Python 3.11, hashlib.blake2b (RFC 7693), by the rule in chain.hpp:
//   f = lambda *t: b"".join(str(len(s.encode())).encode() + b":" + s.encode() + b"," for s in t)
//   hashlib.blake2b(bytes(32) + f("K-0147", "1", "1000", "60", "7", "18446744073709551615", "surgeon", "note-written",
//                   '{"text":"\u00b5"}'), digest_size=32).hexdigest()
TEST_CASE("the hash of an event is the one that an outside program computes") {
    const Folder folder;
    {
        auto ledger = opened(folder.file("a.ledger"));
        const guide::Event event{.seq = 1,
                                 .at = {.utc_ms = 1000, .offset_min = 60, .boottime_ms = 7, .boot = 18'446'744'073'709'551'615U},
                                 .who = guide::Who::Surgeon,
                                 .fact = guide::NoteWritten{.text = "µ"}};
        ledger.append("K-0147", {&event, 1});
    }
    testplace::Sql sql(folder.file("a.ledger"));
    CHECK(sql.text("SELECT lower(hex(hash)) FROM events") == "78ca8a668fe437ab54c1fcfceba8aebc296b16be3fbeaaa6b8f78852b004ce5f");
    CHECK(testplace::read(folder.file("a.ledger.txt"))
              .starts_with(
                  "78ca8a668fe437ab54c1fcfceba8aebc296b16be3fbeaaa6b8f78852b004ce5f\tK-0147\t1\t1970-01-01T01:00:01.000+01:00\t7\t"));
}

TEST_CASE("cases are listed newest first, with what is closed and sealed") {
    const Folder folder;
    auto ledger = opened(folder.file("a.ledger"));
    ledger.append("K-1", closed_case(2));
    ledger.append("K-2", samples::events(1, 1));
    ledger.append("K-3", closed_case(1));
    REQUIRE(ledger.seal("K-1", samples::instant(9)));
    ledger.append("K-2", samples::events(2, 3));
    const auto list = ledger.cases();
    REQUIRE(list);
    REQUIRE(list->size() == 3);
    CHECK(((*list)[0] == Summary{.reference = "K-2", .opened = samples::instant(1), .last = samples::instant(4), .last_seq = 4}));
    CHECK(((*list)[1] ==
           Summary{.reference = "K-3", .opened = samples::instant(1), .last = samples::instant(3), .last_seq = 3, .closed = true}));
    CHECK(((*list)[2] == Summary{.reference = "K-1",
                                 .opened = samples::instant(1),
                                 .last = samples::instant(4),
                                 .last_seq = 4,
                                 .closed = true,
                                 .sealed = true}));
}

TEST_CASE("a closed case is sealed, an open one is not") {
    const Folder folder;
    auto ledger = opened(folder.file("a.ledger"));
    ledger.append("K-1", samples::events(1, 3));
    CHECK_FALSE(ledger.seal("K-1", samples::instant(9)));
    REQUIRE(ledger.ends().size() == 1);
    CHECK((verdict(ledger, "K-1") == Verdict{.whole_to = 3, .hash = ledger.ends().front().hash}));
    const auto end = samples::event(4, guide::CaseClosed{.how = guide::CaseEnd::Done});
    ledger.append("K-1", {&end, 1});
    const auto seal = ledger.seal("K-1", samples::instant(9));
    REQUIRE(seal);
    CHECK(seal->last_seq == 4);
    CHECK(seal->fingerprint.size() == 39);
    CHECK((verdict(ledger, "K-1") ==
           Verdict{.whole_to = 4, .hash = seal->hash, .sealed = Verdict::Sealed::Yes, .fingerprint = seal->fingerprint}));
}

TEST_CASE("the ends of all cases are known by reference, as the disk has them") {
    const Folder folder;
    const auto path = folder.file("a.ledger");
    {
        auto ledger = opened(path);
        CHECK(ledger.ends().empty());
        ledger.append("K-2", samples::events(1, 2));
        ledger.append("K-1", samples::events(1, 3));
        const auto more = samples::event(3, guide::SpokeTurned{.by = 1});
        ledger.append("K-2", {&more, 1});
    }
    auto ledger = opened(path);
    const auto ends = ledger.ends();
    REQUIRE(ends.size() == 2);
    CHECK((ends[0] == End{.reference = "K-1", .last_seq = 3, .hash = verdict(ledger, "K-1").hash}));
    CHECK((ends[1] == End{.reference = "K-2", .last_seq = 3, .hash = verdict(ledger, "K-2").hash}));
}

TEST_CASE("an event after the seal is told, and a second seal covers it") {
    const Folder folder;
    auto ledger = opened(folder.file("a.ledger"));
    ledger.append("K-1", closed_case(1));
    REQUIRE(ledger.seal("K-1", samples::instant(9)));
    const auto late = samples::event(4, guide::TimeCorrected{.event = 2, .utc_ms = 5, .why = "clock was wrong"});
    ledger.append("K-1", {&late, 1});
    CHECK(verdict(ledger, "K-1").sealed == Verdict::Sealed::EventsAfter);
    REQUIRE(ledger.seal("K-1", samples::instant(10)));
    CHECK(verdict(ledger, "K-1").sealed == Verdict::Sealed::Yes);
}

TEST_CASE("two stations have keys of their own, and a seal stays good when the key is lost") {
    const Folder folder;
    std::vector<std::string> prints;
    for (const std::string name : {"a.ledger", "b.ledger"}) {
        auto ledger = opened(folder.file(name));
        ledger.append("K-1", closed_case(1));
        const auto seal = ledger.seal("K-1", samples::instant(9));
        REQUIRE(seal);
        std::filesystem::remove(folder.file(name + ".key"));
        CHECK(verdict(ledger, "K-1").sealed == Verdict::Sealed::Yes);
        prints.push_back(seal->fingerprint);
    }
    CHECK(prints[0] != prints[1]);
}

TEST_CASE("a key that others may read, or that is no key, seals nothing") {
    const Folder folder;
    auto ledger = opened(folder.file("a.ledger"));
    ledger.append("K-1", closed_case(1));
    REQUIRE(ledger.seal("K-1", samples::instant(9)));
    ::chmod(folder.file("a.ledger.key").c_str(), 0644);
    CHECK_FALSE(ledger.seal("K-1", samples::instant(9)));
    testplace::write(folder.file("a.ledger.key"), "no key");
    ::chmod(folder.file("a.ledger.key").c_str(), 0600);
    const auto seal = ledger.seal("K-1", samples::instant(9));
    REQUIRE_FALSE(seal);
    CHECK(seal.error().what == Failure::What::Damaged);
}
