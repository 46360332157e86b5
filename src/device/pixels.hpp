// A picture of what stands on the glass, for tests, journeys and the README.
#pragma once

#include "device/failure.hpp"

#include <array>
#include <cstdint>
#include <vector>

namespace device {

struct Rgb {
    std::uint8_t r = 0, g = 0, b = 0;
    bool operator==(const Rgb&) const = default;
};

struct Pixels {
    int width = 0, height = 0;
    std::vector<std::uint8_t> rgb{};  // three bytes a pixel, rows from the top
    Rgb at(int x, int y) const;
};

Result<measure::Done> save_png(const std::string& path, const Pixels& pixels);

}  // namespace device
