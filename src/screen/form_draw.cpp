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
    const double apart = cap * 0.3;
    const std::string& under = wrong ? field.problem : field.target.line;
    const Block line =
        under.empty() ? Block{} : pen.block(under, {Type::Text}, {box.w - 2 * pad - sign, box.h - pad - label.height - apart, 2});
    const bool with_line = !under.empty() && line.fits;
    const double h = label.height + (with_line ? apart + line.height : 0) - cap * picture::descent, top = box.y + (box.h - h) / 2;
    if (wrong) pen.icon(Icon::Triangle, {box.x + pad, box.centre().y - cap * 0.65, cap * 1.3, cap * 1.3}, Ink::Amber, Ink::Raised);
    pen.text({box.x + pad + sign, top}, label, Ink::Soft);
    pen.text({box.right() - pad, top}, field.value, Type::Strong, Ink::Text, Align::Right);
    if (with_line) pen.text({box.x + pad + sign, top + label.height + apart}, line, wrong ? Ink::Amber : Ink::Soft);
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

constexpr double between_keys = 3;

double key_side(const Keys& keys) {
    double side = 0;
    for (const auto& key : keys.all) side = std::max(side, least_side_mm(key.weight));
    return side;
}

/// Where a key stands among rows of `across` places.
struct Place {
    int row = 0, at = 0, take = 1;
};

std::vector<Place> places(const Keys& keys, int across) {
    std::vector<Place> made{};
    int row = 0, at = 0;
    const std::size_t n = keys.all.size();
    for (std::size_t i = 0; i < n; ++i) {
        const int take = keys.wide_last && i + 1 == n ? std::min(2, across) : 1;
        if (at + take > across) ++row, at = 0;
        made.push_back({row, at, take});
        at += take;
    }
    if (keys.wide_last && !made.empty()) made.back().take = across - made.back().at;
    return made;
}

int rows_of(const Keys& keys, int across) { return keys.all.empty() ? 0 : places(keys, across).back().row + 1; }

/// In as few rows as the width allows, with as few a row as those need.
int keys_across(const Keys& keys, double width) {
    int across = std::clamp(static_cast<int>((width + between_keys) / (key_side(keys) + between_keys)), 1, std::max(1, keys.a_row));
    const int rows = rows_of(keys, across);
    while (across > 1 && rows_of(keys, across - 1) == rows) --across;
    return across;
}

void draw_keys(Pen& pen, const Keys& keys, const Box& box) {
    const int across = keys_across(keys, box.w), rows = rows_of(keys, across);
    const double g = between_keys, h = std::min((box.h - g * (rows - 1)) / rows, pen.cap(Type::Text) * 6);
    const std::vector<Place> all = places(keys, across);
    for (std::size_t i = 0; i < all.size(); ++i) {
        const auto [row, at, take] = all[i];
        const Box from = part({box.x, box.y + row * (h + g), box.w, h}, at, across, g);
        draw_target(pen, keys.all[i], {from.x, from.y, from.w * take + g * (take - 1), h}, Rank::Small);
    }
}

struct Split {
    Box fields{}, keys{};
};

/// A number pad stands on the hand's side, a wide one, and any in portrait, at the bottom.
Split split(const Pen& pen, const FormModel& model, const Box& box) {
    if (model.keys.all.empty()) return {box, {}};
    const Glass& glass = pen.canvas().glass;
    const int across = keys_across(model.keys, box.w), rows = rows_of(model.keys, across);
    const double side = key_side(model.keys), g = pen.gap();
    const auto least = [&](int n) { return n * side + (n - 1) * between_keys; };
    if (glass.portrait() || across > 5) {
        const double h = std::max(least(rows), std::min(box.h * 0.5, rows * pen.cap(Type::Text) * 6));
        return {{box.x, box.y, box.w, box.h - h - g}, {box.x, box.bottom() - h, box.w, h}};
    }
    const double w = std::max(least(across), box.w * 0.32);
    const Split made{{box.x, box.y, box.w - w - g, box.h}, {box.right() - w, box.y, w, box.h}};
    return glass.hand == Hand::Right ? made : Split{mirrored(made.fields, box), mirrored(made.keys, box)};
}

struct Attempt {
    Frame frame{};
    bool fits = true;  // a field, or a line of what is typed
};

Attempt attempt(const FormModel& model, const std::vector<std::string>& lines, const std::optional<Banner>& banner, const Canvas& canvas) {
    Pen pen(canvas);
    const Box box = draw_page(pen, {std::nullopt, model.title, lines, model.foot, banner, model.muted});
    const Split parts = split(pen, model, box);
    draw_fields(pen, model.fields, parts.fields);
    const Box& field = parts.fields;
    if (model.typed) draw_typed(pen, *model.typed, {field.x, field.y, field.w, typed_height(pen, *model.typed, field.w, field.h)});
    if (!model.keys.all.empty()) draw_keys(pen, model.keys, parts.keys);
    const double least = model.typed ? least_typed_height(pen, *model.typed, field.w) : field_height(pen);
    return {pen.take(), field.h >= least - 1e-6};
}

}  // namespace

/// Beside a banner the lines over the fields give way, then the banner is brief.
Frame draw(const FormModel& model, const Canvas& canvas) {
    Attempt made = attempt(model, model.lines, model.banner, canvas);
    if (made.fits || !model.banner) return std::move(made.frame);
    made = attempt(model, {}, model.banner, canvas);
    if (!made.fits) made = attempt(model, {}, briefly(*model.banner), canvas);
    for (const std::string& line : model.lines)
        if (!line.empty()) made.frame.short_of.push_back(line);
    return std::move(made.frame);
}

Reader reader(const View& view) {
    if (std::holds_alternative<FarModel>(view)) return Reader::Far;
    return std::holds_alternative<DeskModel>(view) ? Reader::Desk : Reader::Table;
}

Frame draw(const View& view, const Canvas& canvas) {
    return std::visit([&canvas](const auto& model) { return draw(model, canvas); }, view);
}

}  // namespace screen
