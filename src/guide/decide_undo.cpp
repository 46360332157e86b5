// What was tapped by mistake and is taken back: the tap's own work and no more. Blade, clocks and counts that were right stay.
#include "guide/draft.hpp"

#include <algorithm>

namespace guide {
namespace {

/// Seconds since a clock last stopped; 0 if it never did.
int stopped_for_s(const CaseState& state, const ClockId& clock, const Instant& now) {
    const auto found = state.clocks.find(clock);
    if (found == state.clocks.end() || found->second.empty() || !found->second.back().to) return 0;
    return static_cast<int>(measure::elapsed(*found->second.back().to, now).ms / 1000);
}

/// The cut goes on: its step is open again.
void reopen_cut(Draft& draft) {
    const Step* step = step_that_closes(draft.state().brief.procedure, Closes::Cut);
    if (step != nullptr && draft.state().steps.contains(step->id)) draft.reopen(StepId(step->id), "tap undone");
}

}  // namespace

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

bool may_take_back(const CaseState& state, const Away& away) {
    if (away.back) return false;
    if (away.what == "suction-lost") return state.suction != Suction::Lost;
    if (away.what != "entered-by-trephine") return true;
    const bool ended = !state.seatings.empty() && state.seatings.back().ended == std::optional(CutEnd::Entered);
    return !ended && !opened_by_step(state);
}

Seq ring_to_take_back(const CaseState& state) {
    const Step* step = step_that_closes(state.brief.procedure, Closes::Ring);
    if (!state.ring || step == nullptr) return 0;
    const auto closed = state.steps.find(step->id);
    if (closed == state.steps.end() || closed->second.seq < state.ring_seq) return 0;
    const bool went_on =
        std::any_of(state.steps.begin(), state.steps.end(), [&](const auto& one) { return one.second.seq > closed->second.seq; });
    return went_on || current_phase(state) != phase_of(state.brief.procedure, step->id) ? 0 : state.ring_seq;
}

namespace {

/// A departure or a ring reflection, by its own number alone: none of them stands in the row of taps that a nameless undo goes back.
std::optional<Decision> undo_told(Draft& draft, Seq event) {
    const auto& departures = draft.state().departures;
    const auto away = std::find_if(departures.begin(), departures.end(), [&](const Away& one) { return one.seq == event; });
    if (event != 0 && away != departures.end()) {
        if (!may_take_back(draft.state(), *away)) return refuse(Refused::NothingToUndo);
        draft.add(TapUndone{.event = event});
        return std::move(draft).facts();
    }
    if (event == 0 || event != ring_to_take_back(draft.state())) return std::nullopt;
    draft.add(TapUndone{.event = event});
    draft.reopen(StepId(step_that_closes(draft.state().brief.procedure, Closes::Ring)->id), "tap undone");
    return std::move(draft).facts();
}

}  // namespace

Decision decide_undo(Draft draft, const UndoTap& intent) {
    if (auto told = undo_told(draft, intent.event)) return *std::move(told);
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
