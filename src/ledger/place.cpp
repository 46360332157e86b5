#include "ledger/place.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>

namespace ledger {
namespace {

std::filesystem::path folder_of(const std::string& path) {
    const auto folder = std::filesystem::path(path).parent_path();
    return folder.empty() ? "." : folder;
}

}  // namespace

File& File::operator=(File&& other) noexcept {
    std::swap(handle_, other.handle_);
    return *this;
}

File::~File() {
    if (handle_ >= 0) ::close(handle_);
}

Failure system_failure(Failure::What what, std::string_view path) {
    const int error = errno;
    const bool full = error == ENOSPC || error == EDQUOT || error == EFBIG;
    return {.what = full ? Failure::What::Full : what, .path = std::string(path), .detail = std::strerror(error)};
}

std::optional<Failure> make_folder_of(const std::string& path) {
    std::filesystem::path made;
    for (const auto& part : folder_of(path)) {
        made /= part;
        if (::mkdir(made.c_str(), 0700) == 0) continue;
        std::error_code ignored;
        if (!std::filesystem::is_directory(made, ignored)) return system_failure(Failure::What::CannotOpen, made.string());
    }
    return std::nullopt;
}

std::optional<Failure> make_file(const std::string& path) {
    const File file(::open(path.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, 0600));
    if (!file && errno != EEXIST) return system_failure(Failure::What::CannotOpen, path);
    if (file) sync_folder_of(path);
    return std::nullopt;
}

void sync_folder_of(const std::string& path) {
    const File folder(::open(folder_of(path).c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (folder) ::fsync(folder.handle());
}

std::optional<Failure> write_through(const File& file, std::string_view bytes, const std::string& path) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(file.handle(), bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return system_failure(Failure::What::CannotWrite, path);
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    if (::fdatasync(file.handle()) != 0) return system_failure(Failure::What::CannotWrite, path);
    return std::nullopt;
}

measure::Result<std::string, Failure> read_all(const std::string& path) {
    const File file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
    if (!file) return system_failure(Failure::What::CannotOpen, path);
    std::string bytes;
    std::array<char, 65536> some{};
    while (true) {
        const ssize_t got = ::read(file.handle(), some.data(), some.size());
        if (got < 0 && errno == EINTR) continue;
        if (got < 0) return system_failure(Failure::What::CannotOpen, path);
        if (got == 0) return bytes;
        bytes.append(some.data(), static_cast<std::size_t>(got));
    }
}

}  // namespace ledger
