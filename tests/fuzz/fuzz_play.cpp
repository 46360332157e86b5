// Whatever the bytes, the play reader gives lines in order of time, or problems each naming a line of the text.
#include "intake/play.hpp"
#include "measure/expect.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text(data, data + size);
    const auto read = intake::read_play(text, "f");
    if (read) {
        measure::expect(std::ranges::is_sorted(*read, {}, [](const intake::PlayLine& line) { return line.at.utc_ms; }));
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
