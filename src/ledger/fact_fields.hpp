// The tags and fields of the facts on disk, and of the procedure and the unit that a case is opened with.
// Tags are never reused, fields only ever added.
#pragma once

#include "guide/fact.hpp"
#include "ledger/plan_fields.hpp"

#include <string_view>

namespace ledger {

// ---- procedure and unit ----

void each(auto& field, a<guide::Step> auto& v) {
    field("id", v.id);
    field("title", v.title);
    field("lines", v.lines);
    field("who", v.who);
    field("say", v.say);
    field("button", v.button);
    field("closes", v.closes);
    field("sutures", v.sutures);
    field("only", v.only);
    field("needs", v.needs);
    field("starts", v.starts);
    field("stops", v.stops);
    field("cautions", v.cautions);
    field("ready", v.ready);
    field("open_now", v.open_now);
    field("open_later", v.open_later);
    field("nurse", v.nurse);
    field("pause", v.pause);
    field("quiet", v.quiet);
    field("may_skip", v.may_skip);
    field("picture", v.picture);
    field("departures", v.departures);
}

void each(auto& field, a<guide::Phase> auto& v) {
    field("id", v.id);
    field("title", v.title);
    field("steps", v.steps);
    field("departures", v.departures);
}

void each(auto& field, a<guide::Departure> auto& v) {
    field("id", v.id);
    field("title", v.title);
    field("level", v.level);
    field("lines", v.lines);
    field("back", v.back);
}

void each(auto& field, a<guide::Procedure> auto& v) {
    field("id", v.id);
    field("title", v.title);
    field("phases", v.phases);
    field("departures", v.departures);
}

void each(auto& field, a<guide::CountItem> auto& v) {
    field("id", v.id);
    field("title", v.title);
}

void each(auto& field, a<guide::Unit> auto& v) {
    field("counts", v.counts);
    field("scrub_name", v.scrub_name);
    field("circulating_name", v.circulating_name);
    field("limits", v.limits);
}

void each(auto& field, a<guide::Brief> auto& v) {
    field("inputs", v.inputs);
    field("procedure", v.procedure);
    field("unit", v.unit);
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
}

template <>
inline constexpr std::string_view tag<guide::Overruled> = "overruled";
void each(auto& field, a<guide::Overruled> auto& v) {
    field("event", v.event);
    field("why", v.why);
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

}  // namespace ledger
