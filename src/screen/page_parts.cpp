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

bool stops(const Target& target) { return target.look == Look::Stop; }

/// Foot targets on the hand's side, no wider than their labels ask for.
double foot_width(const Pen& pen, const std::vector<Target>& foot, double most) {
    const auto doubled = foot.size() > 1 ? std::count_if(foot.begin(), foot.end(), stops) : 0;
    const double n = static_cast<double>(foot.size()) + static_cast<double>(doubled);
    return std::min(most, n * pen.cap(Type::Text) * 20 + (n - 1) * pen.gap());
}

/// How high a row of targets is.
double row_height(const Pen& pen, std::span<const Target> targets) {
    const bool reasons = std::any_of(targets.begin(), targets.end(), [](const Target& one) { return !one.why_not.empty(); });
    return std::max(tallest_mm(targets), pen.cap(Type::Text) * (reasons ? 4.6 : 3.6));
}

/// In how few rows targets go across a width and can be read.
std::size_t rows_of(const Pen& pen, std::span<const Target> targets, double width) {
    const double h = row_height(pen, targets);
    for (std::size_t rows = 1; rows < targets.size(); ++rows) {
        const std::size_t across = (targets.size() + rows - 1) / rows;
        const Box cell = part({0, 0, width, h}, 0, static_cast<int>(across), pen.gap());
        if (cell.w >= tallest_mm(targets) &&
            std::all_of(targets.begin(), targets.end(), [&](const Target& one) { return legible(pen, one, cell, Rank::Several); }))
            return rows;
    }
    return std::max<std::size_t>(1, targets.size());
}

/// Whether what stops a hand can take two places in its row, so that it is lettered as large as it weighs.
bool doubled(const Pen& pen, std::span<const Target> targets, double width) {
    const std::size_t rows = rows_of(pen, targets, width), across = (targets.size() + rows - 1) / rows;
    if (across < 2 || std::count_if(targets.begin(), targets.end(), stops) != 1) return false;
    const Box cell = part({0, 0, width, row_height(pen, targets)}, 0, static_cast<int>(across) + 1, pen.gap());
    return cell.w >= tallest_mm(targets) && std::all_of(targets.begin(), targets.end(), [&](const Target& one) {
               return stops(one) || legible(pen, one, cell, Rank::Several);
           });
}

/// A row in which what stops a hand has two places.
void draw_doubled(Pen& pen, std::span<const Target> targets, const Box& row) {
    const int n = static_cast<int>(targets.size()) + 1;
    std::vector<Target> others(targets.begin(), targets.end());
    std::erase_if(others, stops);
    const Type most = shared_type(pen, others, part(row, 0, n, pen.gap()), Rank::Several);
    int place = 0;
    for (const Target& one : targets) {
        Box box = part(row, place, n, pen.gap());
        if (stops(one)) box.w = part(row, place + 1, n, pen.gap()).right() - box.x;
        if (pen.canvas().glass.hand == Hand::Left) box = mirrored(box, row);
        draw_target(pen, one, box, stops(one) ? Rank::Wide : Rank::Several, stops(one) ? Type::Numeral : most);
        place += stops(one) ? 2 : 1;
    }
}

double typed_pad(const Pen& pen) { return pen.cap(Type::Text) * 0.7; }
double typed_line(const Pen& pen) { return pen.cap(Type::Strong) * (1 + picture::descent); }

/// What of a field of that width is not the text itself: its edges, label and line.
double around_typed(const Pen& pen, const Typed& typed, double width) {
    const double inner = width - 2 * typed_pad(pen);
    double h = 2 * typed_pad(pen);
    for (const std::string* one : {&typed.label, &typed.line})
        if (!one->empty()) h += pen.block(*one, {Type::Text}, {inner, 1e9, 2}).height + pen.cap(Type::Text) * 0.8;
    return h;
}

}  // namespace

std::vector<std::string> typed_lines(const Pen& pen, const std::string& text, double width, std::size_t most) {
    auto lines = pen.block(text + "_", {Type::Strong}, {.width = width, .typed = true}).lines;
    if (lines.size() > most) lines.erase(lines.begin(), lines.end() - static_cast<std::ptrdiff_t>(most));
    return lines;
}

double typed_height(const Pen& pen, const Typed& typed, double width, double most) {
    constexpr std::size_t least = 3, longest = 240;
    const auto lines = std::max(least, typed_lines(pen, typed.text, width - 2 * typed_pad(pen), longest).size());
    return std::min(most, around_typed(pen, typed, width) + pen.pitch(Type::Strong) * static_cast<double>(lines - 1) + typed_line(pen));
}

double least_typed_height(const Pen& pen, const Typed& typed, double width) { return around_typed(pen, typed, width) + typed_line(pen); }

