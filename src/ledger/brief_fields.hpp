// The fields of what a case is opened with on disk: the procedure and the unit, and with them the inputs of the plan.
// Fields are only ever added.
#pragma once

#include "guide/brief.hpp"
#include "ledger/plan_fields.hpp"

namespace ledger {

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
    field("reopens", v.reopens);
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

void each(auto& field, a<guide::Pack> auto& v) {
    field("gtin", v.gtin);
    field("instrument", v.instrument);
    field("size_nm", v.size);
}

void each(auto& field, a<guide::Unit> auto& v) {
    field("counts", v.counts);
    field("scrub_name", v.scrub_name);
    field("circulating_name", v.circulating_name);
    field("limits", v.limits);
    field("packs", v.packs);
}

void each(auto& field, a<guide::Brief> auto& v) {
    field("inputs", v.inputs);
    field("procedure", v.procedure);
    field("unit", v.unit);
}

}  // namespace ledger
