// A thin hold on SQLite: a connection, a statement, and what its error codes mean to us. Knows no table.
#pragma once

#include "ledger/failure.hpp"

#include <sqlite3.h>

#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>

namespace ledger {

struct CloseConnection {
    void operator()(sqlite3* db) const { sqlite3_close(db); }
};
using Connection = std::unique_ptr<sqlite3, CloseConnection>;

/// A failure for an extended result code. A full disk is known by SQLITE_FULL and, behind SQLITE_IOERR, by the system's own
/// error number; `otherwise` is what any other refusal of the disk is called.
Failure failure(sqlite3* db, int code, std::string_view path, Failure::What otherwise);

/// Runs statements that give no rows back.
int run(sqlite3* db, const char* sql);

class Statement {
public:
    Statement(sqlite3* db, const char* sql);
    Statement& bind(std::int64_t value);
    Statement& bind(std::string_view text);
    Statement& bind(std::span<const unsigned char> bytes);
    /// True while there is a row; afterwards `code` is SQLITE_DONE or what went wrong.
    bool next();
    int code() const { return code_; }
    bool failed() const { return code_ != SQLITE_OK && code_ != SQLITE_ROW && code_ != SQLITE_DONE; }

    std::int64_t integer(int column) const;
    std::string text(int column) const;
    /// False if the column does not hold exactly that many bytes.
    bool bytes(int column, std::span<unsigned char> into) const;

private:
    struct Finalize {
        void operator()(sqlite3_stmt* statement) const { sqlite3_finalize(statement); }
    };
    std::unique_ptr<sqlite3_stmt, Finalize> statement_{};
    int code_ = SQLITE_OK;
    int bound_ = 0;
};

}  // namespace ledger
