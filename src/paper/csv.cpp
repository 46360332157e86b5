#include "paper/csv.hpp"

#include <array>

namespace paper {
namespace {

std::string field(const std::string& text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
    std::string quoted = "\"";
    for (const char c : text) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
    return quoted + "\"";
}

template <std::size_t Count>
std::string row(const std::array<std::string, Count>& fields) {
    std::string line = field(fields.front());
    for (std::size_t i = 1; i < Count; ++i) line += "," + field(fields[i]);
    return line + "\r\n";
}

bool too_large(const std::string& kind) { return kind == "case-opened" || kind == "plan-accepted"; }

}  // namespace

std::string csv(const Record& record) {
    std::string text = row<7>({"case", "event", "at", "who", "kind", "values", "written_late"});
    for (const Entry& entry : record.entries) {
        text += row<7>({reference(record), std::to_string(entry.seq), measure::rfc3339(entry.at), entry.who, entry.kind,
                        too_large(entry.kind) ? "" : entry.values, written_late(record, entry.seq) ? "yes" : "no"});
    }
    return text;
}

}  // namespace paper
