// When a finger on the glass counts. Pure: what happened and when goes in, what it means comes out; nothing depends on how
// often frames are drawn. A tap counts on press, once a press, and dragging off does not take it back. What cannot be undone
// asks for a hold of 0.8 s. A press so soon after the last at the same place that it must be the same finger is not
// counted but told, since a swallowed real tap is the dangerous way: 110 ms on spokes (a catch-up double tap takes about
// 150 ms), 2 s on what closes a step, where a second touch would hit the next label, 300 ms elsewhere. A spoke that stands
// where a step was closed waits for the end of a double tap alone, 500 ms: after two seconds the blade may well have turned.
// A palm or several fingers arrive as presses in quick succession at several places: the first counts, the others are told.
// Nobody's finger goes from one target to another within 80 ms.
// Common practice for resistive and draped screens, no source; the times are the project's.
#pragma once

#include "screen/frame.hpp"

#include <cstdint>
#include <optional>
#include <variant>
#include <vector>

namespace screen {

struct Nothing {
    bool operator==(const Nothing&) const = default;
};
struct Counted {
    Target target{};
};
struct Bounced {
    Target target{};
};
using Outcome = std::variant<Nothing, Counted, Bounced>;

inline constexpr std::int64_t hold_ms = 800;
inline constexpr std::int64_t flash_ms = 150;
inline constexpr std::int64_t palm_ms = 80;
inline constexpr std::int64_t double_tap_ms = 500;
inline constexpr double slip_mm = 8;  // a hold lives this far outside its target

class Touch {
public:
    /// A press at a place, matched with the targets last shown.
    Outcome press(const std::vector<Touchable>& shown, picture::Point at, std::int64_t time_ms);
    /// The key of a target goes down: as a press, without a place.
    Outcome press(const Target& target, std::int64_t time_ms);
    void move(picture::Point at);
    /// Lifted at a time: a hold that was long enough by then is done, however late the lifting is told.
    Outcome release(std::int64_t time_ms);
    /// Time passes: a hold may be long enough now.
    Outcome tick(std::int64_t time_ms);

    /// What is to be seen of it at a time.
    Finger finger(std::int64_t time_ms) const;
    /// Something of it changes with time: frames are wanted.
    bool lively(std::int64_t time_ms) const;

private:
    struct Last {
        Target target{};
        picture::Box box{};
        std::int64_t time_ms = 0;
    };
    struct Held {
        Target target{};
        picture::Box box{};
        std::int64_t since_ms = 0;
    };
    void count(const Target& target, const picture::Box& box, std::int64_t time_ms);

    std::optional<Last> last_{};
    std::optional<Held> held_{};
    std::optional<std::int64_t> hand_ms_{};  // when the hand was last on a live target
};

/// How long after one target a press at its place, on what stands there now, is taken for the same finger.
std::int64_t refractory_ms(const Target& last, const Target& now);

}  // namespace screen
