// Files of our own on the disk: folders 0700, files 0600, written through to the disk. Knows nothing of what they hold.
#pragma once

#include "ledger/failure.hpp"
#include "measure/result.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace ledger {

/// An open file of the system, closed when it goes.
class File {
public:
    explicit File(int handle = -1) : handle_(handle) {}
    File(File&& other) noexcept : handle_(other.handle_) { other.handle_ = -1; }
    File& operator=(File&& other) noexcept;
    ~File();
    int handle() const { return handle_; }
    explicit operator bool() const { return handle_ >= 0; }

private:
    int handle_ = -1;
};

Failure system_failure(Failure::What what, std::string_view path);

/// Makes the folder a file is to stand in, and those above it.
std::optional<Failure> make_folder_of(const std::string& path);
/// Makes an empty file if there is none. Never opens one that is there: closing it would drop SQLite's lock.
std::optional<Failure> make_file(const std::string& path);
/// So that a new name outlives a power cut.
void sync_folder_of(const std::string& path);

/// All of it, or the failure; then written through.
std::optional<Failure> write_through(const File& file, std::string_view bytes, const std::string& path);
measure::Result<std::string, Failure> read_all(const std::string& path);

}  // namespace ledger
