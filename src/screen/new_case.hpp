// A case made by touch: the fields a plan cannot do without, one at a time, with a keypad. What was typed becomes the text
// of a case file, so that there is one reader and one set of rules.
#pragma once

#include "screen/screen_state.hpp"
#include "screen/words.hpp"

#include <map>
#include <string>
#include <vector>

namespace screen {

/// Sizes that the two profiles hold, as they are spoken of, to choose from.
struct SizesInStock {
    std::vector<std::string> host{}, donor{};
};

/// Problems by the key of the case file, as the reader found them: what to say, or nothing where what is allowed is to be said.
using FieldProblems = std::map<std::string, std::string>;

FormModel new_case(const ScreenState& screen, const SizesInStock& sizes, const FieldProblems& problems, const Words& words);
/// The decimal sign of the language, and a figure that was typed, also half of one, shown with it.
std::string decimal_sign(const Words& words);
std::string typed_figure(std::string typed, const Words& words);
/// The case file's text. `day` is the day of operation as ISO text.
std::string case_text(const ScreenState& screen, const std::string& day);

}  // namespace screen
