// A folder that goes when the test ends, files as bytes, and a plain SQLite connection for looking and spoiling.
#pragma once

#include <doctest/doctest.h>
#include <sqlite3.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace testplace {

/// Where files are kept in memory if the system has such a place: for faults that are made by a layer above the disk.
inline std::filesystem::path in_memory() {
    const std::filesystem::path memory = "/dev/shm";
    return ::access(memory.c_str(), W_OK) == 0 ? memory : std::filesystem::temp_directory_path();
}

class Folder {
public:
    explicit Folder(const std::filesystem::path& in = std::filesystem::temp_directory_path()) {
        std::string name = (in / "graftside-ledger-XXXXXX").string();
        REQUIRE(::mkdtemp(name.data()) != nullptr);
        path_ = name;
    }
    ~Folder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    std::string file(const std::string& name) const { return path_ + "/" + name; }
    const std::string& path() const { return path_; }

private:
    std::string path_;
};

inline std::string read(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream bytes;
    bytes << file.rdbuf();
    return bytes.str();
}

inline void write(const std::string& path, const std::string& bytes) { std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes; }

class Sql {
public:
    explicit Sql(const std::string& path) { REQUIRE(sqlite3_open(path.c_str(), &db_) == SQLITE_OK); }
    ~Sql() { sqlite3_close(db_); }
    Sql(const Sql&) = delete;
    Sql& operator=(const Sql&) = delete;
    int run(const std::string& sql) { return sqlite3_exec(db_, sql.c_str(), nullptr, nullptr, nullptr); }
    std::string text(const std::string& sql) {
        sqlite3_stmt* statement = nullptr;
        REQUIRE(sqlite3_prepare_v2(db_, sql.c_str(), -1, &statement, nullptr) == SQLITE_OK);
        const bool row = sqlite3_step(statement) == SQLITE_ROW;
        const std::string value = row ? reinterpret_cast<const char*>(sqlite3_column_text(statement, 0)) : "";
        sqlite3_finalize(statement);
        return value;
    }
    long number(const std::string& sql) { return std::stol(text(sql)); }

private:
    sqlite3* db_ = nullptr;
};

}  // namespace testplace
