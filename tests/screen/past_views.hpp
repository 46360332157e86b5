// The pages over invented past cases, in every use: for the audit, for pictures, and for the tests of their models.
#pragma once

#include "screen/past_view.hpp"
#include "screen/samples.hpp"

namespace samples {

/// Forty invented cases that are over, with a measured depth after every fifth cut, and one that stands open.
std::vector<past::Summary> past_cases();
/// What the pages are made of, over these cases.
screen::PastSeen past_seen(const std::vector<past::Summary>& cases, const past::Filter& filter, const std::string& language = "en");
/// A case of the shipped guide that was done to its end, with a departure and a note on the way.
guide::CaseState case_that_is_over(const std::string& language = "en");
std::vector<Sample> past_views(const std::string& language = "en");

}  // namespace samples
