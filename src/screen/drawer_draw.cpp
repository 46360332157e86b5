#include "screen/drawer.hpp"
#include "screen/page_parts.hpp"
#include "screen/target_draw.hpp"

#include <algorithm>

namespace screen {
namespace {

constexpr double elsewhere_mm = 15;

/// May she leave the room: amber with its triangle when not. Returns what it took.
double draw_nurse(Pen& pen, const Drawer& drawer, const Box& box) {
    if (drawer.nurse.empty()) return 0;
    const Ink ink = drawer.stay ? Ink::Amber : Ink::Text;
    const double size = drawer.stay ? pen.cap(Type::Text) * 1.4 : 0, indent = drawer.stay ? size * 1.3 : 0;
    const Block block = pen.block(drawer.nurse, {Type::Strong, Type::Text}, {box.w - indent, box.h, 2});
    if (!block.fits) pen.falls_short(drawer.nurse);
    if (drawer.stay) pen.icon(Icon::Triangle, {box.x, box.y, size, size}, ink, Ink::Ground);
    pen.text({box.x + indent, box.y}, block, ink);
    return block.height + pen.cap(Type::Text) * 0.6;
}

/// What to open now, as far as there is room.
void draw_open_now(Pen& pen, const Drawer& drawer, Box box) {
    if (drawer.open_now.value.empty()) return;
    const Block label = pen.block(drawer.open_now.label, {Type::Text}, {box.w, box.h, 1});
    const double below = label.height + pen.cap(Type::Text) * 0.4;
    const Block value = pen.block(drawer.open_now.value, {Type::Text}, {box.w, box.h - below, 3});
    if (!label.fits || !value.fits) return pen.falls_short(drawer.open_now.label);
    pen.text({box.x, box.y}, label, Ink::Soft);
    pen.text({box.x, box.y + below}, value, Ink::Text);
}

/// Beside the handle where the bar is a row, over it where it is a part of the path's column; the handle stays where it is.
void draw_bar(Pen& pen, const Drawer& drawer, const TableLayout& layout) {
    const double g = pen.gap();
    const Box& bar = layout.bar;
    if (bar.h > elsewhere_mm) {
        draw_target(pen, drawer.handle, {bar.x, bar.bottom() - elsewhere_mm, bar.w, elsewhere_mm}, Rank::Small);
        const Box words{bar.x, bar.y, bar.w, bar.h - elsewhere_mm - g};
        const double taken = draw_nurse(pen, drawer, words);
        return draw_open_now(pen, drawer, {words.x, words.y + taken, words.w, words.h - taken});
    }
    const bool left_hand = pen.canvas().glass.hand == Hand::Left;
    const double w = layout.path_column ? layout.path.w : std::min(bar.w * 0.3, pen.cap(Type::Text) * 14);
    draw_target(pen, drawer.handle, {left_hand ? bar.right() - w : bar.x, bar.y, w, bar.h}, Rank::Small);
    const Box words{left_hand ? bar.x : bar.x + w + g, bar.y + pen.cap(Type::Text) * 0.3, bar.w - w - g, bar.h};
    const double half = (words.w - g) / 2;
    draw_nurse(pen, drawer, {words.x, words.y, half, words.h});
    draw_open_now(pen, drawer, {words.x + half + g, words.y, half, words.h});
}

/// Wide enough for each row in one line, within bounds.
double rows_width(const Pen& pen, const std::vector<Row>& rows, double all) {
    double w = 0;
    for (const Row& row : rows)
        w = std::max(w, pen.width(Type::Text, row.label) + pen.width(Type::Text, row.value) + pen.cap(Type::Text) * 1.5);
    constexpr double least = 0.2, most = 0.4;
    return std::clamp(w, all * least, all * most);
}

/// Times and counts, as many as have room; they stand in the record all the same.
void draw_rows(Pen& pen, const std::vector<Row>& rows, Box box) {
    for (const Row& row : rows) {
        const double beside = box.w - pen.width(Type::Text, row.label) - pen.cap(Type::Text);
        const Block value = pen.block(row.value, {Type::Text}, {std::max(box.w * 0.5, beside), box.h, 2});
        const Block label = pen.block(row.label, {Type::Text}, {box.w - value.width - pen.cap(Type::Text), box.h, 2});
        if (!value.fits || !label.fits) return;
        pen.text({box.x, box.y}, label, Ink::Soft);
        pen.text({box.right(), box.y}, value, Ink::Text, Align::Right);
        const double taken = std::max(label.height, value.height) + pen.cap(Type::Text) * 0.6;
        box.y += taken;
        box.h -= taken;
    }
}

double put(Pen& pen, const Box& box, double y, const std::string& text, Type type, Ink ink) {
    if (text.empty()) return y;
    const Block block = pen.block(text, {type}, {box.w, box.bottom() - y, 3});
    if (!block.fits) return y;
    pen.text({box.x, y}, block, ink);
    return y + block.height + pen.cap(Type::Text) * 0.6;
}

/// What is typed, without an edge round it: the figure needs the room.
double put_typed(Pen& pen, const Box& box, double y, const std::string& text, std::size_t most) {
    for (const std::string& line : typed_lines(pen, text, box.w, most)) {
        pen.text({box.x, y}, line, Type::Strong, Ink::Accent);
        y += pen.pitch(Type::Strong);
    }
    return y;
}

/// As many as a field has room for over its actions.
std::size_t typed_lines_in(const Pen& pen, const Drawer& drawer, const Box& box, double y) {
    constexpr std::size_t most = 4;
    std::size_t lines = most;
    const auto under = [&](std::size_t n) { return y + pen.pitch(Type::Strong) * static_cast<double>(n); };
    while (lines > 1 && !grid_columns(pen, drawer.actions, {box.x, under(lines), box.w, box.bottom() - under(lines)})) --lines;
    return lines;
}

double put_height(const Pen& pen, const Box& box, double y, const std::string& text) {
    if (text.empty()) return y;
    return y + pen.block(text, {Type::Text}, {box.w, box.bottom() - y, 3}).height + pen.cap(Type::Text) * 0.6;
}

/// `tight`: two and two, so that what turns on keeps its place from part to part of a list.
void draw_actions(Pen& pen, const std::vector<Target>& actions, const Box& box, bool tight) {
    if (actions.empty()) return;
    auto columns = grid_columns(pen, actions, box);
    if (tight && columns && actions.size() == narrow_actions) columns = 2;
    if (!columns) pen.falls_short(actions.front().label);
    draw_grid(pen, actions, box, columns.value_or(std::max(1, static_cast<int>(box.w / 40))));
}

}  // namespace

TableLayout with_drawer(TableLayout layout, const Drawer& drawer, const Pen& pen) {
    const double g = pen.gap();
    if (layout.path_column) {
        // While the blade can turn out of the way of the figure; else over path and card, with the bar as a row under both.
        const bool wide = drawer.open && !drawer.narrow;
        const Box& path = layout.path;
        const Box& card = layout.card;
        const double left = wide ? std::min(path.x, card.x) : path.x, right = wide ? std::max(path.right(), card.right()) : path.right();
        const double h = wide ? elsewhere_mm : elsewhere_mm + g + pen.pitch(Type::Text) * 6;
        layout.path.h -= h + g;
        layout.bar = {left, path.bottom() + g, right - left, h};
        layout.drawer = {left, path.y, right - left, path.h};
        return layout;
    }
    layout.bar = {layout.path.x, layout.path.y, layout.path.w, elsewhere_mm};
    const double more = elsewhere_mm - layout.path.h;
    layout.card.y += more;
    layout.card.h -= more;
    layout.drawer = layout.card;
    if (!drawer.open || !drawer.narrow) return layout;
    if (pen.canvas().glass.portrait()) {
        // Two rows of actions, or one with what is typed: the figure needs the room.
        const double h = 2 * elsewhere_mm + g;
        layout.drawer = {layout.card.x, layout.card.bottom() - h, layout.card.w, h};
        layout.card.h -= h + g;
        return layout;
    }
    const bool left_hand = pen.canvas().glass.hand == Hand::Left;
    const double w = std::max(45.0, layout.card.w * 0.33);
    layout.drawer.w = w;
    layout.card.w -= w + g;
    if (left_hand) layout.drawer.x = layout.card.right() + g;
    if (!left_hand) layout.card.x += w + g;
    return layout;
}

void draw_drawer(Pen& pen, const Drawer& drawer, const TableLayout& layout) {
    draw_bar(pen, drawer, layout);
    if (!drawer.open) return;
    const bool tight = drawer.narrow && layout.drawer.w > layout.drawer.h;  // upright: nothing but the actions
    if (!tight) pen.add(picture::Panel{.box = layout.drawer, .radius = 2, .fill = Ink::Card, .edge = Ink::Mark, .edge_width = 0.5});
    const double pad = tight ? 0 : pen.cap(Type::Text) * (drawer.narrow ? 0.5 : 0.6);
    const Box box = inset(layout.drawer, pad);
    double y = box.y;
    if (!tight) y = put(pen, box, y, drawer.heading, drawer.narrow ? Type::Strong : Type::Title, Ink::Text);
    if (tight && drawer.field) y = put(pen, box, y, drawer.heading, Type::Text, Ink::Soft);
    if (drawer.field) y = put_typed(pen, box, y, drawer.field->text, typed_lines_in(pen, drawer, box, y));
    const auto below = [&box](double from) { return Box{box.x, from, box.w, box.bottom() - from}; };
    // The line gives way to the actions.
    const double under = tight ? y : put_height(pen, box, y, drawer.line);
    if (under > y && grid_columns(pen, drawer.actions, below(under))) y = put(pen, box, y, drawer.line, Type::Text, Ink::Soft);
    Box left = below(y);
    if (!drawer.rows.empty() && left.w > pen.cap(Type::Text) * 44) {
        const double w = rows_width(pen, drawer.rows, left.w), g = pen.gap();
        const Box beside{left.x + w + 2 * g, left.y, left.w - w - 2 * g, left.h};
        // The rows too: they stand in the record and on the way back.
        if (grid_columns(pen, drawer.actions, beside)) {
            const double air = pen.cap(Type::Text) * 0.6;
            draw_rows(pen, drawer.rows, {left.x, left.y + air, w, left.h - air});
            left = beside;
        }
    }
    draw_actions(pen, drawer.actions, left, tight);
}

}  // namespace screen