void draw_typed(Pen& pen, const Typed& typed, const Box& box) {
    pen.add(picture::Panel{.box = box, .radius = 2, .fill = Ink::Raised, .edge = Ink::Accent, .edge_width = 0.8});
    const Box inner = inset(box, typed_pad(pen));
    const double between = pen.cap(Type::Text) * 0.8, room = box.h - around_typed(pen, typed, box.w);
    double y = inner.y;
    const auto put = [&](const std::string& words) {
        if (words.empty()) return;
        const Block block = pen.block(words, {Type::Text}, {inner.w, inner.bottom() - y, 2});
        if (!block.fits) return pen.falls_short(words);
        pen.text({inner.x, y}, block, Ink::Soft);
        y += block.height + between;
    };
    put(typed.label);
    const auto lines = static_cast<std::size_t>(1 + std::max(0.0, (room - typed_line(pen)) / pen.pitch(Type::Strong) + 1e-6));
    for (const std::string& line : typed_lines(pen, typed.text, inner.w, lines)) {
        pen.text({inner.x, y}, line, Type::Strong, Ink::Text);
        y += pen.pitch(Type::Strong);
    }
    put(typed.line);
}

double targets_height(const Pen& pen, std::span<const Target> targets, double width) {
    const auto rows = static_cast<double>(rows_of(pen, targets, width));
    return rows * row_height(pen, targets) + (rows - 1) * pen.gap();
}

void draw_targets(Pen& pen, std::span<const Target> targets, const Box& box) {
    const std::size_t rows = rows_of(pen, targets, box.w), across = (targets.size() + rows - 1) / rows;
    const double h = row_height(pen, targets);
    const bool may_double = doubled(pen, targets, box.w);
    for (std::size_t i = 0, row = 0; i < targets.size(); i += across, ++row) {
        const auto here = targets.subspan(i, std::min(across, targets.size() - i));
        const Box place{box.x, box.y + static_cast<double>(row) * (h + pen.gap()), box.w, h};
        if (may_double && here.size() > 1 && std::any_of(here.begin(), here.end(), stops)) {
            draw_doubled(pen, here, place);
        } else {
            draw_row(pen, here, place);
        }
    }
}

Box draw_bottom(Pen& pen, const std::vector<Target>& foot, const std::optional<Banner>& banner, Box left) {
    const double g = pen.gap();
    const bool left_hand = pen.canvas().glass.hand == Hand::Left;
    const auto take = [&left, g](double h) {
        left.h -= h + g;
        return Box{left.x, left.bottom() + g, left.w, h};
    };
    std::optional<Box> beside;
    if (!foot.empty()) {
        const double w = foot_width(pen, foot, left.w), rest = left.w - w - g;
        const Box row = take(targets_height(pen, foot, w));
        draw_targets(pen, foot, {left_hand ? row.x : row.right() - w, row.y, w, row.h});
        const Box free{left_hand ? row.right() - rest : row.x, row.y, rest, row.h};
        if (banner && rest >= pen.cap(Type::Text) * 24 && banner_height(pen, *banner, rest) <= row.h) beside = free;
    }
    if (banner) draw_banner(pen, *banner, beside ? *beside : take(banner_height(pen, *banner, left.w)));
    return left;
}

std::optional<int> grid_columns(const Pen& pen, std::span<const Target> targets, const Box& box) {
    const double side = tallest_mm(targets);
    std::optional<int> best;
    for (int columns = 1; columns <= static_cast<int>(std::min<std::size_t>(targets.size(), 12)); ++columns) {
        const Cells cell = cells(pen, targets.size(), box, columns);
        const bool fits = cell.w >= side && cell.h >= side - 1e-6;
        if (!fits || !std::all_of(targets.begin(), targets.end(), [&](const Target& target) {
                return legible(pen, target, {0, 0, cell.w, cell.h}, Rank::Several);
            }))
            continue;
        if (!best || awkward(cell) < awkward(cells(pen, targets.size(), box, *best))) best = columns;
    }
    return best;
}

Type draw_grid(Pen& pen, std::span<const Target> targets, const Box& box, int columns) {
    Cells cell = cells(pen, targets.size(), box, columns);
    cell.h = std::max(tallest_mm(targets), std::min(cell.h, pen.cap(Type::Text) * 9));
    const Type most = shared_type(pen, targets, {0, 0, cell.w, cell.h}, Rank::Several);
    for (std::size_t i = 0; i < targets.size(); ++i) {
        const std::size_t across = i % static_cast<std::size_t>(columns), down = i / static_cast<std::size_t>(columns);
        const auto column = static_cast<double>(across), row = static_cast<double>(down);
        draw_target(pen, targets[i], {box.x + column * (cell.w + pen.gap()), box.y + row * (cell.h + pen.gap()), cell.w, cell.h},
                    Rank::Several, most);
    }
    return most;
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
    const double sign = draw_muted(pen, page.muted, {left.right() - cap * 0.5, left.y + cap * 0.5 + pen.cap(Type::Title) / 2});
    const Block title = pen.block(page.title, {Type::Title}, {left.w - cap - sign, 1e9, 2});
    pen.text({left.x + cap * 0.5, left.y + cap * 0.5}, title, Ink::Text);
    take_top(title.height + cap);
    for (const auto& line : page.lines) {
        const Block block = pen.block(line, {page.line}, {left.w - cap, 1e9, 4});
        pen.text({left.x + cap * 0.5, left.y}, block, Ink::Soft);
        take_top(block.height + cap * 0.6);
    }
    take_top(cap * 0.5);
    if (!title.fits) pen.falls_short(page.title);
    return draw_bottom(pen, page.foot, page.banner, left);
}

}  // namespace screen
