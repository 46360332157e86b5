// The record of the cases on this station: one SQLite file, a plain-text mirror beside it (`.txt`), events chained by hashes.
// `append` is durable when it returns with nothing held. If the disk says no, the events stay in memory, chained already, and
// `retry` writes them later and says so for good. Events are never changed or deleted. Decides nothing about the case itself.
#pragma once

#include "guide/fact.hpp"
#include "ledger/failure.hpp"
#include "ledger/purpose.hpp"
#include "measure/result.hpp"

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace ledger {

struct Health {
    guide::Seq on_disk = 0;            // last event of the case that the disk has
    std::uint64_t held = 0;            // events in memory only, of all cases; above 0: "not on disk"
    std::optional<Failure> trouble{};  // with nothing held: the mirror is behind, or the disk refused a trial
    bool operator==(const Health&) const = default;
};

struct Retried {
    Health health{};
    struct Added {
        std::string reference{};
        guide::Event event{};
    };
    std::vector<Added> added{};  // `written-late`, one a case: to be applied, on disk or held like any other
};

struct Summary {
    std::string reference{};
    measure::Instant opened{}, last{};
    guide::Seq last_seq = 0;
    bool closed = false, sealed = false;
    bool operator==(const Summary&) const = default;
};

/// Where the record of a case ends on the disk.
struct End {
    std::string reference{};
    guide::Seq last_seq = 0;
    std::string hash{};  // of the last event, hex
    bool operator==(const End&) const = default;
};

struct Seal {
    guide::Seq last_seq = 0;
    std::string hash{};         // of the last event, hex
    std::string fingerprint{};  // of the station's key
    bool operator==(const Seal&) const = default;
};

struct Verdict {
    enum class Sealed { No, Yes, SignatureBad, EventsAfter };
    guide::Seq whole_to = 0;  // events that are whole, from the first on; 0: no such case
    std::string hash{};       // of the last whole event, hex
    std::optional<guide::Seq> first_bad{};
    std::string why{};  // in English, of the first bad event or of the file; empty: whole
    Sealed sealed = Sealed::No;
    std::string fingerprint{};         // of the key that sealed it: compare it with the station's own
    std::uint64_t only_in_mirror = 0;  // events that chain on and that the ledger lacks
    bool whole() const { return why.empty() && sealed != Sealed::SignatureBad; }
    bool operator==(const Verdict&) const = default;
};

struct Recovery {
    std::string reference{};
    std::vector<guide::Event> events{};
};

struct Options {
    std::string station_key{};  // empty: the ledger's path + ".key"
    std::string vfs{};          // SQLite's layer to the system; empty: the usual one
    Purpose purpose = Purpose::Record;
};

class Ledger {
public:
    /// Never waits: a ledger held by another program is Failure::InUse.
    static measure::Result<Ledger, Failure> open(std::string_view path, const Options& options = {});
    Ledger(Ledger&&) noexcept;
    Ledger& operator=(Ledger&&) noexcept;
    ~Ledger();

    /// The events of a case, chain and all checked; no such case: none.
    measure::Result<std::vector<guide::Event>, Failure> load(std::string_view reference) const;
    /// Events with the next sequence numbers of the case.
    Health append(std::string_view reference, std::span<const guide::Event> events);
    /// Each second while anything is held: writes it in order, in one transaction with the `written-late` of each case.
    /// With nothing held it tries again what else was in trouble, the mirror or the disk.
    Retried retry(const measure::Instant& now);
    Health health(std::string_view reference) const;
    /// Each second: one read of the file itself. False while the disk refuses, or where the last event of the case is not found as
    /// it was written: then that is in trouble, and the file is opened anew by `retry` before anything is called saved.
    bool answers(std::string_view reference);

    const std::string& path() const;
    /// By reference; from memory, however many cases there are.
    std::vector<End> ends() const;
    /// Newest first.
    measure::Result<std::vector<Summary>, Failure> cases() const;
    /// After case-closed: the station's signature over the last hash.
    measure::Result<Seal, Failure> seal(std::string_view reference, const measure::Instant& now);
    measure::Result<Verdict, Failure> verify(std::string_view reference) const;

    /// Events that only the mirror has and that chain on. Offered to people; `recover` takes over those of one case.
    measure::Result<std::vector<Recovery>, Failure> recoverable() const;
    measure::Result<std::uint64_t, Failure> recover(std::string_view reference);

private:
    struct Book;
    explicit Ledger(std::unique_ptr<Book> book);
    std::unique_ptr<Book> book_;
};

}  // namespace ledger
