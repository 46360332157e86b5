// A TOML text as a tree of values that know their place. The only file that knows the TOML library is document.cpp.
// Places count lines and characters (not bytes) from 1. Refused here: more than 1 MiB, text that is no TOML 1.0, and
// nesting deeper than any of our files needs. What keys mean is decided by the readers.
#pragma once

#include "measure/instant.hpp"
#include "measure/problem.hpp"
#include "measure/result.hpp"

#include <compare>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace intake {

using measure::Problems;

inline constexpr std::size_t largest_file = 1024 * 1024;  // bytes

struct Place {
    int line = 1, column = 1;
    auto operator<=>(const Place&) const = default;
};

/// A TOML value that none of our files uses, by what it is: "a time".
struct Unused {
    std::string what{};
};

struct Node;
struct Entry;
using List = std::vector<Node>;
using Table = std::vector<Entry>;

struct Node {
    Place at{};  // a value where it begins, a table at its header, the whole file at 1:1
    std::variant<std::string, std::int64_t, double, bool, measure::Day, Unused, List, Table> value;  // no {}: `Entry` comes later
};
struct Entry {
    std::string key{};
    Place at{};
    Node node{};
};

/// The whole file as one table.
measure::Result<Node, Problems> parse(std::string_view text, const std::string& name);

/// A value as a problem shows it: "\"scar\"", "7.5", "a list of 3 values"; on one line and short.
std::string shown(const Node& node);
/// Text with control characters escaped, cut after 40 characters.
std::string one_line(std::string_view text, std::size_t longest = 40);

}  // namespace intake
