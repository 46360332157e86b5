// Files that are not as they should be: never taken for whole, never read as something they are not.
#include "ledger/ledger.hpp"
#include "ledger/place_for_tests.hpp"
#include "ledger/samples.hpp"
#include "ledger/store.hpp"

#include <doctest/doctest.h>
#include <unistd.h>

#include <random>

using namespace ledger;
using testplace::Folder;

namespace {

std::optional<Failure::What> open_fails(const std::string& path) {
    const auto ledger = Ledger::open(path);
    return ledger ? std::nullopt : std::optional(ledger.error().what);
}

void make(const std::string& path, int count, const std::string& reference = "K-0147") {
    auto ledger = Ledger::open(path);
    REQUIRE(ledger);
    REQUIRE(ledger->append(reference, samples::events(1, count)).held == 0);
}

/// The first bad event by `verify` of a ledger whose row was changed by hand.
std::optional<guide::Seq> first_bad(const std::string& path) {
    const auto ledger = Ledger::open(path, {.purpose = Purpose::Look});
    REQUIRE(ledger);
    const auto verdict = ledger->verify("K-0147");
    REQUIRE(verdict);
    CHECK(verdict->whole() == !verdict->first_bad);
    const auto events = ledger->load("K-0147");
    CHECK(static_cast<bool>(events) == verdict->whole());
    if (!events) CHECK(events.error().what == Failure::What::Damaged);
    return verdict->first_bad;
}

constexpr int as_nobody = 65534;

}  // namespace

TEST_CASE("a changed byte anywhere in the body of an event is found and the event named") {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    make(path, 4);
    testplace::Sql(path).run("DROP TRIGGER events_stay");
    const auto whole = testplace::read(path);
    const auto body = testplace::Sql(path).text("SELECT body FROM events WHERE seq=3");
    for (std::size_t i = 0; i < body.size(); ++i) {
        CAPTURE(i);
        testplace::write(path, whole);
        const char other = static_cast<char>(body[i] ^ 1);
        const std::string text = body.substr(0, i) + other + body.substr(i + 1);
        REQUIRE(testplace::Sql(path).run("UPDATE events SET body='" + text + "' WHERE seq=3") == SQLITE_OK);
        CHECK(first_bad(path) == 3);
    }
    testplace::write(path, whole);
    CHECK_FALSE(first_bad(path).has_value());
}

TEST_CASE("a change in any other column, a missing event and events in another order are found") {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    make(path, 5);
    {
        testplace::Sql sql(path);
        sql.run("DROP TRIGGER events_stay");
        sql.run("DROP TRIGGER events_last");
    }
    const auto whole = testplace::read(path);
    struct Change {
        std::string sql{};
        guide::Seq bad = 0;
    };
    const std::vector<Change> changes{
        {"UPDATE events SET utc_ms=utc_ms+1 WHERE seq=2", 2},
        {"UPDATE events SET offset_min=0 WHERE seq=2", 2},
        {"UPDATE events SET boottime_ms=boottime_ms-1 WHERE seq=2", 2},
        {"UPDATE events SET boot=boot+1 WHERE seq=2", 2},
        {"UPDATE events SET who='surgeon' WHERE seq=2", 2},
        {"UPDATE events SET tag='plan-moved' WHERE seq=2", 2},
        {"UPDATE events SET prev=zeroblob(32) WHERE seq=2", 2},
        {"UPDATE events SET hash=zeroblob(32) WHERE seq=2", 2},
        {"UPDATE events SET case_ref='K-0148' WHERE seq=2", 2},
        {"UPDATE events SET seq=9 WHERE seq=2", 2},
        {"DELETE FROM events WHERE seq=2", 2},
        {"DELETE FROM events WHERE seq=1", 1},
        {"UPDATE events SET seq=9 WHERE seq=2; UPDATE events SET seq=2 WHERE seq=3; UPDATE events SET seq=3 WHERE seq=9", 2},
    };
    for (const auto& change : changes) {
        CAPTURE(change.sql);
        testplace::write(path, whole);
        REQUIRE(testplace::Sql(path).run(change.sql) == SQLITE_OK);
        CHECK(first_bad(path) == change.bad);
    }
}

