#include "measure/overloaded.hpp"
#include "screen/card_pieces.hpp"
#include "screen/table_parts.hpp"

#include <algorithm>

namespace screen {

namespace {

bool has_picture(const Card& card) { return !std::holds_alternative<std::monostate>(card.picture); }

/// The giant figure with its words, in the middle of its box. The line goes first where the height does not do.
void draw_figure(Pen& pen, const Figure& figure, const Box& box) {
    const double numeral = pen.cap(Type::Numeral), after = pen.cap(Type::Text) * 1.4;
    const Block under = pen.block(figure.under, {Type::Lead, Type::Text}, {box.w, 1e9, 2});
    Block line = pen.block(figure.line, {Type::Text}, {box.w, 1e9, 2});
    const double between = pen.cap(Type::Text) * 0.5;
    const auto height = [&] { return numeral + after + under.height + (line.lines.empty() ? 0 : between + line.height); };
    if (height() > box.h) line = {};
    const bool fits = height() <= box.h && pen.width(Type::Numeral, figure.numeral) <= box.w;
    if (!fits) pen.falls_short(figure.numeral + " " + figure.under);
    double y = box.y + std::max(0.0, (box.h - height()) / 2);
    const double x = box.centre().x;
    pen.text({x, y}, figure.numeral, fits ? Type::Numeral : Type::Display, Ink::Text, Align::Centre);
    y += (fits ? numeral : pen.cap(Type::Display)) + after;
    pen.text({x, y}, under, Ink::Text, Align::Centre);
    pen.text({x, y + under.height + between}, line, Ink::Soft, Align::Centre);
}

void draw_body(Pen& pen, const Card& card, const Box& body) {
    if (!card.figure) return draw_picture(pen, card.picture, body);
    if (!has_picture(card)) return draw_figure(pen, *card.figure, body);
    const double w = body.w * 0.47;
    draw_figure(pen, *card.figure, {body.x, body.y, w, body.h});
    draw_picture(pen, card.picture, {body.x + w, body.y, body.w - w, body.h});
}

/// The least height in which the figure or the picture still does its work.
double least_body(const Pen& pen, const Card& card) {
    if (card.figure) return pen.cap(Type::Numeral) + pen.cap(Type::Text) * 3 + pen.pitch(Type::Lead);
    return has_picture(card) ? pen.cap(Type::Text) * 12 : 0;
}

/// Foot, then second lines go, until the body has its height.
void give_way(Pieces& pieces, double room) {
    const auto too_high = [&] { return height_of(pieces) > room; };
    for (const auto kind : {Piece::Kind::Foot, Piece::Kind::Hint}) {
        while (too_high()) {
            const auto last = std::find_if(pieces.rbegin(), pieces.rend(), [kind](const Piece& piece) { return piece.kind == kind; });
            if (last == pieces.rend()) break;
            pieces.erase(std::next(last).base());
        }
    }
}

/// Pieces from the top down; those of the foot stand at the bottom. Returns what is left between.
Box stack(Pen& pen, const Pieces& pieces, const Box& box) {
    double top = box.y, bottom = box.bottom();
    for (const auto& piece : pieces) {
        if (piece.kind == Piece::Kind::Foot) continue;
        piece.draw(top);
        top += piece.height;
    }
    for (auto piece = pieces.rbegin(); piece != pieces.rend(); ++piece) {
        if (piece->kind != Piece::Kind::Foot) continue;
        bottom -= piece->height;
        piece->draw(bottom);
    }
    if (top > bottom + 0.5) pen.falls_short("card");
    return {box.x, top, box.w, std::max(0.0, bottom - top)};
}

}  // namespace

void draw_picture(Pen& pen, const Picture& picture, const Box& box) {
    const auto& lettering = pen.canvas().lettering;
    std::visit(measure::overloaded{
                   [](const std::monostate&) {},
                   [&](const picture::ClockFace& face) { pen.add(picture::draw(face, box, lettering)); },
                   [&](const picture::WallSection& section) { pen.add(picture::draw(section, box, lettering)); },
                   [&](const picture::OpenEye& eye) { pen.add(picture::draw(eye, box, lettering)); },
               },
               picture);
}

void draw_card(Pen& pen, const Card& card, const Box& box) {
    pen.panel(box, Ink::Card);
    const Box inner = inset(box, pen.cap(Type::Text));
    // A low, wide card has its words on the left and the picture at full height beside them.
    const bool beside = has_picture(card) && !card.figure && inner.w > 1.4 * inner.h;
    const Box words = beside ? Box{inner.x, inner.y, inner.w * 0.44, inner.h} : inner;
    Pieces pieces = card_pieces(pen, card, words);
    give_way(pieces, beside ? words.h : words.h - least_body(pen, card));
    const Box left = stack(pen, pieces, words);
    const double gap = pen.cap(Type::Text);
    const Box body = beside ? Box{words.right() + gap, inner.y, inner.w - words.w - gap, inner.h} : left;
    draw_body(pen, card, body);
}

}  // namespace screen
