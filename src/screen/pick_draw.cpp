#include "screen/page_parts.hpp"
#include "screen/table_parts.hpp"

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

struct Attempt {
    Frame frame{};
    bool fits = true;
};

/// The choices come first: where they do not fit beside the picture, the picture goes.
Attempt attempt(const PickModel& model, const std::vector<std::string>& lines, const Canvas& canvas) {
    Pen pen(canvas);
    const Box box = draw_page(pen, {model.strip, model.title, lines, model.foot, model.banner});
    const bool pictured = !std::holds_alternative<std::monostate>(model.picture);
    if (model.choices.empty()) {
        draw_picture(pen, model.picture, box);
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
