// Steps: finished in their order behind their gates, skipped with a reason, opened again, and the case closed at the end.
#include "guide/draft.hpp"

namespace guide {
namespace {

std::string title_of(const Step* step) { return step == nullptr ? "" : step->title; }

/// Why a step is not the one to be done now; none when it is.
std::optional<Refusal> not_present(const CaseState& state, const StepId& id) {
    if (find_step(state.brief.procedure, id) == nullptr) return refuse(Refused::UnknownId, {id});
    if (state.steps.contains(id)) return refuse(Refused::AlreadyDone);
    const Step* now = current_step(state);
    if (now == nullptr || now->id != id) return refuse(Refused::WrongStep, {title_of(now)});
    return std::nullopt;
}

/// A step that closes by what is done, not by a tap, says what it waits for.
Refusal waits_for(const CaseState& state, const Step& step) {
    if (step.closes == Closes::Counts) return refuse(Refused::CountDiffers);
    if (step.closes == Closes::Plan) return refuse(Refused::NoPlan);
    if (step.closes == Closes::SuctionOn) {
        if (const auto shut = shut_gate(state, step)) return *shut;
    }
    return refuse(Refused::GateShut, {step.title});
}

}  // namespace

Decision decide_step(Draft draft, const FinishStep& intent) {
    const CaseState& state = draft.state();
    if (const auto refusal = not_present(state, intent.step)) return *refusal;
    const Step* step = current_step(state);
    if (step->closes != Closes::Tap && step->closes != Closes::Hold) return waits_for(state, *step);
    if (const auto shut = shut_gate(state, *step)) return *shut;
    if (step->pause == Pause::SignOut && !state.reasons_owed.empty()) return refuse(Refused::ReasonOwed);
    draft.finish(intent.step, intent.ago_s);
    draft.settle();
    return std::move(draft).facts();
}

Decision decide_step(Draft draft, const ReopenStep& intent) {
    const CaseState& state = draft.state();
    const Step* step = find_step(state.brief.procedure, intent.step);
    if (step == nullptr) return refuse(Refused::UnknownId, {intent.step});
    if (!state.steps.contains(step->id)) return refuse(Refused::WrongStep, {title_of(current_step(state))});
    if (intent.why.empty()) return refuse(Refused::NeedsReason);
    if (condition_met(state, *step)) return refuse(Refused::AlreadyDone);
    draft.reopen_with_rest(intent.step, intent.why);
    return std::move(draft).facts();
}

Decision decide_step(Draft draft, const SkipStep& intent) {
    const CaseState& state = draft.state();
    if (const auto refusal = not_present(state, intent.step)) return *refusal;
    const Step* step = current_step(state);
    if (!step->may_skip) return refuse(Refused::GateShut, {step->title});
    if (intent.why.empty()) return refuse(Refused::NeedsReason);
    draft.skip(intent.step, intent.why);
    return std::move(draft).facts();
}

Decision decide_step(Draft draft, const CloseCase& intent) {
    const CaseState& state = draft.state();
    if (intent.how == CaseEnd::Done) {
        const Step* now = current_step(state);
        if (now == nullptr || now->closes != Closes::Close) return refuse(Refused::WrongStep, {title_of(now)});
        if (const auto shut = shut_gate(state, *now)) return *shut;
        if (!state.reasons_owed.empty()) return refuse(Refused::ReasonOwed);
        draft.finish(now->id, 0);
    } else {
        if (intent.why.empty()) return refuse(Refused::NeedsReason);
        // A record is not locked over an open eye: nothing could be written after it.
        if (eye_open(state)) return refuse(Refused::EyeOpen);
    }
    const auto clocks = state.clocks;
    for (const auto& [clock, spells] : clocks) draft.clock(clock, false, 0);
    draft.add(CaseClosed{.how = intent.how, .why = intent.why});
    return std::move(draft).facts();
}

}  // namespace guide
