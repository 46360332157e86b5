#include "ledger/store.hpp"

#include "ledger/place.hpp"

#include <unistd.h>

namespace ledger {
namespace {

constexpr std::int64_t our_application = 0x47524654;  // "GRFT"
constexpr std::int64_t our_version = 1;

constexpr const char* settings =
    "PRAGMA locking_mode=EXCLUSIVE; PRAGMA synchronous=EXTRA; PRAGMA foreign_keys=ON;"
    "PRAGMA trusted_schema=OFF; PRAGMA cell_size_check=ON; PRAGMA temp_store=MEMORY;";

constexpr const char* schema = R"(
CREATE TABLE events(
  id INTEGER PRIMARY KEY,
  case_ref TEXT NOT NULL,
  seq INTEGER NOT NULL CHECK(seq > 0),
  utc_ms INTEGER NOT NULL,
  offset_min INTEGER NOT NULL,
  boottime_ms INTEGER NOT NULL,
  boot INTEGER NOT NULL,
  who TEXT NOT NULL,
  tag TEXT NOT NULL,
  body TEXT NOT NULL,
  prev BLOB NOT NULL CHECK(length(prev) = 32),
  hash BLOB NOT NULL CHECK(length(hash) = 32),
  UNIQUE(case_ref, seq)) STRICT;
CREATE TABLE seals(
  case_ref TEXT NOT NULL,
  last_seq INTEGER NOT NULL,
  last_hash BLOB NOT NULL CHECK(length(last_hash) = 32),
  public_key BLOB NOT NULL CHECK(length(public_key) = 32),
  signature BLOB NOT NULL CHECK(length(signature) = 64),
  utc_ms INTEGER NOT NULL,
  PRIMARY KEY(case_ref, last_seq),
  FOREIGN KEY(case_ref, last_seq) REFERENCES events(case_ref, seq)) STRICT;
CREATE TRIGGER events_stay BEFORE UPDATE ON events BEGIN SELECT RAISE(ABORT, 'events are never changed'); END;
CREATE TRIGGER events_last BEFORE DELETE ON events BEGIN SELECT RAISE(ABORT, 'events are never deleted'); END;
PRAGMA application_id=0x47524654;
)";

std::optional<std::int64_t> number(sqlite3* db, const char* sql) {
    Statement statement(db, sql);
    return statement.next() ? std::optional(statement.integer(0)) : std::nullopt;
}

std::string word_of(sqlite3* db, const char* sql) {
    Statement statement(db, sql);
    return statement.next() ? statement.text(0) : std::string();
}

Failure damaged(const Where& where, std::string detail) {
    return {.what = Failure::What::Damaged, .path = where.path, .detail = std::move(detail)};
}

/// Nothing if the file is a ledger of ours that this program can read.
std::optional<Failure> wrong_kind(sqlite3* db, const Where& where) {
    const auto application = number(db, "PRAGMA application_id");
    const auto version = number(db, "PRAGMA user_version");
    if (!application || !version) return failure(db, sqlite3_extended_errcode(db), where.path, Failure::What::CannotOpen);
    if (*application != our_application) return damaged(where, "this is another program's file");
    if (*version > our_version)
        return Failure{.what = Failure::What::Newer, .path = where.path, .detail = "form " + std::to_string(*version)};
    if (*version < our_version) return damaged(where, "no form " + std::to_string(*version) + " was ever written");
    return std::nullopt;
}

bool blank(sqlite3* db) {
    return number(db, "PRAGMA application_id") == 0 && number(db, "PRAGMA user_version") == 0 &&
           number(db, "SELECT count(*) FROM sqlite_schema") == 0;
}

/// Writing the version again is a whole commit: it shows at once, not at the first tap, whether the disk takes one.
int trial_write(sqlite3* db) {
    const int code = run(db, "PRAGMA user_version=1");
    return code == SQLITE_OK ? run(db, "COMMIT") : code;
}

bool worth_going_on(int code) { return (code & 0xff) == SQLITE_FULL || (code & 0xff) == SQLITE_IOERR; }

measure::Result<Store, Failure> begin_recording(Store store, const Where& where) {
    sqlite3* db = store.db.get();
    const auto refused = [&](int code) { return failure(db, code, where.path, Failure::What::CannotOpen); };
    if (const int code = run(db, "BEGIN EXCLUSIVE"); code != SQLITE_OK) return refused(code);
    const bool fresh = blank(db);
    if (fresh) {
        if (const int code = run(db, schema); code != SQLITE_OK) return refused(code);
    } else {
        if (auto wrong = wrong_kind(db, where)) return *wrong;
        if (const auto said = word_of(db, "PRAGMA quick_check(1)"); said != "ok") return damaged(where, said);
    }
    const int code = trial_write(db);
    if (code != SQLITE_OK && (fresh || !worth_going_on(code))) return refused(code);
    if (code != SQLITE_OK) {
        store.trouble = failure(db, code, where.path, Failure::What::CannotWrite);
        run(db, "ROLLBACK");
    }
    return store;
}

measure::Result<Store, Failure> connect(const Where& where) {
    sqlite3* made = nullptr;
    const char* vfs = where.vfs.empty() ? nullptr : where.vfs.c_str();
    int code = sqlite3_open_v2(where.path.c_str(), &made, SQLITE_OPEN_READWRITE | SQLITE_OPEN_EXRESCODE, vfs);
    Store store{.db = Connection(made)};
    if (code == SQLITE_OK) code = run(made, settings);
    if (code != SQLITE_OK) return failure(made, code, where.path, Failure::What::CannotOpen);
    return store;
}

Row row_at(const Statement& statement) {
    Row row{.reference = statement.text(0),
            .seq = static_cast<guide::Seq>(statement.integer(1)),
            .at = {.utc_ms = statement.integer(2),
                   .offset_min = static_cast<int>(statement.integer(3)),
                   .boottime_ms = statement.integer(4),
                   .boot = static_cast<std::uint64_t>(statement.integer(5))},
            .who = statement.text(6),
            .tag = statement.text(7),
            .body = statement.text(8)};
    if (!statement.bytes(9, row.prev)) row.prev = {};
    if (!statement.bytes(10, row.hash)) row.hash = {};  // no row hashes to zeros
    return row;
}

Rows all(Statement& statement, sqlite3* db, const std::string& path) {
    Rows read;
    while (statement.next()) read.rows.push_back(row_at(statement));
    if (statement.failed()) read.failure = failure(db, statement.code(), path, Failure::What::CannotOpen);
    return read;
}

int insert(sqlite3* db, const Row& row) {
    Statement statement(db,
                        "INSERT INTO events(case_ref,seq,utc_ms,offset_min,boottime_ms,boot,who,tag,body,prev,hash) "
                        "VALUES(?,?,?,?,?,?,?,?,?,?,?)");
    statement.bind(row.reference).bind(static_cast<std::int64_t>(row.seq)).bind(row.at.utc_ms).bind(std::int64_t{row.at.offset_min});
    statement.bind(row.at.boottime_ms).bind(static_cast<std::int64_t>(row.at.boot)).bind(row.who).bind(row.tag).bind(row.body);
    statement.bind(row.prev).bind(row.hash);
    statement.next();
    return statement.code() == SQLITE_DONE ? SQLITE_OK : statement.code();
}

}  // namespace

