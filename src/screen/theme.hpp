// What each ink is, in sRGB. Contrast is a promise of look.md and is tested, raw and under simulated colour vision.
#pragma once

#include "picture/shape.hpp"

#include <array>
#include <cstdint>

namespace screen {

struct Rgb {
    std::uint8_t r = 0, g = 0, b = 0;
    bool operator==(const Rgb&) const = default;
};

using Palette = std::array<Rgb, picture::inks>;  // by picture::Ink

enum class Theme { Dark, Light };
/// How much light comes off the glass: a darkened theatre wants less of either theme.
enum class Light { Full, Dimmed };
Palette palette(Theme theme, Light light = Light::Full);

/// WCAG 2 relative luminance and contrast ratio.
double luminance(Rgb colour);
double contrast(Rgb a, Rgb b);

}  // namespace screen
