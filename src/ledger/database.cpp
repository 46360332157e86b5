#include "ledger/database.hpp"

#include <cerrno>
#include <cstring>

namespace ledger {
namespace {

bool no_room(sqlite3* db) {
    const int error = db == nullptr ? 0 : sqlite3_system_errno(db);
    return error == ENOSPC || error == EDQUOT || error == EFBIG;
}

Failure::What what_of(sqlite3* db, int code, Failure::What otherwise) {
    switch (code & 0xff) {
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
            return Failure::What::InUse;
        case SQLITE_FULL:
            return Failure::What::Full;
        case SQLITE_CORRUPT:
        case SQLITE_NOTADB:
        case SQLITE_FORMAT:
        case SQLITE_CONSTRAINT:
        case SQLITE_MISMATCH:
            return Failure::What::Damaged;
        case SQLITE_IOERR:
            return no_room(db) ? Failure::What::Full : otherwise;
        default:
            return otherwise;
    }
}

}  // namespace

Failure failure(sqlite3* db, int code, std::string_view path, Failure::What otherwise) {
    const char* said = db != nullptr && sqlite3_extended_errcode(db) == code ? sqlite3_errmsg(db) : sqlite3_errstr(code);
    return {
        .what = what_of(db, code, otherwise), .path = std::string(path), .detail = std::string(said) + " (" + std::to_string(code) + ")"};
}

int run(sqlite3* db, const char* sql) { return sqlite3_exec(db, sql, nullptr, nullptr, nullptr); }

Statement::Statement(sqlite3* db, const char* sql) {
    sqlite3_stmt* made = nullptr;
    code_ = sqlite3_prepare_v2(db, sql, -1, &made, nullptr);
    statement_.reset(made);
}

Statement& Statement::bind(std::int64_t value) {
    if (code_ == SQLITE_OK) code_ = sqlite3_bind_int64(statement_.get(), ++bound_, value);
    return *this;
}

Statement& Statement::bind(std::string_view text) {
    if (code_ == SQLITE_OK)
        code_ = sqlite3_bind_text64(statement_.get(), ++bound_, text.data(), text.size(), SQLITE_TRANSIENT, SQLITE_UTF8);
    return *this;
}

Statement& Statement::bind(std::span<const unsigned char> bytes) {
    if (code_ == SQLITE_OK) code_ = sqlite3_bind_blob64(statement_.get(), ++bound_, bytes.data(), bytes.size(), SQLITE_TRANSIENT);
    return *this;
}

bool Statement::next() {
    if (code_ != SQLITE_OK && code_ != SQLITE_ROW) return false;
    code_ = sqlite3_step(statement_.get());
    return code_ == SQLITE_ROW;
}

std::int64_t Statement::integer(int column) const { return sqlite3_column_int64(statement_.get(), column); }

std::string Statement::text(int column) const {
    const auto* data = sqlite3_column_text(statement_.get(), column);
    const int size = sqlite3_column_bytes(statement_.get(), column);
    return data == nullptr ? std::string() : std::string(reinterpret_cast<const char*>(data), static_cast<std::size_t>(size));
}

bool Statement::bytes(int column, std::span<unsigned char> into) const {
    const void* data = sqlite3_column_blob(statement_.get(), column);
    const int size = sqlite3_column_bytes(statement_.get(), column);
    if (data == nullptr || static_cast<std::size_t>(size) != into.size()) return false;
    std::memcpy(into.data(), data, into.size());
    return true;
}

}  // namespace ledger
