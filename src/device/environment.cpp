#include "device/environment.hpp"

#include <cstdlib>
#include <filesystem>

namespace device {
namespace {

std::optional<std::string> xdg(const std::string& name, const std::string& under_home) {
    if (const auto base = variable(name); base && base->front() == '/') return *base + "/graftside";
    if (const auto home = variable("HOME")) return *home + under_home + "/graftside";
    return std::nullopt;
}

}  // namespace

std::optional<std::string> variable(const std::string& name) {
    const char* const value = std::getenv(name.c_str());
    if (value == nullptr || *value == '\0') return std::nullopt;
    return std::string(value);
}

std::optional<std::string> data_folder() { return xdg("XDG_DATA_HOME", "/.local/share"); }
std::optional<std::string> config_folder() { return xdg("XDG_CONFIG_HOME", "/.config"); }

std::string program_path() {
    std::error_code ignored;
    return std::filesystem::read_symlink("/proc/self/exe", ignored).string();
}

std::string share_folder() {
    const auto folder = std::filesystem::path(program_path()).parent_path().parent_path();
    return (folder / "share" / "graftside").string();
}

}  // namespace device
