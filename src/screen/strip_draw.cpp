#include "screen/table_parts.hpp"

#include <algorithm>
#include <functional>
#include <numeric>

namespace screen {

namespace {

/// One thing on the strip. `worth`: what is left out last.
struct Item {
    enum class Side { Left, Middle, Right } side{};
    int worth = 0;
    double width = 0;
    std::function<void(double x)> draw{};
    std::string name{};  // said when it had to be left out and is missed
};
using Items = std::vector<Item>;

double between(const Pen& pen) { return pen.cap(Type::Text) * 1.1; }

double total(const Pen& pen, const Items& items) {
    double sum = 0;
    for (const auto& item : items) sum += item.width;
    return sum + between(pen) * std::max(0.0, static_cast<double>(items.size()) - 1);
}

bool goes(const Pen& pen, const Items& items, const Box& row) { return total(pen, items) <= row.w; }

/// What has room, by what it is worth; in the order in which it stands.
Items kept(const Pen& pen, const Items& all, const Box& row) {
    std::vector<std::size_t> by_worth(all.size());
    std::iota(by_worth.begin(), by_worth.end(), std::size_t{0});
    std::stable_sort(by_worth.begin(), by_worth.end(), [&](std::size_t a, std::size_t b) { return all[a].worth > all[b].worth; });
    std::vector<bool> keep(all.size());
    double used = 0;
    for (const std::size_t i : by_worth) {
        const double w = all[i].width + (used > 0 ? between(pen) : 0);
        keep[i] = used == 0 || used + w <= row.w;
        if (keep[i]) used += w;
    }
    Items made;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (keep[i]) made.push_back(all[i]);
    }
    return made;
}

void place(Pen& pen, const Items& all, const Box& row) {
    const Items items = kept(pen, all, row);
    for (const auto& item : all) {
        const auto same = [&](const Item& one) { return one.name == item.name; };
        if (!item.name.empty() && std::none_of(items.begin(), items.end(), same)) pen.falls_short(item.name);
    }
    double left = row.x, right = row.right();
    for (const auto& item : items) {
        if (item.side != Item::Side::Left) continue;
        item.draw(left);
        left += item.width + between(pen);
    }
    for (auto item = items.rbegin(); item != items.rend(); ++item) {
        if (item->side != Item::Side::Right) continue;
        item->draw(right - item->width);
        right -= item->width + between(pen);
    }
    for (const auto& item : items) {
        if (item.side != Item::Side::Middle) continue;
        const double centred = row.centre().x - item.width / 2;
        item.draw(std::clamp(centred, left, std::max(left, right - item.width)));
    }
}

/// A text on the strip, its cap height centred on `y`.
Item words(Pen& pen, const std::string& text, Type type, Ink ink, double y) {
    return {.width = pen.width(type, text), .draw = [&pen, text, type, ink, y](double x) {
                pen.text({x, y - pen.cap(type) / 2}, text, type, ink);
            }};
}

Item with(Item item, Item::Side side, int worth, std::string name = {}) {
    item.side = side;
    item.worth = worth;
    item.name = std::move(name);
    return item;
}

Item pill(Pen& pen, const std::string& eye, double y) {
    const double pad = pen.cap(Type::Strong) * 1.1, h = pen.cap(Type::Strong) * 2.1, w = pen.width(Type::Strong, eye) + 2 * pad;
    return {.side = Item::Side::Left, .worth = 100, .width = w, .draw = [&pen, eye, pad, h, w, y](double x) {
                pen.add(picture::Panel{
                    .box = {x, y - h / 2, w, h}, .radius = h / 2, .fill = Ink::Ground, .edge = Ink::Accent, .edge_width = 0.6});
                pen.text({x + pad, y - pen.cap(Type::Strong) / 2}, eye, Type::Strong, Ink::Text);
            }};
}

/// Before a case stands open there is no eye, and no pill.
Items with_pill(Pen& pen, const std::string& eye, double y) { return eye.empty() ? Items{} : Items{pill(pen, eye, y)}; }

/// Two texts, one under the other, as one item.
Item stacked(const Item& upper, const Item& lower, Align align) {
    const double w = std::max(upper.width, lower.width);
    return {.width = w, .draw = [upper, lower, w, align](double x) {
                const auto shift = [&](const Item& item) {
                    return align == Align::Left ? 0 : align == Align::Right ? w - item.width : (w - item.width) / 2;
                };
                if (upper.width > 0) upper.draw(x + shift(upper));
                if (lower.width > 0) lower.draw(x + shift(lower));
            }};
}

Item clock_in_line(Pen& pen, const ClockShown& clock, double y) {
    const double label = pen.width(Type::Text, clock.label), after = pen.cap(Type::Text) * 0.6;
    return {.width = label + after + pen.width(Type::Value, clock.value), .draw = [&pen, clock, label, after, y](double x) {
                pen.text({x, y + pen.cap(Type::Value) / 2 - pen.cap(Type::Text)}, clock.label, Type::Text, Ink::Soft);
                pen.text({x + label + after, y - pen.cap(Type::Value) / 2}, clock.value, Type::Value, clock.live ? Ink::Text : Ink::Soft);
            }};
}

double sign_size(const Pen& pen) { return pen.cap(Type::Text) * 1.8; }
double sign_and_word(const Pen& pen, const std::string& word) {
    return sign_size(pen) + pen.cap(Type::Text) * 0.4 + pen.width(Type::Text, word);
}

/// The sign of a muted voice, its middle on `y`.
Item sign_of_muted(Pen& pen, double y) {
    const double size = sign_size(pen);
    return {.width = size, .draw = [&pen, size, y](double x) {
                pen.icon(Icon::Muted, {x, y - size / 2, size, size}, Ink::Text, Ink::Card);
            }};
}

/// In a line beside its word, or alone where both have no room. It gives way to nothing but the eye.
void add_muted(Pen& pen, Items& items, const std::string& word, double y, bool worded) {
    if (word.empty()) return;
    Item item = sign_of_muted(pen, y);
    if (worded) {
        item.width = sign_and_word(pen, word);
        item.draw = [&pen, word, y, w = item.width](double x) { draw_muted(pen, word, {x + w, y}); };
    }
    items.push_back(with(std::move(item), Item::Side::Right, 95, word));
}

/// The first clock is the one that matters now; the others give way to case and phase.
int clock_worth(const ClockShown& clock, std::size_t place) {
    return place == 0 && clock.live ? 90 : (clock.live ? 50 : 40) - static_cast<int>(place);
}

std::string missed(const ClockShown& clock, std::size_t place) { return place == 0 && clock.live ? clock.label : std::string{}; }

void two_lines(Pen& pen, const Strip& strip, const Box& row) {
    const double v = pen.cap(Type::Value), t = pen.cap(Type::Text), top = row.y + (row.h - v - t * 1.75) / 2;
    const double upper = top + v / 2, lower = top + v + t * 1.25;
    Items items = with_pill(pen, strip.eye, row.centre().y);
    items.push_back(with(stacked(words(pen, strip.reference, Type::Strong, Ink::Text, upper),
                                 words(pen, strip.sizes, Type::Text, Ink::Soft, lower), Align::Left),
                         Item::Side::Left, 56));
    const bool held = !strip.holder.empty();
    items.push_back(with(stacked(words(pen, strip.phase, Type::Strong, Ink::Text, held ? upper : row.centre().y),
                                 words(pen, strip.holder, Type::Text, Ink::Soft, lower), Align::Centre),
                         Item::Side::Middle, 70, strip.holder));
    if (!strip.muted.empty()) {
        const Item word = words(pen, strip.muted, Type::Text, Ink::Text, lower);
        items.push_back(with(stacked(sign_of_muted(pen, upper), word, Align::Centre), Item::Side::Right, 95, strip.muted));
    }
    const auto on_label = [&](const ClockShown& clock) {
        return stacked(words(pen, clock.value, Type::Value, clock.live ? Ink::Text : Ink::Soft, upper),
                       words(pen, clock.label, Type::Text, Ink::Soft, lower), Align::Right);
    };
    for (std::size_t i = 0; i < strip.clocks.size(); ++i) {
        const auto& clock = strip.clocks[i];
        items.push_back(with(on_label(clock), Item::Side::Right, clock_worth(clock, i), missed(clock, i)));
    }
    if (!strip.time.value.empty()) items.push_back(with(on_label(strip.time), Item::Side::Right, 50));
    place(pen, items, row);
}

void add_clocks(Pen& pen, Items& items, const Strip& strip, double y) {
    for (std::size_t i = 0; i < strip.clocks.size(); ++i) {
        const auto& clock = strip.clocks[i];
        items.push_back(with(clock_in_line(pen, clock, y), Item::Side::Right, clock_worth(clock, i), missed(clock, i)));
    }
}

void add_words(Pen& pen, Items& items, const std::string& text, Type type, Ink ink, double y, Item::Side side, int worth) {
    if (!text.empty()) items.push_back(with(words(pen, text, type, ink, y), side, worth, worth == 60 ? text : std::string{}));
}

Items one_line_of(Pen& pen, const Strip& strip, double y, bool worded) {
    Items items = with_pill(pen, strip.eye, y);
    add_words(pen, items, strip.phase, Type::Strong, Ink::Text, y, Item::Side::Left, 55);
    add_words(pen, items, strip.reference, Type::Text, Ink::Soft, y, Item::Side::Left, 56);
    add_words(pen, items, strip.holder, Type::Text, Ink::Soft, y, Item::Side::Middle, 60);
    add_muted(pen, items, strip.muted, y, worded);
    add_clocks(pen, items, strip, y);
    add_words(pen, items, strip.time.value, Type::Value, Ink::Soft, y, Item::Side::Right, 45);
    return items;
}

void one_line(Pen& pen, const Strip& strip, const Box& row) {
    const Items worded = one_line_of(pen, strip, row.centre().y, true);
    place(pen, goes(pen, worded, row) ? worded : one_line_of(pen, strip, row.centre().y, false), row);
}

/// Of two rows: which words stand above, which below beside the clocks.
struct TwoRows {
    Items upper{}, lower{};
};

TwoRows two_rows_of(Pen& pen, const Strip& strip, bool phase_above, bool worded, double upper, double lower) {
    TwoRows made{.upper = with_pill(pen, strip.eye, upper)};
    Items& phases = phase_above ? made.upper : made.lower;
    Items& references = phase_above ? made.lower : made.upper;
    add_words(pen, phases, strip.phase, Type::Strong, Ink::Text, phase_above ? upper : lower, Item::Side::Left, 55);
    add_words(pen, made.upper, strip.holder, Type::Text, Ink::Soft, upper, Item::Side::Middle, 60);
    add_words(pen, references, strip.reference, Type::Text, Ink::Soft, phase_above ? lower : upper, Item::Side::Left, 56);
    add_muted(pen, made.upper, strip.muted, upper, worded);
    add_words(pen, made.upper, strip.time.value, Type::Value, Ink::Soft, upper, Item::Side::Right, 58);
    add_clocks(pen, made.lower, strip, lower);
    return made;
}

/// The phase beside the eye, or below in place of the case where the upper row then keeps all; a muted voice without its word where
/// that has no room.
void two_rows(Pen& pen, const Strip& strip, const Box& all) {
    const Box upper{all.x, all.y, all.w, all.h / 2}, lower{all.x, all.y + all.h / 2, all.w, all.h / 2};
    TwoRows made{};
    for (const auto& [phase_above, worded] : {std::pair{true, true}, {false, true}, {true, false}, {false, false}}) {
        made = two_rows_of(pen, strip, phase_above, worded, upper.centre().y, lower.centre().y);
        if (goes(pen, made.upper, upper)) break;
    }
    if (!goes(pen, made.upper, upper)) made = two_rows_of(pen, strip, true, false, upper.centre().y, lower.centre().y);
    place(pen, made.upper, upper);
    if (!made.lower.empty()) place(pen, made.lower, lower);
}

}  // namespace

