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

}  // namespace

std::vector<Timed> timed(const CaseState& state) {
    std::vector<Timed> all{};
    for (const auto& [id, done] : state.steps)
        all.push_back({.is = Timed::Is::Step, .id = id, .seq = done.seq, .at = done.at, .tapped = done.tapped});
    for (const auto& [clock, spells] : state.clocks) add_spells(clock, spells, all);
    for (const Tied& tied : state.sutures)
        all.push_back({.is = Timed::Is::Suture, .n = tied.n, .seq = tied.seq, .at = tied.at, .tapped = tied.tapped});
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
    std::erase_if(all, [&](const Timed& other) { return other.tapped != one.tapped || other.at != one.at; });
    std::stable_partition(all.begin(), all.end(), [&](const Timed& other) { return other.seq == one.seq; });
    return all;
}

}  // namespace guide
