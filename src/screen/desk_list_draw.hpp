// The Desk's list of actions, each with its key: how they stand on a part of the glass, and their drawing.
#pragma once

#include "screen/pen.hpp"

namespace screen {

/// How the actions stand: in one column, closer together where they must, closest where each says all in one line, else in two.
struct Grid {
    double h = 0, gap = 0;
    std::size_t columns = 1;
};

/// The heights of an action: with air, closer, and closest, where no label needs two lines; and what lies between two. Millimetres.
double loose_height(const Pen& pen);
double close_height(const Pen& pen);
double closest_height(const Pen& pen);
double gap_between(const Pen& pen);

bool all_fit(const Pen& pen, const std::vector<Target>& actions, Type type, double w, double h);
/// Whether each action says all in one line.
bool in_one_line(const Pen& pen, const std::vector<Target>& actions, double w);
Grid list_grid(const Pen& pen, const std::vector<Target>& actions, double w, double room);
void draw_list(Pen& pen, const std::vector<Target>& actions, const Grid& grid, const Box& box);

}  // namespace screen
