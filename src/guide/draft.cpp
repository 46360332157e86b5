#include "guide/draft.hpp"

#include "guide/tissue.hpp"
#include "measure/expect.hpp"

#include <algorithm>

namespace guide {
namespace {

/// Steps of the same phase that rest on `id`, the last first.
std::vector<StepId> resting_on(const CaseState& state, const StepId& id) {
    const Phase* phase = phase_of(state.brief.procedure, id);
    std::vector<StepId> fallen{id};
    for (const Step& step : phase->steps) {
        const bool rests = std::any_of(step.needs.begin(), step.needs.end(),
                                       [&](const StepId& need) { return std::find(fallen.begin(), fallen.end(), need) != fallen.end(); });
        if (rests) fallen.push_back(step.id);
    }
    fallen.erase(fallen.begin());
    std::reverse(fallen.begin(), fallen.end());
    return fallen;
}

/// What is set and made before the ring holds the eye.
bool comes_before_suction(const Procedure& procedure, const StepId& id) {
    for (const Phase& phase : procedure.phases) {
        for (const Step& step : phase.steps) {
            if (step.closes == Closes::SuctionOn) return false;
            if (step.id == id) return true;
        }
    }
    return false;
}

/// The newest open departure whose way back opens steps again that suction rests on: what they rest on is being replaced.
const Departure* away_to_replace(const CaseState& state) {
    const auto open = open_departures(state);
    for (auto away = open.rbegin(); away != open.rend(); ++away) {
        const Departure* departure = find_departure(state.brief.procedure, away->what);
        if (departure == nullptr) continue;
        const auto& again = departure->reopens;
        if (std::any_of(again.begin(), again.end(), [&](const StepId& id) { return comes_before_suction(state.brief.procedure, id); }))
            return departure;
    }
    return nullptr;
}

}  // namespace

Refusal refuse(Refused why, std::vector<std::string> values) { return {.why = why, .values = std::move(values)}; }

std::string planned_side(const CaseState& state) { return state.inputs.file.side == eye::Side::Right ? "right" : "left"; }

void Draft::add(Fact fact) {
    state_ = apply(std::move(state_), Event{.seq = state_.last + 1, .at = now_, .who = who_, .fact = fact});
    facts_.push_back(std::move(fact));
}

void Draft::clock(const ClockId& clock, bool start, int ago_s) {
    if (clock_running(state_, clock) != start) add(ClockMarked{.clock = clock, .start = start, .ago_s = ago_s});
}

void Draft::finish(const StepId& step, int ago_s) {
    const Step* found = find_step(state_.brief.procedure, step);
    measure::expect(found != nullptr);
    const Step finished = *found;
    in_phases(
        [&] {
            add(StepFinished{.step = finished.id, .ago_s = ago_s});
            for (const ClockId& id : finished.starts) clock(id, true, ago_s);
            for (const ClockId& id : finished.stops) clock(id, false, ago_s);
        },
        ago_s);
}

void Draft::skip(const StepId& step, const std::string& why) {
    in_phases([&] { add(StepSkipped{.step = step, .why = why}); }, 0);
    settle();
}

template <class Change>
void Draft::in_phases(Change change, int ago_s) {
    const auto present = [&] {
        const Phase* phase = current_phase(state_);
        return phase == nullptr ? std::string() : phase->id;
    };
    const std::string before = present();
    change();
    const std::string after = present();
    if (after == before) return;
    if (!before.empty()) clock(before, false, ago_s);
    if (!after.empty()) clock(after, true, ago_s);
}

void Draft::reopen(const StepId& step, const std::string& why) { add(StepReopened{.step = step, .why = why}); }

void Draft::reopen_with_rest(const StepId& step, const std::string& why) {
    for (const StepId& fallen : resting_on(state_, step)) {
        if (state_.steps.contains(fallen)) reopen(fallen, why);
    }
    reopen(step, why);
}

void Draft::reopen_after(const Departure& departure) {
    const std::vector<StepId> steps = reopened_by(state_, departure);
    const std::string why = departure.title;
    in_phases(
        [&] {
            for (auto step = steps.rbegin(); step != steps.rend(); ++step) {
                const std::vector<ClockId> started = find_step(state_.brief.procedure, *step)->starts;
                for (const ClockId& id : started) clock(id, false, 0);
                reopen_with_rest(*step, why);
            }
        },
        0);
}

void Draft::settle() {
    for (const Step* step = current_step(state_); step != nullptr && condition_met(state_, *step); step = current_step(state_)) {
        finish(step->id, 0);
    }
}

bool condition_met(const CaseState& state, const Step& step) {
    const bool cut_ended = !state.seatings.empty() && state.seatings.back().ended.has_value();
    switch (step.closes) {
        case Closes::Tap:
        case Closes::Hold:
            return false;
        case Closes::Side:
            return !state.side.empty();
        case Closes::Plan:
            return state.plan.has_value();
        case Closes::Counts:
            return counts_agree(state);
        case Closes::SuctionOn:
            return state.suction == Suction::On;
        case Closes::Cut:
            return cut_ended;
        case Closes::SuctionOff:
            return cut_ended && state.suction != Suction::On;
        case Closes::Sutures:
            return state.plan.has_value() && static_cast<int>(state.sutures.size()) >= sutures_wanted(state, step);
        case Closes::Ring:
            return state.ring.has_value() && state.ring_seq > state.step_since;
        case Closes::Close:
            return state.closed.has_value();
    }
    measure::expect(false);
    return false;
}

bool away_on(const CaseState& state, const DepartureId& what) {
    const auto open = open_departures(state);
    return std::any_of(open.begin(), open.end(), [&](const Away& away) { return away.what == what; });
}

void come_back_if_away(Draft& draft, const DepartureId& what) {
    while (away_on(draft.state(), what)) draft.add(CameBack{.what = what});  // an older record may hold it twice
}

std::vector<StepId> reopened_by(const CaseState& state, const Departure& departure) {
    const Procedure& procedure = state.brief.procedure;
    const Step* suction = step_that_closes(procedure, Closes::SuctionOn);
    const bool held = suction == nullptr || state.steps.contains(suction->id);
    std::vector<StepId> again{};
    for (const Phase& phase : procedure.phases) {
        for (const Step& step : phase.steps) {
            const bool named = std::find(departure.reopens.begin(), departure.reopens.end(), step.id) != departure.reopens.end();
            // Once the ring holds the eye what was set and made before it is in use: nothing of it is set or made again.
            if (!named || !state.steps.contains(step.id) || (held && comes_before_suction(procedure, step.id))) continue;
            // What was counted in the meantime was counted without what went otherwise.
            if (step.closes == Closes::Counts || !condition_met(state, step)) again.push_back(step.id);
        }
    }
    return again;
}

std::optional<Refusal> shut_gate(const CaseState& state, const Step& step) {
    // In the quiet part nothing waits for a scan: it waits itself.
    if (!step.quiet) {
        if (auto stopped = scan_that_stops(state)) return stopped;
        // Once the eye is open it is closed again, with whatever tissue there is.
        if (!eye_entered(state) && find_told(state, TissueWord::Unfit) != nullptr) return refuse(Refused::TissueUnfit);
    }
    if (step.closes == Closes::SuctionOn) {
        if (const Departure* away = away_to_replace(state)) return refuse(Refused::DepartureOpen, {away->title, away->back});
    }
    for (const StepId& need : step.needs) {
        const Step* missing = find_step(state.brief.procedure, need);
        if (confirmed(state, need) || (missing != nullptr && !applies(state, *missing))) continue;
        // What the missing step itself waits for comes first: the way on starts there.
        if (const auto before = missing == nullptr ? std::nullopt : shut_gate(state, *missing)) return before;
        if (need == "zero") return refuse(Refused::NotZeroed);
        if (need == "raise") return refuse(Refused::NotRaised, {std::to_string(state.inputs.trephine.raise)});
        if (missing != nullptr && missing->closes == Closes::SuctionOn) return refuse(Refused::NoSuction);
        return refuse(Refused::GateShut, {missing == nullptr ? need : missing->title});
    }
    return std::nullopt;
}

}  // namespace guide
