// The Desk on a case of the shipped guide: what it shows, and an action by its key.
#pragma once

#include "screen/desk.hpp"
#include "screen/models.hpp"

#include <optional>
#include <string>

namespace models {

inline screen::DeskModel shown(Seen& seen, const screen::DeskState& state = {}) {
    seen.around.now = seen.at.now;
    return screen::desk(seen.at.state, state, seen.around, words());
}
inline std::optional<screen::Target> by_key(const screen::DeskModel& model, const std::string& key) {
    for (const screen::Target& one : model.actions)
        if (one.key == key) return one;
    return std::nullopt;
}
inline guide::Intent intent(const screen::Target& target) { return std::get<std::vector<guide::Intent>>(target.act).front(); }

}  // namespace models
