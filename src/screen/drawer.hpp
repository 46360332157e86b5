// One undraped screen for two readers (set-up B): the Table view carries a bar with what the circulating nurse must know, and a
// drawer with the Desk's actions, opened and closed by one tap. While the blade can turn the drawer is narrow: it lies over the path or
// beside the card, never over the count target, the figure or a clock.
#pragma once

#include "screen/table_parts.hpp"

namespace screen {

/// What the Table view shows of the Desk. `narrow`: while the blade can turn. Ids of its targets begin with `drawer_prefix`.
Drawer drawer(DeskModel desk, bool open, bool narrow, const Words& words);
inline constexpr auto drawer_prefix = "desk/";
/// What is typed without a keyboard takes a page of its own: digits, names or letters under the finger. None: nothing is typed now.
std::optional<FormModel> typing_page(DeskModel desk, const Words& words);

/// How many actions stand in it at once; the last of more turns on.
inline constexpr std::size_t narrow_actions = 4, wide_actions = 8;

/// Makes room for bar and drawer: the first target stays where it is.
TableLayout with_drawer(TableLayout layout, const Drawer& drawer, const Pen& pen);
void draw_drawer(Pen& pen, const Drawer& drawer, const TableLayout& layout);

}  // namespace screen
