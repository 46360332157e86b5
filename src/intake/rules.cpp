#include "intake/rules.hpp"

#include "eye/frame.hpp"
#include "intake/utf8.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace intake {
namespace {

std::string numbers(Range range, const std::string& unit) {
    return fmt::format("a number from {} to {}{}{}", range.low, range.high, unit.empty() ? "" : " ", unit);
}

std::optional<double> within(const Node& node, Range range) {
    const auto value = finite(node);
    return value && *value >= range.low && *value <= range.high ? value : std::nullopt;
}

bool is_control(char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; }

bool one_line_of(const std::string& text, std::size_t longest) {
    if (text.empty()) return true;
    return characters(text) <= longest && text.front() != ' ' && text.back() != ' ' && std::ranges::none_of(text, is_control);
}

bool kebab(const std::string& text) {
    const auto good = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; };
    return !text.empty() && text.size() <= 60 && std::ranges::all_of(text, good) && text.front() != '-' && text.back() != '-' &&
           text.find("--") == std::string::npos;
}

/// A rule on text, told apart by a predicate.
template <class Good>
Rule<std::string> text_rule(const std::string& allowed, Good good) {
    return {.allowed = allowed, .read = [good](const Node& node) -> std::optional<std::string> {
                const auto* text = std::get_if<std::string>(&node.value);
                return text != nullptr && good(*text) ? std::optional(*text) : std::nullopt;
            }};
}

Rule<measure::Angle> angle(Range range) {
    return {.allowed = numbers(range, "degrees"), .read = [range](const Node& node) -> std::optional<measure::Angle> {
                const auto deg = within(node, range);
                return deg ? std::optional(measure::from_deg(*deg)) : std::nullopt;
            }};
}

}  // namespace

std::optional<double> finite(const Node& node) {
    if (const auto* whole = std::get_if<std::int64_t>(&node.value)) return static_cast<double>(*whole);
    const auto* number = std::get_if<double>(&node.value);
    return number != nullptr && std::isfinite(*number) ? std::optional(*number) : std::nullopt;
}

Rule<double> number(Range range, const std::string& unit) {
    return {.allowed = numbers(range, unit), .read = [range](const Node& node) { return within(node, range); }};
}

Rule<int> whole(int low, int high) {
    return {.allowed = fmt::format("a whole number from {} to {}", low, high), .read = [low, high](const Node& node) -> std::optional<int> {
                const auto value = within(node, {.low = static_cast<double>(low), .high = static_cast<double>(high)});
                return value && *value == std::floor(*value) ? std::optional(static_cast<int>(*value)) : std::nullopt;
            }};
}

Rule<measure::Length> millimetres(Range range) {
    return {.allowed = numbers(range, "mm"), .read = [range](const Node& node) -> std::optional<measure::Length> {
                const auto mm = within(node, range);
                return mm ? std::optional(measure::from_mm(*mm)) : std::nullopt;
            }};
}

Rule<measure::Length> micrometres(Range range) {
    return {.allowed = numbers(range, "um in whole tenths"), .read = [range](const Node& node) -> std::optional<measure::Length> {
                const auto um = within(node, range);
                if (!um || std::abs(*um * 10.0 - std::round(*um * 10.0)) > 1e-6) return std::nullopt;
                return measure::from_um_tenths(*um);
            }};
}

Rule<bool> flag() {
    return {.allowed = "true or false", .read = [](const Node& node) -> std::optional<bool> {
                const auto* value = std::get_if<bool>(&node.value);
                return value != nullptr ? std::optional(*value) : std::nullopt;
            }};
}

Rule<measure::Day> day() {
    return {.allowed = "a date without quotes, such as 2026-11-25", .read = [](const Node& node) -> std::optional<measure::Day> {
                const auto* date = std::get_if<measure::Day>(&node.value);
                return date != nullptr && measure::valid(*date) ? std::optional(*date) : std::nullopt;
            }};
}

Rule<std::string> line(std::size_t longest) {
    return text_rule(fmt::format("text of 1 to {} characters on one line, no blanks at its ends", longest),
                     [longest](const std::string& text) { return !text.empty() && one_line_of(text, longest); });
}

Rule<std::string> line_or_empty(std::size_t longest) {
    return text_rule(fmt::format("text of at most {} characters on one line, no blanks at its ends", longest),
                     [longest](const std::string& text) { return one_line_of(text, longest); });
}

Rule<std::string> id() { return text_rule("an id of small letters, digits and hyphens, such as \"first-four\"", kebab); }

Rule<measure::Angle> clock_hour() {
    return {.allowed = "an hour of the dial such as \"7:30\", from \"1:00\" to \"12:59\"",
            .read = [](const Node& node) -> std::optional<measure::Angle> {
                const auto* text = std::get_if<std::string>(&node.value);
                return text != nullptr ? eye::from_clock_text(*text) : std::nullopt;
            }};
}

Rule<measure::Angle> degrees() { return angle({.low = 0, .high = 360}); }

Rule<measure::Angle> turned_degrees() { return angle({.low = -360, .high = 360}); }

}  // namespace intake
