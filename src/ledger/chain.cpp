#include "ledger/chain.hpp"

#include "ledger/codec.hpp"

#include <sodium.h>

#include <algorithm>

namespace ledger {
namespace {

class Hasher {
public:
    Hasher() { crypto_generichash_init(&state_, nullptr, 0, Hash{}.size()); }
    void bytes(const unsigned char* data, std::size_t size) { crypto_generichash_update(&state_, data, size); }
    void field(std::string_view text) {
        const std::string framed = std::to_string(text.size()) + ':' + std::string(text) + ',';
        bytes(reinterpret_cast<const unsigned char*>(framed.data()), framed.size());
    }
    Hash done() {
        Hash hash{};
        crypto_generichash_final(&state_, hash.data(), hash.size());
        return hash;
    }

private:
    crypto_generichash_state state_{};
};

int nibble(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    return c >= 'a' && c <= 'f' ? c - 'a' + 10 : -1;
}

}  // namespace

Hash hash_of(const Row& row) {
    Hasher hasher;
    hasher.bytes(row.prev.data(), row.prev.size());
    hasher.field(row.reference);
    hasher.field(std::to_string(row.seq));
    hasher.field(std::to_string(row.at.utc_ms));
    hasher.field(std::to_string(row.at.offset_min));
    hasher.field(std::to_string(row.at.boottime_ms));
    hasher.field(std::to_string(row.at.boot));
    hasher.field(row.who);
    hasher.field(row.tag);
    hasher.field(row.body);
    return hasher.done();
}

Row chained(std::string_view reference, const guide::Event& event, const Tail& on) {
    Encoded fact = encode(event.fact);
    Row row{.reference = std::string(reference),
            .seq = event.seq,
            .at = event.at,
            .who = std::string(who_text(event.who)),
            .tag = std::move(fact.tag),
            .body = std::move(fact.json),
            .prev = on.hash};
    row.hash = hash_of(row);
    return row;
}

std::optional<std::string> fault(const Row& row, const Tail& on) {
    if (row.seq != on.seq + 1) return "missing";
    if (row.prev != on.hash) return "does not follow the event before it";
    if (row.hash != hash_of(row)) return "changed since it was written";
    return std::nullopt;
}

measure::Result<guide::Event, Failure> event_of(const Row& row) {
    const auto who = who_from(row.who);
    if (!who) return Failure{.what = Failure::What::Damaged, .detail = "nobody is called \"" + row.who + "\""};
    auto fact = decode(row.tag, row.body);
    if (!fact) return fact.error();
    return guide::Event{.seq = row.seq, .at = row.at, .who = *who, .fact = *std::move(fact)};
}

std::string hex(std::span<const unsigned char> bytes) {
    std::string text;
    for (unsigned char byte : bytes) {
        text += "0123456789abcdef"[byte >> 4];
        text += "0123456789abcdef"[byte & 15];
    }
    return text;
}

bool from_hex(std::string_view text, std::span<unsigned char> into) {
    if (text.size() != 2 * into.size() || std::any_of(text.begin(), text.end(), [](char c) { return nibble(c) < 0; })) return false;
    for (std::size_t i = 0; i < into.size(); ++i) into[i] = static_cast<unsigned char>(nibble(text[2 * i]) * 16 + nibble(text[2 * i + 1]));
    return true;
}

}  // namespace ledger