TEST_CASE("an event whole in itself but of another chain is found") {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    make(path, 4);
    {
        const auto store = open_store({.path = path}, Purpose::Record, Missing::Fail);
        REQUIRE(store);
        Row row = rows_of_case(store->db.get(), path, "K-0147").rows.at(3);
        row.prev = {};
        row.hash = hash_of(row);
        REQUIRE(run(store->db.get(), "DROP TRIGGER events_last; DELETE FROM events WHERE seq=4") == SQLITE_OK);
        REQUIRE_FALSE(write_rows(store->db.get(), path, {&row, 1}).has_value());
    }
    CHECK(first_bad(path) == 4);
}

TEST_CASE("the last events cut off are told by the mirror, and by the seal") {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    {
        auto ledger = Ledger::open(path);
        auto events = samples::events(1, 3);
        events.push_back(samples::event(4, guide::CaseClosed{}));
        ledger->append("K-0147", events);
        REQUIRE(ledger->seal("K-0147", samples::instant(9)));
    }
    {
        testplace::Sql sql(path);
        sql.run("DROP TRIGGER events_last");
        REQUIRE(sql.run("DELETE FROM events WHERE seq=4") == SQLITE_OK);
    }
    const auto verdict = Ledger::open(path, {.purpose = Purpose::Look})->verify("K-0147");
    REQUIRE(verdict);
    CHECK(verdict->sealed == Verdict::Sealed::SignatureBad);
    CHECK_FALSE(verdict->whole());
    CHECK(verdict->only_in_mirror == 1);
}

TEST_CASE("a seal with a changed signature, hash or key is bad") {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    {
        auto ledger = Ledger::open(path);
        std::vector<guide::Event> events = samples::events(1, 1);
        events.push_back(samples::event(2, guide::CaseClosed{}));
        ledger->append("K-0147", events);
        REQUIRE(ledger->seal("K-0147", samples::instant(9)));
    }
    const auto whole = testplace::read(path);
    for (const std::string change : {"signature=randomblob(64)", "public_key=randomblob(32)", "last_hash=randomblob(32)"}) {
        CAPTURE(change);
        testplace::write(path, whole);
        REQUIRE(testplace::Sql(path).run("UPDATE seals SET " + change) == SQLITE_OK);
        const auto verdict = Ledger::open(path, {.purpose = Purpose::Look})->verify("K-0147");
        REQUIRE(verdict);
        CHECK(verdict->sealed == Verdict::Sealed::SignatureBad);
        CHECK_FALSE(verdict->whole());
    }
}

TEST_CASE("a byte changed anywhere in the file is found, or changes nothing that is read") {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    make(path, 6);
    const auto whole = testplace::read(path);
    std::mt19937 random(20261125);
    int found = 0;
    for (int round = 0; round < 400; ++round) {
        const std::size_t at = random() % whole.size();
        CAPTURE(at);
        auto bytes = whole;
        bytes[at] = static_cast<char>(bytes[at] ^ (1 << (random() % 8)));
        testplace::write(path, bytes);
        const auto ledger = Ledger::open(path, {.purpose = Purpose::Look});
        const auto events = ledger ? ledger->load("K-0147") : ledger.error();
        if (!events) ++found;
        if (events && *events != samples::events(1, 6)) CHECK_FALSE(ledger->verify("K-0147")->only_in_mirror == 0);
    }
    CHECK(found > 50);
}

TEST_CASE("what is no ledger, another program's database or a newer form is refused and left as it is") {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    make(path, 3);
    const auto whole = testplace::read(path);
    struct Spoilt {
        std::string name{}, bytes{};
        Failure::What what{};
    };
    const auto with_sql = [&](const std::string& sql) {
        testplace::write(path, whole);
        REQUIRE(testplace::Sql(path).run(sql) == SQLITE_OK);
        return testplace::read(path);
    };
    const std::vector<Spoilt> rows{
        {"text", std::string(5000, 'x'), Failure::What::Damaged},
        {"half a header", whole.substr(0, 50), Failure::What::Damaged},
        {"truncated to a page", whole.substr(0, 4096), Failure::What::Damaged},
        {"truncated in the middle of a page", whole.substr(0, 3 * 4096 + 100), Failure::What::Damaged},
        {"its last page gone", whole.substr(0, whole.size() - 4096), Failure::What::Damaged},
        {"foreign application", with_sql("PRAGMA application_id=1262899249"), Failure::What::Damaged},
        {"no application", with_sql("PRAGMA application_id=0"), Failure::What::Damaged},
        {"newer form", with_sql("PRAGMA user_version=2"), Failure::What::Newer},
        {"no form", with_sql("PRAGMA user_version=0"), Failure::What::Damaged},
    };
    for (const auto& row : rows) {
        CAPTURE(row.name);
        testplace::write(path, row.bytes);
        const auto what = open_fails(path);
        REQUIRE(what.has_value());
        CHECK(*what == row.what);
        CHECK(testplace::read(path) == row.bytes);
    }
}

