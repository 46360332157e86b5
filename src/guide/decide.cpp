#include "guide/decide.hpp"

#include "guide/draft.hpp"
#include "guide/timed.hpp"
#include "measure/expect.hpp"
#include "measure/overloaded.hpp"

#include <algorithm>
#include <set>

namespace guide {
namespace {

Decision enter_side(Draft draft, const EnterSide& intent) {
    if (intent.side != "right" && intent.side != "left") return refuse(Refused::UnknownId, {intent.side});
    if (intent.side != planned_side(draft.state())) return refuse(Refused::SideDiffers);
    if (draft.state().side == intent.side) return refuse(Refused::AlreadyDone);
    draft.add(SideEntered{.side = intent.side});
    draft.settle();
    return std::move(draft).facts();
}

Decision accept_plan(Draft draft, const AcceptPlan& intent) {
    const CaseState& state = draft.state();
    if (!intent.plan.target) return refuse(Refused::PlanRefused);
    if (intent.inputs.file.side != state.inputs.file.side) return refuse(Refused::SideDiffers);
    if (state.plan && intent.why.empty()) return refuse(Refused::NeedsReason);
    draft.add(PlanAccepted{.inputs = intent.inputs, .shown = intent.plan, .why = intent.why});
    draft.settle();
    return std::move(draft).facts();
}

Decision hold_count(Draft draft, const HoldCount& intent) {
    if (draft.state().holder == std::optional(intent.source)) return refuse(Refused::AlreadyDone);
    draft.add(CountHeld{.source = intent.source});
    return std::move(draft).facts();
}

bool known_clock(const CaseState& state, const ClockId& clock) {
    const std::set<std::string> ours{"suction", "decompressed", "open-sky", "donor-out", "case"};
    const auto& phases = state.brief.procedure.phases;
    return ours.contains(clock) || std::any_of(phases.begin(), phases.end(), [&](const Phase& phase) { return phase.id == clock; });
}

/// More than an hour ago, or within a spell that the clock has run already.
bool too_long_ago(const CaseState& state, const MarkClock& intent, const Instant& now) {
    constexpr int hour_s = 3600;
    if (intent.ago_s > hour_s) return true;
    const auto spells = state.clocks.find(intent.clock);
    if (spells == state.clocks.end() || spells->second.empty()) return false;
    const std::int64_t then_ms = measure::earlier(now, intent.ago_s * std::int64_t{1000}).utc_ms;
    const Spell& last = spells->second.back();
    return then_ms < (intent.start ? last.to.value_or(last.from) : last.from).utc_ms;
}

Decision mark_clock(Draft draft, const MarkClock& intent) {
    if (!known_clock(draft.state(), intent.clock) || intent.ago_s < 0) return refuse(Refused::UnknownId, {intent.clock});
    if (clock_running(draft.state(), intent.clock) == intent.start) return refuse(Refused::AlreadyDone);
    if (too_long_ago(draft.state(), intent, draft.now())) return refuse(Refused::TimeOutOfRange);
    draft.add(ClockMarked{.clock = intent.clock, .start = intent.start, .ago_s = intent.ago_s});
    return std::move(draft).facts();
}

Decision see_ring(Draft draft, const SeeRing& intent) {
    draft.add(RingSeen{.long_axis_centideg = intent.long_axis_centideg});
    draft.settle();
    return std::move(draft).facts();
}

/// Deeper than any cornea is thick, or no depth at all, is a slip of the finger.
Decision measure_depth(Draft draft, const MeasureDepth& intent) {
    const auto deepest = measure::from_um(1500);
    const auto& seatings = draft.state().seatings;
    if (seatings.empty() || !seatings.back().ended) return refuse(Refused::WrongStep, {""});
    if (intent.depth <= measure::Length{} || intent.depth > deepest) return refuse(Refused::DepthOutOfRange);
    draft.add(DepthMeasured{.depth = intent.depth, .how = intent.how});
    return std::move(draft).facts();
}

Decision depart(Draft draft, const Depart& intent) {
    if (find_departure(draft.state().brief.procedure, intent.what) == nullptr) return refuse(Refused::UnknownId, {intent.what});
    // Two departures are also something that happened to the blade: they are counted as that.
    if (intent.what == "suction-lost" && draft.state().suction == Suction::On) {
        return decide_blade(std::move(draft), TurnSuction{.to = Suction::Lost});
    }
    if (intent.what == "entered-by-trephine" && cutting(draft.state())) {
        return decide_blade(std::move(draft), EndCut{.how = CutEnd::Entered});
    }
    // Told at the Desk what was tapped at the Table: once is enough.
    const bool blade = intent.what == "suction-lost" || intent.what == "entered-by-trephine";
    if (blade && away_on(draft.state(), intent.what)) return refuse(Refused::AlreadyDone);
    // Seen only after the cut had ended: the eye is open all the same. Told of before, it may be closed by now.
    const bool opens = intent.what == "entered-by-trephine" && !entry_told(draft.state());
    draft.add(Departed{.what = intent.what, .note = intent.note});
    if (opens) draft.clock("decompressed", true, 0);
    return std::move(draft).facts();
}

Decision come_back(Draft draft, const ComeBack& intent) {
    if (!away_on(draft.state(), intent.what)) return refuse(Refused::WrongStep, {intent.what});
    draft.add(CameBack{.what = intent.what});
    if (const Departure* departure = find_departure(draft.state().brief.procedure, intent.what)) draft.reopen_after(*departure);
    return std::move(draft).facts();
}

Decision give_reason(Draft draft, const GiveReason& intent) {
    const auto& owed = draft.state().reasons_owed;
    const Seq event = intent.event == 0 && !owed.empty() ? owed.front() : intent.event;
    if (std::find(owed.begin(), owed.end(), event) == owed.end()) return refuse(Refused::UnknownId, {std::to_string(intent.event)});
    if (intent.why.empty()) return refuse(Refused::NeedsReason);
    draft.add(ReasonGiven{.event = event, .why = intent.why});
    return std::move(draft).facts();
}

/// The tap began the case, and something else lies before the new time.
bool begins_late(const CaseState& state, const std::vector<Timed>& tap, std::int64_t utc_ms) {
    const auto begins = [](const Timed& one) { return one.is == Timed::Is::ClockOn && one.id == "case"; };
    const std::vector<Timed> all = timed(state);
    return std::any_of(tap.begin(), tap.end(), begins) && std::any_of(all.begin(), all.end(), [&](const Timed& one) {
               return one.at.utc_ms < utc_ms && std::find(tap.begin(), tap.end(), one) == tap.end();
           });
}

/// Outside the case, or past a moment of the same clock that stays where it is.
bool out_of_range(const CaseState& state, const std::vector<Timed>& tap, std::int64_t utc_ms, const Instant& now) {
    const auto begun = state.clocks.find("case");
    if (begun != state.clocks.end() && !begun->second.empty() && utc_ms < begun->second.front().from.utc_ms) return true;
    if (begins_late(state, tap, utc_ms)) return true;
    const auto stays = [&](const Timed& one, const std::optional<Instant>& beside) {
        return beside && std::none_of(tap.begin(), tap.end(), [&](const Timed& other) {
                   const bool suture_or_step = other.is == Timed::Is::Step || other.is == Timed::Is::Suture;
                   return !suture_or_step && other.id == one.id && other.seq != one.seq && other.at == *beside;
               });
    };
    return utc_ms > now.utc_ms || std::any_of(tap.begin(), tap.end(), [&](const Timed& one) {
               return (stays(one, one.after) && utc_ms < one.after->utc_ms) || (stays(one, one.before) && utc_ms > one.before->utc_ms);
           });
}

/// What one tap wrote at one moment is corrected as one: the step with its clocks, the suture with the step that it closed.
Decision correct_time(Draft draft, const CorrectTime& intent) {
    const auto one = find_timed(draft.state(), intent.event);
    if (!one) return refuse(Refused::UnknownId, {std::to_string(intent.event)});
    const std::vector<Timed> tap = of_one_tap(draft.state(), *one);
    if (out_of_range(draft.state(), tap, intent.utc_ms, draft.now())) return refuse(Refused::TimeOutOfRange);
    if (intent.why.empty()) return refuse(Refused::NeedsReason);
    for (const Timed& mark : tap) draft.add(TimeCorrected{.event = mark.seq, .utc_ms = intent.utc_ms, .why = intent.why});
    return std::move(draft).facts();
}

Decision one(Draft draft, Fact fact) {
    draft.add(std::move(fact));
    return std::move(draft).facts();
}

/// The clocks of the case and of its first phase start with the first thing that is done; a note alone is none.
void start_case(Draft& draft) {
    if (draft.state().clocks.contains("case") || draft.state().brief.procedure.phases.empty()) return;
    draft.clock("case", true, 0);
    draft.clock(draft.state().brief.procedure.phases.front().id, true, 0);
}

}  // namespace

Decision decide(const CaseState& state, Who who, const Intent& intent, const Instant& now) {
    if (state.closed) return refuse(Refused::CaseClosed);
    Draft draft(state, who, now);
    if (!std::holds_alternative<WriteNote>(intent)) start_case(draft);
    const auto with = [&] { return std::move(draft); };
    return std::visit(measure::overloaded{
                          [&](const EnterSide& asked) { return enter_side(with(), asked); },
                          [&](const AcceptPlan& asked) { return accept_plan(with(), asked); },
                          [&](const FinishStep& asked) { return decide_step(with(), asked); },
                          [&](const ReopenStep& asked) { return decide_step(with(), asked); },
                          [&](const SkipStep& asked) { return decide_step(with(), asked); },
                          [&](const HoldCount& asked) { return hold_count(with(), asked); },
                          [&](const CountSpoke& asked) { return decide_blade(with(), asked); },
                          [&](const RaiseBlade& asked) { return decide_blade(with(), asked); },
                          [&](const UndoTap& asked) { return decide_undo(with(), asked); },
                          [&](const GoDeeper& asked) { return decide_blade(with(), asked); },
                          [&](const EndCut& asked) { return decide_blade(with(), asked); },
                          [&](const TurnSuction& asked) { return decide_blade(with(), asked); },
                          [&](const MarkClock& asked) { return mark_clock(with(), asked); },
                          [&](const TieSuture& asked) { return decide_suture(with(), asked); },
                          [&](const CutSuture& asked) { return decide_suture(with(), asked); },
                          [&](const SeeRing& asked) { return see_ring(with(), asked); },
                          [&](const MoveItems& asked) { return decide_count(with(), asked); },
                          [&](const CheckCount& asked) { return decide_count(with(), asked); },
                          [&](const RecordDifference& asked) { return decide_count(with(), asked); },
                          [&](const Scan& asked) { return decide_scan(with(), asked); },
                          [&](const Overrule& asked) { return decide_scan(with(), who, asked); },
                          [&](const PutAside& asked) { return decide_scan(with(), asked); },
                          [&](const MeasureDepth& asked) { return measure_depth(with(), asked); },
                          [&](const TellTissue& asked) { return decide_tissue(with(), who, asked); },
                          [&](const TellKnots& asked) { return decide_told(with(), asked); },
                          [&](const NameSutures& asked) { return decide_told(with(), asked); },
                          [&](const TellSpecimen& asked) { return decide_told(with(), asked); },
                          [&](const TellBank& asked) { return decide_told(with(), asked); },
                          [&](const Depart& asked) { return depart(with(), asked); },
                          [&](const ComeBack& asked) { return come_back(with(), asked); },
                          [&](const GiveReason& asked) { return give_reason(with(), asked); },
                          [&](const WriteNote& asked) {
                              return asked.text.empty() ? Decision(refuse(Refused::NeedsReason))
                                                        : one(with(), NoteWritten{.text = asked.text});
                          },
                          [&](const CorrectTime& asked) { return correct_time(with(), asked); },
                          [&](const CloseCase& asked) { return decide_step(with(), asked); },
                      },
                      intent);
}

Facts opening(const Brief& brief, const std::string& program, Source holder) {
    return {CaseOpened{.brief = brief, .program = program}, CountHeld{.source = holder}};
}

std::string_view name(Refused why) {
    switch (why) {
        case Refused::CaseClosed:
            return "case-closed";
        case Refused::AlreadyDone:
            return "already-done";
        case Refused::WrongStep:
            return "wrong-step";
        case Refused::DepartureOpen:
            return "departure-open";
        case Refused::GateShut:
            return "gate-shut";
        case Refused::NotZeroed:
            return "not-zeroed";
        case Refused::NotRaised:
            return "not-raised";
        case Refused::NoSuction:
            return "no-suction";
        case Refused::CountHeldElsewhere:
            return "count-held-elsewhere";
        case Refused::NothingToUndo:
            return "nothing-to-undo";
        case Refused::MarkTaken:
            return "mark-taken";
        case Refused::CountDiffers:
            return "count-differs";
        case Refused::NoDifference:
            return "no-difference";
        case Refused::ReasonOwed:
            return "reason-owed";
        case Refused::NeedsSecondPerson:
            return "needs-second-person";
        case Refused::NeedsSurgeon:
            return "needs-surgeon";
        case Refused::NeedsReason:
            return "needs-reason";
        case Refused::SideDiffers:
            return "side-differs";
        case Refused::PlanRefused:
            return "plan-refused";
        case Refused::ScanStands:
            return "scan-stands";
        case Refused::TissueUnfit:
            return "tissue-unfit";
        case Refused::TwoTissues:
            return "two-tissues";
        case Refused::NeverOverruled:
            return "never-overruled";
        case Refused::NeedsContact:
            return "needs-contact";
        case Refused::NeedsName:
            return "needs-name";
        case Refused::NeedsText:
            return "needs-text";
        case Refused::NeedsLabel:
            return "needs-label";
        case Refused::LabelDiffers:
            return "label-differs";
        case Refused::EyeNotOpened:
            return "eye-not-opened";
        case Refused::NoSuture:
            return "no-suture";
        case Refused::DepthOutOfRange:
            return "depth-out-of-range";
        case Refused::NoPlan:
            return "no-plan";
        case Refused::EyeOpen:
            return "eye-open";
        case Refused::TimeOutOfRange:
            return "time-out-of-range";
        case Refused::UnknownId:
            return "unknown-id";
    }
    measure::expect(false);
    return "";
}

}  // namespace guide
