#include "ledger/ledger.hpp"

#include "ledger/book.hpp"
#include "measure/expect.hpp"

#include <sodium.h>

#include <algorithm>

namespace ledger {
namespace {

Tail tail_of(const Tails& tails, std::string_view reference) {
    const auto found = tails.find(reference);
    return found == tails.end() ? Tail{} : found->second;
}

/// The disk may have taken rows of a write that it reported as failed; anything else is another file.
bool same_file(const Tails& before, const Tails& now, std::span<const Row> held) {
    const auto ours = [&](const std::string& reference, const Tail& tail) {
        return tail_of(before, reference) == tail || std::any_of(held.begin(), held.end(), [&](const Row& row) {
                   return row.reference == reference && row.seq == tail.seq && row.hash == tail.hash;
               });
    };
    return std::all_of(now.begin(), now.end(), [&](const auto& one) { return ours(one.first, one.second); }) &&
           std::all_of(before.begin(), before.end(), [&](const auto& one) { return now.contains(one.first); });
}

/// One `written-late` for each case that has rows among these, in order of first appearance. A case whose last held row is
/// one already gets no second: it covers all before it, and a disk that fails each second must not lengthen the record.
std::vector<Row> late_rows(std::span<const Row> held, const Tails& tails, const measure::Instant& now) {
    std::vector<Row> late;
    for (const Row& row : held) {
        if (std::any_of(late.begin(), late.end(), [&](const Row& made) { return made.reference == row.reference; })) continue;
        const auto last = std::find_if(held.rbegin(), held.rend(), [&](const Row& other) { return other.reference == row.reference; });
        if (last->tag == "written-late") continue;
        const Tail tail = tail_of(tails, row.reference);
        const guide::WrittenLate fact{.first = row.seq, .last = last->seq};
        late.push_back(chained(row.reference, {.seq = tail.seq + 1, .at = now, .who = guide::Who::Program, .fact = fact}, tail));
    }
    return late;
}

}  // namespace

Ledger::Ledger(std::unique_ptr<Book> book) : book_(std::move(book)) {}
Ledger::Ledger(Ledger&&) noexcept = default;
Ledger& Ledger::operator=(Ledger&&) noexcept = default;
Ledger::~Ledger() = default;

measure::Result<Ledger, Failure> Ledger::open(std::string_view path, const Options& options) {
    measure::expect(sodium_init() >= 0);
    auto book = std::make_unique<Book>();
    book->path = path;
    book->options = options;
    const bool recording = options.purpose == Purpose::Record;
    auto store = open_store(book->where(), options.purpose, recording ? Missing::Make : Missing::Fail);
    if (!store) return store.error();
    book->db = std::move(store->db);
    book->trouble = store->trouble;
    book->suspect = store->trouble.has_value();
    auto tails = read_tails(book->db.get(), book->path);
    if (!tails) return tails.error();
    book->on_disk = *tails;
    book->chained = *std::move(tails);
    book->mirror = Mirror(book->mirror_path());
    if (recording) book->mirror_trouble = book->mirror.mend(book->db.get());
    return Ledger(std::move(book));
}

std::optional<Failure> Ledger::Book::reopen() {
    db.reset();
    auto store = open_store(where(), Purpose::Record, Missing::Fail);
    if (!store) return store.error();
    db = std::move(store->db);
    if (store->trouble) return store->trouble;
    auto tails = read_tails(db.get(), path);
    if (!tails) return tails.error();
    if (!same_file(on_disk, *tails, held))
        return Failure{.what = Failure::What::Damaged, .path = path, .detail = "no longer the ledger that was open"};
    suspect = false;
    return std::nullopt;
}

std::optional<Failure> Ledger::Book::write(std::span<const Row> rows) {
    if (suspect)
        if (auto failed = reopen()) return failed;
    if (auto failed = write_rows(db.get(), path, rows)) {
        suspect = true;
        return failed;
    }
    for (const Row& row : rows) on_disk[row.reference] = {.seq = row.seq, .hash = row.hash};
    mirror_trouble = mirror.add(db.get(), rows);
    return std::nullopt;
}

measure::Result<std::vector<guide::Event>, Failure> Ledger::load(std::string_view reference) const {
    const auto bad = [&](guide::Seq seq, const std::string& why, Failure::What what) {
        return Failure{.what = what, .path = book_->path, .detail = std::string(reference) + ", event " + std::to_string(seq) + ": " + why};
    };
    if (book_->db == nullptr) return book_->trouble.value_or(Failure{});
    const Rows read = rows_of_case(book_->db.get(), book_->path, reference);
    std::vector<guide::Event> events;
    Tail tail;
    for (const Row& row : read.rows) {
        if (const auto why = fault(row, tail)) return bad(tail.seq + 1, *why, Failure::What::Damaged);
        const auto event = event_of(row);
        if (!event) return bad(row.seq, event.error().detail, event.error().what);
        events.push_back(*event);
        tail = {.seq = row.seq, .hash = row.hash};
    }
    if (read.failure) return bad(tail.seq + 1, read.failure->detail, read.failure->what);
    // An index that has lost its order lets a search end early, without a word.
    if (tail.seq < tail_of(book_->on_disk, reference).seq)
        return bad(tail.seq + 1, "is not found, though later ones are", Failure::What::Damaged);
    return events;
}

Health Ledger::health(std::string_view reference) const {
    const Book& book = *book_;
    return {.on_disk = tail_of(book.on_disk, reference).seq,
            .held = book.held.size(),
            .trouble = book.trouble ? book.trouble : book.mirror_trouble};
}

const std::string& Ledger::path() const { return book_->path; }

std::vector<End> Ledger::ends() const {
    std::vector<End> all;
    for (const auto& [reference, tail] : book_->on_disk)
        all.push_back({.reference = reference, .last_seq = tail.seq, .hash = hex(tail.hash)});
    return all;
}

Health Ledger::append(std::string_view reference, std::span<const guide::Event> events) {
    Book& book = *book_;
    measure::expect(book.options.purpose == Purpose::Record);
    Tail tail = tail_of(book.chained, reference);
    const bool waiting = !book.held.empty();
    for (const guide::Event& event : events) {
        measure::expect(event.seq == tail.seq + 1);
        book.held.push_back(chained(reference, event, tail));
        tail = {.seq = event.seq, .hash = book.held.back().hash};
    }
    if (events.empty()) return health(reference);
    book.chained.insert_or_assign(std::string(reference), tail);
    if (waiting) return health(reference);  // `retry` writes all of them, in order, and says that they were late
    book.trouble = book.write(book.held);
    if (!book.trouble) book.held.clear();
    return health(reference);
}

bool Ledger::answers(std::string_view reference) {
    Book& book = *book_;
    if (book.suspect || book.db == nullptr) return false;
    const auto failed = look_for(book.db.get(), book.path, reference, tail_of(book.on_disk, reference));
    if (!failed) return true;
    book.trouble = failed;
    book.suspect = true;
    return false;
}

Retried Ledger::retry(const measure::Instant& now) {
    Book& book = *book_;
    if (book.held.empty()) {
        if (book.suspect) book.trouble = book.reopen();
        if (book.mirror_trouble && book.db != nullptr) book.mirror_trouble = book.mirror.mend(book.db.get());
        return {.health = health("")};
    }
    Retried done;
    if (book.suspect) book.trouble = book.reopen();
    if (!book.suspect) {
        // From here on they are part of the case, whatever the disk says: it may have taken a write that it reports as failed.
        for (Row& row : late_rows(book.held, book.chained, now)) {
            book.chained[row.reference] = {.seq = row.seq, .hash = row.hash};
            auto event = event_of(row);
            measure::expect(static_cast<bool>(event));
            done.added.push_back({.reference = row.reference, .event = *std::move(event)});
            book.held.push_back(std::move(row));
        }
        book.trouble = book.write(book.held);
    }
    done.health = health(book.held.back().reference);
    if (!book.trouble) {
        book.held.clear();
        done.health.held = 0;
    }
    return done;
}

}  // namespace ledger
