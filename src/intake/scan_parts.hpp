// What the readers of the symbols share: character classes, check characters, days. Of the scan files, and of whoever reads the same
// numbers.
#pragma once

#include "guide/label.hpp"

#include <algorithm>
#include <optional>
#include <string_view>

namespace intake::scan {

constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }
constexpr bool is_capital(char c) { return c >= 'A' && c <= 'Z'; }
constexpr bool is_alnum(char c) { return is_digit(c) || is_capital(c); }

template <class Is>
bool all(std::string_view text, Is is) {
    return std::all_of(text.begin(), text.end(), is);
}

/// A number of at most nine digits; none when anything else is in it.
std::optional<int> number(std::string_view digits);

/// ISO/IEC 7064 MOD 37-2 over capitals and digits: 0 to 36, as 0-9 A-Z *.
int mod_37_2(std::string_view text);
/// The last digit is the GS1 check digit of those before it: weights 3, 1, 3 … from the right.
bool gs1_check_holds(std::string_view digits);

/// "cyyjjj": century (0: 20xx; no other can be told), year, day of the year.
std::optional<measure::Day> day_from_ordinal(std::string_view text);
/// "yyyymmdd"
std::optional<measure::Day> day_from_digits(std::string_view text);

/// Structure of a donation number: 'O' is never in its facility number.
bool is_donation_number(std::string_view text);

/// The three readers; each is given the whole symbol.
guide::Label read_isbt(std::string_view bytes);
guide::Label read_typed(std::string_view text);
guide::Label read_gs1(std::string_view elements, const measure::Day& today);

std::optional<guide::EuropeanCode> european_code(std::string_view forty);

}  // namespace intake::scan
