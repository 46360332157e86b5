// The only place rules live. Refused is what nobody may do now; what has already happened to the eye is never refused:
// it counts, and a reason is owed.
#pragma once

#include "guide/state.hpp"
#include "measure/result.hpp"

#include <string>
#include <vector>

namespace guide {

enum class Refused {
    CaseClosed,
    AlreadyDone,
    WrongStep,
    DepartureOpen,
    GateShut,
    NotZeroed,
    NotRaised,
    NoSuction,
    CountHeldElsewhere,
    NothingToUndo,
    MarkTaken,
    CountDiffers,
    NoDifference,
    ReasonOwed,
    NeedsSecondPerson,
    NeedsSurgeon,
    NeedsReason,
    SideDiffers,
    PlanRefused,
    ScanStands,
    TissueUnfit,
    TwoTissues,
    NeverOverruled,
    NeedsContact,
    NeedsName,
    NeedsText,
    NeedsLabel,
    LabelDiffers,
    EyeNotOpened,
    NoSuture,
    DepthOutOfRange,
    NoPlan,
    EyeOpen,
    TimeOutOfRange,
    UnknownId
};

/// The words are under "refused.<kebab-case>", with `values` put in.
struct Refusal {
    Refused why{};
    std::vector<std::string> values{};
    bool operator==(const Refusal&) const = default;
};

using Facts = std::vector<Fact>;
measure::Result<Facts, Refusal> decide(const CaseState& state, Who who, const Intent& intent, const Instant& now);

/// The steps that coming back from a departure opens again, in their order; each takes what rests on it with it.
std::vector<StepId> reopened_by(const CaseState& state, const Departure& departure);

/// Whether a departure that stands open may be taken back as told by mistake: not one that is what happened to the blade, which
/// the blade's own undo takes back, nor an entry once the guide's own step has opened the eye.
bool may_take_back(const CaseState& state, const Away& away);
/// The ring reflection recorded last, while nothing was done after the step that it closed; 0 if it can be taken back no more.
Seq ring_to_take_back(const CaseState& state);

/// The facts that begin a case; `holder` holds the count at first.
Facts opening(const Brief& brief, const std::string& program, Source holder);

/// "case-closed", "not-zeroed" …
std::string_view name(Refused why);

}  // namespace guide
