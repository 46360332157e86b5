// Corneal thickness on the cut circle, from readings on the circle, from a surface through readings on several rings, or from
// one central reading. Decides the figures, not whether a depth may be planned from them.
//
// The first and the last rest on the quadratic thickness profile T(r) = Tm (1 + TV r^2), r the distance from the map's centre,
// TV = 0.0088 +- 0.0020 mm^-2: 80 normal eyes, horizontal meridian, optical pachometry (Acta Ophthalmol, year to be
// confirmed); it gives +0.9 % at 1 mm and +22 % at 5 mm.
#pragma once

#include "eye/limbus.hpp"
#include "eye/surface.hpp"
#include "measure/angle.hpp"

#include <optional>
#include <vector>

namespace eye {

inline constexpr double thickness_rise_per_mm2 = 0.0088;     // TV, see above
inline constexpr double thickness_rise_sd_per_mm2 = 0.0020;  // its SD between eyes

/// Readings on a ring whose diameter is this near that of the cut count as on it, and are carried to it by the profile above.
inline constexpr Length on_the_cut = measure::nm(250'000);

/// One reading on a ring about the cut's centre; `ring` is a diameter.
struct RingReading {
    Length ring{};
    Angle at{};
    Length thickness{};
    bool operator==(const RingReading&) const = default;
};

struct Thickness {
    Length thinnest{};                   // to 0.1 um
    std::optional<Angle> thinnest_at{};  // none: the direction is not known
    Length mean{};                       // of the 360, to 0.1 um
    double u_um = 0;                     // one standard deviation of the thinnest
    std::optional<Length> rms{};         // of the residuals, over all readings; none without spare readings
    int order = 0;                       // of the fit or of the surface; 0: no fit
    std::vector<Length> profile{};       // 360, index = whole degree, to 0.1 um
    std::vector<double> u_round_um{};    // 360, one standard deviation of each of them
    std::vector<OddReading> odd{};       // that the others do not bear out; used all the same
    bool operator==(const Thickness&) const = default;
};

/// Trigonometric least squares through readings near the cut circle, each first carried to it by the profile above. Order
/// min(2, (n - 1) / 2), lowered while the root of the leverage is over 2 at any whole degree (a singular fit counts as
/// over); none if only a mean would be left. `sd` is the repeatability of one reading.
std::optional<Thickness> fit_circle(const std::vector<RingReading>& readings, Length diameter, Length sd);

/// The surface on the cut, which it supports all round. The thinnest is never above a reading that lies on the cut.
Thickness from_surface(const Surface& surface, const std::vector<MapReading>& readings, const Cut& cut);

/// The profile above carried out from a central reading. The thinnest is 23 um under the least: the amplitude of the
/// difference between above and below (20 to 26 um in 303 corneas, Insight 1993;18(4):16-22, PMID 8301187), direction unknown.
Thickness from_centre(Length central, const Cut& cut, Length sd);

}  // namespace eye
