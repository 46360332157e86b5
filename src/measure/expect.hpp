// A broken promise of our own code: on in every build. Logs where, aborts; a restart folds the ledger and goes on.
#pragma once

#include <cstdio>
#include <cstdlib>

namespace measure {

// The builtins stand in for std::source_location, which Clang 14 lacks with this library.
inline void expect(bool holds, const char* file = __builtin_FILE(), int line = __builtin_LINE()) {
    if (holds) return;
    std::fprintf(stderr, "broken promise at %s:%d\n", file, line);
    std::abort();
}

}  // namespace measure
