// Measuring a screen against a bank card: an outline of one is made to match a card that lies on the glass. The card is ISO/IEC
// 7810 ID-1: 85.60 by 53.98 mm, as every bank card is. What the outline is on the glass is counted in pixels, so the result
// does not depend on what the screen said of itself before. Pure; where it is kept is decided elsewhere.
#pragma once

#include "screen/model.hpp"
#include "screen/typography.hpp"

namespace screen {

inline constexpr double id1_width_mm = 85.60, id1_height_mm = 53.98;
inline constexpr int coarse_px = 10;

/// A measuring under way.
struct Measuring {
    std::string screen{};  // which one, as the system names it
    int width_px = 0, height_px = 0;
    double drawn_px_per_mm = 1;           // what millimetres the page itself is drawn in
    int card_px = 0;                      // the width of the outline
    bool told_otherwise = false;          // the command line says a size, which comes first
    std::vector<std::string> left_out{};  // what had no room on this screen so far
    bool operator==(const Measuring&) const = default;
};

/// Begins with what is believed of the screen now.
Measuring measuring(std::string screen, int width_px, int height_px, double px_per_mm);
double px_per_mm(const Measuring& measuring);
/// The lit glass by what is tried now.
Glass glass_of(const Measuring& measuring);
/// The outline wider by so many pixels, as far as a screen can be: 2 to 16 pixels a millimetre, and the outline on the glass.
Measuring stepped(Measuring measuring, int px);

/// Pages of its targets: "measure-step" with the pixels, "measure-use", "measure-leave".
MeasureModel measure_page(const Measuring& measuring, const Words& words);

}  // namespace screen
