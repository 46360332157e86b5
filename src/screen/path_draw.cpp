#include "screen/table_parts.hpp"

#include <algorithm>

namespace screen {

namespace {

void state_icon(Pen& pen, Line::Is is, const Box& box) {
    switch (is) {
        case Line::Is::Done:
            pen.icon(Icon::Tick, box, Ink::Soft, Ink::Card);
            return;
        case Line::Is::Skipped:
            pen.add(picture::Line{.a = {box.x + box.w * 0.1, box.centre().y},
                                  .b = {box.right() - box.w * 0.1, box.centre().y},
                                  .width = 0.6,
                                  .ink = Ink::Soft});
            return;
        case Line::Is::Now:
            pen.icon(Icon::Dot, box, Ink::Accent, Ink::Card);
            return;
        case Line::Is::Later:
            pen.icon(Icon::Circle, box, Ink::Mark, Ink::Card);
            return;
    }
}

Type type_of(const Line& line) { return line.is == Line::Is::Now ? Type::Strong : Type::Text; }
Ink ink_of(const Line& line) { return line.is == Line::Is::Now ? Ink::Text : Ink::Soft; }

std::size_t now_of(const std::vector<Line>& lines) {
    const auto now = std::find_if(lines.begin(), lines.end(), [](const Line& line) { return line.is == Line::Is::Now; });
    return static_cast<std::size_t>(now - lines.begin());
}

/// The step before, the present one and the next two.
std::vector<Line> near_now(const std::vector<Line>& lines) {
    const std::size_t now = std::min(now_of(lines), lines.empty() ? 0 : lines.size() - 1);
    const std::size_t from = now > 0 ? now - 1 : 0, to = std::min(lines.size(), now + 3);
    return {lines.begin() + static_cast<std::ptrdiff_t>(from), lines.begin() + static_cast<std::ptrdiff_t>(to)};
}

/// So many steps round the present one, most of them still to come.
std::vector<Line> window(const std::vector<Line>& lines, std::size_t n) {
    if (n >= lines.size()) return lines;
    const std::size_t now = std::min(now_of(lines), lines.size() - 1), before = std::min(now, std::max<std::size_t>(1, n / 3));
    const std::size_t from = std::min(now - before, lines.size() - n);
    return {lines.begin() + static_cast<std::ptrdiff_t>(from), lines.begin() + static_cast<std::ptrdiff_t>(from + n)};
}

/// Where the steps that are shown are not all of their phase.
struct LeftOut {
    bool before = false, after = false;
};

LeftOut left_out(const std::vector<Line>& shown, const std::vector<Line>& all) {
    if (shown.empty() || shown.size() >= all.size()) return {};
    return {shown.front().text != all.front().text, shown.back().text != all.back().text};
}

/// The column, its distances stretched as far as the height allows.
class Column {
public:
    Column(Pen& pen, const Box& box) : pen_(pen), box_(box), icon_(pen.cap(Type::Text) * 1.05), pad_(pen.cap(Type::Text)) {}

    double height(const std::vector<Line>& path, double stretch) const {
        double h = 2 * pad_;
        for (const auto& line : path) h += line.inner.empty() ? row(line, false, stretch) : open_height(line, stretch);
        return h;
    }

    void draw(const std::vector<Line>& path, double stretch, LeftOut left_out) {
        double y = box_.y + pad_;
        for (const auto& line : path) {
            if (line.inner.empty()) {
                draw_row(line, y, box_.x + pad_, false, stretch);
                y += row(line, false, stretch);
            } else {
                draw_open(line, y, stretch, left_out);
                y += open_height(line, stretch);
            }
        }
    }

private:
    double text_width(bool inner) const { return box_.w - 2 * pad_ - icon_ * 1.55 - (inner ? pad_ * 0.6 : 0); }
    Block block(const Line& line, bool inner) const { return pen_.block(line.text, {type_of(line)}, {text_width(inner), 1e9, 2}); }
    double row(const Line& line, bool inner, double stretch) const {
        return block(line, inner).height + pen_.cap(Type::Text) * (inner ? 0.55 : 0.9) * stretch;
    }
    double open_height(const Line& line, double stretch) const {
        double h = head_height(stretch) + pad_ * 0.8;
        for (const auto& step : line.inner) h += row(step, true, stretch);
        return h;
    }
    double head_height(double stretch) const { return pen_.cap(Type::Strong) * (1.9 + 0.5 * stretch); }

    void draw_row(const Line& line, double y, double x, bool inner, double stretch) {
        const Block made = block(line, inner);
        const double top = y + pen_.cap(Type::Text) * (inner ? 0.275 : 0.45) * stretch;
        state_icon(pen_, line.is, {x, top + pen_.cap(Type::Text) / 2 - icon_ / 2, icon_, icon_});
        pen_.text({x + icon_ * 1.55, top}, made, ink_of(line));
    }

