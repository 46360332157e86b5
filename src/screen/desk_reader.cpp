// The page on which a barcode reader is tested, and what the Desk can do before a case stands open.
#include "screen/desk_pages.hpp"

namespace screen {

Target desk_reader_target(const Words& words) { return desk_keyed("R", turn_to("reader", words("reader.title"), "", {.page = "reader"})); }

DeskPage desk_reader_page(const DeskState& desk, const Words& words) {
    return {.heading = words("reader.title"),
            .line = desk.argument.empty() ? words("reader.line") : desk.argument,
            .actions = {desk_back(words)}};
}

DeskPage empty_desk_page(const DeskState& desk, const Around& around, const Words& words) {
    if (desk.page == "reader") return desk_reader_page(desk, words);
    return {.actions = {desk_open("G", "measure", words("set_up.measure"), {.page = "measure"}), desk_reader_target(words),
                        desk_open("D", "dim", words(around.dimmed ? "set_up.bright" : "set_up.dim"), {.page = "dim"})}};
}

}  // namespace screen
