// What a person can mend in a file, and where it stands.
#pragma once

#include <string>
#include <vector>

namespace measure {

struct Problem {
    std::string file{};
    int line = 1;
    int column = 1;  // in characters, from 1
    std::string key{};
    std::string found{};
    std::string allowed{};
    bool operator==(const Problem&) const = default;
};

using Problems = std::vector<Problem>;

/// "FILE:LINE:COLUMN: KEY: found X; allowed Y"
inline std::string text(const Problem& p) {
    return p.file + ":" + std::to_string(p.line) + ":" + std::to_string(p.column) + ": " + p.key + ": found " + p.found + "; allowed " +
           p.allowed;
}

}  // namespace measure
