// What the tests of the readers share.
#pragma once

#include "measure/problem.hpp"
#include "measure/result.hpp"

#include <doctest/doctest.h>

#include <ostream>
#include <string>
#include <vector>

namespace test {

using Lines = std::vector<std::string>;

/// The problem lines of a reading; none when it was fine.
template <class T>
Lines lines(const measure::Result<T, measure::Problems>& read) {
    Lines told;
    if (!read) {
        for (const measure::Problem& problem : read.error()) told.push_back(measure::text(problem));
    }
    return told;
}

/// `text` with the first `from` in it put right or wrong; a `from` that is not there is the test's own mistake.
inline std::string replaced(std::string text, const std::string& from, const std::string& to) {
    const auto at = text.find(from);
    REQUIRE_MESSAGE(at != std::string::npos, from);
    return text.replace(at, from.size(), to);
}

}  // namespace test

namespace doctest {
template <>
struct StringMaker<std::vector<std::string>> {
    static String convert(const std::vector<std::string>& lines) {
        std::string all;
        for (const std::string& line : lines) all += "\n" + line;
        return all.c_str();
    }
};
}  // namespace doctest
