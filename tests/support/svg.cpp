#include "support/svg.hpp"

#include "measure/overloaded.hpp"
#include "picture/bounds.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace support {

namespace {

// B612's cap height in units of its em: 1520 of 2000 (regular) and 1527 (bold).
constexpr double cap_of_em = 0.76;

std::string colour(const screen::Palette& palette, picture::Ink ink) {
    const auto rgb = palette[static_cast<std::size_t>(ink)];
    return fmt::format("#{:02x}{:02x}{:02x}", rgb.r, rgb.g, rgb.b);
}

std::string dashes(double dash, double gap) { return dash > 0 ? fmt::format(" stroke-dasharray='{} {}'", dash, gap) : std::string{}; }

std::string escaped(const std::string& text) {
    std::string out;
    for (const char c : text) {
        if (c == '&') {
            out += "&amp;";
        } else if (c == '<') {
            out += "&lt;";
        } else {
            out += c;
        }
    }
    return out;
}

std::string ring(const picture::Ring& r, const std::string& ink) {
    const std::string style = fmt::format("fill='none' stroke='{}' stroke-width='{}'{}", ink, r.width, dashes(r.dash, r.gap));
    if (r.sweep_deg >= 360) return fmt::format("<circle cx='{}' cy='{}' r='{}' {}/>\n", r.centre.x, r.centre.y, r.radius, style);
    const auto a = picture::on_circle(r.centre, r.radius, r.from_deg), b = picture::on_circle(r.centre, r.radius, r.from_deg + r.sweep_deg);
    return fmt::format("<path d='M {} {} A {} {} 0 {} 0 {} {}' {}/>\n", a.x, a.y, r.radius, r.radius, r.sweep_deg > 180 ? 1 : 0, b.x, b.y,
                       style);
}

std::string panel(const picture::Panel& p, const screen::Palette& palette) {
    const double e = p.edge_width / 2;
    const std::string edge =
        p.edge_width > 0 ? fmt::format(" stroke='{}' stroke-width='{}'", colour(palette, p.edge), p.edge_width) : std::string{};
    return fmt::format("<rect x='{}' y='{}' width='{}' height='{}' rx='{}' fill='{}'{}/>\n", p.box.x + e, p.box.y + e, p.box.w - 2 * e,
                       p.box.h - 2 * e, p.radius, colour(palette, p.fill), edge);
}

std::string polygon(const picture::Polygon& p, const std::string& ink) {
    std::string points;
    for (const auto& at : p.points) points += fmt::format("{},{} ", at.x, at.y);
    return fmt::format("<polygon points='{}' fill='{}'/>\n", points, ink);
}

/// Bands as small squares; what the shader smooths is coarse here.
std::string contours(const picture::Contours& c, const screen::Palette& palette) {
    const double w = c.box.w / (c.columns - 1), h = c.box.h / (c.rows - 1);
    const double bands = std::max(1.0, std::ceil((c.high - c.low) / c.step - 1e-3));
    std::string out;
    for (int row = 0; row < c.rows; ++row) {
        for (int column = 0; column < c.columns; ++column) {
            const auto i = static_cast<std::size_t>(row * c.columns + column);
            if (c.inside[i] < 0) continue;
            const double band = std::clamp(std::floor((static_cast<double>(c.values[i]) - c.low) / c.step), 0.0, bands - 1);
            const double at = (band + 0.5) / bands * (picture::reliefs - 1);
            const auto ink = static_cast<picture::Ink>(static_cast<int>(picture::Ink::Relief1) + static_cast<int>(std::lround(at)));
            const double x = c.box.x + (column - 0.5) * w, y = c.box.y + (row - 0.5) * h;
            const double left = std::max(x, c.box.x), top = std::max(y, c.box.y);
            out += fmt::format("<rect x='{:.3f}' y='{:.3f}' width='{:.3f}' height='{:.3f}' fill='{}'/>\n", left, top,
                               std::min(x + w, c.box.right()) - left + 0.05, std::min(y + h, c.box.bottom()) - top + 0.05,
                               colour(palette, ink));
        }
    }
    return out;
}

std::string text(const picture::Text& t, const screen::Canvas& canvas, const std::string& ink) {
    const char* anchor = t.align == picture::Align::Left ? "start" : t.align == picture::Align::Centre ? "middle" : "end";
    return fmt::format("<text x='{}' y='{}' font-family='B612' font-size='{}' font-weight='{}' text-anchor='{}' fill='{}'>{}</text>\n",
                       t.at.x, t.at.y, canvas.type.of(t.type) / cap_of_em, screen::bold(t.type) ? "bold" : "normal", anchor, ink,
                       escaped(t.text));
}

}  // namespace

std::string svg(const picture::Shapes& shapes, const screen::Canvas& canvas, const screen::Palette& palette) {
    std::string under, over;
    for (const auto& shape : shapes) {
        std::visit(measure::overloaded{
                       [&](const picture::Line& l) {
                           under += fmt::format("<line x1='{}' y1='{}' x2='{}' y2='{}' stroke='{}' stroke-width='{}'{}/>\n", l.a.x, l.a.y,
                                                l.b.x, l.b.y, colour(palette, l.ink), l.width, dashes(l.dash, l.gap));
                       },
                       [&](const picture::Ring& r) { under += ring(r, colour(palette, r.ink)); },
                       [&](const picture::Disc& d) {
                           under += fmt::format("<circle cx='{}' cy='{}' r='{}' fill='{}'/>\n", d.centre.x, d.centre.y, d.radius,
                                                colour(palette, d.ink));
                       },
                       [&](const picture::Panel& p) { under += panel(p, palette); },
                       [&](const picture::Polygon& p) { under += polygon(p, colour(palette, p.ink)); },
                       [&](const picture::Contours& c) { under += contours(c, palette); },
                       [&](const picture::Text& t) { over += text(t, canvas, colour(palette, t.ink)); },
                   },
                   shape);
    }
    const double w = canvas.glass.width_mm, h = canvas.glass.height_mm;
    return fmt::format("<svg xmlns='http://www.w3.org/2000/svg' width='{}mm' height='{}mm' viewBox='0 0 {} {}'>\n", w, h, w, h) + under +
           over + "</svg>\n";
}

}  // namespace support
