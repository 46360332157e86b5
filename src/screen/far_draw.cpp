// The Far view in millimetres: a column with eye, suture and clock, and beside it the one thing to be read, as large as it
// goes. On an upright glass the column's head and foot stand over and under it. Everything grows with the glass; what a glass is
// too small for at 3 m is told, never shrunk in silence.
#include "measure/overloaded.hpp"
#include "screen/pen.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace screen {

namespace {

constexpr double column_share = 0.44;

struct Places {
    Box column{}, figure{};
    bool tight = false;  // a banner stands at the foot of the column
};

constexpr double word_after = 1.4;  // of the size of the sign of a muted voice
double muted_size(const Pen& pen) { return pen.cap(Type::Value) * 1.22; }

/// A clock, or words: nothing stands beside it, so that it has the whole width.
bool alone(const FarModel& model) {
    return std::holds_alternative<ClockShown>(model.shown) || std::holds_alternative<FarModel::Said>(model.shown);
}

/// Over what stands alone who counts stands beside the eye, where a wide glass has room for both: it has the height.
bool beside_eye(const Pen& pen, const FarModel& model) {
    const double both = pen.width(Type::Value, model.eye) + pen.width(Type::Text, model.holder), apart = 3 * pen.gap();
    return alone(model) && !pen.canvas().glass.portrait() && both + apart <= pen.canvas().glass.width_mm - 4 * pen.gap();
}

/// The step under the eye: nothing stands beside it, so that it has the width of the glass.
Block step_block(const Pen& pen, const FarModel& model) {
    const Glass& glass = pen.canvas().glass;
    return model.step.empty() ? Block{}
                              : pen.block(model.step, {Type::Text},
                                          {glass.width_mm - 4 * pen.gap(), glass.height_mm, glass.portrait() ? std::size_t{3} : 2});
}

/// What stands over the figure where that is not beside it.
double head_height(const Pen& pen, const FarModel& model) {
    const double g = pen.gap(), eye = pen.cap(Type::Value) + 2 * g;
    if (std::holds_alternative<FarModel::Dial>(model.shown)) return eye + pen.cap(Type::Lead) * 2.2 + pen.cap(Type::Display) + g;
    const double step = model.step.empty() ? 0 : step_block(pen, model).height + g;
    return eye + step + (model.holder.empty() || beside_eye(pen, model) ? 0 : pen.pitch(Type::Text) + g);
}

/// On an upright glass the clock under the giant digits keeps its label over a banner of two lines too, where all that has room.
bool clock_over_banner(const Pen& pen, const FarModel& model) {
    const Glass& glass = pen.canvas().glass;
    const auto* numeral = std::get_if<FarModel::Numeral>(&model.shown);
    if (!model.clock || !model.banner || !glass.portrait() || numeral == nullptr) return false;
    const double g = pen.gap(), under = pen.block(numeral->under, {Type::Lead}, {glass.width_mm - 2 * g, glass.height_mm, 2}).height;
    const double figure = pen.cap(Type::Numeral) + pen.cap(Type::Lead) * 0.6 + under;
    return head_height(pen, model) + figure + pen.cap(Type::Value) + 3 * pen.pitch(Type::Text) + 7 * g <= glass.height_mm;
}

/// What stands under it.
double foot_height(const Pen& pen, const FarModel& model) {
    const double clock = model.clock || !model.muted.empty() ? pen.cap(Type::Value) + 2 * pen.gap() : 0,
                 line = pen.pitch(Type::Text) + pen.gap(), label = clock_over_banner(pen, model) ? line : 0;
    return clock + label + (model.banner && pen.canvas().glass.portrait() ? 2 * line : line);  // on a wide glass a banner has one
}

Places places(const Pen& pen, const FarModel& model) {
    const Glass& glass = pen.canvas().glass;
    const double g = pen.gap(), h = glass.height_mm - 2 * g, w = column_share * glass.width_mm, across = glass.width_mm - 2 * g;
    if (glass.portrait()) {
        const double head = head_height(pen, model);
        return {.column = {g, g, across, h}, .figure = {g, g + head, across, h - head - foot_height(pen, model)}};
    }
    if (alone(model)) {
        // In the middle of the glass, and clear of who counts and of a banner; words as wide as the glass of eye and clock too.
        const bool words = std::holds_alternative<FarModel::Said>(model.shown) && model.clock;
        const double head = words || !model.holder.empty() || !model.step.empty() ? head_height(pen, model) : 0;
        const double foot = words ? foot_height(pen, model) : model.banner ? pen.pitch(Type::Text) + 2 * g : 0;
        return {.column = {g, g, across, h}, .figure = {g, g + head, across, h - head - foot}};
    }
    return {.column = {g, g, w - g, h}, .figure = {w + g, g, glass.width_mm - w - 2 * g, h}, .tight = model.banner.has_value()};
}

/// The height that a muted voice takes under the clock of a wide glass, whose figure needs `needed` of `room`: none where sign and word
/// stand under the digits and on the left of what those are. On an upright glass the foot has its height.
double muted_under(const Pen& pen, const FarModel& model, const Block& label, double needed, double room) {
    if (model.muted.empty() || pen.canvas().glass.portrait()) return 0;
    const double right = pen.gap() + muted_size(pen) * word_after + pen.width(Type::Text, model.muted), taken = muted_size(pen) + pen.gap();
    const bool beside = right + pen.gap() <= (pen.canvas().glass.width_mm - label.width) / 2;
    return beside && (room - needed) / 2 + pen.cap(Type::Display) <= room - taken ? 0 : taken;
}

/// The clock that stands alone is read before the step over it, which gives way to it, to a banner and to a muted voice.
FarModel with_room(Pen& pen, FarModel model) {
    const auto* clock = std::get_if<ClockShown>(&model.shown);
    if (clock == nullptr || model.step.empty()) return model;
    const Box figure = places(pen, model).figure;
    const Block label = pen.block(clock->label, {Type::Lead}, {figure.w, figure.h, 2});
    const double needed = pen.cap(Type::Display) + pen.cap(Type::Lead) * 0.8 + label.height;
    if (step_block(pen, model).fits && needed + muted_under(pen, model, label, needed, figure.h) <= figure.h) return model;
    pen.gives_way(std::exchange(model.step, ""));
    return model;
}

/// The place of a sign on the left of the digits; where they are too wide for it, in the column, clear of the eye over it and of the clock
/// under it.
Box beside_digits(const Pen& pen, const FarModel::Numeral& numeral, double middle, const Places& at) {
    const double left = at.figure.centre().x - pen.width(Type::Numeral, numeral.digits) / 2 - pen.gap(), usual = pen.cap(Type::Lead) * 1.4;
    for (const double size : {usual, pen.cap(Type::Lead)})
        if (left - size >= at.figure.x) return {left - size, middle - size / 2, size, size};
    const double y = pen.canvas().glass.portrait() ? at.figure.bottom() + pen.gap() : at.column.centre().y - usual;
    return {at.column.right() - usual - pen.gap(), y, usual, usual};
}

void draw_shown(Pen& pen, const FarModel::Numeral& numeral, const Places& at) {
    const Ink ink = numeral.watch ? Ink::Amber : numeral.to_zero ? Ink::Accent : Ink::Text;
    const Block under = pen.block(numeral.under, {Type::Lead}, {at.figure.w, at.figure.h, 2});
    const double cap = pen.cap(Type::Numeral), gap = pen.cap(Type::Lead) * 0.6;
    const double top = at.figure.y + std::max(0.0, at.figure.h - cap - gap - under.height) / 2, middle = at.figure.centre().x;
    pen.text({middle, top}, numeral.digits, Type::Numeral, ink, Align::Centre);
    pen.text({middle, top + cap + gap}, under, ink, Align::Centre);
    if (!under.fits || pen.width(Type::Numeral, numeral.digits) > at.figure.w) pen.falls_short(numeral.under);
    // What stands at the foot of the column is never read on into what stands under the figure.
    if (at.tight)
        pen.add(picture::Line{
            .a = {at.column.right(), top + cap}, .b = {at.column.right(), at.column.bottom()}, .width = 0.8, .ink = Ink::Line});
    if (numeral.watch) level_sign(pen, Banner::Level::Watch, beside_digits(pen, numeral, top + cap / 2, at), Ink::Black);
}

/// The sign over the words on an upright glass, on their left elsewhere: what is most urgent has no fewer letters than the room has.
void draw_shown(Pen& pen, const FarModel::Said& said, const Places& at) {
    const bool notice = said.level == Banner::Level::Notice, over = pen.canvas().glass.portrait();
    const double size = notice ? 0 : pen.cap(Type::Display) * 1.2, taken = size * 1.5;
    const Block block = pen.block(said.text, {Type::Display, Type::Title, Type::Lead},
                                  {at.figure.w - (over ? 0 : taken), at.figure.h - (over ? taken : 0), 4});
    const double h = block.height + (over ? taken : 0), w = block.width + (over ? 0 : taken);
    const double top = at.figure.y + std::max(0.0, at.figure.h - h) / 2, left = at.figure.centre().x - w / 2;
    level_sign(pen, said.level,
               over ? Box{at.figure.centre().x - size / 2, top, size, size} : Box{left, top + (block.height - size) / 2, size, size},
               Ink::Black);
    const double x = over || notice ? at.figure.centre().x : left + taken, y = top + (over ? taken : 0);
    pen.text({x, y}, block, notice ? Ink::Text : level_ink(said.level), over || notice ? Align::Centre : Align::Left);
    if (!block.fits) pen.falls_short(said.text);
}

void draw_shown(Pen& pen, const FarModel::Dial& dial, const Places& at) {
    // Its hours stand clear of the eye's words, which are wider than the column in German.
    const double aside = pen.canvas().glass.portrait() ? 0 : at.figure.w * 0.06;
    pen.add(picture::draw(dial.face, {at.figure.x + aside, at.figure.y, at.figure.w - aside, at.figure.h}, pen.canvas().lettering));
    const double gap = pen.cap(Type::Lead) * 0.6, y = at.column.y + pen.cap(Type::Value) + 2 * pen.gap() + (at.tight ? 0 : gap);
    pen.text({at.column.x, y}, dial.suture, Type::Lead, Ink::Soft);
    pen.text({at.column.x, y + pen.cap(Type::Lead) + gap}, dial.at, Type::Display, Ink::Text);
}

void draw_shown(Pen& pen, const ClockShown& clock, const Places& at) {
    const double w = at.figure.w, middle = at.figure.centre().x;
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
    // In full where that takes no more lines than the few words: the clock over it keeps its place.
    const auto block_of = [&](const std::string& text, std::size_t lines) {
        return pen.block(text, {Type::Text}, {column.w - indent, column.h, lines});
    };
    const Block brief = block_of(banner.brief, 2);
    Block block = block_of(banner.text, banner.brief.empty() ? 2 : brief.lines.size());
    if (!block.fits && !banner.brief.empty()) block = brief;
    const double top = column.bottom() - block.height;
    level_sign(pen, banner.level, {column.x, top - (size - pen.cap(Type::Text)) / 2, size, size}, Ink::Black);
    pen.text({column.x + indent, top}, block, level_ink(banner.level));
    if (!block.fits) pen.falls_short(banner.text);
    return block.height + pen.gap() * 2;
}

/// The sign of a muted voice, with its word where that has room.
void draw_muted(Pen& pen, const std::string& word, const Box& box) {
    const double size = muted_size(pen), x = box.x + size * word_after, y = box.centre().y;
    pen.icon(Icon::Muted, {box.x, y - size / 2, size, size}, Ink::Soft, Ink::Black);
    if (x + pen.width(Type::Text, word) <= box.right()) pen.text({x, y - pen.cap(Type::Text) / 2}, word, Type::Text, Ink::Soft);
}

/// The clock over its label, from the foot of the row up; how wide.
double draw_clock(Pen& pen, const ClockShown& clock, Box& row) {
    const double drop = pen.cap(Type::Text) * picture::descent;
    pen.text({row.x, row.bottom() - drop - pen.cap(Type::Text)}, clock.label, Type::Text, Ink::Soft);
    row.y -= pen.pitch(Type::Text) + drop;
    pen.text({row.x, row.y}, clock.value, Type::Value, Ink::Text);
    return pen.width(Type::Value, clock.value) + 2 * pen.gap();
}

/// The clock with its label beside it, where both have room in the row; else neither stands, since a bare time would be read as another
/// one: under the hour of a suture as a second hour. How wide.
double draw_clock_beside(Pen& pen, const FarModel& model, const Box& row) {
    const ClockShown& clock = *model.clock;
    const double value = pen.width(Type::Value, clock.value) + pen.gap(), label = pen.width(Type::Text, clock.label) + pen.gap();
    if (value + label > row.w - (model.muted.empty() ? 0 : muted_size(pen) + pen.gap())) {
        pen.gives_way(clock.label);
        return 0;
    }
    pen.text({row.x, row.y}, clock.value, Type::Value, Ink::Text);
    pen.text({row.x + value, row.bottom() - pen.cap(Type::Text)}, clock.label, Type::Text, Ink::Soft);
    return value + label + pen.gap();
}

/// The clock at the foot of the column, and on its right that the voice is muted; the banner under both. `head`: where what stands over
/// them ends.
void draw_foot(Pen& pen, const FarModel& model, Box column, double head) {
    if (model.banner) column.h -= draw_far_banner(pen, *model.banner, column);
    Box row{column.x, column.bottom() - pen.cap(Type::Value), column.w - pen.gap(), pen.cap(Type::Value)};
    if (model.clock) {
        const double over = pen.pitch(Type::Text) + pen.cap(Type::Text) * picture::descent;
        const bool free = !pen.canvas().glass.portrait() && std::holds_alternative<FarModel::Numeral>(model.shown);
        const bool room = !model.banner || clock_over_banner(pen, model) || (free && row.y - over >= head + pen.gap());
        const double taken = room ? draw_clock(pen, *model.clock, row) : draw_clock_beside(pen, model, row);
        row.x += taken;
        row.w -= taken;
    }
    if (!model.muted.empty()) draw_muted(pen, model.muted, row);
}

/// Whose eye, which step, and who counts; returns where they end.
double draw_head(Pen& pen, const FarModel& model, const Places& at) {
    pen.text({at.column.x, at.column.y}, model.eye, Type::Value, Ink::Soft);
    double top = at.column.y + pen.cap(Type::Value) + 2 * pen.gap();
    if (!model.step.empty()) {
        const Block step = step_block(pen, model);
        pen.text({at.column.x, top}, step, Ink::Text);
        top += step.height + pen.gap();
    }
    if (beside_eye(pen, model)) {
        const double x = at.column.x + pen.width(Type::Value, model.eye) + 3 * pen.gap();
        pen.text({x, at.column.y + pen.cap(Type::Value) - pen.cap(Type::Text)}, model.holder, Type::Text, Ink::Soft);
        return top;
    }
    double w = at.column.w - 2 * pen.gap();
    // As far as the widest of the giant digits, whose own margins part them: it does not break anew from spoke to spoke.
    if (std::holds_alternative<FarModel::Numeral>(model.shown) && !pen.canvas().glass.portrait())
        w = at.figure.centre().x - pen.width(Type::Numeral, "00") / 2 - at.column.x;
    const Block holder = pen.block(model.holder, {Type::Text}, {w, at.column.h, 2});
    pen.text({at.column.x, top}, holder, Ink::Soft);
    return top + holder.height;
}

}  // namespace

Frame draw(const FarModel& whole, const Canvas& canvas) {
    Pen pen(canvas);
    const FarModel model = with_room(pen, whole);
    pen.add(picture::Panel{.box = {0, 0, canvas.glass.width_mm, canvas.glass.height_mm}, .fill = Ink::Black, .edge = Ink::Black});
    const Places at = places(pen, model);
    const double head = draw_head(pen, model, at);
    std::visit(measure::overloaded{[](std::monostate) {}, [&](const FarModel::Numeral& numeral) { draw_shown(pen, numeral, at); },
                                   [&](const FarModel::Said& said) { draw_shown(pen, said, at); },
                                   [&](const FarModel::Dial& dial) { draw_shown(pen, dial, at); },
                                   [&](const ClockShown& clock) { draw_shown(pen, clock, at); }},
               model.shown);
    draw_foot(pen, model, at.column, head);
    if (model.beat) pen.heart({canvas.glass.width_mm - pen.gap() * 1.5, pen.gap() * 0.5, pen.gap(), pen.gap() * 4}, *model.beat);
    if (const double reach = far_reach_mm(canvas.type); reach < 3000) pen.falls_short(fmt::format("3 m, only {:.1f} m", reach / 1000));
    return pen.take();
}

}  // namespace screen
