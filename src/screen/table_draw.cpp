#include "measure/overloaded.hpp"
#include "screen/table_parts.hpp"
#include "screen/target_draw.hpp"

#include <algorithm>

namespace screen {

namespace {

struct BannerPaint {
    Ink fill{}, edge{}, ink{};
};

BannerPaint paint(Banner::Level level) {
    switch (level) {
        case Banner::Level::Notice:
            return {Ink::Raised, Ink::Mark, Ink::Text};
        case Banner::Level::Watch:
            return {Ink::AmberFill, Ink::Amber, Ink::Amber};
        case Banner::Level::Stop:
            return {Ink::RedFill, Ink::Red, Ink::Red};
    }
    return {};
}

double banner_indent(const Pen& pen, const Banner& banner) {
    return banner.level == Banner::Level::Notice ? 0 : pen.cap(Type::Strong) * 2.2;
}

Block banner_block(const Pen& pen, const Banner& banner, double width) {
    return pen.block(banner.text, {Type::Strong}, {width - 2 * pen.cap(Type::Text) - banner_indent(pen, banner), 1e9, 3});
}

/// Targets for which the hand's column has no place stand in a row at the bottom of the card.
double overflow_height(std::span<const Target> targets) {
    double side = 0;
    for (const auto& target : targets) side = std::max(side, least_side_mm(target.weight));
    return side;
}

}  // namespace

double banner_height(const Pen& pen, const Banner& banner, double width) {
    return banner_block(pen, banner, width).height + pen.cap(Type::Text) * 1.5;
}

void draw_banner(Pen& pen, const Banner& banner, const Box& box) {
    const BannerPaint colours = paint(banner.level);
    const Block block = banner_block(pen, banner, box.w);
    const double cap = pen.cap(Type::Strong), indent = banner_indent(pen, banner);
    pen.add(picture::Panel{.box = box, .radius = 2, .fill = colours.fill, .edge = colours.edge, .edge_width = 0.6});
    const Box icon{box.x + cap, box.centre().y - cap * 0.75, cap * 1.5, cap * 1.5};
    if (banner.level == Banner::Level::Watch) pen.icon(Icon::Triangle, icon, colours.ink, colours.fill);
    if (banner.level == Banner::Level::Stop) pen.icon(Icon::Octagon, icon, colours.ink, colours.fill);
    if (!block.fits) pen.falls_short(banner.text);
    pen.text({box.x + cap + indent, box.y + (box.h - block.height) / 2}, block, colours.ink);
}

Frame draw(const TableModel& model, const Canvas& canvas) {
    Pen pen(canvas);
    const TableLayout layout = table_layout(pen);
    pen.add(picture::Panel{.box = {0, 0, canvas.glass.width_mm, canvas.glass.height_mm}, .fill = Ink::Ground, .edge = Ink::Ground});
    draw_strip(pen, model.strip, layout);
    const auto [over, hand_top] = draw_hand(pen, model.hand, layout);
    Box card = layout.card;
    if (layout.strip_rows) card.h = hand_top - pen.gap() - card.y;
    const double banner_h = model.banner ? banner_height(pen, *model.banner, card.w) : 0;
    if (model.banner && !layout.path_column) {  // on a small glass the banner stands in place of the path
        draw_banner(pen, *model.banner, {layout.path.x, layout.path.y, layout.path.w, banner_h});
        const double more = std::max(0.0, banner_h - layout.path.h);
        card.y += more;
        card.h -= more;
    } else {
        draw_path(pen, model.path, layout);
    }
    if (model.banner && layout.path_column) {
        draw_banner(pen, *model.banner, {card.x, card.bottom() - banner_h, card.w, banner_h});
        card.h -= banner_h + pen.gap();
    }
    if (!over.empty()) {
        const double h = overflow_height(over);
        draw_row(pen, over, {card.x, card.bottom() - h, card.w, h});
        card.h -= h + pen.gap();
    }
    draw_card(pen, model.card, card);
    return pen.take();
}

}  // namespace screen