measure::Result<Store, Failure> open_store(const Where& where, Purpose purpose, Missing missing) {
    if (missing == Missing::Make) {
        if (auto failed = make_folder_of(where.path)) return *failed;
        if (auto failed = make_file(where.path)) return *failed;
    }
    auto store = connect(where);
    if (!store) return store;
    sqlite3* db = store->db.get();
    if (!blank(db)) {  // before anything is changed: another program's file stays as it is
        if (auto wrong = wrong_kind(db, where)) return *wrong;
    }
    if (purpose == Purpose::Record) {
        const auto mode = word_of(db, "PRAGMA journal_mode=TRUNCATE");
        const int code = sqlite3_extended_errcode(db);
        if (mode != "truncate") return failure(db, code == SQLITE_OK ? SQLITE_CANTOPEN : code, where.path, Failure::What::CannotOpen);
        return begin_recording(*std::move(store), where);
    }
    if (blank(db)) return damaged(where, "there is no ledger in this file");
    return store;
}

/// The last event of each case. From one reference to the next by the index, so that the rows between are not read: a ledger of ten
/// thousand cases has millions.
constexpr const char* last_events = R"(
WITH RECURSIVE refs(ref) AS (
  SELECT min(case_ref) FROM events
  UNION ALL SELECT (SELECT min(case_ref) FROM events WHERE case_ref > ref) FROM refs WHERE ref IS NOT NULL)
