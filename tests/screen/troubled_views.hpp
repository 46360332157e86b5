// Views on a station with something wrong: each banner, and the muted voice, where room is least.
#pragma once

#include "screen/samples.hpp"

namespace samples {

/// In the words of a language.
std::vector<Sample> troubled(const std::string& language = "en");

}  // namespace samples
