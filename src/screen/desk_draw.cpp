// The Desk view in millimetres: the strip on top, the present step and the times on the left, the actions on the right, what is being
// typed over them. Nothing scrolls; what has no room is told.
#include "screen/desk_list_draw.hpp"
#include "screen/page_parts.hpp"
#include "screen/table_parts.hpp"

#include <algorithm>
#include <array>
#include <tuple>

namespace screen {

namespace {

/// Of the width of an upright glass, the step and what stands beside it.
constexpr double facts_share = 0.48;
constexpr std::size_t lines_a_row = 2, lines_a_value = 12;

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
    // On no panel: what has one can be touched.
    const double size = model.stay ? pen.cap(Type::Strong) * 1.5 : 0, indent = model.stay ? size * 1.4 : 0;
    if (model.stay) pen.icon(Icon::Triangle, {box.x, box.centre().y - size / 2, size, size}, ink, Ink::Ground);
    pen.text({box.x + indent, box.centre().y - pen.cap(Type::Strong) / 2}, model.nurse, Type::Strong, ink);
}

/// Words that are kept together, parted: in a narrow column they break rather than go.
std::string parted(std::string text) {
    constexpr std::string_view kept = "\u00A0";
    for (auto at = text.find(kept); at != std::string::npos; at = text.find(kept, at)) text.replace(at, kept.size(), " ");
    return text;
}

/// Sentences that follow each other in one text, where there is no room for a line each.
std::vector<Row> joined(const std::vector<Row>& rows) {
    std::vector<Row> made;
    for (const Row& row : rows) {
        const bool goes_on = row.label.empty() && !made.empty() && (made.back().value.ends_with('.') || made.back().value.ends_with('?'));
        if (goes_on) made.back().value += " " + row.value;
        if (!goes_on) made.push_back(row);
    }
    return made;
}

/// Draws what there is room for down the column, and returns what there was none for.
std::vector<std::string> draw_rows(Column& column, const std::vector<Row>& rows) {
    std::vector<std::string> missed;
    for (const Row& row : rows) {
        if (!row.label.empty() && &row != &rows.front()) column.gap();
        const auto value = [&](const std::string& text) { return column.text(text, {Type::Strong, Type::Text}, Ink::Text, lines_a_value); };
        if (!column.text(row.label, {Type::Text}, Ink::Soft, 1) || !(value(row.value) || value(parted(row.value))))
            missed.push_back(row.label.empty() ? row.value : row.label);
    }
    return missed;
}

/// The present step, or with its sign what went otherwise. Returns where it ends.
double draw_title(Pen& pen, const DeskModel& model, const Box& box) {
    const auto roles = {Type::Title, Type::Strong};
    constexpr std::size_t lines = 2;
    const bool alarm = model.level > Banner::Level::Notice;
    const Room room{box.w, box.h, lines};
    const BesideSign made = alarm ? beside_sign(pen, model.title, roles, room) : BesideSign{.block = pen.block(model.title, roles, room)};
    Column column(pen, {box.x + made.indent(), box.y, box.w - made.indent(), box.h});
    const Ink ink = alarm ? level_ink(model.level) : Ink::Text;
    if (!column.text(model.title, {made.block.type}, ink, lines)) pen.falls_short(model.title);
    const double middle = box.y + pen.cap(made.block.type) / 2;
    if (made.sign > 0) level_sign(pen, model.level, {box.x, middle - made.sign / 2, made.sign, made.sign}, Ink::Ground);
    return column.y();
}

void draw_step(Pen& pen, const DeskModel& model, const Box& box) {
    const double pill = model.nurse.empty() ? 0 : pen.cap(Type::Strong) * 2.6;
    draw_nurse(pen, model, {box.x, box.y, box.w, pill});
    const double title = box.y + pill + pen.cap(Type::Text), top = draw_title(pen, model, {box.x, title, box.w, box.bottom() - title});
    Column column(pen, {box.x, top, box.w, box.bottom() - top});
    std::vector<Row> whole = model.step;
    for (auto line = model.how.rbegin(); line != model.how.rend(); ++line) whole.insert(whole.begin(), {"", *line});
    const auto fits = [&](const std::vector<Row>& rows) {
        Pen unseen(pen.canvas());
        Column tried(unseen, {box.x, column.y(), box.w, box.bottom() - column.y()});
        return draw_rows(tried, rows).empty();
    };
    const std::array tries{whole, joined(whole), model.step, joined(model.step)};
    for (const std::string& missed : draw_rows(column, *std::find_if(tries.begin(), std::prev(tries.end()), fits))) pen.falls_short(missed);
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

/// What clocks, pauses and counts need.
double times_height(const Pen& pen, const DeskModel& model, double w) {
    double h = 2 * pen.cap(Type::Text);
    for (const auto* rows : {&model.times, &model.counts})
        for (const Row& row : *rows) h += blocks(pen, row, w, 1e9, lines_a_row).height;
    return h;
}

/// How high the head over the actions is, but for what is typed.
double head_height(const Pen& pen, const DeskModel& model, double w, double h) {
    double head = pen.cap(Type::Text) * 0.3;
    for (const auto& [words, role, lines] : {std::tuple{model.heading, Type::Title, 2U}, std::tuple{model.line, Type::Text, 6U}})
        if (!words.empty()) head += pen.block(words, {role}, {w, h, lines}).height + pen.cap(Type::Text) * 0.8;
    return head;
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
    double head = head_height(pen, model, w, h) + pen.cap(Type::Text) * 1.7;
    if (model.field) head += typed_height(pen, *model.field, w, h) + pen.gap();
    const auto left = [&](double action) { return h - head - static_cast<double>(model.actions.size()) * (action + gap_between(pen)); };
    constexpr double least = 0.32, most = 0.6;
    const double tightest = left(in_one_line(pen, model.actions, w) ? closest_height(pen) : close_height(pen));
    const double needed = times_height(pen, model, w * facts_share);
    return std::clamp(std::max(left(loose_height(pen)), std::min(tightest, needed)), h * least, h * most);
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
        draw_list(pen, model.actions, list_grid(pen, model.actions, below.w, below.h), below);
        return pen.take();
    }
    const double w = (left.w - 2 * g) / 100;
    draw_step(pen, model, {left.x, left.y, w * 28, left.h});
    Box right{left.x + w * 57 + 2 * g, left.y, w * 43, left.h};
    const Grid beside = list_grid(pen, model.actions, right.w, left.h - head_height(pen, model, right.w, left.h));
    // A list that is long, or has long labels, takes the place of the times: it is turned away from again in a moment.
    const bool wide = beside.columns > 1 || !all_fit(pen, model.actions, Type::Text, right.w, beside.h);
    if (!wide) draw_facts(pen, model, {left.x + w * 28 + g, left.y, w * 29, left.h});
    if (wide) right = {left.x + w * 28 + g, left.y, left.w - w * 28 - g, left.h};
    draw_list(pen, model.actions, beside, draw_head(pen, model, right, beside.h));
    return pen.take();
}

}  // namespace screen
