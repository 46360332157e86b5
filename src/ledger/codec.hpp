// Facts as text and back: a tag and canonical JSON (sorted keys, no spaces, shortest doubles that read back equal).
// Tags are explicit and never reused; fields are only ever added, so a missing key is the member's default and a key
// nobody knows is passed over. Lengths are whole nanometres, angles hundredths of a degree, days ISO text, enums words.
// Does not decide what a fact means.
#pragma once

#include "guide/fact.hpp"
#include "ledger/failure.hpp"
#include "measure/result.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace ledger {

struct Encoded {
    std::string tag{};
    std::string json{};
    bool operator==(const Encoded&) const = default;
};

Encoded encode(const guide::Fact& fact);
/// An unknown tag is Failure::Newer; an unknown word, a wrong type or broken JSON is Failure::Damaged.
measure::Result<guide::Fact, Failure> decode(std::string_view tag, std::string_view json);

std::string_view who_text(guide::Who who);
std::optional<guide::Who> who_from(std::string_view text);

}  // namespace ledger
