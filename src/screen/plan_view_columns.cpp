// The first and the third column of the Plan view: what was measured, with the map; the sizes on their rulers.
#include "screen/plan_view_parts.hpp"
#include "screen/target_draw.hpp"

#include <algorithm>
#include <span>

namespace screen {

namespace {

constexpr double least_map = 7;  // cap heights of text

bool low_and_wide(const Box& box) { return box.w > 1.5 * box.h; }

/// Figure over what it is, as close as lettering allows: the height that takes, and the width.
struct Over {
    double w = 0, h = 0;
};
Over over(const Pen& pen, const Target& target) {
    const double cap = pen.cap(Type::Text);
    return {std::max(pen.width(Type::Strong, target.label), pen.width(Type::Text, target.line)) + cap * 0.6,
            pen.cap(Type::Strong) + cap * (1.6 + picture::descent)};
}

struct Grid {
    int columns = 1;
    double w = 0, h = 0, height = 0;
};

Grid grid(std::span<const Target> targets, double width, int columns, double h) {
    const int n = static_cast<int>(targets.size()), rows = (n + columns - 1) / columns;
    return {.columns = columns, .w = (width - plan_gap * (columns - 1)) / columns, .h = h, .height = rows * h + plan_gap * (rows - 1)};
}

/// As many a row as stay legible, in the lowest height that targets may have.
Grid lowest_grid(const Pen& pen, std::span<const Target> targets, double width, int most) {
    const double side = targets.empty() ? 0 : least_side_mm(targets.front().weight);
    const double h = std::max(side, pen.cap(Type::Text) * 3.4);
    for (int columns = std::min(most, static_cast<int>(targets.size())); columns > 1; --columns) {
        const Grid made = grid(targets, width, columns, h);
        const bool fit = std::all_of(targets.begin(), targets.end(), [&](const Target& one) { return over(pen, one).w <= made.w; });
        if (made.w >= side && fit) return made;
    }
    return grid(targets, width, 1, h);
}

void draw_cells(Pen& pen, std::span<const Target> targets, const Grid& grid, Point at) {
    for (std::size_t i = 0; i < targets.size(); ++i) {
        const int column = static_cast<int>(i) % grid.columns, row = static_cast<int>(i) / grid.columns;
        draw_figure_target(pen, targets[i], {at.x + column * (grid.w + plan_gap), at.y + row * (grid.h + plan_gap), grid.w, grid.h});
    }
}

double target_height(const Pen& pen, const Target& target) { return std::max(least_side_mm(target.weight), pen.cap(Type::Text) * 3.4); }

/// Two parts side by side.
struct Halves {
    Box a{}, b{};
};
Halves beside(const Box& box, double share, double gap) {
    const double w = box.w * share;
    return {{box.x, box.y, w, box.h}, {box.x + w + gap, box.y, box.w - w - gap, box.h}};
}

/// Where the readings are from beside the thinnest place, and the readings under both; returns what is left below.
Box draw_readings(Pen& pen, const PlanModel& model, const Box& box) {
    const double cap = pen.cap(Type::Text), high = target_height(pen, model.thinnest);
    const double wide = std::min(
        box.w * 0.62, std::max(pen.width(Type::Strong, model.thinnest.label), pen.width(Type::Text, model.thinnest.line)) + cap * 1.4);
    Block by = pen.block(model.measured, {Type::Text}, {box.w - wide - cap, 1e9, 3});
    double top = std::max(high, by.height) + plan_gap;
    if (by.fits) {
        pen.text({box.x, box.y + std::max(0.0, (high - by.height) / 2)}, by, Ink::Soft);
        draw_figure_target(pen, model.thinnest, {box.right() - wide, box.y, wide, high});
    } else {  // one over the other
        by = pen.block(model.measured, {Type::Text}, {box.w, 1e9, 3});
        pen.text({box.x, box.y}, by, Ink::Soft);
        draw_figure_target(pen, model.thinnest, {box.x, box.y + by.height + cap * 0.5, box.w, high});
        top = by.height + cap * 0.5 + high + plan_gap;
    }
    const Grid cells = lowest_grid(pen, model.readings, box.w, 6);
    draw_cells(pen, model.readings, cells, {box.x, box.y + top});
    const double used = top + cells.height + cap * 0.6;
    return {box.x, box.y + used, box.w, box.h - used};
}

/// Where there is no room for it the map is left out and missed, never drawn into what stands under it.
void draw_map(Pen& pen, const PlanModel& model, const Box& box) {
    if (box.h < pen.cap(Type::Text) * least_map) return pen.falls_short(model.thinnest.line);
    pen.add(picture::draw(model.map, box, pen.canvas().lettering));
}

}  // namespace

void draw_measured(Pen& pen, const PlanModel& model, const Box& whole) {
    pen.panel(whole, Ink::Card);
    const Box box = inset(whole, pen.cap(Type::Text) * 0.7);
    if (low_and_wide(box)) {
        const Halves halves = beside(box, 0.52, pen.cap(Type::Text));
        draw_readings(pen, model, halves.a);
        draw_map(pen, model, halves.b);
    } else {
        draw_map(pen, model, draw_readings(pen, model, box));
    }
}

void draw_figure_target(Pen& pen, const Target& target, const Box& box) {
    const Ink ink = draw_ground(pen, target, box), soft = target.look == Look::Plain ? Ink::Soft : ink;
    const double cap = pen.cap(Type::Text), strong = pen.cap(Type::Strong);
    const double side_by_side = pen.width(Type::Strong, target.label) + pen.width(Type::Text, target.line) + cap * 2.4;
    if (target.line.empty()) {
        const Block label = pen.block(target.label, {Type::Strong, Type::Text}, {box.w - cap * 0.6, box.h - cap * 0.6, 2});
        if (!label.fits) pen.falls_short(target.label);
        return pen.text({box.centre().x, box.centre().y - (label.height - strong * picture::descent) / 2}, label, ink, Align::Centre);
    }
    if (side_by_side <= box.w && box.w > 3.2 * box.h) {
        pen.text({box.x + cap * 0.8, box.centre().y - strong / 2}, target.label, Type::Strong, ink);
        pen.text({box.right() - cap * 0.8, box.centre().y - cap / 2}, target.line, Type::Text, soft, Align::Right);
        return;
    }
    const Block line = pen.block(target.line, {Type::Text}, {box.w - cap * 0.6, 1e9, 2});
    const double h = strong + cap * 0.6 + line.height, y = box.y + std::max(cap * 0.3, (box.h - h) / 2);
    if (!line.fits || h > box.h || over(pen, {.label = target.label}).w > box.w + cap * 0.3) pen.falls_short(target.label);
    pen.text({box.centre().x, y}, target.label, Type::Strong, ink, Align::Centre);
    pen.text({box.centre().x, y + strong + cap * 0.6}, line, soft, Align::Centre);
}

namespace {

/// What is said over a ruler: which, how large, whether it is there.
void draw_ruler_words(Pen& pen, const picture::SizeRuler& ruler, const Box& row) {
    const double cap = pen.cap(Type::Text), after = pen.width(Type::Text, ruler.label) + cap * 0.6;
    pen.text({row.x, row.y}, ruler.label, Type::Text, Ink::Soft);
    pen.text({row.x + after, row.y}, ruler.value, Type::Strong, ruler.is_held ? Ink::Text : Ink::Amber);
    const double room = row.w - after - pen.width(Type::Strong, ruler.value) - cap * 0.6;
    const std::string& held = pen.width(Type::Text, ruler.held) <= room ? ruler.held : ruler.short_held;
    if (pen.width(Type::Text, held) > room) return pen.falls_short(ruler.held);
    pen.text({row.right(), row.y}, held, Type::Text, ruler.is_held ? Ink::Soft : Ink::Amber, Align::Right);
}

double ruler_height(const Pen& pen, const PlanModel& model) {
    return pen.cap(Type::Text) * 1.9 + least_side_mm(model.steps.front().weight);
}

/// Each ruler between its two targets, its words over it.
void draw_rulers(Pen& pen, const PlanModel& model, const Box& box) {
    const double cap = pen.cap(Type::Text), side = target_height(pen, model.steps.front()), half = box.h / 2, w = std::max(side, cap * 4.4);
    const double head = cap * 1.9;
    for (std::size_t i = 0; i < model.steps.size(); ++i) {
        const double x = i % 2 == 0 ? box.x : box.right() - w, y = box.y + (i < 2 ? 0 : half) + head;
        draw_figure_target(pen, model.steps[i], {x, y, w, side});
    }
    picture::SizeRulers bare = model.rulers;
    for (picture::SizeRuler* one : {&bare.host, &bare.donor}) one->label = one->value = one->held = "";
    draw_ruler_words(pen, model.rulers.host, {box.x, box.y, box.w, cap});
    draw_ruler_words(pen, model.rulers.donor, {box.x, box.y + half, box.w, cap});
    const double gap = cap * 0.8, rule = head + side * 0.36 - cap * 2.55;
    pen.add(picture::draw(bare, {box.x + w + gap, box.y + rule, box.w - 2 * (w + gap), box.h}, pen.canvas().lettering));
}

void draw_figures(Pen& pen, const std::vector<Target>& figures, const Box& box) {
    const double n = static_cast<double>(figures.size()), least = target_height(pen, figures.front());
    const double h = std::clamp((box.h - plan_gap * (n - 1)) / n, least, least * 1.6);
    double y = box.y;
    for (const Target& figure : figures) {
        draw_figure_target(pen, figure, {box.x, y, box.w, h});
        y += h + plan_gap;
    }
}

}  // namespace

void draw_sizes(Pen& pen, const PlanModel& model, const Box& whole) {
    pen.panel(whole, Ink::Card);
    const double cap = pen.cap(Type::Text), least = 2 * ruler_height(pen, model) + plan_gap;
    const Box box = inset(whole, cap * 0.7);
    if (low_and_wide(box)) {
        const Halves halves = beside(box, 0.56, cap);
        draw_rulers(pen, model, {halves.a.x, halves.a.y, halves.a.w, std::clamp(halves.a.h, least, least * 1.4)});
        draw_figures(pen, model.figures, halves.b);
        return;
    }
    const double figures = static_cast<double>(model.figures.size()) * (target_height(pen, model.figures.front()) + plan_gap);
    const double rulers = std::clamp(box.h - figures - cap, least, least * 1.5);
    draw_rulers(pen, model, {box.x, box.y, box.w, rulers});
    draw_figures(pen, model.figures, {box.x, box.y + rulers + cap, box.w, box.h - rulers - cap});
}

}  // namespace screen
