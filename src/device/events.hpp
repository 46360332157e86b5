// What comes from finger, mouse and keyboard, in the order in which it happened. A press bears its own place and time;
// what it hits, and whether it counts, is decided elsewhere.
#pragma once

#include <cstdint>
#include <variant>
#include <vector>

namespace device {

/// The main button or the first finger goes down. A palm or several fingers arrive as one pointer.
struct Pressed {
    double x_mm = 0, y_mm = 0;  // from the upper left corner of the window
    std::int64_t time_ms = 0;   // on the clock of monotonic_ms(): for gaps between presses
    std::int64_t age_ms = 0;    // how long before it was handed over: the record's time is measure::earlier(now(), age_ms)
    bool time_exact = false;    // true: the display server's own time; false: when we got to it, late in a slow frame
    bool operator==(const Pressed&) const = default;
};
struct Released {
    double x_mm = 0, y_mm = 0;
    std::int64_t time_ms = 0;
    bool operator==(const Released&) const = default;
};
/// A pointer that is down has moved: only the newest place, once a poll.
struct Moved {
    double x_mm = 0, y_mm = 0;
    bool operator==(const Moved&) const = default;
};
/// A character as typed, in the keyboard's layout. Ctrl+] arrives as U+001D: the group separator of a scan.
struct Character {
    char32_t code = 0;
    std::int64_t time_ms = 0;
    bool repeated = false;  // the key is held down
    bool operator==(const Character&) const = default;
};

enum class KeyName {
    Letter,
    Enter,
    Escape,
    Backspace,
    Delete,
    Insert,
    Tab,
    Space,
    Left,
    Right,
    Up,
    Down,
    Home,
    End,
    PageUp,
    PageDown,
    Function
};
/// A key goes down, or repeats. Text is read from Character; this is for commands.
struct Key {
    KeyName name{};
    char letter = 0;   // Letter: 'A' to 'Z', '0' to '9'
    int function = 0;  // Function: 1 to 24
    bool control = false, shift = false, alt = false, repeated = false;
    std::int64_t time_ms = 0;
    bool operator==(const Key&) const = default;
};
/// A key is let go: for what is held.
struct KeyUp {
    bool operator==(const KeyUp&) const = default;
};
struct Resized {
    int width_px = 0, height_px = 0;
    bool operator==(const Resized&) const = default;
};
/// What stood on the glass is lost, for example after another window lay over it: draw the last frame again.
struct Exposed {
    bool operator==(const Exposed&) const = default;
};
/// A screen was plugged in or pulled out: seat the windows anew.
struct ScreensChanged {
    bool operator==(const ScreensChanged&) const = default;
};
/// The system asks the window to close.
struct Closed {
    bool operator==(const Closed&) const = default;
};

using Event = std::variant<Pressed, Released, Moved, Character, Key, KeyUp, Resized, Exposed, ScreensChanged, Closed>;
using Events = std::vector<Event>;

}  // namespace device
