// The Far view: what the surgeon needs in one look from the microscope. While the blade goes down what is to go, while suturing
// the next suture, what went otherwise in its own words, the running clock for the rest.
#include "eye/frame.hpp"
#include "screen/format.hpp"
#include "screen/pages.hpp"

#include <algorithm>

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
    if (state.suction == guide::Suction::Lost) return {.digits = below, .under = words("far.at_loss"), .watch = true};
    if (blade.to_zero > 0) return {.digits = std::to_string(blade.to_zero), .under = words("far.to_zero"), .to_zero = true};
    if (!blade.planned) return {.digits = below, .under = words("far.below")};
    if (blade.over > 0) return {.digits = "+" + std::to_string(blade.over), .under = words("far.over"), .watch = true};
    if (blade.to_go == 0) return {.digits = "0", .under = words("far.reached")};
    return {.digits = std::to_string(*blade.to_go), .under = words("far.to_go")};
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

FarModel::Said said(const guide::Departure& departure) {
    const bool stop = departure.level == guide::Departure::Level::Stop;
    return {.text = departure.title, .level = stop ? Banner::Level::Stop : Banner::Level::Watch};
}

/// The most urgent, short enough to be read from 3 m; the other views say more.
std::optional<Banner> far_banner(const Around& around, const Words& words) {
    if (around.not_on_disk > 0) return Banner{.level = Banner::Level::Watch, .text = words("far.not_on_disk")};
    if (!around.screens_lost.empty()) return Banner{.level = Banner::Level::Watch, .text = words("far.screens_lost")};
    if (around.clock_jumped) return Banner{.level = Banner::Level::Watch, .text = words("far.clock_jumped")};
    return std::nullopt;
}

}  // namespace

FarModel far(const CaseState& state, const Around& around, const Words& words) {
    FarModel made{.eye = state.side.empty() ? words("far.eye_unknown") : words("strip." + state.side), .banner = far_banner(around, words)};
    made.beat = around.beat;
    made.muted = muted(around, words);
    if (state.closed) {
        made.shown = FarModel::Said{.text = words("far.closed"), .level = Banner::Level::Notice};
        return made;
    }
    const auto clock = running(state, around);
    if (clock) made.clock = ClockShown{.label = words("far.clock." + clock->id), .value = far_reading(clock->reading, words)};
    if (state.holder && guide::count_matters(state)) made.holder = words(holder_id("far.holder.", *state.holder));
    const guide::Departure* away = departure_shown(state);
    if (guide::cutting(state)) {
        made.shown = blade_numeral(state, words);
    } else if (away != nullptr) {
        made.shown = said(*away);
    } else if (auto face = dial(state, words)) {
        made.shown = *std::move(face);
    } else if (clock) {
        // With its seconds: a bare figure would be read as spokes.
        made.shown = ClockShown{.label = words("far.since." + clock->id), .value = made.clock->value};
        made.clock.reset();
    }
    return made;
}

}  // namespace screen
