// The frame of the Plan view: three columns side by side, or one at a time with a target for each where the glass is too small;
// cautions and the hold stand at the bottom in either case.
#include "screen/plan_view_parts.hpp"
#include "screen/table_parts.hpp"
#include "screen/target_draw.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace screen {

namespace {

/// Least size of a glass, in cap heights of its text, on which three columns can be read.
constexpr double three_wide = 84, three_high = 46;

struct Layout {
    std::array<Box, 3> columns{};
    bool three = false;
    Box cautions{}, tabs{}, foot{}, hold{};
};

double side_of(const std::vector<Target>& targets) {
    double side = 0;
    for (const Target& one : targets) side = std::max(side, least_side_mm(one.weight));
    return side;
}

double hold_height(const Pen& pen, const PlanModel& model) {
    return std::max(least_side_mm(model.foot.back().weight), pen.cap(Type::Text) * 4.6);
}

/// For so many lines of caution; the first caution is never cut.
double caution_height(const Pen& pen, const PlanModel& model, double width, std::size_t most_lines) {
    const double cap = pen.cap(Type::Text), w = width - cap * 3.4;
    double h = cap;
    std::size_t lines = 0;
    for (const auto& caution : model.cautions) {
        const std::size_t more = pen.block(caution.text, {Type::Text}, {w, 1e9, 99}).lines.size();
        if (lines > 0 && lines + more > most_lines) break;
        lines += more;
        h += static_cast<double>(more) * pen.pitch(Type::Text) + cap * 0.25;
    }
    return std::max(h, least_side_mm(model.all_cautions.weight));
}

/// Of what the ladder leaves, so much is for the readings and their map: five readings a row leave the map its height.
constexpr double measured_share = 0.58;

/// The depth column as wide as its ladder wants, the two others sharing the rest.
Layout three_columns(const Pen& pen, const PlanModel& model, const Box& box) {
    const double g = pen.gap(), ladder = std::clamp(ladder_width(pen, model) + 2 * pen.cap(Type::Text), box.w * 0.36, box.w * 0.52);
    const double rest = box.w - ladder - 2 * g, measured = rest * measured_share, sizes = rest - measured;
    const double back = std::max(side_of(model.foot), pen.cap(Type::Text) * 3);
    const double foot = std::max(back + plan_gap + hold_height(pen, model), caution_height(pen, model, measured + g + ladder, 6)),
                 high = box.h - foot - g;
    Layout made{.three = true};
    made.columns = {Box{box.x, box.y, measured, high}, Box{box.x + measured + g, box.y, ladder, high},
                    Box{box.right() - sizes, box.y, sizes, high}};
    const double y = box.y + high + g;
    made.cautions = {box.x, y, measured + g + ladder, foot};
    made.foot = {box.right() - sizes, y, sizes, back};
    made.hold = {box.right() - sizes, y + back + plan_gap, sizes, foot - back - plan_gap};
    return made;
}

/// One column at a time; its targets, the way back and the hold in a row, or in two where the glass is upright.
Layout one_column(const Pen& pen, const PlanModel& model, const Box& box) {
    const double g = std::max(plan_gap, pen.gap() * 0.8), row = hold_height(pen, model);
    const bool upright = pen.canvas().glass.portrait();
    Layout made{};
    const double y = box.bottom() - row;
    const double hold = upright ? box.w * 0.5 : box.w * 0.29;
    const double tabs = upright ? box.w : box.w * 0.42;
    made.hold = {box.right() - hold, y, hold, row};
    made.tabs = upright ? Box{box.x, y - row - plan_gap, box.w, row} : Box{box.x, y, tabs, row};
    const double from = upright ? box.x : made.tabs.right() + plan_gap;
    made.foot = {from, y, made.hold.x - plan_gap - from, row};
    const bool low = box.h < pen.cap(Type::Text) * 34;
    const double cautions = caution_height(pen, model, box.w, low ? 3 : 4), top = made.tabs.y - g - cautions;
    made.cautions = {box.x, top, box.w, cautions};
    made.columns.fill({box.x, box.y, box.w, top - g - box.y});
    return made;
}

void mirror(Layout& layout, const Box& box) {
    for (Box& column : layout.columns) column = mirrored(column, box);
    for (Box* one : {&layout.cautions, &layout.tabs, &layout.foot, &layout.hold}) *one = mirrored(*one, box);
}

Layout layout_of(const Pen& pen, const PlanModel& model, const Box& box) {
    const Glass& glass = pen.canvas().glass;
    const double cap = pen.cap(Type::Text);
    const bool three = !glass.portrait() && glass.width_mm >= three_wide * cap && glass.height_mm >= three_high * cap;
    Layout made = three ? three_columns(pen, model, box) : one_column(pen, model, box);
    if (glass.hand == Hand::Left) mirror(made, box);
    return made;
}

Ink ink_of(Banner::Level level) { return level == Banner::Level::Stop ? Ink::Red : level == Banner::Level::Watch ? Ink::Text : Ink::Soft; }

/// The cautions that fit into a box of so much width and height, the weightiest first.
std::vector<Block> fitting_cautions(const Pen& pen, const PlanModel& model, double w, double h) {
    std::vector<Block> blocks{};
    double y = 0;
    for (const auto& caution : model.cautions) {
        Block block = pen.block(caution.text, {Type::Text}, {w, 1e9, 99});
        if (y + block.height > h) break;
        y += static_cast<double>(block.lines.size()) * pen.pitch(Type::Text) + pen.cap(Type::Text) * 0.25;
        blocks.push_back(std::move(block));
    }
    return blocks;
}

/// Under the first caution's sign, where beside the last one there is no room for it.
struct LeftOut {
    std::string text{};
    Point at{};
    Align align{};
};

/// The whole of them is one target, which says that some are left out, and how many where it has room; the first is never one of them.
void draw_cautions(Pen& pen, const PlanModel& model, const Box& box) {
    const double cap = pen.cap(Type::Text), pad = cap * 0.6, indent = cap * 2;
    draw_ground(pen, model.all_cautions, box);
    const double w = box.w - 2 * pad - indent, h = box.h - pad;
    const auto beside = [&](std::size_t shown) { return model.all_cautions.label + ": " + std::to_string(model.cautions.size() - shown); };
    auto blocks = fitting_cautions(pen, model, w, h);
    if (blocks.empty()) pen.falls_short(model.cautions.front().text);
    std::optional<LeftOut> left_out{};
    if (blocks.size() < model.cautions.size()) {
        const double y = box.bottom() - cap * 1.5;
        auto narrow = fitting_cautions(pen, model, w - pen.width(Type::Strong, beside(0)) - cap, h);
        if (narrow.empty() || pen.canvas().glass.portrait()) {
            // No number: beside a line about spokes a plus and a figure would be read as so many spokes more.
            left_out = {"…", {box.x + pad, y}, Align::Left};
        } else {
            blocks = std::move(narrow);
            left_out = {beside(blocks.size()), {box.right() - pad, y}, Align::Right};
        }
    }
    double y = box.y + pad;
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        const auto& caution = model.cautions[i];
        const Block& block = blocks[i];
        const bool stop = caution.level == Banner::Level::Stop;
        const Box icon{box.x + pad, y - cap * 0.15, cap * 1.3, cap * 1.3};
        pen.icon(stop ? Icon::Octagon : Icon::Triangle, icon, stop ? Ink::Red : Ink::Amber, Ink::Raised);
        pen.text({box.x + pad + indent, y}, block, ink_of(caution.level));
        y += static_cast<double>(block.lines.size()) * pen.pitch(Type::Text) + cap * 0.25;
    }
    if (left_out) pen.text(left_out->at, left_out->text, Type::Strong, Ink::Soft, left_out->align);
}

