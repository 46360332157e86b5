// The parts of the Plan view, each drawn into the box that the view gives it: a column stands by itself, its own panel over it.
#pragma once

#include "screen/pen.hpp"

namespace screen {

void draw_measured(Pen& pen, const PlanModel& model, const Box& box);
void draw_depth(Pen& pen, const PlanModel& model, const Box& box);
void draw_sizes(Pen& pen, const PlanModel& model, const Box& box);
/// A figure that can be asked about: the figure and, beside it or under it, what it is.
void draw_figure_target(Pen& pen, const Target& target, const Box& box);
void draw_plan_panel(Pen& pen, const PlanModel::Panel& panel, const Box& box);

/// How wide the ladder wants to be.
double ladder_width(const Pen& pen, const PlanModel& model);
/// Between targets of one group.
inline constexpr double plan_gap = 3;

}  // namespace screen
