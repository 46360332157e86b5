// The record as CSV by RFC 4180: a header, then a row an event, in order. Lines end in CR LF; a field is in quotes where it holds a
// comma, a quote, CR or LF, and quotes in it are doubled. UTF-8, no byte order mark.
#pragma once

#include "paper/record.hpp"

#include <string>

namespace paper {

/// case, event, at, who, kind, values, written_late. `values` is a JSON object; that of an opening or an agreed plan is too large
/// for a cell of a spreadsheet and left empty: it stands in the JSON.
std::string csv(const Record& record);

}  // namespace paper
