#include "intake/scan_parts.hpp"

#include <charconv>

namespace intake::scan {
namespace {

constexpr bool leap(int year) { return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0; }

}  // namespace

std::optional<int> number(std::string_view digits) {
    constexpr std::size_t most = 9;  // fits an int
    if (digits.empty() || digits.size() > most || !all(digits, is_digit)) return std::nullopt;
    int value = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), value);
    return value;
}

int mod_37_2(std::string_view text) {
    int p = 0;
    for (const char c : text) p = (p + (is_digit(c) ? c - '0' : c - 'A' + 10)) * 2 % 37;
    return (38 - p) % 37;
}

bool gs1_check_holds(std::string_view digits) {
    int sum = 0, weight = 1;
    for (auto c = digits.rbegin(); c != digits.rend(); ++c, weight = 4 - weight) sum += weight * (*c - '0');
    return sum % 10 == 0;
}

std::optional<measure::Day> day_from_ordinal(std::string_view text) {
    const auto digits = number(text);
    if (text.size() != 6 || !digits || text[0] != '0') return std::nullopt;
    const int year = 2000 + *digits / 1000;
    int day = *digits % 1000;
    if (day < 1 || day > (leap(year) ? 366 : 365)) return std::nullopt;
    int month = 1;
    const auto length = [&] {
        int days = 28;
        while (measure::valid({year, month, days + 1})) ++days;
        return days;
    };
    for (; day > length(); ++month) day -= length();
    return measure::Day{year, month, day};
}

std::optional<measure::Day> day_from_digits(std::string_view text) {
    const auto digits = number(text);
    if (text.size() != 8 || !digits) return std::nullopt;
    const measure::Day day{*digits / 10'000, *digits / 100 % 100, *digits % 100};
    return measure::valid(day) ? std::optional(day) : std::nullopt;
}

bool is_donation_number(std::string_view text) {
    constexpr std::size_t facility = 5, whole = 13;
    const auto in_facility = [](char c) { return is_alnum(c) && c != 'O'; };
    return text.size() == whole && text[0] != '0' && all(text.substr(0, facility), in_facility) && all(text.substr(facility), is_digit);
}

}  // namespace intake::scan
