// Thickness over the cornea as one faces the eye, 12 o'clock up: bands of colour with a figure on the line between them, the
// limbus, the cut circle, the places that were measured, the thinnest place on the cut, and the legend beside it.
// What the thickness is, and where it is known, is not decided here.
// Frame of the eye: millimetres from the map's centre, x to 3 o'clock, y to 12.
#pragma once

#include "measure/length.hpp"
#include "picture/lettering.hpp"

#include <optional>
#include <string>
#include <vector>

namespace picture {

/// Values on an even grid over a square about the map's centre, row by row from the upper left corner.
struct ThicknessField {
    double half_mm = 0;          // of the square's side
    int across = 0;              // values a row, and rows
    std::vector<float> um{};     // across * across
    std::vector<float> known{};  // mm on the eye to the edge of what is known, negative beyond
    bool operator==(const ThicknessField&) const = default;
};

struct ThicknessMap {
    ThicknessField field{};
    int low_um = 0, high_um = 0, step_um = 20;  // of the bands
    measure::Length limbus_across{}, limbus_upright{};
    measure::Length cut{}, cut_x{}, cut_y{};  // diameter and centre
    std::vector<Point> measured{};
    std::optional<Point> thinnest{};
    std::string unit{};    // over the legend
    std::string turned{};  // whose view of the eye this is: "facing the eye"
    bool operator==(const ThicknessMap&) const = default;
};

/// The value between the four nearest places of the grid.
double um_at(const ThicknessField& field, Point on_eye);
double known_at(const ThicknessField& field, Point on_eye);

/// The circle of the glass on which the map stands in a box: one millimetre of the eye is `scale` on the glass.
struct MapPlace {
    Point centre{};
    double scale = 0;
    Point on_glass(Point on_eye) const { return {centre.x + on_eye.x * scale, centre.y - on_eye.y * scale}; }
};
MapPlace place(const ThicknessMap& map, const Box& box, const Lettering& lettering);

Shapes draw(const ThicknessMap& map, const Box& box, const Lettering& lettering);

}  // namespace picture
