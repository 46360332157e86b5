// Where a text stands, from its measured width and the cap height of its role. What fits and what overlaps is asked here.
#pragma once

#include "picture/lettering.hpp"

namespace picture {

/// From cap height to the lowest stroke; without descenders the box ends at the baseline.
Box bounds(const Text& text, const Lettering& lettering);
bool overlap(const Box& a, const Box& b);
/// The least gap between two boxes, 0 when they touch or overlap.
double gap(const Box& a, const Box& b);
/// A point on a circle in the picture's frame: 0 to the right, counter-clockwise.
Point on_circle(Point centre, double radius, double deg);

}  // namespace picture
