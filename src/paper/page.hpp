// One printed page as a value: shapes in millimetres from the top left corner, and what the file says of itself.
// A page holds no clock: its date is a date of the case, so that the same case gives the same bytes.
#pragma once

#include "measure/instant.hpp"
#include "picture/shape.hpp"

#include <array>
#include <string>

namespace paper {

enum class Size { A4, Letter };

/// ISO 216 A4 is 210 x 297 mm; Letter is 8.5 x 11 inches.
constexpr picture::Box sheet_of(Size size) {
    return size == Size::A4 ? picture::Box{.w = 210, .h = 297} : picture::Box{.w = 215.9, .h = 279.4};
}
/// Free all round: common printers leave 4 to 6 mm; a punched hole needs 12.
inline constexpr double margin = 12;

/// How tall the capitals of each role are on a page, in mm.
using Caps = std::array<double, picture::types>;
constexpr double& cap_of(Caps& caps, picture::Type type) { return caps[static_cast<std::size_t>(type)]; }
constexpr double cap_of(const Caps& caps, picture::Type type) { return caps[static_cast<std::size_t>(type)]; }

struct Page {
    Size size{};
    Caps caps{};
    picture::Shapes shapes{};
    std::string title{}, program{};
    measure::Instant at{};
    bool operator==(const Page&) const = default;
};

}  // namespace paper
