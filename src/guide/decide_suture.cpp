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

}  // namespace guide
