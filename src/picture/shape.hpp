// The drawing vocabulary of screen and paper: pure shapes in millimetres, x to the right, y down, angles as one looks at
// the glass: 0 to the right, counter-clockwise. Colours are names, resolved by a theme; lettering is by role, its size by
// the typography of the display. Shapes are painted in order, all text above all other shapes of its list.
#pragma once

#include <string>
#include <variant>
#include <vector>

namespace picture {

struct Point {
    double x = 0, y = 0;
    bool operator==(const Point&) const = default;
};

struct Box {
    double x = 0, y = 0, w = 0, h = 0;
    double right() const { return x + w; }
    double bottom() const { return y + h; }
    Point centre() const { return {x + w / 2, y + h / 2}; }
    bool contains(Point p) const { return p.x >= x && p.x < right() && p.y >= y && p.y < bottom(); }
    bool operator==(const Box&) const = default;
};

/// Every colour of the program; the theme says what each one is.
enum class Ink {
    Ground,      // behind everything
    Card,        // a panel
    Raised,      // a touch target, the open phase
    Line,        // decoration only
    Mark,        // a mark that must be seen: 3:1
    Text,        // lettering: 7:1
    Soft,        // quiet lettering: 7:1
    Accent,      // what is now
    AccentFill,  // the filled target
    OnAccent,    // lettering on AccentFill
    Cornea,      // outline of tissue
    Tissue,      // fill of tissue
    Band,        // the uncertainty over tissue
    Amber,       // watch
    AmberFill,   // behind Amber lettering
    Red,         // stop
    RedFill,     // behind Red lettering
    Black,       // the hole of an open eye
    Steel,       // the blade, sutures in place
    Relief1,     // a map of thickness from its thinnest, lighter step by step; no lettering on it
    Relief2,
    Relief3,
    Relief4,
    Relief5
};
inline constexpr int inks = 24;
inline constexpr int reliefs = 5;

/// Roles of lettering. The typography says how tall each is; nothing on a Table view is under its minimum in look.md.
enum class Type {
    Numeral,  // the giant digits
    Display,  // the label of the biggest target
    Title,    // what to do
    Value,    // clocks, figures
    Strong,   // bold text
    Text,     // everything else
    Lead      // a larger plain line: under the giant digits, under the biggest label
};
inline constexpr int types = 7;

enum class Align { Left, Centre, Right };

struct Line {
    Point a{}, b{};
    double width = 0.5;
    Ink ink{};
    double dash = 0, gap = 0;  // mm along the line; 0: solid
    bool operator==(const Line&) const = default;
};
struct Ring {  // an arc from `from_deg` counter-clockwise over `sweep_deg`
    Point centre{};
    double radius = 0, width = 0.5;
    Ink ink{};
    double from_deg = 0, sweep_deg = 360;
    double dash = 0, gap = 0;  // mm along the arc; 0: solid
    bool operator==(const Ring&) const = default;
};
struct Disc {
    Point centre{};
    double radius = 0;
    Ink ink{};
    bool operator==(const Disc&) const = default;
};
struct Panel {  // a box with round corners
    Box box{};
    double radius = 0;
    Ink fill{};
    Ink edge{};
    double edge_width = 0;  // 0: no edge
    bool operator==(const Panel&) const = default;
};
struct Polygon {  // convex
    std::vector<Point> points{};
    Ink ink{};
    bool operator==(const Polygon&) const = default;
};
struct Text {  // `at` is on the baseline at the left, centre or right end
    Point at{};
    std::string text{};
    Type type{};
    Ink ink = Ink::Text;
    Align align = Align::Left;
    bool operator==(const Text&) const = default;
};

/// A field of values in bands of the relief's colours, from `low` to `high` a band a `step`, with a line between bands. The
/// values stand on a grid over the whole box, row by row from the upper left, the outermost ones on its edges, and are taken as
/// straight between neighbours. Nothing is painted where the field is not known.
struct Contours {
    Box box{};
    int columns = 0, rows = 0;    // 2 or more
    std::vector<float> values{};  // columns * rows
    std::vector<float> inside{};  // of the same places: mm on the glass to the edge of what is known, negative beyond
    double low = 0, high = 0, step = 1;
    double line_width = 0;  // mm
    Ink line{};
    bool operator==(const Contours&) const = default;
};

using Shape = std::variant<Line, Ring, Disc, Panel, Polygon, Text, Contours>;
using Shapes = std::vector<Shape>;

}  // namespace picture
