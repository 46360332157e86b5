#include "guide/timed.hpp"

#include <algorithm>

namespace guide {
namespace {

void add_spells(const ClockId& clock, const std::vector<Spell>& spells, std::vector<Timed>& all) {
    std::optional<Instant> last{};
    for (std::size_t i = 0; i < spells.size(); ++i) {
        const Spell& spell = spells[i];
        const auto next = i + 1 < spells.size() ? std::optional(spells[i + 1].from) : std::nullopt;
        Timed mark{.is = Timed::Is::ClockOn,
                   .id = clock,
                   .seq = spell.from_seq,
                   .at = spell.from,
                   .tapped = spell.from_tapped,
                   .after = last,
                   .before = spell.to};
        all.push_back(mark);
        if (spell.to) {
            mark.is = Timed::Is::ClockOff;
            mark.seq = spell.to_seq, mark.at = *spell.to, mark.tapped = spell.to_tapped;
            mark.after = spell.from, mark.before = next;
            all.push_back(mark);
        }
        last = spell.to;
    }
}

bool same_tap(const Timed& one, const Timed& other) { return one.tapped == other.tapped && one.at == other.at; }

/// In the order in which they were written a step comes after the one before it, and a suture too. Where a tap said that it was done
/// longer ago than what was told before it, there is no order to keep.
void set_neighbours(std::vector<Timed>& in_order) {
    for (std::size_t i = 1; i < in_order.size(); ++i) {
        Timed& later = in_order[i];
        for (std::size_t j = i; j > 0; --j) {
            Timed& earlier = in_order[j - 1];
            if (same_tap(earlier, later)) continue;
            if (earlier.at.utc_ms > later.at.utc_ms) break;
            later.after = earlier.at;
            if (!earlier.before) earlier.before = later.at;
            break;
        }
    }
}

std::vector<Timed> steps_done(const CaseState& state) {
    std::vector<Timed> made{};
    for (const auto& [id, done] : state.steps)
        made.push_back({.is = Timed::Is::Step, .id = id, .seq = done.seq, .at = done.at, .tapped = done.tapped});
    return made;
}

std::vector<Timed> sutures_tied(const CaseState& state) {
    std::vector<Timed> made{};
    for (const Tied& tied : state.sutures)
        made.push_back({.is = Timed::Is::Suture, .n = tied.n, .seq = tied.seq, .at = tied.at, .tapped = tied.tapped});
    return made;
}

void add_in_order(std::vector<Timed> some, std::vector<Timed>& all) {
    std::sort(some.begin(), some.end(), [](const Timed& a, const Timed& b) { return a.seq < b.seq; });
    set_neighbours(some);
    all.insert(all.end(), some.begin(), some.end());
}

/// What a person means by the tap: the suture, else the step, else the clock.
int meant(const Timed& one) {
    switch (one.is) {
        case Timed::Is::Suture:
            return 0;
        case Timed::Is::Step:
            return 1;
        case Timed::Is::ClockOn:
        case Timed::Is::ClockOff:
            return 2;
    }
    return 2;
}

}  // namespace

std::vector<Timed> timed(const CaseState& state) {
    std::vector<Timed> all{};
    add_in_order(steps_done(state), all);
    for (const auto& [clock, spells] : state.clocks) add_spells(clock, spells, all);
    add_in_order(sutures_tied(state), all);
    std::sort(all.begin(), all.end(), [](const Timed& a, const Timed& b) { return a.seq > b.seq; });
    return all;
}

std::optional<Timed> find_timed(const CaseState& state, Seq event) {
    const auto all = timed(state);
    const auto found = std::find_if(all.begin(), all.end(), [&](const Timed& one) { return one.seq == event; });
    return found == all.end() ? std::nullopt : std::optional(*found);
}

std::vector<Timed> of_one_tap(const CaseState& state, const Timed& one) {
    std::vector<Timed> all = timed(state);
    std::erase_if(all, [&](const Timed& other) { return !same_tap(other, one); });
    std::stable_partition(all.begin(), all.end(), [&](const Timed& other) { return other.seq == one.seq; });
    return all;
}

std::vector<Timed> one_a_tap(const CaseState& state) {
    std::vector<Timed> taps{};
    for (const Timed& one : timed(state)) {
        const auto found = std::find_if(taps.begin(), taps.end(), [&](const Timed& other) { return same_tap(one, other); });
        if (found == taps.end())
            taps.push_back(one);
        else if (meant(one) <= meant(*found))
            *found = one;
    }
    return taps;
}

}  // namespace guide
