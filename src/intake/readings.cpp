#include "intake/readings.hpp"

#include "eye/frame.hpp"
#include "intake/document.hpp"
#include "intake/reading.hpp"
#include "intake/utf8.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>

namespace intake {
namespace {

using measure::Length;

constexpr auto headers = "ring_mm,clock,um or ring_mm,meridian_deg,um, the names in any order";
constexpr std::size_t most_readings = 2000;
constexpr std::size_t columns = 3;
constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

struct Cell {
    std::string text{};
    Place at{};
};

struct Row {
    std::vector<Cell> cells{};
    Place at{};
};

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

/// One line while it is taken apart.
class Line {
public:
    Line(std::string_view text, int number) : text_(text), number_(number) {}

    Place place() const { return {.line = number_, .column = static_cast<int>(characters(text_.substr(0, next_))) + 1}; }

    /// The next cell; none where its quotes do not close or are followed by more.
    std::optional<Cell> cell() {
        next_ = std::min(text_.find_first_not_of(" \t", next_), text_.size());
        Cell cell{.text = {}, .at = place()};
        if (next_ == text_.size() || text_[next_] != '"') {
            const auto end = std::min(text_.find(',', next_), text_.size());
            cell.text = trimmed(text_.substr(next_, end - next_));
            next_ = end;
            return cell;
        }
        const auto text = quoted_text();
        if (!text) return std::nullopt;
        cell.text = *text;
        next_ = std::min(text_.find_first_not_of(" \t", next_), text_.size());
        return next_ == text_.size() || text_[next_] == ',' ? std::optional(cell) : std::nullopt;
    }

    bool comma() {
        if (next_ >= text_.size() || text_[next_] != ',') return false;
        ++next_;
        return true;
    }

private:
    std::optional<std::string> quoted_text() {
        std::string text{};
        for (++next_; next_ < text_.size(); ++next_) {
            if (text_[next_] != '"') {
                text += text_[next_];
            } else if (next_ + 1 < text_.size() && text_[next_ + 1] == '"') {
                text += text_[next_++];
            } else {
                ++next_;
                return text;
            }
        }
        return std::nullopt;
    }

