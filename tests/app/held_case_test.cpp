// The disk fails under a case that is worked on, at every write, sync, truncation and opening in turn. What must hold: the
// count goes on, the screen says how much is not on disk, what was called saved is there afterwards, and once the disk takes
// it everything is there and says that it was late. n = 1, 2, 3 … until no fault is met is SQLite's own way of testing
// (sqlite.org/testing.html, "I/O error testing"). The ledger alone is tested in tests/ledger/fault_test.cpp.
#include "app/demo.hpp"
#include "ledger/fault_layer.hpp"

#include <spdlog/sinks/ostream_sink.h>
#include <spdlog/spdlog.h>

#include <cerrno>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>

using testplace::Folder;

namespace {

struct Kind {
    std::string name{};
    faults::Fails fails{};
    int code = 0, system = 0;
};

const std::vector<Kind> kinds{
    {"full, once", faults::Fails::Once, SQLITE_FULL, ENOSPC},
    {"full, for good", faults::Fails::FromThenOn, SQLITE_FULL, ENOSPC},
    {"I/O error, once", faults::Fails::Once, SQLITE_IOERR, EIO},
    {"I/O error, for good", faults::Fails::FromThenOn, SQLITE_IOERR, EIO},
};

enum class Then { Mended, PowerLost };

/// Every ledger of the program goes through the faulty layer while this stands.
class FaultyDisk {
public:
    FaultyDisk() {
        faults::layer();
        faults::order({});
        sqlite3_vfs_register(sqlite3_vfs_find("faults"), 1);
    }
    ~FaultyDisk() {
        faults::order({});
        sqlite3_vfs_register(sqlite3_vfs_find("unix"), 1);
    }
    FaultyDisk(const FaultyDisk&) = delete;
    FaultyDisk& operator=(const FaultyDisk&) = delete;
};

/// A ledger with the case up to its cut, copied for each fault.
void copy_ledger(const Folder& from, const Folder& to) {
    for (const char* name : {"a.ledger", "a.ledger.txt", "a.ledger.key"})
        if (std::filesystem::exists(from.file(name))) std::filesystem::copy_file(from.file(name), to.file(name));
}

/// What the screen showed and what was called saved, tap by tap.
struct Seen {
    std::map<guide::Seq, guide::CaseState> states{};  // by its last event
    guide::Seq saved = 0;
    bool held = false;

