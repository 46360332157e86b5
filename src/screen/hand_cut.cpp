// What can be touched while the blade can turn: the spoke first and biggest, where it stays; and once suction is lost, what leads on.
#include "screen/hand_parts.hpp"

namespace screen {
namespace {

using guide::CaseState;

bool spoke_left_out(const Around& around) { return around.bounced == std::optional<std::string>("spoke"); }

/// Where the pedal counts, the press that was left out was the pedal's.
Target count_it(const CaseState& state, const Around& around, const Words& words) {
    const guide::Source from = state.holder == std::optional(guide::Source::FootSwitch) ? guide::Source::FootSwitch : around.here;
    return as(target("count-it", words("cut.count_it"), words("cut.count_it_line"), {guide::CountSpoke{.source = from}}), Look::Hollow);
}

Target spoke_target(const CaseState& state, const Around& around, const Words& words) {
    const guide::Blade blade = guide::blade(state);
    const bool reached = blade.planned && blade.to_go == 0 && blade.position > 0;
    // While something stands open it does not lead: no more is to be turned, but what was turned counts.
    const bool waits = reached || departure_standing(state) != nullptr;
    const std::string line = reached ? "cut.over_plan_line" : waits ? "lost.spoke_line" : "cut.spoke_line";
    Target spoke = as(target("spoke", words(waits ? "lost.spoke" : "cut.spoke"), words(line), {guide::CountSpoke{.source = around.here}}),
                      waits ? Look::Hollow : Look::Filled);
    spoke.weight = Weight::Spoke;
    if (state.holder && *state.holder != around.here) spoke.why_not = words(holder_id("cut.held.", *state.holder));
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

Target cut_done(bool reached, const Words& words) {
    return as(target("cut-done", words("cut.done"), words(reached ? "cut.done_reached" : "cut.done_line"),
                     {guide::EndCut{.how = reached ? guide::CutEnd::AtPlan : guide::CutEnd::Surgeon}}),
              reached ? Look::Filled : Look::Plain, reached ? Press::Tap : Press::Hold);
}

/// Before a spoke is turned, and with no groove from before, there is no cut to be done with: the ring is let go of, and seated anew.
Target let_go(const Words& words) {
    Target made = as(target("let-go", words("cut.let_go"), words("cut.let_go_line"), {guide::TurnSuction{.to = guide::Suction::Off}}),
                     Look::Plain, Press::Hold);
    made.in_place_of = {cut_done(false, words)};
    return made;
}

/// The way back from what stands open while the blade can turn: apart, so that the spoke and its neighbours keep their places.
std::optional<Target> way_back(const CaseState& state, const Words& words) {
    const guide::Departure* away = departure_standing(state);
    if (away == nullptr) return std::nullopt;
    Target made = target("come-back", away->back, words("hand.come_back_line"), {guide::ComeBack{.what = away->id}});
    made.look = Look::Filled;
    made.apart = true;
    return made;
}

}  // namespace

Target by_hand(Look look, bool groove, const Words& words) {
    return as(target("by-hand", words("lost.by_hand"), words(groove ? "hand.hold" : "lost.no_groove"),
                     {guide::EndCut{.how = guide::CutEnd::Surgeon}}),
              look, Press::Hold);
}

/// By hand from the groove leads; before there is one, a new seating does.
std::vector<Target> lost_hand(const CaseState& state, const Around& around, const Words& words) {
    const bool groove = guide::groove_begun(state);
    Target re_seat = target("re-seat", words("lost.re_seat"), words(groove ? "lost.re_seat_line" : "lost.re_seat_anew"),
                            {guide::ReopenStep{.step = "zero", .why = words(groove ? "why.re_seated" : "why.seated_anew")}});
    re_seat.look = groove ? Look::Plain : Look::Filled;
    re_seat.press = groove ? Press::Tap : Press::Hold;  // held where the spoke stood
    std::vector<Target> hand{
        by_hand(groove ? Look::Filled : Look::Plain, groove, words), std::move(re_seat),
        as(target("spoke-lost", words("lost.spoke"), words("lost.spoke_line"), {guide::CountSpoke{.source = around.here}}), Look::Hollow)};
    if (!groove) std::swap(hand[0], hand[1]);
    if (state.holder && *state.holder != around.here) hand.back().why_not = words(holder_id("cut.held.", *state.holder));
    if (spoke_left_out(around)) hand.back() = count_it(state, around, words);
    const guide::Undoable* newest = guide::newest_to_undo(state);
    const bool loss = newest != nullptr && std::holds_alternative<guide::SuctionTurned>(newest->fact);
    hand.push_back(target("undo", words("hand.undo"), words(loss ? "lost.undo_loss_line" : "lost.undo_line"), {guide::UndoTap{}}));
    hand.push_back(as(target("entered", words("cut.entered"), "", {guide::EndCut{.how = guide::CutEnd::Entered}}), Look::Watch));
    hand.push_back(something_else(words));
    return hand;
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
    hand.push_back(blade.spokes_turned > 0 || guide::groove_begun(state) ? cut_done(reached, words) : let_go(words));
    for (Target& one : hand) one.stays = one.id != "deeper" && one.id != "count-it";
    // There is room for one: where the count is held elsewhere, taking it over comes first.
    const bool held_here = !state.holder || *state.holder == around.here;
    auto apart = held_here ? way_back(state, words) : std::nullopt;
    if (!apart) apart = change_of_holder(state, around, words);
    if (apart) hand.push_back(*std::move(apart));
    return hand;
}

}  // namespace screen
