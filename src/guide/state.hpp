// The state of a case: the fold of its events, and the figures read off it.
#pragma once

#include "guide/fact.hpp"

#include <map>
#include <optional>
#include <set>
#include <span>
#include <vector>

namespace guide {

using measure::Instant;

/// One a time the ring is put on the eye.
struct Seating {
    int down = 0, up = 0, raise = 0;
    std::optional<CutEnd> ended{};
    int position() const { return down - up - raise; }  // below 0 raised, 0 zero, above 0 below zero
    bool operator==(const Seating&) const = default;
};
struct Spell {
    Instant from{};
    std::optional<Instant> to{};
    Seq from_seq = 0, to_seq = 0;
    Instant from_tapped{}, to_tapped{};  // when it was written
    bool operator==(const Spell&) const = default;
};
struct Tied {
    int n = 0;
    int centideg = 0;
    Instant at{};
    int redone = 0;  // how often it was cut and tied again
    Seq seq = 0;
    Instant tapped{};
    bool operator==(const Tied&) const = default;
};
struct Check {
    CountChecked said{};
    Seq seq = 0;
    Instant at{};
    bool operator==(const Check&) const = default;
};
struct Recorded {
    DifferenceRecorded said{};
    Seq seq = 0;
    Instant at{};
    bool operator==(const Recorded&) const = default;
};
struct Tally {
    int opened = 0, passed_back = 0;
    Seq moved = 0;                        // the newest move: checks before it no longer hold
    std::vector<Check> checks{};          // all of them, newest last
    std::vector<Recorded> differences{};  // all that were recorded, newest last
    int expected() const { return opened - passed_back; }
    bool operator==(const Tally&) const = default;
};
struct StepDone {
    bool skipped = false;
    Instant at{};
    Seq seq = 0;
    Instant tapped{};  // when it was written: what one tap wrote bears one moment here, whatever is corrected later
    bool operator==(const StepDone&) const = default;
};
struct Away {  // a departure not yet come back from, or over
    DepartureId what{};
    Instant at{};
    std::optional<Instant> back{};
    Seq seq = 0;
    bool operator==(const Away&) const = default;
};
struct ScanSeen {
    Seq seq = 0;
    Instant at{};
    Scanned said{};
    bool put_aside = false, overruled = false;
    bool completed = false;            // a later scan holds the whole label
    std::vector<Objection> settled{};  // overruled on the scans that this one goes on from
    bool operator==(const ScanSeen&) const = default;
};
struct Told {
    TissueWord what{};
    std::string text{};
    Instant at{};
    bool operator==(const Told&) const = default;
};
/// What was said of the graft at its end, and when.
template <class Fact>
struct Said {
    Fact fact{};
    Instant at{};
    Seq seq = 0;
    bool operator==(const Said&) const = default;
};
/// A plan that took the place of another: for the list of what happened.
struct PlanChanged {
    std::optional<int> spokes{};
    std::string why{};
    bool operator==(const PlanChanged&) const = default;
};
struct RingRecorded {
    Seq seq = 0;
    RingSeen said{};
    bool operator==(const RingRecorded&) const = default;
};
struct Undoable {
    Seq seq = 0;
    Instant at{};
    Fact fact{};
    bool operator==(const Undoable&) const = default;
};

struct CaseState {
    Seq last = 0;
    Brief brief{};
    std::string side{};  // as entered; empty until then
    std::optional<plan::Plan> plan{};
    plan::Inputs inputs{};  // of the accepted plan; before that, of the brief
    int moved = 0;          // spokes by which the surgeon moved the plan
    std::map<StepId, StepDone> steps{};
    Seq step_since = 0;  // the event that made the present step the present one
    std::vector<Seating> seatings{};
    std::optional<measure::Length> depth{};  // of the cut, as measured after it
    Suction suction = Suction::Off;
    std::optional<Source> holder{};
    std::map<ClockId, std::vector<Spell>> clocks{};
    std::vector<Tied> sutures{};       // in place now, in the order tied
    std::map<int, int> cut_sutures{};  // number -> how often cut out
    std::optional<RingSeen> ring{};
    Seq ring_seq = 0;
    std::vector<RingRecorded> rings{};  // all that stand, newest last
    std::map<ItemId, Tally> counts{};
    std::vector<Away> departures{};
    std::vector<ScanSeen> scans{};
    std::vector<Told> tissue{};  // of the donor, newest last
    std::optional<Said<KnotsTold>> knots{};
    std::vector<Said<SuturesNamed>> materials{};         // newest last
    std::map<Specimen, Said<SpecimenTold>> specimens{};  // the last word on each
    std::optional<Said<BankTold>> bank{};
    std::vector<Seq> reasons_owed{};
    std::vector<Undoable> undoable{};  // newest last
    std::vector<std::pair<Instant, std::string>> notes{};
    std::vector<Said<PlanChanged>> plans_changed{};  // newest last, as the two below
    std::vector<Said<PlanMoved>> plans_moved{};      // what is taken back again is not here
    std::vector<Said<TimeCorrected>> times_corrected{};
    Seq changed = 0;  // the newest event that changed a plan or corrected a time
    std::optional<CaseEnd> closed{};
    bool operator==(const CaseState&) const = default;
};

/// Total over the facts, never judges, never fails.
CaseState apply(CaseState state, const Event& event);
CaseState fold(std::span<const Event> events);

// ---- read off the state ----

/// The first step of the procedure that applies and is not done yet; none when all are.
const Step* current_step(const CaseState& state);
const Phase* current_phase(const CaseState& state);
/// Whether a step belongs to this case: some only with a running suture.
bool applies(const CaseState& state, const Step& step);
/// The step of the procedure that closes in this way, the first of them; none if there is none.
const Step* step_that_closes(const Procedure& procedure, Closes closes);
/// Done and not skipped.
bool confirmed(const CaseState& state, const StepId& step);

/// The ring is on the eye and the cut has not ended: every spoke counts.
bool cutting(const CaseState& state);
/// Whether a spoke has gone below zero in any seating, as far as spokes tell: a groove that a hand can go on from.
bool groove_begun(const CaseState& state);
/// Whether a spoke may still come to be turned: neither is the cut done nor the eye open.
bool spokes_ahead(const CaseState& state);
/// The blade is still to be turned in the present phase, or can turn: it matters who holds the count.
bool count_matters(const CaseState& state);
struct Blade {
    int seating = 0;  // 0: not yet seated
    int spokes_turned = 0, raised = 0, position = 0;
    int to_zero = 0;
    std::optional<int> to_go{}, planned{};
    measure::Length travel{};
    bool reliable = true;  // false after a second seating
    int over = 0;
    bool operator==(const Blade&) const = default;
};
Blade blade(const CaseState& state);

struct ClockReading {
    std::int64_t ms = 0;
    bool running = false, exact = true;
    bool operator==(const ClockReading&) const = default;
};
/// The sum over the spells of a clock; none if it was never started.
std::optional<ClockReading> clock_reading(const CaseState& state, const ClockId& clock, const Instant& now);

/// Sutures of the plan's order; 0 before a plan.
int sutures_planned(const CaseState& state);
/// Of the plan in use; where the surgeon moved it by spokes, the number in use is the surgeon's own.
plan::Inputs inputs_in_use(const CaseState& state);
/// Tied sutures that close this step.
int sutures_wanted(const CaseState& state, const Step& step);
/// The number of the next suture to tie; none when the pattern is complete.
std::optional<int> next_suture(const CaseState& state);
const Tied* find_tied(const CaseState& state, int n);
/// A name as it is held against others: initials in capitals or not, with or without blanks, are one person.
std::string same_person(const std::string& name);
/// The newest check of an item by a person that still holds at this gate; none if there is none.
std::optional<int> check_that_holds(const CaseState& state, const ItemId& item, const std::string& by);
/// What is seen at this gate, other than expected: the number and who saw it. None while nobody differs.
struct Difference {
    int seen = 0, expected = 0;
    std::map<std::string, std::string> by{};  // those who saw just this number, as `same_person` writes them: as they were told
    bool disputed = false;                    // somebody's check that holds says another number
    bool operator==(const Difference&) const = default;
};
std::optional<Difference> difference(const CaseState& state, const ItemId& item);
/// The difference recorded at this gate, which no later move or check has made void; none if there is none.
const Recorded* recorded_difference(const CaseState& state, const ItemId& item);
/// A difference that is not recorded yet.
std::optional<Difference> open_difference(const CaseState& state, const ItemId& item);
/// Every item has been checked at this gate by two different people, both equal to what is expected, or its difference is recorded.
bool counts_agree(const CaseState& state);
bool clock_running(const CaseState& state, const ClockId& clock);
/// What an undo without a number takes back: the newest that can be undone; while the blade can turn, never a count of things.
const Undoable* newest_to_undo(const CaseState& state);
/// Decompressed or open, by the clocks.
bool eye_open(const CaseState& state);
/// The eye was entered at some time, whether it is closed again or not.
bool eye_entered(const CaseState& state);
/// Whether the step that opens the eye was done, and its clock rests on that.
bool opened_by_step(const CaseState& state);
/// Whether it was told that the eye was entered: by the end of a cut, by its own departure, or by that step.
bool entry_told(const CaseState& state);
/// Departures that are still open, newest last.
std::vector<Away> open_departures(const CaseState& state);

}  // namespace guide
