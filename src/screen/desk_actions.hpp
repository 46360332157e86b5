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

/// "plan": the surgeon's number of spokes is typed, what it comes to stands beside it; "plan-why": the reason puts it in use.
DeskPage desk_spokes_page(const guide::CaseState& state, const DeskState& desk, const Words& words);
DeskPage desk_plan_why_page(const guide::CaseState& state, const DeskState& desk, const Words& words);

}  // namespace screen
