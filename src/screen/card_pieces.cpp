#include "screen/card_pieces.hpp"

#include "screen/target_draw.hpp"

#include <algorithm>
#include <numeric>

namespace screen {

namespace {

Piece title(Pen& pen, const std::string& text, const Box& box) {
    const Block block = pen.block(text, {Type::Title}, {box.w, 1e9, 3});
    if (!block.fits) pen.falls_short(text);
    return {.kind = Piece::Kind::Title,
            .height = block.height + pen.cap(Type::Text) * 0.6,
            .after = pen.cap(Type::Text) * 0.6,
            .draw =
                [&pen, block, x = box.x](double y) {
                    pen.text({x, y}, block, Ink::Text);
                },
            .text = text};
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
};

double column_gap(const Pen& pen) { return pen.cap(Type::Text) * 2; }

RowPlace row_place(const Pen& pen, const std::vector<Row>& rows, double w) {
    double label = 0;
    for (const auto& row : rows) label = std::max(label, pen.width(Type::Text, row.label));
    const double after = pen.cap(Type::Text) * 1.2;
    if (label > 0) label = std::min(label, w * 0.42) + after;  // the longest word of a value needs the greater part
    return {.label_w = label, .value_w = w - label};
}

double row_height(const Pen& pen, const Row& row, const RowPlace& place) {
    const Block label = pen.block(row.label, {Type::Text}, {place.label_w, 1e9, 3}),
                value = pen.block(row.value, {Type::Strong}, {place.value_w, 1e9, 3});
    return std::max(label.height, value.height) + pen.cap(Type::Text) * place.space;
}

void draw_row_of(Pen& pen, const Row& row, const RowPlace& place, Point at) {
    pen.text(at, pen.block(row.label, {Type::Text}, {place.label_w, 1e9, 3}), Ink::Soft);
    pen.text({at.x + place.label_w, at.y}, pen.block(row.value, {Type::Strong}, {place.value_w, 1e9, 3}), Ink::Text);
}

struct Columns {
    std::size_t columns = 1, per = 1;
    RowPlace place{};
    double width = 0, height = 0;
};

Columns columns_of(const Pen& pen, const std::vector<Row>& all, double width, std::size_t columns, double space) {
    const double n = static_cast<double>(columns), w = (width - column_gap(pen) * (n - 1)) / n;
    Columns made{.columns = columns, .per = (all.size() + columns - 1) / columns, .place = row_place(pen, all, w), .width = w};
    made.place.space = space;
    std::vector<double> heights(columns, 0);
    for (std::size_t i = 0; i < all.size(); ++i) heights[i / made.per] += row_height(pen, all[i], made.place);
    made.height = *std::max_element(heights.begin(), heights.end());
    return made;
}

/// Rows in as few columns as the height allows, closer together before that; the lowest of all where nothing fits.
Columns fitted_columns(const Pen& pen, const std::vector<Row>& all, const Box& box, double room) {
    Columns lowest;
    for (std::size_t columns = 1; columns <= 3; ++columns) {
        for (const double space : {0.9, 0.45}) {
            const Columns made = columns_of(pen, all, box.w, columns, space);
            if (made.width < pen.cap(Type::Text) * 14 && columns > 1) continue;
            if (made.height <= room) return made;
            if (lowest.height == 0 || made.height < lowest.height) lowest = made;
        }
    }
    return lowest;
}

/// Closer together rather than without the foot, and in more columns rather than out of the room.
Piece rows(Pen& pen, const std::vector<Row>& all, const Box& box, double room, double foot) {
    const Columns closer = columns_of(pen, all, box.w, 1, 0.45);
    Columns columns = fitted_columns(pen, all, box, room);
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

// ---- counts: a thing counted, with fewer and more ----

constexpr double count_gap = 3;

double count_side(const CountRow& count) { return std::max(least_side_mm(count.fewer.weight), least_side_mm(count.more.weight)); }

/// What a count's words have beside them: their own width, and what is left of it beside the number.
struct CountRoom {
    double words = 0, beside = 0;
};

CountRoom count_room(const Pen& pen, const CountRow& count, double width, double side) {
    const double cap = pen.cap(Type::Text), words = width - 2 * side - 3 - cap * 0.8;
    return {words, words - pen.width(Type::Value, count.value) - cap * 0.8};
}

bool number_beside(const Pen& pen, const CountRow& count, double width, double side) {
    return pen.block(count.title, {Type::Strong}, {count_room(pen, count, width, side).beside, 1e9, 1}).fits;
}

/// How the words of a count stand to its two targets: the number beside them, under the title, or both over the targets.
enum class CountForm { Wide, Narrow, Over };

double count_height(const Pen& pen, double side, CountForm form) {
    return count_gap + side + (form == CountForm::Over ? pen.pitch(Type::Strong) : 0);
}

/// Title and number on a line, the targets under it, each half as wide: for titles that nothing else has room for.
void draw_count_over(Pen& pen, const CountRow& count, const Box& box, double side) {
    const double line = pen.pitch(Type::Strong), half = (box.w - count_gap) / 2;
    const Block title = pen.block(count.title, {Type::Strong, Type::Text}, {count_room(pen, count, box.w, 0).beside, line, 1});
    if (!title.fits) pen.falls_short(count.title);
    pen.text({box.x, box.y}, title, Ink::Text);
    pen.text({box.right(), box.y}, count.value, Type::Strong, Ink::Text, Align::Right);
    draw_target(pen, count.fewer, {box.x, box.y + line, half, side}, Rank::Small);
    draw_target(pen, count.more, {box.x + half + count_gap, box.y + line, half, side}, Rank::Small);
}

/// Title and, small, where the number comes from; the number beside them, or under the title where the row is narrow.
void draw_count(Pen& pen, const CountRow& count, const Box& box, bool wide) {
    const double side = box.h, gap = count_gap, cap = pen.cap(Type::Text), right = box.right() - 2 * side - gap;
    const auto [words, beside] = count_room(pen, count, box.w, side);
    const Block title = pen.block(count.title, {Type::Strong}, {wide ? beside : words, box.h, 1});
    const std::string under = wide ? count.line : count.value;
    const Block line = pen.block(under, {wide ? Type::Text : Type::Strong}, {wide ? beside : words, box.h - title.height - cap * 0.4, 1});
    const bool two = !under.empty() && line.fits;
    const double y = box.y + (box.h - title.height - (two ? cap * 0.4 + line.height : 0)) / 2 + cap * picture::descent / 2;
    pen.text({box.x, y}, title, Ink::Text);
    if (two) pen.text({box.x, y + title.height + cap * 0.4}, line, wide ? Ink::Soft : Ink::Text);
    if (wide) pen.text({right - cap * 0.8, box.centre().y - pen.cap(Type::Value) / 2}, count.value, Type::Value, Ink::Text, Align::Right);
    if (!title.fits || !(wide || two)) pen.falls_short(count.title);
    draw_target(pen, count.fewer, {right, box.y, side, side}, Rank::Small);
    draw_target(pen, count.more, {right + side + gap, box.y, side, side}, Rank::Small);
}

struct CountColumns {
    std::size_t columns = 1;
    CountForm form = CountForm::Wide;
    double w = 0, side = 0;
};

/// Larger targets for two pairs of gloves, as far as there is room for them and for the words beside.
double grown_side(const Pen& pen, const std::vector<CountRow>& all, const CountColumns& at, double room) {
    const std::size_t rows = (all.size() + at.columns - 1) / at.columns;
    for (const int larger : {28, 26, 24, 22, 20, 18}) {
        const auto side = static_cast<double>(larger);
        const bool fits = side > at.side && static_cast<double>(rows) * count_height(pen, side, at.form) <= room * 0.9;
        if (fits && std::all_of(all.begin(), all.end(), [&](const CountRow& one) { return number_beside(pen, one, at.w, side); }))
            return side;
    }
    return at.side;
}

/// In two columns where one is too high, and where those have no room for the titles beside the targets, over them.
CountColumns count_columns(const Pen& pen, const std::vector<CountRow>& all, const Box& box, double room) {
    CountColumns made{.w = box.w};
    double title = 0;
    for (const auto& count : all) {
        made.side = std::max(made.side, count_side(count));
        title = std::max(title, pen.width(Type::Strong, count.title));
    }
    if (static_cast<double>(all.size()) * count_height(pen, made.side, made.form) > room) {
        made.columns = 2;
        made.w = (box.w - 2 * count_gap) / 2;
        const double needed = 2 * made.side + count_gap + pen.cap(Type::Text) * 0.8 + title;
        if (made.w < needed) made.form = CountForm::Over;
    }
    const auto beside = [&](const CountRow& count) { return number_beside(pen, count, made.w, made.side); };
    if (made.form == CountForm::Wide && !std::all_of(all.begin(), all.end(), beside)) made.form = CountForm::Narrow;
    if (made.form == CountForm::Wide) made.side = grown_side(pen, all, made, room);
    return made;
}

Piece counts(Pen& pen, const std::vector<CountRow>& all, const Box& box, double room) {
    const CountColumns at = count_columns(pen, all, box, room);
    const std::size_t per = (all.size() + at.columns - 1) / at.columns;
    const double each = count_height(pen, at.side, at.form);
    return {.kind = Piece::Kind::Needed, .height = static_cast<double>(per) * each, .draw = [&pen, all, box, per, each, at](double y) {
                for (std::size_t i = 0; i < all.size(); ++i) {
                    const std::size_t column = i / per;
                    const double x = box.x + static_cast<double>(column) * (at.w + 2 * count_gap);
                    const Box cell{x, y + static_cast<double>(i % per) * each, at.w, at.side};
                    if (at.form == CountForm::Over) {
                        draw_count_over(pen, all[i], cell, at.side);
                    } else {
                        draw_count(pen, all[i], cell, at.form == CountForm::Wide);
                    }
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
    if (!card.title.empty()) made.push_back(title(pen, card.title, box));
    for (std::size_t i = 0; i < card.lines.size(); ++i) {
        // Mid-cut nothing is read but the figure, the section and the clock: there the first line may go as well, unmissed.
        made.push_back(line(pen, card.lines[i], box, i == 0 && !card.figure ? Piece::Kind::Line : Piece::Kind::Hint, voice.line));
        if (card.figure) made.back().text.clear();
    }
    if (!made.empty()) made.back().height += pen.cap(voice.line) * 0.6;
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
            if (!card.figure) made.back().height += pen.cap(voice.sentence) * 0.6;
        }
    } else if (!card.rows.empty()) {
        made.push_back(rows(pen, card.rows, box, room, with_spaces(feet) + pen.cap(Type::Text) * 0.8));
    }
    if (!card.counts.empty()) made.push_back(counts(pen, card.counts, box, box.h - with_spaces(made) - height_of(after)));
    for (Pieces* rest : {&after, &feet}) std::move(rest->begin(), rest->end(), std::back_inserter(made));
    return made;
}

}  // namespace screen
