// The tags and fields of the facts on disk. Tags are never reused, fields only ever added.
#pragma once

#include "guide/fact.hpp"
#include "ledger/brief_fields.hpp"

#include <string_view>

namespace ledger {

// ---- what was scanned ----

void each(auto& field, a<guide::Item> auto& v) {
    field("kind", v.kind);
    field("donation", v.donation);
    field("product", v.product);
    field("division", v.division);
    field("gtin", v.gtin);
    field("lot", v.lot);
    field("serial", v.serial);
    field("expires", v.expires);
    field("collected", v.collected);
    field("expires_minute", v.expires_minute);
    field("instrument", v.instrument);
    field("size_nm", v.size);
}

void each(auto& field, a<guide::Objection> auto& v) {
    field("what", v.what);
    field("values", v.values);
}

// ---- facts ----

template <class F>
constexpr std::string_view tag = "";  // every fact has its own below; the codec's test and a static_assert see to it

template <>
inline constexpr std::string_view tag<guide::CaseOpened> = "case-opened";
void each(auto& field, a<guide::CaseOpened> auto& v) {
    field("brief", v.brief);
    field("program", v.program);
}

template <>
inline constexpr std::string_view tag<guide::RunStarted> = "run-started";
void each(auto& field, a<guide::RunStarted> auto& v) { field("program", v.program); }

template <>
inline constexpr std::string_view tag<guide::SideEntered> = "side-entered";
void each(auto& field, a<guide::SideEntered> auto& v) { field("side", v.side); }

template <>
inline constexpr std::string_view tag<guide::PlanAccepted> = "plan-accepted";
void each(auto& field, a<guide::PlanAccepted> auto& v) {
    field("inputs", v.inputs);
    field("shown", v.shown);
    field("why", v.why);
}

template <>
inline constexpr std::string_view tag<guide::PlanMoved> = "plan-moved";
void each(auto& field, a<guide::PlanMoved> auto& v) { field("by", v.by); }

template <>
inline constexpr std::string_view tag<guide::StepFinished> = "step-finished";
void each(auto& field, a<guide::StepFinished> auto& v) {
    field("step", v.step);
    field("ago_s", v.ago_s);
}

template <>
inline constexpr std::string_view tag<guide::StepReopened> = "step-reopened";
void each(auto& field, a<guide::StepReopened> auto& v) {
    field("step", v.step);
    field("why", v.why);
}

template <>
inline constexpr std::string_view tag<guide::StepSkipped> = "step-skipped";
void each(auto& field, a<guide::StepSkipped> auto& v) {
    field("step", v.step);
    field("why", v.why);
}

template <>
inline constexpr std::string_view tag<guide::CountHeld> = "count-held";
void each(auto& field, a<guide::CountHeld> auto& v) { field("source", v.source); }

template <>
inline constexpr std::string_view tag<guide::SpokeTurned> = "spoke-turned";
void each(auto& field, a<guide::SpokeTurned> auto& v) {
    field("by", v.by);
    field("owes_reason", v.owes_reason);
}

template <>
inline constexpr std::string_view tag<guide::TapUndone> = "tap-undone";
void each(auto& field, a<guide::TapUndone> auto& v) { field("event", v.event); }

template <>
inline constexpr std::string_view tag<guide::CutEnded> = "cut-ended";
void each(auto& field, a<guide::CutEnded> auto& v) {
    field("how", v.how);
    field("position", v.position);
}

template <>
inline constexpr std::string_view tag<guide::SuctionTurned> = "suction-turned";
void each(auto& field, a<guide::SuctionTurned> auto& v) { field("to", v.to); }

template <>
inline constexpr std::string_view tag<guide::ClockMarked> = "clock-marked";
void each(auto& field, a<guide::ClockMarked> auto& v) {
    field("clock", v.clock);
    field("start", v.start);
    field("ago_s", v.ago_s);
}

template <>
inline constexpr std::string_view tag<guide::SutureTied> = "suture-tied";
void each(auto& field, a<guide::SutureTied> auto& v) {
    field("n", v.n);
    field("centideg", v.centideg);
}

template <>
inline constexpr std::string_view tag<guide::SutureCut> = "suture-cut";
void each(auto& field, a<guide::SutureCut> auto& v) {
    field("n", v.n);
    field("why", v.why);
}

template <>
inline constexpr std::string_view tag<guide::RingSeen> = "ring-seen";
void each(auto& field, a<guide::RingSeen> auto& v) { field("long_axis_centideg", v.long_axis_centideg); }

template <>
inline constexpr std::string_view tag<guide::ItemsMoved> = "items-moved";
void each(auto& field, a<guide::ItemsMoved> auto& v) {
    field("item", v.item);
    field("by", v.by);
}

template <>
inline constexpr std::string_view tag<guide::CountChecked> = "count-checked";
void each(auto& field, a<guide::CountChecked> auto& v) {
    field("item", v.item);
    field("seen", v.seen);
    field("expected", v.expected);
    field("by", v.by);
}

template <>
inline constexpr std::string_view tag<guide::Scanned> = "scanned";
void each(auto& field, a<guide::Scanned> auto& v) {
    field("bytes", v.bytes);
    field("meaning", v.meaning);
    field("item", v.item);
    field("against", v.against);
    field("completes", v.completes);
}

template <>
inline constexpr std::string_view tag<guide::Overruled> = "overruled";
void each(auto& field, a<guide::Overruled> auto& v) {
    field("event", v.event);
    field("why", v.why);
    field("contact", v.contact);
}

template <>
inline constexpr std::string_view tag<guide::Departed> = "departed";
void each(auto& field, a<guide::Departed> auto& v) {
    field("what", v.what);
    field("note", v.note);
}

template <>
inline constexpr std::string_view tag<guide::CameBack> = "came-back";
void each(auto& field, a<guide::CameBack> auto& v) { field("what", v.what); }

template <>
inline constexpr std::string_view tag<guide::ReasonGiven> = "reason-given";
void each(auto& field, a<guide::ReasonGiven> auto& v) {
    field("event", v.event);
    field("why", v.why);
}

template <>
inline constexpr std::string_view tag<guide::NoteWritten> = "note-written";
void each(auto& field, a<guide::NoteWritten> auto& v) { field("text", v.text); }

template <>
inline constexpr std::string_view tag<guide::TimeCorrected> = "time-corrected";
void each(auto& field, a<guide::TimeCorrected> auto& v) {
    field("event", v.event);
    field("utc_ms", v.utc_ms);
    field("why", v.why);
}

template <>
inline constexpr std::string_view tag<guide::WrittenLate> = "written-late";
void each(auto& field, a<guide::WrittenLate> auto& v) {
    field("first", v.first);
    field("last", v.last);
}

template <>
inline constexpr std::string_view tag<guide::CaseClosed> = "case-closed";
void each(auto& field, a<guide::CaseClosed> auto& v) {
    field("how", v.how);
    field("why", v.why);
}

template <>
inline constexpr std::string_view tag<guide::DifferenceRecorded> = "difference-recorded";
void each(auto& field, a<guide::DifferenceRecorded> auto& v) {
    field("item", v.item);
    field("seen", v.seen);
    field("expected", v.expected);
    field("why", v.why);
}

template <>
inline constexpr std::string_view tag<guide::ItemPutAside> = "item-put-aside";
void each(auto& field, a<guide::ItemPutAside> auto& v) {
    field("event", v.event);
    field("why", v.why);
}

template <>
inline constexpr std::string_view tag<guide::TissueTold> = "tissue-told";
void each(auto& field, a<guide::TissueTold> auto& v) {
    field("what", v.what);
    field("text", v.text);
}

template <>
inline constexpr std::string_view tag<guide::DepthMeasured> = "depth-measured";
void each(auto& field, a<guide::DepthMeasured> auto& v) {
    field("depth_nm", v.depth);
    field("how", v.how);
}

template <>
inline constexpr std::string_view tag<guide::KnotsTold> = "knots-told";
void each(auto& field, a<guide::KnotsTold> auto& v) { field("side", v.side); }

template <>
inline constexpr std::string_view tag<guide::SuturesNamed> = "sutures-named";
void each(auto& field, a<guide::SuturesNamed> auto& v) {
    field("material", v.material);
    field("lot", v.lot);
    field("pack", v.pack);
}

template <>
inline constexpr std::string_view tag<guide::SpecimenTold> = "specimen-told";
void each(auto& field, a<guide::SpecimenTold> auto& v) {
    field("what", v.what);
    field("to", v.to);
    field("side", v.side);
}

template <>
inline constexpr std::string_view tag<guide::BankTold> = "bank-told";
void each(auto& field, a<guide::BankTold> auto& v) {
    field("contact", v.contact);
    field("text", v.text);
}

}  // namespace ledger
