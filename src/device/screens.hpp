// How large the glass is. Monitors often report nonsense; a size is believed only when it is plausible, else unknown, and
// the caller asks for a calibration or is told the size.
#pragma once

#include "device/failure.hpp"

#include <optional>
#include <vector>

namespace device {

/// What a monitor says of itself.
struct Report {
    int width_px = 0, height_px = 0;
    int width_mm = 0, height_mm = 0;
};

struct GlassSize {
    double width_mm = 0, height_mm = 0;
    bool operator==(const GlassSize&) const = default;
};

/// Pixels a millimetre, when the report is plausible: 2 to 16 both ways, the two ways within 10 % of each other.
std::optional<double> px_per_mm(const Report& report);
/// The same for a size told by a person, by the same rules.
std::optional<double> px_per_mm(const Report& report, const GlassSize& told);

struct Screen {
    std::string name{};
    int x_px = 0, y_px = 0;  // its place on the desktop
    Report report{};
    std::optional<double> px_per_mm{};
};

/// The monitors, the first one first.
Result<std::vector<Screen>> screens();

}  // namespace device
