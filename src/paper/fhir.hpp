// The record as an HL7 FHIR R4 (4.0.1) Bundle of type `collection`. Not a `document`: that is a fixed text which somebody attests, with
// an author; here nobody has, and the seal is a station's, not a person's. No patient stands in it: `subject` is the case reference in
// words, for the receiving system to put its own patient in. Codes are text alone, in English whatever the wording: code systems
// for this are licensed in some countries. What the record does not hold is an Observation with `dataAbsentReason` unknown.
// The same record gives the same bytes; ids are made from the hash of its last event. Not tested for conformance with any profile.
#pragma once

#include "paper/record.hpp"
#include "paper/words.hpp"

#include <string>

namespace paper {

/// `words` are for what went otherwise, which stands as notes.
std::string fhir(const Record& record, const Words& words);

}  // namespace paper
