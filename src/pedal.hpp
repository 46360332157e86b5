// A foot switch as a source of the count: a pedal that types a key. It has a bounce filter of its own, since a foot is slower than
// a finger and contacts chatter. Pure.
#pragma once

#include "device/events.hpp"
#include "intake/unit.hpp"

#include <optional>

namespace graftside {

class Pedal {
public:
    explicit Pedal(intake::FootSwitch set) : set_(std::move(set)) {}

    /// Whether the key is the pedal's.
    bool is(const device::Key& key) const;
    /// What a press at a time is: nothing while it is held down; too soon, it is taken for the same foot.
    enum class Press { Counts, Bounced, HeldDown };
    Press press(const device::Key& key);

private:
    intake::FootSwitch set_;
    std::optional<std::int64_t> last_ms_{};
};

}  // namespace graftside
