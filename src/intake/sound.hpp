// What is said aloud: the unit's wishes, and those of them that a surgeon may have otherwise.
#pragma once

#include "intake/reading.hpp"

#include <optional>

namespace intake {

/// What the unit wants to hear; off unless it says so.
struct Sound {
    enum class Sutures { FromFifth, Every, None };
    bool on = false;
    int volume = 70;  // per cent
    Sutures sutures = Sutures::FromFifth;
    std::optional<int> suction_every_s{};
    bool awake = false;
    bool operator==(const Sound&) const = default;
};

/// "from-fifth" | "every" | "none": which sutures are said.
Rule<Sound::Sutures> sutures_said();
/// Seconds of suction from one call to the next: a multiple of 15 from 15 to 600; none: it is not said.
std::optional<int> read_suction_every(Fields& fields);

}  // namespace intake
