// What is said aloud: from what happened to phrases, by their ids. Never a bare number, and silence is the rule: a phrase for the
// blade's figure, for the next suture, for the suction clock at the unit's interval, and for what must stop a hand. From 'entered'
// to the fourth suture only the last kind. Pure; no sound is made here, and this is no alarm.
//
// Which phrases there are, and their words, stands in `phrases`: they are spoken into files when the program is built. Places, times
// and large numbers are put together of several, so that whatever a case may ask for can be said. With an awake
// patient the words of [say_awake] take the place of those that could frighten.
#pragma once

#include "guide/state.hpp"
#include "screen/words.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace screen {

using PhraseId = std::string;
using PhraseIds = std::vector<PhraseId>;

/// What a unit or a surgeon wants to hear.
struct VoiceWish {
    enum class Sutures { FromFifth, Every, None };
    Sutures sutures = Sutures::FromFifth;
    std::optional<int> suction_every_s{};  // none: the suction clock is not said
    bool awake = false;                    // the patient hears it too
};

/// What to say once these events, in order, have followed on the state before them.
PhraseIds call_outs(const guide::CaseState& before, std::span<const guide::Event> events, const VoiceWish& wish);
/// The suction time, when an interval of it has just been passed between two moments.
PhraseIds suction_call_out(const guide::CaseState& state, const guide::Instant& since, const guide::Instant& now, const VoiceWish& wish);

struct Phrase {
    PhraseId id{};
    std::string text{};
};
/// All phrases that call-outs can ask for, in the words of a language. "awake-ID" is there only where it differs from ID.
std::vector<Phrase> phrases(const Words& words);

}  // namespace screen
