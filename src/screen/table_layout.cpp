#include "screen/table_layout.hpp"

#include <algorithm>

namespace screen {

namespace {

constexpr double theatre_mm = 20;

TableLayout portrait(const Pen& pen) {
    const Glass& glass = pen.canvas().glass;
    const double g = pen.gap(), w = glass.width_mm - 2 * g;
    TableLayout made{.strip_lines = 1, .strip_rows = true, .path_column = false, .most_rows = 2, .most_in_row = 3, .grows = true};
    made.strip = {0, 0, glass.width_mm, pen.cap(Type::Value) * 4.1};
    const double row = std::max(theatre_mm, 0.055 * glass.height_mm), first = std::max(1.6 * row, 0.15 * glass.height_mm);
    made.others = {g, glass.height_mm - g - 2 * row - g, w, 2 * row + g};
    made.first = {g, made.others.y - g - first, w, first};
    made.path = {g, made.strip.bottom() + g, w, pen.cap(Type::Text) * 2.4};
    made.card = {g, made.path.bottom() + g, w, made.first.y - 2 * g - made.path.bottom()};
    return made;
}

/// Right-handed; mirrored as a whole afterwards.
TableLayout landscape(const Pen& pen) {
    const Glass& glass = pen.canvas().glass;
    const double g = pen.gap();
    TableLayout made{};
    made.strip_lines = glass.height_mm < 150 ? 1 : 2;
    const double strip_h = made.strip_lines == 1 ? pen.cap(Type::Value) * 2.1 : pen.cap(Type::Value) + pen.cap(Type::Text) * 3.2;
    made.strip = {0, 0, glass.width_mm, strip_h};
    const double top = strip_h + g, h = glass.height_mm - top - g, hand_w = std::max(0.3 * glass.width_mm, pen.cap(Type::Text) * 16.6),
                 hand_x = glass.width_mm - g - hand_w;
    const double row = std::max(theatre_mm, 0.125 * h);
    made.others = {hand_x, top + h - 3 * row - 2 * g, hand_w, 3 * row + 2 * g};
    made.first = {hand_x, top, hand_w, made.others.y - g - top};
    const double path_w = 0.2 * glass.width_mm, rest = hand_x - 2 * g;
    made.path_column = rest - path_w - g >= pen.cap(Type::Text) * 31;
    const double path_h = pen.cap(Type::Text) * 2.4;
    made.path = made.path_column ? Box{g, top, path_w, h} : Box{g, top, rest, path_h};
    made.card = made.path_column ? Box{2 * g + path_w, top, rest - path_w - g, h} : Box{g, top + path_h + g, rest, h - path_h - g};
    return made;
}

}  // namespace

TableLayout table_layout(const Pen& pen) {
    const Glass& glass = pen.canvas().glass;
    if (glass.portrait()) return portrait(pen);
    TableLayout made = landscape(pen);
    if (glass.hand == Hand::Left) {
        const Box all{0, 0, glass.width_mm, glass.height_mm};
        for (Box* box : {&made.path, &made.card, &made.first, &made.others}) *box = mirrored(*box, all);
    }
    return made;
}

}  // namespace screen
