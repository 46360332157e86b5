// Corneal thickness as a surface over the map's centre, from readings on several rings: a value that can be asked at any place.
// Decides the surface and where the readings support it, not whether a depth may be planned from it.
//
// T(x, y) is a polynomial of total degree `order`, 2 to 4, fitted by least squares: 2 holds the rise from centre to edge, a
// tilt and an oval; 3 and 4 a thinning off the centre. It stays at 2 where the instrument explains the residuals (97.5 % point
// of chi-squared, with the rows set aside that stand alone) and rises only where it does not; a higher order wants two
// readings a coefficient. Where the readings leave 2 open (four directions tell nothing of one oval), order 1 is the rise, the
// same all round, and a tilt.
//
// A place is supported while it lies no more than 0.25 mm farther out than the farthest reading, and while the root of its leverage is at
// most 1.5 times the largest of any reading, which is at most 1: so never over 1.5, where the circle allows 2. Beyond, the surface would be
// carried outside its readings (hidden extrapolation of a regression), however many they are.
#pragma once

#include "eye/limbus.hpp"
#include "measure/angle.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace eye {

using measure::Angle;

/// From the map's centre, x to 3 o'clock, y to 12.
struct Point {
    Length x{}, y{};
    bool operator==(const Point&) const = default;
};

/// `ring` is a diameter about the map's centre.
Point on_ring(Length ring, Angle at);
/// On the cut circle, in a direction from its own centre.
Point on_cut(const Cut& cut, Angle at);

struct MapReading {
    Point at{};
    Length thickness{};
    bool operator==(const MapReading&) const = default;
};

/// A reading that the others do not bear out; it is in the fit all the same.
struct OddReading {
    std::size_t reading = 0;  // which of those given, from 0
    Length off{};             // the reading less what the others say there
    bool operator==(const OddReading&) const = default;
};

/// The thickness at one place, with one standard deviation.
struct Estimate {
    Length thickness{};  // to 0.1 um
    Length u{};          // to the nanometre
    bool supported = false;
    bool operator==(const Estimate&) const = default;
};

struct Surface {
    int order = 0;
    Length reach{};                         // of the farthest reading from the centre; coordinates are in parts of it
    Length sd{};                            // of one reading: its repeatability, or the scatter about the surface where that is more
    bool scattered = false;                 // the scatter is more than the repeatability explains
    Length rms{};                           // of the residuals, over all readings
    double widest = 0;                      // the largest root of the leverage of a reading
    std::vector<double> coefficients_um{};  // of 1, x, y, x^2, x y, y^2, ...
    std::vector<double> spread{};           // square, by rows: |spread x| is the root of the leverage of the terms x
    std::vector<OddReading> odd{};          // the farthest first
    bool operator==(const Surface&) const = default;

    Estimate at(const Point& point) const;
    /// The thickness unrounded, in micrometres.
    double um_at(const Point& point) const;
    double root_leverage(const Point& point) const;
};

/// The surface of the order that the readings call for and bear all round the cut; or none.
struct SurfaceFit {
    std::optional<Surface> surface{};
    std::optional<Angle> open{};  // without a surface: the least supported degree of the cut; none where a coefficient is open
};

SurfaceFit fit_surface(const std::vector<MapReading>& readings, const Cut& cut, Length sd);

}  // namespace eye
