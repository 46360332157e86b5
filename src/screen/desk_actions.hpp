// The actions of each page of the Desk.
#pragma once

#include "screen/desk.hpp"

namespace screen {

/// A page of the Desk: what stands over its actions, the actions, and the field if one is open.
struct DeskPage {
    std::string heading{}, line{};
    std::vector<Target> actions{};
    std::optional<DeskModel::Field> field{};
};

DeskPage desk_page(const guide::CaseState& state, const DeskState& desk, const Around& around, const Words& words);

}  // namespace screen
