#include "screen/drawer.hpp"

#include "screen/keypad.hpp"
#include "screen/pages.hpp"

#include <algorithm>

namespace screen {
namespace {

/// The same target under a finger instead of a key.
Target touched(Target target) {
    target.id = drawer_prefix + target.id;
    target.weight = Weight::Elsewhere;
    target.key.clear();
    return target;
}

bool leads_back(const Target& target) { return target.id == "desk-back"; }

/// The part of the actions that is turned to. Back stands last, before what turns on.
std::vector<Target> turned_to(std::vector<Target> all, std::size_t turned, std::size_t at_once, const Words& words) {
    const auto back = std::stable_partition(all.begin(), all.end(), [](const Target& one) { return !leads_back(one); });
    if (all.size() <= at_once) return all;
    const auto listed = static_cast<std::size_t>(back - all.begin());
    const std::size_t each = at_once - 1 - (all.size() - listed), pages = (listed + each - 1) / each, page = turned % pages;
    const std::size_t from = page * each, to = std::min(listed, from + each);
    std::vector<Target> made(all.begin() + static_cast<std::ptrdiff_t>(from), all.begin() + static_cast<std::ptrdiff_t>(to));
    made.insert(made.end(), back, all.end());
    made.push_back({.id = "more", .label = words("list.more"), .act = Show{.page = "turn"}});
    return made;
}

}  // namespace

bool narrow_drawer(const guide::CaseState& state) {
    const guide::Departure* away = departure_shown(state);
    return guide::cutting(state) || (away != nullptr && away->level == guide::Departure::Level::Stop);
}

Drawer drawer(DeskModel desk, bool open, bool narrow, const Words& words) {
    Drawer made{.nurse = std::move(desk.nurse), .stay = desk.stay, .open = open, .narrow = narrow};
    for (const Row& row : desk.step)
        if (row.label == words("card.open_now")) made.open_now = row;
    made.handle = {
        .id = std::string(drawer_prefix) + "drawer", .label = words(open ? "drawer.close" : "drawer.open"), .weight = Weight::Elsewhere};
    made.handle.act = Show{.page = "drawer"};
    made.banner = std::move(desk.banner);
    if (!open) return made;
    made.heading = std::move(desk.heading);
    made.line = std::move(desk.line);
    made.field = std::move(desk.field);
    if (!narrow) {
        made.rows = std::move(desk.times);
        made.rows.insert(made.rows.end(), desk.counts.begin(), desk.counts.end());
    }
    for (Target& one : turned_to(std::move(desk.actions), desk.turned, narrow ? narrow_actions : wide_actions, words))
        made.actions.push_back(touched(std::move(one)));
    return made;
}

std::optional<FormModel> typing_page(DeskModel desk, const Words& words) {
    if (!desk.field || desk.keys.all.empty()) return std::nullopt;
    FormModel made{.title = std::move(desk.heading), .lines = {std::move(desk.line)}, .typed = std::move(desk.field)};
    made.keys = std::move(desk.keys);
    for (Target& one : made.keys.all) one = touched(std::move(one));
    const auto forth = std::stable_partition(desk.actions.begin(), desk.actions.end(), leads_back);
    desk.actions.insert(forth, erase_key(words));
    for (Target& one : desk.actions) {
        made.foot.push_back(touched(std::move(one)));
        made.foot.back().weight = Weight::Theatre;  // room for why it is dead, and no second touch on the next page
    }
    made.foot.back().look = Look::Filled;
    made.banner = std::move(desk.banner);
    return made;
}

}  // namespace screen
