// Shapes in millimetres turned into what the graphics card draws: one record a shape or letter, in painting order, letters
// last. Edges of panels and of level or upright lines are put on whole pixels, so that they are sharp; nothing moves by
// more than half a pixel. No OpenGL here.
#pragma once

#include "device/atlas.hpp"
#include "device/pixels.hpp"
#include "picture/shape.hpp"

#include <array>
#include <vector>

namespace device {

using Palette = std::array<Rgb, picture::inks>;  // by picture::Ink

/// As laid out in shaders/shape.vert; all lengths in pixels.
struct Instance {
    float centre_x = 0, centre_y = 0;  // of its own frame
    float axis_x = 1, axis_y = 0;      // the frame's first axis, of length 1
    float half_x = 0, half_y = 0;      // of the frame's box that is painted
    float kind = 0, spare = 0;
    std::array<float, 4> figure{};
    std::array<float, 4> more{};
    std::array<std::uint8_t, 4> fill{}, edge{};
};

/// What stands in Instance::kind.
enum class Kind { Line, Ring, Disc, Panel, Polygon, Letter, Numeral, Contours };

/// Kinds that are painted by one program.
enum class Group { Fills, Strokes, Letters, Contours };
inline constexpr std::size_t groups = 4;
Group group(Kind kind);

/// Instances in a row of one group.
struct Run {
    Group group{};
    std::size_t first = 0, count = 0;
    bool operator==(const Run&) const = default;
};

struct Drawing {
    std::vector<Instance> instances{};
    std::vector<Run> runs{};
    std::vector<std::array<float, 2>> corners{};  // of all polygons, from their centres, counter-clockwise on the glass
    std::vector<std::array<float, 2>> fields{};   // of all contours: value, and pixels to the edge of what is known
};

Drawing drawing(const picture::Shapes& shapes, const Palette& palette, const Fonts& fonts, const Atlas& atlas);

}  // namespace device
