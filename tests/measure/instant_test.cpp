#include "measure/instant.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace measure;

namespace {

std::int64_t utc(std::string_view text) {
    const auto at = instant_from_rfc3339(text);
    REQUIRE(at.has_value());
    return at->utc_ms;
}

}  // namespace

// RFC 3339 section 5.8, its five examples; the conversions are the standard's own prose.
TEST_CASE("the examples of RFC 3339 name the moments the standard says") {
    CHECK(utc("1985-04-12T23:20:50.52Z") == 482196050520);
    CHECK(utc("1996-12-19T16:39:57-08:00") == utc("1996-12-20T00:39:57Z"));
    CHECK(utc("1990-12-31T23:59:60Z") == utc("1991-01-01T00:00:00Z"));
    CHECK(utc("1990-12-31T15:59:60-08:00") == utc("1990-12-31T23:59:60Z"));
    CHECK(utc("1937-01-01T12:00:27.87+00:20") == utc("1937-01-01T11:40:27.87Z"));
}

// The change to summer time in Paris on 2025-03-30: the standard offset rules of RFC 3339, one second apart.
TEST_CASE("an offset that changes with the season does not stretch a second") {
    CHECK(utc("2025-03-30T03:00:00+02:00") - utc("2025-03-30T01:59:59+01:00") == 1000);
}

TEST_CASE("what is no RFC 3339 moment is refused") {
    const std::vector<std::string> bad{"2026-11-25T09:41:07",   "2026-11-25 09:41:07Z",  "2026-02-30T09:41:07Z", "2026-11-25T24:00:00Z",
                                       "2026-11-25T09:41Z",     "2026-11-25T09:41:07.Z", "2026-11-25T09:41:61Z", "26-11-25T09:41:07Z",
                                       "2026-11-25T09:41:07+1", "2026-11-25T09:41:07Zx"};
    for (const auto& text : bad) {
        CAPTURE(text);
        CHECK_FALSE(instant_from_rfc3339(text).has_value());
    }
}

TEST_CASE("a moment written and read again is the same moment with the same offset") {
    for (const std::string text : {"2026-11-25T09:41:07.250Z", "2026-11-25T09:41:07.250+01:00", "1969-12-31T23:59:59.999-08:30"}) {
        CAPTURE(text);
        CHECK(rfc3339(*instant_from_rfc3339(text)) == text);
    }
}

TEST_CASE("within one boot a duration is exact even when the wall clock jumps; across boots it says about") {
    const Instant start{.utc_ms = 1'000'000, .offset_min = 60, .boottime_ms = 5'000, .boot = 7};
    const Instant jumped{.utc_ms = 500'000, .offset_min = 60, .boottime_ms = 8'000, .boot = 7};
    CHECK(elapsed(start, jumped) == Elapsed{.ms = 3'000, .exact = true});
    const Instant other_boot{.utc_ms = 1'060'000, .offset_min = 60, .boottime_ms = 100, .boot = 8};
    CHECK(elapsed(start, other_boot) == Elapsed{.ms = 60'000, .exact = false});
    const Instant before{.utc_ms = 900'000, .offset_min = 60, .boottime_ms = 100, .boot = 8};
    CHECK(elapsed(start, before) == Elapsed{.ms = 0, .exact = false});
}

TEST_CASE("days are counted by the calendar") {
    CHECK(days_between({2026, 11, 12}, {2026, 11, 25}) == 13);
    CHECK(days_between({2024, 2, 28}, {2024, 3, 1}) == 2);
    CHECK_FALSE(day_from_iso("2023-02-29").has_value());
    CHECK(iso(*day_from_iso("2024-02-29")) == "2024-02-29");
}

TEST_CASE("the local day and clock follow the offset") {
    const auto at = *instant_from_rfc3339("2026-11-25T00:30:00+02:00");
    CHECK(iso(day_of(at)) == "2026-11-25");
    CHECK(hour_minute(at) == "00:30");
}
