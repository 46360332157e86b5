// The disk that fails: at every write, sync, truncation and opening in turn, once or from then on, with both of SQLite's ways
// to say so. After SQLite's own way of testing (sqlite.org/testing.html, "I/O error testing"): n = 1, 2, 3 … until no fault is
// hit. What must hold each time: the case goes on in memory, what is held is said, what was called saved is there after
// opening again, the file is whole. [durability]
#include "ledger/fault_layer.hpp"

#include "ledger/ledger.hpp"
#include "ledger/place_for_tests.hpp"
#include "ledger/samples.hpp"

#include <doctest/doctest.h>
#include <sqlite3.h>

#include <algorithm>
#include <cerrno>
#include <vector>

using namespace ledger;
using testplace::Folder;

namespace {

struct Kind {
    std::string name{};
    faults::Fails fails{};
    int code = 0, system = 0;
};

const std::vector<Kind> kinds{
    {"full, once", faults::Fails::Once, SQLITE_FULL, ENOSPC},
    {"full, from then on", faults::Fails::FromThenOn, SQLITE_FULL, ENOSPC},
    {"I/O error for want of room, once", faults::Fails::Once, SQLITE_IOERR, ENOSPC},
    {"I/O error for want of room, from then on", faults::Fails::FromThenOn, SQLITE_IOERR, ENOSPC},
    {"I/O error, once", faults::Fails::Once, SQLITE_IOERR, EIO},
    {"I/O error, from then on", faults::Fails::FromThenOn, SQLITE_IOERR, EIO},
};

/// A case as the program goes through it: state in memory, and what the ledger called saved.
struct Run {
    std::vector<guide::Event> shown{};
    guide::Seq saved = 0;
    bool said_trouble = false;

    void note(const Health& health) {
        said_trouble = said_trouble || health.trouble.has_value();
        CHECK(health.on_disk + health.held == shown.size());
        CHECK(health.trouble.has_value() == (health.held > 0));
        saved = std::max(saved, health.on_disk);
    }
    void append(Ledger& ledger, const guide::Event& event) {
        shown.push_back(event);
        note(ledger.append("K-0147", {&event, 1}));
    }
    void retry(Ledger& ledger) {
        const Retried retried = ledger.retry(samples::instant(99));
        for (const auto& added : retried.added) shown.push_back(added.event);
        if (!retried.added.empty() || retried.health.held > 0) note(retried.health);
    }
};

/// Six events with a retry after each, as the program would do it each second.
void go_through(Ledger& ledger, Run& run) {
    for (int i = 0; i < 6; ++i) {
        run.append(ledger, samples::events(run.shown.size() + 1, 1).front());
        run.retry(ledger);
    }
}

/// What the disk has after the program is gone.
std::vector<guide::Event> left_behind(const std::string& path) {
    faults::order({});
    const auto ledger = Ledger::open(path);
    REQUIRE(ledger);
    const auto events = ledger->load("K-0147");
    REQUIRE(events);
    CHECK(ledger->verify("K-0147")->whole());  // with SQLite's integrity_check
    return *events;
}

void check_kept(const Run& run, const std::vector<guide::Event>& kept) {
    REQUIRE(kept.size() >= run.saved);
    REQUIRE(kept.size() <= run.shown.size());
    CHECK(std::equal(kept.begin(), kept.end(), run.shown.begin()));
}

/// True when the fault was reached.
bool fault_while_appending(const Kind& kind, int n, int again = 0) {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    Run run;
    {
        faults::order({});
        auto ledger = Ledger::open(path, {.vfs = faults::layer()});
        REQUIRE(ledger);
        faults::order({.fails = kind.fails, .at = n, .again = again, .code = kind.code, .system = kind.system});
        go_through(*ledger.operator->(), run);
        if (!faults::hit()) return false;
        run.retry(*ledger.operator->());  // the second fault may have met the last retry
        CHECK(run.said_trouble);
        if (kind.fails == faults::Fails::Once) CHECK(run.saved == run.shown.size());  // the retry got through
    }
    check_kept(run, left_behind(path));
    return true;
}

/// True when the fault was reached.
bool fault_while_opening(const Kind& kind, int n) {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    { REQUIRE(Ledger::open(path)->append("K-0147", samples::events(1, 3)).held == 0); }
    Run run{.shown = samples::events(1, 3), .saved = 3};
    faults::order({.fails = kind.fails, .at = n, .code = kind.code, .system = kind.system});
    auto opened = Ledger::open(path, {.vfs = faults::layer()});
    const bool hit = faults::hit();
    if (hit) CHECK((!opened || opened->health("K-0147").trouble.has_value()));
    if (opened) {
        CHECK((*opened->load("K-0147") == samples::events(1, 3)));
        go_through(*opened.operator->(), run);
        opened = Failure{};
    }
    check_kept(run, left_behind(path));
    return hit;
}

measure::Result<Ledger, Failure> with_two_events(const std::string& path) {
    auto made = Ledger::open(path);
    REQUIRE(made);
    CHECK(made->append("K-0147", samples::events(1, 2)).held == 0);
    return made;
}

}  // namespace

