// Host and donor diameters: oversize, distance to the limbus, what button to expect. What speaks for and against is in notes.
#pragma once

#include "plan/plan.hpp"

namespace plan {

/// Usual decentration of a mechanical cut, 0.58 +- 0.23 mm to the limbus (Ophthalmic Surg Lasers 1998;29:106-13).
inline constexpr Length usual_offset = measure::nm(580'000);

Sizes sizes_from(const CaseFile& file);

}  // namespace plan
