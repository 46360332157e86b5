#include "device/files.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <optional>

namespace device {
namespace {

/// An open file, closed when it goes out of scope.
class Handle {
public:
    explicit Handle(int number) : number_(number) {}
    Handle(const Handle&) = delete;
    Handle& operator=(const Handle&) = delete;
    ~Handle() {
        if (number_ >= 0) ::close(number_);
    }
    int number() const { return number_; }
    bool open() const { return number_ >= 0; }

private:
    int number_;
};

std::string said(const std::string& path) { return path + " (" + std::strerror(errno) + ")"; }

/// Reads to the end, or to one byte more than `most`.
std::optional<std::string> read_all(int file, std::size_t most) {
    std::string bytes;
    char block[65536];
    while (bytes.size() <= most) {
        const ssize_t got = ::read(file, block, sizeof block);
        if (got < 0 && errno == EINTR) continue;
        if (got < 0) return std::nullopt;
        if (got == 0) break;
        bytes.append(block, static_cast<std::size_t>(got));
    }
    return bytes;
}

bool write_all(int file, std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t put = ::write(file, bytes.data(), bytes.size());
        if (put < 0 && errno == EINTR) continue;
        if (put < 0) return false;
        bytes.remove_prefix(static_cast<std::size_t>(put));
    }
    return true;
}

}  // namespace

Result<std::string> read_file(const std::string& path, std::size_t most) {
    const Handle file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
    if (!file.open()) return Failure{errno == ENOENT ? Failure::What::NoFile : Failure::What::CannotRead, said(path)};
    auto bytes = read_all(file.number(), most);
    if (!bytes) return Failure{Failure::What::CannotRead, said(path)};
    if (bytes->size() > most) return Failure{Failure::What::TooLarge, path + " (over " + std::to_string(most) + " bytes)"};
    return std::move(*bytes);
}

Result<measure::Done> write_file(const std::string& path, std::string_view bytes) {
    std::string beside = path + ".XXXXXX";
    bool written = false;
    {
        const Handle file(::mkostemp(beside.data(), O_CLOEXEC));
        if (!file.open()) return Failure{Failure::What::CannotWrite, said(path)};
        written = write_all(file.number(), bytes) && ::fsync(file.number()) == 0;
    }
    if (written && ::rename(beside.c_str(), path.c_str()) == 0) return measure::Done{};
    const Failure failure{Failure::What::CannotWrite, said(path)};
    ::unlink(beside.c_str());
    return failure;
}

Result<measure::Done> make_folder(const std::string& path) {
    std::filesystem::path so_far;
    for (const auto& part : std::filesystem::path(path)) {
        so_far /= part;
        if (part.empty() || std::filesystem::exists(so_far)) continue;
        if (::mkdir(so_far.c_str(), 0700) != 0 && errno != EEXIST) return Failure{Failure::What::CannotWrite, said(so_far.string())};
    }
    std::error_code ignored;
    if (!std::filesystem::is_directory(path, ignored)) return Failure{Failure::What::CannotWrite, path + " (not a folder)"};
    return measure::Done{};
}

bool exists(const std::string& path) {
    std::error_code ignored;
    return std::filesystem::exists(path, ignored);
}

std::vector<std::string> files_in(const std::string& folder, const std::string& ending) {
    std::vector<std::string> found;
    std::error_code ignored;
    for (const auto& entry : std::filesystem::directory_iterator(folder, ignored)) {
        if (entry.path().string().ends_with(ending)) found.push_back(entry.path().string());
    }
    std::sort(found.begin(), found.end());
    return found;
}

}  // namespace device
