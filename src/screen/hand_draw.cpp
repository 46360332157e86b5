#include "screen/table_parts.hpp"
#include "screen/target_draw.hpp"

#include <algorithm>

namespace screen {

namespace {

using Targets = std::span<const Target>;
using Rows = std::vector<Targets>;

bool alone(const Target& target) { return target.look == Look::Stop; }

/// How many stand together from `from` on: a run of small ones, or of those of one weight.
std::size_t run_length(Targets targets, std::size_t from) {
    std::size_t n = 1;
    while (from + n < targets.size() && !alone(targets[from + n]) && targets[from + n].weight == targets[from].weight) ++n;
    return n;
}

/// Of an odd run one stands alone: the first watch that leaves whole pairs before it, else the last.
std::size_t single_of(Targets run) {
    if (run.size() % 2 == 0) return run.size();
    for (std::size_t i = 0; i < run.size(); i += 2) {
        if (run[i].look == Look::Watch) return i;
    }
    return run.size() - 1;
}

void pairs(Rows& rows, Targets run) {
    const std::size_t single = single_of(run);
    for (std::size_t i = 0; i < run.size();) {
        const std::size_t n = i == single ? 1 : std::min<std::size_t>(2, run.size() - i);
        rows.push_back(run.subspan(i, n));
        i += n;
    }
}

/// Rows as they read best: stop alone, small ones three a row, the others in pairs.
Rows read_best(Targets targets, std::size_t most_in_row) {
    Rows rows;
    for (std::size_t i = 0; i < targets.size();) {
        if (alone(targets[i])) {
            rows.push_back(targets.subspan(i++, 1));
            continue;
        }
        const Targets run = targets.subspan(i, run_length(targets, i));
        if (run.size() == 3 && most_in_row >= 3 && run.front().weight == Weight::Elsewhere) {
            rows.push_back(run);
        } else {
            pairs(rows, run);
        }
        i += run.size();
    }
    return rows;
}

/// As many a row as go: the rows even, the fuller ones last.
Rows packed(Targets targets, std::size_t most_rows, std::size_t most_in_row) {
    Rows rows;
    const std::size_t n = std::min(targets.size(), most_rows * most_in_row);
    const std::size_t count = std::min(most_rows, n);
    for (std::size_t row = 0, i = 0; row < count; ++row) {
        const std::size_t here = (n - i) / (count - row);
        rows.push_back(targets.subspan(i, here));
        i += here;
    }
    return rows;
}

std::size_t placed(const Rows& rows) {
    std::size_t n = 0;
    for (const auto& row : rows) n += row.size();
    return n;
}

}  // namespace

void draw_row(Pen& pen, Targets targets, const Box& row) {
    const int n = static_cast<int>(targets.size());
    const bool left = pen.canvas().glass.hand == Hand::Left;
    for (int i = 0; i < n; ++i) {
        const int place = left ? n - 1 - i : i;
        draw_target(pen, targets[static_cast<std::size_t>(i)], part(row, place, n, pen.gap()), n == 1 ? Rank::Wide : Rank::Small);
    }
}

Targets draw_hand(Pen& pen, Targets hand, const TableLayout& layout) {
    if (hand.empty()) return {};
    draw_target(pen, hand.front(), layout.first, Rank::First);
    const Targets rest = hand.subspan(1);
    const auto most_rows = static_cast<std::size_t>(layout.most_rows), most_in_row = static_cast<std::size_t>(layout.most_in_row);
    Rows rows = read_best(rest, most_in_row);
    if (rows.size() > most_rows) rows = packed(rest, most_rows, most_in_row);
    if (rows.empty()) return {};
    const double g = pen.gap(), n = static_cast<double>(rows.size());
    const double usual = (layout.others.h - g * (layout.most_rows - 1)) / layout.most_rows;
    const double h = std::min((layout.others.h - g * (n - 1)) / n, usual * 1.25);
    double y = layout.others.y;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        // The last row keeps its place at the bottom of the column from step to step.
        if (i > 0 && i + 1 == rows.size()) y = layout.others.bottom() - h;
        draw_row(pen, rows[i], {layout.others.x, y, layout.others.w, h});
        y += h + g;
    }
    return rest.subspan(placed(rows));
}

}  // namespace screen
