#include "screen/target_draw.hpp"

#include "screen/letters.hpp"

#include <algorithm>
#include <cmath>

namespace screen {

namespace {

struct Paint {
    Ink fill{}, edge{}, label{}, line{};
    double edge_mm = 0.5;
};

Paint paint(const Target& target) {
    if (!target.why_not.empty()) return {Ink::Ground, Ink::Line, Ink::Soft, Ink::Soft, 0.3};  // flat, on ground and card
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
    bool beside = true;  // else above the label
};

Sign::Is sign_of(const Target& target) {
    if (target.why_not.empty() && target.look == Look::Stop) return Sign::Is::Octagon;
    if (target.press == Press::Hold) return Sign::Is::Hold;
    if (target.why_not.empty() && target.look == Look::Watch) return Sign::Is::Triangle;
    return Sign::Is::None;
}

bool small(Rank rank) { return rank == Rank::Small || rank == Rank::Several; }

double after_sign(const Pen& pen, Rank rank) { return pen.cap(Type::Text) * (small(rank) ? 0.4 : 0.6); }

/// The biggest sign beside which the label still goes into its lines; above it where there is no such place.
Sign sign(const Pen& pen, const Target& target, const Box& room, Rank rank) {
    const auto is = sign_of(target);
    if (is == Sign::Is::None) return {};
    const double least = pen.cap(Type::Strong) * 1.05;
    const double usual = small(rank)               ? pen.cap(Type::Strong) * 1.25
                         : is == Sign::Is::Octagon ? pen.cap(Type::Title) * 2
                                                   : pen.cap(Type::Title) * 1.2;
    for (const double size : {std::min(usual, room.h), least}) {
        const Room left{room.w - size - after_sign(pen, rank), room.h, 3};
        if (pen.block(target.label, {Type::Strong, Type::Text}, left).fits) return {is, size, true};
    }
    return {is, least, false};
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

/// Of the same height, bold is the bigger.
bool bigger(const Pen& pen, Type a, Type b) {
    return pen.cap(a) > pen.cap(b) + 1e-9 || (pen.cap(a) > pen.cap(b) - 1e-9 && bold(a) && !bold(b));
}

std::vector<Type> roles_of(const Target& target, Rank rank) {
    const bool key = letter_count(target.label) <= 3 && target.line.empty() && target.why_not.empty();
    if (key && small(rank)) return {Type::Title, Type::Strong};
    switch (rank) {
        case Rank::First:
            // Only an answer that leads has the biggest letters.
            if (target.look == Look::Hollow) return {Type::Title, Type::Strong, Type::Text};
            return {Type::Display, Type::Title, Type::Strong, Type::Text};
        case Rank::Wide:
        case Rank::Several:
            return {Type::Title, Type::Strong, Type::Text};
        case Rank::Small:
            return {Type::Strong, Type::Text};
    }
    return {};
}

/// The roles a label may have, biggest first: none bigger than `most`.
std::vector<Type> label_roles(const Pen& pen, const Target& target, Rank rank, Type most) {
    std::vector<Type> roles = roles_of(target, rank);
    std::erase_if(roles, [&](Type role) { return role != roles.back() && bigger(pen, role, most); });
    return roles;
}

/// Never bigger than the label above it.
Block line_block(const Pen& pen, const std::string& line, Type label, Rank rank, const Room& room) {
    if (line.empty()) return {};
    const bool big = rank == Rank::First && (label == Type::Display || label == Type::Title);
    return big ? pen.block(line, {Type::Lead, Type::Text}, room) : pen.block(line, {Type::Text}, room);
}

struct Lettered {
    Block label{}, line{};
    double between = 0;
    double height() const { return label.height + (line.lines.empty() ? 0 : between + line.height); }
};

Lettered set(const Pen& pen, const Target& target, Type role, Rank rank, const Room& room, double caps_between = 0.55) {
    const bool dead = !target.why_not.empty();
    Lettered made{.label = pen.block(target.label, {role}, room), .line = {}, .between = pen.cap(Type::Text) * caps_between};
    const double air = dead ? 0 : pen.cap(Type::Text) * 0.7;  // a line that would crowd a live target is not worth it
    const Room left{room.width, room.height - made.label.height - made.between - air, dead ? std::size_t{3} : std::size_t{2}};
    made.line = line_block(pen, dead ? target.why_not : target.line, role, rank, left);
    return made;
}

constexpr double most_of_several = 0.8;  // of the height of its target, where a smaller label would do

/// The biggest label that leaves room for the line under it. Where there is no such label the line of a live target goes, but
/// never the reason of a dead one.
Lettered lettered(const Pen& pen, const Target& target, Rank rank, const Room& room, Type most) {
    const auto roles = label_roles(pen, target, rank, most);
    for (const Type role : roles) {
        Lettered made = set(pen, target, role, rank, room);
        const bool crowds =
            rank == Rank::Several && role == Type::Title && roles.size() > 1 && made.height() > most_of_several * room.height;
        if (made.label.fits && made.line.fits && !crowds) return made;
    }
    constexpr double close = 0.2;
    if (!target.why_not.empty()) return set(pen, target, Type::Text, Rank::Small, room, close);
    for (const Type role : roles) {
        Lettered made = set(pen, target, role, rank, room);
        made.line = {};
        if (made.label.fits || role == roles.back()) return made;
    }
    return {};
}

/// What stands in a target, before it is placed.
struct Filling {
    Box inner{};
    Sign mark{};
    double sign_w = 0, sign_h = 0;
    Lettered words{};
    bool fits() const { return words.label.fits && words.line.fits; }
};

/// Where lettering and sign may stand: clear of the edge, farther from it at the sides of a wide target. Close: where else something
/// would have to go.
Box inside(const Pen& pen, const Target& target, const Box& box, Rank rank, bool close) {
    const double cap = pen.cap(Type::Text), edge = paint(target).edge_mm, wider = std::max(0.0, box.w - 20);
    const double aside = close ? std::clamp(wider * 0.05, 0.7, cap * 0.4) : std::clamp(wider * 0.08, 0.7, cap * 0.9);
    const double across = edge + (small(rank) ? aside : cap * 0.7), down = edge + (small(rank) ? 0.7 : cap * 0.6);
    return {box.x + across, box.y + down, box.w - 2 * across, box.h - 2 * down};
}

Filling with_sign(const Pen& pen, const Target& target, const Box& inner, const Sign& mark, Rank rank, Type most) {
    Filling made{.inner = inner, .mark = mark};
    const double taken = mark.size > 0 ? mark.size + after_sign(pen, rank) : 0;
    made.sign_w = mark.beside ? taken : 0;
    made.sign_h = mark.beside ? 0 : taken;
    made.words = lettered(pen, target, rank, {inner.w - made.sign_w, inner.h - made.sign_h, 3}, most);
    return made;
}

Filling filling_in(const Pen& pen, const Target& target, const Box& inner, Rank rank, Type most) {
    const Sign mark = sign(pen, target, inner, rank);
    Filling made = with_sign(pen, target, inner, mark, rank, most);
    const double larger = pen.cap(Type::Title) * 1.2;
    if (made.words.label.type != Type::Title || mark.size == 0 || !mark.beside || mark.size >= larger) return made;
    // As high as the label, where it stands as before beside it.
    Filling grown = with_sign(pen, target, inner, {mark.is, larger, true}, rank, most);
    return grown.fits() && grown.words.label.type == Type::Title ? grown : made;
}

/// With air at the sides, where that costs no more than a break or the step from a big label to the usual one.
Filling filling(const Pen& pen, const Target& target, const Box& box, Rank rank, Type most = Type::Numeral) {
    Filling close = filling_in(pen, target, inside(pen, target, box, rank, true), rank, most);
    Filling airy = filling_in(pen, target, inside(pen, target, box, rank, false), rank, most);
    const Type was = close.words.label.type, is = airy.words.label.type;
    const bool as_large = is == was || (rank == Rank::Several && was == Type::Title && is == Type::Strong);
    const bool as_good =
        airy.fits() && as_large && airy.mark.beside == close.mark.beside && airy.words.line.lines.empty() == close.words.line.lines.empty();
    return as_good ? airy : close;
}

}  // namespace

Ink ground_of(const Target& target) { return paint(target).fill; }

Ink draw_ground(Pen& pen, const Target& target, const Box& box) {
    const Paint colours = paint(target);
    ground(pen, target, box, colours);
    pen.touch(target, box);
    return colours.label;
}

double least_side_mm(Weight weight) {
    switch (weight) {
        case Weight::Spoke:
        case Weight::Theatre:
            return 20;
        case Weight::Elsewhere:
            return 15;
        case Weight::Pointer:
            return 6;
    }
    return 20;
}

bool legible(const Pen& pen, const Target& target, const Box& box, Rank rank) { return filling(pen, target, box, rank).fits(); }

Type shared_type(const Pen& pen, std::span<const Target> targets, const Box& box, Rank rank, Type most) {
    Type least = most;
    const auto dead = [](const Target& one) { return !one.why_not.empty(); };
    const bool all_dead = std::all_of(targets.begin(), targets.end(), dead);
    for (const Target& one : targets) {
        const Filling made = filling(pen, one, box, rank);
        // A dead one among live ones gives way to its reason by itself.
        if ((all_dead || !dead(one)) && bigger(pen, least, made.words.label.type)) least = made.words.label.type;
    }
    return least;
}

void draw_target(Pen& pen, const Target& target, const Box& box, Rank rank, Type most) {
    const Paint colours = paint(target);
    ground(pen, target, box, colours);
    pen.touch(target, box);
    const auto [inner, mark, sign_w, sign_h, words] = filling(pen, target, box, rank, most);
    if (!words.label.fits || !words.line.fits) pen.falls_short(target.label);
    if (target.why_not.empty() && !target.line.empty() && words.line.lines.empty()) pen.gives_way(target.label + ": " + target.line);

    const double width = std::max(words.label.width, words.line.width), h = words.height() + sign_h;
    const double left = box.centre().x - (width + sign_w) / 2, middle = left + sign_w + width / 2;
    // Centred by eye: half of the last descent does not count.
    const double sunk = pen.cap(words.line.lines.empty() ? words.label.type : words.line.type) * picture::descent / 2;
    const double top = box.centre().y - h / 2 + sign_h + std::min(sunk, std::max(0.0, (inner.h - h) / 2));
    const double sign_y = top + words.label.height / 2 - pen.cap(words.label.type) * picture::descent / 2;
    const Box at = mark.beside ? Box{left, sign_y - mark.size / 2, mark.size, mark.size}
                               : Box{box.centre().x - mark.size / 2, top - sign_h, mark.size, mark.size};
    draw_sign(pen, target, mark, at, colours);
    pen.text({middle, top}, words.label, colours.label, Align::Centre);
    pen.text({middle, top + words.label.height + words.between}, words.line, colours.line, Align::Centre);
}

}  // namespace screen
