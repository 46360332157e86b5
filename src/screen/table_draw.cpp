#include "measure/overloaded.hpp"
#include "screen/drawer.hpp"
#include "screen/target_draw.hpp"

#include <algorithm>
#include <utility>

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

/// In full where that takes no more than three lines, else in few words.
Block banner_block(const Pen& pen, const Banner& banner, double width) {
    const Room room{width - 2 * pen.cap(Type::Text) - banner_indent(pen, banner), 1e9, 3};
    Block full = pen.block(banner.text, {Type::Strong}, room);
    return full.fits || banner.brief.empty() ? full : pen.block(banner.brief, {Type::Strong}, room);
}

/// Named in few words all that stands can be longer than the first of it in full.
bool brief_fits(const Pen& pen, const Banner& banner, double width) {
    const Block brief = banner_block(pen, briefly(banner), width);
    return brief.fits && brief.lines.size() <= banner_block(pen, banner, width).lines.size();
}

double around_banner(const Pen& pen) { return pen.cap(Type::Text) * 1.5; }

/// Targets for which the hand's column has no place stand in a row at the bottom of the card.
double overflow_height(std::span<const Target> targets) {
    double side = 0;
    for (const auto& target : targets) side = std::max(side, least_side_mm(target.weight));
    return side;
}

}  // namespace

Banner briefly(Banner banner) {
    if (!banner.brief.empty()) banner.text = std::exchange(banner.brief, {});
    return banner;
}

double banner_height(const Pen& pen, const Banner& banner, double width) {
    return banner_block(pen, banner, width).height + around_banner(pen);
}

void draw_banner(Pen& pen, const Banner& banner, const Box& box) {
    const BannerPaint colours = paint(banner.level);
    const Block block = banner_block(pen, banner, box.w);
    const double cap = pen.cap(Type::Strong), indent = banner_indent(pen, banner);
    pen.add(picture::Panel{.box = box, .radius = 2, .fill = colours.fill, .edge = colours.edge, .edge_width = 0.6});
    level_sign(pen, banner.level, {box.x + cap, box.centre().y - cap * 0.75, cap * 1.5, cap * 1.5}, colours.fill);
    if (!block.fits) pen.falls_short(banner.text);
    pen.text({box.x + cap + indent, box.y + (box.h - block.height) / 2}, block, colours.ink);
}

namespace {

/// On a small glass a banner stands in place of the path.
bool over_path(const TableModel& model, const TableLayout& layout) { return !layout.path_column && !model.drawer; }

/// What a banner of that height leaves of the box for what stands there.
Box beside_banner(const Pen& pen, const TableModel& model, const TableLayout& layout, const Box& box, double banner_h) {
    if (banner_h == 0) return box;
    if (!over_path(model, layout)) return {box.x, box.y, box.w, box.h - banner_h - pen.gap()};
    const double more = std::max(0.0, banner_h - layout.path.h);
    return {box.x, box.y + more, box.w, box.h - more};
}

/// A banner of as many lines as it may have.
double tallest_banner(const Pen& pen) {
    return 2 * pen.pitch(Type::Strong) + pen.cap(Type::Strong) * (1 + picture::descent) + around_banner(pen);
}

/// The banner at the foot of the box, on a small glass in place of the path; returns what is left for what stands above.
Box draw_path_and_banner(Pen& pen, const TableModel& model, const TableLayout& layout, const Box& box, bool brief) {
    std::optional<Banner> banner = model.banner || !model.drawer ? model.banner : model.drawer->banner;
    if (banner && (brief || (model.drawer && model.drawer->open)) && brief_fits(pen, *banner, box.w)) banner = briefly(*std::move(banner));
    const bool path = !model.drawer || (layout.path_column && !model.drawer->open);
    if (path && !(banner && over_path(model, layout))) draw_path(pen, model.path, layout);
    if (!banner) return box;
    const double h = banner_height(pen, *banner, box.w);
    const Box at_path{layout.path.x, layout.path.y, layout.path.w, h};
    draw_banner(pen, *banner, over_path(model, layout) ? at_path : Box{box.x, box.bottom() - h, box.w, h});
    return beside_banner(pen, model, layout, box, h);
}

/// Card, counts and banner, the path beside them: what stands between strip and hand.
void draw_middle(Pen& pen, const TableModel& model, TableLayout layout, std::span<const Target> over, bool brief) {
    layout.card = draw_counts(pen, model.card.counts, layout.card);
    Box card = draw_path_and_banner(pen, model, layout, layout.card, brief);
    CardHeights heights{layout.card.h, beside_banner(pen, model, layout, layout.card, tallest_banner(pen)).h};
    if (model.drawer) draw_drawer(pen, *model.drawer, layout);
    if (!over.empty()) {
        const double h = overflow_height(over);
        draw_row(pen, over, {card.x, card.bottom() - h, card.w, h});
        card.h -= h + pen.gap();
        heights = {heights.bare - h - pen.gap(), heights.with_banner - h - pen.gap()};
    }
    Card shown = model.card;
    // Over an open drawer on an upright glass there is room for the figure, not for the section beside it.
    if (model.drawer && model.drawer->open && layout.strip_rows) shown.picture = {};
    // On a small one a way back takes the section's room, not that of what is to be done until then.
    if (!over.empty() && !layout.path_column && shown.figure && shown.lines.size() > 1) shown.picture = {};
    draw_card(pen, shown, card, heights);
}

/// A banner in full costs the card something.
bool banner_costs(const TableModel& model, const Canvas& canvas, const TableLayout& layout, std::span<const Target> over) {
    if (!model.banner && !(model.drawer && model.drawer->banner)) return false;
    Pen pen(canvas);
    draw_middle(pen, model, layout, over, false);
    const Frame full = pen.take();
    return !full.short_of.empty() || !full.gave_way.empty();
}

}  // namespace

Frame draw(const TableModel& model, const Canvas& canvas) {
    Pen pen(canvas);
    TableLayout layout = table_layout(pen);
    pen.add(picture::Panel{.box = {0, 0, canvas.glass.width_mm, canvas.glass.height_mm}, .fill = Ink::Ground, .edge = Ink::Ground});
    draw_strip(pen, model.strip, layout);
    const bool covered = model.drawer && model.drawer->open && !model.drawer->narrow;
    layout.grows = layout.grows && !covered;
    const auto [over, hand_top] = draw_hand(pen, model.hand, layout);
    if (layout.strip_rows) layout.card.h = hand_top - pen.gap() - layout.card.y;
    if (model.drawer) layout = with_drawer(layout, *model.drawer, pen);
    if (covered) {
        layout.drawer = draw_path_and_banner(pen, model, layout, layout.drawer, true);
        draw_drawer(pen, *model.drawer, layout);
        return pen.take();
    }
    draw_middle(pen, model, layout, over, banner_costs(model, canvas, layout, over));
    return pen.take();
}

}  // namespace screen
