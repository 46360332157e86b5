// What the pages beside the Table share: the head, the row of foot targets, a grid of targets.
#pragma once

#include "screen/pen.hpp"

#include <optional>
#include <span>

namespace screen {

/// Ground, strip if any, title and lines, foot targets, banner: returns the box left in the middle.
struct PageWords {
    const std::optional<Strip>& strip;
    const std::string& title;
    const std::vector<std::string>& lines;
    const std::vector<Target>& foot;
    const std::optional<Banner>& banner;
    const std::string& muted;
    Type line = Type::Text;  // the role of the lines
};
Box draw_page(Pen& pen, const PageWords& page);
/// Foot and banner at the bottom of the page, side by side where both are read there; returns what is left above.
Box draw_bottom(Pen& pen, const std::vector<Target>& foot, const std::optional<Banner>& banner, Box left);

/// What is typed, as high as it is long: three lines at least, `most` of height at most, where its end stays in sight.
double typed_height(const Pen& pen, const Typed& typed, double width, double most);
/// With a single line of it.
double least_typed_height(const Pen& pen, const Typed& typed, double width);
void draw_typed(Pen& pen, const Typed& typed, const Box& box);
/// The lines of what is typed, with its caret; the last of them where it is longer.
std::vector<std::string> typed_lines(const Pen& pen, const std::string& text, double width, std::size_t most);

/// Targets of even size side by side, in as few rows as they can be read in.
double targets_height(const Pen& pen, std::span<const Target> targets, double width);
void draw_targets(Pen& pen, std::span<const Target> targets, const Box& box);

/// How many columns a grid of targets takes in a box; none where it does not fit at look.md's sizes.
std::optional<int> grid_columns(const Pen& pen, std::span<const Target> targets, const Box& box);
/// Returns the role that the labels share.
Type draw_grid(Pen& pen, std::span<const Target> targets, const Box& box, int columns);

}  // namespace screen
