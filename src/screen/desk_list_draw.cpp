#include "screen/desk_list_draw.hpp"

#include <algorithm>

namespace screen {
namespace {

struct Paint {
    Ink fill{}, edge{}, label{};
};

Paint paint(const Target& target) {
    if (!target.why_not.empty()) return {Ink::Ground, Ink::Line, Ink::Soft};
    switch (target.look) {
        case Look::Filled:
            return {Ink::AccentFill, Ink::Accent, Ink::OnAccent};
        case Look::Plain:
            return {Ink::Raised, Ink::Line, Ink::Text};
        case Look::Hollow:
        case Look::Watch:
            return {Ink::AmberFill, Ink::Amber, Ink::Amber};
        case Look::Stop:
            return {Ink::RedFill, Ink::Red, Ink::Red};
    }
    return {};
}

bool warns(const Target& target) { return target.why_not.empty() && (target.look == Look::Watch || target.look == Look::Stop); }
const std::string& beside(const Target& target) { return target.why_not.empty() ? target.line : target.why_not; }
double air(const Pen& pen) { return pen.cap(Type::Strong) * 0.7; }
double key_width(const Pen& pen, const Target& target) {
    const double cap = pen.cap(Type::Strong);
    return std::max(cap * 2.4, pen.width(Type::Strong, target.key) + cap * 1.2);
}

/// How wide a label may be in an action of that width.
double label_width(const Pen& pen, const Target& target, double w) {
    const double line_w = beside(target).empty() ? 0 : pen.width(Type::Text, beside(target)) + air(pen);
    const double icon_w = warns(target) ? pen.cap(Type::Strong) * 2 : 0;
    return w - 3 * air(pen) - key_width(pen, target) - icon_w - line_w;
}

/// Two lines go into a loose action and stay clear of its edge.
Block label_block(const Pen& pen, const Target& target, Type type, double w, double h) {
    constexpr double clear_mm = 0.7;
    return pen.block(target.label, {type}, {label_width(pen, target, w), h - 2 * clear_mm, 2});
}

/// The key in a box of its own, then what it does, then what stands beside it.
void draw_action(Pen& pen, const Target& target, const Box& box, Type type) {
    const Paint colours = paint(target);
    const bool dead = !target.why_not.empty(), flash = !dead && pen.canvas().finger.flash == target.id;
    pen.add(picture::Panel{.box = box,
                           .radius = 1.5,
                           .fill = colours.fill,
                           .edge = flash ? Ink::Text : colours.edge,
                           .edge_width = flash  ? 1.2
                                         : dead ? 0.2
                                                : 0.4});
    pen.touch(target, box);
    const double cap = pen.cap(Type::Strong), middle = box.centre().y;
    const Box key{box.x + air(pen), middle - cap * 1.05, key_width(pen, target), cap * 2.1};
    pen.add(picture::Panel{.box = key, .radius = 1, .fill = Ink::Ground, .edge = dead ? Ink::Line : Ink::Mark, .edge_width = 0.4});
    pen.text({key.centre().x, middle - cap / 2}, target.key, Type::Strong, dead ? Ink::Soft : Ink::Text, Align::Centre);
    if (pen.canvas().finger.holding == target.id)
        pen.add(picture::Panel{.box = {box.x, box.bottom() - 1.2, box.w * std::clamp(pen.canvas().finger.held, 0.0, 1.0), 1.2},
                               .fill = Ink::Text,
                               .edge = Ink::Text});
    double x = key.right() + air(pen);
    if (warns(target)) {
        pen.icon(target.look == Look::Stop ? Icon::Octagon : Icon::Triangle, {x, middle - cap * 0.75, cap * 1.5, cap * 1.5}, colours.label,
                 colours.fill);
        x += cap * 2;
    }
    const Block label = label_block(pen, target, type, box.w, box.h);
    if (!label.fits) pen.falls_short(target.label);
    pen.text({x, middle - (label.height - pen.cap(label.type) * picture::descent) / 2}, label, colours.label);
    pen.text({box.right() - air(pen), middle - pen.cap(Type::Text) / 2}, beside(target), Type::Text,
             colours.label == Ink::Text ? Ink::Soft : colours.label, Align::Right);
}

}  // namespace

bool all_fit(const Pen& pen, const std::vector<Target>& actions, Type type, double w, double h) {
    return std::all_of(actions.begin(), actions.end(), [&](const Target& one) { return label_block(pen, one, type, w, h).fits; });
}

double loose_height(const Pen& pen) { return std::max(6.0, pen.cap(Type::Strong) * 3.4); }
double close_height(const Pen& pen) { return std::max(6.0, pen.cap(Type::Strong) * 2.6); }
double closest_height(const Pen& pen) { return std::max(6.0, pen.cap(Type::Strong) * 2.25); }
double gap_between(const Pen& pen) { return std::max(1.2, pen.cap(Type::Text) * 0.4); }

bool in_one_line(const Pen& pen, const std::vector<Target>& actions, double w) {
    return std::all_of(actions.begin(), actions.end(),
                       [&](const Target& one) { return pen.width(Type::Strong, one.label) <= label_width(pen, one, w); });
}

Grid list_grid(const Pen& pen, const std::vector<Target>& actions, double w, double room) {
    const double n = static_cast<double>(actions.size()), gap = gap_between(pen), loose = loose_height(pen);
    const double least = in_one_line(pen, actions, w) ? closest_height(pen) : close_height(pen);
    const double h = std::min(loose, (room + gap) / n - gap);
    return h >= least ? Grid{h, gap, 1} : Grid{loose, gap, 2};
}

void draw_list(Pen& pen, const std::vector<Target>& actions, const Grid& grid, const Box& box) {
    const std::size_t a_column = (actions.size() + grid.columns - 1) / grid.columns;
    const double w = (box.w - grid.gap * static_cast<double>(grid.columns - 1)) / static_cast<double>(grid.columns);
    const Type type = all_fit(pen, actions, Type::Strong, w, grid.h) ? Type::Strong : Type::Text;  // one for all
    for (std::size_t i = 0; i < actions.size(); ++i) {
        const std::size_t column = i / a_column;
        const auto down = static_cast<double>(i % a_column), across = static_cast<double>(column);
        const Box at{box.x + across * (w + grid.gap), box.y + down * (grid.h + grid.gap), w, grid.h};
        if (at.bottom() > box.bottom() + 1e-6) {
            pen.falls_short(actions[i].label);
        } else {
            draw_action(pen, actions[i], at, type);
        }
    }
}

}  // namespace screen
