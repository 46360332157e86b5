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

std::string colour(screen::Rgb rgb) { return fmt::format("#{:02x}{:02x}{:02x}", rgb.r, rgb.g, rgb.b); }
std::string colour(const screen::Palette& palette, picture::Ink ink) { return colour(palette[static_cast<std::size_t>(ink)]); }

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

/// Straight between the four neighbours on the grid, at shares of the box; `numbers` are the field's values or its inside.
double at_share(const picture::Contours& c, const std::vector<float>& numbers, double across, double down) {
    const double x = across * (c.columns - 1), y = down * (c.rows - 1);
    const int column = std::min(static_cast<int>(x), c.columns - 2), row = std::min(static_cast<int>(y), c.rows - 2);
    const auto number = [&](int r, int k) { return static_cast<double>(numbers[static_cast<std::size_t>(r * c.columns + k)]); };
    return std::lerp(std::lerp(number(row, column), number(row, column + 1), x - column),
                     std::lerp(number(row + 1, column), number(row + 1, column + 1), x - column), y - row);
}

/// Bands in rows of small squares, those of one band as one; what the shader smooths is coarse here, and lines are left out.
std::string contours(const picture::Contours& c, const screen::Palette& palette) {
    constexpr double square_mm = 0.8;
    const int bands = std::max(1, static_cast<int>(std::ceil((c.high - c.low) / c.step - 1e-3)));
    const int columns = static_cast<int>(std::ceil(c.box.w / square_mm)), rows = static_cast<int>(std::ceil(c.box.h / square_mm));
    const double w = c.box.w / columns, h = c.box.h / rows;
    const auto band_at = [&](int row, int column) {  // -1: not known
        const double across = (column + 0.5) / columns, down = (row + 0.5) / rows;
        if (column >= columns || at_share(c, c.inside, across, down) < 0) return -1;
        return std::clamp(static_cast<int>(std::floor((at_share(c, c.values, across, down) - c.low) / c.step)), 0, bands - 1);
    };
    std::string out;
    for (int row = 0; row < rows; ++row) {
        int from = 0;
        for (int column = 1; column <= columns; ++column) {
            const int band = band_at(row, from);
            if (band_at(row, column) == band) continue;
            if (band >= 0)
                out += fmt::format("<rect x='{:.3f}' y='{:.3f}' width='{:.3f}' height='{:.3f}' fill='{}'/>\n", c.box.x + from * w,
                                   c.box.y + row * h, (column - from) * w + 0.05, h + 0.05, colour(band_colour(palette, band, bands)));
            from = column;
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

screen::Rgb band_colour(const screen::Palette& palette, int band, int bands) {
    const double at = static_cast<double>(band) / std::max(bands - 1, 1) * (picture::reliefs - 1);
    const int from = std::min(static_cast<int>(at), picture::reliefs - 2);
    const auto ink = [&](int i) { return palette[static_cast<std::size_t>(picture::Ink::Relief1) + static_cast<std::size_t>(i)]; };
    const screen::Rgb a = ink(from), b = ink(from + 1);
    const auto mixed = [&](std::uint8_t x, std::uint8_t y) { return static_cast<std::uint8_t>(std::lround(std::lerp(x, y, at - from))); };
    return {mixed(a.r, b.r), mixed(a.g, b.g), mixed(a.b, b.b)};
}

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
