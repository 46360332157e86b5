// Where everything stands on the fallback card: the eye largest, then the spokes across, then sutures on the left and figures, lines
// to fill and cautions on the right.
#include "paper/card.hpp"

#include <algorithm>
#include <cmath>

namespace paper {
namespace {

using picture::Box;
using picture::Ink;
using picture::Lettering;
using picture::Shapes;
using picture::Type;

constexpr double column_gap = 8, section_gap = 3.5;
constexpr double head_height = 28;
constexpr double tick = 7.5, tick_pitch = 9.5, suture_tick = 3;
constexpr int most_ticks = 72;
constexpr double left_share = 0.54, face_height = 96;

void rule(Shapes& out, double x, double right, double y) {
    out.push_back(picture::Line{.a = {x, y}, .b = {right, y}, .width = 0.4, .ink = Ink::Text});
}

void square(Shapes& out, const Box& box, double width) {
    out.push_back(picture::Panel{.box = box, .radius = 0.6, .fill = Ink::Ground, .edge = Ink::Text, .edge_width = width});
}

void head(const Card& card, const Box& page, Shapes& out, const Lettering& lettering) {
    const double pill = lettering.width(Type::Numeral, card.side) + 14, h = head_height - 5;
    out.push_back(picture::Panel{.box = {page.x, page.y, pill, h}, .radius = 5, .fill = Ink::Ground, .edge = Ink::Text, .edge_width = 1.2});
    out.push_back(picture::Text{.at = {page.x + pill / 2, page.y + h / 2 + lettering.cap(Type::Numeral) / 2},
                                .text = card.side,
                                .type = Type::Numeral,
                                .ink = Ink::Text,
                                .align = picture::Align::Centre});
    Column column({page.x + pill + 5, page.y + 0.5, page.w - pill - 5, head_height}, out, lettering);
    // A long reference is never cut: the last of its characters are what tells two cases apart.
    const std::string in_one = card.title + " · " + card.reference;
    if (lettering.width(Type::Value, in_one) <= page.right() - (page.x + pill + 5)) {
        column.text(in_one, Type::Value, Ink::Text);
    } else {
        column.text(card.reference, Type::Strong, Ink::Text);
    }
    column.text(card.under, Type::Text, Ink::Soft);
    if (!card.invented.empty()) column.text(card.invented, Type::Strong, Ink::Text);
    column.gap(1);
    column.text(card.if_dead, Type::Title, Ink::Text, 2);
    rule(out, page.x, page.right(), page.y + head_height - 1.5);
}

/// One line of boxes after another; the last planned one is thick, those beyond the plan are thin.
void ticks(const Card& card, const Ticks& row, const Box& page, double label, double& y, Shapes& out, const Lettering& lettering) {
    const int all = row.planned + row.spare, shown = std::min(all, most_ticks);
    const auto across = static_cast<int>((page.w - label) / tick_pitch);
    out.push_back(picture::Text{
        .at = {page.x, y + tick / 2 + lettering.cap(Type::Strong) / 2}, .text = row.label, .type = Type::Strong, .ink = Ink::Text});
    double x = page.x + label;
    for (int i = 0; i < shown; ++i) {
        if (i > 0 && i % across == 0) x = page.x + label, y += tick_pitch;
        const int n = i + 1;
        square(out, {x, y, tick, tick}, n > row.planned ? 0.15 : n == row.planned && row.spare > 0 ? 1.1 : 0.4);
        out.push_back(picture::Text{.at = {x + tick / 2, y + tick / 2 + lettering.cap(Type::Text) / 2},
                                    .text = std::to_string(n),
                                    .type = Type::Text,
                                    .ink = Ink::Soft,
                                    .align = picture::Align::Centre});
        x += tick_pitch;
    }
    const std::string then = shown < all ? card.more_spokes(static_cast<std::size_t>(all - shown)) : row.then;
    const bool beside = x + lettering.width(Type::Text, then) <= page.right();
    if (!beside) y += tick_pitch - tick + tick * 0.7;
    const double at = beside ? y + tick / 2 + lettering.cap(Type::Text) / 2 : y + tick / 2;
    out.push_back(picture::Text{.at = {beside ? x + 1 : page.x + label, at}, .text = then, .type = Type::Text, .ink = Ink::Text});
    y += tick_pitch;
}

double spokes(const Card& card, const Box& page, double y, Shapes& out, const Lettering& lettering) {
    Column column({page.x, y, page.w, page.bottom() - y}, out, lettering);
    column.text(card.spokes_title + ": " + card.spokes_line, Type::Value, Ink::Text);
    column.gap(1);
    double label = 0;
    for (const Ticks& row : card.spokes) label = std::max(label, lettering.width(Type::Strong, row.label) + 4);
    double at = column.y();
    for (const Ticks& row : card.spokes) ticks(card, row, page, label, at, out, lettering);
    rule(out, page.x, page.right(), at + 0.5);
    return at + 3;
}

/// The order as a list to tick, down and then across, as many as there is room for.
void order(const Card& card, Column& column, Shapes& out, const Lettering& lettering) {
    const double widest = picture::widest(card.order, Type::Text, lettering) + suture_tick + 5,
                 row = std::max(5.0, picture::pitch(Type::Text, lettering));
    const Box whole = column.take(0);
    const auto across = static_cast<std::size_t>(std::clamp(whole.w / widest, 1.0, 4.0));
    const auto room = static_cast<std::size_t>(std::max(0.0, column.left() - row) / row);
    const std::size_t down = std::min((card.order.size() + across - 1) / across, room);
    const std::size_t shown = std::min(card.order.size(), down * across);
    const Box box = column.take(row * static_cast<double>(down));
    for (std::size_t i = 0; i < shown; ++i) {
        const std::size_t line = i / down;
        const double x = box.x + box.w / static_cast<double>(across) * static_cast<double>(line),
                     y = box.y + row * static_cast<double>(i % down);
        square(out, {x, y + (row - suture_tick) / 2, suture_tick, suture_tick}, 0.3);
        out.push_back(picture::Text{.at = {x + suture_tick + 1.5, y + row / 2 + lettering.cap(Type::Text) / 2},
                                    .text = card.order[i],
                                    .type = Type::Text,
                                    .ink = Ink::Text});
    }
    if (shown < card.order.size()) column.text(card.more(card.order.size() - shown), Type::Strong, Ink::Text);
}

/// A label and a line to write on.
void to_fill(const std::vector<std::string>& labels, Column& column, Shapes& out, const Lettering& lettering) {
    for (const std::string& label : labels) {
        const Box box = column.take(picture::pitch(Type::Text, lettering) + 3.2);
        const double base = box.bottom() - 1.2;
        out.push_back(picture::Text{.at = {box.x, base}, .text = label, .type = Type::Text, .ink = Ink::Text});
        const double from = box.x + lettering.width(Type::Text, label) + 2;
        out.push_back(picture::Line{.a = {from, base + 0.5}, .b = {box.right(), base + 0.5}, .width = 0.2, .ink = Ink::Text});
    }
}

}  // namespace

Caps card_caps() {
    Caps caps{};
    cap_of(caps, Type::Numeral) = 8.5;
    cap_of(caps, Type::Display) = 5;
    cap_of(caps, Type::Title) = 2.9;
    cap_of(caps, Type::Value) = 3.6;
    cap_of(caps, Type::Strong) = 2.1;
    cap_of(caps, Type::Text) = 2.1;
    cap_of(caps, Type::Lead) = 2.5;
    return caps;
}

Shapes draw(const Card& card, Size size, const Lettering& lettering) {
    const Box whole = sheet_of(size);
    const double foot = picture::pitch(Type::Strong, lettering);
    const Box page{.x = margin, .y = margin, .w = whole.w - 2 * margin, .h = whole.h - 2 * margin - foot};
    Shapes out{};
    Column({page.x, page.bottom(), page.w, foot + 0.01}, out, lettering).text(card.not_a_device, Type::Strong, Ink::Text);
    head(card, page, out, lettering);
    const double top = spokes(card, page, page.y + head_height, out, lettering);
    const double left = (page.w - column_gap) * left_share, right = page.w - column_gap - left;

    Column one({page.x, top, left, page.bottom() - top}, out, lettering);
    one.heading(card.sutures_title + ": " + card.pattern);
    const Box dial = one.take(std::min(face_height, one.left() * 0.66));
    for (picture::Shape& shape : picture::draw(card.face, dial, lettering)) out.push_back(std::move(shape));
    one.gap(1);
    for (const std::string& path : card.running) one.text(path, Type::Strong, Ink::Text, 2);
    order(card, one, out, lettering);

    Column two({page.right() - right, top, right, page.bottom() - top}, out, lettering);
    two.heading(card.figures_title);
    for (const Pair& row : card.figures) two.pair(row);
    two.gap(section_gap);
    two.heading(card.by_hand_title);
    to_fill(card.by_hand, two, out, lettering);
    two.gap(section_gap);
    two.heading(card.cautions_title);
    two.list(card.cautions, 6, card.more);
    return out;
}

}  // namespace paper
