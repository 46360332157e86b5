// A panel of the Plan view, drawn over its column: what the figure is, how it comes about, its source, how sure it is, and what
// can be done with it. What does not fit comes with the next tap; nothing scrolls.
#include "screen/plan_view_parts.hpp"
#include "screen/target_draw.hpp"

#include <algorithm>
#include <utility>
#include <vector>

namespace screen {

namespace {

using Panel = PlanModel::Panel;

constexpr std::size_t doubts = 6;  // steps by which a reading can be doubted; what follows them stands apart

/// Label and text of a row: side by side where the panel is wide, else one over the other; where the height does not do for
/// that, in one.
struct RowPlace {
    double label_w = 0;  // 0: the label stands over the text
    double text_w = 0;
    bool in_one = false;
};

struct Set {
    Block label{}, text{};
    double height = 0;
};

Set set(const Pen& pen, const Row& row, const RowPlace& place) {
    const double cap = pen.cap(Type::Text);
    if (place.in_one) {
        Set made{.text = pen.block(row.label + ": " + row.value, {Type::Text}, {place.text_w, 1e9, 99})};
        made.height = made.text.height;
        return made;
    }
    Set made{.label = pen.block(row.label, {Type::Text}, {place.label_w > 0 ? place.label_w : place.text_w, 1e9, 99}),
             .text = pen.block(row.value, {Type::Text}, {place.text_w, 1e9, 99})};
    made.height = (place.label_w > 0 ? std::max(made.label.height, made.text.height) : made.label.height + cap * 0.3 + made.text.height);
    return made;
}

std::size_t first_row(const Panel& panel) { return static_cast<std::size_t>(std::max(0, panel.from)); }

RowPlace row_place(const Pen& pen, const Panel& panel, const Box& box) {
    const double cap = pen.cap(Type::Text), label = cap * 13;
    const RowPlace usual = box.w >= cap * 44 ? RowPlace{label, box.w - label - cap} : RowPlace{0, box.w};
    const bool low = first_row(panel) < panel.rows.size() && set(pen, panel.rows[first_row(panel)], usual).height > box.h + 1e-6;
    return low ? RowPlace{0, box.w, true} : usual;
}

/// How many rows from the first shown on go into the box.
std::size_t rows_in(const Pen& pen, const Panel& panel, const Box& box) {
    const RowPlace place = row_place(pen, panel, box);
    double y = box.y;
    std::size_t fit = 0;
    for (std::size_t i = first_row(panel); i < panel.rows.size(); ++i, ++fit) {
        const double h = set(pen, panel.rows[i], place).height;
        if (y + h > box.bottom() + 1e-6) break;
        y += h + pen.cap(Type::Text) * 0.8;
    }
    return fit;
}

void draw_rows(Pen& pen, const Panel& panel, const Box& box, std::size_t count) {
    const double cap = pen.cap(Type::Text);
    const RowPlace place = row_place(pen, panel, box);
    double y = box.y;
    for (std::size_t i = first_row(panel); count > 0; ++i, --count) {
        const Set row = set(pen, panel.rows[i], place);
        const Point text = place.in_one        ? Point{box.x, y}
                           : place.label_w > 0 ? Point{box.x + place.label_w + cap, y}
                                               : Point{box.x, y + row.label.height + cap * 0.3};
        pen.text({box.x, y}, row.label, Ink::Soft);
        pen.text(text, row.text, Ink::Text);
        y += row.height + cap * 0.8;
    }
}

using Targets = std::vector<Target>;

void draw_row_of(Pen& pen, const Targets& targets, const Box& row) {
    const int n = static_cast<int>(targets.size());
    for (int i = 0; i < n; ++i) draw_target(pen, targets[static_cast<std::size_t>(i)], part(row, i, n, plan_gap), Rank::Small);
}

/// How the targets of a panel are broken into rows from the bottom up: the steps of a doubt first where they do not go beside
/// what follows them.
struct Feet {
    std::vector<Targets> rows{};
    double side = 0;
    double height() const {
        const auto n = static_cast<double>(rows.size());
        return n * side + (n - 1) * plan_gap;
    }
};

Feet feet(const Pen& pen, const Panel& panel, const Targets& last, double width) {
    Feet made{.side = std::max(least_side_mm(panel.close.weight), pen.cap(Type::Text) * 3.2)};
    const auto steps = std::min<std::size_t>(doubts, panel.targets.size());
    const auto middle = panel.targets.begin() + static_cast<std::ptrdiff_t>(steps);
    Targets end(middle, panel.targets.end());
    end.insert(end.end(), last.begin(), last.end());
    const auto each = [width](std::size_t n) { return (width - plan_gap * static_cast<double>(n - 1)) / static_cast<double>(n); };
    double least = pen.cap(Type::Text) * 4.9;
    for (const Target& one : end) least = std::max(least, pen.width(Type::Strong, one.label) + pen.cap(Type::Text));
    if (steps > 0 && each(steps + end.size()) >= least) {
        Targets all(panel.targets.begin(), middle);
        all.insert(all.end(), end.begin(), end.end());
        made.rows = {std::move(all)};
        return made;
    }
    const std::size_t a_row = steps > 0 && each(steps) >= made.side ? steps : (steps + 1) / 2;
    for (std::size_t i = 0; i < steps; i += a_row)
        made.rows.emplace_back(panel.targets.begin() + static_cast<std::ptrdiff_t>(i),
                               panel.targets.begin() + static_cast<std::ptrdiff_t>(std::min(steps, i + a_row)));
    constexpr std::size_t kept = 2;  // at the bottom: on and out
    if (end.size() > kept && each(end.size()) < least) {
        made.rows.emplace_back(end.begin(), end.end() - static_cast<std::ptrdiff_t>(kept));
        end.erase(end.begin(), end.end() - static_cast<std::ptrdiff_t>(kept));
    }
    made.rows.push_back(std::move(end));
    return made;
}

/// What the panel is of, and its value: on a line where both go into it.
struct Heading {
    Block title{}, value{};
    bool one_line = false;
    double height = 0;
};

Heading heading(const Pen& pen, const Panel& panel, const Box& box) {
    const double cap = pen.cap(Type::Text);
    Heading made{.title = pen.block(panel.title, {Type::Strong}, {box.w, 1e9, 3})};
    made.height = made.title.height + cap * 0.6;
    if (panel.value.empty()) return made;
    made.one_line = pen.width(Type::Strong, panel.title) + pen.width(Type::Value, panel.value) + 2 * cap <= box.w;
    const std::size_t lines = box.w >= cap * 44 ? 1 : 4;
    made.value = pen.block(panel.value, {Type::Value, Type::Strong, Type::Text}, {box.w, 1e9, lines});
    made.height = made.one_line ? std::max(made.height, pen.cap(Type::Value) + cap * 0.8) : made.height + made.value.height + cap * 0.8;
    return made;
}

void draw_heading(Pen& pen, const Heading& heading, const Box& box) {
    pen.text({box.x, box.y}, heading.title, Ink::Text);
    if (heading.one_line) {
        pen.text({box.right(), box.y}, heading.value, Ink::Accent, Align::Right);
    } else if (!heading.value.lines.empty()) {
        pen.text({box.x, box.y + heading.title.height + pen.cap(Type::Text) * 0.6}, heading.value, Ink::Accent);
    }
}

}  // namespace

void draw_plan_panel(Pen& pen, const Panel& panel, const Box& whole) {
    pen.add(picture::Panel{.box = whole, .radius = 2, .fill = Ink::Card, .edge = Ink::Accent, .edge_width = 0.6});
    const Box box = inset(whole, pen.cap(Type::Text) * 0.8);
    const Heading head = heading(pen, panel, box);
    double y = box.y + head.height;
    const auto above = [&](const Feet& at_foot) { return Box{box.x, y, box.w, box.bottom() - at_foot.height() - plan_gap - y}; };
    const std::size_t before = first_row(panel), left = panel.rows.size() - std::min(before, panel.rows.size());
    Feet at_foot = feet(pen, panel, {panel.close}, box.w);
    std::size_t shown = rows_in(pen, panel, above(at_foot));
    bool bare = false;
    if (before > 0 || shown < left) {
        at_foot = feet(pen, panel, {panel.more, panel.close}, box.w);
        shown = rows_in(pen, panel, above(at_foot));
        // What is doubted stands in the banner as well; what follows from it stands here alone.
        bare = shown == 0;
        if (bare) {
            y = box.y;
            shown = rows_in(pen, panel, above(at_foot));
        }
        Target& more = *(at_foot.rows.back().end() - 2);
        more.act = Show{.page = "plan-more", .argument = std::to_string(shown < left ? before + shown : 0)};
    }
    if (shown == 0 && left > 0) pen.falls_short(panel.rows[before].value);
    if (!bare) draw_heading(pen, head, box);
    draw_rows(pen, panel, above(at_foot), shown);
    double top = box.bottom() - at_foot.height();
    for (const Targets& row : at_foot.rows) {
        draw_row_of(pen, row, {box.x, top, box.w, at_foot.side});
        top += at_foot.side + plan_gap;
    }
}

}  // namespace screen
