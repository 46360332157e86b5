// What somebody asks for; `decide` may refuse it. The kebab-case of a name is the `do` of a play script.
#pragma once

#include "guide/item.hpp"
#include "guide/procedure.hpp"
#include "plan/plan.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <variant>

namespace guide {

enum class Who { Scrub, Circulating, Surgeon, Program };
enum class Source { Table, Desk, FootSwitch };
enum class Suction { Off, On, Lost };
enum class CutEnd { AtPlan, Entered, Surgeon };
enum class CaseEnd { Done, Converted, Abandoned };
enum class TissueWord { Accepted, Unfit, BackUpNamed, Grafted, NotUsed, LeftOver };
enum class KnotSide { Host, Donor, NotBuried };
enum class Specimen { HostButton, Rim, Medium };
enum class SentTo { Pathology, Culture, Discarded };

struct EnterSide {
    std::string side{};  // "right" | "left", from the consent
};
struct AcceptPlan {
    plan::Inputs inputs{};
    plan::Plan plan{};
    std::string why{};  // required when a plan was accepted before
};
struct FinishStep {
    StepId step{};
    int ago_s = 0;
};
struct ReopenStep {
    StepId step{};
    std::string why{};
};
struct SkipStep {
    StepId step{};
    std::string why{};
};
struct HoldCount {  // take the count over
    Source source{};
};
struct CountSpoke {
    Source source{};
};
struct RaiseBlade {};  // one spoke back, on the instrument
struct UndoTap {
    Seq event = 0;  // 0: the newest that can be undone
};
struct GoDeeper {};  // the surgeon moves the plan by one spoke
struct EndCut {
    CutEnd how{};
};
struct TurnSuction {
    Suction to{};
};
struct MarkClock {
    ClockId clock{};
    bool start = true;
    int ago_s = 0;
};
struct TieSuture {
    int n = 0;                      // 0: the next
    std::optional<int> centideg{};  // where it went; none: the planned place
};
struct CutSuture {
    int n = 0;
    std::string why{};
};
struct SeeRing {
    std::optional<int> long_axis_centideg{};  // none: round
};
struct MoveItems {  // + opened or added, - passed back
    ItemId item{};
    int by = 0;
};
struct CheckCount {
    ItemId item{};
    int seen = 0;
    std::string by{};
};
struct RecordDifference {  // searched for and not settled: the case goes on, the record says so
    ItemId item{};
    std::string why{};
};
struct Scan {
    std::string bytes{};
    Label label{};                       // as read from the bytes
    std::vector<Elsewhere> elsewhere{};  // what other cases on this station hold
};
struct PutAside {  // the scanned item is not used
    Seq event = 0;
    std::string why{};
};
struct MeasureDepth {  // of the cut at its thinnest place, at right angles to the surface, once the ring is off
    measure::Length depth{};
    std::string how{};
};
struct TellTissue {
    TissueWord what{};
    std::string text{};  // why unfit, which back-up, what was left over and where it went
};
struct TellKnots {  // where they are buried
    KnotSide side{};
};
struct NameSutures {
    std::string material{};  // material and size, as told
    std::string lot{};       // empty: not told, or that of the pack
    Seq pack = 0;            // the scan of the pack that they came from; 0: none
};
struct TellSpecimen {
    Specimen what{};
    SentTo to{};
    std::string side{};  // as the label says it; needed unless discarded
};
struct TellBank {
    std::string contact{};  // whom at the tissue bank
    std::string text{};     // what was told
};
struct Overrule {
    Seq event = 0;
    std::string why{};
    std::string contact{};  // at the tissue bank; required for expired tissue
};
struct Depart {
    DepartureId what{};
    std::string note{};
};
struct ComeBack {
    DepartureId what{};
};
struct GiveReason {
    Seq event = 0;
    std::string why{};
};
struct WriteNote {
    std::string text{};
};
struct CorrectTime {
    Seq event = 0;
    std::int64_t utc_ms = 0;
    std::string why{};
};
struct CloseCase {
    CaseEnd how{};
    std::string why{};  // required unless done
};

using Intent = std::variant<EnterSide, AcceptPlan, FinishStep, ReopenStep, SkipStep, HoldCount, CountSpoke, RaiseBlade, UndoTap, GoDeeper,
                            EndCut, TurnSuction, MarkClock, TieSuture, CutSuture, SeeRing, MoveItems, CheckCount, Scan, Overrule, Depart,
                            ComeBack, GiveReason, WriteNote, CorrectTime, CloseCase, RecordDifference, PutAside, TellTissue, MeasureDepth,
                            TellKnots, NameSutures, TellSpecimen, TellBank>;

}  // namespace guide
