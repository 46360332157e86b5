#include "screen/pen.hpp"

#include "picture/bounds.hpp"

#include <algorithm>

namespace screen {

double Pen::gap() const {
    const Glass& glass = canvas_.glass;
    return std::max(3.0, 0.022 * std::min(glass.width_mm, glass.height_mm));
}

Block Pen::block(const std::string& text, std::initializer_list<Type> roles, const Room& room) const {
    Block made;
    for (const Type role : roles) {
        made.type = role;
        made.lines = room.typed ? picture::wrap_typed(text, role, room.width, canvas_.lettering)
                                : picture::wrap(text, role, room.width, canvas_.lettering);
        made.width = picture::widest(made.lines, role, canvas_.lettering);
        const double n = static_cast<double>(made.lines.size());
        made.height = made.lines.empty() ? 0 : (n - 1) * pitch(role) + cap(role) * (1 + picture::descent);
        made.fits = made.lines.size() <= room.most_lines && made.width <= room.width + 1e-6 && made.height <= room.height + 1e-6;
        if (made.fits) break;
    }
    return made;
}

void Pen::text(Point at, const std::string& text, Type type, Ink ink, Align align) {
    if (text.empty()) return;
    add(picture::Text{.at = {at.x, at.y + cap(type)}, .text = text, .type = type, .ink = ink, .align = align});
}

void Pen::text(Point at, const Block& block, Ink ink, Align align) {
    for (const auto& line : block.lines) {
        text(at, line, block.type, ink, align);
        at.y += pitch(block.type);
    }
}

void Pen::heart(const Box& box, bool beat) {
    const double radius = std::min(box.w / 2, box.h * 0.15), line = radius * 0.3, apart = radius * 1.5;
    const Point c = box.centre(), full{c.x, c.y + (beat ? -apart : apart)}, empty{c.x, c.y + (beat ? apart : -apart)};
    add(picture::Ring{.centre = empty, .radius = radius - line / 2, .width = line, .ink = Ink::Mark});
    add(picture::Disc{.centre = full, .radius = radius, .ink = Ink::Soft});
}

namespace {

picture::Polygon around(Point centre, double radius, int corners, double from_deg, Ink ink) {
    picture::Polygon made{.points = {}, .ink = ink};
    for (int i = 0; i < corners; ++i) made.points.push_back(picture::on_circle(centre, radius, from_deg - 360.0 * i / corners));
    return made;
}

/// The bar and dot that stand in a triangle or an octagon.
void bar(Pen& pen, Point centre, double h, Ink ink) {
    pen.add(picture::Line{.a = {centre.x, centre.y - h * 0.5}, .b = {centre.x, centre.y + h * 0.12}, .width = h * 0.22, .ink = ink});
    pen.add(picture::Disc{.centre = {centre.x, centre.y + h * 0.42}, .radius = h * 0.13, .ink = ink});
}

/// Its body and its horn; beside it there is room for a cross.
void loudspeaker(Pen& pen, Point c, double s, Ink ink) {
    const double left = c.x - s * 0.5, neck = c.x - s * 0.27, front = c.x + s * 0.04, low = s * 0.17, high = s * 0.42;
    pen.add(picture::Polygon{.points = {{left, c.y - low}, {neck, c.y - low}, {neck, c.y + low}, {left, c.y + low}}, .ink = ink});
    pen.add(picture::Polygon{.points = {{neck, c.y - low}, {front, c.y - high}, {front, c.y + high}, {neck, c.y + low}}, .ink = ink});
}

}  // namespace

void Pen::icon(Icon icon, const Box& box, Ink ink, Ink on) {
    const Point c = box.centre();
    const double s = std::min(box.w, box.h), stroke = std::max(0.5, s * 0.13);
    switch (icon) {
        case Icon::Tick: {
            const Point knee{c.x - s * 0.12, c.y + s * 0.3};
            add(picture::Line{.a = {c.x - s * 0.42, c.y}, .b = knee, .width = stroke, .ink = ink});
            add(picture::Line{.a = knee, .b = {c.x + s * 0.42, c.y - s * 0.34}, .width = stroke, .ink = ink});
            add(picture::Disc{.centre = knee, .radius = stroke / 2, .ink = ink});
            return;
        }
        case Icon::Circle:
            add(picture::Ring{.centre = c, .radius = s * 0.36, .width = stroke * 0.8, .ink = ink});
            return;
        case Icon::Dot:
            add(picture::Disc{.centre = c, .radius = s * 0.42, .ink = ink});
            return;
        case Icon::Triangle:
            add(around({c.x, c.y + s * 0.14}, s * 0.56, 3, 90, ink));
            bar(*this, {c.x, c.y + s * 0.14}, s * 0.42, on);
            return;
        case Icon::Octagon:
            add(around(c, s * 0.54, 8, 22.5, ink));
            bar(*this, c, s * 0.52, on);
            return;
        case Icon::Muted:
            loudspeaker(*this, c, s, ink);
            for (const double down : {-1.0, 1.0})
                add(picture::Line{
                    .a = {c.x + s * 0.16, c.y - down * s * 0.2}, .b = {c.x + s * 0.5, c.y + down * s * 0.2}, .width = stroke, .ink = ink});
            return;
    }
}

Ink level_ink(Banner::Level level) {
    switch (level) {
        case Banner::Level::Notice:
            return Ink::Soft;
        case Banner::Level::Watch:
            return Ink::Amber;
        case Banner::Level::Stop:
            return Ink::Red;
    }
    return Ink::Text;
}

void level_sign(Pen& pen, Banner::Level level, const Box& box, Ink on) {
    if (level == Banner::Level::Watch) pen.icon(Icon::Triangle, box, Ink::Amber, on);
    if (level == Banner::Level::Stop) pen.icon(Icon::Octagon, box, Ink::Red, on);
}

BesideSign beside_sign(const Pen& pen, const std::string& text, std::initializer_list<Type> roles, const Room& room) {
    const Block bare = pen.block(text, roles, room);
    for (const Type role : roles) {
        BesideSign made{.sign = pen.cap(role) * 1.2};
        made.block = pen.block(text, {role}, {room.width - made.indent(), room.height, room.most_lines});
        if (made.block.fits && made.block.height <= bare.height) return made;
    }
    return {.block = bare};
}

Box part(const Box& row, int i, int n, double gap) {
    const double w = (row.w - gap * (n - 1)) / n;
    return {row.x + i * (w + gap), row.y, w, row.h};
}

Box mirrored(const Box& box, const Box& within) { return {within.x + within.right() - box.right(), box.y, box.w, box.h}; }

Box inset(const Box& box, double by) { return {box.x + by, box.y + by, box.w - 2 * by, box.h - 2 * by}; }

}  // namespace screen
