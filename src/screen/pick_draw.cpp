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

struct TableRoles {
    Type label = Type::Text, value = Type::Strong;
};

struct TableWidths {
    double label = 0, value = 0, beside = 0, gap = 0;
};

/// Columns as wide as their words, no farther apart than the eye goes from one to the next.
TableWidths table_widths(const Pen& pen, const std::vector<TableRow>& table, double width, const TableRoles& roles) {
    TableWidths made;
    for (const TableRow& row : table) {
        made.label = std::max(made.label, pen.width(roles.label, row.label));
        made.value = std::max(made.value, pen.width(roles.value, row.value));
        made.beside = std::max(made.beside, pen.width(roles.label, row.beside));
    }
    const double cap = pen.cap(Type::Text), free = width - 2 * cap - made.label - made.value - made.beside;
    made.gap = std::clamp(free / 2, cap, cap * 3);
    made.label = std::min(made.label, width - 2 * cap - made.gap - made.value - (made.beside > 0 ? made.gap + made.beside : 0));
    return made;
}

/// Whether all rows have a line each and air between them.
bool goes(const Pen& pen, const std::vector<TableRow>& table, const Box& box, const TableRoles& roles) {
    const TableWidths w = table_widths(pen, table, box.w, roles);
    const double row = pen.pitch(roles.value) + pen.cap(Type::Text) * 0.6;
    return row * static_cast<double>(table.size()) <= box.h && std::all_of(table.begin(), table.end(), [&](const TableRow& one) {
               return pen.block(one.label, {roles.label}, {w.label, 1e9, 1}).fits;
           });
}

/// A soft line under each row; big where all has room.
void draw_table(Pen& pen, const std::vector<TableRow>& table, const Box& box) {
    constexpr TableRoles big{Type::Lead, Type::Title};
    const TableRoles roles = goes(pen, table, box, big) ? big : TableRoles{};
    const TableWidths w = table_widths(pen, table, box.w, roles);
    const double cap = pen.cap(Type::Text), share = box.h / static_cast<double>(std::max<std::size_t>(1, table.size()));
    const Box rows{box.x + cap, box.y, w.label + w.gap + w.value + (w.beside > 0 ? w.gap + w.beside : 0), box.h};
    double y = rows.y;
    for (const TableRow& row : table) {
        const bool head = &row == &table.front();
        const Block label = pen.block(row.label, {roles.label}, {w.label, box.bottom() - y, 2});
        const double air = std::clamp(share - label.height, cap * 0.2, cap * 1.4), h = label.height + air;
        if (!label.fits || y + h > box.bottom() + 1e-6) return pen.falls_short(row.label);
        const Type value = head ? roles.label : roles.value;
        const double line = y + air / 2, sunk = pen.cap(roles.label) - pen.cap(value);
        pen.text({rows.x, line}, label, Ink::Soft);
        pen.text({rows.x + w.label + w.gap + w.value, line + sunk}, row.value, value, head ? Ink::Soft : Ink::Text, Align::Right);
        pen.text({rows.right(), line}, row.beside, roles.label, head ? Ink::Soft : Ink::Text, Align::Right);
        y += h;
        pen.add(picture::Panel{.box = {rows.x, y, rows.w, 0.3}, .fill = head ? Ink::Mark : Ink::Line, .edge = Ink::Line});
    }
}

/// How the choices stand: what bigger lines over them must not cost.
struct Choices {
    bool beside = false;  // the picture
    int columns = 0;
    Type labels{};
    bool operator==(const Choices&) const = default;
};

struct Attempt {
    Frame frame{};
    bool fits = true;
    Choices choices{};
};

/// The choices come first: where they do not fit beside the picture, the picture goes.
Attempt attempt(const PickModel& model, const std::vector<std::string>& lines, const Canvas& canvas, Type line = Type::Text) {
    Pen pen(canvas);
    const Box box = draw_page(pen, {model.strip, model.title, lines, model.foot, model.banner, model.muted, line});
    const bool pictured = !std::holds_alternative<std::monostate>(model.picture);
    if (model.choices.empty()) {
        draw_picture(pen, model.picture, box);
        draw_table(pen, model.table, box);
        return {pen.take()};
    }
    const Split parts = split(pen, box);
    if (const auto beside = pictured ? grid_columns(pen, model.choices, parts.choices) : std::nullopt) {
        draw_picture(pen, model.picture, parts.picture);
        const Type labels = draw_grid(pen, model.choices, parts.choices, *beside);
        return {pen.take(), true, {true, *beside, labels}};
    }
    const auto fitting = grid_columns(pen, model.choices, box);
    const int columns = fitting.value_or(box.w > box.h ? 4 : 2);
    const Type labels = draw_grid(pen, model.choices, box, columns);
    return {pen.take(), fitting.has_value(), {false, columns, labels}};
}

}  // namespace

Frame draw(const PickModel& model, const Canvas& canvas) {
    Attempt made = attempt(model, model.lines, canvas);
    if (made.fits) {
        Attempt larger = attempt(model, model.lines, canvas, Type::Lead);
        const bool as_good = larger.fits && larger.choices == made.choices && larger.frame.short_of == made.frame.short_of;
        return std::move(as_good ? larger.frame : made.frame);
    }
    Attempt without_lines = attempt(model, {}, canvas);
    auto& missing = without_lines.frame.short_of;
    if (!without_lines.fits) missing.push_back(model.title);
    missing.insert(missing.end(), model.lines.begin(), model.lines.end());
    return std::move(without_lines.frame);
}

}  // namespace screen
