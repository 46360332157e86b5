// Breaking text into lines by words. A single word wider than the room stays whole; the caller sees it by its width.
#pragma once

#include "picture/lettering.hpp"

#include <string>
#include <vector>

namespace picture {

std::vector<std::string> wrap(const std::string& text, Type type, double width, const Lettering& lettering);
double widest(const std::vector<std::string>& lines, Type type, const Lettering& lettering);
/// Baseline to baseline.
double pitch(Type type, const Lettering& lettering);

}  // namespace picture