TEST_CASE("a fault at every write, sync and truncation while appending loses nothing that was called saved") {
    for (const Kind& kind : kinds) {
        CAPTURE(kind.name);
        int n = 1;
        for (; n < 500; ++n) {
            CAPTURE(n);
            if (!fault_while_appending(kind, n)) break;
        }
        CHECK(n > 30);  // six commits, each of several writes and syncs
        CHECK(n < 500);
    }
}

TEST_CASE("a second fault, in the retry of the first, loses nothing and doubles nothing") {
    for (const Kind& kind : kinds) {
        if (kind.fails != faults::Fails::Once) continue;
        CAPTURE(kind.name);
        for (int n = 1; n <= 15; ++n) {  // one append and what follows it
            for (int again = n + 1; again <= n + 45; ++again) {
                CAPTURE(n);
                CAPTURE(again);
                CHECK(fault_while_appending(kind, n, again));
            }
        }
    }
}

TEST_CASE("a fault at every write, sync and opening while the ledger is opened loses nothing either") {
    for (const Kind& kind : kinds) {
        CAPTURE(kind.name);
        int n = 1;
        for (; n < 100; ++n) {
            CAPTURE(n);
            if (!fault_while_opening(kind, n)) break;
        }
        CHECK(n > 5);
        CHECK(n < 100);
    }
}

TEST_CASE("want of room is called full, whether SQLite says FULL or an I/O error; any other refusal is cannot-write") {
    for (const Kind& kind : kinds) {
        CAPTURE(kind.name);
        const Folder folder(testplace::in_memory());
        faults::order({});
        auto ledger = Ledger::open(folder.file("a.ledger"), {.vfs = faults::layer()});
        REQUIRE(ledger);
        faults::order({.fails = kind.fails, .at = 1, .code = kind.code, .system = kind.system});
        const auto health = ledger->append("K-0147", samples::events(1, 2));
        REQUIRE(health.trouble.has_value());
        CHECK(health.held == 2);
        CHECK(health.on_disk == 0);
        CHECK(health.trouble->what == (kind.system == ENOSPC ? Failure::What::Full : Failure::What::CannotWrite));
    }
    faults::order({});
}

TEST_CASE("events held are written in order, then the event that says which were late") {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    faults::order({});
    auto ledger = Ledger::open(path, {.vfs = faults::layer()});
    REQUIRE(ledger);
    CHECK((ledger->append("K-0147", samples::events(1, 2)) == Health{.on_disk = 2}));
    faults::order({.fails = faults::Fails::FromThenOn, .at = 1, .code = SQLITE_FULL, .system = ENOSPC});
    CHECK(ledger->append("K-0147", samples::events(3, 1)).held == 1);
    CHECK(ledger->append("K-0147", samples::events(4, 2)).held == 3);
    CHECK(ledger->append("K-9", samples::events(1, 1)).held == 4);
    CHECK(ledger->retry(samples::instant(60)).health.held == 4);
    CHECK(ledger->retry(samples::instant(60)).added.empty());
    faults::order({});
    CHECK(ledger->append("K-9", samples::events(2, 1)).held == 5);  // waits its turn, so that it is said to be late
    const auto retried = ledger->retry(samples::instant(61));
    CHECK(retried.health.held == 0);
    REQUIRE(retried.added.size() == 2);
    const guide::Event late{
        .seq = 6, .at = samples::instant(61), .who = guide::Who::Program, .fact = guide::WrittenLate{.first = 3, .last = 5}};
    const guide::Event other{
        .seq = 3, .at = samples::instant(61), .who = guide::Who::Program, .fact = guide::WrittenLate{.first = 1, .last = 2}};
    CHECK((retried.added[0].event == late));
    CHECK((retried.added[1].event == other));
    auto expected = samples::events(1, 5);
    expected.push_back(late);
    CHECK((*ledger->load("K-0147") == expected));
    CHECK((ledger->append("K-0147", samples::events(7, 1)) == Health{.on_disk = 7}));
    const auto mirror = testplace::read(path + ".txt");
    CHECK(std::count(mirror.begin(), mirror.end(), '\n') == 10);
}

TEST_CASE("every append syncs the journal, the file and the journal's end") {
    const Folder folder(testplace::in_memory());
    faults::order({});
    auto ledger = Ledger::open(folder.file("a.ledger"), {.vfs = faults::layer()});
    REQUIRE(ledger);
    for (guide::Seq seq = 1; seq <= 5; ++seq) {
        faults::order({});
        CHECK(ledger->append("K-0147", samples::events(seq, 1)).held == 0);
        CHECK(faults::syncs() >= 3);
    }
}

