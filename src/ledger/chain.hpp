// Events as rows that are chained by hashes: every row bears the hash of the row before it in its case.
// hash = BLAKE2b-256 (RFC 7693) over the 32 bytes of `prev`, then for each of case, seq, utc_ms, offset_min, boottime_ms,
// boot, who, tag and body in this order: its length in bytes as decimal text, ':', the text, ','. Numbers are decimal text.
// The first event of a case has a `prev` of zeros. The hash is made from the bytes kept, never from a re-encoded event.
#pragma once

#include "guide/fact.hpp"
#include "ledger/failure.hpp"
#include "measure/result.hpp"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace ledger {

using Hash = std::array<unsigned char, 32>;

struct Row {
    std::string reference{};
    guide::Seq seq = 0;
    measure::Instant at{};
    std::string who{}, tag{}, body{};
    Hash prev{}, hash{};
    bool operator==(const Row&) const = default;
};

/// The last row of a case: what the next one chains on.
struct Tail {
    guide::Seq seq = 0;
    Hash hash{};
    bool operator==(const Tail&) const = default;
};

Row chained(std::string_view reference, const guide::Event& event, const Tail& on);
Hash hash_of(const Row& row);
/// What is wrong with a row that should follow `on`; nothing if it is whole.
std::optional<std::string> fault(const Row& row, const Tail& on);
measure::Result<guide::Event, Failure> event_of(const Row& row);

std::string hex(std::span<const unsigned char> bytes);
/// Exactly as many bytes as `into` holds, in lower-case hex.
bool from_hex(std::string_view text, std::span<unsigned char> into);

}  // namespace ledger
