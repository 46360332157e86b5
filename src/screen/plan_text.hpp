// A plan as plain text with its working, in the order in which it is read aloud: what stops it, sizes, spokes, the blade
// ladder with its cautions, sutures, everything else that is to be known. Every figure of depth has its uncertainty and its
// source beside it. Pure; the figures are made in plan/.
#pragma once

#include "plan/plan.hpp"
#include "screen/words.hpp"

#include <string>

namespace screen {

std::string plan_text(const plan::Inputs& inputs, const plan::Plan& plan, const Words& words);

}  // namespace screen
