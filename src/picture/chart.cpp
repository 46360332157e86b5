#include "picture/chart.hpp"

#include "measure/overloaded.hpp"

#include <algorithm>

namespace picture {
namespace {

constexpr double least_span_mm = 0.8;  // a stretch too short to be seen is drawn so long

struct Row {
    const Axis& axis;
    const Box& box;
    double cap = 0;
    double x(double value) const { return place(axis, box, value); }
    double y() const { return box.centre().y; }
};

Line across(const Row& row, double from, double to, double width, Ink ink) {
    return {.a = {row.x(from), row.y()}, .b = {row.x(to), row.y()}, .width = width, .ink = ink};
}

Line upright(const Row& row, double at, double high, double width, Ink ink) {
    return {.a = {row.x(at), row.y() - high / 2}, .b = {row.x(at), row.y() + high / 2}, .width = width, .ink = ink};
}

void draw_box(Shapes& out, const Row& row, const BoxMark& mark) {
    const double high = row.cap * 1.1;
    out.push_back(across(row, mark.least, mark.most, row.cap * 0.14, Ink::Mark));
    for (const double end : {mark.least, mark.most}) out.push_back(upright(row, end, high * 0.5, row.cap * 0.14, Ink::Mark));
    const double left = row.x(mark.q1), w = std::max(least_span_mm, row.x(mark.q3) - left);
    out.push_back(Panel{.box = {left, row.y() - high / 2, w, high},
                        .radius = row.cap * 0.15,
                        .fill = Ink::Raised,
                        .edge = Ink::Soft,
                        .edge_width = row.cap * 0.12});
    out.push_back(upright(row, mark.median, high, row.cap * 0.28, Ink::Accent));
}

void draw_interval(Shapes& out, const Row& row, const IntervalMark& mark) {
    if (mark.low < mark.high) {
        out.push_back(across(row, mark.low, mark.high, row.cap * 0.16, Ink::Mark));
        for (const double end : {mark.low, mark.high}) out.push_back(upright(row, end, row.cap * 0.6, row.cap * 0.16, Ink::Mark));
    }
    out.push_back(Disc{.centre = {row.x(mark.at), row.y()}, .radius = row.cap * 0.36, .ink = Ink::Accent});
}

void draw_spans(Shapes& out, const Row& row, const SpanMark& mark) {
    const double high = row.cap * 0.8;
    for (const SpanMark::Span& span : mark.spans) {
        const double left = row.x(span.from), w = std::max(least_span_mm, row.x(span.to) - left);
        out.push_back(
            Panel{.box = {left, row.y() - high / 2, w, high}, .radius = std::min(w, high) * 0.2, .fill = Ink::Accent, .edge = Ink::Accent});
    }
}

}  // namespace

double place(const Axis& axis, const Box& box, double value) {
    const double share = (std::clamp(value, axis.low, axis.high) - axis.low) / (axis.high - axis.low);
    return box.x + share * box.w;
}

Shapes draw(const Mark& mark, const Axis& axis, const Box& box, const Lettering& lettering) {
    Shapes out;
    if (std::holds_alternative<std::monostate>(mark)) return out;
    const Row row{axis, box, lettering.cap(Type::Text)};
    for (const Axis::Tick& tick : axis.ticks) out.push_back(upright(row, tick.at, box.h, 0.3, Ink::Line));
    std::visit(measure::overloaded{
                   [](const std::monostate&) {},
                   [&](const BoxMark& of) { draw_box(out, row, of); },
                   [&](const IntervalMark& of) { draw_interval(out, row, of); },
                   [&](const SpanMark& of) { draw_spans(out, row, of); },
               },
               mark);
    return out;
}

Shapes labels(const Axis& axis, const Box& under, const Lettering& lettering) {
    const double cap = lettering.cap(Type::Text);
    const auto middle = [&](const Axis::Tick& tick) { return place(axis, under, tick.at); };
    const auto half = [&](const Axis::Tick& tick) { return lettering.width(Type::Text, tick.label) / 2 + cap * 0.3; };
    Shapes out;
    double free = -1e9;
    for (const Axis::Tick& tick : axis.ticks) {
        const double x = middle(tick);
        const bool meets_last = &tick != &axis.ticks.back() && x + half(tick) > middle(axis.ticks.back()) - half(axis.ticks.back());
        if (x - half(tick) < free || meets_last) continue;
        free = x + half(tick);
        out.push_back(
            Text{.at = {x, under.y + cap * 1.3}, .text = tick.label, .type = Type::Text, .ink = Ink::Soft, .align = Align::Centre});
    }
    return out;
}

}  // namespace picture
