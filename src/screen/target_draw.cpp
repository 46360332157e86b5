#include "screen/target_draw.hpp"

#include <algorithm>
#include <cmath>

namespace screen {

namespace {

struct Paint {
    Ink fill{}, edge{}, label{}, line{};
    double edge_mm = 0.5;
};

Paint paint(const Target& target) {
    if (!target.why_not.empty()) return {Ink::Card, Ink::Line, Ink::Soft, Ink::Soft, 0.4};
    switch (target.look) {
        case Look::Filled:
            return {Ink::AccentFill, Ink::Accent, Ink::OnAccent, Ink::OnAccent, 0.6};
        case Look::Plain:
            return {Ink::Raised, Ink::Line, Ink::Text, Ink::Soft, 0.5};
        case Look::Hollow:
            return {Ink::Ground, Ink::Amber, Ink::Amber, Ink::Amber, 1.1};
        case Look::Watch:
            return {Ink::AmberFill, Ink::Amber, Ink::Amber, Ink::Amber, 0.6};
        case Look::Stop:
            return {Ink::RedFill, Ink::Red, Ink::Red, Ink::Red, 1.1};
    }
    return {};
}

/// The edge filled clockwise from the top left by a share of its length; seen round the finger that holds.
void filling_edge(Pen& pen, const Box& box, double share, Ink ink) {
    const double width = 1.6;
    const Box b = inset(box, width / 2);
    const Point corners[] = {{b.x, b.y}, {b.right(), b.y}, {b.right(), b.bottom()}, {b.x, b.bottom()}, {b.x, b.y}};
    double left = share * 2 * (b.w + b.h);
    for (int i = 0; i < 4 && left > 0; ++i) {
        const Point a = corners[i], c = corners[i + 1];
        const double side = std::abs(c.x - a.x) + std::abs(c.y - a.y), part = std::min(1.0, left / side);
        pen.add(picture::Line{.a = a, .b = {a.x + (c.x - a.x) * part, a.y + (c.y - a.y) * part}, .width = width, .ink = ink});
        left -= side;
    }
}

void ground(Pen& pen, const Target& target, const Box& box, const Paint& paint) {
    const Finger& finger = pen.canvas().finger;
    const bool flash = finger.flash == target.id && target.why_not.empty();
    pen.add(picture::Panel{
        .box = box, .radius = 2, .fill = paint.fill, .edge = flash ? Ink::Text : paint.edge, .edge_width = flash ? 1.8 : paint.edge_mm});
    if (finger.holding == target.id) filling_edge(pen, box, std::clamp(finger.held, 0.0, 1.0), Ink::Text);
}

/// A sign before the label: triangle, octagon, or the ring of a hold, which fills.
struct Sign {
    enum class Is { None, Triangle, Octagon, Hold } is{};
    double size = 0;
};

Sign sign(const Pen& pen, const Target& target, const Box& box) {
    const double wide = std::min(pen.cap(Type::Title) * 1.25, box.h * 0.5);
    if (target.why_not.empty() && target.look == Look::Stop) return {Sign::Is::Octagon, std::min(wide * 1.6, box.h * 0.6)};
    if (target.press == Press::Hold) return {Sign::Is::Hold, pen.cap(Type::Strong) * 1.5};
    if (target.why_not.empty() && target.look == Look::Watch) return {Sign::Is::Triangle, wide};
    return {};
}

void draw_sign(Pen& pen, const Target& target, const Sign& sign, const Box& at, const Paint& paint) {
    const Finger& finger = pen.canvas().finger;
    switch (sign.is) {
        case Sign::Is::None:
            return;
        case Sign::Is::Triangle:
            pen.icon(Icon::Triangle, at, paint.label, paint.fill);
            return;
        case Sign::Is::Octagon:
            pen.icon(Icon::Octagon, at, paint.label, paint.fill);
            return;
        case Sign::Is::Hold: {
            const double r = sign.size / 2 - 0.4;
            pen.add(picture::Ring{.centre = at.centre(), .radius = r, .width = 0.5, .ink = paint.label});
            if (finger.holding != target.id) {
                pen.add(picture::Disc{.centre = at.centre(), .radius = r * 0.35, .ink = paint.label});
                return;
            }
            const double sweep = 360 * std::clamp(finger.held, 0.0, 1.0);
            pen.add(picture::Ring{
                .centre = at.centre(), .radius = r, .width = 1.4, .ink = paint.label, .from_deg = 90 - sweep, .sweep_deg = sweep});
            return;
        }
    }
}

Block label_block(const Pen& pen, const Target& target, Rank rank, const Room& room) {
    switch (rank) {
        case Rank::First:
            return pen.block(target.label, {Type::Display, Type::Title, Type::Strong, Type::Text}, room);
        case Rank::Wide:
            return pen.block(target.label, {Type::Title, Type::Strong, Type::Text}, room);
        case Rank::Small:
            return pen.block(target.label, {Type::Strong, Type::Text}, room);
    }
    return {};
}

Block line_block(const Pen& pen, const std::string& line, Rank rank, const Room& room) {
    if (line.empty()) return {};
    return rank == Rank::First ? pen.block(line, {Type::Lead, Type::Text}, room) : pen.block(line, {Type::Text}, room);
}

struct Lettered {
    Block label{}, line{};
    double between = 0;
    double height() const { return label.height + (line.lines.empty() ? 0 : between + line.height); }
};

/// The label first; the line only where it fits under it, except a reason, which must be read: the label steps down for it.
Lettered lettered(const Pen& pen, const Target& target, Rank rank, const Room& room) {
    const bool dead = !target.why_not.empty();
    Lettered made{.label = label_block(pen, target, rank, room), .line = {}, .between = pen.cap(Type::Text) * 0.55};
    if (rank == Rank::First && !target.line.empty()) {  // two lines of giant label leave no room: one role down
        const Room low{room.width, room.height * 0.7, room.most_lines};
        made.label = label_block(pen, target, rank, low);
        if (!made.label.fits) made.label = label_block(pen, target, rank, room);
    }
    const double left = room.height - made.label.height - made.between;
    const std::string& line = dead ? target.why_not : target.line;
    made.line = line_block(pen, line, rank, {room.width, left, dead ? std::size_t{3} : std::size_t{2}});
    if (made.line.fits) return made;
    if (!dead) {
        made.line = {};
        return made;
    }
    made.label = label_block(pen, target, Rank::Small, room);
    made.line = line_block(pen, line, Rank::Small, {room.width, room.height - made.label.height - made.between, 3});
    return made;
}

}  // namespace

double least_side_mm(Weight weight) { return weight == Weight::Elsewhere ? 15 : 20; }

double wanted_width(const Pen& pen, const Target& target) {
    return pen.block(target.label, {Type::Strong}, {1e9, 1e9, 1}).width + 2 * pen.cap(Type::Text);
}

void draw_target(Pen& pen, const Target& target, const Box& box, Rank rank) {
    const Paint colours = paint(target);
    ground(pen, target, box, colours);
    pen.touch(target, box);
    const double pad = std::max(1.4, pen.cap(Type::Text) * (rank == Rank::Small ? 0.4 : 0.8));
    const Sign mark = sign(pen, target, box);
    const double after = pen.cap(Type::Text) * 0.6;
    const bool beside = mark.size > 0 && box.w - 2 * pad - mark.size - after > pen.cap(Type::Text) * 6;
    const double sign_w = beside ? mark.size + after : 0, sign_h = mark.size > 0 && !beside ? mark.size + after : 0;
    const std::size_t most = box.h >= 3 * pen.pitch(Type::Strong) + pad ? 3 : 2;
    const Room room{box.w - 2 * pad - sign_w, box.h - 2 * pad - sign_h, most};
    const Lettered words = lettered(pen, target, rank, room);
    if (!words.label.fits || !words.line.fits) pen.falls_short(target.label);

    const double width = std::max(words.label.width, words.line.width);
    const double left = box.x + (box.w - width - sign_w) / 2, middle = left + sign_w + width / 2;
    const double top = box.y + (box.h - words.height() - sign_h) / 2 + sign_h;
    const Box at = beside ? Box{left, box.y + (box.h - mark.size) / 2, mark.size, mark.size}
                          : Box{box.centre().x - mark.size / 2, top - sign_h, mark.size, mark.size};
    draw_sign(pen, target, mark, at, colours);
    pen.text({middle, top}, words.label, colours.label, Align::Centre);
    pen.text({middle, top + words.label.height + words.between}, words.line, colours.line, Align::Centre);
}

}  // namespace screen
