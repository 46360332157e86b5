// The pages that the Plan view turns to: why a plan in use is changed, and a reading put in or mended with the keypad.
#include "screen/format.hpp"
#include "screen/keypad.hpp"
#include "screen/new_case.hpp"
#include "screen/pages.hpp"
#include "screen/plan_view.hpp"

#include <utility>

namespace screen {

PickModel plan_why(const PlanSeen& seen, const Words& words) {
    PickModel made{.strip = seen.strip, .title = words("plan-view.why_title"), .banner = seen.banner};
    const std::string spokes = seen.plan.target ? spokes_text(*seen.plan.target, 0, words) : words("plan.refused");
    made.lines = {words("plan-view.why_line", {spokes})};
    made.choices = reason_choices(
        "plan", words, [&](const std::string& why) { return guide::AcceptPlan{.inputs = seen.inputs, .plan = seen.plan, .why = why}; });
    for (Target& one : made.choices) one.weight = Weight::Theatre;
    made.foot = {turn_to("back", words("page.back"), "", {.page = "plan"})};
    return made;
}

FormModel plan_reading(const plan::Inputs& inputs, const ScreenState& screen, const Words& words) {
    const bool added = screen.argument == "new";
    FormModel made{.title = words(added ? "plan-view.add_title" : "plan-view.mend_title"), .lines = {words("plan-view.form_line")}};
    const TypedReading typed = typed_reading(inputs, screen);
    for (const std::string field : {"at", "um", "ring"}) {
        const std::string id = "plan-" + field;
        const auto value = screen.draft.find(id);
        FormModel::Field one{.now = screen.field == id};
        if (value != screen.draft.end()) one.value = field == "at" ? value->second : typed_figure(value->second, words);
        one.target = turn_to("field-" + id, words("plan-view.field_" + field), "", {.page = "field", .argument = id});
        one.target.weight = Weight::Elsewhere;
        if (typed.field == id && !one.value.empty()) one.problem = words(typed.problem);
        made.fields.push_back(std::move(one));
    }
    made.keys = screen.field == "plan-at" ? keypad(Pad::Time, false, words) : figure_keypad(decimal_sign(words), false);
    made.foot = {turn_to("back", words("page.back"), "", {.page = "plan"}), turn_to("erase", words("form.erase"), "", {.page = "erase"})};
    if (!added) made.foot.push_back(turn_to("remove-reading", words("plan-view.remove"), "", {.page = "plan-remove"}));
    // Always there: in its place another target would be tapped for it. What is wrong stands at its field.
    made.foot.push_back(turn_to("put-reading", words("plan-view.put_in"), "", {.page = "plan-put"}));
    made.foot.back().look = Look::Filled;
    if (!typed.reading) made.foot.back().why_not = words("plan-view.incomplete");
    for (Target& one : made.foot) one.weight = Weight::Elsewhere;
    return made;
}

}  // namespace screen
