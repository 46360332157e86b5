// A plain-text copy of the events beside the ledger, one line after each commit, for people and for the worst day.
// The database is the truth: a missing tail of the mirror is mended from it; what only the mirror has is offered, never
// merged by itself. A line: hash, case, seq, RFC 3339 time, boottime_ms, boot, who, tag, JSON, parted by tabs; a tab, a line
// end or a backslash in the case is written \t, \n or \\.
#pragma once

#include "ledger/place.hpp"
#include "ledger/store.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace ledger {

class Mirror {
public:
    explicit Mirror(std::string path) : path_(std::move(path)) {}
    const std::string& path() const { return path_; }

    /// Opens the file, made if missing, and writes the rows it lacks.
    std::optional<Failure> mend(sqlite3* db);
    /// Lines for rows just committed; after a failure the next call mends first.
    std::optional<Failure> add(sqlite3* db, std::span<const Row> rows);

private:
    std::string path_;
    File file_{};
    bool behind_ = true;
};

std::string mirror_line(const Row& row);
/// `prev` is not in the line and stays unset; the hash is not checked.
std::optional<Row> row_of_line(std::string_view line);

/// Rows of the mirror that follow the last rows of the ledger, their hashes checked, case by case in order.
std::vector<Row> rows_beyond(std::string_view mirror, Tails tails);

}  // namespace ledger