TEST_CASE("a ledger on a full disk still opens, reads, and says so") {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    { REQUIRE(Ledger::open(path)->append("K-0147", samples::events(1, 3)).held == 0); }
    int opened = 0;
    for (int n = 1; n < 10; ++n) {
        faults::order({.fails = faults::Fails::FromThenOn, .at = n, .code = SQLITE_FULL, .system = ENOSPC});
        const auto ledger = Ledger::open(path, {.vfs = faults::layer()});
        if (!ledger || !faults::hit()) continue;
        ++opened;
        CHECK(ledger->health("K-0147").trouble->what == Failure::What::Full);
        CHECK(ledger->load("K-0147")->size() == 3);
    }
    faults::order({});
    CHECK(opened > 2);
}

TEST_CASE("a ledger that is moved away while it is open is not called saved") {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    auto ledger = with_two_events(path);
    std::filesystem::rename(path, path + ".away");
    const auto health = ledger->append("K-0147", samples::events(3, 1));
    CHECK(health.held == 1);
    CHECK(health.trouble.has_value());
    CHECK(ledger->retry(samples::instant(60)).health.held == 1);
    std::filesystem::rename(path + ".away", path);
    CHECK(ledger->retry(samples::instant(61)).health.held == 0);
    CHECK(ledger->load("K-0147")->size() == 4);
}

TEST_CASE("the record answers while the file itself has its last event, not moved away nor spoiled, and again once it is back") {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    auto ledger = with_two_events(path);
    CHECK(ledger->answers("K-0147"));
    CHECK_FALSE(ledger->health("K-0147").trouble.has_value());
    std::filesystem::rename(path, path + ".away");
    CHECK_FALSE(ledger->answers("K-0147"));
    CHECK(ledger->health("K-0147").trouble.has_value());
    ledger->retry(samples::instant(60));
    CHECK_FALSE(ledger->answers("K-0147"));
    std::filesystem::rename(path + ".away", path);
    ledger->retry(samples::instant(61));
    CHECK(ledger->answers("K-0147"));
    CHECK_FALSE(ledger->health("K-0147").trouble.has_value());
    CHECK(ledger->append("K-0147", samples::events(3, 1)).held == 0);

    const std::string whole = testplace::read(path);
    std::fstream(path, std::ios::in | std::ios::out | std::ios::binary) << std::string(whole.size(), 'x');
    CHECK_FALSE(ledger->answers("K-0147"));
    std::fstream(path, std::ios::in | std::ios::out | std::ios::binary) << whole;
    ledger->retry(samples::instant(62));
    CHECK(ledger->answers("K-0147"));
}

TEST_CASE("a record with another last event than was written does not answer") {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    auto events = samples::events(1, 2);
    events.back().at.utc_ms += 1;
    { REQUIRE(Ledger::open(folder.file("b.ledger"))->append("K-0147", events).held == 0); }
    auto ledger = with_two_events(path);
    std::fstream(path, std::ios::in | std::ios::out | std::ios::binary) << testplace::read(folder.file("b.ledger"));
    CHECK_FALSE(ledger->answers("K-0147"));
}

TEST_CASE("a record that lacks its last event does not answer, though it can be read") {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    auto ledger = with_two_events(path);
    const std::string older = testplace::read(path);
    CHECK(ledger->append("K-0147", samples::events(3, 1)).held == 0);
    std::fstream(path, std::ios::in | std::ios::out | std::ios::binary) << older;  // an older copy written over it
    CHECK_FALSE(ledger->answers("K-0147"));
    REQUIRE(ledger->health("K-0147").trouble.has_value());
    CHECK(ledger->health("K-0147").trouble->what == Failure::What::Damaged);
}

TEST_CASE("another ledger put in the place of the open one is not written to") {
    const Folder folder(testplace::in_memory());
    const auto path = folder.file("a.ledger");
    { REQUIRE(Ledger::open(folder.file("b.ledger"))->append("K-0147", samples::events(1, 1)).held == 0); }
    auto ledger = with_two_events(path);
    std::filesystem::rename(folder.file("b.ledger"), path);
    CHECK(ledger->append("K-0147", samples::events(3, 1)).held == 1);
    const auto health = ledger->retry(samples::instant(60)).health;
    CHECK(health.held == 1);
    REQUIRE(health.trouble.has_value());
    CHECK(health.trouble->what == Failure::What::Damaged);
    CHECK(ledger->retry(samples::instant(61)).health.held == 1);
    ledger = Failure{};
    CHECK(Ledger::open(path)->load("K-0147")->size() == 1);
}
