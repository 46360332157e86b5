// The Desk's pages for a plan that the surgeon changes by word of mouth: the number of spokes, then why. What else a plan is made of
// is changed on the Plan view.
#include "screen/desk_actions.hpp"
#include "screen/plan_view.hpp"

#include <charconv>

namespace screen {
namespace {

std::optional<int> number(const std::string& text) {
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    return error == std::errc{} && end == text.data() + text.size() ? std::optional(value) : std::nullopt;
}

/// The plan in use with that many spokes below zero.
plan::Inputs with_spokes(const guide::CaseState& state, int spokes) {
    plan::Inputs made = guide::inputs_in_use(state);
    made.file.aim = {.goal = plan::Goal::Spokes, .share_permille = 0, .spokes = spokes, .entry_limit = made.file.aim.entry_limit};
    return made;
}

}  // namespace

DeskPage desk_spokes_page(const guide::CaseState& state, const DeskState& desk, const Words& words) {
    const std::string label = words("desk.plan");
    const auto spokes = number(desk.typed);
    const plan::Plan looked_at = plan::make(spokes ? with_spokes(state, *spokes) : guide::inputs_in_use(state));
    Target next = turn_to("plan-why", words("desk.plan_next"), "", {.page = "plan-why", .argument = desk.typed});
    if (!spokes) next.why_not = words("desk.type_first");
    if (!looked_at.target) next.why_not = words("plan.refused");
    const std::string comes_to = words(spokes ? "desk.plan_then" : "desk.plan_now", {plan_outcome(looked_at, words)});
    return {.heading = label,
            .line = words("desk.plan_line"),
            .actions = {desk_keyed("Enter", std::move(next)), desk_back(words)},
            .field = Typed{.label = words("desk.plan_field"), .text = desk.typed, .line = comes_to}};
}

DeskPage desk_plan_why_page(const guide::CaseState& state, const DeskState& desk, const Words& words) {
    const plan::Inputs inputs = with_spokes(state, number(desk.argument).value_or(0));
    const plan::Plan made = plan::make(inputs);
    DeskPage page{.heading = words("plan-view.why_title"), .line = plan_outcome(made, words)};
    for (Target& one : reason_choices(
             "plan", words, [&](const std::string& why) { return guide::AcceptPlan{.inputs = inputs, .plan = made, .why = why}; })) {
        page.actions.push_back(desk_keyed(std::to_string(page.actions.size() + 1), std::move(one)));
    }
    page.actions.push_back(desk_back(words));
    return page;
}

}  // namespace screen
