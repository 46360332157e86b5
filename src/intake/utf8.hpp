// UTF-8 (RFC 3629) as the reader needs it: where it breaks, how many characters it has, and a detour round the TOML library.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace intake {

/// Characters (code points) of UTF-8 text.
std::size_t characters(std::string_view text);
bool starts_character(char byte);
/// The byte at which text stops being UTF-8.
std::optional<std::size_t> no_utf8(std::string_view text);

/// Each character from U+0080 to U+FFFF moved up to plane 15, one for one. Outside strings, and after an escaped line end in
/// them, the TOML library looks such a character up in a table with holes, where it runs into undefined behaviour ("ö = 1");
/// it never looks up the planes above. `text` must be UTF-8.
std::string moved_up(std::string_view text);
/// The same characters moved back.
std::string moved_back(std::string_view text);

}  // namespace intake