    void note(const graftside::OpenCase& open) {
        states[open.state().last] = open.state();
        CHECK(open.health().on_disk + open.health().held == open.state().last);
        saved = std::max(saved, open.health().on_disk);
        held = held || open.health().held > 0;
    }
};

/// The banner says how many are not on disk, and says nothing of it when all are.
void check_banner(const graftside::Session& session, const measure::Instant& now) {
    const std::string shown = demo::banner(session.view(now));
    const std::uint64_t held = session.open()->health().held;
    const std::string said = "Not on disk: " + std::to_string(held) + " ";
    CHECK(shown.starts_with(held > 0 ? said : std::string()));
    CHECK((shown.find("Not on disk") != std::string::npos) == (held > 0));
}

std::string target_of(const guide::Intent& intent) {
    if (std::holds_alternative<guide::CountSpoke>(intent)) return "spoke";
    return std::holds_alternative<guide::EndCut>(intent) ? "cut-done" : "suction-off";
}

/// The cut by touch, with the second's work of the loop after each tap.
void cut_by_touch(graftside::Session& session, Seen& seen) {
    int turned = 0;
    for (const intake::PlayLine& line : demo::cut()) {
        demo::tap(session, target_of(line.intent), line.at);
        if (std::holds_alternative<guide::CountSpoke>(line.intent)) ++turned;
        CHECK(guide::blade(session.open()->state()).spokes_turned == turned);
        seen.note(*session.open());
        check_banner(session, line.at);
        session.tick(demo::later(line.at, 1000));
        seen.note(*session.open());
        check_banner(session, demo::later(line.at, 1000));
    }
}

/// What the program would write to standard error.
class Log {
public:
    Log() { spdlog::set_default_logger(std::make_shared<spdlog::logger>("log", std::make_shared<spdlog::sinks::ostream_sink_st>(text_))); }
    ~Log() { spdlog::set_default_logger(before_); }
    Log(const Log&) = delete;
    Log& operator=(const Log&) = delete;
    std::string text() const { return text_.str(); }

private:
    std::ostringstream text_{};
    std::shared_ptr<spdlog::logger> before_ = spdlog::default_logger();
};

/// Everything up to what the disk has is what the screen showed then.
void check_recovered(const Seen& seen, const std::vector<guide::Event>& events) {
    REQUIRE(events.size() >= seen.saved);
    REQUIRE(seen.states.contains(events.size()));
    CHECK((guide::fold(events) == seen.states.at(events.size())));
}

/// True when the fault was met.
bool cut_on_a_faulty_disk(const Folder& before, const Kind& kind, int n, Then then) {
    const Folder folder(testplace::in_memory());
    copy_ledger(before, folder);
    const std::string path = folder.file("a.ledger");
    const measure::Instant start = demo::before_cut().back().at;
    const auto events_before = demo::on_disk(path);
    bool hit = false;
    Seen seen{.states = {{events_before.size(), guide::fold(events_before)}}, .saved = events_before.size()};
    {
        const FaultyDisk disk;
        faults::order({.fails = kind.fails, .at = n, .code = kind.code, .system = kind.system});
        auto session = graftside::Session::start(demo::options(path), demo::stock(), demo::case_path(), demo::later(start, 1000));
        if (!session) {
            CHECK(session.error().code == graftside::Exit::Machine);
            CHECK(session.error().lines.size() == 1);
            REQUIRE(faults::hit());
            faults::order({});
            CHECK((demo::on_disk(path) == events_before));
            return true;
        }
        seen.note(*session->open());
        cut_by_touch(*session.operator->(), seen);
        hit = faults::hit();
        if (then == Then::Mended) {
            faults::order({});
            session->tick(demo::later(demo::cut().back().at, 2000));
            seen.note(*session->open());
            CHECK(session->open()->health().held == 0);
            CHECK(seen.saved == session->open()->state().last);
        }
    }
    const auto events = demo::on_disk(path);
    check_recovered(seen, events);
    if (then == Then::Mended) {
        CHECK(guide::blade(guide::fold(events)).position == 8);
        CHECK(demo::written_late(events) == seen.held);
    }
    return hit;
}

/// The whole case on a disk that fails at the n-th call; mended at the end. True when the fault was met.
bool case_on_a_faulty_disk(const Kind& kind, int n) {
    const Folder folder(testplace::in_memory());
    const std::string path = folder.file("a.ledger");
    bool hit = false;
    Seen seen{};
    {
        const FaultyDisk disk;
        auto opened = ledger::Ledger::open(path);
        REQUIRE(opened);
        const auto brief = graftside::load_brief(demo::stock(), demo::case_path());
        REQUIRE(brief);
        faults::order({.fails = kind.fails, .at = n, .code = kind.code, .system = kind.system});
        auto open = graftside::OpenCase::take_up(*opened.operator->(), *brief, guide::Source::Table, demo::script().front().at);
        REQUIRE(open);
        for (const intake::PlayLine& line : demo::script()) {
            REQUIRE_FALSE(demo::carry_out(*open.operator->(), line));
            seen.note(*open.operator->());
        }
        hit = faults::hit();
        faults::order({});
        open->retry(demo::later(demo::script().back().at, 1000));
        seen.note(*open.operator->());
        CHECK(open->health().held == 0);
        CHECK_FALSE(open->seal().empty());
    }
    const auto events = demo::on_disk(path);
    check_recovered(seen, events);
    CHECK(guide::fold(events).closed.has_value());
    CHECK(demo::written_late(events) == seen.held);
    return hit;
}

// One fault in so many calls of the disk.
#ifdef SHORT_WALKS
constexpr int stride = 7, wide_stride = 205;
#else
constexpr int stride = 1, wide_stride = 41;
#endif

}  // namespace

TEST_CASE("a fault at every call of the start and the cut: the count goes on, the screen says so, nothing saved is lost") {
    const Folder before(testplace::in_memory());
    demo::play(before.file("a.ledger"), demo::before_cut());
    for (const Kind& kind : kinds) {
        CAPTURE(kind.name);
        for (const Then then : {Then::Mended, Then::PowerLost}) {
            CAPTURE(static_cast<int>(then));
            int n = 1;
            for (; n < 1000; n += stride) {
                CAPTURE(n);
                if (!cut_on_a_faulty_disk(before, kind, n, then)) break;
            }
            CHECK(n > 100);  // fourteen commits, each of several writes and syncs
            CHECK(n < 1000);
        }
    }
}

TEST_CASE("a fault in the whole case, at one call in many: it is closed and sealed once the disk takes it") {
    for (const Kind& kind : kinds) {
        CAPTURE(kind.name);
        int n = 1;
        for (; n < 10000; n += wide_stride) {
            CAPTURE(n);
            if (!case_on_a_faulty_disk(kind, n)) break;
        }
        CHECK(n > 500);
        CHECK(n < 10000);
    }
}

