// What a decision writes while it is being made: facts, and the state they lead to, so that one fact can follow from another.
// Also the rules by which steps close by themselves and clocks follow the steps.
#pragma once

#include "guide/decide.hpp"

namespace guide {

class Draft {
public:
    Draft(const CaseState& state, Who who, const Instant& now) : state_(state), who_(who), now_(now) {}

    const CaseState& state() const { return state_; }
    const Instant& now() const { return now_; }
    void add(Fact fact);
    /// Starts or stops a clock if it does not run, or runs.
    void clock(const ClockId& clock, bool start, int ago_s);
    /// Finishes a step with the clocks that follow it.
    void finish(const StepId& step, int ago_s);
    void skip(const StepId& step, const std::string& why);
    void reopen(const StepId& step, const std::string& why);
    /// With the steps of the same phase that rest on it.
    void reopen_with_rest(const StepId& step, const std::string& why);
    /// What `reopened_by` names, each with what rests on it; the clocks that they had started stop.
    void reopen_after(const Departure& departure);
    /// Finishes every present step whose condition is met already.
    void settle();
    Facts facts() && { return std::move(facts_); }

private:
    /// Makes a change and lets the clocks of the phases follow it.
    template <class Change>
    void in_phases(Change change, int ago_s);

    CaseState state_;
    Facts facts_{};
    Who who_;
    Instant now_;
};

/// The condition of a step that closes by itself holds. Steps that close by a tap or a hold never do.
bool condition_met(const CaseState& state, const Step& step);

using Decision = measure::Result<Facts, Refusal>;

Refusal refuse(Refused why, std::vector<std::string> values = {});

// The decisions, one a kind of intent; `draft` holds the state they decide on.
Decision decide_blade(Draft draft, const CountSpoke& intent);
Decision decide_blade(Draft draft, const RaiseBlade& intent);
Decision decide_blade(Draft draft, const GoDeeper& intent);
Decision decide_blade(Draft draft, const EndCut& intent);
Decision decide_blade(Draft draft, const TurnSuction& intent);
Decision decide_suture(Draft draft, const TieSuture& intent);
Decision decide_suture(Draft draft, const CutSuture& intent);
Decision decide_undo(Draft draft, const UndoTap& intent);
Decision decide_step(Draft draft, const FinishStep& intent);
Decision decide_step(Draft draft, const ReopenStep& intent);
Decision decide_step(Draft draft, const SkipStep& intent);
Decision decide_step(Draft draft, const CloseCase& intent);
Decision decide_count(Draft draft, const MoveItems& intent);
Decision decide_count(Draft draft, const CheckCount& intent);
Decision decide_count(Draft draft, const RecordDifference& intent);

Decision decide_scan(Draft draft, const Scan& intent);
Decision decide_scan(Draft draft, Who who, const Overrule& intent);
Decision decide_scan(Draft draft, const PutAside& intent);
Decision decide_tissue(Draft draft, Who who, const TellTissue& intent);
Decision decide_told(Draft draft, const TellKnots& intent);
Decision decide_told(Draft draft, const NameSutures& intent);
Decision decide_told(Draft draft, const TellSpecimen& intent);
Decision decide_told(Draft draft, const TellBank& intent);

/// Steps whose number of sutures is no longer reached are open again; a clock that they had stopped starts a second spell,
/// or runs on as if it had never stopped.
enum class Clocks { StartNow, RunOn };
void reopen_short(Draft& draft, const std::string& why, Clocks how);

/// The refusal while something speaks against a scanned item that is neither put aside nor overruled; none otherwise.
std::optional<Refusal> scan_that_stops(const CaseState& state);

/// A departure of this kind is open.
bool away_on(const CaseState& state, const DepartureId& what);
void come_back_if_away(Draft& draft, const DepartureId& what);

/// The refusal of the first gate of a step that is shut; none when all are open.
std::optional<Refusal> shut_gate(const CaseState& state, const Step& step);
/// "right" or "left", of the plan.
std::string planned_side(const CaseState& state);
/// The planned place of a suture; none beyond the plan's order.
std::optional<int> planned_place(const CaseState& state, int n);

}  // namespace guide
