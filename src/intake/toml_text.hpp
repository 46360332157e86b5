// Text as a TOML basic string.
#pragma once

#include <fmt/format.h>

#include <string>
#include <string_view>

namespace intake {

inline std::string quoted(std::string_view text) {
    std::string out = "\"";
    for (char c : text) {
        const auto code = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\') out += '\\';
        out += code < 0x20 || code == 0x7F ? fmt::format("\\u{:04X}", code) : std::string(1, c);
    }
    return out + "\"";
}

}  // namespace intake
