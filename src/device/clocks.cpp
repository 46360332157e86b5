#include "device/clocks.hpp"

#include "device/files.hpp"

#include <ctime>

namespace device {
namespace {

std::int64_t milliseconds(clockid_t clock) {
    timespec at{};
    measure::expect(::clock_gettime(clock, &at) == 0);
    return std::int64_t{at.tv_sec} * 1000 + at.tv_nsec / 1'000'000;
}

int offset_min(std::int64_t utc_ms) {
    const std::time_t seconds = utc_ms / 1000;
    std::tm local{};
    measure::expect(::localtime_r(&seconds, &local) != nullptr);
    return static_cast<int>(local.tm_gmtoff / 60);
}

}  // namespace

measure::Instant now() {
    static const std::uint64_t this_boot = boot();  // the boot cannot change while we run
    const std::int64_t utc_ms = milliseconds(CLOCK_REALTIME);
    return {.utc_ms = utc_ms, .offset_min = offset_min(utc_ms), .boottime_ms = milliseconds(CLOCK_BOOTTIME), .boot = this_boot};
}

std::int64_t monotonic_ms() { return milliseconds(CLOCK_MONOTONIC); }

std::uint64_t boot() {
    const auto id = read_file("/proc/sys/kernel/random/boot_id", 256);
    return id && !id->empty() ? boot_number(std::string_view(*id).substr(0, id->find('\n'))) : 0;
}

std::uint64_t boot_number(std::string_view boot_id) {
    std::uint64_t hash = 0xcbf29ce484222325;  // FNV-1a: offset basis and prime for 64 bits
    for (const char c : boot_id) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3;
    return hash == 0 ? 1 : hash;
}

}  // namespace device
