// Where everything stands on the handover sheet. The head across, the record and the cautions across at the foot, between them two
// columns; the lists at the end of each column take what room is left.
#include "paper/sheet.hpp"

#include <algorithm>
#include <cmath>

namespace paper {
namespace {

using picture::Box;
using picture::Ink;
using picture::Lettering;
using picture::Shapes;
using picture::Type;

constexpr double column_gap = 8, section_gap = 3;
constexpr double left_share = 0.53;
constexpr double head_height = 22;
constexpr double face_share = 0.21;  // of the page's height
constexpr std::size_t most_cautions = 5;

void rule(Shapes& out, double x, double right, double y) {
    out.push_back(picture::Line{.a = {x, y}, .b = {right, y}, .width = 0.4, .ink = Ink::Text});
}

void head(const Sheet& sheet, const Box& box, Shapes& out, const Lettering& lettering) {
    const double pill = lettering.width(Type::Display, sheet.side) + 10;
    const double mid = box.y + head_height / 2 - 2;
    out.push_back(picture::Panel{
        .box = {box.x, box.y, pill, head_height - 4}, .radius = 4, .fill = Ink::Ground, .edge = Ink::Text, .edge_width = 0.9});
    out.push_back(picture::Text{.at = {box.x + pill / 2, mid + lettering.cap(Type::Display) / 2},
                                .text = sheet.side,
                                .type = Type::Display,
                                .ink = Ink::Text,
                                .align = picture::Align::Centre});
    const double right = lettering.width(Type::Display, sheet.title) + 4, x = box.x + pill + 5;
    Column middle({x, box.y + 1, box.right() - right - x - 3, head_height}, out, lettering);
    middle.text(sheet.reference, Type::Value, Ink::Text);
    middle.text(sheet.under, Type::Text, Ink::Soft, 2);
    if (!sheet.invented.empty()) middle.text(sheet.invented, Type::Strong, Ink::Text);
    Column last({box.right() - right, box.y + 1, right, head_height}, out, lettering);
    last.text(sheet.title, Type::Display, Ink::Text);
    last.text(sheet.status, Type::Strong, Ink::Text);
    last.text(sheet.status_line, Type::Text, Ink::Soft, 2);
    rule(out, box.x, box.right(), box.y + head_height - 1);
}

/// Minutes between two ticks, so that there are at most eight.
double tick_step(double minutes) {
    for (const double step : {5.0, 10.0, 15.0, 30.0, 60.0, 120.0, 240.0}) {
        if (minutes / step <= 8) return step;
    }
    return std::ceil(minutes / 8);
}

double length_of(const std::vector<Bar>& bars) {
    double length = 1;
    for (const Bar& bar : bars) {
        for (const Bar::Span& span : bar.spans) length = std::max(length, span.to);
    }
    return length;
}

/// The axis under the bars: ticks in minutes.
void axis(Shapes& out, const Box& field, double minutes, const Lettering& lettering) {
    out.push_back(picture::Line{.a = {field.x, field.bottom()}, .b = {field.right(), field.bottom()}, .width = 0.2, .ink = Ink::Mark});
    const double step = tick_step(minutes);
    for (int tick = 0; tick * step <= minutes; ++tick) {
        const double at = tick * step;
        const double x = field.x + at / minutes * field.w;
        out.push_back(picture::Line{.a = {x, field.bottom()}, .b = {x, field.bottom() + 1}, .width = 0.2, .ink = Ink::Mark});
        out.push_back(picture::Text{.at = {x, field.bottom() + 1.8 + lettering.cap(Type::Text)},
                                    .text = std::to_string(std::lround(at)),
                                    .type = Type::Text,
                                    .ink = Ink::Soft,
                                    .align = picture::Align::Centre});
    }
}

void times(const Sheet& sheet, Column& column, Shapes& out, const Lettering& lettering) {
    column.heading(sheet.times_title);
    double labels = 0, values = 0;
    for (const Bar& bar : sheet.times) {
        labels = std::max(labels, lettering.width(Type::Text, bar.label));
        values = std::max(values, lettering.width(Type::Text, bar.value));
    }
    const double row = picture::pitch(Type::Text, lettering) + 0.6, minutes = length_of(sheet.times);
    const Box taken = column.take(row * static_cast<double>(sheet.times.size()) + 2.8 + lettering.cap(Type::Text));
    labels = std::min(labels, taken.w * 0.3), values = std::min(values, taken.w * 0.42);
    const Box field{
        .x = taken.x + labels + 3, .y = taken.y, .w = taken.w - labels - values - 6, .h = row * static_cast<double>(sheet.times.size())};
    double y = taken.y;
    for (const Bar& bar : sheet.times) {
        const double baseline = y + lettering.cap(Type::Text);
        out.push_back(picture::Text{
            .at = {taken.x, baseline}, .text = cut_to(bar.label, Type::Text, labels, lettering), .type = Type::Text, .ink = Ink::Text});
        out.push_back(picture::Text{.at = {taken.right(), baseline},
                                    .text = cut_to(bar.value, Type::Text, values, lettering),
                                    .type = Type::Text,
                                    .ink = Ink::Text,
                                    .align = picture::Align::Right});
        for (const Bar::Span& span : bar.spans) {
            const double from = field.x + span.from / minutes * field.w, to = field.x + span.to / minutes * field.w;
            const Box box{.x = from, .y = y, .w = std::max(0.5, to - from), .h = lettering.cap(Type::Text)};
            out.push_back(picture::Panel{.box = box,
                                         .radius = 0.3,
                                         .fill = bar.phase ? Ink::Mark : Ink::Ground,
                                         .edge = Ink::Text,
                                         .edge_width = bar.phase ? 0.0 : 0.3});
        }
        y += row;
    }
    axis(out, field, minutes, lettering);
}

void section(const Section& section, Column& column) {
    column.gap(section_gap);
    column.heading(section.title);
    for (const Pair& row : section.rows) column.pair(row);
}

/// The counts take what they need, at most half of what is left: what went otherwise comes after them.
void counts(const Sheet& sheet, Column& column, const Box& across, Shapes& out, const Lettering& lettering) {
    column.gap(section_gap);
    Column half({across.x, column.y(), across.w, column.left() / 2}, out, lettering);
    half.heading(sheet.counts.title);
    half.pairs(sheet.counts.rows, 3, sheet.more);
    column.take(half.y() - column.y());
}

/// The sutures as placed, in as many columns as their widest entry lets stand side by side.
void placed(const Sheet& sheet, Column& column, Shapes& out, const Lettering& lettering) {
    if (sheet.placed.empty()) return;
    const double widest = picture::widest(sheet.placed, Type::Text, lettering) + 3;
    const double pitch = picture::pitch(Type::Text, lettering);
    const Box whole = column.take(0);
    const auto across = static_cast<std::size_t>(std::clamp(whole.w / widest, 1.0, 4.0));
    const std::size_t down = (sheet.placed.size() + across - 1) / across;
    const Box box = column.take(pitch * static_cast<double>(down) + 1);
    for (std::size_t i = 0; i < sheet.placed.size(); ++i) {
        const std::size_t line = i / down;
        const double x = box.x + box.w / static_cast<double>(across) * static_cast<double>(line);
        const double y = box.y + pitch * static_cast<double>(i % down) + lettering.cap(Type::Text);
        out.push_back(picture::Text{.at = {x, y}, .text = sheet.placed[i], .type = Type::Text, .ink = Ink::Text});
    }
}

/// Across the foot; gives the y where it begins.
double foot(const Sheet& sheet, const Box& page, Shapes& out, const Lettering& lettering) {
    Lines few = sheet.cautions;
    if (few.entries.size() > most_cautions) {
        const std::size_t rest = few.entries.size() - most_cautions + 1;
        few.entries.resize(most_cautions - 1);
        few.entries.push_back(sheet.more(rest));
    }
    const auto write = [&](Column& column) {
        column.gap(section_gap);
        column.heading(sheet.record.title);
        column.pairs_abreast(sheet.record_few.rows);
        for (const Pair& row : sheet.record.rows) column.pair(row, 2);
        column.gap(section_gap);
        column.heading(few.title);
        for (const std::string& entry : few.entries) column.text(entry, Type::Text, Ink::Text, 2);
        column.gap(1);
        column.text(sheet.not_a_device, Type::Strong, Ink::Text, 2);
    };
    Shapes trial{};
    Column measured(page, trial, lettering);
    write(measured);
    const double top = page.bottom() - (measured.y() - page.y);
    rule(out, page.x, page.right(), top);
    Column column({page.x, top, page.w, page.bottom() - top + 0.01}, out, lettering);
    write(column);
    return top;
}

}  // namespace

Caps sheet_caps() {
    Caps caps{};
    cap_of(caps, Type::Numeral) = 8;
    cap_of(caps, Type::Display) = 4.6;
    cap_of(caps, Type::Title) = 2.6;
    cap_of(caps, Type::Value) = 3.2;
    cap_of(caps, Type::Strong) = 1.8;
    cap_of(caps, Type::Text) = 1.8;
    cap_of(caps, Type::Lead) = 2.2;
    return caps;
}

Shapes draw(const Sheet& sheet, Size size, const Lettering& lettering) {
    const Box whole = sheet_of(size);
    const Box page{.x = margin, .y = margin, .w = whole.w - 2 * margin, .h = whole.h - 2 * margin};
    Shapes out{};
    head(sheet, page, out, lettering);
    const double top = page.y + head_height + 1, bottom = foot(sheet, page, out, lettering) - 1;
    const double left = (page.w - column_gap) * left_share, right = page.w - column_gap - left;

    Column one({page.x, top, left, bottom - top}, out, lettering);
    times(sheet, one, out, lettering);
    section(sheet.depth, one);
    counts(sheet, one, {page.x, 0, left, 0}, out, lettering);
    one.gap(section_gap);
    one.heading(sheet.otherwise.title);
    one.list(sheet.otherwise.entries, 2, sheet.more);

    Column two({page.right() - right, top, right, bottom - top}, out, lettering);
    two.heading(sheet.sutures.title);
    for (picture::Shape& shape : picture::draw(sheet.face, two.take(whole.h * face_share), lettering)) out.push_back(std::move(shape));
    two.gap(1);
    placed(sheet, two, out, lettering);
    for (const Pair& row : sheet.sutures.rows) two.pair(row);
    two.gap(section_gap);
    two.heading(sheet.tissue.title);
    two.pairs(sheet.tissue.rows, 2, sheet.more);
    return out;
}

}  // namespace paper
