// Taking a case up again: the fold of more events than a long operation makes.
#include "guide/state.hpp"

#include <benchmark/benchmark.h>

namespace {

std::vector<guide::Event> ten_thousand_events() {
    std::vector<guide::Event> events;
    const auto add = [&](const guide::Fact& fact) {
        const guide::Seq seq = events.size() + 1;
        events.push_back({.seq = seq, .at = {.utc_ms = static_cast<std::int64_t>(seq) * 1000}, .who = guide::Who::Scrub, .fact = fact});
    };
    add(guide::CaseOpened{.program = "bench"});
    while (events.size() < 10000) {
        add(guide::SpokeTurned{.by = 1});
        add(guide::TapUndone{.event = events.size()});
        add(guide::ClockMarked{.clock = "suction", .start = true});
        add(guide::ClockMarked{.clock = "suction", .start = false});
        add(guide::ItemsMoved{.item = "needles", .by = 1});
        add(guide::NoteWritten{.text = "a note"});
    }
    events.resize(10000);
    return events;
}

void fold_10000_events(benchmark::State& state) {
    const std::vector<guide::Event> events = ten_thousand_events();
    if (guide::fold(events).last != 10000) {
        state.SkipWithError("the fold did not reach the last event");
    }
    for (auto _ : state) {
        guide::CaseState folded = guide::fold(events);
        benchmark::DoNotOptimize(folded);
    }
}
BENCHMARK(fold_10000_events)->Unit(benchmark::kMillisecond);

}  // namespace
