// Instrument profiles as values. Every figure in one is the user's to set from the leaflet in the pack.
//
// A trephine:  kind = "trephine", id, name, advance_um (tenths allowed), spokes_per_turn, lower = "clockwise" |
//              "counter-clockwise" (as seen from above), raise, marks (0: none), mark_offset_deg (0), sizes_mm, suction (true),
//              [reach] mean, sd, n, source
// A punch:     kind = "punch", id, name, sizes_mm, dots (4), vacuum (true)
//
// advance_um is required and has no hidden default. Without [reach] the published figures stand: see `published_reach`.
#pragma once

#include "instrument/profile.hpp"
#include "measure/problem.hpp"
#include "measure/result.hpp"

#include <string>
#include <string_view>

namespace intake {

/// Reached depth over nominal travel: 83.7 +- 6.53 % of thickness reached where 80 % was aimed at gives 1.046 +- 0.082,
/// n = 11 cadaver eyes, 8.0 mm, host trephined with suction. Clin Ophthalmol 2014;8:2391-6.
instrument::Reach published_reach();

measure::Result<instrument::Trephine, measure::Problems> read_trephine(std::string_view text, const std::string& name);
measure::Result<instrument::Punch, measure::Problems> read_punch(std::string_view text, const std::string& name);

}  // namespace intake
