// The Plan view of invented eyes, as it opens and with each of its panels, in every use: for the audit and for pictures.
#pragma once

#include "screen/plan_view.hpp"
#include "screen/samples.hpp"

namespace samples {

/// Eight readings on the cut by OCT, 0.80 of the thinnest, the sizes of the shipped profiles.
plan::Inputs eight_readings();
/// Readings on three rings, about the map's centre.
plan::Inputs three_rings();
screen::PlanSeen plan_seen(const plan::Inputs& inputs, screen::PlanSeen::Use use, const screen::PlanPage& page = {});
std::vector<Sample> plan_views(const std::string& language = "en");

}  // namespace samples
