// A reader that types like a keyboard ("keyboard wedge"): keys with their times to a scan or to typing. Pure; the keys and their
// times come from outside. What a scan says is read by intake/scan.hpp.
//
// Keys less than 50 ms apart are one burst; a burst of six or more is a scan, anything else is typing (our own limits, no
// source: a reader sends a key in a few ms, a fast typist in about 80). Enter ends a scan and is not part of it. GS comes as Ctrl+].
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace intake {

struct Key {
    enum class Is { Character, Gs, Enter } is{};
    char32_t character = 0;  // Character only
    std::int64_t at_ms = 0;
    bool operator==(const Key&) const = default;
};

struct Heard {
    enum class Is { Scan, Typing } is{};
    std::string text{};  // UTF-8; Enter in typing is "\n"
    bool operator==(const Heard&) const = default;
};

/// Keys that may still be part of a scan.
struct Burst {
    std::string text{};
    int keys = 0;
    std::int64_t last_ms = 0;
    bool operator==(const Burst&) const = default;
};

/// Takes a key into the burst; what the key has ended is heard.
std::vector<Heard> hear(Burst& burst, const Key& key);
/// What has ended because no key came; asked while the burst holds anything.
std::optional<Heard> hear_silence(Burst& burst, std::int64_t now_ms);

/// To be scanned once: every character that some keyboard layout or Caps Lock puts elsewhere, and GS.
inline constexpr std::string_view layout_test = "=<>&%+*,;/]}\x1dQWERTYAZMqwertyazm0123456789";

struct LayoutVerdict {
    bool right = false;
    bool gs_lost = false;                                      // all else is right: the reader does not send GS as Ctrl+]
    std::vector<std::pair<std::string, std::string>> wrong{};  // character wanted, character that came
    bool operator==(const LayoutVerdict&) const = default;
};
/// None when what came is no scan of the test: too many characters are missing to tell.
std::optional<LayoutVerdict> judge_layout(std::string_view came);

}  // namespace intake
