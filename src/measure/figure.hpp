// How a language writes a number: its decimal sign and what parts thousands (ISO 80000-1, 7.3). A figure is made with a point by
// whoever knows how many places are meant; here alone it is put into the style of the reader's language.
#pragma once

#include <string>

namespace measure {

struct NumberStyle {
    std::string decimal = ".";
    std::string group{};  // between groups of three figures, from five before the decimal sign on; empty: none
    bool operator==(const NumberStyle&) const = default;
};

/// "+0.25", "62.5" or "10000" in a style, also one or the other, "7.25 / 7.50". What is no plain figure (a date, an hour, a name) comes
/// back as it is.
std::string figure(std::string written, const NumberStyle& style);

}  // namespace measure
