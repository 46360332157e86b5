// What is kept of one case for figures over many: read off its folded state, small, and made again from the events at any time.
//
// A reach is one cut's depth over its nominal travel. It is there only where somebody measured the depth (guide::DepthMeasured, at the
// thinnest place, at right angles to the surface) after a cut of one seating; a cut that entered has no depth to measure.
#pragma once

#include "guide/state.hpp"

#include <optional>
#include <string>
#include <vector>

namespace past {

using measure::Day;
using measure::Length;

struct Timed {
    std::string id{};  // a phase or a clock
    std::int64_t ms = 0;
    bool exact = true;
    bool operator==(const Timed&) const = default;
};

/// The cut as it was counted; none of these where the ring was never put on.
struct Cut {
    std::optional<guide::CutEnd> end{};
    int seatings = 0;
    int position = 0;              // spokes below zero at the end of the last seating
    std::optional<int> planned{};  // with the surgeon's moves; none: to entry, or no plan
    Length travel{};
    std::optional<Length> thinnest{}, depth{};  // of the plan; as measured after the cut
    bool operator==(const Cut&) const = default;
};

struct Held {  // a scanned or planned item
    guide::Item item{};
    bool used = false;
    bool operator==(const Held&) const = default;
};

struct Summary {
    std::string reference{};
    Day day{};
    eye::Side side{};
    plan::Reason reason{};
    bool invented = false;
    std::string trephine{};  // the profile's id
    Length host{}, donor{};
    std::optional<guide::CaseEnd> end{};  // none: not over
    std::vector<Timed> times{};           // clocks and phases that ran and have stopped, by id
    std::optional<Cut> cut{};
    std::vector<std::string> departures{};  // ids, each once
    int counts = 0, counts_differed = 0;    // checks by one person; those that saw another number than expected
    std::vector<Held> items{};
    bool operator==(const Summary&) const = default;
};

Summary summary(const guide::CaseState& state);

/// Depth over travel; none unless it was measured after a reliable cut.
std::optional<double> reach(const Summary& one);
/// Travel over the thinnest wall at the end of a reliable cut.
std::optional<double> share_at_end(const Summary& one);

/// What the other cases of the station say of items, for a decision on a scan in `own`. Rehearsals and cases do not see each other.
std::vector<guide::Elsewhere> elsewhere(const std::vector<Summary>& all, const std::string& own, bool invented);

}  // namespace past
