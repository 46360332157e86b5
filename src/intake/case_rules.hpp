// Rules for values of a case file that a surgeon's habits may give as well.
#pragma once

#include "intake/rules.hpp"
#include "plan/inputs.hpp"

namespace intake {

/// A share of the thinnest in whole thousandths, as the plan compares it.
Rule<int> aim_share();
Rule<int> own_spokes();
Rule<plan::Goal> aim_goal();
Rule<plan::Pattern> suture_pattern();

}  // namespace intake
