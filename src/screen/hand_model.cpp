// The hand's column: what can be touched at each step. The first target is the biggest; targets that belong together stand
// side by side; where each stands does not change while a step lasts.
#include "eye/frame.hpp"
#include "measure/expect.hpp"
#include "screen/format.hpp"
#include "screen/hand_parts.hpp"
#include "screen/own_past.hpp"
#include "screen/pages.hpp"

#include <algorithm>
#include <utility>

namespace screen {
namespace {

using guide::CaseState;
using guide::Closes;
using guide::Step;

constexpr auto suture_broke = "suture-broke";  // a departure
constexpr auto even_out = "even-out";          // a step

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
    if (before->closes == Closes::Ring) return undo_told(state, words);
    if (before->closes == Closes::Sutures && step.closes == Closes::Sutures) return std::nullopt;  // among its own targets
    if (before->closes == Closes::Sutures && step.closes != Closes::Counts) return undo_suture(state, words);
    if (before->closes != Closes::Tap && before->closes != Closes::Hold) return std::nullopt;
    return target("back-step", words("hand.back_step"), filled(before->title, state, words),
                  {guide::ReopenStep{.step = before->id, .why = words("why.step_back")}});
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
    // Between two sutures nothing asks for one: it would move what is tapped there.
    if (!state.reasons_owed.empty() && !guide::cutting(state) && step.closes != Closes::Sutures) {
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
              held_up_by_scan(state, step) ? Look::Hollow : Look::Filled, hold ? Press::Hold : Press::Tap);
}

void add_late(std::vector<Target>& hand, const CaseState& state, const Step& step, const Words& words) {
    if (!clock_to_turn(state, step.starts, false) && !clock_to_turn(state, step.stops, true)) return;
    for (const int ago_s : {15, 30, 60}) {
        hand.push_back(target("ago-" + std::to_string(ago_s), words("hand.done_ago", {words("hand.ago_" + std::to_string(ago_s))}), "",
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

Target redo(const Words& words) { return turn_to("redo", words("suture.redo"), words("suture.redo_line"), {.page = "redo"}); }

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
        hand.push_back(redo(words));
    }
    if (auto undo = undo_suture(state, words)) hand.push_back(*std::move(undo));
    return hand;
}

/// An oval reflection is mended by a suture out and in again.
std::vector<Target> ring_hand(const CaseState& state, const Words& words) {
    std::vector<Target> hand{as(target("ring-round", words("ring.round"), words("ring.round_line"), {guide::SeeRing{}}), Look::Filled),
                             turn_to("ring-oval", words("ring.oval"), words("ring.oval_line"), {.page = "ring"})};
    if (!state.sutures.empty()) hand.push_back(redo(words));
    return hand;
}

std::vector<Target> suction_off_hand(const CaseState& state, const Step& step, const Words& words) {
    std::vector<Target> hand{
        as(target("suction-off", filled(step.button, state, words), "", {guide::TurnSuction{.to = guide::Suction::Off}}), Look::Filled)};
    if (const auto* ended = state.undoable.empty() ? nullptr : std::get_if<guide::CutEnded>(&state.undoable.back().fact)) {
        const std::string what = words(ended->how == guide::CutEnd::Entered ? "cut.entered" : "cut.done");
        hand.push_back(target("undo", words("hand.undo_told", {what}), words("cut.not_done_line"), {guide::UndoTap{}}));
    }
    return hand;
}

std::vector<Target> own_targets(const CaseState& state, const Step& step, const Around& around, const Words& words) {
    switch (step.closes) {
        case Closes::Tap:
        case Closes::Hold: {
            std::vector<Target> hand{finish(state, step, words)};
            add_late(hand, state, step, words);
            if (step.id == even_out && !state.sutures.empty()) hand.push_back(redo(words));
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
            return ring_hand(state, words);
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

/// The way to take back a departure: the blade's own tap where that was one and can still be undone, else by the departure's number.
guide::Seq undo_of(const CaseState& state, const guide::Away& away) {
    if (guide::may_take_back(state, away)) return away.seq;
    const auto* cut = state.undoable.empty() ? nullptr : std::get_if<guide::CutEnded>(&state.undoable.back().fact);
    const bool entered = cut != nullptr && cut->how == guide::CutEnd::Entered && state.suction == guide::Suction::On;
    return entered && away.what == "entered-by-trephine" ? state.undoable.back().seq : 0;
}

}  // namespace

std::optional<Target> undo_told(const CaseState& state, const Words& words) {
    const auto undo = [&](guide::Seq seq, const std::string& what, const std::string& line) {
        return target("undo-told", words("hand.undo_told", {what}), line, {guide::UndoTap{.event = seq}});
    };
    if (const guide::Departure* shown = departure_standing(state)) {
        const auto open = guide::open_departures(state);
        const auto away = std::find_if(open.rbegin(), open.rend(), [&](const guide::Away& one) { return one.what == shown->id; });
        const guide::Seq seq = away == open.rend() ? 0 : undo_of(state, *away);
        return seq == 0 ? std::nullopt : std::optional(undo(seq, shown->title, words("hand.undo_told_line")));
    }
    const guide::Seq seq = guide::ring_to_take_back(state);
    if (seq == 0) return std::nullopt;
    return undo(seq, words(state.ring->long_axis_centideg ? "ring.oval" : "ring.round"), words("ring.undo_line"));
}

Target something_else(const Words& words) {
    return as(turn_to("something-else", words("hand.something_else"), "", {.page = "departures"}), Look::Watch);
}

std::vector<Target> hand(const CaseState& state, const Step& step, const Around& around, const Words& words) {
    if (const guide::Departure* away = departure_shown(state)) {
        std::vector<Target> hand{
            as(target("come-back", away->back, come_back_line(state, *away, words), {guide::ComeBack{.what = away->id}}), Look::Filled)};
        const auto bulging = bulging_target(state);
        if (bulging) hand.push_back(*bulging);
        if (away->id == "converted" || away->id == "abandoned") {
            hand.push_back(
                as(turn_to("close-case", words("hand.close_case"), words("hand.close_case_line"), {.page = "end", .argument = away->id}),
                   Look::Watch));
        }
        // Where the octagon has its place the way back leads to the sutures, where one is redone as well.
        if (away->id == suture_broke && !state.sutures.empty() && !bulging) hand.push_back(redo(words));
        // There what is usual has no room beside another target; at the Desk the undo stands all the same.
        // Of a chamber entered by a slip of the finger the blade waits: its undo stands all the same.
        if (auto undo = undo_told(state, words); undo && (!bulging || state.suction == guide::Suction::On))
            hand.push_back(*std::move(undo));
        hand.push_back(something_else(words));
        return hand;
    }
    std::vector<Target> hand = own_targets(state, step, around, words);
    // A new seating that does not come about: the cut is finished by hand from any of its steps.
    if (state.suction == guide::Suction::Lost && step.closes != Closes::Cut && guide::cutting(state))
        hand.push_back(by_hand(Look::Watch, guide::groove_begun(state), words));
    // While the blade goes down nothing stands in the column but the blade's own targets.
    if (step.closes != Closes::Cut) add_rest(hand, state, step, words);
    return hand;
}

}  // namespace screen
