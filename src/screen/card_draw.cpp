#include "screen/card_pieces.hpp"
#include "screen/table_parts.hpp"

#include <algorithm>
#include <array>

namespace screen {

namespace {

bool has_picture(const Card& card) { return !std::holds_alternative<std::monostate>(card.picture); }

/// As on the Far view.
Ink ink_of(const Figure& figure) { return figure.to_zero ? Ink::Accent : figure.over ? Ink::Amber : Ink::Text; }

/// The giant figure with its words, in the middle of its box. The line goes first where the height does not do.
void draw_figure(Pen& pen, const Figure& figure, const Box& box) {
    const double numeral = pen.cap(Type::Numeral);
    double after = pen.cap(Type::Text) * 1.4;
    const Block under = pen.block(figure.under, {Type::Lead, Type::Text}, {box.w, 1e9, 2});
    Block line = pen.block(figure.line, {Type::Text}, {box.w, 1e9, 2});
    const double between = pen.cap(Type::Text) * 0.5;
    const auto height = [&] { return numeral + after + under.height + (line.lines.empty() ? 0 : between + line.height); };
    if (height() > box.h) line = {};
    if (height() > box.h) after = pen.cap(Type::Text) * 0.8;
    const bool fits = height() <= box.h && pen.width(Type::Numeral, figure.numeral) <= box.w;
    if (!fits) pen.falls_short(figure.numeral + " " + figure.under);
    double y = box.y + std::max(0.0, (box.h - height()) / 2);
    const double x = box.centre().x;
    pen.text({x, y}, figure.numeral, fits ? Type::Numeral : Type::Display, ink_of(figure), Align::Centre);
    y += (fits ? numeral : pen.cap(Type::Display)) + after;
    pen.text({x, y}, under, Ink::Text, Align::Centre);
    pen.text({x, y + under.height + between}, line, Ink::Soft, Align::Centre);
}

/// Where the blade stopped: words as large as the figure and not the giant one, which would be read as what is left to go.
void draw_stopped(Pen& pen, const Figure& figure, const Box& box) {
    const double between = pen.cap(Type::Text) * 0.6;
    const Block stopped = pen.block(figure.numeral + " " + figure.under, {Type::Title, Type::Strong}, {box.w, box.h, 4});
    Block line = pen.block(figure.line, {Type::Text}, {box.w, box.h - stopped.height - between, 2});
    if (!stopped.fits) pen.falls_short(figure.numeral + " " + figure.under);
    if (!line.fits) line = {};
    const double h = stopped.height + (line.lines.empty() ? 0 : between + line.height), y = box.y + std::max(0.0, (box.h - h) / 2);
    pen.text({box.centre().x, y}, stopped, Ink::Amber, Align::Centre);
    pen.text({box.centre().x, y + stopped.height + between}, line, Ink::Soft, Align::Centre);
}

void draw_body(Pen& pen, const Card& card, const Box& body) {
    if (sentences_alone(card) && card.figure) return draw_stopped(pen, *card.figure, body);
    if (!card.figure) return draw_picture(pen, card.picture, body);
    if (!has_picture(card)) return draw_figure(pen, *card.figure, body);
    // Room for two digits always, so that nothing moves between ten and nine.
    const double w = std::max(body.w * 0.4, pen.width(Type::Numeral, "00") + pen.cap(Type::Text) * 0.6);
    draw_figure(pen, *card.figure, {body.x, body.y, w, body.h});
    draw_picture(pen, card.picture, {body.x + w, body.y, body.w - w, body.h});
}

/// The least height in which the figure or the picture still does its work.
double least_body(const Pen& pen, const Card& card) {
    if (card.figure && sentences_alone(card)) return pen.pitch(Type::Strong) * 1.2;
    if (card.figure) {
        const double figure = pen.cap(Type::Numeral) + pen.cap(Type::Text) * 1.4 + pen.cap(Type::Lead) * (1 + picture::descent);
        return std::max(figure, has_picture(card) ? pen.cap(Type::Text) * 12 : 0);
    }
    if (std::holds_alternative<picture::ClockFace>(card.picture)) return pen.cap(Type::Text) * 19;
    return has_picture(card) ? pen.cap(Type::Text) * 12 : 0;
}

/// Words and picture of a card: one over the other, or side by side where the card is low and wide.
struct Arrangement {
    Box words{};
    Box picture{};         // empty: the picture goes, or stands under the words
    bool pictured = true;  // the picture stands somewhere
    bool beside = false;
    Pieces foot{};  // under both, where the words have no room for it
};

/// The foot in one text before sentences stand closer.
constexpr std::array<std::pair<bool, bool>, 3> closer{{{false, false}, {true, false}, {true, true}}};

using Arranged = std::pair<Arrangement, Pieces>;

std::vector<Arrangement> arrangements(const Pen& pen, const Card& card, const Box& inner) {
    const Arrangement stacked{.words = inner};
    // Beside a figure without its section there is room for what is to be done.
    const bool shares_row = card.figure ? !card.rows.empty() || (!has_picture(card) && card.lines.size() > 1) : has_picture(card);
    if (!shares_row) return {stacked};
    std::vector<Arrangement> tries;
    const double gap = pen.cap(Type::Text), least = card.figure ? pen.width(Type::Numeral, "00") : gap * 13;
    for (const double share : {0.44, 0.52, 0.6}) {
        const double w = inner.w * share, rest = inner.w - w - gap;
        if (rest >= least) tries.push_back({{inner.x, inner.y, w, inner.h}, {inner.x + w + gap, inner.y, rest, inner.h}, true, true});
    }
    tries.insert(inner.w > 1.4 * inner.h ? tries.end() : tries.begin(), stacked);
    if (!card.figure) tries.push_back({.words = inner, .pictured = false});
    return tries;
}

double room_for_words(const Pen& pen, const Card& card, const Arrangement& arrangement) {
    const bool shares = !arrangement.beside && (card.figure || arrangement.pictured);
    return arrangement.words.h - (shares ? least_body(pen, card) : 0);
}

/// With the space between the body and the foot.
double height_with_foot(const Pen& pen, const Pieces& pieces) {
    const bool foot = std::any_of(pieces.begin(), pieces.end(), [](const Piece& piece) { return piece.kind == Piece::Kind::Foot; });
    return height_of(pieces) + (foot ? pen.cap(Type::Text) * 0.4 : 0);
}

Voice lowest_of(const Card& card) { return sentences_alone(card) ? lowest : Voice{.short_foot = true, .title = Type::Strong}; }

/// Where not all goes in: by what it is worth, as much as there is room for.
Pieces most_worth(Pen& pen, const Card& card, const Arrangement& arrangement) {
    const bool otherwise = sentences_alone(card);
    const Pieces all = card_pieces(pen, card, arrangement.words, lowest_of(card));
    const double room = room_for_words(pen, card, arrangement);
    std::vector<bool> keep(all.size(), false);
    const auto kept = [&] {
        Pieces made;
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (keep[i]) made.push_back(all[i]);
        }
        return made;
    };
    using Kind = Piece::Kind;
    std::array worth{Kind::Needed, Kind::Title, Kind::Caution, Kind::Line, Kind::Say, Kind::Hint, Kind::Foot};
    if (otherwise) std::swap(worth[0], worth[1]);  // what is wrong, then the first things to do
    for (const Kind kind : worth) {
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (all[i].kind != kind) continue;
            keep[i] = true;
            if (height_with_foot(pen, kept()) <= room) continue;
            keep[i] = kind == Kind::Needed && !otherwise;
            if (keep[i] || !all[i].text.empty()) pen.falls_short(keep[i] ? card.title : all[i].text);
        }
    }
    return kept();
}

