// The blade: every spoke counts while the ring is on the eye; the gates stand before suction.
#include "guide/draft.hpp"

namespace guide {
namespace {

constexpr auto suction_lost = "suction-lost";
constexpr auto entered_by_trephine = "entered-by-trephine";

/// Why no spoke can be counted: the first thing that is missing before suction.
Refusal not_cutting(const CaseState& state) {
    if (const Step* step = step_that_closes(state.brief.procedure, Closes::SuctionOn)) {
        if (const auto shut = shut_gate(state, *step)) return *shut;
    }
    return refuse(Refused::NoSuction);
}

void depart(Draft& draft, const DepartureId& what) {
    if (!away_on(draft.state(), what) && find_departure(draft.state().brief.procedure, what) != nullptr) {
        draft.add(Departed{.what = what, .note = ""});
    }
}

void end_cut(Draft& draft, CutEnd how) {
    draft.add(CutEnded{.how = how, .position = blade(draft.state()).position});
    come_back_if_away(draft, suction_lost);
    if (how != CutEnd::Entered) return;
    draft.clock("decompressed", true, 0);
    if (draft.state().inputs.file.aim.goal != plan::Goal::ToEntry) depart(draft, entered_by_trephine);
}

/// Finished by hand although a new seating had been begun: its steps are no longer asked for.
void skip_to_cut(Draft& draft) {
    const Step* cut = step_that_closes(draft.state().brief.procedure, Closes::Cut);
    if (cut == nullptr) return;
    const StepId until = cut->id;
    while (!draft.state().steps.contains(until)) draft.skip(StepId(current_step(draft.state())->id), "finished by hand");
}

std::optional<Refusal> may_turn_on(const CaseState& state) {
    if (state.suction == Suction::On) return refuse(Refused::AlreadyDone);
    if (!state.plan) return refuse(Refused::NoPlan);
    const Step* step = step_that_closes(state.brief.procedure, Closes::SuctionOn);
    if (step == nullptr) return refuse(Refused::UnknownId);
    if (const auto shut = shut_gate(state, *step)) return shut;
    const Step* now = current_step(state);
    if (now != nullptr && now->id == step->id) return std::nullopt;
    // After a loss the blade stands below zero: the ring is seated again by way of zero, raise and seat, or not at all.
    if (state.suction == Suction::Lost) return refuse(Refused::NotZeroed);
    return refuse(Refused::WrongStep, {now == nullptr ? "" : now->title});
}

Decision turn_on(Draft draft) {
    if (const auto refusal = may_turn_on(draft.state())) return *refusal;
    draft.add(SuctionTurned{.to = Suction::On});
    come_back_if_away(draft, suction_lost);
    draft.settle();
    return std::move(draft).facts();
}

/// Let go before a spoke was turned: no cut was made. The ring is seated anew, and a blade that was raised further is set to zero again.
void seat_anew(Draft& draft) {
    const auto reopen = [&](const StepId& step) {
        if (draft.state().steps.contains(step)) draft.reopen_with_rest(step, "suction let go before a spoke was turned");
    };
    reopen(draft.state().seatings.back().up > 0 ? "zero" : "seat");
    // In a unit's own guide it need not rest on that step.
    if (const Step* step = step_that_closes(draft.state().brief.procedure, Closes::SuctionOn)) reopen(StepId(step->id));
}

Decision turn_off(Draft draft) {
    if (draft.state().suction == Suction::Off) return refuse(Refused::AlreadyDone);
    const bool uncut = cutting(draft.state()) && draft.state().seatings.back().down == 0;
    if (cutting(draft.state()) && !uncut) end_cut(draft, CutEnd::Surgeon);
    draft.add(SuctionTurned{.to = Suction::Off});
    come_back_if_away(draft, suction_lost);
    if (uncut) seat_anew(draft);
    draft.settle();
    return std::move(draft).facts();
}

Decision lose(Draft draft) {
    if (draft.state().suction != Suction::On) return refuse(Refused::NoSuction);
    draft.add(SuctionTurned{.to = Suction::Lost});
    depart(draft, suction_lost);
    draft.settle();
    return std::move(draft).facts();
}

}  // namespace

Decision decide_blade(Draft draft, const CountSpoke& intent) {
    const CaseState& state = draft.state();
    if (!cutting(state)) return not_cutting(state);
    if (state.holder && *state.holder != intent.source) return refuse(Refused::CountHeldElsewhere);
    if (!state.holder) draft.add(CountHeld{.source = intent.source});
    const Blade before = blade(draft.state());
    const bool over = before.planned && before.position + 1 > *before.planned;
    draft.add(SpokeTurned{.by = 1, .owes_reason = over || draft.state().suction == Suction::Lost});
    return std::move(draft).facts();
}

Decision decide_blade(Draft draft, const RaiseBlade&) {
    if (!cutting(draft.state())) return not_cutting(draft.state());
    draft.add(SpokeTurned{.by = -1, .owes_reason = false});
    return std::move(draft).facts();
}

Decision decide_blade(Draft draft, const GoDeeper&) {
    if (!cutting(draft.state())) return not_cutting(draft.state());
    if (!blade(draft.state()).planned) return refuse(Refused::NoPlan);
    draft.add(PlanMoved{.by = 1});
    return std::move(draft).facts();
}

Decision decide_blade(Draft draft, const EndCut& intent) {
    if (!cutting(draft.state())) return not_cutting(draft.state());
    const bool off_the_eye = draft.state().suction == Suction::Lost;
    // With spokes to go it did not end at the plan, whoever says so.
    const bool short_of_plan = intent.how == CutEnd::AtPlan && blade(draft.state()).to_go.value_or(0) > 0;
    end_cut(draft, short_of_plan ? CutEnd::Surgeon : intent.how);
    draft.settle();
    // skip() settles as well, so that the cut's own step closes once it is the present one.
    if (off_the_eye) skip_to_cut(draft);
    return std::move(draft).facts();
}

Decision decide_blade(Draft draft, const TurnSuction& intent) {
    switch (intent.to) {
        case Suction::On:
            return turn_on(std::move(draft));
        case Suction::Off:
            return turn_off(std::move(draft));
        case Suction::Lost:
            return lose(std::move(draft));
    }
    measure::expect(false);
    return refuse(Refused::UnknownId);
}

}  // namespace guide
