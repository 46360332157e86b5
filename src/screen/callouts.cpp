#include "screen/callouts.hpp"

#include "eye/frame.hpp"

#include <algorithm>
#include <array>

namespace screen {
namespace {

using guide::CaseState;

constexpr auto awake = "awake-";
constexpr int most_spokes = 24, most_sutures = 24, longest_suction_s = 600, suction_step_s = 15;

/// Said whatever else is quiet: what stops a hand. A departure's id is its phrase.
constexpr std::array safety_departures = {"eye-bulging", "donor-lost-before", "donor-lost-after", "patient-moved", "anaesthetist-stop"};

std::string numbered(const std::string& id, int n) { return id + "-" + std::to_string(n); }

PhraseIds figure(const CaseState& state) {
    const guide::Blade blade = guide::blade(state);
    if (blade.to_zero > 0) return {numbered("to-zero", blade.to_zero)};
    if (!blade.planned) return {blade.position == 0 ? "at-zero-to-entry" : numbered("below", blade.position)};
    if (blade.over > 0) return {numbered("over", blade.over)};
    if (blade.to_go == 0) return {"reached"};
    return {numbered(blade.position == 0 ? "at-zero" : "to-go", *blade.to_go)};
}

/// The blade has moved, or its plan has, with the ring on the eye before and after.
bool figure_changed(const CaseState& before, const CaseState& after) {
    if (!guide::cutting(before) || !guide::cutting(after) || after.suction != guide::Suction::On) return false;
    if (before.seatings.size() != after.seatings.size()) return false;
    const guide::Blade was = guide::blade(before), is = guide::blade(after);
    return was.position != is.position || was.planned != is.planned;
}

std::optional<int> asked_suture(const CaseState& state) {
    const guide::Step* step = guide::current_step(state);
    if (step == nullptr || step->closes != guide::Closes::Sutures || !guide::confirmed(state, "donor-on")) return std::nullopt;
    return guide::next_suture(state);
}

PhraseId place_id(measure::Angle at) {
    std::string text = eye::clock_text(at);
    std::replace(text.begin(), text.end(), ':', '-');
    return "at-" + text;
}

PhraseIds suture(const CaseState& before, const CaseState& after, const VoiceWish& wish) {
    const auto next = asked_suture(after);
    if (!next || next == asked_suture(before)) return {};
    const bool wanted = wish.sutures == VoiceWish::Sutures::Every || (wish.sutures == VoiceWish::Sutures::FromFifth && *next >= 5);
    if (!wanted) return {};
    const plan::Suture& planned = after.plan->order[static_cast<std::size_t>(*next - 1)];
    return {numbered("suture", *next), place_id(measure::centideg(planned.centideg))};
}

bool open_now(const CaseState& state, const guide::DepartureId& what) {
    const auto open = guide::open_departures(state);
    return std::any_of(open.begin(), open.end(), [&](const guide::Away& away) { return away.what == what; });
}

PhraseIds safety(const CaseState& before, const CaseState& after) {
    if (after.suction == guide::Suction::Lost && before.suction != guide::Suction::Lost) return {"suction-lost"};
    const bool entered_before = open_now(before, "entered-by-trephine"), entered = open_now(after, "entered-by-trephine");
    if (entered && !entered_before) return {"entered"};
    for (const std::string what : safety_departures) {
        if (open_now(after, what) && !open_now(before, what)) return {what};
    }
    return {};
}

/// From 'entered' to the fourth suture.
bool quiet(const CaseState& state) { return guide::clock_running(state, "decompressed"); }

PhraseIds for_patient(PhraseIds ids, const VoiceWish& wish) {
    if (!wish.awake) return ids;
    for (PhraseId& id : ids) id.insert(0, awake);
    return ids;
}

std::string suction_text(int seconds, const Words& words) {
    const std::string minutes = std::to_string(seconds / 60), rest = std::to_string(seconds % 60);
    if (seconds < 60) return words("say.suction_seconds", {rest});
    return seconds % 60 == 0 ? words("say.suction_minutes", {minutes}) : words("say.suction_both", {minutes, rest});
}

std::string place_text(int hour, int minute, const Words& words) {
    return minute == 0 ? words("say.hour", {std::to_string(hour)})
                       : words("say.hour_minute", {std::to_string(hour), std::to_string(minute)});
}

/// A phrase, and where the words have one, what an awake patient hears in its place.
void add(std::vector<Phrase>& all, const PhraseId& id, const std::string& word, const std::vector<std::string>& values,
         const Words& words) {
    all.push_back({id, words("say." + word, values)});
    const std::string mild = "say_awake." + word;
    if (words.has(mild)) all.push_back({awake + id, words(mild, values)});
}

}  // namespace

PhraseIds call_outs(const CaseState& before, std::span<const guide::Event> events, const VoiceWish& wish) {
    CaseState after = before;
    for (const guide::Event& event : events) after = guide::apply(std::move(after), event);
    if (after.closed) return {};
    if (PhraseIds said = safety(before, after); !said.empty()) return for_patient(std::move(said), wish);
    if (figure_changed(before, after)) return for_patient(figure(after), wish);
    if (quiet(after) && wish.sutures != VoiceWish::Sutures::Every) return {};
    return for_patient(suture(before, after, wish), wish);
}

PhraseIds suction_call_out(const CaseState& state, const guide::Instant& since, const guide::Instant& now, const VoiceWish& wish) {
    if (!wish.suction_every_s || state.closed || quiet(state) || !guide::clock_running(state, "suction")) return {};
    const auto reading = [&](const guide::Instant& at) {
        return guide::clock_reading(state, "suction", at)->ms / 1000 / *wish.suction_every_s;
    };
    const std::int64_t was = reading(since), is = reading(now);
    if (is <= was || is * *wish.suction_every_s > longest_suction_s) return {};
    return for_patient({numbered("suction", static_cast<int>(is) * *wish.suction_every_s)}, wish);
}

std::vector<Phrase> phrases(const Words& words) {
    std::vector<Phrase> all{};
    for (int n = 1; n <= most_spokes; ++n) {
        const std::string number = std::to_string(n);
        for (const auto& [id, word] : {std::pair("to-zero", "to_zero"), std::pair("at-zero", "at_zero"), std::pair("to-go", "to_go"),
                                       std::pair("over", "over"), std::pair("below", "below")})
            add(all, numbered(id, n), word, {number}, words);
    }
    for (int n = 1; n <= most_sutures; ++n) add(all, numbered("suture", n), "suture", {std::to_string(n)}, words);
    for (int hour = 1; hour <= 12; ++hour) {
        for (const int minute : {0, 15, 30, 45}) {
            all.push_back({place_id(eye::from_clock(hour, minute)), place_text(hour, minute, words)});
        }
    }
    for (int s = suction_step_s; s <= longest_suction_s; s += suction_step_s)
        all.push_back({numbered("suction", s), suction_text(s, words)});
    add(all, "at-zero-to-entry", "at_zero_to_entry", {}, words);
    add(all, "reached", "reached", {}, words);
    add(all, "suction-lost", "suction_lost", {}, words);
    add(all, "entered", "entered", {}, words);
    for (const std::string what : safety_departures) add(all, what, what, {}, words);
    return all;
}

}  // namespace screen
