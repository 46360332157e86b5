// A surgeon's habits, from which a new case begins. They are a beginning and no plan: each is seen in the form, can be changed there,
// and the plan is agreed as ever.
//
// surgeon      initials or a word; it makes the file what it is
// seat, pattern, first: as in a case file
// share, spokes, goal: at most one of them, as in a case's [aim]; spokes is the surgeon's own number
// language     a wording file, instead of the unit's
// volume       0 to 100 per cent, where the unit has a voice
// say_sutures, suction_every_s: what is said of them, as sutures and suction_every_s in a unit's [sound]
#pragma once

#include "intake/sound.hpp"
#include "measure/problem.hpp"
#include "measure/result.hpp"
#include "plan/inputs.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace intake {

struct SurgeonFile {
    std::string surgeon{};
    std::optional<eye::Seat> seat{};
    std::optional<plan::Pattern> pattern{};
    std::optional<measure::Angle> first{};
    std::optional<plan::Aim> aim{};
    std::optional<std::string> language{};
    std::optional<int> volume{};
    std::optional<Sound::Sutures> say_sutures{};
    std::optional<int> suction_every_s{};
    bool operator==(const SurgeonFile&) const = default;
};

/// The unit's wishes for the voice, as this surgeon would have them. Whether there is a voice, and whether the patient is awake, stays the
/// unit's.
Sound heard_by(const SurgeonFile& surgeon, Sound sound);

measure::Result<SurgeonFile, measure::Problems> read_surgeon(std::string_view text, const std::string& name);

}  // namespace intake
