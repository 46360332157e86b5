// The targets of the cut, apart from those of the other steps; and what both are made with.
#pragma once

#include "screen/pages.hpp"

#include <utility>

namespace screen {

inline Target as(Target made, Look look, Press press = Press::Tap) {
    made.look = look;
    made.press = press;
    return made;
}

/// What stands last in the column wherever something else can happen.
Target something_else(const Words& words);
/// `groove`: the blade was below zero, so there is one to go on from. Held: it ends the cut for good.
Target by_hand(Look look, bool groove, const Words& words);
std::vector<Target> lost_hand(const guide::CaseState& state, const Around& around, const Words& words);
std::vector<Target> cut_hand(const guide::CaseState& state, const Around& around, const Words& words);

}  // namespace screen
