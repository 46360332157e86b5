// The Desk view in millimetres: the strip on top, the present step and the times on the left, the actions with their keys on the
// right, what is being typed over them. Nothing scrolls; what has no room is told.
#include "screen/page_parts.hpp"
#include "screen/table_parts.hpp"
#include "screen/target_draw.hpp"

#include <algorithm>
#include <tuple>

namespace screen {

namespace {

/// Of the width of an upright glass, the step and what stands beside it.
constexpr double facts_share = 0.48;
constexpr std::size_t lines_a_row = 2;

/// A label and its value side by side.
struct RowBlocks {
    Block label{}, value{};
    double height = 0;
};

double sign_width(const Pen& pen, const Row& row) { return row.watch ? pen.cap(Type::Text) * 1.9 : 0; }

RowBlocks blocks(const Pen& pen, const Row& row, double w, double h, std::size_t most_lines) {
    RowBlocks made{.value = pen.block(row.value, {Type::Strong}, {w * 0.55 - sign_width(pen, row), h, most_lines})};
    made.label = pen.block(row.label, {Type::Text}, {w - made.value.width - sign_width(pen, row) - pen.cap(Type::Text), h, 2});
    made.height = std::max(made.label.height, made.value.height) + pen.cap(Type::Text) * 0.7;
    return made;
}

/// Draws down a column while there is room, and says whether there was.
class Column {
public:
    Column(Pen& pen, const Box& box) : pen_(pen), box_(box), y_(box.y) {}

    bool text(const std::string& words, std::initializer_list<Type> roles, Ink ink, std::size_t most_lines, bool typed = false) {
        if (words.empty()) return true;
        const Block block = pen_.block(words, roles, {box_.w, box_.bottom() - y_, most_lines, typed});
        if (!block.fits) return false;
        pen_.text({box_.x, y_}, block, ink);
        y_ += block.height + pen_.cap(Type::Text) * 0.8;
        return true;
    }

    /// A label and its value side by side, the value on the right.
    bool row(const Row& row, std::size_t most_lines = lines_a_row) {
        const auto [label, value, height] = blocks(pen_, row, box_.w, box_.bottom() - y_, most_lines);
        if (!value.fits || !label.fits) return false;
        pen_.text({box_.x, y_}, label, Ink::Soft);
        pen_.text({box_.right(), y_}, value, row.watch ? Ink::Amber : Ink::Text, Align::Right);
        const double size = pen_.cap(Type::Text) * 1.3;
        if (row.watch)
            pen_.icon(Icon::Triangle, {box_.right() - value.width - sign_width(pen_, row), y_ - size * 0.1, size, size}, Ink::Amber,
                      Ink::Ground);
        y_ += height;
        return true;
    }

