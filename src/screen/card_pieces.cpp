#include "screen/card_pieces.hpp"

#include "screen/target_draw.hpp"

#include <algorithm>

namespace screen {

namespace {

Piece title(Pen& pen, const std::string& text, const Box& box) {
    const Block block = pen.block(text, {Type::Title}, {box.w, 1e9, 3});
    if (!block.fits) pen.falls_short(text);
    return {.kind = Piece::Kind::Needed, .height = block.height + pen.cap(Type::Text) * 0.6, .draw = [&pen, block, x = box.x](double y) {
                pen.text({x, y}, block, Ink::Text);
            }};
}

Piece plain(Pen& pen, const std::string& text, const Box& box, Piece::Kind kind, Ink ink) {
    const Block block = pen.block(text, {Type::Text}, {box.w, 1e9, 6});
    return {.kind = kind, .height = block.height + pen.cap(Type::Text) * 0.6, .draw = [&pen, block, ink, x = box.x](double y) {
                pen.text({x, y}, block, ink);
            }};
}

/// Words said aloud: a raised panel with the accent at its edge.
Piece say(Pen& pen, const std::string& text, const Box& box) {
    const double cap = pen.cap(Type::Text), pad = cap * 0.8;
    const Block block = pen.block(text, {Type::Strong}, {box.w - 2.4 * pad, 1e9, 6});
    const double h = block.height + 2 * pad;
    return {.kind = Piece::Kind::Needed, .height = h + cap, .draw = [&pen, block, pad, h, box](double y) {
                pen.panel({box.x, y, box.w, h}, Ink::Raised);
                pen.add(picture::Panel{.box = {box.x, y, pad * 0.35, h}, .radius = 0.5, .fill = Ink::Accent, .edge = Ink::Accent});
                pen.text({box.x + pad * 1.4, y + pad}, block, Ink::Text);
            }};
}

Piece caution(Pen& pen, const std::string& text, const Box& box) {
    const double cap = pen.cap(Type::Text), icon = cap * 1.3, indent = icon + cap * 0.7;
    const Block block = pen.block(text, {Type::Text}, {box.w - indent, 1e9, 6});
    return {.kind = Piece::Kind::Needed, .height = block.height + cap * 0.7, .draw = [&pen, block, icon, indent, cap, x = box.x](double y) {
                pen.icon(Icon::Triangle, {x, y + cap / 2 - icon / 2, icon, icon}, Ink::Amber, Ink::Card);
                pen.text({x + indent, y}, block, Ink::Text);
            }};
}

/// Label above value, under a hairline.
Piece foot(Pen& pen, const Row& row, const Box& box) {
    const double cap = pen.cap(Type::Text);
    const Block value = pen.block(row.value, {Type::Text}, {box.w, 1e9, 2});
    const double h = cap * 2.4 + value.height;
    return {.kind = Piece::Kind::Foot, .height = h, .draw = [&pen, row, value, cap, box](double y) {
                pen.add(picture::Line{.a = {box.x, y}, .b = {box.right(), y}, .width = 0.3, .ink = Ink::Line});
                pen.text({box.x, y + cap * 0.8}, row.label, Type::Text, Ink::Soft);
                pen.text({box.x, y + cap * 2.4}, value, Ink::Text);
            }};
}

// ---- rows: read aloud, checked ----

struct RowPlace {
    double label_w = 0, value_w = 0;
};

RowPlace row_place(const Pen& pen, const std::vector<Row>& rows, double w) {
    double label = 0;
    for (const auto& row : rows) label = std::max(label, pen.width(Type::Text, row.label));
    const double after = pen.cap(Type::Text) * 1.2;
    label = std::min(label, w * 0.5) + after;
    return {label, w - label};
}

double row_height(const Pen& pen, const Row& row, const RowPlace& place) {
    const Block label = pen.block(row.label, {Type::Text}, {place.label_w, 1e9, 3}),
                value = pen.block(row.value, {Type::Strong}, {place.value_w, 1e9, 3});
    return std::max(label.height, value.height) + pen.cap(Type::Text) * 0.9;
}

void draw_row_of(Pen& pen, const Row& row, const RowPlace& place, Point at) {
    pen.text(at, pen.block(row.label, {Type::Text}, {place.label_w, 1e9, 3}), Ink::Soft);
    pen.text({at.x + place.label_w, at.y}, pen.block(row.value, {Type::Strong}, {place.value_w, 1e9, 3}), Ink::Text);
}

/// Rows in as few columns as the height allows.
Piece rows(Pen& pen, const std::vector<Row>& all, const Box& box, double room) {
    const double between = pen.cap(Type::Text) * 2;
    for (int columns = 1;; ++columns) {
        const double w = (box.w - between * (columns - 1)) / columns;
        const RowPlace place = row_place(pen, all, w);
        const std::size_t per = (all.size() + static_cast<std::size_t>(columns) - 1) / static_cast<std::size_t>(columns);
        std::vector<double> heights(static_cast<std::size_t>(columns), 0);
        for (std::size_t i = 0; i < all.size(); ++i) heights[i / per] += row_height(pen, all[i], place);
        const double h = *std::max_element(heights.begin(), heights.end());
        const bool narrower_goes = (box.w - between * columns) / (columns + 1) > pen.cap(Type::Text) * 14;
        if (h > room && narrower_goes) continue;
        return {.kind = Piece::Kind::Needed,
                .height = h + pen.cap(Type::Text) * 0.4,
                .draw = [&pen, all, place, per, w, between, box](double top) {
                    double y = top;
                    for (std::size_t i = 0; i < all.size(); ++i) {
                        if (i % per == 0) y = top;
                        draw_row_of(pen, all[i], place, {box.x + static_cast<double>(i / per) * (w + between), y});
                        y += row_height(pen, all[i], place);
                    }
                }};
    }
}

// ---- counts: a thing counted, with fewer and more ----

double count_height(const CountRow& count) { return std::max(least_side_mm(count.fewer.weight), least_side_mm(count.more.weight)); }

void draw_count(Pen& pen, const CountRow& count, const Box& box) {
    const double side = box.h, gap = std::max(3.0, pen.gap() * 0.7), cap = pen.cap(Type::Text);
    const double right = box.right() - 2 * side - gap;
    const Block title = pen.block(count.title, {Type::Strong}, {right - box.x - cap, 1e9, 2});
    const Block value = pen.block(count.value, {Type::Text}, {right - box.x - cap, box.h - title.height - cap * 0.5, 2});
    const Block line = pen.block(count.line, {Type::Text}, {right - box.x - cap, box.h - title.height - value.height - cap, 1});
    const bool with_line = line.fits && !count.line.empty();
    const double h = title.height + cap * 0.5 + value.height + (with_line ? cap * 0.5 + line.height : 0);
    double y = box.y + (box.h - h) / 2;
    pen.text({box.x, y}, title, Ink::Text);
    pen.text({box.x, y + title.height + cap * 0.5}, value, Ink::Text);
    if (with_line) pen.text({box.x, y + title.height + value.height + cap}, line, Ink::Soft);
    if (!title.fits || !value.fits) pen.falls_short(count.title);
    draw_target(pen, count.fewer, {right, box.y, side, side}, Rank::Small);
    draw_target(pen, count.more, {right + side + gap, box.y, side, side}, Rank::Small);
}

Piece counts(Pen& pen, const std::vector<CountRow>& all, const Box& box, double room) {
    double side = 0;
    for (const auto& count : all) side = std::max(side, count_height(count));
    const double gap = std::max(3.0, pen.gap() * 0.7);
    const std::size_t one_column = static_cast<std::size_t>(std::max(1.0, (room + gap) / (side + gap)));
    const std::size_t columns = std::max<std::size_t>(1, (all.size() + one_column - 1) / one_column);
    const std::size_t per = (all.size() + columns - 1) / columns;
    const double w = (box.w - gap * 2 * static_cast<double>(columns - 1)) / static_cast<double>(columns);
    return {.kind = Piece::Kind::Needed,
            .height = static_cast<double>(per) * (side + gap),
            .draw = [&pen, all, box, per, w, side, gap](double y) {
                for (std::size_t i = 0; i < all.size(); ++i) {
                    const double x = box.x + static_cast<double>(i / per) * (w + 2 * gap);
                    draw_count(pen, all[i], {x, y + static_cast<double>(i % per) * (side + gap), w, side});
                }
            }};
}

}  // namespace

double height_of(const Pieces& pieces) {
    double sum = 0;
    for (const auto& piece : pieces) sum += piece.height;
    return sum;
}

Pieces card_pieces(Pen& pen, const Card& card, const Box& box) {
    Pieces made;
    if (!card.title.empty()) made.push_back(title(pen, card.title, box));
    for (std::size_t i = 0; i < card.lines.size(); ++i) {
        made.push_back(plain(pen, card.lines[i], box, i == 0 ? Piece::Kind::Needed : Piece::Kind::Hint, Ink::Soft));
    }
    if (!made.empty()) made.back().height += pen.cap(Type::Text) * 0.6;
    if (!card.say.empty()) made.push_back(say(pen, card.say, box));
    Pieces after;
    for (const auto& text : card.cautions) after.push_back(caution(pen, text, box));
    const double room = box.h - height_of(made) - height_of(after);
    if (!card.rows.empty()) made.push_back(rows(pen, card.rows, box, room));
    if (!card.counts.empty()) made.push_back(counts(pen, card.counts, box, box.h - height_of(made) - height_of(after)));
    for (auto& piece : after) made.push_back(std::move(piece));
    for (const auto& row : card.foot) made.push_back(foot(pen, row, box));
    return made;
}

}  // namespace screen
