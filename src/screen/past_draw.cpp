// The pages over past cases: tabs on top, title and lines, rows on a card with their marks over one axis, targets at the foot. The
// rows that have room are drawn; `more` turns to the others.
#include "screen/page_parts.hpp"
#include "screen/table_parts.hpp"
#include "screen/target_draw.hpp"

#include <algorithm>

namespace screen {
namespace {

using Row = PastModel::Row;
using Is = Row::Is;

bool marked(const Row& row) { return !std::holds_alternative<std::monostate>(row.mark); }

/// Label, mark and value side by side; on a narrow page the mark under both.
struct Columns {
    double label = 0, mark = 0, value = 0, gap = 0;
    bool stacked = false;
    double width() const { return stacked ? mark : label + value + gap + (mark > 0 ? mark + gap : 0); }
};

Columns columns(const Pen& pen, const PastModel& model, double width) {
    const double cap = pen.cap(Type::Text);
    Columns made{.gap = cap * 1.2};
    bool any = false;
    for (const Row& row : model.rows) {
        if (row.is != Is::Figure) continue;
        any = any || marked(row);
        made.label = std::max(made.label, pen.width(Type::Text, row.label));
        made.value = std::max(made.value, pen.width(Type::Text, row.value));
    }
    made.stacked = width < cap * 46;
    if (made.stacked) {
        // Figures in one line, as far as the labels keep enough; short labels leave them more.
        constexpr double half = 0.5, most = 0.6;
        made.mark = width;
        made.value = std::max(width - std::min(made.label, width * half) - made.gap, std::min(made.value, width * most));
        made.label = width - made.value - made.gap;
        return made;
    }
    made.value = std::min(made.value, width * 0.46);
    made.label = std::min(made.label, std::max(width * 0.3, width * 0.55 - made.value));  // short values leave room for long labels
    if (!any) made.value = width - made.label - made.gap;
    made.mark = any ? width - made.label - made.value - 2 * made.gap : 0;
    return made;
}

/// A row with its words broken into lines.
struct Set {
    Block label{}, value{};
    double words = 0, height = 0;  // of the words; with the mark under them and the air below
};

Set set(const Pen& pen, const Row& row, const Columns& in) {
    constexpr std::size_t most = 12;
    const double cap = pen.cap(Type::Text);
    Set made{};
    switch (row.is) {
        case Is::Heading:
            made.label = pen.block(row.label, {Type::Strong}, {in.width(), 1e9, most});
            made.words = made.label.height + cap * 0.4;
            break;
        case Is::Words:
            made.label = pen.block(row.label, {Type::Text}, {in.width(), 1e9, most});
            made.words = made.label.height;
            break;
        case Is::Caution:
            made.label = pen.block(row.label, {Type::Text}, {in.width() - cap * 2, 1e9, most});
            made.words = made.label.height;
            break;
        case Is::Figure: {
            const double beside = in.stacked || marked(row) || in.mark == 0 ? in.value : in.value + in.mark + in.gap;
            made.label = pen.block(row.label, {Type::Text}, {in.label, 1e9, most});
            made.value = pen.block(row.value, {Type::Text}, {beside, 1e9, most});
            made.words = std::max(made.label.height, made.value.height);
            break;
        }
    }
    made.height = made.words + cap * (row.is == Is::Figure && !marked(row) ? 0.45 : 0.75);
    if (in.stacked && marked(row)) made.height += cap * 1.6;
    return made;
}

double axis_height(const Pen& pen) { return pen.cap(Type::Text) * 2; }

/// The heading of a group that goes on at the first row shown: said again over it.
const Row* heading_again(const PastModel& model) {
    if (model.from >= model.rows.size() || model.rows[model.from].is != Is::Figure) return nullptr;
    for (std::size_t n = model.from; n > 0; --n)
        if (model.rows[n - 1].is == Is::Heading) return &model.rows[n - 1];
    return nullptr;
}

/// How many rows from the first shown on have room; a heading is not left alone at the end.
std::size_t rows_in(const Pen& pen, const PastModel& model, const Columns& in, double height) {
    double left = height + pen.cap(Type::Text) * 0.75;  // no air under the last
    if (const Row* again = heading_again(model)) left -= set(pen, *again, in).height;
    bool any = false;
    std::size_t n = std::min(model.from, model.rows.size());
    for (; n < model.rows.size(); ++n) {
        const Row& row = model.rows[n];
        if (marked(row) && !any) left -= axis_height(pen);
        any = any || marked(row);
        left -= set(pen, row, in).height;
        if (left < 0) break;
    }
    while (n > model.from && n < model.rows.size() && model.rows[n - 1].is == Is::Heading) --n;
    return n - std::min(model.from, n);
}

void draw_words(Pen& pen, const Row& row, const Set& set, Point at) {
    const double cap = pen.cap(Type::Text);
    if (row.is == Is::Heading) return pen.text({at.x, at.y + cap * 0.4}, set.label, Ink::Text);
    if (row.is == Is::Words) return pen.text(at, set.label, Ink::Soft);
    pen.icon(Icon::Triangle, {at.x, at.y - cap * 0.15, cap * 1.3, cap * 1.3}, Ink::Amber, Ink::Card);
    pen.text({at.x + cap * 2, at.y}, set.label, Ink::Text);
}

/// Returns where the mark stands; its lines reach over the whole row, so that they join.
Box draw_figure(Pen& pen, const Row& row, const Set& set, const Columns& in, const Box& box) {
    const double cap = pen.cap(Type::Text);
    const auto middle = [&](const Block& block) { return box.y + (set.words - block.height) / 2; };
    pen.text({box.x, in.stacked ? box.y : middle(set.label)}, set.label, Ink::Soft);
    const bool after_mark = !in.stacked && marked(row);
    const double value_x = box.x + in.label + in.gap + (after_mark ? in.mark + in.gap : 0);
    pen.text({value_x, in.stacked ? box.y : middle(set.value)}, set.value, Ink::Text);
    if (in.stacked) {
        const double ends = cap * 2;  // the labels at the ends of the axis reach out by half their width
        return {box.x + ends, box.y + set.words + cap * 0.2, in.mark - 2 * ends, cap * 1.6};
    }
    const double sunk = cap * picture::descent / 2;  // the middle of the letters, not of their line
    return {box.x + in.label + in.gap, box.y - cap * 0.375 - sunk, in.mark, set.height};
}

void draw_rows(Pen& pen, const PastModel& model, const Columns& in, const Box& box) {
    const std::size_t from = model.from, to = from + rows_in(pen, model, in, box.h);
    std::size_t last = to;  // of those with a mark: the axis stands under it
    for (std::size_t i = from; i < to; ++i) last = marked(model.rows[i]) ? i : last;
    double y = box.y;
    if (const Row* again = heading_again(model); again != nullptr && from < to) {
        draw_words(pen, *again, set(pen, *again, in), {box.x, y});
        y += set(pen, *again, in).height;
    }
    for (std::size_t i = from; i < to; ++i) {
        const Row& row = model.rows[i];
        const Set made = set(pen, row, in);
        if (row.is == Is::Figure) {
            const Box mark = draw_figure(pen, row, made, in, {box.x, y, box.w, made.height});
            pen.add(picture::draw(row.mark, model.axis, mark, pen.canvas().lettering));
            if (i == last) pen.add(picture::labels(model.axis, {mark.x, mark.bottom(), mark.w, axis_height(pen)}, pen.canvas().lettering));
        } else {
            draw_words(pen, row, made, {box.x, y});
        }
        y += made.height + (i == last ? axis_height(pen) : 0);
    }
}

// ---- choices ----

/// Cells of one size from the upper left, each with room for a label and a line.
struct Cells {
    std::size_t across = 1, down = 1;
    double w = 0, h = 0;
    std::size_t all() const { return across * down; }
};

/// As wide as the widest words; higher where even the whole width is too narrow for them.
Cells cells(const Pen& pen, const std::vector<Target>& choices, const Box& box) {
    const double cap = pen.cap(Type::Text), g = pen.gap();
    double least_w = cap * 18;
    for (const Target& one : choices)
        least_w = std::max(least_w, std::max(pen.width(Type::Strong, one.label), pen.width(Type::Text, one.line)) + cap * 1.2);
    const double least_h = std::max(least_side_mm(Weight::Elsewhere), cap * (least_w > box.w ? 8 : 4.8));
    const auto fit = [g](double room, double side) { return static_cast<std::size_t>(std::max(1.0, (room + g) / (side + g))); };
    Cells made{.across = fit(box.w, least_w), .down = fit(box.h, least_h), .h = least_h};
    made.w = (box.w - g * static_cast<double>(made.across - 1)) / static_cast<double>(made.across);
    return made;
}

void draw_choices(Pen& pen, const PastModel& model, const Cells& in, const Box& box) {
    for (std::size_t i = 0; i < std::min(model.choices.size(), in.all()); ++i) {
        const std::size_t across = i % in.across, down = i / in.across;
        const auto column = static_cast<double>(across), row = static_cast<double>(down);
        draw_target(pen, model.choices[i], {box.x + column * (in.w + pen.gap()), box.y + row * (in.h + pen.gap()), in.w, in.h},
                    Rank::Small);
    }
}

// ---- the page ----

struct Top {
    Box left{};    // what is left below
    Box beside{};  // free on the right of the title's line
};

/// Tabs, title and lines from the top.
Top draw_top(Pen& pen, const PastModel& model, Box left) {
    const double cap = pen.cap(Type::Text);
    const auto take = [&left](double h) { left.y += h, left.h -= h; };
    const double tabs = targets_height(pen, model.tabs, left.w);
    draw_targets(pen, model.tabs, {left.x, left.y, left.w, tabs});
    take(tabs + pen.gap());
    const double sign = draw_muted(pen, model.muted, {left.right() - cap * 0.5, left.y + pen.cap(Type::Strong) / 2});
    const Block title = pen.block(model.title, {Type::Strong}, {left.w - cap - sign, 1e9, 2});
    pen.text({left.x + cap * 0.5, left.y}, title, Ink::Text);
    Box beside{left.x + title.width + cap * 2.5, left.y, left.w - title.width - cap * 3 - sign, title.height};
    // The first line stands beside the title where both go into one.
    std::size_t next = 0;
    const double first = model.lines.empty() ? 0 : pen.width(Type::Text, model.lines.front());
    if (title.lines.size() == 1 && first > 0 && first <= beside.w) {
        pen.text({beside.x, beside.y}, model.lines.front(), Type::Text, Ink::Soft);
        beside = {beside.x + first + cap * 2, beside.y, beside.w - first - cap * 2, beside.h};
        next = 1;
    }
    take(title.height + cap * 0.5);
    for (; next < model.lines.size(); ++next) {
        const Block line = pen.block(model.lines[next], {Type::Text}, {left.w - cap, 1e9, 3});
        pen.text({left.x + cap * 0.5, left.y}, line, Ink::Soft);
        take(line.height + cap * 0.5);
    }
    take(cap * 0.3);
    return {left, beside};
}

/// The picture stands away from the hand; in portrait above the rows.
Box draw_beside(Pen& pen, const PastModel& model, Box box) {
    if (std::holds_alternative<std::monostate>(model.picture)) return box;
    const Glass& glass = pen.canvas().glass;
    const double g = pen.gap();
    Box picture = box;
    if (glass.portrait()) {
        picture.h = box.h * 0.45;
        box = {box.x, picture.bottom() + g, box.w, box.h - picture.h - g};
    } else {
        const Box whole = box;
        picture.w = box.w * 0.42;
        box = {picture.right() + g, box.y, box.w - picture.w - g, box.h};
        if (glass.hand == Hand::Left) picture = mirrored(picture, whole), box = mirrored(box, whole);
    }
    draw_picture(pen, model.picture, picture);
    return box;
}

struct Attempt {
    Frame frame{};
    std::size_t shown = 0;
};

/// Rows on a card; how many had room.
std::size_t draw_card_of_rows(Pen& pen, const PastModel& model, const Box& box) {
    const double cap = pen.cap(Type::Text);
    pen.panel(box, Ink::Card);
    const Box inner{box.x + cap, box.y + cap * 0.8, box.w - 2 * cap, box.h - 1.6 * cap};
    const Columns in = columns(pen, model, inner.w);
    draw_rows(pen, model, in, inner);
    return rows_in(pen, model, in, inner.h);
}

Attempt attempt(const PastModel& model, const std::vector<Target>& foot, const Canvas& canvas) {
    Pen pen(canvas);
    const Glass& glass = canvas.glass;
    const double g = pen.gap();
    pen.add(picture::Panel{.box = {0, 0, glass.width_mm, glass.height_mm}, .fill = Ink::Ground, .edge = Ink::Ground});
    const Top top = draw_top(pen, model, {g, g, glass.width_mm - 2 * g, glass.height_mm - 2 * g});
    const Box box = draw_beside(pen, model, draw_bottom(pen, foot, model.banner, top.left));
    Attempt made{};
    if (model.rows.empty()) {
        const Cells in = cells(pen, model.choices, box);
        draw_choices(pen, model, in, box);
        made.shown = std::min(in.all(), model.choices.size());
    } else {
        made.shown = draw_card_of_rows(pen, model, box);
    }
    if (made.shown == 0 && model.from < model.all) pen.falls_short(model.title);
    const std::string which = made.shown == model.all ? "" : model.which(model.from + 1, model.from + made.shown, model.all);
    if (pen.width(Type::Text, which) <= top.beside.w)
        pen.text({top.beside.right(), top.beside.y}, which, Type::Text, Ink::Soft, Align::Right);
    made.frame = pen.take();
    return made;
}

}  // namespace

Frame draw(const PastModel& model, const Canvas& canvas) {
    Attempt whole = attempt(model, model.foot, canvas);
    if (whole.shown == model.all) return std::move(whole.frame);
    std::vector<Target> foot{model.more};
    foot.insert(foot.end(), model.foot.begin(), model.foot.end());
    Attempt part = attempt(model, foot, canvas);
    const std::size_t next = model.from + std::max<std::size_t>(1, part.shown);
    for (Touchable& one : part.frame.touchables) {
        if (one.target.id != model.more.id) continue;
        one.target.act = Show{.page = std::get<Show>(model.more.act).page, .argument = std::to_string(next < model.all ? next : 0)};
    }
    return std::move(part.frame);
}

}  // namespace screen
