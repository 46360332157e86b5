// What an open ledger holds. Of the ledger's own .cpp files only.
#pragma once

#include "ledger/ledger.hpp"
#include "ledger/mirror.hpp"

namespace ledger {

struct Ledger::Book {
    std::string path{};
    Options options{};
    Connection db{};
    bool suspect = false;  // a write failed: opened anew before anything is called saved
    Tails on_disk{};       // what the disk has for certain
    Tails chained{};       // with what is held
    std::vector<Row> held{};
    std::optional<Failure> trouble{}, mirror_trouble{};
    Mirror mirror{""};

    Where where() const { return {.path = path, .vfs = options.vfs}; }
    std::string mirror_path() const { return path + ".txt"; }
    std::string key_path() const { return options.station_key.empty() ? path + ".key" : options.station_key; }
    /// Opens the file again and makes sure it still is the one that was open.
    std::optional<Failure> reopen();
    /// All rows, durable when nothing is returned; then the mirror.
    std::optional<Failure> write(std::span<const Row> rows);
};

}  // namespace ledger
