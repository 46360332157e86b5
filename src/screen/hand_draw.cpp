#include "screen/table_parts.hpp"
#include "screen/target_draw.hpp"

#include <algorithm>

namespace screen {

namespace {

using Targets = std::vector<Target>;
using Rows = std::vector<Targets>;

/// The place of the rows: how many, how high one usually is.
struct Place {
    Box box{};
    std::size_t most_rows = 3, most_in_row = 3;
    double gap = 0;
    double elsewhere = 3;  // what it costs to put a target out of the column
    double usual_height() const {
        const double n = static_cast<double>(most_rows);
        return (box.h - gap * (n - 1)) / n;
    }
    Box cell(std::size_t in_row) const {
        const double n = static_cast<double>(in_row);
        return {0, 0, (box.w - gap * (n - 1)) / n, usual_height()};
    }
};

Rank rank_in(std::size_t in_row) { return in_row == 1 ? Rank::Wide : Rank::Several; }

/// How badly a row reads: stop stands best alone, others in pairs of a kind, three only where they are small; late marks by
/// themselves.
double awkward(std::span<const Target> row) {
    const auto is = [&row](Look look) {
        return std::any_of(row.begin(), row.end(), [look](const Target& one) { return one.look == look; });
    };
    if (row.size() == 1) return is(Look::Stop) ? 0 : is(Look::Watch) ? 1 : 2;
    const auto late = std::count_if(row.begin(), row.end(), [](const Target& one) { return one.late; });
    const bool of_a_kind = late == 0 || late == static_cast<std::ptrdiff_t>(row.size());
    const double mixed = (is(Look::Stop) ? 4 : 0) + (of_a_kind ? 0 : 3);
    return mixed + (row.size() == 2 ? 0.5 : 1.9);
}

bool goes(const Pen& pen, std::span<const Target> row, const Place& place) {
    const Box cell = place.cell(row.size());
    return std::all_of(row.begin(), row.end(), [&](const Target& shown) {
        const Target& one = shown.in_place_of.empty() ? shown : shown.in_place_of.front();
        const double least = least_side_mm(one.weight);
        return cell.w >= least && cell.h >= least - 1e-6 && legible(pen, one, cell, rank_in(row.size()));
    });
}

struct Split {
    Rows rows{};
    double cost = 1e9;
};

/// The best way to break what is left into at most `rows` rows, in order.
Split best_rows(const Pen& pen, std::span<const Target> targets, const Place& place, std::size_t rows) {
    if (targets.empty()) return {{}, 0};
    Split best;
    for (std::size_t n = 1; rows > 0 && n <= std::min(place.most_in_row, targets.size()); ++n) {
        const auto row = targets.first(n);
        if (!goes(pen, row, place)) continue;
        Split rest = best_rows(pen, targets.subspan(n), place, rows - 1);
        const double cost = awkward(row) + rest.cost;
        if (cost >= best.cost) continue;
        rest.rows.insert(rest.rows.begin(), Targets(row.begin(), row.end()));
        best = {std::move(rest.rows), cost};
    }
    return best;
}

/// The target that can best stand elsewhere: the last one that neither leads, warns nor stays.
bool move_one(Targets& from, Targets& to) {
    const auto may = [](const Target& one) { return !one.stays && (one.look == Look::Plain || one.look == Look::Hollow); };
    const auto last = std::find_if(from.rbegin(), from.rend(), may);
    if (last == from.rend()) return false;
    to.insert(to.begin(), *last);
    from.erase(std::next(last).base());
    return true;
}

/// Where not even that helps: as many a row as it takes; what does not fit says so when it is drawn.
Rows forced(const Targets& targets, const Place& place) {
    Rows rows;
    const std::size_t count = std::min(place.most_rows, targets.size());
    for (std::size_t row = 0, i = 0; row < count; ++row) {
        const std::size_t here = (targets.size() - i) / (count - row);
        rows.emplace_back(targets.begin() + static_cast<std::ptrdiff_t>(i), targets.begin() + static_cast<std::ptrdiff_t>(i + here));
        i += here;
    }
    return rows;
}

struct Broken {
    Rows rows{};
    Targets over{};
    double cost = 0;
};

/// Rows that read well, or all but a plain target or two, whichever is the better.
Broken broken(const Pen& pen, const Targets& all, const Place& place) {
    Targets here = all, over;
    Broken best{.rows = forced(all, place), .cost = 1e8};
    do {
        Split split = best_rows(pen, here, place, place.most_rows);
        const double cost = split.cost + place.elsewhere * static_cast<double>(over.size());
        if (cost < best.cost) best = {std::move(split.rows), over, cost};
    } while (over.size() < 3 && move_one(here, over));
    return best;
}

/// Two answers of the same worth, right or left, one name or the other: neither may be the bigger one.
bool twins(std::span<const Target> hand) {
    const auto open = [](const Target& target) { return target.look == Look::Filled || target.look == Look::Hollow; };
    const auto answers = [&](const Target& target) { return open(target) || !target.why_not.empty(); };
    return hand.size() > 1 && answers(hand[0]) && answers(hand[1]) && (open(hand[0]) || open(hand[1]));
}

/// Of what stands in the row, and of what may take its place there.
Type shared_in_row(const Pen& pen, std::span<const Target> row, const Box& box, Type most) {
    const Box cell = part(box, 0, static_cast<int>(row.size()), pen.gap());
    most = shared_type(pen, row, cell, rank_in(row.size()), most);
    for (const Target& one : row) most = shared_type(pen, one.in_place_of, cell, rank_in(row.size()), most);
    return most;
}

void draw_in_row(Pen& pen, std::span<const Target> targets, const Box& row, Type most) {
    const int n = static_cast<int>(targets.size());
    const bool left = pen.canvas().glass.hand == Hand::Left;
    for (int i = 0; i < n; ++i) {
        const int place = left ? n - 1 - i : i;
        draw_target(pen, targets[static_cast<std::size_t>(i)], part(row, place, n, pen.gap()), rank_in(targets.size()), most);
    }
}

void draw_rows(Pen& pen, const Rows& rows, const Place& place) {
    if (rows.empty()) return;
    const double n = static_cast<double>(rows.size()), h = std::min((place.box.h - place.gap * (n - 1)) / n, place.usual_height() * 1.25);
    Type most = Type::Numeral;  // of several in a row, in all such rows
    for (const Targets& row : rows)
        if (row.size() > 1) most = shared_in_row(pen, row, {place.box.x, 0, place.box.w, h}, most);
    double y = place.box.y;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        // The last row keeps its place at the bottom of the column from step to step.
        if (i + 1 == rows.size()) y = place.box.bottom() - h;
        draw_in_row(pen, rows[i], {place.box.x, y, place.box.w, h}, rows[i].size() > 1 ? most : Type::Numeral);
        y += h + place.gap;
    }
}

/// Twins share the place of the biggest and a row of the others, one over the other.
HandDrawn twin_hand(Pen& pen, std::span<const Target> hand, const TableLayout& layout, Place place) {
    const double row = place.usual_height() + place.gap, h = (layout.first.h + row - place.gap) / 2;
    place.box.y += row;
    place.box.h -= row;
    place.most_rows -= 1;
    const Box& first = layout.first;
    const Type most = shared_type(pen, hand.first(2), {0, 0, first.w, h}, Rank::First);
    draw_target(pen, hand[0], {first.x, first.y, first.w, h}, Rank::First, most);
    draw_target(pen, hand[1], {first.x, first.y + h + place.gap, first.w, h}, Rank::First, most);
    const auto rest = hand.subspan(2);
    Broken made = broken(pen, Targets(rest.begin(), rest.end()), place);
    draw_rows(pen, made.rows, place);
    return {std::move(made.over), first.y};
}

/// In portrait the rows stand at the bottom, as many as there are, and the biggest target on top of them; returns its place.
Box settle(const TableLayout& layout, const Rows& rows, Place& place) {
    if (!layout.strip_rows) return layout.first;
    const double free = static_cast<double>(place.most_rows - std::min(place.most_rows, rows.size())) * (place.usual_height() + place.gap);
    place.box.y += free;
    place.box.h -= free;
    place.most_rows = rows.size();
    // With a row more than usual it is lower by a little: the card needs the room.
    const double h = layout.first.h * (static_cast<int>(rows.size()) > layout.most_rows ? 0.8 : 1);
    return {layout.first.x, place.box.y - place.gap - h, layout.first.w, h};
}

/// With a row more, where that reads better. Not while the blade goes down: there the spoke target does not move.
Broken grown(const Pen& pen, const Targets& all, Place& place) {
    constexpr double higher = 2;  // what it costs the card
    Broken made = broken(pen, all, place);
    if (std::any_of(all.begin(), all.end(), [](const Target& one) { return one.stays; })) return made;
    const double row = place.usual_height() + place.gap;
    Place more = place;
    more.box.y -= row;
    more.box.h += row;
    more.most_rows += 1;
    Broken high = broken(pen, all, more);
    if (high.cost + higher >= made.cost) return made;
    place = more;
    return high;
}

}  // namespace

