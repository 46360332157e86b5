// The pages beside the Table view: lists to choose from. Which one is open is the screen's own state, lost in a crash
// without harm: nothing that counts is on it alone.
#pragma once

#include "guide/decide.hpp"
#include "screen/model.hpp"
#include "screen/screen_state.hpp"

#include <functional>
#include <string>
#include <vector>

namespace screen {

/// The view of a case that stands open: the Table view or one of its pages.
View view(const guide::CaseState& state, const ScreenState& screen, const Around& around, const Words& words);

TableModel table(const guide::CaseState& state, const Around& around, const Words& words);
PickModel page(const guide::CaseState& state, const ScreenState& screen, const Around& around, const Words& words);
FarModel far(const guide::CaseState& state, const Around& around, const Words& words);

// ---- parts, shared by the table and its pages ----
ClockShown time_of_day(const Around& around, const Words& words);
Strip strip(const guide::CaseState& state, const Around& around, const Words& words);
/// The id, in a section of the wording, of who holds the count.
std::string holder_id(const std::string& section, guide::Source holder);
/// What is wrong with the station: the most urgent in full, the rest named beside it.
std::optional<Banner> banner(const Around& around, const Words& words);
/// The word beside the sign of a voice that is not heard, muted or at no volume; empty where it is heard or the unit has none.
std::string muted(const Around& around, const Words& words);
/// A view with what every view says: the banner where it has none, and that the voice is muted.
View told(View view, const Around& around, const Words& words);
/// Two banners in one place, both in full.
std::optional<Banner> both(const std::optional<Banner>& first, const std::optional<Banner>& second);
/// What stands over the figure once the plan is reached or passed; none before.
std::optional<std::string> depth_title(const guide::CaseState& state, const Words& words);
/// The figure of the cut, with its words: never bare.
Figure blade_figure(const guide::CaseState& state, const Words& words);
Card card(const guide::CaseState& state, const guide::Step& step, const Around& around, const Words& words);
std::vector<Target> hand(const guide::CaseState& state, const guide::Step& step, const Around& around, const Words& words);
/// The record in a few lines: read through before it is locked, and left on the screen after.
std::vector<Row> record_rows(const guide::CaseState& state, const Around& around, const Words& words);
picture::ClockFace clock_face(const guide::CaseState& state, const Words& words);
/// Departures that may be recorded at a step, in the order of the files; the bulging eye wherever the eye is open.
std::vector<const guide::Departure*> departures_of(const guide::CaseState& state, const guide::Step& step);
/// The departure that is not come back from and has no card of its own in the cut; none when the guide goes on.
const guide::Departure* departure_standing(const guide::CaseState& state);
/// Whether it stops everything or wants an eye.
Banner::Level level_of(const guide::Departure& departure);
/// What is usual once that went otherwise, sentence by sentence; of suction lost before the blade was below zero what goes without a
/// groove.
std::vector<std::string> usual_lines(const guide::CaseState& state, const guide::Departure& departure, const Words& words);
/// A departure in a few words, for where its title has no room; none of a unit's own.
std::optional<std::string> brief_name(const guide::Departure& departure, const Words& words);
/// That departure where its card stands in place of the step's: not while the blade can turn.
const guide::Departure* departure_shown(const guide::CaseState& state);
/// Whether a scan that does not fit holds the step up; the quiet part waits for none.
bool held_up_by_scan(const guide::CaseState& state, const guide::Step& step);
/// Takes back what was told last by one tap and is no tap of the blade, named: the departure whose card stands, or the ring reflection
/// that closed the step before. None where there is nothing of the kind.
std::optional<Target> undo_told(const guide::CaseState& state, const Words& words);
/// The octagon 'Eye bulging, close now', no hold; none where it may not be, or its card stands already.
std::optional<Target> bulging_target(const guide::CaseState& state);
/// Whether the glass may be locked for wiping now: never while the blade can turn, in the quiet part, or while something stands open.
bool may_wipe(const guide::CaseState& state);
/// Why not now; of what was scanned and stands, which item and what speaks against it.
std::string refusal_text(const guide::Refusal& refusal, const guide::CaseState& state, const Words& words);

/// A target that acts on the case.
Target target(std::string id, std::string label, std::string line, std::vector<guide::Intent> intents);
/// A target that turns to a page.
Target turn_to(std::string id, std::string label, std::string line, Show show);
/// A target of a list to choose from: smaller than what is tapped at the table.
Target choice(std::string id, std::string label, std::string line, std::vector<guide::Intent> intents);
/// The reasons of a kind (`why.KIND_1` and so on) in their order.
std::vector<std::string> reasons(const std::string& kind, const Words& words);
/// One choice a reason of a kind; `intent` makes what it carries.
std::vector<Target> reason_choices(const std::string& kind, const Words& words,
                                   const std::function<guide::Intent(const std::string&)>& intent);

// ---- counts ----
std::vector<Target> counts_hand(const guide::CaseState& state, const Words& words);
void counts_card(Card& made, const guide::CaseState& state, const Words& words);
/// The pages "count-…": what differs, how many are seen, who saw it, why it is recorded.
void count_page(PickModel& made, const guide::CaseState& state, const ScreenState& screen, const Words& words);
/// The page "count-initials": somebody else who counts, by letters.
FormModel count_initials(const guide::CaseState& state, const ScreenState& screen, const Words& words);
/// The first item in which somebody differs and nobody has settled it; none while nobody does.
std::optional<guide::ItemId> differing(const guide::CaseState& state);
/// What is done first about a difference: counted again, or searched for once two miss the same.
std::string differing_title(const guide::CaseState& state, const guide::ItemId& item, const Words& words);
/// What whoever is left with another number sees now, or the other of two sees too; none where that is told, or nobody differs.
std::optional<Target> difference_answer(const guide::CaseState& state, const Words& words);
/// Leads to what is seen instead: an answer at every count.
Target count_differs(const Words& words);
/// Neither of the unit's two sees all that is expected: leads to the letters.
Target somebody_confirms(const Words& words);
/// Whether one has seen all that is expected at this gate.
bool has_confirmed(const guide::CaseState& state, const std::string& by);
/// The circulating nurse sees all that is expected: at the Table view and at her own.
Target circulating_check(const guide::CaseState& state, const Words& words);
/// "Needles: 7 seen by scrub nurse, 8 expected."
std::string difference_text(const guide::CaseState& state, const guide::ItemId& item, const guide::Difference& found, const Words& words);

}  // namespace screen
