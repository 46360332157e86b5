// The rows of a count: each thing with its number and its two targets, in as many columns as the card has room for. Where they stand
// is decided by the glass and the things alone, never by the numbers, by who agrees or by what else there is to say: the targets are
// tapped again and again on one spot.
#include "screen/table_parts.hpp"
#include "screen/target_draw.hpp"

#include <algorithm>

namespace screen {

namespace {

constexpr double count_gap = 3;

double count_side(const CountRow& count) { return std::max(least_side_mm(count.fewer.weight), least_side_mm(count.more.weight)); }

/// What a count's words have beside them: their own width, and what is left of it beside the number.
struct CountRoom {
    double words = 0, beside = 0;
};

CountRoom count_room(const Pen& pen, const CountRow& count, double width, double side) {
    const double cap = pen.cap(Type::Text), words = width - 2 * side - 3 - cap * 0.8;
    const double number = std::max(pen.width(Type::Value, count.value), pen.width(Type::Value, "00"));
    return {words, words - number - cap * 0.8};
}

bool number_beside(const Pen& pen, const CountRow& count, double width, double side) {
    return pen.block(count.title, {Type::Strong}, {count_room(pen, count, width, side).beside, 1e9, 1}).fits;
}

/// How the words of a count stand to its two targets: the number beside them, under the title, or both over the targets.
enum class CountForm { Wide, Narrow, Over };

double count_height(const Pen& pen, double side, CountForm form) {
    return count_gap + side + (form == CountForm::Over ? pen.pitch(Type::Strong) : 0);
}

/// The number with what it is, where that has room: a bare one would be read as what was seen.
Block number_block(const Pen& pen, const CountRow& count, const Room& room) {
    const Block worded = pen.block(count.expected, {Type::Text}, room);
    return !count.expected.empty() && worded.fits ? worded : pen.block(count.value, {Type::Strong}, room);
}

/// Title and number on a line, the targets under it, each half as wide: for titles that nothing else has room for.
void draw_count_over(Pen& pen, const CountRow& count, const Box& box, double side) {
    const double line = pen.pitch(Type::Strong), half = (box.w - count_gap) / 2;
    const Block title = pen.block(count.title, {Type::Strong, Type::Text}, {count_room(pen, count, box.w, 0).beside, line, 1});
    if (!title.fits) pen.falls_short(count.title);
    pen.text({box.x, box.y}, title, Ink::Text);
    const double left = box.w - title.width - pen.cap(Type::Text) * 0.8;
    pen.text({box.right(), box.y}, number_block(pen, count, {left, 1e9, 1}), Ink::Text, Align::Right);
    draw_target(pen, count.fewer, {box.x, box.y + line, half, side}, Rank::Small);
    draw_target(pen, count.more, {box.x + half + count_gap, box.y + line, half, side}, Rank::Small);
}

/// Title and, small, where the number comes from; the number beside them, or under the title where the row is narrow.
void draw_count(Pen& pen, const CountRow& count, const Box& box, bool wide) {
    const double side = box.h, gap = count_gap, cap = pen.cap(Type::Text), right = box.right() - 2 * side - gap;
    const auto [words, beside] = count_room(pen, count, box.w, side);
    const Block title = pen.block(count.title, {Type::Strong}, {wide ? beside : words, box.h, 1});
    const Room under{wide ? beside : words, box.h - title.height - cap * 0.4, 1};
    const Block line = wide ? pen.block(count.line, {Type::Text}, under) : number_block(pen, count, under);
    const bool two = !line.lines.empty() && line.fits;
    const double y = box.y + (box.h - title.height - (two ? cap * 0.4 + line.height : 0)) / 2 + cap * picture::descent / 2;
    pen.text({box.x, y}, title, Ink::Text);
    if (two) pen.text({box.x, y + title.height + cap * 0.4}, line, wide ? Ink::Soft : Ink::Text);
    if (wide) {
        const Block worded = pen.block(two ? "" : count.expected, {Type::Strong}, {words - title.width - cap * 0.8, box.h, 1});
        const bool said = !worded.lines.empty() && worded.fits;
        const Block number = said ? worded : pen.block(count.value, {Type::Value}, {words, box.h, 1});
        pen.text({right - cap * 0.8, box.centre().y - pen.cap(number.type) / 2}, number, Ink::Text, Align::Right);
    }
    if (!title.fits || !(wide || two)) pen.falls_short(count.title);
    draw_target(pen, count.fewer, {right, box.y, side, side}, Rank::Small);
    draw_target(pen, count.more, {right + side + gap, box.y, side, side}, Rank::Small);
}

struct CountColumns {
    std::size_t columns = 1;
    CountForm form = CountForm::Wide;
    double w = 0, side = 0;
};

constexpr double grown_share = 0.8;  // of the room for counts: what is said aloud and cautioned stands over them whole

/// Larger targets for two pairs of gloves, as far as there is room for them and for the words beside.
double grown_side(const Pen& pen, const std::vector<CountRow>& all, const CountColumns& at, double room) {
    const std::size_t rows = (all.size() + at.columns - 1) / at.columns;
    for (const int larger : {28, 26, 24, 22, 20, 18}) {
        const auto side = static_cast<double>(larger);
        const bool fits = side > at.side && static_cast<double>(rows) * count_height(pen, side, at.form) <= room;
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
    if (made.form == CountForm::Wide) made.side = grown_side(pen, all, made, room * grown_share);
    return made;
}

/// Whether the number has room with its word in full.
bool expected_fits(const Pen& pen, const CountRow& count, const CountColumns& at) {
    const double over = at.w - pen.width(Type::Strong, count.title) - pen.cap(Type::Text) * 0.8;
    const double room = at.form == CountForm::Over ? over : count_room(pen, count, at.w, at.side).words;
    return at.form == CountForm::Wide || pen.width(Type::Text, count.expected) <= room;
}

}  // namespace

Box draw_counts(Pen& pen, const std::vector<CountRow>& all, const Box& card) {
    if (all.empty()) return card;
    constexpr double share = 0.45;  // of the card at most, before there are two columns: the words need the rest
    const double pad = pen.cap(Type::Text) * 0.7;
    const Box inner = inset(card, pen.cap(Type::Text));  // its words stand under those of the card
    const CountColumns at = count_columns(pen, all, inner, card.h * share - 2 * pad);
    const std::size_t per = (all.size() + at.columns - 1) / at.columns;
    const double each = count_height(pen, at.side, at.form), h = static_cast<double>(per) * each - count_gap + 2 * pad;
    const Box panel{card.x, card.bottom() - h, card.w, h};
    pen.panel(panel, Ink::Card);
    const bool short_words = std::any_of(all.begin(), all.end(), [&](const CountRow& one) { return !expected_fits(pen, one, at); });
    for (std::size_t i = 0; i < all.size(); ++i) {
        CountRow row = all[i];
        if (short_words) row.expected = row.due;  // all of them alike
        const auto column = i / per;
        const double x = inner.x + static_cast<double>(column) * (at.w + 2 * count_gap);
        const Box cell{x, panel.y + pad + static_cast<double>(i % per) * each, at.w, at.side};
        if (at.form == CountForm::Over) {
            draw_count_over(pen, row, cell, at.side);
        } else {
            draw_count(pen, row, cell, at.form == CountForm::Wide);
        }
    }
    return {card.x, card.y, card.w, card.h - h - pen.gap()};
}

}  // namespace screen
