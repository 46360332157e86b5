// A moment as the machine knew it, and the time between two of them.
// Wall time is kept with its offset for people; durations come from the boot clock, which counts through suspend and
// never jumps. Within one boot a duration is exact; across boots it goes by the wall clock and is said with "about".
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace measure {

struct Instant {
    std::int64_t utc_ms = 0;       // milliseconds since 1970-01-01T00:00:00Z
    int offset_min = 0;            // local time = UTC + offset
    std::int64_t boottime_ms = 0;  // CLOCK_BOOTTIME
    std::uint64_t boot = 0;        // which boot `boottime_ms` belongs to; 0 is none: the wall clock alone
    bool operator==(const Instant&) const = default;
};

struct Elapsed {
    std::int64_t ms = 0;  // never below 0
    bool exact = true;
    bool operator==(const Elapsed&) const = default;
};

Elapsed elapsed(const Instant& from, const Instant& to);
/// The same moment earlier by `ms`, on both clocks.
Instant earlier(Instant at, std::int64_t ms);

/// A calendar day without a time zone.
struct Day {
    int year = 0, month = 0, day = 0;
    auto operator<=>(const Day&) const = default;
};
bool valid(const Day& day);
/// Whole days from one day to the other, negative when `to` is earlier.
int days_between(const Day& from, const Day& to);
/// "2026-11-25", exactly ten characters; nothing else is a day.
std::optional<Day> day_from_iso(std::string_view text);
std::string iso(const Day& day);
/// The local day of an instant.
Day day_of(const Instant& at);

/// RFC 3339 section 5.6 with milliseconds and the offset kept; a leap second ":60" is read as the next second's start.
/// The boot clock of the result is unset (boot 0).
std::optional<Instant> instant_from_rfc3339(std::string_view text);
std::string rfc3339(const Instant& at);
/// Local "HH:MM" of an instant.
std::string hour_minute(const Instant& at);

}  // namespace measure
