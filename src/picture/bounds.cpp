#include "picture/bounds.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace picture {

Box bounds(const Text& text, const Lettering& lettering) {
    const double w = lettering.width(text.type, text.text), cap = lettering.cap(text.type);
    const double left = text.align == Align::Left ? text.at.x : text.align == Align::Centre ? text.at.x - w / 2 : text.at.x - w;
    const bool deep = text.text.find_first_of("gjpqyQ,;()") != std::string::npos || text.text.find("µ") != std::string::npos;
    return {left, text.at.y - cap, w, deep ? cap * (1 + descent) : cap};
}

bool overlap(const Box& a, const Box& b) { return a.x < b.right() && b.x < a.right() && a.y < b.bottom() && b.y < a.bottom(); }

double gap(const Box& a, const Box& b) {
    const double across = std::max({0.0, a.x - b.right(), b.x - a.right()});
    const double down = std::max({0.0, a.y - b.bottom(), b.y - a.bottom()});
    return std::hypot(across, down);
}

Point on_circle(Point centre, double radius, double deg) {
    const double turn = deg * std::numbers::pi / 180;
    return {centre.x + radius * std::cos(turn), centre.y - radius * std::sin(turn)};
}

}  // namespace picture
