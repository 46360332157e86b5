// The Far view in millimetres: a column with eye, suture and clock, and beside it the one thing to be read, as large as it
// goes. On an upright glass the column's head and foot stand over and under it. Everything grows with the glass; what a glass is
// too small for at 3 m is told, never shrunk in silence.
#include "measure/overloaded.hpp"
#include "screen/pen.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace screen {

namespace {

constexpr double column_share = 0.44;

struct Places {
    Box column{}, figure{};
    bool tight = false;  // a banner stands at the foot of the column
};

/// On an upright glass: what stands over the figure, and what under it.
double head_height(const Pen& pen, const FarModel& model) {
    const double g = pen.gap(), eye = pen.cap(Type::Value) + 2 * g;
    if (std::holds_alternative<FarModel::Dial>(model.shown)) return eye + pen.cap(Type::Lead) * 2.2 + pen.cap(Type::Display) + g;
    return eye + (model.holder.empty() ? 0 : pen.pitch(Type::Text) + g);
}

double foot_height(const Pen& pen, const FarModel& model) {
    const double clock = model.clock || !model.muted.empty() ? pen.cap(Type::Value) + 2 * pen.gap() : 0,
                 line = pen.pitch(Type::Text) + pen.gap();
    return clock + (model.banner ? 2 * line : line);
}

Places places(const Pen& pen, const FarModel& model) {
    const Glass& glass = pen.canvas().glass;
    const double g = pen.gap(), h = glass.height_mm - 2 * g, w = column_share * glass.width_mm;
    if (glass.portrait()) {
        const double head = head_height(pen, model), across = glass.width_mm - 2 * g;
        return {.column = {g, g, across, h}, .figure = {g, g + head, across, h - head - foot_height(pen, model)}};
    }
    return {.column = {g, g, w - g, h}, .figure = {w + g, g, glass.width_mm - w - 2 * g, h}, .tight = model.banner.has_value()};
}

Ink ink_of(Banner::Level level) {
    switch (level) {
        case Banner::Level::Notice:
            return Ink::Soft;
        case Banner::Level::Watch:
            return Ink::Amber;
        case Banner::Level::Stop:
            return Ink::Red;
    }
    return Ink::Text;
}

/// Amber has its triangle and red its octagon: nothing is told by colour alone.
void sign(Pen& pen, Banner::Level level, const Box& box) {
    if (level == Banner::Level::Watch) pen.icon(Icon::Triangle, box, Ink::Amber, Ink::Black);
    if (level == Banner::Level::Stop) pen.icon(Icon::Octagon, box, Ink::Red, Ink::Black);
}

void draw_shown(Pen& pen, const FarModel::Numeral& numeral, const Places& at) {
    const Ink ink = numeral.watch ? Ink::Amber : numeral.to_zero ? Ink::Accent : Ink::Text;
    const Block under = pen.block(numeral.under, {Type::Lead}, {at.figure.w, at.figure.h, 2});
    const double cap = pen.cap(Type::Numeral), gap = pen.cap(Type::Lead) * 0.6;
    const double top = at.figure.y + std::max(0.0, at.figure.h - cap - gap - under.height) / 2, middle = at.figure.centre().x;
    pen.text({middle, top}, numeral.digits, Type::Numeral, ink, Align::Centre);
    pen.text({middle, top + cap + gap}, under, ink, Align::Centre);
    if (!under.fits || pen.width(Type::Numeral, numeral.digits) > at.figure.w) pen.falls_short(numeral.under);
    if (!numeral.watch) return;
    // Clear of the eye over it and of the clock under it.
    const double size = pen.cap(Type::Lead) * 1.4, x = at.column.right() - size - pen.gap();
    const double y = pen.canvas().glass.portrait() ? at.figure.bottom() + pen.gap() : at.column.centre().y - size;
    sign(pen, Banner::Level::Watch, {x, y, size, size});
}

void draw_shown(Pen& pen, const FarModel::Said& said, const Places& at) {
    const Block block = pen.block(said.text, {Type::Display, Type::Title}, {at.figure.w, at.figure.h * 0.75, 4});
    const bool signed_too = said.level != Banner::Level::Notice;
    const double size = signed_too ? pen.cap(Type::Display) * 1.2 : 0, gap = signed_too ? size * 0.5 : 0;
    const double top = at.figure.y + std::max(0.0, at.figure.h - size - gap - block.height) / 2, middle = at.figure.centre().x;
    sign(pen, said.level, {middle - size / 2, top, size, size});
    pen.text({middle, top + size + gap}, block, said.level == Banner::Level::Notice ? Ink::Text : ink_of(said.level), Align::Centre);
    if (!block.fits) pen.falls_short(said.text);
}

void draw_shown(Pen& pen, const FarModel::Dial& dial, const Places& at) {
    pen.add(picture::draw(dial.face, at.figure, pen.canvas().lettering));
    const double gap = pen.cap(Type::Lead) * 0.6, y = at.column.y + pen.cap(Type::Value) + 2 * pen.gap() + (at.tight ? 0 : gap);
    pen.text({at.column.x, y}, dial.suture, Type::Lead, Ink::Soft);
    pen.text({at.column.x, y + pen.cap(Type::Lead) + gap}, dial.at, Type::Display, Ink::Text);
}

/// Nothing stands beside it: in the middle of the glass.
void draw_shown(Pen& pen, const ClockShown& clock, const Places& at) {
    const double w = pen.canvas().glass.width_mm - 2 * pen.gap(), middle = pen.canvas().glass.width_mm / 2;
    const Block label = pen.block(clock.label, {Type::Lead}, {w, at.figure.h, 2});
    const double cap = pen.cap(Type::Display), gap = pen.cap(Type::Lead) * 0.8;
    const double top = at.figure.y + std::max(0.0, at.figure.h - cap - gap - label.height) / 2;
    pen.text({middle, top}, clock.value, Type::Display, Ink::Text, Align::Centre);
    pen.text({middle, top + cap + gap}, label, Ink::Soft, Align::Centre);
    if (!label.fits || pen.width(Type::Display, clock.value) > w) pen.falls_short(clock.label);
}

/// At the foot of the column; returns what it took.
double draw_far_banner(Pen& pen, const Banner& banner, const Box& column) {
    const double size = banner.level == Banner::Level::Notice ? 0 : pen.cap(Type::Text) * 1.2, indent = size > 0 ? size * 1.3 : 0;
    const Block block = pen.block(banner.text, {Type::Text}, {column.w - indent, column.h, 2});
    const double top = column.bottom() - block.height;
    sign(pen, banner.level, {column.x, top - (size - pen.cap(Type::Text)) / 2, size, size});
    pen.text({column.x + indent, top}, block, ink_of(banner.level));
    if (!block.fits) pen.falls_short(banner.text);
    return block.height + pen.gap() * 2;
}

double muted_size(const Pen& pen) { return pen.cap(Type::Value) * 1.22; }

/// The sign of a muted voice, with its word where that has room.
void draw_muted(Pen& pen, const std::string& word, const Box& box) {
    const double size = muted_size(pen), x = box.x + size * 1.2, y = box.centre().y;
    pen.icon(Icon::Muted, {box.x, y - size / 2, size, size}, Ink::Soft, Ink::Black);
    if (x + pen.width(Type::Text, word) <= box.right()) pen.text({x, y - pen.cap(Type::Text) / 2}, word, Type::Text, Ink::Soft);
}

/// The clock with its label beside it, where both have room in the row; returns how wide. Under the hour of a suture it is not shown
/// without: it would be read as another hour.
double draw_clock_over_banner(Pen& pen, const FarModel& model, const Box& row) {
    const ClockShown& clock = *model.clock;
    const double value = pen.width(Type::Value, clock.value) + pen.gap(), label = pen.width(Type::Text, clock.label) + pen.gap();
    const bool named = value + label <= row.w - (model.muted.empty() ? 0 : muted_size(pen) + pen.gap());
    if (!named) pen.gives_way(clock.label);
    if (!named && std::holds_alternative<FarModel::Dial>(model.shown)) return 0;
    pen.text({row.x, row.y}, clock.value, Type::Value, Ink::Text);
    if (named) pen.text({row.x + value, row.bottom() - pen.cap(Type::Text)}, clock.label, Type::Text, Ink::Soft);
    return value + (named ? label : 0) + pen.gap();
}

/// The clock over its label.
double draw_clock(Pen& pen, const ClockShown& clock, Box& row) {
    const double drop = pen.cap(Type::Text) * picture::descent;
    pen.text({row.x, row.bottom() - drop - pen.cap(Type::Text)}, clock.label, Type::Text, Ink::Soft);
    row.y -= pen.pitch(Type::Text) + drop;
    pen.text({row.x, row.y}, clock.value, Type::Value, Ink::Text);
    return pen.width(Type::Value, clock.value) + 2 * pen.gap();
}

/// The clock at the foot of the column, and on its right that the voice is muted; the banner under both.
void draw_foot(Pen& pen, const FarModel& model, Box column) {
    if (model.banner) column.h -= draw_far_banner(pen, *model.banner, column);
    Box row{column.x, column.bottom() - pen.cap(Type::Value), column.w - pen.gap(), pen.cap(Type::Value)};
    if (model.clock) {
        const double taken = model.banner ? draw_clock_over_banner(pen, model, row) : draw_clock(pen, *model.clock, row);
        row.x += taken;
        row.w -= taken;
    }
    if (!model.muted.empty()) draw_muted(pen, model.muted, row);
}

}  // namespace

