// A frame as SVG, to look at what is drawn without a window. Millimetres; `rsvg-convert` makes a picture of it.
#pragma once

#include "screen/frame.hpp"
#include "screen/theme.hpp"

#include <string>

namespace support {

/// What a band of a thickness map of so many is painted in, as the shader has it.
screen::Rgb band_colour(const screen::Palette& palette, int band, int bands);
std::string svg(const picture::Shapes& shapes, const screen::Canvas& canvas, const screen::Palette& palette);

}  // namespace support
