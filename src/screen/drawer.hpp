// One undraped screen for two readers (set-up B): the Table view carries a bar with what the circulating nurse must know, and a
// drawer with the Desk's actions, opened and closed by one tap. While the blade can turn, and in an emergency, the drawer is narrow: it
// lies over the path or beside the card, never over the count target, the figure, a clock or what is to be done.
#pragma once

#include "guide/state.hpp"
#include "screen/table_parts.hpp"

namespace screen {

/// Whether the card must be read beside an open drawer: while the blade can turn, and while something stands that stops everything.
bool narrow_drawer(const guide::CaseState& state);
/// What the Table view shows of the Desk. Ids of its targets begin with `drawer_prefix`.
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
