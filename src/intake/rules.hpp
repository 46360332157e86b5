// What a single value may be, each rule with the words that tell a person so.
// A number may be written as integer or float; nan and inf are refused everywhere.
#pragma once

#include "intake/document.hpp"
#include "measure/angle.hpp"
#include "measure/length.hpp"

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace intake {

template <class T>
struct Rule {
    std::string allowed{};
    std::function<std::optional<T>(const Node&)> read{};
};

struct Range {
    double low = 0, high = 0;
};

/// A number from low to high, both included; `unit` is for the message.
Rule<double> number(Range range, const std::string& unit);
Rule<int> whole(int low, int high);
Rule<measure::Length> millimetres(Range range);
/// Micrometres in whole tenths.
Rule<measure::Length> micrometres(Range range);
Rule<bool> flag();
/// A TOML date, not a date in quotes.
Rule<measure::Day> day();
/// Text of 1 to `longest` characters on one line, without blanks at its ends.
Rule<std::string> line(std::size_t longest);
/// The same, but it may be empty.
Rule<std::string> line_or_empty(std::size_t longest);
/// kebab-case: small letters, digits, single hyphens between.
Rule<std::string> id();
/// An hour of the dial as "7:30".
Rule<measure::Angle> clock_hour();
/// Degrees from 0 to 360 as one faces the eye, 0 at 3 o'clock, counter-clockwise.
Rule<measure::Angle> degrees();
/// Degrees from -360 to 360, counter-clockwise positive.
Rule<measure::Angle> turned_degrees();

/// One of the words, for the value it stands for.
template <class T>
using WordsFor = std::vector<std::pair<std::string, T>>;

template <class T>
Rule<T> one_of(const WordsFor<T>& words) {
    std::string allowed;
    for (const auto& [word, value] : words) allowed += (allowed.empty() ? "\"" : ", \"") + word + "\"";
    return {.allowed = allowed, .read = [words](const Node& node) -> std::optional<T> {
                const auto* text = std::get_if<std::string>(&node.value);
                for (const auto& [word, value] : words) {
                    if (text != nullptr && *text == word) return value;
                }
                return std::nullopt;
            }};
}

/// The word that stands for a value; every value of ours has one.
template <class T>
std::string word_for(const WordsFor<T>& words, const T& value) {
    for (const auto& [word, meaning] : words) {
        if (meaning == value) return word;
    }
    return {};
}

/// A finite number, written as integer or float.
std::optional<double> finite(const Node& node);

}  // namespace intake
