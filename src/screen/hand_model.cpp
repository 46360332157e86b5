// The hand's column: what can be touched at each step. The first target is the biggest; targets that belong together stand
// side by side; where each stands does not change while a step lasts.
#include "eye/frame.hpp"
#include "measure/expect.hpp"
#include "screen/format.hpp"
#include "screen/own_past.hpp"
#include "screen/pages.hpp"

#include <algorithm>
#include <utility>

namespace screen {
namespace {

using guide::CaseState;
using guide::Closes;
using guide::Step;

Target as(Target made, Look look, Press press = Press::Tap) {
    made.look = look;
    made.press = press;
    return made;
}

Target something_else(const Words& words) {
    return as(turn_to("something-else", words("hand.something_else"), "", {.page = "departures"}), Look::Watch);
}

/// The step before in its phase, once it is done.
const Step* step_before(const CaseState& state, const Step& step) {
    const guide::Phase* phase = guide::phase_of(state.brief.procedure, step.id);
    const Step* before = nullptr;
    for (const Step& one : phase->steps) {
        if (one.id == step.id) break;
        if (guide::applies(state, one)) before = &one;
    }
    return before != nullptr && state.steps.contains(before->id) ? before : nullptr;
}

/// The suture that was told last, named: what an undo takes back is never to be guessed.
std::optional<Target> undo_suture(const CaseState& state, const Words& words) {
    const auto* tied = state.undoable.empty() ? nullptr : std::get_if<guide::SutureTied>(&state.undoable.back().fact);
    if (tied == nullptr) return std::nullopt;
    return target("undo", words("suture.undo", {std::to_string(tied->n)}), words("suture.undo_line"), {guide::UndoTap{}});
}

/// What a mistaken tap at the step before is taken back by.
std::optional<Target> back_step(const CaseState& state, const Step& step, const Words& words) {
    const Step* before = step_before(state, step);
    if (before == nullptr) return std::nullopt;
    if (before->closes == Closes::Sutures && step.closes != Closes::Counts) return undo_suture(state, words);
    if (before->closes != Closes::Tap && before->closes != Closes::Hold) return std::nullopt;
    return target("back-step", words("hand.back_step"), filled(before->title, state, words),
                  {guide::ReopenStep{.step = before->id, .why = words("why.tapped_early")}});
}

/// Back a step, skip, something else: what stands below the step's own targets.
void add_rest(std::vector<Target>& hand, const CaseState& state, const Step& step, const Words& words) {
    // Before what else a suture may need: alone in its row, where it stands when none is tied and when three are.
    const bool tied_first = step.closes == Closes::Sutures && !hand.empty();
    if (const auto bulging = bulging_target(state)) hand.insert(tied_first ? std::next(hand.begin()) : hand.end(), *bulging);
    if (step.id == "debrief") hand.push_back(phase_times_target(words));
    if (auto back = back_step(state, step, words)) hand.push_back(*std::move(back));
    // In the quiet part of the guide nothing asks for a reason.
    if (step.may_skip && !step.quiet && (step.closes == Closes::Tap || step.closes == Closes::Hold)) {
        hand.push_back(turn_to("skip", words("hand.skip"), words("hand.skip_line"), {.page = "skip", .argument = step.id}));
    }
    if (!state.reasons_owed.empty() && !guide::cutting(state)) {
        const std::size_t owed = state.reasons_owed.size();
        hand.push_back(as(turn_to("reason", words(owed == 1 ? "hand.reason_one" : "hand.reason", {std::to_string(owed)}),
                                  words("hand.reason_line"), {.page = "reason"}),
                          Look::Watch));
    }
    if (!departures_of(state, step).empty()) hand.push_back(something_else(words));
}

/// The first of these clocks that a tap would turn: one that runs is not started, one that stands is not stopped.
std::optional<std::string> clock_to_turn(const CaseState& state, const std::vector<guide::ClockId>& clocks, bool running) {
    const auto is_so = [&](const guide::ClockId& clock) { return guide::clock_running(state, clock) == running; };
    const auto found = std::find_if(clocks.begin(), clocks.end(), is_so);
    return found == clocks.end() ? std::nullopt : std::optional(*found);
}

Target finish(const CaseState& state, const Step& step, const Words& words) {
    const bool hold = step.closes == Closes::Hold;
    const auto started = clock_to_turn(state, step.starts, false), stopped = clock_to_turn(state, step.stops, true);
    const std::string clock = started   ? words("hand.starts", {words("clock." + *started)})
                              : stopped ? words("hand.stops", {words("clock." + *stopped)})
                                        : "";
    return as(target("finish-" + step.id, filled(step.button, state, words), hold ? words("hand.hold") : clock,
                     {guide::FinishStep{.step = step.id}}),
              Look::Filled, hold ? Press::Hold : Press::Tap);
}

void add_late(std::vector<Target>& hand, const CaseState& state, const Step& step, const Words& words) {
    if (!clock_to_turn(state, step.starts, false) && !clock_to_turn(state, step.stops, true)) return;
    for (const int ago_s : {15, 30, 60}) {
        hand.push_back(target("ago-" + std::to_string(ago_s), words("hand.ago_" + std::to_string(ago_s)), "",
                              {guide::FinishStep{.step = step.id, .ago_s = ago_s}}));
        hand.back().late = true;
    }
}

std::vector<Target> side_hand(const Words& words) {
    return {as(target("side-right", words("side.right"), words("side.line"), {guide::EnterSide{.side = "right"}}), Look::Filled),
            as(target("side-left", words("side.left"), words("side.line"), {guide::EnterSide{.side = "left"}}), Look::Filled)};
}

std::vector<Target> plan_hand(const CaseState& state, const Around& around, const Words& words) {
    Target accept = as(target("accept-plan", words("plan.accept"), words("hand.hold"), {}), Look::Filled, Press::Hold);
    if (around.proposed && around.proposed->target) {
        accept.act = std::vector<guide::Intent>{guide::AcceptPlan{.inputs = state.inputs, .plan = *around.proposed, .why = ""}};
    } else {
        accept.why_not = words("plan.refused");
    }
    return {accept, turn_to("to-plan", words("plan-view.open"), words("plan-view.open_line"), {.page = "plan"})};
}

/// `groove`: the blade was below zero, so there is one to go on from. Held: it ends the cut for good.
Target by_hand(Look look, bool groove, const Words& words) {
    return as(target("by-hand", words("lost.by_hand"), words(groove ? "lost.by_hand_line" : "lost.no_groove"),
                     {guide::EndCut{.how = guide::CutEnd::Surgeon}}),
              look, Press::Hold);
}

bool spoke_left_out(const Around& around) { return around.bounced == std::optional<std::string>("spoke"); }

/// Where the pedal counts, the press that was left out was the pedal's.
Target count_it(const CaseState& state, const Around& around, const Words& words) {
    const guide::Source from = state.holder == std::optional(guide::Source::FootSwitch) ? guide::Source::FootSwitch : around.here;
    return as(target("count-it", words("cut.count_it"), words("cut.count_it_line"), {guide::CountSpoke{.source = from}}), Look::Hollow);
}

/// By hand from the groove leads; before there is one, a new seating does.
std::vector<Target> lost_hand(const CaseState& state, const Around& around, const Words& words) {
    const bool groove = guide::blade(state).position > 0;
    Target re_seat = target("re-seat", words("lost.re_seat"), words(groove ? "lost.re_seat_line" : "lost.re_seat_anew"),
                            {guide::ReopenStep{.step = "zero", .why = words(groove ? "why.re_seated" : "why.seated_anew")}});
    re_seat.look = groove ? Look::Plain : Look::Filled;
    re_seat.press = groove ? Press::Tap : Press::Hold;  // held where the spoke stood
    std::vector<Target> hand{
        by_hand(groove ? Look::Filled : Look::Plain, groove, words), std::move(re_seat),
        as(target("spoke-lost", words("lost.spoke"), words("lost.spoke_line"), {guide::CountSpoke{.source = around.here}}), Look::Hollow)};
    if (!groove) std::swap(hand[0], hand[1]);
    if (state.holder && *state.holder != around.here) hand.back().why_not = words("cut.held_elsewhere");
    if (spoke_left_out(around)) hand.back() = count_it(state, around, words);
    hand.push_back(target("undo", words("hand.undo"), words("lost.undo_line"), {guide::UndoTap{}}));
    hand.push_back(as(target("entered", words("cut.entered"), "", {guide::EndCut{.how = guide::CutEnd::Entered}}), Look::Watch));
    hand.push_back(something_else(words));
    return hand;
}

Target spoke_target(const CaseState& state, const Around& around, const Words& words) {
    const guide::Blade blade = guide::blade(state);
    const bool reached = blade.planned && blade.to_go == 0 && blade.position > 0;
    Target spoke = as(target("spoke", words(reached ? "cut.over_plan" : "cut.spoke"),
                             words(reached ? "cut.over_plan_line" : "cut.spoke_line"), {guide::CountSpoke{.source = around.here}}),
                      reached ? Look::Hollow : Look::Filled);
    spoke.weight = Weight::Spoke;
    if (state.holder && *state.holder != around.here) spoke.why_not = words("cut.held_elsewhere");
    return spoke;
}

bool undoes_deeper(const CaseState& state) {
    const guide::Undoable* newest = guide::newest_to_undo(state);
    return newest != nullptr && std::holds_alternative<guide::PlanMoved>(newest->fact);
}

/// Held elsewhere, the count is taken over here; without a Desk this is also where the pedal gets it back.
std::optional<Target> change_of_holder(const CaseState& state, const Around& around, const Words& words) {
    if (!state.holder) return std::nullopt;
    std::optional<Target> made{};
    if (*state.holder != around.here) {
        made = target("take-count", words("cut.take_count"), words("hand.hold"), {guide::HoldCount{.source = around.here}});
    } else if (!around.foot_switch.empty() && !around.has_desk && !around.alone) {
        made = target("foot-counts", words("desk.foot"), words("hand.hold"), {guide::HoldCount{.source = guide::Source::FootSwitch}});
    }
    if (!made) return std::nullopt;
    made->press = Press::Hold;
    made->apart = true;
    return made;
}

std::vector<Target> cut_hand(const CaseState& state, const Around& around, const Words& words) {
    const guide::Blade blade = guide::blade(state);
    const bool to_entry = state.plan && state.plan->target && !state.plan->target->spokes;
    const bool reached = blade.planned && blade.to_go == 0 && blade.position > 0;
    std::vector<Target> hand{
        spoke_target(state, around, words), target("raised", words("cut.raised"), words("cut.raised_line"), {guide::RaiseBlade{}}),
        target("undo", words("hand.undo"), words(undoes_deeper(state) ? "hand.undo_deeper_line" : "cut.undo_line"), {guide::UndoTap{}})};
    Target deeper = as(target("deeper", words("cut.deeper"), words("cut.deeper_line"), {guide::GoDeeper{}}), Look::Plain, Press::Hold);
    if (!blade.planned) deeper.why_not = words("cut.no_plan");
    if (spoke_left_out(around)) {
        hand.push_back(count_it(state, around, words));
        hand.back().in_place_of = {std::move(deeper)};
    } else {
        hand.push_back(std::move(deeper));
    }
    hand.push_back(
        as(target("suction-lost", words("cut.suction_lost"), "", {guide::TurnSuction{.to = guide::Suction::Lost}}), Look::Watch));
    hand.push_back(as(target("entered", words("cut.entered"), "", {guide::EndCut{.how = guide::CutEnd::Entered}}),
                      to_entry ? Look::Filled : Look::Watch));
    hand.push_back(as(target("cut-done", words("cut.done"), words(reached ? "cut.done_reached" : "cut.done_line"),
                             {guide::EndCut{.how = reached ? guide::CutEnd::AtPlan : guide::CutEnd::Surgeon}}),
                      reached ? Look::Filled : Look::Plain, reached ? Press::Tap : Press::Hold));
    for (Target& one : hand) one.stays = one.id != "deeper" && one.id != "count-it";
    if (auto change = change_of_holder(state, around, words)) hand.push_back(*std::move(change));
    return hand;
}

std::vector<Target> suture_hand(const CaseState& state, const Words& words) {
    const auto next = guide::next_suture(state);
    std::vector<Target> hand{};
    if (next) {
        const plan::Suture& suture = state.plan->order[static_cast<std::size_t>(*next - 1)];
        const std::string at = eye::short_clock_text(measure::centideg(suture.centideg));
        hand.push_back(as(target("tied-" + std::to_string(*next), words("suture.tied", {std::to_string(*next)}),
                                 words("suture.tied_line", {at}), {guide::TieSuture{.n = *next, .centideg = suture.centideg}}),
                          Look::Filled));
        hand.push_back(turn_to("other-mark", words("suture.other_mark"), words("suture.other_mark_line"),
                               {.page = "other-mark", .argument = std::to_string(*next)}));
    }
    if (!state.sutures.empty()) {
        hand.push_back(turn_to("redo", words("suture.redo"), words("suture.redo_line"), {.page = "redo"}));
    }
    if (auto undo = undo_suture(state, words)) hand.push_back(*std::move(undo));
    return hand;
}

std::vector<Target> ring_hand(const Words& words) {
    return {as(target("ring-round", words("ring.round"), words("ring.round_line"), {guide::SeeRing{}}), Look::Filled),
            turn_to("ring-oval", words("ring.oval"), words("ring.oval_line"), {.page = "ring"})};
}

std::vector<Target> suction_off_hand(const CaseState& state, const Step& step, const Words& words) {
    std::vector<Target> hand{
        as(target("suction-off", filled(step.button, state, words), "", {guide::TurnSuction{.to = guide::Suction::Off}}), Look::Filled)};
    if (!state.undoable.empty() && std::holds_alternative<guide::CutEnded>(state.undoable.back().fact)) {
        hand.push_back(target("undo", words("hand.undo"), words("cut.not_done_line"), {guide::UndoTap{}}));
    }
    return hand;
}

std::vector<Target> own_targets(const CaseState& state, const Step& step, const Around& around, const Words& words) {
    switch (step.closes) {
        case Closes::Tap:
        case Closes::Hold: {
            std::vector<Target> hand{finish(state, step, words)};
            add_late(hand, state, step, words);
            return hand;
        }
        case Closes::Side:
            return side_hand(words);
        case Closes::Plan:
            return plan_hand(state, around, words);
        case Closes::Counts:
            return counts_hand(state, words);
        case Closes::SuctionOn:
            return {as(target("suction-on", filled(step.button, state, words), "", {guide::TurnSuction{.to = guide::Suction::On}}),
                       Look::Filled)};
        case Closes::Cut:
            return state.suction == guide::Suction::Lost ? lost_hand(state, around, words) : cut_hand(state, around, words);
        case Closes::SuctionOff:
            return suction_off_hand(state, step, words);
        case Closes::Sutures:
            return suture_hand(state, words);
        case Closes::Ring:
            return ring_hand(words);
        case Closes::Close:
            return {as(target("lock", filled(step.button, state, words), words("hand.hold"),
                              {guide::CloseCase{.how = guide::CaseEnd::Done, .why = ""}}),
                       Look::Filled, Press::Hold)};
    }
    measure::expect(false);
    return {};
}

/// Where the guide goes on: at the first step that has to be done again.
std::string come_back_line(const CaseState& state, const guide::Departure& away, const Words& words) {
    const auto again = guide::reopened_by(state, away);
    if (again.empty()) return words("hand.come_back_line");
    return words("hand.come_back_again", {filled(guide::find_step(state.brief.procedure, again.front())->title, state, words)});
}

}  // namespace

std::vector<Target> hand(const CaseState& state, const Step& step, const Around& around, const Words& words) {
    if (const guide::Departure* away = departure_shown(state)) {
        std::vector<Target> hand{
            as(target("come-back", away->back, come_back_line(state, *away, words), {guide::ComeBack{.what = away->id}}), Look::Filled)};
        if (const auto bulging = bulging_target(state)) hand.push_back(*bulging);
        if (away->id == "converted" || away->id == "abandoned") {
            hand.push_back(
                as(turn_to("close-case", words("hand.close_case"), words("hand.close_case_line"), {.page = "end", .argument = away->id}),
                   Look::Watch));
        }
        hand.push_back(something_else(words));
        return hand;
    }
    std::vector<Target> hand = own_targets(state, step, around, words);
    // A new seating that does not come about: the cut is finished by hand from any of its steps.
    if (state.suction == guide::Suction::Lost && step.closes != Closes::Cut && guide::cutting(state))
        hand.push_back(by_hand(Look::Watch, guide::blade(state).position > 0, words));
    // While the blade goes down nothing stands in the column but the blade's own targets.
    if (step.closes != Closes::Cut) add_rest(hand, state, step, words);
    return hand;
}

}  // namespace screen
