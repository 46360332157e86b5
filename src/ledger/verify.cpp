// Lists, seals, verdicts and recovery: what is asked of a ledger beside the running case.
#include "ledger/book.hpp"
#include "ledger/place.hpp"
#include "ledger/station_key.hpp"

#include <algorithm>

namespace ledger {
namespace {

struct Kept {  // a seal as it stands in its table
    guide::Seq last_seq = 0;
    Hash last_hash{};
    Signed by{};
};

struct Seals {
    std::vector<Kept> kept{};
    std::optional<Failure> failure{};
};

Seals seals_of_case(sqlite3* db, const std::string& path, std::string_view reference) {
    Seals read;
    Statement statement(db, "SELECT last_seq, last_hash, public_key, signature FROM seals WHERE case_ref=? ORDER BY last_seq");
    statement.bind(reference);
    while (statement.next()) {
        Kept kept{.last_seq = static_cast<guide::Seq>(statement.integer(0))};
        const bool whole = statement.bytes(1, kept.last_hash) && statement.bytes(2, kept.by.key) && statement.bytes(3, kept.by.signature);
        if (!whole) kept.by = {};
        read.kept.push_back(kept);
    }
    if (statement.failed()) read.failure = failure(db, statement.code(), path, Failure::What::CannotOpen);
    return read;
}

/// Walks the chain as far as it is whole.
void walk(const Rows& read, Verdict& verdict) {
    Tail tail;
    const auto stop = [&](std::string why) {
        verdict.first_bad = tail.seq + 1;
        verdict.why = std::move(why);
    };
    for (const Row& row : read.rows) {
        if (auto why = fault(row, tail)) return stop(*std::move(why));
        if (const auto event = event_of(row); !event) return stop(event.error().detail);
        tail = {.seq = row.seq, .hash = row.hash};
        verdict.whole_to = row.seq;
        verdict.hash = hex(row.hash);
    }
    if (read.failure) stop(read.failure->detail);
}

Verdict::Sealed judge(const std::vector<Kept>& seals, const std::vector<Row>& rows) {
    if (seals.empty()) return Verdict::Sealed::No;
    const auto good = [&](const Kept& kept) {
        const auto row = std::find_if(rows.begin(), rows.end(), [&](const Row& one) { return one.seq == kept.last_seq; });
        return row != rows.end() && row->hash == kept.last_hash && genuine(kept.by, kept.last_hash);
    };
    if (!std::all_of(seals.begin(), seals.end(), good)) return Verdict::Sealed::SignatureBad;
    return rows.back().seq > seals.back().last_seq ? Verdict::Sealed::EventsAfter : Verdict::Sealed::Yes;
}

std::string whole_file(sqlite3* db) {
    Statement statement(db, "PRAGMA integrity_check(1)");
    if (!statement.next()) return sqlite3_errmsg(db);
    const auto said = statement.text(0);
    return said == "ok" ? std::string() : said;
}

std::vector<Row> beyond(const std::string& mirror_path, const Tails& tails) {
    const auto text = read_all(mirror_path);
    return text ? rows_beyond(*text, tails) : std::vector<Row>{};  // no mirror has nothing to offer
}

bool has_closed(const std::vector<guide::Event>& events) {
    return std::any_of(events.begin(), events.end(), [](const auto& one) { return std::holds_alternative<guide::CaseClosed>(one.fact); });
}

Failure refused(const std::string& path, std::string detail) {
    return {.what = Failure::What::CannotWrite, .path = path, .detail = std::move(detail)};
}

int insert_seal(sqlite3* db, std::string_view reference, const Kept& kept, std::int64_t utc_ms) {
    Statement statement(db, "INSERT OR REPLACE INTO seals(case_ref,last_seq,last_hash,public_key,signature,utc_ms) VALUES(?,?,?,?,?,?)");
    statement.bind(reference).bind(static_cast<std::int64_t>(kept.last_seq)).bind(kept.last_hash);
    statement.bind(kept.by.key).bind(kept.by.signature).bind(utc_ms);
    statement.next();
    return statement.code();
}

}  // namespace

measure::Result<std::vector<Summary>, Failure> Ledger::cases() const {
    if (book_->db == nullptr) return book_->trouble.value_or(Failure{});
    Statement statement(book_->db.get(), R"(
        SELECT l.case_ref, f.utc_ms, f.offset_min, f.boottime_ms, f.boot, l.utc_ms, l.offset_min, l.boottime_ms, l.boot, l.seq,
               EXISTS(SELECT 1 FROM events c WHERE c.case_ref = l.case_ref AND c.tag = 'case-closed'),
               EXISTS(SELECT 1 FROM seals s WHERE s.case_ref = l.case_ref AND s.last_seq = l.seq)
        FROM (SELECT case_ref, min(seq) AS first, max(seq) AS last FROM events GROUP BY case_ref) g
        JOIN events f ON f.case_ref = g.case_ref AND f.seq = g.first
        JOIN events l ON l.case_ref = g.case_ref AND l.seq = g.last
        ORDER BY l.id DESC)");
    const auto instant = [&](int column) {
        return measure::Instant{.utc_ms = statement.integer(column),
                                .offset_min = static_cast<int>(statement.integer(column + 1)),
                                .boottime_ms = statement.integer(column + 2),
                                .boot = static_cast<std::uint64_t>(statement.integer(column + 3))};
    };
    std::vector<Summary> list;
    while (statement.next())
        list.push_back({.reference = statement.text(0),
                        .opened = instant(1),
                        .last = instant(5),
                        .last_seq = static_cast<guide::Seq>(statement.integer(9)),
                        .closed = statement.integer(10) != 0,
                        .sealed = statement.integer(11) != 0});
    if (statement.failed()) return failure(book_->db.get(), statement.code(), book_->path, Failure::What::CannotOpen);
    return list;
}

measure::Result<Seal, Failure> Ledger::seal(std::string_view reference, const measure::Instant& now) {
    Book& book = *book_;
    if (!book.held.empty()) return refused(book.path, "events are not on disk yet");
    if (book.suspect)
        if (auto failed = book.reopen()) return *failed;
    const auto events = load(reference);
    if (!events) return events.error();
    if (!has_closed(*events)) return refused(book.path, "the case is not closed");
    const Tail& last = book.on_disk.find(reference)->second;
    const auto by = sign(last.hash, book.key_path());
    if (!by) return by.error();
    const int code = insert_seal(book.db.get(), reference, {.last_seq = last.seq, .last_hash = last.hash, .by = *by}, now.utc_ms);
    if (code != SQLITE_DONE) {
        book.suspect = true;
        return failure(book.db.get(), code, book.path, Failure::What::CannotWrite);
    }
    return Seal{.last_seq = last.seq, .hash = hex(last.hash), .fingerprint = fingerprint(by->key)};
}

measure::Result<Verdict, Failure> Ledger::verify(std::string_view reference) const {
    sqlite3* db = book_->db.get();
    if (db == nullptr) return book_->trouble.value_or(Failure{});
    Verdict verdict;
    const Rows read = rows_of_case(db, book_->path, reference);
    walk(read, verdict);
    const Seals seals = seals_of_case(db, book_->path, reference);
    if (seals.failure && verdict.why.empty()) verdict.why = seals.failure->detail;
    verdict.sealed = read.rows.empty() && !seals.kept.empty() ? Verdict::Sealed::SignatureBad : judge(seals.kept, read.rows);
    if (!seals.kept.empty()) verdict.fingerprint = fingerprint(seals.kept.back().by.key);
    if (verdict.why.empty()) verdict.why = whole_file(db);
    const auto extra = beyond(book_->mirror_path(), book_->on_disk);
    verdict.only_in_mirror =
        static_cast<std::uint64_t>(std::count_if(extra.begin(), extra.end(), [&](const Row& row) { return row.reference == reference; }));
    return verdict;
}

measure::Result<std::vector<Recovery>, Failure> Ledger::recoverable() const {
    std::vector<Recovery> found;
    for (const Row& row : beyond(book_->mirror_path(), book_->on_disk)) {
        const auto event = event_of(row);
        if (!event) return event.error();
        auto place = std::find_if(found.begin(), found.end(), [&](const Recovery& one) { return one.reference == row.reference; });
        if (place == found.end()) place = found.insert(place, {.reference = row.reference});
        place->events.push_back(*event);
    }
    return found;
}

measure::Result<std::uint64_t, Failure> Ledger::recover(std::string_view reference) {
    Book& book = *book_;
    if (!book.held.empty()) return refused(book.path, "events are not on disk yet");
    std::vector<Row> rows = beyond(book.mirror_path(), book.on_disk);
    std::erase_if(rows, [&](const Row& row) { return row.reference != reference; });
    if (rows.empty()) return std::uint64_t{0};
    if (auto failed = book.write(rows)) return *failed;
    book.chained.insert_or_assign(std::string(reference), Tail{.seq = rows.back().seq, .hash = rows.back().hash});
    return std::uint64_t{rows.size()};
}

}  // namespace ledger
