#include "intake/utf8.hpp"

#include <algorithm>
#include <cstdint>

namespace intake {
namespace {

constexpr std::uint32_t plane_15 = 0xF0000;

/// How many bytes the character at the front takes; 0 where there is none.
std::size_t character_size(std::string_view text) {
    const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U; };
    const auto follows = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
    const unsigned lead = byte(0);
    const unsigned second = byte(1);
    if (lead < 0x80) return 1;
    if (lead >= 0xC2 && lead <= 0xDF) return follows(1) ? 2 : 0;
    if (lead >= 0xE0 && lead <= 0xEF) {
        const bool overlong = lead == 0xE0 && second < 0xA0;
        const bool surrogate = lead == 0xED && second > 0x9F;
        return follows(1) && follows(2) && !overlong && !surrogate ? 3 : 0;
    }
    const bool in_range = (lead > 0xF0 || second >= 0x90) && (lead < 0xF4 || second <= 0x8F);
    return lead >= 0xF0 && lead <= 0xF4 && in_range && follows(1) && follows(2) && follows(3) ? 4 : 0;
}

/// The code point of one whole character.
std::uint32_t code_point(std::string_view character) {
    const auto lead = static_cast<unsigned char>(character[0]);
    std::uint32_t code = character.size() == 1 ? lead : lead & (0x7FU >> character.size());
    for (char c : character.substr(1)) code = code << 6 | (static_cast<unsigned char>(c) & 0x3FU);
    return code;
}

/// UTF-8 of a code point from U+0080 on.
std::string encoded(std::uint32_t code) {
    const auto tail = [code](unsigned shift) { return static_cast<char>(0x80U | (code >> shift & 0x3FU)); };
    if (code < 0x800) return {static_cast<char>(0xC0U | code >> 6), tail(0)};
    if (code < 0x10000) return {static_cast<char>(0xE0U | code >> 12), tail(6), tail(0)};
    return {static_cast<char>(0xF0U | code >> 18), tail(12), tail(6), tail(0)};
}

/// Each character from `low` to `high` replaced by `to(its code point)`.
template <class To>
std::string replaced(std::string_view text, std::uint32_t low, std::uint32_t high, To to) {
    std::string out;
    out.reserve(text.size());
    while (!text.empty()) {
        const std::string_view character = text.substr(0, std::max<std::size_t>(1, character_size(text)));
        const std::uint32_t code = code_point(character);
        out += code >= low && code <= high ? encoded(to(code)) : std::string(character);
        text.remove_prefix(character.size());
    }
    return out;
}

}  // namespace

bool starts_character(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }

std::size_t characters(std::string_view text) { return static_cast<std::size_t>(std::ranges::count_if(text, starts_character)); }

std::optional<std::size_t> no_utf8(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t size = character_size(text.substr(at));
        if (size == 0) return at;
        at += size;
    }
    return std::nullopt;
}

std::string moved_up(std::string_view text) {
    return replaced(text, 0x80, 0xFFFF, [](std::uint32_t code) { return code + plane_15; });
}

std::string moved_back(std::string_view text) {
    return replaced(text, plane_15 + 0x80, plane_15 + 0xFFFF, [](std::uint32_t code) { return code - plane_15; });
}

}  // namespace intake
