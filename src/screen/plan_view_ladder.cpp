// The second column of the Plan view: the wall round the cut, and the ladder, a row a number of spokes. A ladder that is too long
// shows the rows round the plan, and two targets turn it on.
#include "screen/plan_view_parts.hpp"
#include "screen/target_draw.hpp"

#include <algorithm>
#include <array>

namespace screen {

namespace {

constexpr std::size_t cells = 5;
using Cells = std::array<double, cells>;
using Whole = std::array<bool, cells>;  // which heads are not short
constexpr Whole all_whole{true, true, true, true, true};
using Rung = PlanModel::Rung;

struct Columns {
    Cells widths{};
    Whole whole{};
};

std::array<const std::string*, cells> texts(const Rung& rung) {
    return {&rung.spokes, &rung.travel, &rung.share, &rung.left, &rung.chance};
}

double longest_word(const Pen& pen, const std::string& text) {
    double w = 0;
    std::size_t from = 0;
    while (from < text.size()) {
        const std::size_t to = std::min(text.find(' ', from), text.size());
        w = std::max(w, pen.width(Type::Text, text.substr(from, to - from)));
        from = to + 1;
    }
    return w;
}

/// The widest of two lines of a text.
double in_two_lines(const Pen& pen, const std::string& text) {
    return std::max(longest_word(pen, text), pen.width(Type::Text, text) * 0.52);
}

/// What each column needs for its head, whole or short, and its widest cell; the first also for the sign of a row over the limit.
/// `narrow`: the chance stands in two lines.
Cells needed(const Pen& pen, const PlanModel& model, const Whole& whole, bool narrow) {
    Cells made{};
    const double cap = pen.cap(Type::Text);
    for (std::size_t i = 0; i < cells; ++i) {
        double w = longest_word(pen, whole[i] ? model.heads[i].label : model.heads[i].line) * 1.04 + std::max(2.4, cap * 0.6) + 0.1;
        for (const Rung& rung : model.rungs) {
            const std::string& text = *texts(rung)[i];
            const double sign = i == 0 ? cap * 2 : 0, chance = narrow ? in_two_lines(pen, text) : pen.width(Type::Text, text);
            w = std::max(w, (i == 0           ? pen.width(Type::Value, text)
                             : i + 1 == cells ? chance
                                              : pen.width(Type::Text, text)) +
                                sign + cap * 0.6);
        }
        made[i] = std::max(w, least_side_mm(model.heads[i].weight));
    }
    return made;
}

double sum(const Cells& widths) {
    double all = plan_gap * (cells - 1);
    for (const double w : widths) all += w;
    return all;
}

Cells narrowest(const Pen& pen, const PlanModel& model) { return needed(pen, model, {}, true); }

/// All heads whole; where there is no room for that, as many as have it, from the first on.
Columns columns_in(const Pen& pen, const PlanModel& model, double room) {
    Columns made{.widths = needed(pen, model, all_whole, false), .whole = all_whole};
    if (sum(made.widths) <= room) return made;
    made = {.widths = narrowest(pen, model)};
    for (std::size_t i = 0; i < cells; ++i) {
        Whole more = made.whole;
        more[i] = true;
        const Cells widths = needed(pen, model, more, true);
        if (sum(widths) <= room) made = {.widths = widths, .whole = more};
    }
    return made;
}

/// Left edges and widths in a row.
std::array<Box, cells> across(const Cells& widths, const Box& row) {
    const double more = (row.w - sum(widths)) / cells;
    std::array<Box, cells> made{};
    double x = row.x;
    for (std::size_t i = 0; i < cells; ++i) {
        made[i] = {x, row.y, widths[i] + more, row.h};
        x += widths[i] + more + plan_gap;
    }
    return made;
}

/// How likely, as a bar: over one half it is more than half full.
void draw_bar(Pen& pen, const Rung& rung, const Box& box, Ink ink) {
    pen.add(picture::Panel{.box = box, .radius = box.h / 2, .fill = Ink::Line, .edge = Ink::Line});
    const double w = std::max(box.h, box.w * std::clamp(rung.entry_chance, 0.0, 1.0));
    if (rung.entry_chance >= 0.005) pen.add(picture::Panel{.box = {box.x, box.y, w, box.h}, .radius = box.h / 2, .fill = ink, .edge = ink});
}

void draw_rung(Pen& pen, const Rung& rung, const Box& box, const Cells& widths) {
    const Ink plain = draw_ground(pen, rung.target, box);
    const Ink ink = rung.over && !rung.planned ? Ink::Amber : plain;
    const double cap = pen.cap(Type::Text);
    const auto places = across(widths, box);
    if (rung.over) {
        const Box sign{places[0].x + cap * 0.3, box.centre().y - cap * 0.75, cap * 1.5, cap * 1.5};
        pen.icon(Icon::Triangle, sign, ink, ground_of(rung.target));
    }
    pen.text({places[0].right() - cap * 0.6, box.centre().y - pen.cap(Type::Value) / 2}, rung.spokes, Type::Value, ink, Align::Right);
    for (std::size_t i = 1; i + 1 < cells; ++i)
        pen.text({places[i].centre().x, box.centre().y - cap / 2}, *texts(rung)[i], Type::Text, ink, Align::Centre);
    const Box& last = places[cells - 1];
    const Block chance = pen.block(rung.chance, {Type::Text}, {last.w - cap * 0.4, box.h, 2});
    if (!chance.fits) pen.falls_short(rung.chance);
    const bool barred = box.h - chance.height >= cap * 1.4;
    const double y = box.centre().y - (chance.height - cap * picture::descent + (barred ? cap : 0)) / 2;
    pen.text({last.centre().x, y}, chance, ink, Align::Centre);
    if (barred) draw_bar(pen, rung, {last.x + cap * 0.4, y + chance.height + cap * 0.25, last.w - cap * 0.8, cap * 0.35}, ink);
}

/// So many rungs, the middle one among them with one before it.
std::size_t first_rung(const PlanModel& model, std::size_t shown) {
    const std::size_t before = (shown - 1) / 2, middle = static_cast<std::size_t>(std::max(0, model.middle));
    return std::min(middle > before ? middle - before : 0, model.rungs.size() - shown);
}

struct Shown {
    std::size_t from = 0, count = 0;
};

Shown draw_ladder(Pen& pen, const PlanModel& model, const Box& box) {
    const Columns columns = columns_in(pen, model, box.w);
    const Cells& widths = columns.widths;
    const double cap = pen.cap(Type::Text), side = model.rungs.empty() ? 15 : least_side_mm(model.rungs.front().target.weight);
    const double head_h = std::max(least_side_mm(model.heads.front().weight), cap * 3.9), rung_h = std::max(side, cap * 3.1);
    if (sum(widths) > box.w + 1e-6) pen.falls_short(model.heads.back().label);
    const auto heads = across(widths, {box.x, box.y, box.w, head_h});
    for (std::size_t i = 0; i < cells; ++i) {
        Target head = model.heads[i];
        if (!columns.whole[i]) head.label = head.line;
        head.line.clear();
        draw_target(pen, head, heads[i], Rank::Small);
    }
    const double y = box.y + head_h + plan_gap, room = box.bottom() - y;
    const auto fits = static_cast<std::size_t>(std::max(1.0, (room + plan_gap + 1e-6) / (rung_h + plan_gap)));
    const std::size_t count = std::min(fits, model.rungs.size());
    if (count == 0) return {};
    const std::size_t from = first_rung(model, count);
    const double h = std::min((room - plan_gap * static_cast<double>(count - 1)) / static_cast<double>(count), rung_h * 1.25);
    for (std::size_t i = 0; i < count; ++i)
        draw_rung(pen, model.rungs[from + i], {box.x, y + static_cast<double>(i) * (h + plan_gap), box.w, h}, widths);
    return {from, count};
}

/// Dead at its end of the ladder.
Target turning(Target target, bool at_end) {
    if (at_end) target.why_not = target.line;
    target.line.clear();
    return target;
}

/// What a turning target asks for.
double turn_width(const Pen& pen, const Target& turn) {
    return std::max(least_side_mm(turn.weight), pen.width(Type::Strong, turn.label) + pen.cap(Type::Text) * 1.2);
}

/// No wider than their labels ask for: the question beside them has the rest.
double turns_width(const Pen& pen, const PlanModel& model) {
    return 2 * std::max(turn_width(pen, model.earlier), turn_width(pen, model.later)) + plan_gap;
}

/// Of one width, or by what their labels ask for where that does not do.
void draw_turns(Pen& pen, const PlanModel& model, const Shown& shown, const Box& row) {
    const bool last = shown.from + shown.count >= model.rungs.size();
    const double wanted = turn_width(pen, model.earlier), other = turn_width(pen, model.later), both = row.w - plan_gap;
    const double w = turns_width(pen, model) <= row.w ? both / 2 : both * wanted / (wanted + other);
    draw_target(pen, turning(model.earlier, shown.from == 0), {row.x, row.y, w, row.h}, Rank::Small);
    draw_target(pen, turning(model.later, last), {row.x + w + plan_gap, row.y, both - w, row.h}, Rank::Small);
}

double row_height(const Pen& pen, const Target& target) { return std::max(least_side_mm(target.weight), pen.cap(Type::Text) * 3.9); }

/// The question, and the answer in a line where that has room; the panel has it in full.
void draw_why(Pen& pen, Target why, const Box& box) {
    const Block line = pen.block(why.line, {Type::Text}, {box.w - pen.cap(Type::Text), 1e9, 2});
    const double h = pen.cap(Type::Strong) + pen.cap(Type::Text) * 0.6 + line.height;
    if (!line.fits || h > box.h - pen.cap(Type::Text) * 0.3) why.line.clear();
    draw_figure_target(pen, why, box);
}

/// Where it would be too low to read it is left out, and that is told.
void draw_profile(Pen& pen, const PlanModel& model, const Box& box) {
    if (box.h < picture::least_height(pen.canvas().lettering)) return pen.gives_way(model.profile.title);
    pen.add(picture::draw(model.profile, box, pen.canvas().lettering));
}

}  // namespace

double ladder_width(const Pen& pen, const PlanModel& model) { return sum(needed(pen, model, all_whole, false)); }

void draw_depth(Pen& pen, const PlanModel& model, const Box& whole) {
    pen.panel(whole, Ink::Card);
    const double cap = pen.cap(Type::Text);
    const Box box = inset(whole, pen.canvas().glass.portrait() ? cap * 0.4 : cap * 0.7);
    const double row = row_height(pen, model.why), turns = turns_width(pen, model);
    const double narrow = sum(narrowest(pen, model)), least = std::max(cap * 13, pen.width(Type::Strong, model.why.label) + cap);
    if (box.w > 1.3 * box.h && box.w >= narrow + least) {  // the profile beside the ladder
        const double ladder = std::clamp(ladder_width(pen, model) * 1.1, narrow, box.w - least), left = box.w - ladder - cap * 0.8;
        const Shown shown = draw_ladder(pen, model, {box.right() - ladder, box.y, ladder, box.h});
        draw_turns(pen, model, shown, {box.x, box.bottom() - row, left, row});
        draw_why(pen, model.why, {box.x, box.bottom() - 2 * row - plan_gap, left, row});
        draw_profile(pen, model, {box.x, box.y, left, box.h - 2 * (row + plan_gap)});
        return;
    }
    const double lowest = picture::least_height(pen.canvas().lettering);
    const double profile = std::clamp(box.h * 0.3, lowest, cap * 16), top = profile + cap * 0.4;
    draw_profile(pen, model, {box.x, box.y, box.w, profile});
    const Shown shown = draw_ladder(pen, model, {box.x, box.y + top, box.w, box.h - top - row - plan_gap});
    const double y = box.bottom() - row;
    draw_turns(pen, model, shown, {box.x, y, turns, row});
    draw_why(pen, model.why, {box.x + turns + plan_gap, y, box.w - turns - plan_gap, row});
}

}  // namespace screen
