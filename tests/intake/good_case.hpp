// A case file with no more than what is required; the tests change one thing of it.
#pragma once

#include <string>

namespace test {

// Line numbers in the rows count from here: [case] is line 1.
inline const std::string good_case = R"([case]
reference = "K-0147"
date = 2026-11-25
eye = "right"
reason = "scar"
[eye]
keratometry_D = 43.5
white_to_white_mm = [11.8, 11.1]
[thickness]
method = "oct"
readings = [
  { ring_mm = 7.5, clock = "12:00", um = 655 },
  { ring_mm = 7.5, meridian_deg = 225, um = 612 },
]
[host]
trephine = "suction-trephine"
diameter_mm = 7.5
[donor]
punch = "vacuum-punch"
diameter_mm = 7.75
[aim]
share = 0.80
)";

}  // namespace test
