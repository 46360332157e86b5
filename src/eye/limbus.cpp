#include "eye/limbus.hpp"

#include "measure/expect.hpp"

#include <cmath>
#include <numbers>

namespace eye {
namespace {

constexpr double equal_mm = 1e-9;  // rays nearer than this to each other are equal: rounding of the arithmetic only

/// Distance from (x, y) along a direction to the ellipse with half axes a and b, all mm: the larger root of
/// ((x + t c) / a)^2 + ((y + t s) / b)^2 = 1. From outside the ellipse with no crossing: the nearest pass, below 0 or not.
double to_ellipse(double x, double y, double a, double b, double deg) {
    const double c = std::cos(deg * std::numbers::pi / 180) / a;
    const double s = std::sin(deg * std::numbers::pi / 180) / b;
    const double u = x / a;
    const double v = y / b;
    const double square = c * c + s * s;
    const double half = u * c + v * s;
    const double under_root = half * half - square * (u * u + v * v - 1);
    return (-half + std::sqrt(std::fmax(0.0, under_root))) / square;
}

}  // namespace

Clearance clearance(const Limbus& limbus, const Cut& cut) {
    measure::expect(limbus.horizontal.nm() > 0 && limbus.vertical.nm() > 0);
    double least = 0;
    int at = 0;
    for (int deg = 0; deg < 360; ++deg) {
        const double free =
            to_ellipse(cut.x.mm(), cut.y.mm(), limbus.horizontal.mm() / 2, limbus.vertical.mm() / 2, deg) - cut.diameter.mm() / 2;
        if (deg == 0 || free < least - equal_mm) {
            least = free;
            at = deg;
        }
    }
    return {.least = 1000 * measure::nm(std::llround(least * 1e3)), .deg = at};
}

}  // namespace eye