    std::string_view text_;
    int number_;
    std::size_t next_ = 0;
};

std::optional<Row> row_of(std::string_view text, int number, Report& report) {
    Row row{.cells = {}, .at = {.line = number, .column = 1}};
    Line line(text, number);
    do {
        auto cell = line.cell();
        if (!cell) {
            report.add(line.place(), "row", "quotes that do not close before the comma", "a value, or a value in double quotes");
            return std::nullopt;
        }
        row.cells.push_back(*std::move(cell));
    } while (line.comma());
    return row;
}

/// The rows that say something, in their order.
std::vector<Row> rows_of(std::string_view text, Report& report) {
    std::vector<Row> rows{};
    for (int number = 1; !text.empty(); ++number) {
        const auto end = std::min(text.find('\n'), text.size());
        std::string_view line = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        if (line.ends_with('\r')) line.remove_suffix(1);
        const auto said = trimmed(line);
        if (said.empty() || said.front() == '#') continue;
        if (auto row = row_of(line, number, report)) rows.push_back(*std::move(row));
    }
    return rows;
}

/// Where each value stands in a row.
struct Columns {
    std::size_t ring = columns, at = columns, um = columns;
    bool by_clock = true;
};

std::optional<Columns> columns_of(const Row& header) {
    Columns found{};
    for (std::size_t i = 0; i < header.cells.size(); ++i) {
        const std::string& name = header.cells[i].text;
        if (name == "ring_mm") found.ring = i;
        if (name == "um") found.um = i;
        if (name == "clock" || name == "meridian_deg") {
            found.at = i;
            found.by_clock = name == "clock";
        }
    }
    const bool all = std::max({found.ring, found.at, found.um}) < columns;
    return all && header.cells.size() == columns ? std::optional(found) : std::nullopt;
}

/// A number where the text is one, else the text.
Node node_of(const Cell& cell) {
    double value = 0;
    const char* end = cell.text.data() + cell.text.size();
    const auto [rest, error] = std::from_chars(cell.text.data(), end, value);
    if (error == std::errc{} && rest == end) return {.at = cell.at, .value = value};
    return {.at = cell.at, .value = cell.text};
}

template <class T>
T value_of(const Node& node, const char* key, const Rule<T>& rule, Report& report) {
    const auto value = rule.read(node);
    if (!value) report.add(node.at, key, shown(node), rule.allowed);
    return value.value_or(T{});
}

plan::Reading reading_of(const Row& row, const Columns& where, Report& report) {
    const Cell& at = row.cells[where.at];
    return {.ring = value_of(node_of(row.cells[where.ring]), "ring_mm", ring_diameter(), report),
            .at = where.by_clock ? value_of({.at = at.at, .value = at.text}, "clock", clock_hour(), report)
                                 : value_of(node_of(at), "meridian_deg", degrees(), report),
            .thickness = value_of(node_of(row.cells[where.um]), "um", corneal_thickness(), report)};
}

std::string joined(const Row& row) {
    std::string all{};
    for (const Cell& cell : row.cells) all += (all.empty() ? "" : ",") + cell.text;
    return one_line(all);
}

std::vector<plan::Reading> readings_of(const std::vector<Row>& rows, Report& report) {
    std::vector<plan::Reading> readings{};
    const auto where = rows.empty() ? std::nullopt : columns_of(rows.front());
    if (!where) {
        report.add(rows.empty() ? Place{} : rows.front().at, "header", rows.empty() ? "nothing" : joined(rows.front()), headers);
        return readings;
    }
    if (rows.size() < 2 || rows.size() > most_readings + 1) {
        report.add({}, "file", fmt::format("{} readings", rows.size() - 1),
                   fmt::format("1 to {} readings under the header", most_readings));
        return readings;
    }
    ReadingPlaces places{};
    for (auto row = rows.begin() + 1; row != rows.end(); ++row) {
        if (row->cells.size() != columns) {
            report.add(row->at, "row", fmt::format("{} values", row->cells.size()), "3 values, parted by commas");
            continue;
        }
        const std::size_t before = report.size();
        const plan::Reading reading = reading_of(*row, *where, report);
        if (report.size() == before && !places.take(reading)) {
            report.add(row->at, "row", ReadingPlaces::found_again(reading), ReadingPlaces::allowed);
        }
        readings.push_back(reading);
    }
    return readings;
}

}  // namespace

Rule<Length> ring_diameter() { return millimetres({.low = 1, .high = 12}); }

Rule<Length> corneal_thickness() { return micrometres({.low = 300, .high = 1200}); }

std::string ReadingPlaces::found_again(const plan::Reading& reading) {
    return fmt::format("ring {} mm at {} again", reading.ring.mm(), eye::clock_text(reading.at));
}

bool names_readings(std::string_view name) { return name.ends_with(".csv"); }

measure::Result<std::vector<plan::Reading>, Problems> read_readings(std::string_view text, const std::string& name) {
    Report report(name);
    if (text.size() > largest_file) {
        report.add({}, "file", fmt::format("{} bytes", text.size()), fmt::format("at most {} bytes", largest_file));
        return report.result(std::vector<plan::Reading>{});
    }
    if (const auto at = no_utf8(text)) {
        const auto before = text.substr(0, *at);
        report.add({.line = static_cast<int>(std::ranges::count(before, '\n')) + 1, .column = 1}, "file", "bytes that are no UTF-8",
                   "UTF-8");
        return report.result(std::vector<plan::Reading>{});
    }
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    const auto rows = rows_of(text, report);
    return report.result(readings_of(rows, report));
}

}  // namespace intake