/// Side by side with the foot under both, where that leaves the picture large enough.
std::optional<Arrangement> over_foot(Pen& pen, const Card& card, const Arrangement& arrangement, const Box& inner) {
    if (!arrangement.beside || card.foot.empty()) return std::nullopt;
    Arrangement made = arrangement;
    made.foot = card_pieces(pen, {.foot = card.foot}, inner, {.short_foot = true});
    const double taken = height_with_foot(pen, made.foot), least = card.figure ? least_body(pen, card) : pen.cap(Type::Text) * 14;
    made.words.h -= taken;
    made.picture.h -= taken;
    return made.picture.h < least ? std::nullopt : std::optional(std::move(made));
}

/// Whether the picture keeps its size before the foot does: the clock face that says where the next suture goes.
bool picture_first(const Card& card, const Arrangement& arrangement, const Box& inner) {
    const auto* face = std::get_if<picture::ClockFace>(&card.picture);
    return face != nullptr && !face->next.empty() && arrangement.beside && arrangement.picture.w < 0.5 * inner.w;
}

/// Into which arrangement the words go with their foot; a picture that says no more than the words gives way to it.
std::optional<Arranged> arranged_whole(Pen& pen, const Card& card, const Box& inner, Voice voice) {
    Card without_foot = card;
    without_foot.foot.clear();
    for (const auto& arrangement : arrangements(pen, card, inner)) {
        if (!arrangement.pictured && !std::holds_alternative<picture::OpenEye>(card.picture)) continue;
        if (picture_first(card, arrangement, inner)) continue;
        for (const auto& [short_foot, close] : closer) {
            voice.short_foot = short_foot;
            voice.close = close;
            Pieces pieces = card_pieces(pen, card, arrangement.words, voice);
            if (height_with_foot(pen, pieces) <= room_for_words(pen, card, arrangement)) return {{arrangement, std::move(pieces)}};
        }
        if (auto over = over_foot(pen, card, arrangement, inner)) {
            Pieces pieces = card_pieces(pen, without_foot, over->words, voice);
            if (height_of(pieces) <= over->words.h) return {{*std::move(over), std::move(pieces)}};
        }
    }
    return std::nullopt;
}

