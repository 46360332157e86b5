// What the panels of the Plan view share: the plan that is looked at, its rungs, figures as text, and rows that say how, from
// where and how sure.
#pragma once

#include "screen/plan_view.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace screen {

/// Whole micrometres, with a minus as print has it.
std::string whole_um(measure::Length length);
std::string whole_percent(double share);
/// Half of the 95 % interval of the thinnest.
std::string half_interval(const plan::Wall& wall);
/// The rung of so many spokes; none beyond the ladder.
const plan::Rung* rung_of(const plan::Plan& plan, int spokes);
std::optional<int> planned_spokes(const plan::Plan& plan);

struct PanelParts {
    const PlanSeen& seen;
    const Words& words;

    const plan::CaseFile& file() const { return seen.inputs.file; }
    const instrument::Trephine& trephine() const { return seen.inputs.trephine; }
    Row how(const std::string& id, const std::vector<std::string>& values = {}) const;
    Row source(const std::string& text) const;
    Row sure(const std::string& id, const std::vector<std::string>& values = {}) const;
    /// A note of the plan: what it says, and where that is from.
    void add(PlanModel::Panel& panel, const plan::Note& note) const;
};

PlanModel::Panel why_panel(const PanelParts& parts);
PlanModel::Panel reading_panel(const PanelParts& parts, const PlanPage& page, std::size_t index);

}  // namespace screen
