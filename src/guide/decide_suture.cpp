// Sutures: tied, cut out and tied again, and the steps and clocks that follow their number.
#include "guide/draft.hpp"

#include "measure/angle.hpp"

#include <algorithm>
#include <vector>

namespace guide {
namespace {

constexpr int same_place_centideg = 50;

bool taken(const CaseState& state, int centideg) {
    return std::any_of(state.sutures.begin(), state.sutures.end(), [&](const Tied& tied) {
        return measure::apart_centideg(measure::centideg(tied.centideg), measure::centideg(centideg)) <= same_place_centideg;
    });
}

bool cut_made(const CaseState& state) {
    const Step* cut = step_that_closes(state.brief.procedure, Closes::Cut);
    return cut == nullptr || state.steps.contains(cut->id);
}

/// Seconds since a clock last stopped; 0 if it never did.
int stopped_for_s(const CaseState& state, const ClockId& clock, const Instant& now) {
    const auto found = state.clocks.find(clock);
    if (found == state.clocks.end() || found->second.empty() || !found->second.back().to) return 0;
    return static_cast<int>(measure::elapsed(*found->second.back().to, now).ms / 1000);
}

enum class Clocks { StartNow, RunOn };

/// Steps whose number of sutures is no longer reached are open again; a clock that they had stopped starts a second spell,
/// or runs on as if it had never stopped.
void reopen_short(Draft& draft, const std::string& why, Clocks how) {
    const Procedure procedure = draft.state().brief.procedure;
    for (const Phase& phase : procedure.phases) {
        for (const Step& step : phase.steps) {
            const bool short_now = step.closes == Closes::Sutures && draft.state().steps.contains(step.id) &&
                                   static_cast<int>(draft.state().sutures.size()) < sutures_wanted(draft.state(), step);
            if (!short_now) continue;
            draft.reopen(step.id, why);
            for (const ClockId& clock : step.stops) {
                draft.clock(clock, true, how == Clocks::StartNow ? 0 : stopped_for_s(draft.state(), clock, draft.now()));
            }
        }
    }
}

/// The cut goes on: its step is open again.
void reopen_cut(Draft& draft) {
    const Step* step = step_that_closes(draft.state().brief.procedure, Closes::Cut);
    if (step != nullptr && draft.state().steps.contains(step->id)) draft.reopen(StepId(step->id), "tap undone");
}

}  // namespace

std::optional<int> planned_place(const CaseState& state, int n) {
    if (!state.plan) return std::nullopt;
    for (const plan::Suture& suture : state.plan->order) {
        if (suture.n == n) return suture.centideg;
    }
    return std::nullopt;
}

Decision decide_suture(Draft draft, const TieSuture& intent) {
    const CaseState& state = draft.state();
    if (!state.plan) return refuse(Refused::NoPlan);
    if (!cut_made(state)) return refuse(Refused::WrongStep, {current_step(state)->title});
    const int added = static_cast<int>(state.sutures.size()) + 1;
    const int n = intent.n != 0 ? intent.n : next_suture(state).value_or(std::max(added, sutures_planned(state) + 1));
    if (n < 1) return refuse(Refused::UnknownId, {std::to_string(n)});
    if (find_tied(state, n) != nullptr) return refuse(Refused::AlreadyDone);
    const auto place = intent.centideg ? intent.centideg : planned_place(state, n);
    if (!place) return refuse(Refused::UnknownId, {std::to_string(n)});
    const int centideg = measure::centideg(*place).centideg();
    if (taken(state, centideg)) return refuse(Refused::MarkTaken);
    draft.add(SutureTied{.n = n, .centideg = centideg});
    draft.settle();
    return std::move(draft).facts();
}

Decision decide_suture(Draft draft, const CutSuture& intent) {
    if (find_tied(draft.state(), intent.n) == nullptr) return refuse(Refused::UnknownId, {std::to_string(intent.n)});
    if (intent.why.empty()) return refuse(Refused::NeedsReason);
    draft.add(SutureCut{.n = intent.n, .why = intent.why});
    reopen_short(draft, intent.why, Clocks::StartNow);
    return std::move(draft).facts();
}

Decision decide_undo(Draft draft, const UndoTap& intent) {
    const auto& undoable = draft.state().undoable;
    const auto named = std::find_if(undoable.begin(), undoable.end(), [&](const Undoable& one) { return one.seq == intent.event; });
    const Undoable* found = intent.event == 0 ? newest_to_undo(draft.state()) : named == undoable.end() ? nullptr : &*named;
    if (found == nullptr) return refuse(Refused::NothingToUndo);
    const bool spoke = std::holds_alternative<SpokeTurned>(found->fact);
    const bool suture = std::holds_alternative<SutureTied>(found->fact);
    const bool lost = std::holds_alternative<SuctionTurned>(found->fact);
    const bool cut = std::holds_alternative<CutEnded>(found->fact);
    const bool deeper = std::holds_alternative<PlanMoved>(found->fact);
    if ((spoke || lost || deeper) && !cutting(draft.state())) return refuse(Refused::NothingToUndo);
    if (cut && draft.state().suction != Suction::On) return refuse(Refused::NothingToUndo);
    draft.add(TapUndone{.event = found->seq});
    if (cut) reopen_cut(draft);
    if (lost) come_back_if_away(draft, "suction-lost");
    if (suture) reopen_short(draft, "tap undone", Clocks::RunOn);
    return std::move(draft).facts();
}

}  // namespace guide