Frame draw(const FarModel& model, const Canvas& canvas) {
    Pen pen(canvas);
    pen.add(picture::Panel{.box = {0, 0, canvas.glass.width_mm, canvas.glass.height_mm}, .fill = Ink::Black, .edge = Ink::Black});
    const Places at = places(pen, model);
    pen.text({at.column.x, at.column.y}, model.eye, Type::Value, Ink::Soft);
    const Block holder = pen.block(model.holder, {Type::Text}, {at.column.w - 2 * pen.gap(), at.column.h, 2});
    pen.text({at.column.x, at.column.y + pen.cap(Type::Value) + 2 * pen.gap()}, holder, Ink::Soft);
    std::visit(measure::overloaded{[](std::monostate) {}, [&](const FarModel::Numeral& numeral) { draw_shown(pen, numeral, at); },
                                   [&](const FarModel::Said& said) { draw_shown(pen, said, at); },
                                   [&](const FarModel::Dial& dial) { draw_shown(pen, dial, at); },
                                   [&](const ClockShown& clock) { draw_shown(pen, clock, at); }},
               model.shown);
    draw_foot(pen, model, at.column);
    if (model.beat) pen.heart({canvas.glass.width_mm - pen.gap() * 1.5, pen.gap() * 0.5, pen.gap(), pen.gap() * 4}, *model.beat);
    if (const double reach = far_reach_mm(canvas.type); reach < 3000) pen.falls_short(fmt::format("3 m, only {:.1f} m", reach / 1000));
    return pen.take();
}

}  // namespace screen
