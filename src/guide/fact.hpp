// What happened. Facts are never changed or deleted; the tag on disk is the kebab-case of the name and is never reused.
// Integers and text only. A new meaning is a new fact; a new fact needs a tag, a sample in the codec test, a lambda in `apply`.
#pragma once

#include "guide/brief.hpp"
#include "guide/intent.hpp"
#include "measure/instant.hpp"

#include <variant>

namespace guide {

struct CaseOpened {
    Brief brief{};
    std::string program{};
    bool operator==(const CaseOpened&) const = default;
};
struct RunStarted {  // the program took the case up again
    std::string program{};
    bool operator==(const RunStarted&) const = default;
};
struct SideEntered {
    std::string side{};
    bool operator==(const SideEntered&) const = default;
};
struct PlanAccepted {  // inputs, what was shown, and the formula's version inside it: replay never recomputes
    plan::Inputs inputs{};
    plan::Plan shown{};
    std::string why{};
    bool operator==(const PlanAccepted&) const = default;
};
struct PlanMoved {
    int by = 0;
    bool operator==(const PlanMoved&) const = default;
};
struct StepFinished {
    StepId step{};
    int ago_s = 0;
    bool operator==(const StepFinished&) const = default;
};
struct StepReopened {
    StepId step{};
    std::string why{};
    bool operator==(const StepReopened&) const = default;
};
struct StepSkipped {
    StepId step{};
    std::string why{};
    bool operator==(const StepSkipped&) const = default;
};
struct CountHeld {
    Source source{};
    bool operator==(const CountHeld&) const = default;
};
struct SpokeTurned {
    int by = 1;                // +1 down, -1 up
    bool owes_reason = false;  // over the plan, or turned without suction
    bool operator==(const SpokeTurned&) const = default;
};
struct TapUndone {
    Seq event = 0;
    bool operator==(const TapUndone&) const = default;
};
struct CutEnded {
    CutEnd how{};
    int position = 0;
    bool operator==(const CutEnded&) const = default;
};
struct SuctionTurned {
    Suction to{};
    bool operator==(const SuctionTurned&) const = default;
};
struct ClockMarked {
    ClockId clock{};
    bool start = true;
    int ago_s = 0;
    bool operator==(const ClockMarked&) const = default;
};
struct SutureTied {
    int n = 0;
    int centideg = 0;
    bool operator==(const SutureTied&) const = default;
};
struct SutureCut {
    int n = 0;
    std::string why{};
    bool operator==(const SutureCut&) const = default;
};
struct RingSeen {
    std::optional<int> long_axis_centideg{};
    bool operator==(const RingSeen&) const = default;
};
struct ItemsMoved {
    ItemId item{};
    int by = 0;
    bool operator==(const ItemsMoved&) const = default;
};
struct CountChecked {
    ItemId item{};
    int seen = 0, expected = 0;
    std::string by{};
    bool operator==(const CountChecked&) const = default;
};
struct Scanned {
    std::string bytes{}, meaning{};  // meaning: of earlier releases, which read nothing
    Item item{};
    std::vector<Objection> against{};
    Seq completes = 0;  // the scan whose label this is the rest of; 0: none
    bool operator==(const Scanned&) const = default;
};
struct Overruled {
    Seq event = 0;
    std::string why{}, contact{};
    bool operator==(const Overruled&) const = default;
};
struct Departed {
    DepartureId what{};
    std::string note{};
    bool operator==(const Departed&) const = default;
};
struct CameBack {
    DepartureId what{};
    bool operator==(const CameBack&) const = default;
};
struct ReasonGiven {
    Seq event = 0;
    std::string why{};
    bool operator==(const ReasonGiven&) const = default;
};
struct NoteWritten {
    std::string text{};
    bool operator==(const NoteWritten&) const = default;
};
struct TimeCorrected {
    Seq event = 0;
    std::int64_t utc_ms = 0;
    std::string why{};
    bool operator==(const TimeCorrected&) const = default;
};
struct WrittenLate {  // these were held in memory before the disk took them
    Seq first = 0, last = 0;
    bool operator==(const WrittenLate&) const = default;
};
struct CaseClosed {
    CaseEnd how{};
    std::string why{};
    bool operator==(const CaseClosed&) const = default;
};
struct DifferenceRecorded {  // two people saw the same number, not the expected one; what was done about it is in `why`
    ItemId item{};
    int seen = 0, expected = 0;
    std::string why{};
    bool operator==(const DifferenceRecorded&) const = default;
};

struct ItemPutAside {
    Seq event = 0;
    std::string why{};
    bool operator==(const ItemPutAside&) const = default;
};
struct TissueTold {
    TissueWord what{};
    std::string text{};
    bool operator==(const TissueTold&) const = default;
};
struct DepthMeasured {
    measure::Length depth{};
    std::string how{};
    bool operator==(const DepthMeasured&) const = default;
};
struct KnotsTold {
    KnotSide side{};
    bool operator==(const KnotsTold&) const = default;
};
struct SuturesNamed {
    std::string material{}, lot{};
    Seq pack = 0;  // the scan that the lot was taken from; 0: as told
    bool operator==(const SuturesNamed&) const = default;
};
struct SpecimenTold {
    Specimen what{};
    SentTo to{};
    std::string side{};  // on its label; empty where it was discarded without one
    bool operator==(const SpecimenTold&) const = default;
};
struct BankTold {
    std::string contact{}, text{};
    bool operator==(const BankTold&) const = default;
};

using Fact =
    std::variant<CaseOpened, RunStarted, SideEntered, PlanAccepted, PlanMoved, StepFinished, StepReopened, StepSkipped, CountHeld,
                 SpokeTurned, TapUndone, CutEnded, SuctionTurned, ClockMarked, SutureTied, SutureCut, RingSeen, ItemsMoved, CountChecked,
                 Scanned, Overruled, Departed, CameBack, ReasonGiven, NoteWritten, TimeCorrected, WrittenLate, CaseClosed,
                 DifferenceRecorded, ItemPutAside, TissueTold, DepthMeasured, KnotsTold, SuturesNamed, SpecimenTold, BankTold>;

struct Event {
    Seq seq = 0;  // 1, 2, 3 … within a case
    measure::Instant at{};
    Who who{};
    Fact fact{};
    bool operator==(const Event&) const = default;
};

}  // namespace guide