void draw_row(Pen& pen, std::span<const Target> targets, const Box& row) {
    draw_in_row(pen, targets, row, targets.size() > 1 ? shared_in_row(pen, targets, row, Type::Numeral) : Type::Numeral);
}

HandDrawn draw_hand(Pen& pen, std::span<const Target> hand, const TableLayout& layout) {
    if (hand.empty()) return {.top = layout.others.bottom()};
    Place place{layout.others, static_cast<std::size_t>(layout.most_rows), static_cast<std::size_t>(layout.most_in_row), pen.gap()};
    if (layout.strip_rows) place.elsewhere = 6;  // there it stands over the biggest one
    const bool two = twins(hand);
    const auto rest = hand.subspan(two ? 2 : 1);
    if (two && !layout.strip_rows) return twin_hand(pen, hand, layout, place);
    Targets others, apart;
    for (const Target& one : rest) (one.apart ? apart : others).push_back(one);
    Broken made = layout.grows ? grown(pen, others, place) : broken(pen, others, place);
    const Box first = settle(layout, made.rows, place);
    if (two) {
        const Type most = shared_type(pen, hand.first(2), part(first, 0, 2, place.gap), Rank::First);
        for (int i = 0; i < 2; ++i) draw_target(pen, hand[static_cast<std::size_t>(i)], part(first, i, 2, place.gap), Rank::First, most);
    } else {
        draw_target(pen, hand.front(), first, Rank::First);
    }
    draw_rows(pen, made.rows, place);
    made.over.insert(made.over.end(), apart.begin(), apart.end());
    return {std::move(made.over), first.y};
}

}  // namespace screen