SELECT ref, e.seq, e.hash FROM refs JOIN events e
  ON e.case_ref = ref AND e.seq = (SELECT max(seq) FROM events WHERE case_ref = ref))";

measure::Result<Tails, Failure> read_tails(sqlite3* db, const std::string& path) {
    Tails tails;
    Statement statement(db, last_events);
    while (statement.next()) {
        Tail& tail = tails[statement.text(0)];
        tail.seq = static_cast<guide::Seq>(statement.integer(1));
        if (!statement.bytes(2, tail.hash)) tail.hash = {};
    }
    if (statement.failed()) return failure(db, statement.code(), path, Failure::What::CannotOpen);
    return tails;
}

constexpr const char* case_columns =
    "SELECT case_ref,seq,utc_ms,offset_min,boottime_ms,boot,who,tag,body,prev,hash FROM events WHERE case_ref=? ORDER BY seq";
constexpr const char* later_columns =
    "SELECT case_ref,seq,utc_ms,offset_min,boottime_ms,boot,who,tag,body,prev,hash FROM events WHERE id>? ORDER BY id";

Rows rows_of_case(sqlite3* db, const std::string& path, std::string_view reference) {
    Statement statement(db, case_columns);
    statement.bind(reference);
    return all(statement, db, path);
}

Rows rows_after(sqlite3* db, const std::string& path, std::int64_t id) {
    Statement statement(db, later_columns);
    statement.bind(id);
    return all(statement, db, path);
}

std::optional<std::int64_t> id_of(sqlite3* db, const Row& row) {
    Statement statement(db, "SELECT id FROM events WHERE case_ref=? AND seq=? AND hash=?");
    statement.bind(row.reference).bind(static_cast<std::int64_t>(row.seq)).bind(row.hash);
    return statement.next() ? std::optional(statement.integer(0)) : std::nullopt;
}

namespace {

std::optional<Failure> moved_away(sqlite3* db, const std::string& path) {
    int moved = 0;
    sqlite3_file_control(db, "main", SQLITE_FCNTL_HAS_MOVED, &moved);
    if (moved == 0) return std::nullopt;
    return Failure{.what = Failure::What::CannotWrite, .path = path, .detail = "the file was moved or deleted"};
}

}  // namespace

std::optional<Failure> look_for(sqlite3* db, const std::string& path, std::string_view reference, const Tail& last) {
    if (auto moved = moved_away(db, path)) return moved;
    sqlite3_db_release_memory(db);  // else the pages kept in memory would answer for the file
    Statement statement(db, "SELECT hash FROM events WHERE case_ref=? AND seq=?");
    statement.bind(reference).bind(static_cast<std::int64_t>(last.seq));
    Hash found{};
    if (statement.next() && statement.bytes(0, found) && found == last.hash) return std::nullopt;
    if (statement.failed()) return failure(db, statement.code(), path, Failure::What::CannotOpen);
    return Failure{.what = Failure::What::Damaged, .path = path, .detail = std::string(reference) + ": its last event is not there"};
}

std::optional<Failure> write_rows(sqlite3* db, const std::string& path, std::span<const Row> rows) {
    if (auto moved = moved_away(db, path)) return moved;
    int code = run(db, "BEGIN IMMEDIATE");
    for (const Row& row : rows)
        if (code == SQLITE_OK && !id_of(db, row)) code = insert(db, row);
    if (code == SQLITE_OK) code = run(db, "COMMIT");
    if (code == SQLITE_OK) return std::nullopt;
    Failure failed = failure(db, code, path, Failure::What::CannotWrite);
    run(db, "ROLLBACK");
    return failed;
}

}  // namespace ledger
