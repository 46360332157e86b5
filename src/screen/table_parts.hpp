// The parts of the Table view, each drawn into the box that the layout gives it.
#pragma once

#include "screen/table_layout.hpp"

#include <span>

namespace screen {

/// Eye, case, phase, clocks on top. What there is no room for is left out, the least needed first.
void draw_strip(Pen& pen, const Strip& strip, const TableLayout& layout);
void draw_path(Pen& pen, const std::vector<Line>& path, const TableLayout& layout);
void draw_picture(Pen& pen, const Picture& picture, const Box& box);
/// A clock face that says where the next suture goes.
bool points_to_next(const Picture& picture);
/// Whether it still does in a box, with words or without.
bool hand_seen(const Pen& pen, const Picture& picture, const Box& box);
/// How high a card is where no banner stands, and while one of three lines does.
struct CardHeights {
    double bare = 0, with_banner = 0;
};
void draw_card(Pen& pen, const Card& card, const Box& box, const CardHeights& heights);
/// What is counted, at the foot of the card's box; returns what is left over it for the words.
Box draw_counts(Pen& pen, const std::vector<CountRow>& all, const Box& card);
/// What the hand's column has no place for, and where it begins.
struct HandDrawn {
    std::vector<Target> over{};
    double top = 0;
};
/// The biggest target, then the others in rows.
HandDrawn draw_hand(Pen& pen, std::span<const Target> hand, const TableLayout& layout);
/// The sign of a muted voice and its word, on the left of a point; how wide with the gap before it. No word: nothing.
double draw_muted(Pen& pen, const std::string& word, Point right);
/// A row of targets of even width.
void draw_row(Pen& pen, std::span<const Target> targets, const Box& row);
/// The banner in few words, where it has them.
Banner briefly(Banner banner);
double banner_height(const Pen& pen, const Banner& banner, double width);
void draw_banner(Pen& pen, const Banner& banner, const Box& box);

}  // namespace screen
