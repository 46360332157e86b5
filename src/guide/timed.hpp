// The moments of a case that a person may correct: a step done, a clock started or stopped, a suture tied. No rule stands here but
// between which other moments of its own kind one lies: of the clock, of the steps, of the sutures; and which moments one tap wrote.
#pragma once

#include "guide/state.hpp"

#include <optional>
#include <string>
#include <vector>

namespace guide {

struct Timed {
    enum class Is { Step, ClockOn, ClockOff, Suture };
    Is is{};
    std::string id{};  // of the step or the clock
    int n = 0;         // of the suture
    Seq seq = 0;
    Instant at{};                              // as corrected last
    Instant tapped{};                          // when it was written
    std::optional<Instant> after{}, before{};  // on its clock, or among the steps or sutures of other taps
    bool operator==(const Timed&) const = default;
};

/// Newest first, by the order in which they were written.
std::vector<Timed> timed(const CaseState& state);
std::optional<Timed> find_timed(const CaseState& state, Seq event);
/// The moments that the same tap wrote and that bear the same time now, this one first: one correction is of all of them.
std::vector<Timed> of_one_tap(const CaseState& state, const Timed& one);

/// One a tap, newest first: the suture, else the step, else the clock that it wrote first.
std::vector<Timed> one_a_tap(const CaseState& state);

}  // namespace guide
