#include "device/files.hpp"
#include "device/environment.hpp"

#include <doctest/doctest.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>
#include <string>

using namespace device;

namespace {

/// A folder of its own for a test, gone afterwards.
struct Folder {
    std::string path = (std::filesystem::temp_directory_path() / "device-test-XXXXXX").string();
    Folder() { REQUIRE(::mkdtemp(path.data()) != nullptr); }
    ~Folder() { std::filesystem::remove_all(path); }
};

Failure::What why(const auto& result) {
    REQUIRE_FALSE(static_cast<bool>(result));
    return result.error().what;
}

}  // namespace

TEST_CASE("what was written is read back, and nothing is left beside it") {
    const Folder folder;
    const std::string path = folder.path + "/note.txt", bytes("a\0b\n", 4);
    CHECK(static_cast<bool>(write_file(path, "older and longer")));
    CHECK(static_cast<bool>(write_file(path, bytes)));
    const auto read = read_file(path);
    REQUIRE(static_cast<bool>(read));
    CHECK(*read == bytes);
    const std::filesystem::directory_iterator entries(folder.path);
    CHECK(std::distance(begin(entries), end(entries)) == 1);
}

// formats.md: a file is at most 1 MiB.
TEST_CASE("a file of the largest size is read and one byte more is refused") {
    const Folder folder;
    const std::string path = folder.path + "/large";
    REQUIRE(static_cast<bool>(write_file(path, std::string(1048576, 'x'))));
    const auto fits = read_file(path);
    REQUIRE(static_cast<bool>(fits));
    CHECK(fits->size() == 1048576);
    REQUIRE(static_cast<bool>(write_file(path, std::string(1048577, 'x'))));
    CHECK(why(read_file(path)) == Failure::What::TooLarge);
}

TEST_CASE("a failure says which file and why") {
    const Folder folder;
    const auto missing = read_file(folder.path + "/missing");
    CHECK(why(missing) == Failure::What::NoFile);
    CHECK(text(missing.error()) == "There is no such file: " + folder.path + "/missing (No such file or directory)");
    CHECK(why(read_file(folder.path)) == Failure::What::CannotRead);
    CHECK(why(write_file(folder.path + "/none/note", "x")) == Failure::What::CannotWrite);
    REQUIRE(static_cast<bool>(make_folder(folder.path + "/taken")));
    CHECK(why(write_file(folder.path + "/taken", "x")) == Failure::What::CannotWrite);
    const std::filesystem::directory_iterator entries(folder.path);
    CHECK(std::distance(begin(entries), end(entries)) == 1);  // nothing half written is left
    CHECK(why(make_folder("/proc/none/deeper")) == Failure::What::CannotWrite);
}

// XDG base directory specification: new folders have mode 0700.
TEST_CASE("a new folder is its owner's alone") {
    const Folder folder;
    const std::string path = folder.path + "/one/two";
    CHECK(static_cast<bool>(make_folder(path)));
    CHECK(static_cast<bool>(make_folder(path)));
    struct stat found {};
    REQUIRE(::stat(path.c_str(), &found) == 0);
    CHECK((found.st_mode & 0777U) == 0700U);
}

// XDG base directory specification: default $HOME/.local/share; a path that is not absolute counts as invalid.
TEST_CASE("the data folder follows the XDG rules") {
    ::setenv("HOME", "/home/someone", 1);
    ::unsetenv("XDG_DATA_HOME");
    CHECK(data_folder() == "/home/someone/.local/share/graftside");
    ::setenv("XDG_DATA_HOME", "/data", 1);
    CHECK(data_folder() == "/data/graftside");
    ::setenv("XDG_DATA_HOME", "relative", 1);
    CHECK(data_folder() == "/home/someone/.local/share/graftside");
    ::setenv("XDG_DATA_HOME", "", 1);
    CHECK(data_folder() == "/home/someone/.local/share/graftside");
    ::unsetenv("XDG_CONFIG_HOME");
    CHECK(config_folder() == "/home/someone/.config/graftside");
    ::unsetenv("XDG_DATA_HOME");
    ::unsetenv("HOME");
    CHECK_FALSE(data_folder().has_value());
}

TEST_CASE("the share folder is beside the program's own folder") {
    const std::filesystem::path program = program_path();
    CHECK(program.filename() == "device_test");
    CHECK(share_folder() == (program.parent_path().parent_path() / "share/graftside").string());
}
