// Breaking text into lines by words. Of the program's own texts a single word wider than the room stays whole, and the caller sees it
// by its width; what a person typed is broken anywhere before it is lost.
#pragma once

#include "picture/lettering.hpp"

#include <string>
#include <vector>

namespace picture {

std::vector<std::string> wrap(const std::string& text, Type type, double width, const Lettering& lettering);
/// What a person typed: lines are filled one after the other and keep its blanks, and a word wider than a line is broken where it ends.
std::vector<std::string> wrap_typed(const std::string& text, Type type, double width, const Lettering& lettering);
double widest(const std::vector<std::string>& lines, Type type, const Lettering& lettering);
/// Baseline to baseline.
double pitch(Type type, const Lettering& lettering);

}  // namespace picture