    /// Three dots: steps stand there that have no room.
    void draw_dots(double x, double y) {
        for (int i = 0; i < 3; ++i)
            pen_.add(picture::Disc{.centre = {x + icon_ * (0.1 + 0.4 * i), y}, .radius = pad_ * 0.1, .ink = Ink::Soft});
    }

    void draw_open(const Line& line, double y, double stretch, LeftOut left_out) {
        const double edge = pad_ * 0.5;
        const Box panel{box_.x + edge, y, box_.w - 2 * edge, open_height(line, stretch) - pad_ * 0.3};
        pen_.panel(panel, Ink::Raised);
        pen_.add(picture::Panel{.box = {panel.x, panel.y, pad_ * 0.28, panel.h}, .radius = 0.5, .fill = Ink::Accent, .edge = Ink::Accent});
        pen_.text({panel.x + pad_, y + pad_ * 0.75}, line.text, Type::Strong, Ink::Text);
        double at = y + head_height(stretch);
        for (const auto& step : line.inner) {
            draw_row(step, at, panel.x + pad_, true, stretch);
            at += row(step, true, stretch);
        }
        if (left_out.before) {  // behind the title: under it they would touch the first step
            const double after = panel.x + 1.5 * pad_ + pen_.width(Type::Strong, line.text);
            draw_dots(std::min(after, panel.right() - icon_ * 1.2), y + pad_ * 0.7 + pen_.cap(Type::Strong));
        }
        if (left_out.after) draw_dots(panel.x + pad_, panel.bottom() - pad_ * 0.3);
    }

    Pen& pen_;
    Box box_;
    double icon_, pad_;
};

void draw_column(Pen& pen, const std::vector<Line>& whole, const Box& box) {
    pen.panel(box, Ink::Card);
    Column column(pen, box);
    std::vector<Line> path = whole;
    const auto fits = [&](double stretch) { return column.height(path, stretch) <= box.h; };
    const std::size_t phase = now_of(whole), steps = phase < whole.size() ? whole[phase].inner.size() : 0;
    // As many steps as go in, never fewer than the one before, the present one and the next two.
    for (std::size_t n = steps; n >= 4 && !fits(0.6); --n) path[phase].inner = window(whole[phase].inner, n);
    if (!fits(0.6)) path = near_now(path);
    double stretch = 2.2;
    while (stretch > 0.4 && !fits(stretch)) stretch -= 0.1;
    const bool open = phase < whole.size() && path.size() == whole.size();
    column.draw(path, stretch, open ? left_out(path[phase].inner, whole[phase].inner) : LeftOut{});
}

// ---- the path as a strip: as many steps round the present one as go into the row ----

double item_width(const Pen& pen, const Line& line) { return pen.cap(Type::Text) * 1.6 + pen.width(type_of(line), line.text); }

double flow_width(const Pen& pen, const std::vector<Line>& lines) {
    double w = 0;
    for (const auto& line : lines) w += item_width(pen, line);
    return w + pen.cap(Type::Text) * 1.3 * (static_cast<double>(lines.size()) - 1);
}

void draw_flow(Pen& pen, const std::vector<Line>& lines, const Box& row) {
    const double cap = pen.cap(Type::Text);
    double x = row.x;
    for (const auto& line : lines) {
        state_icon(pen, line.is, {x, row.y - cap * 0.02, cap * 1.05, cap * 1.05});
        pen.text({x + cap * 1.6, row.y}, line.text, type_of(line), ink_of(line));
        x += item_width(pen, line) + cap * 1.3;
    }
}

void draw_strip_path(Pen& pen, const std::vector<Line>& path, const TableLayout& layout) {
    const auto phase = now_of(path);
    if (phase == path.size()) return;
    const auto& steps = path[phase].inner.empty() ? path : path[phase].inner;
    pen.panel(layout.path, Ink::Card);
    const double cap = pen.cap(Type::Text);
    const Box box{layout.path.x + cap, layout.path.centre().y - cap / 2, layout.path.w - 2 * cap, cap};
    const std::vector<Line> near = near_now(steps);
    const std::size_t before = near.front().is == Line::Is::Now ? 0 : 1;
    // Left out first: the step after the next, then the one before, then the next.
    const auto from = [&near](std::size_t begin, std::size_t end) {
        return std::vector<Line>(near.begin() + static_cast<std::ptrdiff_t>(begin),
                                 near.begin() + static_cast<std::ptrdiff_t>(std::min(end, near.size())));
    };
    for (const auto& lines : {near, from(0, before + 2), from(before, before + 2), from(before, before + 1)}) {
        if (flow_width(pen, lines) > box.w && lines.size() > 1) continue;
        return draw_flow(pen, lines, box);
    }
}

}  // namespace

void draw_path(Pen& pen, const std::vector<Line>& path, const TableLayout& layout) {
    if (path.empty()) return;
    if (layout.path_column) {
        draw_column(pen, path, layout.path);
    } else {
        draw_strip_path(pen, path, layout);
    }
}

}  // namespace screen
