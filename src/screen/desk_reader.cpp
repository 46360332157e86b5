// The page on which a barcode reader is tested.
#include "screen/desk_actions.hpp"

namespace screen {

Target desk_reader_target(const Words& words) { return desk_keyed("R", turn_to("reader", words("reader.title"), "", {.page = "reader"})); }

DeskPage desk_reader_page(const DeskState& desk, const Words& words) {
    return {.heading = words("reader.title"),
            .line = desk.argument.empty() ? words("reader.line") : desk.argument,
            .actions = {desk_back(words)}};
}

}  // namespace screen
