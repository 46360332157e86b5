// The ledger's tables in SQLite: opening with every check, rows in and out. One connection, exclusive, rollback journal,
// synchronous=EXTRA; not WAL, whose reset fault in Debian 12's SQLite needs no second look when there is no WAL.
// Does not decide what is held, retried or mirrored.
#pragma once

#include "ledger/chain.hpp"
#include "ledger/database.hpp"
#include "ledger/purpose.hpp"

#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace ledger {

enum class Missing { Make, Fail };

struct Store {
    Connection db{};
    std::optional<Failure> trouble{};  // it can be read, but the disk refused a trial write
};

struct Where {
    std::string path{};
    std::string vfs{};  // SQLite's name of the layer to the system; empty: the usual one
};

measure::Result<Store, Failure> open_store(const Where& where, Purpose purpose, Missing missing);

using Tails = std::map<std::string, Tail, std::less<>>;
measure::Result<Tails, Failure> read_tails(sqlite3* db, const std::string& path);

/// The rows as they stand, in order; `failure` if reading stopped early.
struct Rows {
    std::vector<Row> rows{};
    std::optional<Failure> failure{};
};
Rows rows_of_case(sqlite3* db, const std::string& path, std::string_view reference);
Rows rows_after(sqlite3* db, const std::string& path, std::int64_t id);
/// The place of a row in the order of writing; none if this very row is not there.
std::optional<std::int64_t> id_of(sqlite3* db, const Row& row);

/// Whether the file itself, not a copy of it in memory, is there and has the last event of a case; nothing: it has.
std::optional<Failure> look_for(sqlite3* db, const std::string& path, std::string_view reference, const Tail& last);

/// All rows in one transaction, durable when nothing is returned. Rows already there are passed over.
std::optional<Failure> write_rows(sqlite3* db, const std::string& path, std::span<const Row> rows);

}  // namespace ledger