TEST_CASE("no file for the handover is written while taps are not on disk: it would lack them, and the reason is said") {
    const Folder folder;
    demo::play(folder.file("a.ledger"), demo::before_cut());
    const FaultyDisk disk;
    const measure::Instant now = demo::later(demo::before_cut().back().at, 1000);
    auto session = graftside::Session::start(demo::options(folder.file("a.ledger")), demo::stock(), demo::case_path(), now);
    REQUIRE(session);
    CHECK_FALSE(session->hand_over("csv"));
    faults::order({.fails = faults::Fails::FromThenOn, .at = 1, .code = SQLITE_FULL, .system = ENOSPC});
    CHECK_FALSE(session->act(guide::Who::Scrub, {guide::WriteNote{.text = "held"}}, now));
    REQUIRE(session->open()->health().held > 0);
    CHECK(session->hand_over("csv") == demo::stock().words("papers.held"));
}

TEST_CASE("a folder that takes no handover file is named in the screen's words, the system's reason on standard error") {
    const Folder folder;
    demo::play(folder.file("a.ledger"), demo::before_cut());
    const measure::Instant now = demo::later(demo::before_cut().back().at, 1000);
    auto session = graftside::Session::start(demo::options(folder.file("a.ledger")), demo::stock(), demo::case_path(), now);
    REQUIRE(session);
    std::ofstream(session->handover_folder()) << "a file where the folder should be";
    const Log log;
    CHECK(session->hand_over("csv") == demo::stock().words("papers.not_written", {session->handover_folder()}));
    CHECK(log.text().find("(not a folder)") != std::string::npos);
}

TEST_CASE("what is wrong with the disk is said in the screen's language, and exactly, once, on standard error") {
    const auto stock =
        graftside::load_stock({.assets = SOURCE_DIR "/assets", .unit = SOURCE_DIR "/assets/unit/unit.toml", .language = "de"});
    REQUIRE(stock);
    for (const auto& [code, system, id] :
         {std::tuple{SQLITE_FULL, ENOSPC, "disk.full"}, std::tuple{SQLITE_IOERR, EIO, "disk.cannot_open"}}) {
        const Folder folder;
        demo::play(folder.file("a.ledger"), demo::before_cut());
        const FaultyDisk disk;
        const measure::Instant now = demo::later(demo::before_cut().back().at, 1000);
        auto session = graftside::Session::start(demo::options(folder.file("a.ledger")), *stock, demo::case_path(), now);
        REQUIRE(session);
        faults::order({.fails = faults::Fails::FromThenOn, .at = 1, .code = code, .system = system});
        CHECK_FALSE(session->act(guide::Who::Scrub, {guide::WriteNote{.text = "held"}}, now));
        const Log log;
        // The file is opened anew, which an I/O error refuses as well.
        for (const int later : {1000, 2000, 3000}) session->tick(demo::later(now, later));
        REQUIRE(session->open()->health().held == 1);
        CHECK(demo::banner(session->view(now)) == stock->words.counted("banner.not_on_disk", {"1", stock->words(id)}));
        const std::string exact = graftside::stop(*session->open()->health().trouble).lines.front(), said = log.text();
        CHECK(exact.find(folder.file("a.ledger")) == 0);
        const auto at = said.find(exact);
        CHECK(at != std::string::npos);
        CHECK(said.find(exact, at + 1) == std::string::npos);
    }
}

TEST_CASE("each kind of failure of the ledger has words of its own on the screen; what is wrong with a file is said as it is") {
    using What = ledger::Failure::What;
    const screen::Words& words = demo::stock().words;
    std::set<std::string> said{};
    for (const What what : {What::CannotOpen, What::InUse, What::Newer, What::Damaged, What::Full, What::CannotWrite}) {
        const auto stop = graftside::stop(ledger::Failure{.what = what, .path = "a.ledger", .detail = "detail"});
        const Log log;
        const auto shown = graftside::on_screen(stop, words);
        REQUIRE(shown.size() == 1);
        CHECK(shown.front().find("a.ledger") == std::string::npos);
        CHECK_FALSE(shown.front().starts_with("<"));
        CHECK(log.text().find(stop.lines.front()) != std::string::npos);
        said.insert(shown.front());
    }
    CHECK(said.size() == 6);
    const graftside::Stop file{.lines = {"a.case.toml:3: wrong", "b"}};
    CHECK(graftside::on_screen(file, words) == file.lines);
}
