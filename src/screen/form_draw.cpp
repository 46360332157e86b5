#include "screen/page_parts.hpp"
#include "screen/table_parts.hpp"
#include "screen/target_draw.hpp"

#include <algorithm>

namespace screen {

namespace {

using Field = FormModel::Field;

double field_height(const Pen& pen) { return std::max(15.0, pen.cap(Type::Text) * 3.6); }

/// Label at the left, value at the right; the one being filled has the accent at its edge. A problem stands under it.
void draw_field(Pen& pen, const Field& field, const Box& box) {
    const double cap = pen.cap(Type::Text), pad = cap * 0.8;
    const bool wrong = !field.problem.empty();
    const Ink edge = field.now ? Ink::Accent : wrong ? Ink::Amber : Ink::Line;
    pen.add(picture::Panel{
        .box = box, .radius = 2, .fill = field.now ? Ink::Card : Ink::Raised, .edge = edge, .edge_width = field.now ? 1.0 : 0.5});
    pen.touch(field.target, box);
    const double sign = wrong ? cap * 2 : 0, value_w = pen.width(Type::Strong, field.value);
    const double label_w = box.w - 2 * pad - sign - value_w - cap * 0.8;
    const Block label = pen.block(field.target.label, {Type::Text}, {label_w, box.h - pad, 2});
    const std::string& under = wrong ? field.problem : field.target.line;
    const Block line =
        under.empty() ? Block{} : pen.block(under, {Type::Text}, {box.w - 2 * pad - sign, box.h - pad - label.height - cap * 0.4, 1});
    const bool with_line = !under.empty() && line.fits;
    const double h = label.height + (with_line ? cap * 0.4 + line.height : 0), top = box.y + (box.h - h) / 2;
    if (wrong) pen.icon(Icon::Triangle, {box.x + pad, box.centre().y - cap * 0.65, cap * 1.3, cap * 1.3}, Ink::Amber, Ink::Raised);
    pen.text({box.x + pad + sign, top}, label, Ink::Soft);
    pen.text({box.right() - pad, top}, field.value, Type::Strong, Ink::Text, Align::Right);
    if (with_line) pen.text({box.x + pad + sign, top + label.height + cap * 0.4}, line, wrong ? Ink::Amber : Ink::Soft);
    if (!label.fits) pen.falls_short(field.target.label);
}

std::size_t now_of(const std::vector<Field>& fields) {
    const auto now = std::find_if(fields.begin(), fields.end(), [](const Field& field) { return field.now; });
    return now == fields.end() ? 0 : static_cast<std::size_t>(now - fields.begin());
}

/// Beside the fields, which part of them is shown; picking the first or last one shown moves on.
void draw_extent(Pen& pen, const Box& box, std::size_t from, std::size_t shown, std::size_t all) {
    if (shown >= all) return;
    const double each = box.h / static_cast<double>(all), x = box.right() + 1, w = 1;
    pen.add(picture::Panel{.box = {x, box.y, w, box.h}, .radius = w / 2, .fill = Ink::Raised, .edge = Ink::Raised});
    const Box part{x, box.y + each * static_cast<double>(from), w, each * static_cast<double>(shown)};
    pen.add(picture::Panel{.box = part, .radius = w / 2, .fill = Ink::Soft, .edge = Ink::Soft});
}

/// As many fields as fit, the present one among them with one before and some after to go on to.
void draw_fields(Pen& pen, const std::vector<Field>& fields, const Box& box) {
    if (fields.empty()) return;
    const double g = std::max(3.0, pen.gap() * 0.7), least = field_height(pen);
    const std::size_t columns = box.w >= pen.cap(Type::Text) * 44 ? 2 : 1;
    const auto rows = static_cast<std::size_t>(std::max(1.0, (box.h + g) / (least + g)));
    const std::size_t shown = std::min(fields.size(), rows * columns);
    const std::size_t now = now_of(fields), before = shown > 2 ? 1 : 0;
    const std::size_t from = std::min(now > before ? now - before : 0, fields.size() - shown);
    const std::size_t per = (shown + columns - 1) / columns;
    const double h = std::min(least * 1.3, (box.h - g * static_cast<double>(per - 1)) / static_cast<double>(per));
    const double w = (box.w - g * static_cast<double>(columns - 1)) / static_cast<double>(columns);
    draw_extent(pen, box, from, shown, fields.size());
    for (std::size_t i = 0; i < shown; ++i) {
        const std::size_t column = i / per, row = i % per;
        draw_field(pen, fields[from + i],
                   {box.x + static_cast<double>(column) * (w + g), box.y + static_cast<double>(row) * (h + g), w, h});
    }
}

double key_side(const std::vector<Target>& keys) {
    double side = 0;
    for (const auto& key : keys) side = std::max(side, least_side_mm(key.weight));
    return side;
}

/// As many a row as were asked for, fewer on a narrow glass.
int keys_across(const FormModel& model, double width) {
    const double side = key_side(model.keys), g = 3;
    return std::clamp(static_cast<int>((width + g) / (side + g)), 1, std::max(1, model.keys_a_row));
}

/// The words on the last row take two places each where there are so many.
void draw_keys(Pen& pen, const FormModel& model, const Box& box) {
    const int across = keys_across(model, box.w), n = static_cast<int>(model.keys.size()), rows = (n + across - 1) / across;
    const double g = 3, h = std::min((box.h - g * (rows - 1)) / rows, pen.cap(Type::Text) * 6);
    const int on_last = n - (rows - 1) * across, wide = 2 * on_last <= across ? 2 : 1;
    for (int i = 0; i < n; ++i) {
        const int place = i / across, take = place + 1 == rows ? wide : 1;
        const Box row{box.x, box.y + place * (h + g), box.w, h}, from = part(row, i % across * take, across, g);
        draw_target(pen, model.keys[static_cast<std::size_t>(i)], {from.x, from.y, from.w * take + g * (take - 1), h}, Rank::Small);
    }
}

struct Split {
    Box fields{}, keys{};
};

/// A number pad stands on the hand's side, a wide one, and any in portrait, at the bottom.
Split split(const Pen& pen, const FormModel& model, const Box& box) {
    if (model.keys.empty()) return {box, {}};
    const Glass& glass = pen.canvas().glass;
    const int across = keys_across(model, box.w), rows = (static_cast<int>(model.keys.size()) + across - 1) / across;
    const double side = key_side(model.keys), g = pen.gap();
    if (glass.portrait() || across > 5) {
        const double h = std::max(rows * side + (rows - 1) * 3, std::min(box.h * 0.5, rows * pen.cap(Type::Text) * 6));
        return {{box.x, box.y, box.w, box.h - h - g}, {box.x, box.bottom() - h, box.w, h}};
    }
    const double w = std::max(across * side + (across - 1) * 3, box.w * 0.32);
    const Split made{{box.x, box.y, box.w - w - g, box.h}, {box.right() - w, box.y, w, box.h}};
    return glass.hand == Hand::Right ? made : Split{mirrored(made.fields, box), mirrored(made.keys, box)};
}

}  // namespace

Frame draw(const FormModel& model, const Canvas& canvas) {
    Pen pen(canvas);
    const Box box = draw_page(pen, {std::nullopt, model.title, model.lines, model.foot, model.banner});
    const Split parts = split(pen, model, box);
    draw_fields(pen, model.fields, parts.fields);
    const Box& field = parts.fields;
    if (model.typed) draw_typed(pen, *model.typed, {field.x, field.y, field.w, typed_height(pen, *model.typed, field.w, field.h)});
    if (!model.keys.empty()) draw_keys(pen, model, parts.keys);
    return pen.take();
}

Reader reader(const View& view) {
    if (std::holds_alternative<FarModel>(view)) return Reader::Far;
    return std::holds_alternative<DeskModel>(view) ? Reader::Desk : Reader::Table;
}

Frame draw(const View& view, const Canvas& canvas) {
    return std::visit([&canvas](const auto& model) { return draw(model, canvas); }, view);
}

}  // namespace screen
