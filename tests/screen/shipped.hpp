// The views of the shipped procedure on an invented case, one a step, with their pages: real words at their real length.
#pragma once

#include "screen/samples.hpp"

namespace samples {

std::vector<Sample> shipped(const std::string& language = "en");

}  // namespace samples
