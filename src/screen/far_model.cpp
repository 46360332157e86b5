// The Far view: what the surgeon needs in one look from the microscope. While the blade goes down what is to go, while suturing
// the next suture, what went otherwise in its own words, the running clock for the rest, with what holds the guide up.
#include "eye/frame.hpp"
#include "guide/tissue.hpp"
#include "screen/format.hpp"
#include "screen/pages.hpp"

#include <algorithm>
#include <cstdlib>
#include <utility>

namespace screen {
namespace {

using guide::CaseState;

struct Clock {
    std::string id{};
    guide::ClockReading reading{};
};

/// The running clock that matters now; the case's own where no other runs.
std::optional<Clock> running(const CaseState& state, const Around& around) {
    for (const std::string id : {"suction", "open-sky", "decompressed", "donor-out", "case"}) {
        if (guide::clock_running(state, id)) return Clock{id, *guide::clock_reading(state, id, around.now)};
    }
    return std::nullopt;
}

/// "01:42", and "~01:42" where it is not exact: there is no room for a word.
std::string far_reading(guide::ClockReading reading, const Words& words) {
    const std::string about = reading.exact ? "" : "~";
    reading.exact = true;
    return about + reading_text(reading, words);
}

/// First to zero, then to go, then stop. Never a bare figure: where the spokes to go stood, a 1 would be read as one to go.
FarModel::Numeral blade_numeral(const CaseState& state, const Words& words) {
    const guide::Blade blade = guide::blade(state);
    const std::string below = std::to_string(std::max(0, blade.position));
    if (blade.to_zero > 0)
        return {.digits = std::to_string(blade.to_zero),
                .under = words.counted("far.to_zero", {std::to_string(blade.to_zero)}),
                .to_zero = true};
    if (!blade.planned) return {.digits = below, .under = words("far.below")};
    if (blade.over > 0) return {.digits = "+" + std::to_string(blade.over), .under = words("far.over"), .watch = true};
    // In a second seating the depth is not reliable: the figure bears the sign of what is to be watched.
    if (blade.to_go == 0) return {.digits = "0", .under = words("far.reached"), .watch = !blade.reliable};
    return {.digits = std::to_string(*blade.to_go),
            .under = words.counted("far.to_go", {std::to_string(*blade.to_go)}),
            .watch = !blade.reliable};
}

std::optional<FarModel::Dial> dial(const CaseState& state, const Words& words) {
    const guide::Step* step = guide::current_step(state);
    const auto next = guide::next_suture(state);
    if (step == nullptr || step->closes != guide::Closes::Sutures || !next) return std::nullopt;
    FarModel::Dial made{.face = clock_face(state, words)};
    if (made.face.next.empty()) return std::nullopt;
    made.face.next.resize(1);
    made.face.seat_label = made.face.nasal_label = made.face.temporal_label = "";
    made.suture = words("far.suture", {std::to_string(*next)});
    made.at = eye::short_clock_text(made.face.next.front().at);
    return made;
}

/// How far the blade came, in words: a figure alone would be read as spokes to go.
FarModel::Said suction_lost(const CaseState& state, const Words& words) {
    const int position = guide::blade(state).position;
    const std::string id = position < 0 ? "far.suction_lost_above" : "far.suction_lost";
    return {.text = words.counted(id, {std::to_string(std::abs(position))}), .level = Banner::Level::Watch};
}

FarModel::Said said(const guide::Departure& departure) { return {.text = departure.title, .level = level_of(departure)}; }

/// A count that differs, the first of them by name, or a scan that does not fit: what the guide waits for, outside the quiet part.
std::optional<Banner> held_up(const CaseState& state, const Words& words) {
    const guide::Step* step = guide::current_step(state);
    if (step == nullptr || step->quiet) return std::nullopt;
    if (const auto item = differing(state))
        return Banner{.level = Banner::Level::Watch,
                      .text = words("far.item_differs", {count_title(state, *item)}),
                      .brief = words("far.count_differs")};
    if (guide::standing_scan(state) == nullptr) return std::nullopt;
    return Banner{.level = Banner::Level::Watch, .text = words("far.scan_stands")};
}

/// The most urgent, short enough to be read from 3 m; the other views say more. What holds the guide up stands under the running clock
/// alone: mid-cut and between two sutures it is nobody's next look.
std::optional<Banner> far_banner(const FarModel& made, const CaseState& state, const Around& around, const Words& words) {
    std::optional<Banner> urgent{};
    const auto watch = [&](const std::string& id) { urgent = Banner{.level = Banner::Level::Watch, .text = words(id)}; };
    if (around.clock_jumped) watch("far.clock_jumped");
    if (guide::cutting(state) && !guide::blade(state).reliable) watch("far.not_reliable");
    if (auto held = held_up(state, words); held && std::holds_alternative<ClockShown>(made.shown)) urgent = *std::move(held);
    if (const guide::Departure* meanwhile = departure_standing(state); guide::cutting(state) && meanwhile != nullptr) {
        urgent = Banner{.level = level_of(*meanwhile),
                        .text = meanwhile->title,
                        .brief = brief_name(*meanwhile, words).value_or(words("far.meanwhile"))};
    }
    const auto other = [](const std::string& view) { return view != "far"; };
    if (std::any_of(around.screens_lost.begin(), around.screens_lost.end(), other)) watch("far.screens_lost");
    if (around.not_on_disk > 0) watch("far.not_on_disk");
    return urgent;
}

/// What is to be read, and the clock beside it.
void show(FarModel& made, const CaseState& state, const Around& around, const Words& words) {
    if (state.closed) {
        made.shown = FarModel::Said{.text = words("far.closed"), .level = Banner::Level::Notice};
        return;
    }
    const auto clock = running(state, around);
    if (clock) made.clock = ClockShown{.label = words("far.clock." + clock->id), .value = far_reading(clock->reading, words)};
    if (state.holder && guide::count_matters(state)) made.holder = words(holder_id("far.holder.", *state.holder));
    const guide::Departure* away = departure_shown(state);
    if (guide::cutting(state) && state.suction == guide::Suction::Lost) {
        made.shown = suction_lost(state, words);
    } else if (guide::cutting(state)) {
        made.shown = blade_numeral(state, words);
    } else if (away != nullptr) {
        made.shown = said(*away);
    } else if (auto face = dial(state, words)) {
        made.shown = *std::move(face);
    } else if (clock) {
        // With its seconds: a bare figure would be read as spokes.
        made.shown = *std::exchange(made.clock, std::nullopt);
        if (const guide::Step* step = guide::current_step(state)) made.step = words("far.step", {filled(step->title, state, words)});
    }
}

}  // namespace

FarModel far(const CaseState& state, const Around& around, const Words& words) {
    FarModel made{.eye = state.side.empty() ? words("far.eye_unknown") : words("strip." + state.side)};
    made.beat = around.beat;
    made.muted = muted(around, words);
    show(made, state, around, words);
    made.banner = far_banner(made, state, around, words);
    return made;
}

}  // namespace screen
