// The longest ladder there is: 60 rungs of 10 um in a wall of 700 um, none of them near the anterior chamber.
#include "plan/plan.hpp"

#include <benchmark/benchmark.h>

namespace {

plan::Reading reading(int degree, int um) {
    return {.ring = measure::nm(7500000), .at = measure::centideg(degree * 100), .thickness = measure::nm(1000 * um)};
}

plan::Inputs sixty_rungs() {
    plan::Inputs inputs;
    plan::CaseFile& file = inputs.file;
    file = {.reference = "BENCH", .date = {2026, 11, 25}, .keratometry_D = 43.5, .host_diameter = measure::nm(7500000)};
    file.white_to_white_horizontal = measure::nm(11800000);
    file.white_to_white_vertical = measure::nm(11100000);
    file.thickness.readings = {reading(0, 705), reading(90, 720), reading(180, 710), reading(225, 700), reading(270, 715)};
    file.donor.diameter = measure::nm(7750000);
    file.aim = {.goal = plan::Goal::Share, .share_permille = 800};
    inputs.trephine = {.id = "bench", .advance = measure::nm(10000), .spokes_per_turn = 4, .raise = 3, .marks = 16};
    inputs.trephine.reach = {.mean = 1.046, .sd = 0.082, .n = 11};
    inputs.trephine.diameters = {file.host_diameter};
    inputs.punch = {.id = "bench", .diameters = {file.donor.diameter}};
    return inputs;
}

void plan_60_rungs(benchmark::State& state) {
    const plan::Inputs inputs = sixty_rungs();
    if (plan::make(inputs).ladder.size() < 60) {
        state.SkipWithError("the plan has no 60 rungs");
    }
    for (auto _ : state) {
        plan::Plan made = plan::make(inputs);
        benchmark::DoNotOptimize(made);
    }
}
BENCHMARK(plan_60_rungs)->Unit(benchmark::kMillisecond);

}  // namespace
