// The clocks of the machine. What a moment means, and how two are compared, is measure's business.
#pragma once

#include "measure/instant.hpp"

#include <cstdint>
#include <string_view>

namespace device {

/// Wall clock, its offset here, CLOCK_BOOTTIME and which boot it is.
measure::Instant now();

/// Milliseconds of CLOCK_MONOTONIC: for gaps between presses, never for the record.
std::int64_t monotonic_ms();

/// Which boot this is: the kernel's boot id as 64 bits. 0 only when the kernel does not tell: the wall clock alone.
std::uint64_t boot();
/// FNV-1a over 64 bits, never 0.
std::uint64_t boot_number(std::string_view boot_id);

}  // namespace device
