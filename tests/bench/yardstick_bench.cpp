// What the same machine needs for plain work of a known size. The ratios in `ratios` are against these, so that they say
// something about our code and little about the machine.
#include <benchmark/benchmark.h>

#include <cmath>
#include <numeric>
#include <vector>

namespace {

// 60 rungs of 200 points each of a normal density: the least a numerical integral of that size costs.
void yardstick_12000_densities(benchmark::State& state) {
    for (auto _ : state) {
        double sum = 0;
        for (int i = 0; i < 12000; ++i) {
            const double z = -6.0 + 0.001 * i;
            sum += std::exp(-0.5 * z * z);
        }
        benchmark::DoNotOptimize(sum);
    }
}
BENCHMARK(yardstick_12000_densities);

// The bytes of 10,000 events, read once.
void yardstick_read_10000_events(benchmark::State& state) {
    const std::vector<long> bytes(10000 * 64, 1);  // 512 bytes an event, near what one takes in memory
    for (auto _ : state) {
        long sum = std::accumulate(bytes.begin(), bytes.end(), 0L);
        benchmark::DoNotOptimize(sum);
    }
}
BENCHMARK(yardstick_read_10000_events);

}  // namespace