TEST_CASE("an event of a kind nobody knows yet, whole in its chain, means a newer program and not damage") {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    make(path, 2);
    {
        const auto store = open_store({.path = path}, Purpose::Record, Missing::Fail);
        REQUIRE(store);
        const auto last = rows_of_case(store->db.get(), path, "K-0147").rows.back();
        Row row{.reference = "K-0147", .seq = 3, .at = last.at, .who = "scrub", .tag = "lens-chosen", .body = "{}", .prev = last.hash};
        row.hash = hash_of(row);
        REQUIRE_FALSE(write_rows(store->db.get(), path, {&row, 1}).has_value());
    }
    const auto events = Ledger::open(path, {.purpose = Purpose::Look})->load("K-0147");
    REQUIRE_FALSE(events);
    CHECK(events.error().what == Failure::What::Newer);
    CHECK(events.error().detail.find("event 3") != std::string::npos);
}

TEST_CASE("an empty file is a new ledger, and what the mirror still has is offered") {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    make(path, 3);
    testplace::write(path, "");
    const auto ledger = Ledger::open(path);
    REQUIRE(ledger);
    CHECK(ledger->load("K-0147")->empty());
    REQUIRE(ledger->recoverable()->size() == 1);
    CHECK((ledger->recoverable()->front().events == samples::events(1, 3)));
}

TEST_CASE("a journal left by another ledger never passes for ours") {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    make(path, 12);
    const auto other = folder.file("b.ledger");
    make(other, 3, "K-0999");
    {
        testplace::Sql sql(other);  // a transaction that spilled its journal and was never ended
        sql.run("PRAGMA cache_size=1; PRAGMA cache_spill=1; BEGIN; DROP TRIGGER events_stay;");
        sql.run(
            "CREATE TABLE filler(x); WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i+1 FROM n WHERE i<200) "
            "INSERT INTO filler SELECT randomblob(500) FROM n");
        sql.run("UPDATE events SET body=body");
        testplace::write(path + "-journal", testplace::read(other + "-journal"));
    }
    REQUIRE(testplace::read(path + "-journal").size() > 512);
    const auto ledger = Ledger::open(path);
    if (!ledger) {
        CHECK(ledger.error().what == Failure::What::Damaged);
        return;
    }
    const auto events = ledger->load("K-0147");
    const bool ours = events && *events == samples::events(1, 12);
    CHECK((ours || !events || !ledger->recoverable()->empty()));
}

TEST_CASE("a folder in which nothing can be made is said at once") {
    const Folder folder;
    testplace::write(folder.file("file"), "");
    CHECK(open_fails(folder.file("file/a.ledger")) == Failure::What::CannotOpen);
    make(folder.file("a.ledger"), 2);
    std::filesystem::permissions(folder.path(), std::filesystem::perms{0555});
    std::filesystem::permissions(folder.file("a.ledger"), std::filesystem::perms{0666});
    std::filesystem::remove(folder.file("a.ledger-journal"));
    const bool root = ::geteuid() == 0;
    if (root) REQUIRE(::seteuid(as_nobody) == 0);
    const auto fresh = open_fails(folder.file("b.ledger"));
    const auto there = open_fails(folder.file("a.ledger"));
    if (root) REQUIRE(::seteuid(0) == 0);
    std::filesystem::permissions(folder.path(), std::filesystem::perms{0700});
    CHECK(fresh == Failure::What::CannotOpen);
    CHECK(there == Failure::What::CannotOpen);
}
