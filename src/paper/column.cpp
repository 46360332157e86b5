#include "paper/column.hpp"

#include <algorithm>

namespace paper {
namespace {

using picture::Ink;
using picture::Type;

constexpr double hairline = 0.15;    // mm
constexpr double row_air = 1.1;      // above a hairline
constexpr double label_gap = 3;      // between a label and its value
constexpr double least_value = 0.4;  // share of the width that a value may always take

/// No line of a sheet holds as many bytes: what is beyond is not even measured.
constexpr std::size_t letters_a_line = 400;

/// Takes away the last letter of a UTF-8 text, whole.
void drop_letter(std::string& text) {
    while (text.size() > 1 && (static_cast<unsigned char>(text.back()) & 0xC0) == 0x80) text.pop_back();
    text.pop_back();
}

}  // namespace

std::string cut_to(std::string text, Type type, double width, const picture::Lettering& lettering) {
    if (lettering.width(type, text) <= width) return text;
    while (!text.empty() && lettering.width(type, text + "…") > width) drop_letter(text);
    return text + "…";
}

std::vector<std::string> lines_of(const std::string& text, Type type, double width, std::size_t most, const picture::Lettering& lettering) {
    std::string whole = text;
    if (whole.size() > most * letters_a_line) {
        whole.resize(most * letters_a_line);
        drop_letter(whole);
    }
    auto lines = picture::wrap(whole, type, width, lettering);
    for (std::size_t i = most; i < lines.size(); ++i) lines[most - 1] += " " + lines[i];
    lines.resize(std::min(lines.size(), most));
    for (std::string& line : lines) line = cut_to(std::move(line), type, width, lettering);
    return lines;
}

Column::Column(picture::Box box, picture::Shapes& out, const picture::Lettering& lettering)
    : box_(box), out_(&out), lettering_(&lettering), y_(box.y) {}

bool Column::text(const std::string& text, Type type, Ink ink, std::size_t most_lines) {
    const auto lines = lines_of(text, type, box_.w, most_lines, *lettering_);
    const double height = pitch(type) * static_cast<double>(lines.size());
    if (height > left()) return false;
    for (const std::string& line : lines) {
        out_->push_back(picture::Text{.at = {box_.x, y_ + lettering_->cap(type)}, .text = line, .type = type, .ink = ink});
        y_ += pitch(type);
    }
    return true;
}

void Column::heading(const std::string& text_of_it) { text(text_of_it, Type::Title, Ink::Text); }

double Column::text_height(const std::string& text, std::size_t most_lines) const {
    return pitch(Type::Text) * static_cast<double>(lines_of(text, Type::Text, box_.w, most_lines, *lettering_).size());
}

namespace {

/// How a row shares its width: the value takes what the label leaves, at least its share; the label is cut for it.
struct Shares {
    std::string label{};
    std::vector<std::string> value{};
};

Shares share_out(const Pair& row, double width, std::size_t most_lines, const picture::Lettering& lettering) {
    const double whole = lettering.width(Type::Text, row.label);
    const double for_value = std::max(width - whole - label_gap, width * least_value);
    Shares made{.value = lines_of(row.value, Type::Strong, for_value, most_lines, lettering)};
    made.label = cut_to(row.label, Type::Text, width - label_gap - picture::widest(made.value, Type::Strong, lettering), lettering);
    return made;
}

}  // namespace

double Column::pair_height(const Pair& row, std::size_t most_lines) const {
    const std::size_t lines = share_out(row, box_.w, most_lines, *lettering_).value.size();
    return pitch(Type::Text) * static_cast<double>(std::max<std::size_t>(1, lines)) + row_air;
}

bool Column::pair(const Pair& row, std::size_t most_lines) {
    const double height = pair_height(row, most_lines);
    if (height > left()) return false;
    const Shares shares = share_out(row, box_.w, most_lines, *lettering_);
    double baseline = y_ + lettering_->cap(Type::Text);
    out_->push_back(picture::Text{.at = {box_.x, baseline}, .text = shares.label, .type = Type::Text, .ink = Ink::Soft});
    for (const std::string& line : shares.value) {
        out_->push_back(picture::Text{
            .at = {box_.right(), baseline}, .text = line, .type = Type::Strong, .ink = Ink::Text, .align = picture::Align::Right});
        baseline += pitch(Type::Text);
    }
    y_ += height;
    const double under = y_ - row_air * 0.8;
    out_->push_back(picture::Line{.a = {box_.x, under}, .b = {box_.right(), under}, .width = hairline, .ink = Ink::Line});
    return true;
}

void Column::pairs_abreast(const std::vector<Pair>& rows, double gap) {
    const std::size_t down = (rows.size() + 1) / 2;
    const double half = (box_.w - gap) / 2;
    double lowest = y_;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (i == 0 || i == down) {
            Column side({box_.x + (i == 0 ? 0 : half + gap), y_, half, left()}, *out_, *lettering_);
            for (std::size_t k = i; k < std::min(rows.size(), i + down); ++k) side.pair(rows[k], 1);
            lowest = std::max(lowest, side.y());
        }
    }
    y_ = lowest;
}

picture::Box Column::take(double height) {
    const picture::Box taken{.x = box_.x, .y = y_, .w = box_.w, .h = std::min(height, left())};
    y_ += taken.h;
    return taken;
}

std::size_t Column::fitting(const std::vector<double>& heights) const {
    double all = 0;
    for (const double height : heights) all += height;
    if (all <= left()) return heights.size();
    double room = left() - pitch(Type::Text);
    std::size_t shown = 0;
    while (shown < heights.size() && heights[shown] <= room) room -= heights[shown++];
    return shown;
}

void Column::more_line(const std::string& text_of_it) { text(text_of_it, Type::Strong, Ink::Text); }

}  // namespace paper
