#include "screen/page_parts.hpp"
#include "screen/table_parts.hpp"

#include <algorithm>

namespace screen {

namespace {

/// The picture stands away from the hand; in portrait above.
struct Split {
    Box picture{}, choices{};
};

Split split(const Pen& pen, const Box& box) {
    const Glass& glass = pen.canvas().glass;
    const double g = pen.gap();
    if (glass.portrait()) {
        const double h = box.h * 0.42;
        return {{box.x, box.y, box.w, h}, {box.x, box.y + h + g, box.w, box.h - h - g}};
    }
    const double w = box.w * 0.42;
    const Split made{{box.x, box.y, w, box.h}, {box.x + w + g, box.y, box.w - w - g, box.h}};
    return glass.hand == Hand::Right ? made : Split{mirrored(made.picture, box), mirrored(made.choices, box)};
}

/// Columns as wide as their words, no farther apart than the eye goes from one to the next; a soft line under each row.
void draw_table(Pen& pen, const std::vector<TableRow>& table, const Box& box) {
    const double cap = pen.cap(Type::Text);
    double value_w = 0, beside_w = 0, label_w = 0;
    for (const TableRow& row : table) {
        label_w = std::max(label_w, pen.width(Type::Text, row.label));
        value_w = std::max(value_w, pen.width(Type::Strong, row.value));
        beside_w = std::max(beside_w, pen.width(Type::Text, row.beside));
    }
    const double free = box.w - 2 * cap - label_w - value_w - beside_w, gap = std::clamp(free / 2, cap, cap * 3);
    const double right = value_w + (beside_w > 0 ? gap + beside_w : 0);
    label_w = std::min(label_w, box.w - 2 * cap - gap - right);
    const double share = box.h / static_cast<double>(std::max<std::size_t>(1, table.size()));
    const Box rows{box.x + cap, box.y, label_w + gap + right, box.h};
    double y = rows.y;
    for (const TableRow& row : table) {
        const bool head = &row == &table.front();
        const Block label = pen.block(row.label, {Type::Text}, {label_w, box.bottom() - y, 2});
        const double air = std::clamp(share - label.height, cap * 0.2, cap * 1.4), h = label.height + air;
        if (!label.fits || y + h > box.bottom() + 1e-6) return pen.falls_short(row.label);
        const double line = y + air / 2;
        pen.text({rows.x, line}, label, Ink::Soft);
        pen.text({rows.x + label_w + gap + value_w, line}, row.value, head ? Type::Text : Type::Strong, head ? Ink::Soft : Ink::Text,
                 Align::Right);
        pen.text({rows.right(), line}, row.beside, Type::Text, head ? Ink::Soft : Ink::Text, Align::Right);
        y += h;
        pen.add(picture::Panel{.box = {rows.x, y, rows.w, 0.3}, .fill = head ? Ink::Mark : Ink::Line, .edge = Ink::Line});
    }
}

struct Attempt {
    Frame frame{};
    bool fits = true;
};

/// The choices come first: where they do not fit beside the picture, the picture goes.
Attempt attempt(const PickModel& model, const std::vector<std::string>& lines, const Canvas& canvas) {
    Pen pen(canvas);
    const Box box = draw_page(pen, {model.strip, model.title, lines, model.foot, model.banner, model.muted});
    const bool pictured = !std::holds_alternative<std::monostate>(model.picture);
    if (model.choices.empty()) {
        draw_picture(pen, model.picture, box);
        draw_table(pen, model.table, box);
        return {pen.take()};
    }
    const Split parts = split(pen, box);
    if (const auto beside = pictured ? grid_columns(pen, model.choices, parts.choices) : std::nullopt) {
        draw_picture(pen, model.picture, parts.picture);
        draw_grid(pen, model.choices, parts.choices, *beside);
        return {pen.take()};
    }
    const auto columns = grid_columns(pen, model.choices, box);
    draw_grid(pen, model.choices, box, columns.value_or(box.w > box.h ? 4 : 2));
    return {pen.take(), columns.has_value()};
}

}  // namespace

Frame draw(const PickModel& model, const Canvas& canvas) {
    Attempt made = attempt(model, model.lines, canvas);
    if (made.fits) return std::move(made.frame);
    Attempt without_lines = attempt(model, {}, canvas);
    auto& missing = without_lines.frame.short_of;
    if (!without_lines.fits) missing.push_back(model.title);
    missing.insert(missing.end(), model.lines.begin(), model.lines.end());
    return std::move(without_lines.frame);
}

}  // namespace screen
