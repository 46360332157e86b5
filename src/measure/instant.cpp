#include "measure/instant.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>

namespace measure {
namespace {

constexpr std::int64_t ms_a_minute = 60'000;
constexpr std::int64_t ms_a_day = 86'400'000;

std::chrono::year_month_day calendar(const Day& day) {
    return std::chrono::year{day.year} / std::chrono::month{static_cast<unsigned>(day.month)} /
           std::chrono::day{static_cast<unsigned>(day.day)};
}

std::int64_t day_number(const Day& day) { return std::chrono::sys_days{calendar(day)}.time_since_epoch().count(); }

/// Two, three or four digits at `from`; nothing if any character is no digit or the text is too short.
std::optional<int> digits(std::string_view text, std::size_t from, std::size_t count) {
    if (text.size() < from + count) return std::nullopt;
    int value = 0;
    for (char c : text.substr(from, count)) {
        if (c < '0' || c > '9') return std::nullopt;
        value = value * 10 + (c - '0');
    }
    return value;
}

std::int64_t local_ms(const Instant& at) { return at.utc_ms + at.offset_min * ms_a_minute; }

std::int64_t floor_div(std::int64_t a, std::int64_t b) { return a / b - (a % b < 0 ? 1 : 0); }

struct Offset {
    int minutes = 0;
};

std::optional<Offset> offset_from(std::string_view text) {
    if (text == "Z" || text == "z") return Offset{};
    if (text.size() != 6 || (text[0] != '+' && text[0] != '-') || text[3] != ':') return std::nullopt;
    const auto hour = digits(text, 1, 2);
    const auto minute = digits(text, 4, 2);
    if (!hour || !minute || *hour > 23 || *minute > 59) return std::nullopt;
    const int size = *hour * 60 + *minute;
    return Offset{text[0] == '-' ? -size : size};
}

}  // namespace

Elapsed elapsed(const Instant& from, const Instant& to) {
    const bool exact = from.boot == to.boot && from.boot != 0;
    const std::int64_t ms = exact ? to.boottime_ms - from.boottime_ms : to.utc_ms - from.utc_ms;
    return {.ms = std::max<std::int64_t>(0, ms), .exact = exact};
}

Instant earlier(Instant at, std::int64_t ms) {
    at.utc_ms -= ms;
    at.boottime_ms -= ms;
    return at;
}

bool valid(const Day& day) { return day.month > 0 && day.day > 0 && calendar(day).ok(); }

int days_between(const Day& from, const Day& to) { return static_cast<int>(day_number(to) - day_number(from)); }

std::optional<Day> day_from_iso(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    const auto year = digits(text, 0, 4);
    const auto month = digits(text, 5, 2);
    const auto day = digits(text, 8, 2);
    if (!year || !month || !day) return std::nullopt;
    const Day read{.year = *year, .month = *month, .day = *day};
    return valid(read) ? std::optional(read) : std::nullopt;
}

std::string iso(const Day& day) { return fmt::format("{:04}-{:02}-{:02}", day.year, day.month, day.day); }

Day day_of(const Instant& at) {
    const std::chrono::sys_days days{std::chrono::days{floor_div(local_ms(at), ms_a_day)}};
    const std::chrono::year_month_day date{days};
    return {.year = int{date.year()}, .month = static_cast<int>(unsigned{date.month()}), .day = static_cast<int>(unsigned{date.day()})};
}

std::optional<Instant> instant_from_rfc3339(std::string_view text) {
    if (text.size() < 20 || (text[10] != 'T' && text[10] != 't') || text[13] != ':' || text[16] != ':') return std::nullopt;
    const auto day = day_from_iso(text.substr(0, 10));
    const auto hour = digits(text, 11, 2);
    const auto minute = digits(text, 14, 2);
    const auto second = digits(text, 17, 2);
    if (!day || !hour || !minute || !second || *hour > 23 || *minute > 59 || *second > 60) return std::nullopt;
    std::size_t next = 19;
    std::int64_t fraction_ms = 0;
    if (text[next] == '.') {
        const std::size_t first = ++next;
        while (next < text.size() && text[next] >= '0' && text[next] <= '9') ++next;
        if (next == first) return std::nullopt;
        const std::string padded = std::string(text.substr(first, std::min<std::size_t>(3, next - first))) + "00";
        fraction_ms = digits(padded, 0, 3).value_or(0);
    }
    const auto offset = offset_from(text.substr(next));
    if (!offset) return std::nullopt;
    const std::int64_t local = day_number(*day) * ms_a_day + (*hour * 3600LL + *minute * 60LL + *second) * 1000 + fraction_ms;
    return Instant{.utc_ms = local - offset->minutes * ms_a_minute, .offset_min = offset->minutes, .boottime_ms = 0, .boot = 0};
}

std::string rfc3339(const Instant& at) {
    const std::int64_t local = local_ms(at);
    const std::int64_t in_day = local - floor_div(local, ms_a_day) * ms_a_day;
    const std::string clock = fmt::format("{}T{:02}:{:02}:{:02}.{:03}", iso(day_of(at)), in_day / 3'600'000, in_day / 60'000 % 60,
                                          in_day / 1000 % 60, in_day % 1000);
    if (at.offset_min == 0) return clock + "Z";
    const int size = std::abs(at.offset_min);
    return fmt::format("{}{}{:02}:{:02}", clock, at.offset_min < 0 ? '-' : '+', size / 60, size % 60);
}

std::string hour_minute(const Instant& at) {
    const std::int64_t local = local_ms(at);
    const std::int64_t minutes = (local - floor_div(local, ms_a_day) * ms_a_day) / ms_a_minute;
    return fmt::format("{:02}:{:02}", minutes / 60, minutes % 60);
}

}  // namespace measure
