// The record of a case as the bytes of a file: the sheet, FHIR, CSV, JSON. Where a file goes is the caller's.
#pragma once

#include "ledger/ledger.hpp"
#include "paper/record.hpp"
#include "stock.hpp"

#include <string>

namespace graftside {

/// The case as it stands on the ledger's disk, with what the ledger says of itself.
Try<paper::Record> record_of(const ledger::Ledger& ledger, const std::string& reference);

struct HandoverForm {
    std::string format{};  // "pdf" | "fhir" | "csv" | "json"
    std::string paper{};   // of the sheet: "letter", else A4
};
Try<std::string> handover_bytes(const paper::Record& record, const Stock& stock, const HandoverForm& form);
/// ".pdf", ".fhir.json" …: how such a file's name ends.
std::string handover_ending(const std::string& format);

}  // namespace graftside
