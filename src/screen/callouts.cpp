#include "screen/callouts.hpp"

#include "eye/frame.hpp"
#include "plan/sutures.hpp"

#include <algorithm>
#include <array>

namespace screen {
namespace {

using guide::CaseState;

constexpr auto awake = "awake-";
// A figure up to `most_whole` is one phrase, a larger one is put together: "to go:", "one hundred", "twenty-five".
constexpr int most_whole = 40, hundred = 100, thousand = 1000;
constexpr int most_sutures = std::max(plan::most_interrupted, plan::most_bites);
constexpr int minute_s = 60, suction_step_s = 15;
constexpr std::array figures = {std::pair("to-zero", "to_zero"), std::pair("at-zero", "at_zero"), std::pair("to-go", "to_go"),
                                std::pair("over", "over"), std::pair("below", "below")};

/// Said whatever else is quiet: what stops a hand. A departure's id is its phrase.
constexpr std::array safety_departures = {"eye-bulging", "donor-lost-before", "donor-lost-after", "patient-moved", "anaesthetist-stop"};

std::string numbered(const std::string& id, int n) { return id + "-" + std::to_string(n); }

PhraseIds joined(PhraseIds one, const PhraseIds& other) {
    one.insert(one.end(), other.begin(), other.end());
    return one;
}

/// Any number from 1 on, by the words of which it is made.
PhraseIds number(int n) {
    if (n < hundred) return {numbered("number", n)};
    const int unit = n < thousand ? hundred : thousand, rest = n % unit;
    const PhraseIds front = n < thousand ? PhraseIds{numbered("number", n - rest)} : joined(number(n / thousand), {"thousand"});
    return rest > 0 ? joined(front, number(rest)) : front;
}

PhraseIds spokes(const std::string& what, int n) {
    return n <= most_whole ? PhraseIds{numbered(what, n)} : joined({what + "-many"}, number(n));
}

PhraseIds figure(const CaseState& state) {
    const guide::Blade blade = guide::blade(state);
    if (blade.to_zero > 0) return spokes("to-zero", blade.to_zero);
    if (!blade.planned) return blade.position == 0 ? PhraseIds{"at-zero-to-entry"} : spokes("below", blade.position);
    if (blade.over > 0) return spokes("over", blade.over);
    if (blade.to_go == 0) return {"reached"};
    return spokes(blade.position == 0 ? "at-zero" : "to-go", *blade.to_go);
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

/// A place as the glass shows it: "6" is a full hour, "7:30" hour and minute.
PhraseIds place(measure::Angle at) {
    const std::string text = eye::short_clock_text(at);
    const std::size_t colon = text.find(':');
    const PhraseId hour = "at-" + text.substr(0, colon);
    if (colon == std::string::npos) return {hour};
    const int minute = std::stoi(text.substr(colon + 1));
    return {hour + "-and", numbered(minute < 10 ? "minute" : "number", minute)};
}

PhraseIds suture(const CaseState& before, const CaseState& after, const VoiceWish& wish) {
    const auto next = asked_suture(after);
    if (!next || next == asked_suture(before)) return {};
    const bool wanted = wish.sutures == VoiceWish::Sutures::Every || (wish.sutures == VoiceWish::Sutures::FromFifth && *next >= 5);
    if (!wanted) return {};
    const plan::Suture& planned = after.plan->order[static_cast<std::size_t>(*next - 1)];
    return joined({numbered("suture", *next)}, place(measure::centideg(planned.centideg)));
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

PhraseIds suction(int seconds) {
    if (seconds < minute_s) return {numbered("suction", seconds)};
    const int rest = seconds % minute_s;
    const PhraseIds minutes = joined({"suction-minutes"}, number(seconds / minute_s));
    return rest > 0 ? joined(minutes, {numbered("seconds", rest)}) : minutes;
}

/// A phrase, and where the words have one, what an awake patient hears in its place.
void add(std::vector<Phrase>& all, const PhraseId& id, const std::string& word, const std::vector<std::string>& values,
         const Words& words) {
    all.push_back({id, words("say." + word, values)});
    const std::string mild = "say_awake." + word;
    if (words.has(mild)) all.push_back({awake + id, words(mild, values)});
}

void add_figures(std::vector<Phrase>& all, const Words& words) {
    for (const auto& [id, word] : figures) {
        for (int n = 1; n <= most_whole; ++n) add(all, numbered(id, n), word, {std::to_string(n)}, words);
        add(all, std::string(id) + "-many", std::string(word) + "_many", {}, words);
    }
}

/// What is said only as part of something: numbers, hours, minutes of the dial, seconds.
void add_parts(std::vector<Phrase>& all, const Words& words) {
    for (int n = 1; n < thousand; n += n < hundred ? 1 : hundred) all.push_back({numbered("number", n), std::to_string(n)});
    add(all, "thousand", "thousand", {}, words);
    for (int hour = 1; hour <= 12; ++hour) {
        add(all, numbered("at", hour), "hour", {std::to_string(hour)}, words);
        add(all, numbered("at", hour) + "-and", "hour_and", {std::to_string(hour)}, words);
    }
    for (int minute = 1; minute < 10; ++minute) add(all, numbered("minute", minute), "minute", {std::to_string(minute)}, words);
    for (int s = suction_step_s; s < minute_s; s += suction_step_s) {
        add(all, numbered("suction", s), "suction_seconds", {std::to_string(s)}, words);
        add(all, numbered("seconds", s), "seconds", {std::to_string(s)}, words);
    }
    add(all, "suction-minutes", "suction_minutes", {}, words);
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
    return is > was ? for_patient(suction(static_cast<int>(is) * *wish.suction_every_s), wish) : PhraseIds{};
}

std::vector<Phrase> phrases(const Words& words) {
    std::vector<Phrase> all{};
    add_figures(all, words);
    add_parts(all, words);
    for (int n = 1; n <= most_sutures; ++n) add(all, numbered("suture", n), "suture", {std::to_string(n)}, words);
    add(all, "at-zero-to-entry", "at_zero_to_entry", {}, words);
    add(all, "reached", "reached", {}, words);
    add(all, "suction-lost", "suction_lost", {}, words);
    add(all, "entered", "entered", {}, words);
    for (const std::string what : safety_departures) add(all, what, what, {}, words);
    return all;
}

}  // namespace screen
