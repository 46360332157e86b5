// The Plan view: what it says, what its targets do to the screen, and the pages it turns to. The figures are the plan's; what is
// changed here is not in use until the hold, and a what-if never is.
#pragma once

#include "screen/screen_state.hpp"
#include "screen/words.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace screen {

/// What the Plan view is made from, besides what the screen remembers.
struct PlanSeen {
    enum class Use {
        Begin,   // no case yet: the hold begins one
        Agree,   // the guide asks for the plan now
        Change,  // a plan is in use: another wants a reason
        NotYet,  // the guide asks for it later
        Over     // the record is locked
    } use{};
    plan::Inputs base{};  // as the case has them, or as they are in use
    plan::Plan base_plan{};
    plan::Inputs inputs{};  // as looked at here
    plan::Plan plan{};
    std::optional<Strip> strip{};
    std::optional<Banner> banner{};  // of the machine; goes before what the view itself has to say
};

/// What is looked at: the base with what was changed here, and with the reading in doubt moved.
plan::Inputs looked_at(const plan::Inputs& base, const PlanPage& page);
/// What would be used: the same without the doubt.
plan::Inputs wanted(const plan::Inputs& base, const PlanPage& page);

PlanModel plan_view(const PlanSeen& seen, const ScreenState& screen, const Words& words);
/// Why a plan in use is changed: a reason closes it, and the plan that was looked at takes the other's place.
PickModel plan_why(const PlanSeen& seen, const Words& words);
/// A reading put in or mended: a form with the keypad.
FormModel plan_reading(const plan::Inputs& inputs, const ScreenState& screen, const Words& words);

/// Whether a target turns something on the Plan view itself.
bool of_plan_view(const Show& show);
/// What such a target does; `base` as in PlanSeen.
ScreenState after_plan(ScreenState screen, const Show& show, const plan::Inputs& base);

// ---- parts, in files of their own ----

/// The panel of the figure that was asked about; none while none is.
std::optional<PlanModel::Panel> plan_panel(const PlanSeen& seen, const PlanPage& page, const Words& words);
/// What a plan comes to, in a line: spokes, thinnest, share of it, chance of entering.
std::string plan_outcome(const plan::Plan& plan, const Words& words);
/// Why this number and not one more, in a line.
std::string why_not_more(const PlanSeen& seen, const Words& words);
picture::ThicknessMap thickness_map(const plan::Inputs& inputs, const plan::Plan& plan, const Words& words);
picture::WallProfile wall_profile(const plan::Inputs& inputs, const plan::Plan& plan, const Words& words);
/// What was typed into the form, if it is a reading: the first thing that is wrong with it otherwise, by field.
struct TypedReading {
    std::optional<plan::Reading> reading{};
    std::string field{}, problem{};
};
TypedReading typed_reading(const plan::Inputs& inputs, const ScreenState& screen);

}  // namespace screen
