// Where the parts of the Table view stand on a glass. Decided by the glass and its lettering alone, never by the model, so
// that the biggest target stays where it is from the first spoke to the last.
#pragma once

#include "screen/pen.hpp"

namespace screen {

struct TableLayout {
    Box strip{};
    int strip_lines = 2;      // 2: the label of a clock stands under its value
    bool strip_rows = false;  // portrait: two rows of items
    Box path{};
    bool path_column = true;  // else a strip over the card
    Box card{};
    Box first{};          // the biggest target
    Box others{};         // the rows of the other targets
    Box bar{}, drawer{};  // on one screen for two readers
    int most_rows = 3, most_in_row = 3;
    bool grows = false;  // by a row of others, where those have no place
};

TableLayout table_layout(const Pen& pen);

}  // namespace screen
