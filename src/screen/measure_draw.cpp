// The page on which a screen is measured: the outline of a bank card at the corner away from the hand, words and targets beside it,
// in portrait below, so that no part of the card lies on a target.
#include "screen/measuring.hpp"
#include "screen/table_parts.hpp"
#include "screen/target_draw.hpp"

#include <algorithm>

namespace screen {
namespace {

constexpr double corner_mm = 3.18;  // of ID-1, from memory; nothing is measured by it
constexpr double edge_mm = 0.4;

struct Places {
    Box card{}, rest{};
};

Places places(const Pen& pen, const MeasureModel& model) {
    const Glass& glass = pen.canvas().glass;
    const double g = pen.gap();
    const Box all{g, g, glass.width_mm - 2 * g, glass.height_mm - 2 * g};
    if (glass.portrait()) {
        const double h = std::max(model.card_h, 0.4 * glass.height_mm);
        return {{all.x + (all.w - model.card_w) / 2, all.y, model.card_w, model.card_h}, {all.x, all.y + h + g, all.w, all.h - h - g}};
    }
    const double w = std::max(model.card_w, 0.5 * glass.width_mm);
    const Box card{all.x, all.y, model.card_w, model.card_h}, rest{all.x + w + g, all.y, all.w - w - g, all.h};
    if (glass.hand == Hand::Right) return {card, rest};
    const Box whole{0, 0, glass.width_mm, glass.height_mm};
    return {mirrored(card, whole), mirrored(rest, whole)};
}

/// Words from the top down; what has no room is told.
void draw_words(Pen& pen, const MeasureModel& model, Box box) {
    const auto put = [&](const std::string& text, Type type, Ink ink, std::size_t most) {
        const Block block = pen.block(text, {type}, {box.w, box.h, most});
        if (!block.fits) return pen.falls_short(text);
        pen.text({box.x, box.y}, block, ink);
        const double taken = block.height + pen.cap(Type::Text) * 0.7;
        box.y += taken;
        box.h -= taken;
    };
    const double w = box.w;
    box.w -= draw_muted(pen, model.muted, {box.right(), box.y + pen.cap(Type::Title) / 2});
    put(model.title, Type::Title, Ink::Text, 2);
    box.w = w;
    put(model.figure, Type::Strong, Ink::Text, 2);
    for (const std::string& line : model.lines) put(line, Type::Text, Ink::Soft, 5);
    for (const std::string& note : model.notes) put(note, Type::Text, Ink::Amber, 4);
}

}  // namespace

Frame draw(const MeasureModel& model, const Canvas& canvas) {
    Pen pen(canvas);
    const Glass& glass = canvas.glass;
    pen.add(picture::Panel{.box = {0, 0, glass.width_mm, glass.height_mm}, .fill = Ink::Ground, .edge = Ink::Ground});
    const auto [card, rest] = places(pen, model);
    // The edge lies inside, so that its outer side is the card's.
    pen.add(picture::Panel{
        .box = card, .radius = corner_mm * model.card_w / id1_width_mm, .fill = Ink::Card, .edge = Ink::Text, .edge_width = edge_mm});
    const double g = pen.gap(), h = std::max(least_side_mm(Weight::Theatre), pen.cap(Type::Text) * 4.8);
    const Box foot{rest.x, rest.bottom() - h, rest.w, h}, steps{rest.x, foot.y - g - h, rest.w, h};
    draw_row(pen, model.foot, foot);
    // Less is always on the left: it is a direction, not the hand's side.
    for (int i = 0; i < static_cast<int>(model.steps.size()); ++i)
        draw_target(pen, model.steps[static_cast<std::size_t>(i)], part(steps, i, static_cast<int>(model.steps.size()), g), Rank::Small);
    Box words = rest;
    words.h = steps.y - g - rest.y;
    if (model.banner) {
        const double banner_h = banner_height(pen, *model.banner, words.w);
        draw_banner(pen, *model.banner, {words.x, words.bottom() - banner_h, words.w, banner_h});
        words.h -= banner_h + g;
    }
    draw_words(pen, model, words);
    return pen.take();
}

}  // namespace screen
