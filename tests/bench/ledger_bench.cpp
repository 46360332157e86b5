// From the tap to durable on the disk: one event appended, mirror and all, beside what the same disk needs at the least, one
// 4 KiB block written and synced. The folder is where temporary files go (TMPDIR): set it to the disk that is meant.
#include "ledger/ledger.hpp"

#include <benchmark/benchmark.h>
#include <fcntl.h>
#include <unistd.h>

#include <array>
#include <cstdlib>
#include <filesystem>
#include <string>

namespace {

class Folder {
public:
    Folder() {
        std::string name = (std::filesystem::temp_directory_path() / "graftside-bench-XXXXXX").string();
        if (::mkdtemp(name.data()) == nullptr) std::abort();
        path_ = name;
    }
    ~Folder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    std::string file(const std::string& name) const { return path_ + "/" + name; }

private:
    std::string path_;
};

/// One block, over and over at the same place: neither the size of the file nor its blocks change.
void yardstick_write_4096_and_sync(benchmark::State& state) {
    const Folder folder;
    const int file = ::open(folder.file("block").c_str(), O_CREAT | O_RDWR | O_CLOEXEC, 0600);
    const std::array<char, 4096> block{};
    bool good = ::pwrite(file, block.data(), block.size(), 0) == 4096 && ::fsync(file) == 0;
    for (auto _ : state) good = good && ::pwrite(file, block.data(), block.size(), 0) == 4096 && ::fdatasync(file) == 0;
    ::close(file);
    if (!good) state.SkipWithError("the disk refused");
}
BENCHMARK(yardstick_write_4096_and_sync)->UseRealTime();

/// What a log of our own would pay: each block makes the file longer.
void yardstick_lengthen_by_4096_and_sync(benchmark::State& state) {
    const Folder folder;
    const int file = ::open(folder.file("log").c_str(), O_CREAT | O_RDWR | O_APPEND | O_CLOEXEC, 0600);
    const std::array<char, 4096> block{};
    bool good = true;
    for (auto _ : state) good = good && ::write(file, block.data(), block.size()) == 4096 && ::fdatasync(file) == 0;
    ::close(file);
    if (!good) state.SkipWithError("the disk refused");
}
BENCHMARK(yardstick_lengthen_by_4096_and_sync)->UseRealTime();

void append_one_spoke(benchmark::State& state) {
    const Folder folder;
    auto opened = ledger::Ledger::open(folder.file("a.ledger"));
    if (!opened) return state.SkipWithError("no ledger");
    ledger::Ledger book = *std::move(opened);
    guide::Event event{.seq = 0, .at = {.utc_ms = 1'795'599'667'250}, .who = guide::Who::Scrub, .fact = guide::SpokeTurned{.by = 1}};
    ledger::Health health;
    for (auto _ : state) {
        ++event.seq;
        health = book.append("K-0147", {&event, 1});
    }
    if (health.held > 0 || health.trouble) state.SkipWithError("the disk refused");
}
BENCHMARK(append_one_spoke)->UseRealTime();

}  // namespace
