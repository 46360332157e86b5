// A plan as JSON, the form and precision of `plan --json`: um to 0.1 (travel to 0.001, the way to the limbus whole), share to
// 4 decimals, chance to 6 significant digits, degrees to 2 decimals. Absent is null. The plan itself is made elsewhere.
#pragma once

#include "plan/plan.hpp"
#include "screen/words.hpp"

#include <string>

std::string plan_json(const plan::Inputs& inputs, const plan::Plan& plan, const screen::Words& words);
