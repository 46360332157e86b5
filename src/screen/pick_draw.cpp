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

}  // namespace

Frame draw(const PickModel& model, const Canvas& canvas) {
    Pen pen(canvas);
    const Box box = draw_page(pen, {model.strip, model.title, model.lines, model.foot, model.banner});
    if (model.choices.empty()) {
        draw_picture(pen, model.picture, box);
        return pen.take();
    }
    const bool pictured = !std::holds_alternative<std::monostate>(model.picture);
    const Split parts = split(pen, box);
    // The choices come first: where they do not fit beside the picture, the picture goes.
    const auto beside = pictured ? grid_columns(pen, model.choices, parts.choices) : std::nullopt;
    if (beside) {
        draw_picture(pen, model.picture, parts.picture);
        draw_grid(pen, model.choices, parts.choices, *beside);
        return pen.take();
    }
    const auto columns = grid_columns(pen, model.choices, box);
    if (!columns) pen.falls_short(model.title);
    draw_grid(pen, model.choices, box, columns.value_or(box.w > box.h ? 4 : 2));
    return pen.take();
}

}  // namespace screen