    void gap() { y_ += pen_.cap(Type::Text); }
    double y() const { return y_; }

private:
    Pen& pen_;
    Box box_;
    double y_ = 0;
};

/// May she leave the room: amber with its triangle when not.
void draw_nurse(Pen& pen, const DeskModel& model, const Box& box) {
    if (model.nurse.empty()) return;
    const Ink ink = model.stay ? Ink::Amber : Ink::Text;
    const double size = model.stay ? pen.cap(Type::Strong) * 1.5 : 0, indent = model.stay ? size * 1.4 : 0;
    pen.add(picture::Panel{.box = box,
                           .radius = 2,
                           .fill = model.stay ? Ink::AmberFill : Ink::Raised,
                           .edge = model.stay ? Ink::Amber : Ink::Line,
                           .edge_width = 0.5});
    const double inner = pen.cap(Type::Text), top = box.centre().y - pen.cap(Type::Strong) / 2;
    if (model.stay) pen.icon(Icon::Triangle, {box.x + inner, box.centre().y - size / 2, size, size}, ink, Ink::AmberFill);
    pen.text({box.x + inner + indent, top}, model.nurse, Type::Strong, ink);
}

void draw_step(Pen& pen, const DeskModel& model, const Box& box) {
    const double pill = model.nurse.empty() ? 0 : pen.cap(Type::Strong) * 2.6;
    draw_nurse(pen, model, {box.x, box.y, box.w, pill});
    Column column(pen, {box.x, box.y + pill + pen.cap(Type::Text), box.w, box.h - pill - pen.cap(Type::Text)});
    if (!column.text(model.title, {Type::Title, Type::Strong}, Ink::Text, 2)) pen.falls_short(model.title);
    for (const Row& row : model.step) {
        if (!column.text(row.label, {Type::Text}, Ink::Soft, 1) || !column.text(row.value, {Type::Strong, Type::Text}, Ink::Text, 4))
            pen.falls_short(row.label);
        column.gap();
    }
}

/// Clocks, pauses and counts are always there; then what the past lets expect, each row that fits, and of the record the newest.
void draw_facts(Pen& pen, const DeskModel& model, const Box& box) {
    Column column(pen, box);
    for (const auto* rows : {&model.times, &model.counts}) {
        for (const Row& row : *rows) {
            if (!column.row(row)) pen.falls_short(row.label);
        }
        column.gap();
    }
    constexpr std::size_t lines_expected = 3;
    for (const Row& row : model.expected) column.row(row, lines_expected);
    column.gap();
    constexpr std::size_t lines_noted = 8;
    for (const Row& row : model.record) {
        if (!column.text(row.label + "  " + row.value, {Type::Text}, Ink::Soft, lines_noted, true)) return;
    }
}

struct Paint {
    Ink fill{}, edge{}, label{};
};

Paint paint(const Target& target) {
    if (!target.why_not.empty()) return {Ink::Ground, Ink::Line, Ink::Soft};
    switch (target.look) {
        case Look::Filled:
            return {Ink::AccentFill, Ink::Accent, Ink::OnAccent};
        case Look::Plain:
            return {Ink::Raised, Ink::Line, Ink::Text};
        case Look::Hollow:
        case Look::Watch:
            return {Ink::AmberFill, Ink::Amber, Ink::Amber};
        case Look::Stop:
            return {Ink::RedFill, Ink::Red, Ink::Red};
    }
    return {};
}

bool warns(const Target& target) { return target.why_not.empty() && (target.look == Look::Watch || target.look == Look::Stop); }
const std::string& beside(const Target& target) { return target.why_not.empty() ? target.line : target.why_not; }
double air(const Pen& pen) { return pen.cap(Type::Strong) * 0.7; }
double key_width(const Pen& pen, const Target& target) {
    const double cap = pen.cap(Type::Strong);
    return std::max(cap * 2.4, pen.width(Type::Strong, target.key) + cap * 1.2);
}

/// How wide a label may be in an action of that width.
double label_width(const Pen& pen, const Target& target, double w) {
    const double line_w = beside(target).empty() ? 0 : pen.width(Type::Text, beside(target)) + air(pen);
    const double icon_w = warns(target) ? pen.cap(Type::Strong) * 2 : 0;
    return w - 3 * air(pen) - key_width(pen, target) - icon_w - line_w;
}

/// Two lines go into a loose action and stay clear of its edge.
Block label_block(const Pen& pen, const Target& target, Type type, double w, double h) {
    constexpr double clear_mm = 0.7;
    return pen.block(target.label, {type}, {label_width(pen, target, w), h - 2 * clear_mm, 2});
}

bool all_fit(const Pen& pen, const std::vector<Target>& actions, Type type, double w, double h) {
    return std::all_of(actions.begin(), actions.end(), [&](const Target& one) { return label_block(pen, one, type, w, h).fits; });
}

/// The key in a box of its own, then what it does, then what stands beside it.
void draw_action(Pen& pen, const Target& target, const Box& box, Type type) {
    const Paint colours = paint(target);
    const bool dead = !target.why_not.empty(), flash = !dead && pen.canvas().finger.flash == target.id;
    pen.add(picture::Panel{.box = box,
                           .radius = 1.5,
                           .fill = colours.fill,
                           .edge = flash ? Ink::Text : colours.edge,
                           .edge_width = flash  ? 1.2
                                         : dead ? 0.2
                                                : 0.4});
    pen.touch(target, box);
    const double cap = pen.cap(Type::Strong), middle = box.centre().y;
    const Box key{box.x + air(pen), middle - cap * 1.05, key_width(pen, target), cap * 2.1};
    pen.add(picture::Panel{.box = key, .radius = 1, .fill = Ink::Ground, .edge = dead ? Ink::Line : Ink::Mark, .edge_width = 0.4});
    pen.text({key.centre().x, middle - cap / 2}, target.key, Type::Strong, dead ? Ink::Soft : Ink::Text, Align::Centre);
    if (pen.canvas().finger.holding == target.id)
        pen.add(picture::Panel{.box = {box.x, box.bottom() - 1.2, box.w * std::clamp(pen.canvas().finger.held, 0.0, 1.0), 1.2},
                               .fill = Ink::Text,
                               .edge = Ink::Text});
    double x = key.right() + air(pen);
    if (warns(target)) {
        pen.icon(target.look == Look::Stop ? Icon::Octagon : Icon::Triangle, {x, middle - cap * 0.75, cap * 1.5, cap * 1.5}, colours.label,
                 colours.fill);
        x += cap * 2;
    }
    const Block label = label_block(pen, target, type, box.w, box.h);
    if (!label.fits) pen.falls_short(target.label);
    pen.text({x, middle - (label.height - pen.cap(label.type) * picture::descent) / 2}, label, colours.label);
    pen.text({box.right() - air(pen), middle - pen.cap(Type::Text) / 2}, beside(target), Type::Text,
             colours.label == Ink::Text ? Ink::Soft : colours.label, Align::Right);
}

/// What clocks, pauses and counts need.
double times_height(const Pen& pen, const DeskModel& model, double w) {
    double h = 2 * pen.cap(Type::Text);
    for (const auto* rows : {&model.times, &model.counts})
        for (const Row& row : *rows) h += blocks(pen, row, w, 1e9, lines_a_row).height;
    return h;
}

/// How the actions stand: in one column, closer together where they must, closest where each says all in one line, else in two.
struct Grid {
    double h = 0, gap = 0;
    std::size_t columns = 1;
};

double loose_height(const Pen& pen) { return std::max(6.0, pen.cap(Type::Strong) * 3.4); }
double close_height(const Pen& pen) { return std::max(6.0, pen.cap(Type::Strong) * 2.6); }
double closest_height(const Pen& pen) { return std::max(6.0, pen.cap(Type::Strong) * 2.25); }
double gap_between(const Pen& pen) { return std::max(1.2, pen.cap(Type::Text) * 0.4); }

/// Whether each action says all in one line.
bool in_one_line(const Pen& pen, const std::vector<Target>& actions, double w) {
    return std::all_of(actions.begin(), actions.end(),
                       [&](const Target& one) { return pen.width(Type::Strong, one.label) <= label_width(pen, one, w); });
}

Grid grid(const Pen& pen, const std::vector<Target>& actions, double w, double room) {
    const std::size_t n = actions.size();
    const double gap = gap_between(pen);
    const auto rows = [&](double h) { return static_cast<std::size_t>(std::max(0.0, (room + gap) / (h + gap))); };
    const double loose = loose_height(pen), close = close_height(pen);
    if (n <= rows(loose)) return {loose, gap, 1};
    if (n <= rows(close)) return {close, gap, 1};
    const double closest = closest_height(pen);
    return n <= rows(closest) && in_one_line(pen, actions, w) ? Grid{closest, gap, 1} : Grid{loose, gap, 2};
}

/// The head over the actions: a title, what is to be known and what is typed; returns what is left below. `action` is how high one is.
Box draw_head(Pen& pen, const DeskModel& model, const Box& box, double action) {
    Column head(pen, box);
    head.text(model.heading, {Type::Title}, Ink::Text, 2);
    if (!head.text(model.line, {Type::Text}, Ink::Soft, 6)) pen.falls_short(model.line);
    double top = head.y() + pen.cap(Type::Text) * 0.3;
    if (model.field) {
        const double actions = static_cast<double>(model.actions.size()) * (action + gap_between(pen));
        const Box field{box.x, top, box.w, typed_height(pen, *model.field, box.w, box.bottom() - top - pen.gap() - actions)};
        draw_typed(pen, *model.field, field);
        top = field.bottom() + pen.gap();
    }
    return {box.x, top, box.w, box.bottom() - top};
}

/// How high the step and the times of an upright glass may be: what head and loose actions leave of it, or closer ones as far as times
/// and counts need it, within bounds.
double upper_height(const Pen& pen, const DeskModel& model, double w, double h) {
    double head = pen.cap(Type::Text) * 2;
    for (const auto& [words, role, lines] : {std::tuple{model.heading, Type::Title, 2U}, std::tuple{model.line, Type::Text, 6U}})
        if (!words.empty()) head += pen.block(words, {role}, {w, h, lines}).height + pen.cap(Type::Text) * 0.8;
    if (model.field) head += typed_height(pen, *model.field, w, h) + pen.gap();
    const auto left = [&](double action) { return h - head - static_cast<double>(model.actions.size()) * (action + gap_between(pen)); };
    constexpr double least = 0.32, most = 0.6;
    const double tightest = left(in_one_line(pen, model.actions, w) ? closest_height(pen) : close_height(pen));
    const double needed = times_height(pen, model, w * facts_share);
    return std::clamp(std::max(left(loose_height(pen)), std::min(tightest, needed)), h * least, h * most);
}

void draw_actions(Pen& pen, const std::vector<Target>& actions, const Grid& grid, const Box& box) {
    const std::size_t a_column = (actions.size() + grid.columns - 1) / grid.columns;
    const double w = (box.w - grid.gap * static_cast<double>(grid.columns - 1)) / static_cast<double>(grid.columns);
    const Type type = all_fit(pen, actions, Type::Strong, w, grid.h) ? Type::Strong : Type::Text;  // one for all
    for (std::size_t i = 0; i < actions.size(); ++i) {
        const std::size_t column = i / a_column;
        const auto down = static_cast<double>(i % a_column), across = static_cast<double>(column);
        const Box at{box.x + across * (w + grid.gap), box.y + down * (grid.h + grid.gap), w, grid.h};
        if (at.bottom() > box.bottom() + 1e-6) {
            pen.falls_short(actions[i].label);
        } else {
            draw_action(pen, actions[i], at, type);
        }
    }
}

}  // namespace

Frame draw(const DeskModel& model, const Canvas& canvas) {
    Pen pen(canvas);
    const Glass& glass = canvas.glass;
    const double g = pen.gap();
    pen.add(picture::Panel{.box = {0, 0, glass.width_mm, glass.height_mm}, .fill = Ink::Ground, .edge = Ink::Ground});
    const TableLayout layout = table_layout(pen);
    draw_strip(pen, model.strip, layout);
    Box left{g, layout.strip.bottom() + g, glass.width_mm - 2 * g, glass.height_mm - layout.strip.bottom() - 2 * g};
    const auto take = [&left, g](double h) {
        left.h -= h + g;
        return Box{left.x, left.bottom() + g, left.w, h};
    };
    if (model.banner) draw_banner(pen, *model.banner, take(banner_height(pen, *model.banner, left.w)));
    if (glass.portrait()) {
        const double h = upper_height(pen, model, left.w, left.h);
        const double w = left.w * facts_share;
        draw_step(pen, model, {left.x, left.y, w, h});
        draw_facts(pen, model, {left.right() - w, left.y, w, h});
        const Box below = draw_head(pen, model, {left.x, left.y + h + g, left.w, left.h - h - g}, loose_height(pen));
        draw_actions(pen, model.actions, grid(pen, model.actions, below.w, below.h), below);
        return pen.take();
    }
    const double w = (left.w - 2 * g) / 100;
    draw_step(pen, model, {left.x, left.y, w * 28, left.h});
    Box right{left.x + w * 57 + 2 * g, left.y, w * 43, left.h};
    const Grid beside = grid(pen, model.actions, right.w, left.h - pen.cap(Type::Title) * 6);
    // A list that is long, or has long labels, takes the place of the times: it is turned away from again in a moment.
    const bool wide = beside.columns > 1 || !all_fit(pen, model.actions, Type::Text, right.w, beside.h);
    if (!wide) draw_facts(pen, model, {left.x + w * 28 + g, left.y, w * 29, left.h});
    if (wide) right = {left.x + w * 28 + g, left.y, left.w - w * 28 - g, left.h};
    draw_actions(pen, model.actions, beside, draw_head(pen, model, right, beside.h));
    return pen.take();
}

}  // namespace screen
