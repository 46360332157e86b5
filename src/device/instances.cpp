#include "device/instances.hpp"

#include "measure/expect.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace device {
namespace {

using picture::Point;

constexpr double soft = 1;  // pixels painted beyond an edge for its antialiasing

float f(double value) { return static_cast<float>(value); }

/// A stroke's centre so that both its edges are on whole pixels.
double settled(double centre, double width) { return std::lround(width) % 2 == 0 ? std::round(centre) : std::floor(centre) + 0.5; }

class Maker {
public:
    Maker(const Palette& palette, const Fonts& fonts, const Atlas& atlas)
        : palette_(palette), fonts_(fonts), atlas_(atlas), px_per_mm_(fonts.px_per_mm()) {}

    void add(const picture::Line& line);
    void add(const picture::Ring& ring);
    void add(const picture::Disc& disc);
    void add(const picture::Panel& panel);
    void add(const picture::Polygon& polygon);
    void add(const picture::Text& text);
    void add(const picture::Contours& contours);
    Drawing out{};

private:
    double px(double mm) const { return mm * px_per_mm_; }
    Point px(Point mm) const { return {px(mm.x), px(mm.y)}; }
    std::array<std::uint8_t, 4> colour(picture::Ink ink) const {
        const Rgb rgb = palette_[static_cast<std::size_t>(ink)];
        return {rgb.r, rgb.g, rgb.b, 255};
    }
    void push(Kind kind, Instance instance) {
        instance.kind = static_cast<float>(kind);
        if (out.runs.empty() || out.runs.back().group != group(kind)) out.runs.push_back({group(kind), out.instances.size(), 0});
        ++out.runs.back().count;
        out.instances.push_back(instance);
    }

