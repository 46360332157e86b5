// Keys under a finger, where there is no keyboard: which ones a field has, and on which side of a pad that is turned over. The letters
// are those of the language, from its wording. What a field takes and how much is for its page to say. Each key is a Show "key" with
// what it types, "turn" turns the pad over, "erase" takes the last letter back.
#pragma once

#include "screen/model.hpp"

namespace screen {

enum class Pad {
    Digits,
    Time,
    Words,     // letters with space; over: digits and signs
    Code,      // what labels are printed in, in any language; over: digits and signs
    Reference  // digits; over: letters
};
Keys keypad(Pad pad, bool turned, const Words& words);
/// Digits and point, three a row, with a sign where one may be typed. What is typed has a point in every language; `point` is how its
/// key is labelled.
Keys figure_keypad(const std::string& point, bool sign);
Target erase_key(const Words& words);

}  // namespace screen