double draw_muted(Pen& pen, const std::string& word, Point right) {
    if (word.empty()) return 0;
    const double size = sign_size(pen), cap = pen.cap(Type::Text), w = sign_and_word(pen, word);
    pen.icon(Icon::Muted, {right.x - w, right.y - size / 2, size, size}, Ink::Text, Ink::Ground);
    pen.text({right.x, right.y - cap / 2}, word, Type::Text, Ink::Text, Align::Right);
    return w + cap * 1.5;
}

void draw_strip(Pen& pen, const Strip& strip, const TableLayout& layout) {
    pen.add(picture::Panel{.box = layout.strip, .radius = 0, .fill = Ink::Card, .edge = Ink::Card});
    const double g = pen.gap();
    const Box row{layout.strip.x + g, layout.strip.y, layout.strip.w - 2 * g, layout.strip.h};
    if (strip.beat)  // in the margin, clear of the glass's edge and of the eye: takes no room
        pen.heart({layout.strip.x + g * 0.2, layout.strip.y, g * 0.45, layout.strip.h}, *strip.beat);
    if (layout.strip_rows) {
        two_rows(pen, strip, row);
    } else if (layout.strip_lines == 1) {
        one_line(pen, strip, row);
    } else {
        two_lines(pen, strip, row);
    }
}

}  // namespace screen
