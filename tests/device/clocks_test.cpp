#include "device/clocks.hpp"

#include <doctest/doctest.h>
#include <unistd.h>

#include <cstdlib>
#include <ctime>
#include <fstream>
#include <string>

using namespace device;

TEST_CASE("the boot clock grows and the boot stays the same") {
    const measure::Instant first = now();
    ::usleep(20'000);
    const measure::Instant second = now();
    CHECK(second.boottime_ms - first.boottime_ms >= 20);
    CHECK(second.boottime_ms - first.boottime_ms < 10'000);
    CHECK(first.boot == second.boot);
    CHECK(first.boot == boot());
    CHECK(first.boot != 0);
    CHECK(measure::elapsed(first, second).exact);
}

// proc(5): the first figure of /proc/uptime is the time since boot, suspend included (CLOCK_BOOTTIME).
TEST_CASE("the boot clock is the kernel's uptime") {
    double uptime_s = 0;
    std::ifstream("/proc/uptime") >> uptime_s;
    CHECK(static_cast<double>(now().boottime_ms) / 1000 == doctest::Approx(uptime_s).epsilon(0).scale(1).epsilon(0.5));
}

// The C library's clock and `date +%z`'s rule, read beside ours.
TEST_CASE("the wall clock and its offset are the system's") {
    const measure::Instant at = now();
    CHECK(std::llabs(at.utc_ms / 1000 - static_cast<long long>(std::time(nullptr))) <= 1);
    const std::time_t seconds = static_cast<std::time_t>(at.utc_ms / 1000);
    char offset[8] = "";
    std::tm local{};
    REQUIRE(::localtime_r(&seconds, &local) != nullptr);
    std::strftime(offset, sizeof offset, "%z", &local);
    const int hhmm = std::atoi(offset + 1);
    CHECK(std::abs(at.offset_min) == hhmm / 100 * 60 + hhmm % 100);
}

// The FNV authors' own test vectors for FNV-1a, 64 bits (isthe.com/chongo/tech/comp/fnv): "", "a", "foobar". From memory.
TEST_CASE("a boot id becomes a number by FNV-1a, never 0") {
    CHECK(boot_number("") == 0xcbf29ce484222325);
    CHECK(boot_number("a") == 0xaf63dc4c8601ec8c);
    CHECK(boot_number("foobar") == 0x85944171f73967e8);
    CHECK(boot_number("one boot") != boot_number("another boot"));
}
