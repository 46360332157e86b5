// The fold: one lambda a fact, none of which judges. What was decided is taken as it stands.
#include "guide/state.hpp"
#include "guide/tissue.hpp"
#include "measure/overloaded.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

namespace guide {
namespace {

using measure::earlier;
using measure::overloaded;

constexpr std::int64_t ms_a_second = 1000;

/// The seating that the blade is on; made if a ledger holds a spoke before any.
Seating& seating(CaseState& state) {
    if (state.seatings.empty()) state.seatings.push_back({.raise = state.inputs.trephine.raise});
    return state.seatings.back();
}

void mark(CaseState& state, const ClockId& clock, bool start, const Instant& at, const Event& event) {
    if (start)
        return state.clocks[clock].push_back({.from = at, .to = std::nullopt, .from_seq = event.seq, .to_seq = 0, .from_tapped = event.at});
    const auto found = state.clocks.find(clock);
    if (found == state.clocks.end() || found->second.empty() || found->second.back().to) return;
    found->second.back().to = at;
    found->second.back().to_seq = event.seq;
    found->second.back().to_tapped = event.at;
}

void turn_suction(CaseState& state, Suction to, const Event& event) {
    if (to == Suction::On) {
        const bool untouched = !state.seatings.empty() && !state.seatings.back().ended && state.seatings.back().down == 0;
        if (untouched) state.seatings.pop_back();
        state.seatings.push_back({.raise = state.inputs.trephine.raise});
        std::erase_if(state.undoable, [](const Undoable& one) {
            return std::holds_alternative<SpokeTurned>(one.fact) || std::holds_alternative<SuctionTurned>(one.fact) ||
                   std::holds_alternative<PlanMoved>(one.fact);
        });
    }
    if ((to == Suction::On) != clock_running(state, "suction")) mark(state, "suction", to == Suction::On, event.at, event);
    state.suction = to;
}

/// The chamber had not been entered: the eye was not decompressed by what was told at `at` with the event `told`. A clock that
/// something else had started runs on.
void take_back_decompression(CaseState& state, Seq told, const Instant& at) {
    const auto clock = state.clocks.find("decompressed");
    if (clock == state.clocks.end()) return;
    std::erase_if(clock->second, [&](const Spell& spell) { return spell.from_seq > told && spell.from_tapped == at; });
    if (clock->second.empty()) state.clocks.erase(clock);
}

/// The cut did not end with an entry: nothing went otherwise.
void take_back_entry(CaseState& state, const Undoable& cut) {
    take_back_decompression(state, cut.seq, cut.at);
    std::erase_if(state.departures, [&](const Away& away) {  // come back from or not
        return away.what == "entered-by-trephine" && away.seq > cut.seq && away.at == cut.at;
    });
}

/// Takes back what an undoable fact did.
void take_back(CaseState& state, const Undoable& undone) {
    if (const auto* spoke = std::get_if<SpokeTurned>(&undone.fact)) {
        (spoke->by > 0 ? seating(state).down : seating(state).up) -= 1;
        std::erase(state.reasons_owed, undone.seq);
    } else if (const auto* suture = std::get_if<SutureTied>(&undone.fact)) {
        std::erase_if(state.sutures, [&](const Tied& tied) { return tied.n == suture->n; });
    } else if (const auto* moved = std::get_if<PlanMoved>(&undone.fact)) {
        state.moved -= moved->by;
        std::erase_if(state.plans_moved, [&](const Said<PlanMoved>& one) { return one.seq == undone.seq; });
    } else if (const auto* cut = std::get_if<CutEnded>(&undone.fact)) {
        seating(state).ended.reset();
        if (cut->how == CutEnd::Entered) take_back_entry(state, undone);
    } else if (std::holds_alternative<SuctionTurned>(undone.fact)) {
        // Suction had not been lost: it held all the time, and its clock runs on.
        state.suction = Suction::On;
        if (!state.clocks["suction"].empty()) state.clocks["suction"].back().to.reset();
    } else if (const auto* items = std::get_if<ItemsMoved>(&undone.fact)) {
        (items->by > 0 ? state.counts[items->item].opened : state.counts[items->item].passed_back) -= std::abs(items->by);
    }
}

/// What is no tap of the blade, a suture or a count: a departure that was none, a ring reflection that was another.
void take_back_told(CaseState& state, Seq event) {
    const auto away = std::find_if(state.departures.begin(), state.departures.end(), [&](const Away& one) { return one.seq == event; });
    if (away != state.departures.end()) {
        if (away->what == "entered-by-trephine") take_back_decompression(state, away->seq, away->at);
        state.departures.erase(away);
    }
    std::erase_if(state.rings, [&](const RingRecorded& one) { return one.seq == event; });
    state.ring = state.rings.empty() ? std::nullopt : std::optional(state.rings.back().said);
    state.ring_seq = state.rings.empty() ? 0 : state.rings.back().seq;
}

void correct(Instant& at, std::int64_t utc_ms) { at = earlier(at, at.utc_ms - utc_ms); }

void correct_time(CaseState& state, const TimeCorrected& fact) {
    for (auto& [clock, spells] : state.clocks) {
        for (Spell& spell : spells) {
            if (spell.from_seq == fact.event) correct(spell.from, fact.utc_ms);
            if (spell.to && spell.to_seq == fact.event) correct(*spell.to, fact.utc_ms);
        }
    }
    for (auto& [id, done] : state.steps) {
        if (done.seq == fact.event) correct(done.at, fact.utc_ms);
    }
    for (Tied& tied : state.sutures) {
        if (tied.seq == fact.event) correct(tied.at, fact.utc_ms);
    }
}

/// The plan in use gives way to another.
void change_plan(CaseState& state, const PlanAccepted& fact, const Event& event) {
    const auto& target = fact.shown.target;
    state.plans_changed.push_back({.fact = {.spokes = target ? target->spokes : std::nullopt, .why = fact.why}, .at = event.at});
    state.changed = event.seq;
}

void open_case(CaseState& state, const CaseOpened& fact) {
    state.brief = fact.brief;
    state.inputs = fact.brief.inputs;
    for (const CountItem& item : fact.brief.unit.counts) state.counts[item.id] = {};
}

void move_items(CaseState& state, const ItemsMoved& fact, Seq seq) {
    Tally& tally = state.counts[fact.item];
    (fact.by > 0 ? tally.opened : tally.passed_back) += std::abs(fact.by);
    tally.moved = seq;
}

void come_back(CaseState& state, const DepartureId& what, const Instant& at) {
    const auto open =
        std::find_if(state.departures.rbegin(), state.departures.rend(), [&](const Away& away) { return away.what == what && !away.back; });
    if (open != state.departures.rend()) open->back = at;
}

ScanSeen* scan_of(CaseState& state, Seq event) {
    const auto found = std::find_if(state.scans.begin(), state.scans.end(), [&](const ScanSeen& scan) { return scan.seq == event; });
    return found == state.scans.end() ? nullptr : &*found;
}

void take_scan(CaseState& state, const Scanned& fact, const Event& event) {
    ScanSeen seen{.seq = event.seq, .at = event.at, .said = fact};
    if (const ScanSeen* begun = scan_of(state, fact.completes)) seen.settled = settled_on(*begun);
    for (ScanSeen& scan : state.scans) {
        if (scan.seq == fact.completes || of_same_tissue(scan, fact.item)) scan.completed = true;
    }
    state.scans.push_back(std::move(seen));
}

}  // namespace

CaseState apply(CaseState state, const Event& event) {
    const Seq seq = event.seq;
    state.last = seq;
    const auto step_done = [&](const StepId& step, bool skipped, int ago_s) {
        state.steps[step] = {.skipped = skipped, .at = earlier(event.at, ago_s * ms_a_second), .seq = seq, .tapped = event.at};
        state.step_since = seq;
    };
    const auto can_be_undone = [&] { state.undoable.push_back({.seq = seq, .at = event.at, .fact = event.fact}); };
    std::visit(
        overloaded{
            [&](const CaseOpened& fact) { open_case(state, fact); },
            [&](const RunStarted&) {},
            [&](const SideEntered& fact) { state.side = fact.side; },
            [&](const PlanAccepted& fact) {
                if (state.plan) change_plan(state, fact, event);
                state.plan = fact.shown;
                state.inputs = fact.inputs;
                state.moved = 0;
                std::erase_if(state.undoable, [](const Undoable& one) { return std::holds_alternative<PlanMoved>(one.fact); });
            },
            [&](const PlanMoved& fact) {
                state.moved += fact.by;
                state.plans_moved.push_back({.fact = fact, .at = event.at, .seq = seq});
                can_be_undone();
            },
            [&](const StepFinished& fact) { step_done(fact.step, false, fact.ago_s); },
            [&](const StepReopened& fact) {
                state.steps.erase(fact.step);
                state.step_since = seq;
            },
            [&](const StepSkipped& fact) { step_done(fact.step, true, 0); },
            [&](const CountHeld& fact) { state.holder = fact.source; },
            [&](const SpokeTurned& fact) {
                (fact.by > 0 ? seating(state).down : seating(state).up) += 1;
                if (fact.owes_reason) state.reasons_owed.push_back(seq);
                can_be_undone();
            },
            [&](const TapUndone& fact) {
                const auto undone =
                    std::find_if(state.undoable.begin(), state.undoable.end(), [&](const Undoable& one) { return one.seq == fact.event; });
                if (undone == state.undoable.end()) return take_back_told(state, fact.event);
                take_back(state, *undone);
                state.undoable.erase(undone);
            },
            [&](const CutEnded& fact) {
                seating(state).ended = fact.how;
                can_be_undone();
            },
            [&](const SuctionTurned& fact) {
                turn_suction(state, fact.to, event);
                if (fact.to == Suction::Lost) can_be_undone();
            },
            [&](const ClockMarked& fact) { mark(state, fact.clock, fact.start, earlier(event.at, fact.ago_s * ms_a_second), event); },
            [&](const SutureTied& fact) {
                const auto before = state.cut_sutures.find(fact.n);
                const int redone = before == state.cut_sutures.end() ? 0 : before->second;
                state.sutures.push_back(
                    {.n = fact.n, .centideg = fact.centideg, .at = event.at, .redone = redone, .seq = seq, .tapped = event.at});
                can_be_undone();
            },
            [&](const SutureCut& fact) {
                std::erase_if(state.sutures, [&](const Tied& tied) { return tied.n == fact.n; });
                std::erase_if(state.undoable, [&](const Undoable& one) {
                    const auto* suture = std::get_if<SutureTied>(&one.fact);
                    return suture != nullptr && suture->n == fact.n;
                });
                state.cut_sutures[fact.n] += 1;
            },
            [&](const RingSeen& fact) {
                state.ring = fact;
                state.ring_seq = seq;
                state.rings.push_back({.seq = seq, .said = fact});
            },
            [&](const ItemsMoved& fact) {
                move_items(state, fact, seq);
                can_be_undone();
            },
            [&](const CountChecked& fact) { state.counts[fact.item].checks.push_back({.said = fact, .seq = seq, .at = event.at}); },
            [&](const DifferenceRecorded& fact) {
                state.counts[fact.item].differences.push_back({.said = fact, .seq = seq, .at = event.at});
            },
            [&](const Scanned& fact) { take_scan(state, fact, event); },
            [&](const Overruled& fact) {
                if (ScanSeen* scan = scan_of(state, fact.event)) scan->overruled = true;
            },
            [&](const ItemPutAside& fact) {
                if (ScanSeen* scan = scan_of(state, fact.event)) scan->put_aside = true;
            },
            [&](const DepthMeasured& fact) { state.depth = fact.depth; },
            [&](const TissueTold& fact) { state.tissue.push_back({.what = fact.what, .text = fact.text, .at = event.at}); },
            [&](const KnotsTold& fact) { state.knots = {.fact = fact, .at = event.at}; },
            [&](const SuturesNamed& fact) { state.materials.push_back({.fact = fact, .at = event.at}); },
            [&](const SpecimenTold& fact) { state.specimens[fact.what] = {.fact = fact, .at = event.at}; },
            [&](const BankTold& fact) { state.bank = {.fact = fact, .at = event.at}; },
            [&](const Departed& fact) {
                state.departures.push_back({.what = fact.what, .at = event.at, .back = std::nullopt, .seq = seq});
            },
            [&](const CameBack& fact) { come_back(state, fact.what, event.at); },
            [&](const ReasonGiven& fact) { std::erase(state.reasons_owed, fact.event); },
            [&](const NoteWritten& fact) { state.notes.emplace_back(event.at, fact.text); },
            [&](const TimeCorrected& fact) {
                correct_time(state, fact);
                state.times_corrected.push_back({.fact = fact, .at = event.at});
                state.changed = seq;
            },
            [&](const WrittenLate&) {},
            [&](const CaseClosed& fact) { state.closed = fact.how; },
        },
        event.fact);
    return state;
}

CaseState fold(std::span<const Event> events) { return std::accumulate(events.begin(), events.end(), CaseState{}, apply); }

}  // namespace guide
