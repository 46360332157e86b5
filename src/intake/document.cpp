#include "intake/document.hpp"

#include "intake/utf8.hpp"
#include "measure/overloaded.hpp"

#include <fmt/format.h>

namespace intake {
namespace {
/// The library asserts, instead of reporting, on some texts that are no TOML ("[[["). Its assertions are turned into this.
struct Misread {};
[[noreturn]] void misread_here() { throw Misread{}; }
}  // namespace
}  // namespace intake

#undef NDEBUG  // else the library takes what it asserts for granted
#define TOML_ASSERT(expr) ((expr) ? static_cast<void>(0) : intake::misread_here())
#define TOML_HEADER_ONLY 1
#define TOML_MAX_NESTED_VALUES 16  // our deepest file nests four
#include <toml++/toml.h>

#include <algorithm>
#include <optional>

namespace intake {
namespace {

constexpr int longest_key = 16;                   // parts of a dotted key
constexpr std::size_t longest_description = 160;  // the library's words for what is no TOML

Place place(const toml::source_region& region) {
    return {.line = std::max(1, static_cast<int>(region.begin.line)), .column = std::max(1, static_cast<int>(region.begin.column))};
}

Node converted(const toml::node& node);

Node converted_table(const toml::table& table) {
    Table entries;
    for (const auto& [key, value] : table) {
        entries.push_back({.key = moved_back(key.str()), .at = place(key.source()), .node = converted(value)});
    }
    return {.at = place(table.source()), .value = std::move(entries)};
}

Node converted_list(const toml::array& array) {
    List nodes;
    for (const toml::node& element : array) nodes.push_back(converted(element));
    return {.at = place(array.source()), .value = std::move(nodes)};
}

measure::Day day(const toml::date& date) { return {.year = date.year, .month = date.month, .day = date.day}; }

Node converted(const toml::node& node) {
    const Place at = place(node.source());
    if (const auto* table = node.as_table()) return converted_table(*table);
    if (const auto* array = node.as_array()) return converted_list(*array);
    if (const auto* text = node.as_string()) return {.at = at, .value = moved_back(text->get())};
    if (const auto* whole = node.as_integer()) return {.at = at, .value = whole->get()};
    if (const auto* number = node.as_floating_point()) return {.at = at, .value = number->get()};
    if (const auto* flag = node.as_boolean()) return {.at = at, .value = flag->get()};
    if (const auto* date = node.as_date()) return {.at = at, .value = day(date->get())};
    if (node.is_time()) return {.at = at, .value = Unused{"a time"}};
    return {.at = at, .value = Unused{"a date with a time"}};
}

/// The library recurses once a part of a dotted key and sets no bound of its own, so a megabyte of "a.a.a" would
/// overrun the stack. Finds the first row of names joined by dots that is longer than ours ever are.
std::optional<Place> long_key(std::string_view text) {
    Place at;
    int dots = 0;
    char before = ' ';  // the last character that is no blank
    bool blank_since = false;
    for (char c : text) {
        if (c == '\n') {
            ++at.line;
            dots = 0;
        }
        const bool blank = c == ' ' || c == '\t';
        if (c == '.' && before != '.') ++dots;
        if (std::string_view(",=[]{}").find(c) != std::string_view::npos) dots = 0;
        if (!blank && c != '.' && blank_since && before != '.') dots = 0;
        if (dots >= longest_key) return at;
        blank_since = blank;
        if (!blank) before = c;
    }
    return std::nullopt;
}

measure::Problem problem(const std::string& name, Place at, std::string key, std::string found, std::string allowed) {
    return {.file = name,
            .line = at.line,
            .column = at.column,
            .key = std::move(key),
            .found = std::move(found),
            .allowed = std::move(allowed)};
}

std::string escaped(char c) {
    if (c == '\n') return "\\n";
    if (c == '\t') return "\\t";
    return fmt::format("\\x{:02x}", static_cast<unsigned char>(c));
}

/// The place after a text.
Place end_of(std::string_view text) {
    const auto last_line = text.rfind('\n');
    const std::string_view line = last_line == std::string_view::npos ? text : text.substr(last_line + 1);
    return {.line = static_cast<int>(std::ranges::count(text, '\n')) + 1, .column = static_cast<int>(characters(line)) + 1};
}

bool misread(std::string_view text) {
    try {
        static_cast<void>(toml::parse(text));
    } catch (const toml::parse_error&) {
        return false;
    } catch (const Misread&) {
        return true;
    }
    return false;
}

/// Where the library misreads a text: it reads from front to back, so the shortest front part that it misreads ends there.
Place place_of_misreading(std::string_view text) {
    std::size_t fine = 0;
    std::size_t bad = text.size();
    while (bad - fine > 1) {
        const std::size_t middle = fine + (bad - fine) / 2;
        (misread(text.substr(0, middle)) ? bad : fine) = middle;
    }
    return end_of(text.substr(0, fine));
}

}  // namespace

std::string one_line(std::string_view text, std::size_t longest) {
    std::string line;
    std::size_t count = 0;
    for (char c : text) {
        if (starts_character(c) && ++count > longest) return line + "…";
        const auto code = static_cast<unsigned char>(c);
        line += code < 0x20 || code == 0x7F ? escaped(c) : std::string(1, c);
    }
    return line;
}

std::string shown(const Node& node) {
    return std::visit(
        measure::overloaded{
            [](const std::string& text) { return "\"" + one_line(text) + "\""; },
            [](std::int64_t whole) { return fmt::format("{}", whole); },
            [](double number) { return fmt::format("{}", number); },
            [](bool flag) { return std::string(flag ? "true" : "false"); },
            [](const measure::Day& date) { return measure::iso(date); },
            [](const Unused& unused) { return unused.what; },
            [](const List& list) { return list.size() == 1 ? "a list of 1 value" : fmt::format("a list of {} values", list.size()); },
            [](const Table&) { return std::string("a table"); },
        },
        node.value);
}

measure::Result<Node, Problems> parse(std::string_view text, const std::string& name) {
    if (text.size() > largest_file) {
        return Problems{problem(name, {}, "file", fmt::format("{} bytes", text.size()), fmt::format("at most {} bytes", largest_file))};
    }
    if (const auto at = no_utf8(text))
        return Problems{problem(name, end_of(text.substr(0, *at)), "toml", "bytes that are no UTF-8", "TOML 1.0")};
    if (const auto at = long_key(text)) {
        return Problems{problem(name, *at, "toml", "a key of very many parts", fmt::format("at most {} parts", longest_key))};
    }
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    const std::string safe = moved_up(text.substr(text.starts_with(byte_order_mark) ? byte_order_mark.size() : 0));
    try {
        Node root = converted_table(toml::parse(safe));
        root.at = {};
        return root;
    } catch (const toml::parse_error& error) {
        return Problems{
            problem(name, place(error.source()), "toml", one_line(moved_back(error.description()), longest_description), "TOML 1.0")};
    } catch (const Misread&) {
        return Problems{problem(name, place_of_misreading(safe), "toml", "no TOML from here on", "TOML 1.0")};
    }
}

}  // namespace intake
