#include "paper/fhir.hpp"

#include "guide/tissue.hpp"
#include "paper/fhir_parts.hpp"
#include "paper/sheet.hpp"

#include <fmt/format.h>

namespace paper {
namespace {

using r4::Context;
using r4::Json;
using r4::text;

/// RFC 9562 version 8: from the hash of the last event and the number of the entry, so that the same record gives the same ids.
std::string uuid(const std::string& hash, std::size_t entry) {
    const std::string h = hash.size() < 32 ? std::string(32, '0') : hash.substr(0, 32);
    return fmt::format("{}-{}-8{}-8{}-{}{:04x}", h.substr(0, 8), h.substr(8, 4), h.substr(12, 3), h.substr(15, 3), h.substr(18, 8), entry);
}

Json reference(const Record& record, std::size_t entry) { return {{"reference", "urn:uuid:" + uuid(record.seal.hash, entry)}}; }

// The places of the resources that others refer to.
constexpr std::size_t procedure_entry = 0, tissue_entry = 1, trephine_entry = 2, punch_entry = 3, program_entry = 4;
constexpr std::size_t bundle_number = 0xffff;

Context context_of(const Record& record) {
    return {.record = &record,
            .subject = "Patient of case " + reference(record) + "; this record keeps no name",
            .status = record.state.closed ? "final" : "preliminary",
            .procedure = reference(record, procedure_entry),
            .tissue = reference(record, tissue_entry),
            .trephine = reference(record, trephine_entry),
            .punch = reference(record, punch_entry),
            .program = reference(record, program_entry)};
}

/// Value set event-status.
std::string procedure_status(const guide::CaseState& state) {
    if (!state.closed) return "in-progress";
    switch (*state.closed) {
        case guide::CaseEnd::Done:
        case guide::CaseEnd::Converted:
            return "completed";
        case guide::CaseEnd::Abandoned:
            return state.seatings.empty() ? "not-done" : "stopped";
    }
    return "unknown";
}

Json period(const Record& record) {
    Json made = {{"start", measure::rfc3339(record.events.front().at)}};
    if (record.state.closed) made["end"] = measure::rfc3339(last_moment(record));
    return made;
}

Json procedure(const Context& context, const Words& words) {
    const Record& record = *context.record;
    const guide::CaseState& state = record.state;
    Json made = {{"resourceType", "Procedure"},
                 {"identifier", Json::array({Json{{"type", text("case reference")}, {"value", reference(record)}}})},
                 {"status", procedure_status(state)},
                 {"code", text("Full-thickness corneal graft (penetrating keratoplasty)")},
                 {"subject", {{"type", "Patient"}, {"display", context.subject}}},
                 {"performedPeriod", period(record)},
                 {"bodySite", Json::array({text(state.inputs.file.side == eye::Side::Right ? "Right eye" : "Left eye")})},
                 {"usedReference", Json::array({context.trephine, context.punch})}};
    if (state.closed == guide::CaseEnd::Converted) made["outcome"] = text("converted to another method");
    for (const std::string& line : otherwise(record, words)) made["note"].push_back(text(line));
    return made;
}

Json tissue(const Context& context) {
    const guide::CaseState& state = context.record->state;
    Json made = {{"resourceType", "BiologicallyDerivedProduct"}, {"productCategory", "tissue"}, {"productCode", text("Donor cornea")}};
    if (const auto number = donation(state)) {
        const guide::ScanSeen* read = guide::tissue_read(state);
        const char* type = read == nullptr ? "donation number as planned, not read" : "donation number";
        Json identifier = {{"type", text(type)}, {"value", *number}};
        // The systems that the specification's own R5 examples use; told apart by length alone.
        if (number->size() == 13) identifier["system"] = "https://www.isbt128.org/uri/DonationIdentificationNumber";
        if (number->size() == 40) identifier["system"] = "https://www.isbt128.org/uri/SingleEuropeanCode";
        made["identifier"] = Json::array({identifier});
        if (read != nullptr && read->said.item.product) {  // both corneas of a donor bear one donation number
            const guide::Item& item = read->said.item;
            made["identifier"].push_back(
                {{"type", text("product code and division")}, {"value", fmt::format("{} {}", *item.product, item.division.value_or("-"))}});
        }
    }
    if (const auto storage = state.inputs.file.donor.storage) {
        made["storage"] = Json::array({Json{{"description", *storage == plan::Storage::Cold ? "cold" : "warm culture"}}});
    }
    return made;
}

/// A device; with what its pack said, where one was read.
Json device(const std::string& type, const std::string& name, const guide::Item* pack) {
    Json made = {{"resourceType", "Device"}};
    if (pack != nullptr && pack->gtin)
        made["udiCarrier"] = Json::array({Json{{"deviceIdentifier", *pack->gtin}, {"entryType", "barcode"}}});
    made["status"] = "active";
    if (pack != nullptr && pack->expires) made["expirationDate"] = measure::iso(*pack->expires);
    if (pack != nullptr && pack->lot) made["lotNumber"] = *pack->lot;
    if (pack != nullptr && pack->serial) made["serialNumber"] = *pack->serial;
    made["deviceName"] = Json::array({Json{{"name", name}, {"type", "user-friendly-name"}}});
    made["type"] = text(type);
    return made;
}

std::string said_by(guide::Who who) {
    switch (who) {
        case guide::Who::Scrub:
            return "scrub nurse";
        case guide::Who::Circulating:
            return "circulating nurse";
        case guide::Who::Surgeon:
            return "surgeon";
        case guide::Who::Program:
            return "program";
    }
    return {};
}

/// Where the record comes from, and the hash by which it can be checked.
Json origin(const Context& context) {
    const Record& record = *context.record;
    const Json hash = {{"type", text("BLAKE2b-256 of the last event of the record")}, {"value", record.seal.hash}};
    const std::string sealed =
        record.seal.state == Seal::State::Whole ? "sealed by the station key " + record.seal.fingerprint : "not sealed";
    return {{"resourceType", "Provenance"},
            {"target", Json::array({context.procedure})},
            {"recorded", measure::rfc3339(last_moment(record))},
            {"agent", Json::array({Json{{"who", context.program}}})},
            {"entity", Json::array({Json{{"role", "source"}, {"what", {{"identifier", hash}, {"display", sealed}}}}})}};
}

Json correction(const Context& context, const Told<guide::TimeCorrected>& told) {
    Json made = {{"resourceType", "Provenance"},
                 {"target", Json::array({context.procedure})},
                 {"recorded", measure::rfc3339(told.event->at)},
                 {"activity", text("time of event " + std::to_string(told.fact->event) + " corrected")},
                 {"agent", Json::array({Json{{"who", {{"display", said_by(told.event->who)}}}}})}};
    if (!told.fact->why.empty()) made["reason"] = Json::array({text(told.fact->why)});
    return made;
}

std::vector<Json> resources(const Record& record, const Words& words) {
    const Context context = context_of(record);
    const instrument::Trephine& trephine = record.state.inputs.trephine;
    const instrument::Punch& punch = record.state.inputs.punch;
    std::vector<Json> made{
        procedure(context, words), tissue(context), device("Host trephine", trephine.name, pack_read(record.state, trephine.id)),
        device("Donor punch", punch.name, pack_read(record.state, punch.id)), device("Record-keeping program", record.program, nullptr)};
    for (const r4::Observation& one : r4::observations(context)) made.push_back(r4::resource(context, one));
    made.push_back(origin(context));
    for (const auto& told : all_of<guide::TimeCorrected>(record)) made.push_back(correction(context, told));
    return made;
}

}  // namespace

std::string fhir(const Record& record, const Words& words) {
    Json bundle = {{"resourceType", "Bundle"}};
    if (record.state.inputs.file.invented) {
        const Json test = {
            {"system", "http://terminology.hl7.org/CodeSystem/v3-ActReason"}, {"code", "HTEST"}, {"display", "test health data"}};
        bundle["meta"] = {{"tag", Json::array({test})}};
    }
    bundle["identifier"] = {{"system", "urn:ietf:rfc:3986"}, {"value", "urn:uuid:" + uuid(record.seal.hash, bundle_number)}};
    bundle["type"] = "collection";
    bundle["timestamp"] = measure::rfc3339(last_moment(record));
    std::size_t number = 0;
    for (Json& resource : resources(record, words)) {
        bundle["entry"].push_back({{"fullUrl", "urn:uuid:" + uuid(record.seal.hash, number++)}, {"resource", std::move(resource)}});
    }
    return bundle.dump(2) + "\n";
}

}  // namespace paper
