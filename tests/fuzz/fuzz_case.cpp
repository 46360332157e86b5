// Whatever the bytes, the case reader gives a case that is written and read back equal, or at least one problem with a
// place inside the text and nothing that breaks the line it is told on.
#include "intake/case.hpp"
#include "measure/expect.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text(data, data + size);
    const auto read = intake::read_case(text, "f");
    if (read) {
        const auto again = intake::read_case(intake::write_case(*read), "w");
        measure::expect(again && *again == *read);
        return 0;
    }
    const auto lines = std::ranges::count(text, '\n') + 1;
    measure::expect(!read.error().empty());
    for (const auto& problem : read.error()) {
        measure::expect(problem.line >= 1 && problem.line <= lines && problem.column >= 1);
        const std::string told = measure::text(problem);
        measure::expect(std::ranges::none_of(told, [](char c) { return static_cast<unsigned char>(c) < 0x20; }));
    }
    return 0;
}
