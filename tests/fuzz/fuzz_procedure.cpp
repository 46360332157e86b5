// Whatever the bytes, the procedure reader gives a procedure whose parts agree, or problems with a place inside the text.
#include "intake/procedure.hpp"
#include "measure/expect.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text(data, data + size);
    const auto read = intake::read_procedure(text, "f");
    if (read) {
        int cuts = 0;
        for (const auto& phase : read->phases) {
            for (const auto& step : phase.steps) cuts += step.closes == guide::Closes::Cut ? 1 : 0;
        }
        measure::expect(cuts == 1);
        return 0;
    }
    const auto lines = std::ranges::count(text, '\n') + 1;
    for (const auto& problem : read.error()) {
        measure::expect(problem.line >= 1 && problem.line <= lines && problem.column >= 1);
        const std::string told = measure::text(problem);
        measure::expect(std::ranges::none_of(told, [](char c) { return static_cast<unsigned char>(c) < 0x20; }));
    }
    return 0;
}
