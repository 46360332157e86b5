// Rows of lettering from the top of a box down. Nothing written here leaves the box: what is too wide is wrapped and then cut
// with an ellipsis, a list that is too long ends with how many more there are. Pure.
#pragma once

#include "picture/lettering.hpp"
#include "picture/wrap.hpp"

#include <string>
#include <vector>

namespace paper {

struct Pair {
    std::string label{}, value{};
    bool operator==(const Pair&) const = default;
};

/// The text cut to a width, with an ellipsis if anything was cut.
std::string cut_to(std::string text, picture::Type type, double width, const picture::Lettering& lettering);
/// Wrapped, at most so many lines, the last one cut.
std::vector<std::string> lines_of(const std::string& text, picture::Type type, double width, std::size_t most,
                                  const picture::Lettering& lettering);

class Column {
public:
    Column(picture::Box box, picture::Shapes& out, const picture::Lettering& lettering);

    double left() const { return box_.bottom() - y_; }
    double y() const { return y_; }
    /// One or more lines; false, and nothing written, where they do not fit.
    bool text(const std::string& text, picture::Type type, picture::Ink ink, std::size_t most_lines = 1);
    void heading(const std::string& text);
    /// A label, its value at the right end, a hairline under both.
    bool pair(const Pair& row, std::size_t most_lines = 2);
    /// Short rows, two side by side.
    void pairs_abreast(const std::vector<Pair>& rows, double gap = 8);
    void gap(double mm) { y_ += mm; }
    /// Takes a box off the top.
    picture::Box take(double height);
    /// As many entries as fit, each of so many lines at most. `more` says the rest: given their number, it gives the last line.
    template <class More>
    void list(const std::vector<std::string>& entries, std::size_t most_lines, More more);
    /// The same with labels and values.
    template <class More>
    void pairs(const std::vector<Pair>& rows, std::size_t most_lines, More more);

private:
    double pitch(picture::Type type) const { return picture::pitch(type, *lettering_); }
    double pair_height(const Pair& row, std::size_t most_lines) const;
    double text_height(const std::string& text, std::size_t most_lines) const;
    /// How many of these heights fit, with room for one line more when not all do.
    std::size_t fitting(const std::vector<double>& heights) const;
    void more_line(const std::string& text);

    picture::Box box_{};
    picture::Shapes* out_ = nullptr;
    const picture::Lettering* lettering_ = nullptr;
    double y_ = 0;
};

template <class More>
void Column::list(const std::vector<std::string>& entries, std::size_t most_lines, More more) {
    std::vector<double> heights{};
    for (const std::string& entry : entries) heights.push_back(text_height(entry, most_lines));
    const std::size_t shown = fitting(heights);
    for (std::size_t i = 0; i < shown; ++i) text(entries[i], picture::Type::Text, picture::Ink::Text, most_lines);
    if (shown < entries.size()) more_line(more(entries.size() - shown));
}

template <class More>
void Column::pairs(const std::vector<Pair>& rows, std::size_t most_lines, More more) {
    std::vector<double> heights{};
    for (const Pair& row : rows) heights.push_back(pair_height(row, most_lines));
    const std::size_t shown = fitting(heights);
    for (std::size_t i = 0; i < shown; ++i) pair(rows[i], most_lines);
    if (shown < rows.size()) more_line(more(rows.size() - shown));
}

}  // namespace paper
