// Directions in the plane of the eye in hundredths of a degree, whole numbers, always in [0, 36000).
// Frame: as one faces the eye, 0 at 3 o'clock, growing counter-clockwise (the dial of ISO 8429).
#pragma once

#include <compare>

namespace measure {

class Angle {
public:
    constexpr Angle() = default;
    friend constexpr Angle centideg(int);
    constexpr int centideg() const { return centideg_; }
    constexpr double deg() const { return centideg_ / 100.0; }
    constexpr auto operator<=>(const Angle&) const = default;

private:
    explicit constexpr Angle(int value) : centideg_(value) {}
    int centideg_ = 0;
};

constexpr Angle centideg(int value) {
    const int turned = value % 36000;
    return Angle(turned < 0 ? turned + 36000 : turned);
}

constexpr Angle whole_deg(int deg) { return centideg(deg % 360 * 100); }

/// The nearest hundredth of a degree.
Angle from_deg(double deg);
/// The smaller way round between two directions, 0 to 18000 hundredths of a degree.
constexpr int apart_centideg(Angle a, Angle b) {
    const int one_way = centideg(a.centideg() - b.centideg()).centideg();
    return one_way > 18000 ? 36000 - one_way : one_way;
}

}  // namespace measure