/// Words alone, in one voice: with air and a foot of two lines where there is room for both.
std::optional<Arranged> spoken(Pen& pen, const Card& card, const Box& inner, Voice voice) {
    for (const auto& [short_foot, close] : closer) {
        if (close && voice.title == loud.title) break;  // crowded letters are not read the better for being big
        voice.short_foot = short_foot;
        voice.close = close;
        Pieces pieces = card_pieces(pen, card, inner, voice);
        if (height_with_foot(pen, pieces) <= inner.h) return Arranged(Arrangement{.words = inner}, std::move(pieces));
    }
    return std::nullopt;
}

/// What to do when something went otherwise, in the biggest voice that goes in with a banner too: it is read again and again, and a
/// banner that comes and goes must not change its letters. Under a banner the foot gives way to that.
std::optional<Arranged> steady(Pen& pen, const Card& card, const Box& inner, const CardHeights& heights) {
    const auto high = [&inner](double h) { return Box{inner.x, inner.y, inner.w, h}; };
    Card without_foot = card;
    without_foot.foot.clear();
    const bool short_title = beside_sign(pen, card.title, {loud.title}, {inner.w, inner.h, 1}).sign > 0;
    for (const Voice& voice : {loud, roomy, between, Voice{}, low, lowest}) {
        if (voice.title == loud.title && !short_title) continue;
        if (!spoken(pen, card, high(heights.bare), voice) || !spoken(pen, without_foot, high(heights.with_banner), voice)) continue;
        auto made = spoken(pen, card, inner, voice);
        return made ? std::move(made) : spoken(pen, without_foot, inner, voice);
    }
    return std::nullopt;
}

