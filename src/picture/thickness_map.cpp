#include "picture/thickness_map.hpp"

#include "picture/bounds.hpp"
#include "picture/wrap.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace picture {

namespace {

constexpr int limbus_sides = 96;
constexpr double cut_width = 1.1, casing = 0.7, dot = 1.1, line_width = 0.35;  // mm on the glass
constexpr double legend_caps = 1.4, legend_gap_caps = 1.1, legend_pitch_caps = 1.9;
constexpr double apart_caps = 0.9;  // round a figure on a line, free of other figures

double between(double a, double b, double share) { return a + (b - a) * share; }

double look_up(const ThicknessField& field, const std::vector<float>& in, Point at) {
    const double last = field.across - 1;
    const double x = std::clamp((at.x + field.half_mm) / (2 * field.half_mm), 0.0, 1.0) * last;
    const double y = std::clamp((field.half_mm - at.y) / (2 * field.half_mm), 0.0, 1.0) * last;
    const int column = std::min(static_cast<int>(x), field.across - 2), row = std::min(static_cast<int>(y), field.across - 2);
    const auto value = [&](int r, int c) {
        return static_cast<double>(in[static_cast<std::size_t>(r) * static_cast<std::size_t>(field.across) + static_cast<std::size_t>(c)]);
    };
    return between(between(value(row, column), value(row, column + 1), x - column),
                   between(value(row + 1, column), value(row + 1, column + 1), x - column), y - row);
}

bool has_field(const ThicknessMap& map) { return map.field.across >= 2 && map.high_um > map.low_um; }

double cap(const Lettering& lettering) { return lettering.cap(Type::Text); }

double legend_width(const ThicknessMap& map, const Lettering& lettering) {
    if (!has_field(map)) return 0;
    const double figures = std::max(lettering.width(Type::Text, std::to_string(map.high_um)), lettering.width(Type::Text, map.unit));
    return cap(lettering) * (legend_gap_caps + legend_caps + 0.6) + figures;
}

Point at_hour(int hour, double radius) {
    const double turn = (90 - 30.0 * hour) * std::numbers::pi / 180;
    return {radius * std::cos(turn), radius * std::sin(turn)};
}

double radius_mm(const ThicknessMap& map) { return std::max(map.limbus_across, map.limbus_upright).mm() / 2; }

void field(Shapes& out, const ThicknessMap& map, const MapPlace& place) {
    const double half = map.field.half_mm * place.scale;
    Contours made{.box = {place.centre.x - half, place.centre.y - half, 2 * half, 2 * half},
                  .columns = map.field.across,
                  .rows = map.field.across,
                  .values = map.field.um,
                  .inside = map.field.known,
                  .low = static_cast<double>(map.low_um),
                  .high = static_cast<double>(map.high_um),
                  .step = static_cast<double>(map.step_um),
                  .line_width = line_width,
                  .line = Ink::Text};
    for (float& inside : made.inside) inside *= static_cast<float>(place.scale);
    out.push_back(std::move(made));
}

void limbus(Shapes& out, const ThicknessMap& map, const MapPlace& place) {
    const double a = map.limbus_across.mm() / 2, b = map.limbus_upright.mm() / 2;
    const auto corner = [&](int i) {
        const double turn = 2 * std::numbers::pi * i / limbus_sides;
        return place.on_glass({a * std::cos(turn), b * std::sin(turn)});
    };
    for (int i = 0; i < limbus_sides; ++i) out.push_back(Line{.a = corner(i), .b = corner(i + 1), .width = 0.6, .ink = Ink::Mark});
}

void cut(Shapes& out, const ThicknessMap& map, const MapPlace& place) {
    const Point centre = place.on_glass({map.cut_x.mm(), map.cut_y.mm()});
    const double radius = map.cut.mm() / 2 * place.scale;
    out.push_back(Ring{.centre = centre, .radius = radius, .width = cut_width + 2 * casing, .ink = Ink::Ground});
    out.push_back(Ring{.centre = centre, .radius = radius, .width = cut_width, .ink = Ink::Accent});
    for (const double turn : {0.0, 90.0}) {  // the cut's own centre: a small cross
        const Point a = on_circle(centre, 1.6, turn), b = on_circle(centre, 1.6, turn + 180);
        out.push_back(Line{.a = a, .b = b, .width = 1.2, .ink = Ink::Ground});
        out.push_back(Line{.a = a, .b = b, .width = 0.5, .ink = Ink::Text});
    }
    for (const Point& at : map.measured) {
        const Point on = place.on_glass(at);
        out.push_back(Disc{.centre = on, .radius = dot + casing, .ink = Ink::Ground});
        out.push_back(Disc{.centre = on, .radius = dot, .ink = Ink::Text});
    }
    if (!map.thinnest) return;
    const Point on = place.on_glass(*map.thinnest);
    out.push_back(Ring{.centre = on, .radius = 2.6, .width = 1 + 2 * casing, .ink = Ink::Ground});
    out.push_back(Ring{.centre = on, .radius = 2.6, .width = 1, .ink = Ink::Text});
}

// ---- figures on the lines ----

Box around(Point centre, double w, double h) { return {centre.x - w / 2, centre.y - h / 2, w, h}; }

/// Where an hour stands beside the map.
Point hour_place(const ThicknessMap& map, const MapPlace& place, int hour, double cap) {
    return place.on_glass(at_hour(hour, radius_mm(map) + cap * 1.1 / place.scale));
}

std::vector<Box> taken(const ThicknessMap& map, const MapPlace& place, double cap) {
    std::vector<Box> all;
    for (const int hour : {12, 3, 6, 9}) all.push_back(around(hour_place(map, place, hour, cap), cap * 1.8, cap * 1.2));
    for (const Point& at : map.measured) all.push_back(around(place.on_glass(at), 4, 4));
    if (map.thinnest) all.push_back(around(place.on_glass(*map.thinnest), 7.5, 7.5));
    all.push_back(around(place.on_glass({map.cut_x.mm(), map.cut_y.mm()}), 4, 4));
    return all;
}

/// Where a level is crossed on the way out from the middle, in so many directions.
std::vector<Point> crossings(const ThicknessMap& map, double level) {
    constexpr int directions = 40;
    constexpr double step_mm = 0.15;
    std::vector<Point> found;
    for (int i = 0; i < directions; ++i) {
        const double turn = 2 * std::numbers::pi * (i + 0.25) / directions, x = std::cos(turn), y = std::sin(turn);
        double before = um_at(map.field, {0, 0}) - level;
        for (int steps = 1; steps * step_mm < radius_mm(map); ++steps) {
            const double r = steps * step_mm;
            const double here = um_at(map.field, {r * x, r * y}) - level;
            if (before * here < 0 && known_at(map.field, {r * x, r * y}) > 0)
                found.push_back({(r - step_mm / 2) * x, (r - step_mm / 2) * y});
            before = here;
        }
    }
    return found;
}

/// The place whose box is farthest from all that stands there already; none where every one would lie on something.
std::optional<Point> freest(const std::vector<Point>& places, const MapPlace& place, const Box& size, const std::vector<Box>& all) {
    std::optional<Point> best;
    double most = 0.6;
    for (const Point& at : places) {
        const Box box = around(place.on_glass(at), size.w, size.h);
        double room = 1e9;
        for (const Box& other : all) room = std::min(room, overlap(box, other) ? 0 : gap(box, other));
        if (room > most) most = room, best = at;
    }
    return best;
}

void line_figures(Shapes& out, const ThicknessMap& map, const MapPlace& place, const Lettering& lettering) {
    std::vector<Box> all = taken(map, place, cap(lettering));
    for (int level = map.low_um + map.step_um; level < map.high_um; level += map.step_um) {
        const std::string figure = std::to_string(level);
        const Box size{0, 0, lettering.width(Type::Text, figure) + 1.2, cap(lettering) + 1.4};
        const auto at = freest(crossings(map, level), place, size, all);
        if (!at) continue;
        const Box box = around(place.on_glass(*at), size.w, size.h);
        out.push_back(Panel{.box = box, .radius = 1, .fill = Ink::Ground, .edge = Ink::Ground});
        out.push_back(Text{.at = {box.centre().x, box.centre().y + cap(lettering) / 2},
                           .text = figure,
                           .type = Type::Text,
                           .ink = Ink::Text,
                           .align = Align::Centre});
        const double apart = cap(lettering) * apart_caps;
        all.push_back({box.x - apart, box.y - apart, box.w + 2 * apart, box.h + 2 * apart});
    }
}

// ---- round the map ----

/// How the eye is turned, in lines with their box at the lower left of the map.
struct Turned {
    std::vector<std::string> lines{};
    Box box{};
};

Turned turned(const ThicknessMap& map, const Box& box, double width, const Lettering& lettering) {
    Turned made{.lines = wrap(map.turned, Type::Text, width, lettering)};
    const double h = (static_cast<double>(made.lines.size()) - 1) * pitch(Type::Text, lettering) + cap(lettering) * (1 + descent);
    made.box = {box.x, box.bottom() - h, widest(made.lines, Type::Text, lettering), h};
    return made;
}

double room_beside_legend(const ThicknessMap& map, const Box& box, const Lettering& lettering) {
    return box.w - legend_width(map, lettering);
}

/// In the corner, where it can stand clear of eye and hours.
std::optional<Turned> in_corner(const ThicknessMap& map, const MapPlace& at, const Box& box, const Lettering& lettering) {
    const double c = cap(lettering), whole = lettering.width(Type::Text, map.turned);
    for (const double width : {whole, whole * 0.55, whole * 0.4}) {
        const Turned made = turned(map, box, width, lettering);
        const Point corner{made.box.right(), made.box.y};
        const bool beside = corner.x <= box.x + room_beside_legend(map, box, lettering);
        const bool clear =
            std::hypot(std::max(0.0, at.centre.x - corner.x), std::max(0.0, corner.y - at.centre.y)) > radius_mm(map) * at.scale + c;
        const auto hour_free = [&](int hour) { return gap(made.box, around(hour_place(map, at, hour, c), c * 1.8, c * 1.2)) > c * 0.4; };
        if (clear && beside && hour_free(6) && hour_free(9)) return made;
    }
    return std::nullopt;
}

MapPlace placed(const ThicknessMap& map, const Box& box, const Lettering& lettering) {
    const double c = cap(lettering), room = room_beside_legend(map, box, lettering);
    const double radius = std::min(room / 2 - c * 1.9, box.h / 2 - c * 1.9);
    return {.centre = {box.x + room / 2, box.centre().y}, .scale = std::max(0.1, radius / radius_mm(map))};
}

/// Under the map, where its corner has no room.
Turned under(const ThicknessMap& map, const Box& box, const Lettering& lettering) {
    return turned(map, box, room_beside_legend(map, box, lettering), lettering);
}

void say_turned(Shapes& out, const Turned& turned, const Lettering& lettering) {
    double y = turned.box.y + cap(lettering);
    for (const std::string& line : turned.lines) {
        out.push_back(Text{.at = {turned.box.x, y}, .text = line, .type = Type::Text, .ink = Ink::Soft});
        y += pitch(Type::Text, lettering);
    }
}

void hours(Shapes& out, const ThicknessMap& map, const MapPlace& place, const Lettering& lettering) {
    const double c = cap(lettering);
    for (const int hour : {12, 3, 6, 9}) {
        const Point on = hour_place(map, place, hour, c);
        out.push_back(
            Text{.at = {on.x, on.y + c / 2}, .text = std::to_string(hour), .type = Type::Text, .ink = Ink::Soft, .align = Align::Centre});
    }
}

void legend(Shapes& out, const ThicknessMap& map, const Box& box, const Lettering& lettering) {
    const double c = cap(lettering), w = c * legend_caps, x = box.right() - legend_width(map, lettering) + c * legend_gap_caps;
    const Box bar{x, box.y + c * 2.4, w, box.h - c * 3};
    const auto low = static_cast<float>(map.low_um), high = static_cast<float>(map.high_um);
    out.push_back(Contours{.box = bar,
                           .columns = 2,
                           .rows = 2,
                           .values = {high, high, low, low},
                           .inside = {1e3F, 1e3F, 1e3F, 1e3F},
                           .low = static_cast<double>(map.low_um),
                           .high = static_cast<double>(map.high_um),
                           .step = static_cast<double>(map.step_um),
                           .line_width = line_width,
                           .line = Ink::Text});
    out.push_back(Text{.at = {x, box.y + c}, .text = map.unit, .type = Type::Text, .ink = Ink::Soft});
    const int bands = (map.high_um - map.low_um) / map.step_um;
    const double each = bar.h / bands;
    const int skip = std::max(1, static_cast<int>(std::ceil(c * legend_pitch_caps / each)));
    for (int i = 0; i <= bands; i += skip) {
        out.push_back(Text{.at = {bar.right() + c * 0.6, bar.bottom() - i * each + c / 2},
                           .text = std::to_string(map.low_um + i * map.step_um),
                           .type = Type::Text,
                           .ink = Ink::Text});
    }
}

}  // namespace

double um_at(const ThicknessField& field, Point on_eye) { return look_up(field, field.um, on_eye); }
double known_at(const ThicknessField& field, Point on_eye) { return look_up(field, field.known, on_eye); }

MapPlace place(const ThicknessMap& map, const Box& box, const Lettering& lettering) {
    const MapPlace whole = placed(map, box, lettering);
    if (map.turned.empty() || in_corner(map, whole, box, lettering)) return whole;
    const double used = under(map, box, lettering).box.h + cap(lettering) * 0.4;
    return placed(map, {box.x, box.y, box.w, box.h - used}, lettering);
}

Shapes draw(const ThicknessMap& map, const Box& box, const Lettering& lettering) {
    const MapPlace at = place(map, box, lettering);
    Shapes out;
    if (has_field(map)) field(out, map, at);
    limbus(out, map, at);
    cut(out, map, at);
    if (has_field(map)) {
        line_figures(out, map, at, lettering);
        legend(out, map, box, lettering);
    }
    hours(out, map, at, lettering);
    if (map.turned.empty()) return out;
    const auto corner = in_corner(map, placed(map, box, lettering), box, lettering);
    say_turned(out, corner.value_or(under(map, box, lettering)), lettering);
    return out;
}

}  // namespace picture
