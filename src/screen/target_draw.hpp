// A target as it looks in its box: filled, plain, hollow, watch, stop; dead, held, flashing. The label wraps by words and
// steps down among the roles; it never leaves the target and never falls below look.md's minimum.
#pragma once

#include "screen/pen.hpp"

#include <span>

namespace screen {

enum class Rank { First, Wide, Several, Small };  // how big a label a target may have; several of a kind: a big one where it has air

/// `most`: the biggest role its label may have, where targets of one kind share theirs.
void draw_target(Pen& pen, const Target& target, const Box& box, Rank rank, Type most = Type::Numeral);
/// The role that the labels of targets of one kind share in boxes of one size: the smallest that any of them needs, none bigger than
/// `most`.
Type shared_type(const Pen& pen, std::span<const Target> targets, const Box& box, Rank rank, Type most = Type::Numeral);
/// A target whose inside the view letters itself: its ground, and where it is touched. Returns the ink for its lettering.
Ink draw_ground(Pen& pen, const Target& target, const Box& box);
/// What the lettering of a target stands on.
Ink ground_of(const Target& target);
/// The least height and width of a target of a weight, look.md.
double least_side_mm(Weight weight);
/// Whether all that must be read goes into the box: the label, and the reason of a dead target.
bool legible(const Pen& pen, const Target& target, const Box& box, Rank rank);

}  // namespace screen
