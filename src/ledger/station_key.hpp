// The station's Ed25519 key (RFC 8032): it signs closed cases. A text file of 64 hex digits, the seed, mode 0600, made when it
// is first needed. Whoever has the file can sign as this station; a lost file cannot be made again, and seals made with it
// still verify, because each bears its public key. A file that others may read is refused.
#pragma once

#include "ledger/chain.hpp"
#include "ledger/failure.hpp"
#include "measure/result.hpp"

#include <array>
#include <string>

namespace ledger {

using PublicKey = std::array<unsigned char, 32>;
using Signature = std::array<unsigned char, 64>;

struct Signed {
    PublicKey key{};
    Signature signature{};
};

measure::Result<Signed, Failure> sign(const Hash& hash, const std::string& key_path);
bool genuine(const Signed& by, const Hash& hash);
/// How people compare keys: the first 16 bytes of the key's BLAKE2b-256, in groups of four hex digits.
std::string fingerprint(const PublicKey& key);

}  // namespace ledger
