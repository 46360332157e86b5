// The Desk's pages for a time that was written wrong: which one, the right time, why. The old time stays in the record.
#include "guide/timed.hpp"
#include "screen/desk_pages.hpp"
#include "screen/format.hpp"

#include <charconv>
#include <cstdlib>

namespace screen {
namespace {

using guide::CaseState;
using guide::Timed;

constexpr std::size_t at_once = 7;
constexpr std::int64_t second_ms = 1000, minute_ms = 60 * second_ms, day_ms = 24 * 60 * minute_ms;

/// "08:13:33", local to where it was written.
std::string clock_time(const measure::Instant& at) { return measure::rfc3339(at).substr(11, 8); }

std::string clock_name(const CaseState& state, const std::string& id, const Words& words) {
    if (words.has("clock." + id)) return words("clock." + id);
    for (const guide::Phase& phase : state.brief.procedure.phases)
        if (phase.id == id) return phase.title;
    return id;
}

/// A sentence, and after it what is corrected with it.
std::string with_others(const std::string& line, const CaseState& state, const Timed& one, const Words& words) {
    std::string others{};
    for (const Timed& other : guide::of_one_tap(state, one))
        if (other.seq != one.seq) others += (others.empty() ? "" : ", ") + timed_text(state, other, words);
    return others.empty() ? line : line + " " + words("times.with", {others});
}

DeskPage times_page(const CaseState& state, const DeskState& desk, const Words& words) {
    DeskPage made{.heading = words("times.title"), .line = words("times.line")};
    const auto all = guide::one_a_tap(state);
    const auto from = static_cast<std::size_t>(number_in(desk.argument));
    for (std::size_t i = from; i < std::min(all.size(), from + at_once); ++i) {
        const std::string seq = std::to_string(all[i].seq);
        made.actions.push_back(
            desk_open(desk_nth_key(i - from), "time-" + seq, timed_text(state, all[i], words), {.page = "time", .argument = seq}));
        made.actions.back().line = clock_time(all[i].at);
    }
    if (from + at_once < all.size())
        made.actions.push_back(
            desk_open("O", "older", words("times.older"), {.page = "times", .argument = std::to_string(from + at_once)}));
    made.actions.push_back(desk_back(words));
    return made;
}

/// Milliseconds of the day from "8:05", "08:05" or "08:05:30".
std::optional<std::int64_t> time_of_day(const std::string& text) {
    std::int64_t parts[3] = {0, 0, 0};
    int n = 0;
    const char* at = text.data();
    const char* const end = text.data() + text.size();
    for (; n < 3 && at != end; ++n) {
        if (n > 0 && *at++ != ':') return std::nullopt;
        const auto [next, error] = std::from_chars(at, end, parts[n]);
        if (error != std::errc{} || parts[n] < 0 || next - at > 2 || (n > 0 && next - at != 2)) return std::nullopt;
        at = next;
    }
    if (n < 2 || at != end || parts[0] > 23 || parts[1] > 59 || parts[2] > 59) return std::nullopt;
    return (parts[0] * 60 + parts[1]) * minute_ms + parts[2] * second_ms;
}

/// "17=08:05": the event and its right time.
struct Right {
    std::optional<Timed> one{};
    std::optional<std::int64_t> utc_ms{};
};
Right right_time(const CaseState& state, const std::string& argument) {
    const auto at = argument.find('=');
    Right made{.one = guide::find_timed(state, static_cast<guide::Seq>(number_in(argument.substr(0, at))))};
    const auto of_day = at == std::string::npos ? std::nullopt : time_of_day(argument.substr(at + 1));
    if (made.one && of_day) made.utc_ms = nearest_utc_ms(made.one->at, *of_day);
    return made;
}

DeskPage time_page(const CaseState& state, const DeskState& desk, const Words& words) {
    const Right right = right_time(state, desk.argument + "=" + desk.typed);
    if (!right.one) return {.heading = words("times.title"), .actions = {desk_back(words)}};
    DeskPage made = desk_field_page(
        timed_text(state, *right.one, words), desk.typed, words("times.written", {clock_time(right.one->at)}),
        desk_open("Enter", "time-why", words("desk.next_why"), {.page = "time-why", .argument = desk.argument + "=" + desk.typed}), words);
    if (!right.utc_ms) made.actions.front().why_not = words("times.type");
    return made;
}

DeskPage why_page(const CaseState& state, const DeskState& desk, const Words& words) {
    const Right right = right_time(state, desk.argument);
    DeskPage made{.heading = words("times.why")};
    if (right.one && right.utc_ms) {
        measure::Instant now = right.one->at;
        now.utc_ms = *right.utc_ms;
        made.line = with_others(words("times.change", {timed_text(state, *right.one, words), clock_time(right.one->at), clock_time(now)}),
                                state, *right.one, words);
        const bool late = *right.utc_ms < right.one->at.utc_ms;
        for (Target& one : reason_choices(late ? "time_late" : "time_early", words, [&](const std::string& why) {
                 return guide::CorrectTime{.event = right.one->seq, .utc_ms = *right.utc_ms, .why = why};
             }))
            made.actions.push_back(desk_keyed(desk_nth_key(made.actions.size()), std::move(one)));
    }
    made.actions.push_back(desk_back(words));
    return made;
}

}  // namespace

std::string timed_text(const CaseState& state, const Timed& one, const Words& words) {
    switch (one.is) {
        case Timed::Is::Step: {
            const guide::Step* step = guide::find_step(state.brief.procedure, one.id);
            return step == nullptr ? one.id : filled(step->title, state, words);
        }
        case Timed::Is::ClockOn:
            return words("times.on", {clock_name(state, one.id, words)});
        case Timed::Is::ClockOff:
            return words("times.off", {clock_name(state, one.id, words)});
        case Timed::Is::Suture:
            return words("times.suture", {std::to_string(one.n)});
    }
    return {};
}

std::int64_t nearest_utc_ms(const measure::Instant& written, std::int64_t of_day_ms) {
    const std::int64_t local = written.utc_ms + written.offset_min * minute_ms;
    const std::int64_t midnight = local - ((local % day_ms) + day_ms) % day_ms;
    std::int64_t best = midnight + of_day_ms;
    for (const std::int64_t day : {-day_ms, day_ms}) {
        const std::int64_t other = midnight + of_day_ms + day;
        if (std::llabs(other - local) < std::llabs(best - local)) best = other;
    }
    return best - written.offset_min * minute_ms;
}

std::optional<DeskPage> desk_times_page(const CaseState& state, const DeskState& desk, const Words& words) {
    if (desk.page == "times") return times_page(state, desk, words);
    if (desk.page == "time") return time_page(state, desk, words);
    if (desk.page == "time-why") return why_page(state, desk, words);
    return std::nullopt;
}

}  // namespace screen
