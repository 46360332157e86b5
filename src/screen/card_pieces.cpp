#include "screen/card_pieces.hpp"

#include <algorithm>
#include <numeric>

namespace screen {

namespace {

/// What went otherwise bears the sign and the ink of how bad it is, in smaller letters before the sign would cost height.
Piece title(Pen& pen, const Card& card, const Box& box, Type role) {
    const bool alarm = card.level > Banner::Level::Notice;
    const Room room{box.w, 1e9, 3};
    const BesideSign made =
        alarm ? beside_sign(pen, card.title, {role, Type::Strong}, room) : BesideSign{.block = pen.block(card.title, {role}, room)};
    if (!made.block.fits) pen.falls_short(card.title);
    return {.kind = Piece::Kind::Title,
            .height = made.block.height + pen.cap(Type::Text) * 0.6,
            .after = pen.cap(Type::Text) * 0.6,
            .draw =
                [&pen, made, level = card.level, ink = alarm ? level_ink(card.level) : Ink::Text, x = box.x](double y) {
                    const double middle = y + pen.cap(made.block.type) / 2;
                    if (made.sign > 0) level_sign(pen, level, {x, middle - made.sign / 2, made.sign, made.sign}, Ink::Card);
                    pen.text({x + made.indent(), y}, made.block, ink);
                },
            .text = card.title};
}

Piece line(Pen& pen, const std::string& text, const Box& box, Piece::Kind kind, Type role, Ink ink = Ink::Soft) {
    const Block block = pen.block(text, {role}, {box.w, 1e9, 6});
    return {.kind = kind,
            .height = block.height + pen.cap(Type::Text) * 0.6,
            .after = pen.cap(Type::Text) * 0.6,
            .draw =
                [&pen, block, ink, x = box.x](double y) {
                    pen.text({x, y}, block, ink);
                },
            .text = text};
}

/// Words said aloud: a raised panel with the accent at its edge.
Piece say(Pen& pen, const std::string& text, const Box& box, Type role) {
    const double cap = pen.cap(Type::Text), pad = cap * 0.8;
    const Block block = pen.block(text, {role}, {box.w - 2.4 * pad, 1e9, 6});
    const double h = block.height + 2 * pad;
    return {.kind = Piece::Kind::Say,
            .height = h + cap,
            .after = cap,
            .draw =
                [&pen, block, pad, h, box](double y) {
                    pen.panel({box.x, y, box.w, h}, Ink::Raised);
                    pen.add(picture::Panel{.box = {box.x, y, pad * 0.35, h}, .radius = 0.5, .fill = Ink::Accent, .edge = Ink::Accent});
                    pen.text({box.x + pad * 1.4, y + pad}, block, Ink::Text);
                },
            .text = text};
}

Piece caution(Pen& pen, const std::string& text, const Box& box, Type role) {
    const double cap = pen.cap(role), icon = cap * 1.3, indent = icon + cap * 0.7;
    const Block block = pen.block(text, {role}, {box.w - indent, 1e9, 6});
    return {.kind = Piece::Kind::Caution,
            .height = block.height + cap * 0.7,
            .after = cap * 0.7,
            .draw =
                [&pen, block, icon, indent, cap, x = box.x](double y) {
                    pen.icon(Icon::Triangle, {x, y + cap / 2 - icon / 2, icon, icon}, Ink::Amber, Ink::Card);
                    pen.text({x + indent, y}, block, Ink::Text);
                },
            .text = text};
}

/// Label above value, under a hairline.
Piece foot(Pen& pen, const Row& row, const Box& box) {
    const double cap = pen.cap(Type::Text);
    const Block value = pen.block(row.value, {Type::Text}, {box.w, 1e9, 2});
    const double h = cap * 2.9 + value.height;
    return {.kind = Piece::Kind::Foot, .height = h, .draw = [&pen, row, value, cap, box](double y) {
                pen.add(picture::Line{.a = {box.x, y}, .b = {box.right(), y}, .width = 0.3, .ink = Ink::Line});
                pen.text({box.x, y + cap * 0.8}, row.label, Type::Text, Ink::Soft);
                pen.text({box.x, y + cap * 2.4}, value, Ink::Text);
            }};
}

/// Label and value in one text, under a hairline.
Piece short_foot(Pen& pen, const Row& row, const Box& box) {
    const double cap = pen.cap(Type::Text);
    const Block block = pen.block(row.label + ": " + row.value, {Type::Text}, {box.w, 1e9, 3});
    return {.kind = Piece::Kind::Foot, .height = block.height + cap * 1.1, .after = cap * 0.3, .draw = [&pen, block, cap, box](double y) {
                pen.add(picture::Line{.a = {box.x, y}, .b = {box.right(), y}, .width = 0.3, .ink = Ink::Line});
                pen.text({box.x, y + cap * 0.8}, block, Ink::Soft);
            }};
}

// ---- rows: read aloud, checked ----

struct RowPlace {
    double label_w = 0, value_w = 0;
    double space = 0.9;  // under a row, in cap heights
    Type label = Type::Text, value = Type::Strong;
};

double column_gap(const Pen& pen) { return pen.cap(Type::Text) * 2; }

/// Labels take no more than their part of the width, but never less than their longest word: a word is not broken, and would stand
/// over its value.
RowPlace row_place(const Pen& pen, const std::vector<Row>& rows, double w, const Voice& voice) {
    double label = 0, word = 0;
    for (const auto& row : rows) {
        label = std::max(label, pen.width(voice.label, row.label));
        word = std::max(word, pen.block(row.label, {voice.label}, {.width = 0}).width);
    }
    const double after = pen.cap(Type::Text) * 1.2;
    if (label > 0) label = std::max(std::min(label, w * 0.42), word) + after;  // the longest word of a value needs the greater part
    return {.label_w = label, .value_w = w - label, .label = voice.label, .value = voice.value};
}

struct RowBlocks {
    Block label{}, value{};
};

RowBlocks blocks_of(const Pen& pen, const Row& row, const RowPlace& place) {
    return {pen.block(row.label, {place.label}, {place.label_w, 1e9, 3}), pen.block(row.value, {place.value}, {place.value_w, 1e9, 3})};
}

double row_height(const Pen& pen, const Row& row, const RowPlace& place) {
    const auto [label, value] = blocks_of(pen, row, place);
    return std::max(label.height, value.height) + pen.cap(Type::Text) * place.space;
}

/// Label and value on one line of writing, whichever is the bigger.
void draw_row_of(Pen& pen, const Row& row, const RowPlace& place, Point at) {
    const auto [label, value] = blocks_of(pen, row, place);
    const double label_cap = pen.cap(place.label), value_cap = pen.cap(place.value), cap = std::max(label_cap, value_cap);
    pen.text({at.x, at.y + cap - label_cap}, label, Ink::Soft);
    pen.text({at.x + place.label_w, at.y + cap - value_cap}, value, Ink::Text);
}

struct Columns {
    std::size_t columns = 1, per = 1;
    RowPlace place{};
    double width = 0, height = 0;
    bool fits = true;  // no word of a row is wider than its place
};

Columns columns_of(const Pen& pen, const std::vector<Row>& all, double width, std::size_t columns, double space, const Voice& voice) {
    const double n = static_cast<double>(columns), w = (width - column_gap(pen) * (n - 1)) / n;
    Columns made{.columns = columns, .per = (all.size() + columns - 1) / columns, .place = row_place(pen, all, w, voice), .width = w};
    made.place.space = space;
    std::vector<double> heights(columns, 0);
    for (std::size_t i = 0; i < all.size(); ++i) {
        heights[i / made.per] += row_height(pen, all[i], made.place);
        const auto [label, value] = blocks_of(pen, all[i], made.place);
        made.fits = made.fits && label.width <= made.place.label_w + 1e-6 && value.width <= made.place.value_w + 1e-6;
    }
    made.height = *std::max_element(heights.begin(), heights.end());
    return made;
}

/// Rows in as few columns as the height allows, closer together before that; the lowest of all where nothing fits. Columns too narrow
/// for a word are none.
Columns fitted_columns(const Pen& pen, const std::vector<Row>& all, const Box& box, double room, const Voice& voice) {
    Columns lowest;
    for (std::size_t columns = 1; columns <= 3; ++columns) {
        for (const double space : {0.9, 0.45}) {
            const Columns made = columns_of(pen, all, box.w, columns, space, voice);
            if (columns > 1 && (made.width < pen.cap(Type::Text) * 14 || !made.fits)) continue;
            if (made.height <= room) return made;
            if (lowest.height == 0 || made.height < lowest.height) lowest = made;
        }
    }
    return lowest;
}

/// Closer together rather than without the foot, and in more columns rather than out of the room.
Piece rows(Pen& pen, const std::vector<Row>& all, const Box& box, double room, double foot, const Voice& voice) {
    const Columns closer = columns_of(pen, all, box.w, 1, 0.45, voice);
    Columns columns = fitted_columns(pen, all, box, room, voice);
    if (columns.height > room - foot && closer.height <= room - foot) columns = closer;
    return {
        .kind = Piece::Kind::Needed, .height = columns.height + pen.cap(Type::Text) * 0.4, .draw = [&pen, all, columns, box](double top) {
            double y = top;
            for (std::size_t i = 0; i < all.size(); ++i) {
                if (i % columns.per == 0) y = top;
                const std::size_t column = i / columns.per;
                const double x = box.x + static_cast<double>(column) * (columns.width + column_gap(pen));
                draw_row_of(pen, all[i], columns.place, {x, y});
                y += row_height(pen, all[i], columns.place);
            }
        }};
}

double with_spaces(const Pieces& pieces) {
    return std::accumulate(pieces.begin(), pieces.end(), 0.0, [](double sum, const Piece& piece) { return sum + piece.height; });
}

}  // namespace

double height_of(const Pieces& pieces) { return pieces.empty() ? 0 : with_spaces(pieces) - pieces.back().after; }

bool sentences_alone(const Card& card) {
    return !card.rows.empty() && std::all_of(card.rows.begin(), card.rows.end(), [](const Row& row) { return row.label.empty(); });
}

Pieces card_pieces(Pen& pen, const Card& card, const Box& box, const Voice& voice) {
    Pieces made;
    if (!card.title.empty()) made.push_back(title(pen, card, box, voice.title));
    for (std::size_t i = 0; i < card.lines.size(); ++i) {
        // Mid-cut nothing is read but the figure, the section and the clock: there the first line may go as well, unmissed.
        const Ink ink = card.level > Banner::Level::Notice ? Ink::Text : Ink::Soft;
        made.push_back(line(pen, card.lines[i], box, i == 0 && !card.figure ? Piece::Kind::Line : Piece::Kind::Hint, voice.line, ink));
        if (card.figure) made.back().text.clear();
    }
    if (!made.empty()) {
        made.back().height += pen.cap(voice.line) * 0.6;
        made.back().after += pen.cap(voice.line) * 0.6;
    }
    if (!card.say.empty()) made.push_back(say(pen, card.say, box, voice.say));
    Pieces after;
    for (const auto& text : card.cautions) after.push_back(caution(pen, text, box, voice.line));
    Pieces feet;
    for (const auto& row : card.foot) feet.push_back(voice.short_foot ? short_foot(pen, row, box) : foot(pen, row, box));
    const double room = box.h - with_spaces(made) - height_of(after);
    if (sentences_alone(card) && (card.figure || voice.sentence != Type::Strong)) {
        // Beside a figure as many as there is room for.
        for (const Row& row : card.rows) {
            const auto kind = card.figure ? Piece::Kind::Line : Piece::Kind::Needed;
            made.push_back(line(pen, row.value, box, kind, voice.sentence, Ink::Text));
            if ((card.figure || voice.sentence == Type::Text) && voice.close) made.back().height -= pen.cap(Type::Text) * 0.3;
            if (!card.figure && !voice.close) made.back().height += pen.cap(voice.sentence) * 0.6;
        }
    } else if (!card.rows.empty()) {
        made.push_back(rows(pen, card.rows, box, room, with_spaces(feet) + pen.cap(Type::Text) * 0.8, voice));
    }
    for (Pieces* rest : {&after, &feet}) std::move(rest->begin(), rest->end(), std::back_inserter(made));
    return made;
}

}  // namespace screen
