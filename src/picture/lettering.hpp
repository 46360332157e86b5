// How wide and how tall lettering is, handed in by whoever owns the font.
#pragma once

#include "picture/shape.hpp"

#include <functional>
#include <string_view>

namespace picture {

/// The width in mm of a text in a role.
using Measure = std::function<double(Type, std::string_view)>;
/// The cap height in mm of a role.
using CapHeight = std::function<double(Type)>;
struct Lettering {
    Measure width{};
    CapHeight cap{};
};

/// How far strokes reach under the baseline, as a share of the cap height (B612: 500 of 1520 units).
inline constexpr double descent = 0.33;

}  // namespace picture
