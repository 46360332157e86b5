#include "screen/page_parts.hpp"

#include "screen/table_parts.hpp"
#include "screen/target_draw.hpp"

#include <algorithm>
#include <cmath>

namespace screen {

namespace {

double tallest_mm(std::span<const Target> targets) {
    double side = 0;
    for (const auto& target : targets) side = std::max(side, least_side_mm(target.weight));
    return side;
}

struct Cells {
    double w = 0, h = 0;
};

Cells cells(const Pen& pen, std::size_t n, const Box& box, int columns) {
    const auto rows = (n + static_cast<std::size_t>(columns) - 1) / static_cast<std::size_t>(columns);
    const double g = pen.gap();
    return {(box.w - g * (columns - 1)) / columns, (box.h - g * static_cast<double>(rows - 1)) / static_cast<double>(rows)};
}

/// How far a cell is from the shape that a label sits in best.
double awkward(const Cells& cell) { return std::abs(std::log(cell.w / cell.h / 2.6)); }

/// Foot targets on the hand's side, no wider than their labels ask for.
double foot_width(const Pen& pen, const std::vector<Target>& foot, double most) {
    const double n = static_cast<double>(foot.size());
    return std::min(most, n * pen.cap(Type::Text) * 20 + (n - 1) * pen.gap());
}

/// Foot and banner at the bottom of the page, side by side where both are read there; returns what is left above.
Box draw_bottom(Pen& pen, const PageWords& page, Box left) {
    const double g = pen.gap();
    const bool left_hand = pen.canvas().glass.hand == Hand::Left;
    const auto take = [&left, g](double h) {
        left.h -= h + g;
        return Box{left.x, left.bottom() + g, left.w, h};
    };
    std::optional<Box> beside;
    if (!page.foot.empty()) {
        const bool reasons = std::any_of(page.foot.begin(), page.foot.end(), [](const Target& one) { return !one.why_not.empty(); });
        const Box row = take(std::max(tallest_mm(page.foot), pen.cap(Type::Text) * (reasons ? 4.6 : 3.6)));
        const double w = foot_width(pen, page.foot, row.w), rest = row.w - w - g;
        draw_row(pen, page.foot, {left_hand ? row.x : row.right() - w, row.y, w, row.h});
        const Box free{left_hand ? row.right() - rest : row.x, row.y, rest, row.h};
        if (page.banner && rest >= pen.cap(Type::Text) * 24 && banner_height(pen, *page.banner, rest) <= row.h) beside = free;
    }
    if (page.banner) draw_banner(pen, *page.banner, beside ? *beside : take(banner_height(pen, *page.banner, left.w)));
    return left;
}

}  // namespace

std::optional<int> grid_columns(const Pen& pen, std::span<const Target> targets, const Box& box) {
    const double side = tallest_mm(targets);
    std::optional<int> best;
    for (int columns = 1; columns <= static_cast<int>(std::min<std::size_t>(targets.size(), 12)); ++columns) {
        const Cells cell = cells(pen, targets.size(), box, columns);
        const bool fits = cell.w >= side && cell.h >= side - 1e-6;
        if (!fits || !std::all_of(targets.begin(), targets.end(), [&](const Target& target) {
                return legible(pen, target, {0, 0, cell.w, cell.h}, Rank::Small);
            }))
            continue;
        if (!best || awkward(cell) < awkward(cells(pen, targets.size(), box, *best))) best = columns;
    }
    return best;
}

void draw_grid(Pen& pen, std::span<const Target> targets, const Box& box, int columns) {
    Cells cell = cells(pen, targets.size(), box, columns);
    cell.h = std::max(tallest_mm(targets), std::min(cell.h, pen.cap(Type::Text) * 9));
    for (std::size_t i = 0; i < targets.size(); ++i) {
        const std::size_t across = i % static_cast<std::size_t>(columns), down = i / static_cast<std::size_t>(columns);
        const auto column = static_cast<double>(across), row = static_cast<double>(down);
        draw_target(pen, targets[i], {box.x + column * (cell.w + pen.gap()), box.y + row * (cell.h + pen.gap()), cell.w, cell.h},
                    Rank::Small);
    }
}

Box draw_page(Pen& pen, const PageWords& page) {
    const Glass& glass = pen.canvas().glass;
    const double g = pen.gap(), cap = pen.cap(Type::Text);
    pen.add(picture::Panel{.box = {0, 0, glass.width_mm, glass.height_mm}, .fill = Ink::Ground, .edge = Ink::Ground});
    Box left{g, g, glass.width_mm - 2 * g, glass.height_mm - 2 * g};
    const auto take_top = [&left](double h) { left.y += h, left.h -= h; };
    if (page.strip) {
        const TableLayout layout = table_layout(pen);
        draw_strip(pen, *page.strip, layout);
        take_top(layout.strip.h);
    }
    const Block title = pen.block(page.title, {Type::Title}, {left.w - cap, 1e9, 2});
    pen.text({left.x + cap * 0.5, left.y + cap * 0.5}, title, Ink::Text);
    take_top(title.height + cap);
    for (const auto& line : page.lines) {
        const Block block = pen.block(line, {Type::Text}, {left.w - cap, 1e9, 4});
        pen.text({left.x + cap * 0.5, left.y}, block, Ink::Soft);
        take_top(block.height + cap * 0.6);
    }
    take_top(cap * 0.5);
    if (!title.fits) pen.falls_short(page.title);
    return draw_bottom(pen, page, left);
}

}  // namespace screen
