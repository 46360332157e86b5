// What the Desk can do for the station itself, whatever became of a case: light, wiping, voice, and the test of a barcode reader.
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

DeskPage desk_sound_page(const Around& around, const Words& words) {
    const std::string volume = std::to_string(around.volume.value_or(0));
    return {.heading = words("desk.sound"),
            .actions = {desk_open("M", "mute", words(around.muted ? "desk.unmute" : "desk.mute"), {.page = "mute"}),
                        desk_open("+", "louder", words("desk.louder", {volume}), {.page = "volume", .argument = "10"}),
                        desk_open("-", "softer", words("desk.softer", {volume}), {.page = "volume", .argument = "-10"}), desk_back(words)}};
}

DeskPage desk_screen_page(const guide::CaseState& state, const Around& around, const Words& words) {
    DeskPage made{.heading = words("desk.screen"),
                  .actions = {desk_open("D", "dim", words(around.dimmed ? "set_up.bright" : "set_up.dim"), {.page = "dim"})}};
    if (may_wipe(state)) made.actions.push_back(desk_open("W", "wipe", words("desk.wipe"), {.page = "wipe"}));
    made.actions.push_back(desk_reader_target(words));
    made.actions.push_back(desk_back(words));
    return made;
}

void desk_add_station(std::vector<Target>& actions, const Around& around, const Words& words) {
    actions.push_back(desk_open("M", "screen", words("desk.screen"), {.page = "screen"}));
    if (around.volume) actions.push_back(desk_open("V", "sound", words("desk.sound"), {.page = "sound"}));
}

}  // namespace screen
