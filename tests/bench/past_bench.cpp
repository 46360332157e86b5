// Figures over ten thousand invented cases as `graftside past --json` makes them: the ledger opened, the summaries read from the side
// file, everything printed. What the first call after a new release pays, the folding of all records, is not in it.
#include "past/figures.hpp"
#include "past_shelf.hpp"
#include "past_text.hpp"
#include "support/generated.hpp"

#include <benchmark/benchmark.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <string>

namespace {

constexpr int cases = 10'000;

/// A ledger of ten thousand cases in memory, if the system has such a place: a case is one write and several syncs.
class FullLedger {
public:
    FullLedger() {
        const std::filesystem::path memory = "/dev/shm";
        const auto where = ::access(memory.c_str(), W_OK) == 0 ? memory : std::filesystem::temp_directory_path();
        std::string name = (where / "graftside-bench-XXXXXX").string();
        if (::mkdtemp(name.data()) == nullptr) std::abort();
        folder_ = name;
        auto book = ledger::Ledger::open(path());
        if (!book) std::abort();
        for (int number = 0; number < cases; ++number) book->append(sample::generated_reference(number), sample::generated_case(number));
    }
    ~FullLedger() {
        std::error_code ignored;
        std::filesystem::remove_all(folder_, ignored);
    }
    FullLedger(const FullLedger&) = delete;
    FullLedger& operator=(const FullLedger&) = delete;
    std::string path() const { return folder_ + "/a.ledger"; }

private:
    std::string folder_;
};

std::size_t bytes_of_past(const std::string& path) {
    const auto book = ledger::Ledger::open(path, {.station_key = "", .vfs = "", .purpose = ledger::Purpose::Look});
    if (!book) return 0;
    auto all = graftside::summaries(*book);
    return all ? graftside::past_json(past::figures(*std::move(all), {}), {}).size() : 0;
}

void past_of_10000_cases(benchmark::State& state) {
    static const FullLedger full;                                                      // once, however often the iterations are counted
    if (bytes_of_past(full.path()) < cases) return state.SkipWithError("no figures");  // and the side file is there now
    for (auto _ : state) {
        std::size_t bytes = bytes_of_past(full.path());
        benchmark::DoNotOptimize(bytes);
    }
}
BENCHMARK(past_of_10000_cases)->Unit(benchmark::kMillisecond);

}  // namespace