    const Palette& palette_;
    const Fonts& fonts_;
    const Atlas& atlas_;
    double px_per_mm_;
};

void Maker::add(const picture::Line& line) {
    Point a = px(line.a), b = px(line.b);
    double width = px(line.width);
    const bool level = line.a.y == line.b.y, upright = line.a.x == line.b.x;
    if (level || upright) width = std::max(1.0, std::round(width));
    if (level) a.y = b.y = settled(a.y, width);
    if (upright) a.x = b.x = settled(a.x, width);
    if (level && !upright) a.x = std::round(a.x), b.x = std::round(b.x);
    if (upright && !level) a.y = std::round(a.y), b.y = std::round(b.y);
    const double length = std::hypot(b.x - a.x, b.y - a.y);
    if (length <= 0) return;
    push(Kind::Line, {.centre_x = f((a.x + b.x) / 2),
                      .centre_y = f((a.y + b.y) / 2),
                      .axis_x = f((b.x - a.x) / length),
                      .axis_y = f((b.y - a.y) / length),
                      .half_x = f(length / 2 + soft),
                      .half_y = f(width / 2 + soft),
                      .figure = {f(length / 2), f(width / 2), f(px(line.dash)), f(px(line.gap))},
                      .fill = colour(line.ink)});
}

void Maker::add(const picture::Ring& ring) {
    const double radius = px(ring.radius), half = px(ring.width) / 2, reach = radius + half + soft;
    double from = ring.from_deg, sweep = std::clamp(ring.sweep_deg, -360.0, 360.0);
    if (sweep < 0) from += sweep, sweep = -sweep;
    if (radius <= 0 || sweep <= 0) return;
    from = std::fmod(from, 360.0);
    double dash = px(ring.dash), gap = px(ring.gap);
    if (dash > 0 && gap > 0 && sweep >= 360) {  // dashes meet where the ring closes
        const double round = 2 * std::numbers::pi * radius;
        const double fit = round / std::max(1.0, std::round(round / (dash + gap))) / (dash + gap);
        dash *= fit, gap *= fit;
    }
    constexpr double rad = std::numbers::pi / 180;
    const Point centre = px(ring.centre);
    push(Kind::Ring, {.centre_x = f(centre.x),
                      .centre_y = f(centre.y),
                      .half_x = f(reach),
                      .half_y = f(reach),
                      .figure = {f(radius), f(half), f(from * rad), f(sweep * rad)},
                      .more = {f(dash), f(gap)},
                      .fill = colour(ring.ink)});
}

void Maker::add(const picture::Disc& disc) {
    const Point centre = px(disc.centre);
    const double radius = px(disc.radius);
    push(Kind::Disc, {.centre_x = f(centre.x),
                      .centre_y = f(centre.y),
                      .half_x = f(radius + soft),
                      .half_y = f(radius + soft),
                      .figure = {f(radius)},
                      .fill = colour(disc.ink)});
}

void Maker::add(const picture::Panel& panel) {
    const double left = std::round(px(panel.box.x)), right = std::round(px(panel.box.right()));
    const double top = std::round(px(panel.box.y)), bottom = std::round(px(panel.box.bottom()));
    const double half_x = (right - left) / 2, half_y = (bottom - top) / 2;
    const double edge = panel.edge_width > 0 ? std::max(1.0, std::round(px(panel.edge_width))) : 0;
    const double radius = std::clamp(px(panel.radius), 0.0, std::min(half_x, half_y));
    if (half_x <= 0 || half_y <= 0) return;
    push(Kind::Panel, {.centre_x = f((left + right) / 2),
                       .centre_y = f((top + bottom) / 2),
                       .half_x = f(half_x + soft),
                       .half_y = f(half_y + soft),
                       .figure = {f(half_x), f(half_y), f(radius), f(edge)},
                       .fill = colour(panel.fill),
                       .edge = colour(panel.edge)});
}

void Maker::add(const picture::Polygon& polygon) {
    if (polygon.points.size() < 3) return;
    const auto [left, right] = std::ranges::minmax(polygon.points, {}, &Point::x);
    const auto [high, low] = std::ranges::minmax(polygon.points, {}, &Point::y);
    const Point centre = px(Point{(left.x + right.x) / 2, (high.y + low.y) / 2});
    std::vector<std::array<float, 2>> corners;
    double area = 0;
    for (std::size_t i = 0; i < polygon.points.size(); ++i) {
        const Point a = polygon.points[i], b = polygon.points[(i + 1) % polygon.points.size()];
        area += a.x * b.y - b.x * a.y;
        corners.push_back({f(px(a.x) - centre.x), f(px(a.y) - centre.y)});
    }
    if (area > 0) std::ranges::reverse(corners);  // y is down: a positive area is clockwise on the glass
    push(Kind::Polygon, {.centre_x = f(centre.x),
                         .centre_y = f(centre.y),
                         .half_x = f(px(right.x - left.x) / 2 + soft),
                         .half_y = f(px(low.y - high.y) / 2 + soft),
                         .figure = {f(static_cast<double>(out.corners.size())), f(static_cast<double>(corners.size()))},
                         .fill = colour(polygon.ink)});
    out.corners.insert(out.corners.end(), corners.begin(), corners.end());
}

void Maker::add(const picture::Text& text) {
    const double width = fonts_.width_px(text.type, text.text);
    const double back = text.align == picture::Align::Left ? 0 : text.align == picture::Align::Centre ? width / 2 : width;
    double pen = std::round(px(text.at.x) - back);
    const double baseline = std::round(px(text.at.y));
    const bool numeral = Atlas::which(text.type) == Atlas::Which::Figures;
    for (const char32_t letter : letters(text.text)) {
        const Glyph glyph = atlas_.glyph(text.type, fonts_.has(text.type, letter) ? letter : U'?');
        const double x = numeral ? std::round(pen) : pen;
        pen += fonts_.step_px(text.type, letter);
        if (glyph.x1 <= glyph.x0 || glyph.y1 <= glyph.y0) continue;  // a space
        push(numeral ? Kind::Numeral : Kind::Letter, {.centre_x = f(x) + (glyph.x0 + glyph.x1) / 2,
                                                      .centre_y = f(baseline) + (glyph.y0 + glyph.y1) / 2,
                                                      .half_x = (glyph.x1 - glyph.x0) / 2,
                                                      .half_y = (glyph.y1 - glyph.y0) / 2,
                                                      .figure = {glyph.u0, glyph.v0, glyph.u1, glyph.v1},
                                                      .fill = colour(text.ink)});
    }
}

void Maker::add(const picture::Contours& contours) {
    const auto n = static_cast<std::size_t>(contours.columns) * static_cast<std::size_t>(contours.rows);
    const bool whole = contours.columns >= 2 && contours.rows >= 2 && contours.values.size() == n && contours.inside.size() == n;
    measure::expect(whole && contours.step > 0 && contours.high > contours.low);
    const Point centre = px(contours.box.centre());
    push(Kind::Contours, {.centre_x = f(centre.x),
                          .centre_y = f(centre.y),
                          .half_x = f(px(contours.box.w) / 2),
                          .half_y = f(px(contours.box.h) / 2),
                          .figure = {f(static_cast<double>(out.fields.size())), f(contours.columns), f(contours.rows), 0},
                          .more = {f(contours.low), f(contours.high), f(contours.step), f(px(contours.line_width) / 2)},
                          .fill = colour(contours.line)});
    for (std::size_t i = 0; i < n; ++i) out.fields.push_back({contours.values[i], f(px(static_cast<double>(contours.inside[i])))});
}

}  // namespace

Group group(Kind kind) {
    switch (kind) {
        case Kind::Disc:
        case Kind::Panel:
            return Group::Fills;
        case Kind::Line:
        case Kind::Ring:
        case Kind::Polygon:
            return Group::Strokes;
        case Kind::Letter:
        case Kind::Numeral:
            return Group::Letters;
        case Kind::Contours:
            return Group::Contours;
    }
    measure::expect(false);
    return {};
}

Drawing drawing(const picture::Shapes& shapes, const Palette& palette, const Fonts& fonts, const Atlas& atlas) {
    Maker maker(palette, fonts, atlas);
    for (const bool lettering : {false, true})
        for (const picture::Shape& shape : shapes)
            if (std::holds_alternative<picture::Text>(shape) == lettering)
                std::visit([&](const auto& alternative) { maker.add(alternative); }, shape);
    return std::move(maker.out);
}

}  // namespace device