void draw_foot(Pen& pen, const PlanModel& model, const Layout& layout) {
    const auto n = static_cast<int>(model.foot.size()) - 1;
    for (int i = 0; i < n; ++i) {
        const bool left = pen.canvas().glass.hand == Hand::Left;
        draw_target(pen, model.foot[static_cast<std::size_t>(i)], part(layout.foot, left ? n - 1 - i : i, n, plan_gap), Rank::Small);
    }
    // Small: how many spokes are held for stands under the label, in sight of them or not.
    draw_target(pen, model.foot.back(), layout.hold, Rank::Small);
    for (std::size_t i = 0; !layout.three && i < model.tabs.size(); ++i)
        draw_target(pen, model.tabs[i], part(layout.tabs, static_cast<int>(i), static_cast<int>(model.tabs.size()), plan_gap), Rank::Small);
}

void draw_column(Pen& pen, const PlanModel& model, int column, const Box& box) {
    if (model.panel && model.panel->column == column) return draw_plan_panel(pen, *model.panel, box);
    if (column == 0) draw_measured(pen, model, box);
    if (column == 1) draw_depth(pen, model, box);
    if (column == 2) draw_sizes(pen, model, box);
}

}  // namespace

Frame draw(const PlanModel& model, const Canvas& canvas) {
    Pen pen(canvas);
    const Glass& glass = canvas.glass;
    const double g = pen.gap();
    pen.add(picture::Panel{.box = {0, 0, glass.width_mm, glass.height_mm}, .fill = Ink::Ground, .edge = Ink::Ground});
    double top = g;
    if (model.strip) {
        const TableLayout table = table_layout(pen);
        draw_strip(pen, *model.strip, table);
        top = table.strip.bottom() + g * 0.7;
    }
    if (model.banner) {
        const double h = banner_height(pen, *model.banner, glass.width_mm - 2 * g);
        draw_banner(pen, *model.banner, {g, top, glass.width_mm - 2 * g, h});
        top += h + g * 0.7;
    }
    const Layout layout = layout_of(pen, model, {g, top, glass.width_mm - 2 * g, glass.height_mm - top - g * 0.7});
    for (int column = 0; column < 3; ++column) {
        if (layout.three || column == model.column) draw_column(pen, model, column, layout.columns[static_cast<std::size_t>(column)]);
    }
    draw_cautions(pen, model, layout.cautions);
    draw_foot(pen, model, layout);
    return pen.take();
}

}  // namespace screen
