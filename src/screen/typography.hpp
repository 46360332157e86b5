// Sizes of lettering and targets in millimetres, from minutes of arc at a reading distance.
// h = 2 d tan(alpha / 2); cap height. Minima: look.md's table, for the scrub nurse at 0.7 m, the circulating nurse at 0.6 m
// and the surgeon at 3 m. Where a glass is too small for the surgeon's distance, the Far view is for a shorter one and says so.
#pragma once

#include "picture/shape.hpp"

#include <array>

namespace screen {

enum class Hand { Right, Left };

struct Glass {
    double width_mm = 0, height_mm = 0;
    Hand hand = Hand::Right;
    bool portrait() const { return height_mm > width_mm; }
};

/// Cap height in mm of what subtends `arcmin` at `distance_mm`.
double cap_mm(double arcmin, double distance_mm);

/// Who reads a view: each view is for one of them.
enum class Reader { Table, Desk, Far };

struct Typography {
    std::array<double, picture::types> cap_mm{};  // by picture::Type
    Reader reader = Reader::Table;
    double of(picture::Type type) const { return cap_mm[static_cast<std::size_t>(type)]; }
};

Typography typography(Reader reader, const Glass& glass);
Typography table_typography(const Glass& glass);
Typography desk_typography(const Glass& glass);
Typography far_typography(const Glass& glass);
/// The least cap height a role may have on the view of a reader.
double minimum_mm(Reader reader, picture::Type type);
/// From how far the Far view can be read in this lettering, at most 3 m.
double far_reach_mm(const Typography& type);
/// The least cap height a role may have on the Table view.
double table_minimum_mm(picture::Type type);
bool bold(picture::Type type);

}  // namespace screen