/// A bigger voice where the words go in whole, and no picture pays for it; of what goes otherwise mid-cut the lines alone, as far as
/// figure and section keep their least height.
std::optional<Arranged> bigger(Pen& pen, const Card& card, const Box& inner) {
    if (card.figure && !sentences_alone(card) && card.level > Banner::Level::Notice) {
        // Beside what can be tapped on: what to do instead is read first.
        for (const Type line : {Type::Lead, Type::Strong}) {
            if (auto whole = arranged_whole(pen, card, inner, {.line = line})) return whole;
        }
    }
    if (has_picture(card) || (card.figure && !sentences_alone(card))) return std::nullopt;
    constexpr double air = 0.9;
    for (Voice voice : {roomy, between}) {
        const double room = inner.h * (voice.say == roomy.say ? air : 1);
        if (card.figure) {
            if (auto whole = arranged_whole(pen, card, inner, voice)) return whole;
            continue;
        }
        for (const bool short_foot : {false, true}) {
            voice.short_foot = short_foot;
            Pieces pieces = card_pieces(pen, card, inner, voice);
            if (height_with_foot(pen, pieces) <= room) return Arranged(Arrangement{.words = inner}, std::move(pieces));
        }
    }
    return std::nullopt;
}

/// Beside the most words, a clock face that still says where the next suture goes.
std::optional<Arrangement> dial_beside(const Pen& pen, const Card& card, const std::vector<Arrangement>& tries) {
    if (!points_to_next(card.picture)) return std::nullopt;
    std::optional<Arrangement> made;
    for (const auto& arrangement : tries) {
        if (arrangement.beside && hand_seen(pen, card.picture, arrangement.picture)) made = arrangement;
    }
    return made;
}

/// The first arrangement into which the words go, with their foot where one has room for it. A clock face is worth more than a hint.
Arranged arranged(Pen& pen, const Card& card, const Box& inner, const CardHeights& heights) {
    const bool otherwise = sentences_alone(card) && !card.figure;
    if (auto made = otherwise ? steady(pen, card, inner, heights) : bigger(pen, card, inner)) return *std::move(made);
    if (auto whole = arranged_whole(pen, card, inner, {})) return *std::move(whole);
    const auto tries = arrangements(pen, card, inner);
    const auto dial = dial_beside(pen, card, tries);
    for (const auto& arrangement : tries) {
        if (dial && !arrangement.pictured) continue;
        const double room = room_for_words(pen, card, arrangement);
        for (const Voice& voice : {Voice{.short_foot = true}, otherwise ? low : lowest_of(card), lowest_of(card)}) {
            Pieces pieces = card_pieces(pen, card, arrangement.words, voice);
            // The foot stands last.
            while (height_with_foot(pen, pieces) > room && !pieces.empty() && pieces.back().kind == Piece::Kind::Foot) pieces.pop_back();
            if (height_of(pieces) <= room) return {arrangement, std::move(pieces)};
        }
    }
    const Arrangement& last = dial ? *dial : tries.back();
    return {last, most_worth(pen, card, last)};
}

/// Pieces from the top down; those of the foot stand at the bottom. Returns what is left between.
Box stack(const Pieces& pieces, const Box& box, double after_body) {
    double top = box.y, bottom = box.bottom();
    if (!pieces.empty() && pieces.back().kind == Piece::Kind::Foot) bottom += pieces.back().after;
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
    if (bottom < box.bottom()) bottom -= after_body;
    return {box.x, top, box.w, std::max(0.0, bottom - top)};
}

}  // namespace

void draw_card(Pen& pen, const Card& card, const Box& box, const CardHeights& heights) {
    pen.panel(box, Ink::Card);
    const double cap = pen.cap(Type::Text), line = pen.cap(Type::Strong) * (1 + picture::descent);
    const double down = std::clamp((box.h - line) / 8, cap * 0.3, cap);  // a low card has narrow edges: its words need the height
    const Box inner{box.x + cap, box.y + down, box.w - 2 * cap, box.h - 2 * down};
    const double edges = box.h - inner.h;
    const auto [arrangement, pieces] = arranged(pen, card, inner, {heights.bare - edges, heights.with_banner - edges});
    stack(arrangement.foot, inner, 0);
    const Box left = stack(pieces, arrangement.words, pen.cap(Type::Text) * 0.4);
    const Box& at = arrangement.beside ? arrangement.picture : left;
    const bool shown = arrangement.beside || arrangement.pictured;
    if (points_to_next(card.picture) && !(shown && hand_seen(pen, card.picture, at))) return pen.gives_way(card.title);
    if (shown) draw_body(pen, card, at);
}

}  // namespace screen
