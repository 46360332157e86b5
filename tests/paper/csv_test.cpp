// RFC 4180, October 2005: CR LF after each record, the same number of fields in each, quotes round a field that holds a comma, a quote or
// a line break, quotes in it doubled.
#include "paper/csv.hpp"
#include "paper/printed.hpp"

#include <doctest/doctest.h>

namespace {

using Rows = std::vector<std::vector<std::string>>;

/// A reader of its own, by the grammar of RFC 4180 section 2, strict: an empty result is a fault.
Rows read_strictly(const std::string& text) {
    Rows rows{{""}};
    bool quoted = false, closed = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        std::string& field = rows.back().back();
        if (quoted) {
            if (c != '"')
                field += c;
            else if (i + 1 < text.size() && text[i + 1] == '"')
                field += text[++i];
            else
                quoted = false, closed = true;
        } else if (c == '"' && field.empty() && !closed) {
            quoted = true;
        } else if (c == ',') {
            rows.back().emplace_back(), closed = false;
        } else if (c == '\r' && i + 1 < text.size() && text[i + 1] == '\n') {
            rows.emplace_back(1), ++i, closed = false;
        } else if (c == '"' || c == '\r' || c == '\n' || closed) {
            return {};
        } else {
            field += c;
        }
    }
    if (quoted || rows.back() != std::vector<std::string>{""}) return {};
    rows.pop_back();
    return rows;
}

}  // namespace

TEST_CASE("a row an event after a header, all of the same number of fields") {
    const paper::Record record = printed::demo();
    const Rows rows = read_strictly(paper::csv(record));
    REQUIRE(rows.size() == record.events.size() + 1);
    for (const auto& row : rows) CHECK(row.size() == 7);
    CHECK(rows.front() == std::vector<std::string>{"case", "event", "at", "who", "kind", "values", "written_late"});
    CHECK(rows[1][4] == "case-opened");
    CHECK(rows.back()[4] == "case-closed");
    CHECK(rows.back()[2] == "2026-11-25T08:36:33.000Z");
}

TEST_CASE("commas, quotes and line breaks come back as they were") {
    paper::Record record = printed::opened();
    const std::string hard = "a, \"b\"\r\nc\nd;e\t";
    printed::add(record, {guide::NoteWritten{"x"}, guide::WrittenLate{record.state.last + 1, record.state.last + 1}});
    record.entries[record.entries.size() - 2].values = hard;
    const Rows rows = read_strictly(paper::csv(record));
    REQUIRE(rows.size() == record.events.size() + 1);
    CHECK(rows[rows.size() - 2][5] == hard);
    CHECK(rows[rows.size() - 2][6] == "yes");
    CHECK(rows.back()[6] == "no");
}
