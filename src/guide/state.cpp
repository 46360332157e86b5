// Figures read off the state; no rule stands here.
#include "guide/state.hpp"

#include "measure/expect.hpp"

#include <algorithm>

namespace guide {
namespace {

bool pattern_runs(const plan::Pattern& pattern) { return pattern.running > 0; }

}  // namespace

bool applies(const CaseState& state, const Step& step) {
    return step.only.empty() ||
           (step.only == "running" && pattern_runs(state.inputs.file.pattern) && state.inputs.file.pattern.interrupted > 0);
}

const Step* current_step(const CaseState& state) {
    for (const Phase& phase : state.brief.procedure.phases) {
        for (const Step& step : phase.steps) {
            if (applies(state, step) && !state.steps.contains(step.id)) return &step;
        }
    }
    return nullptr;
}

const Phase* current_phase(const CaseState& state) {
    const Step* step = current_step(state);
    return step == nullptr ? nullptr : phase_of(state.brief.procedure, step->id);
}

const Step* step_that_closes(const Procedure& procedure, Closes closes) {
    for (const Phase& phase : procedure.phases) {
        for (const Step& step : phase.steps) {
            if (step.closes == closes) return &step;
        }
    }
    return nullptr;
}

bool confirmed(const CaseState& state, const StepId& step) {
    const auto found = state.steps.find(step);
    return found != state.steps.end() && !found->second.skipped;
}

bool cutting(const CaseState& state) { return state.suction != Suction::Off && !state.seatings.empty() && !state.seatings.back().ended; }

bool entry_told(const CaseState& state) {
    const auto& cuts = state.seatings;
    const auto& told = state.departures;
    return opened_by_step(state) ||
           std::any_of(cuts.begin(), cuts.end(), [](const Seating& one) { return one.ended == std::optional(CutEnd::Entered); }) ||
           std::any_of(told.begin(), told.end(), [](const Away& one) { return one.what == "entered-by-trephine"; });
}

bool groove_begun(const CaseState& state) {
    return std::any_of(state.seatings.begin(), state.seatings.end(), [](const Seating& one) { return one.down > one.raise; });
}

bool spokes_ahead(const CaseState& state) {
    const Step* cut = step_that_closes(state.brief.procedure, Closes::Cut);
    return !state.closed && !eye_entered(state) && (cutting(state) || cut == nullptr || !state.steps.contains(cut->id));
}

bool count_matters(const CaseState& state) {
    const Step* cut = step_that_closes(state.brief.procedure, Closes::Cut);
    const Phase* phase = current_phase(state);
    if (cut == nullptr || phase == nullptr || state.closed) return false;
    return cutting(state) || (!state.steps.contains(cut->id) && phase == phase_of(state.brief.procedure, cut->id));
}

Blade blade(const CaseState& state) {
    Blade shown{};
    const bool raised = confirmed(state, "raise");
    // Let go of before a spoke was turned, the blade is as before the first seating: set to zero or raised.
    const auto let_go = [&](const Seating& last) { return state.suction == Suction::Off && !last.ended && last.down == 0; };
    const bool before = state.seatings.empty() || let_go(state.seatings.back());
    const Seating now = before ? Seating{.raise = raised ? state.inputs.trephine.raise : 0} : state.seatings.back();
    shown.seating = static_cast<int>(state.seatings.size());
    shown.spokes_turned = now.down;
    shown.raised = now.raise + now.up;
    shown.position = now.position();
    shown.to_zero = std::max(0, -shown.position);
    shown.reliable = state.seatings.size() <= 1;
    const int below = std::max(0, shown.position);
    shown.travel = below * state.inputs.trephine.advance;
    if (state.plan && state.plan->target && state.plan->target->spokes) {
        shown.planned = *state.plan->target->spokes + state.moved;
        shown.to_go = std::max(0, *shown.planned - below);
        shown.over = std::max(0, shown.position - *shown.planned);
    }
    return shown;
}

std::optional<ClockReading> clock_reading(const CaseState& state, const ClockId& clock, const Instant& now) {
    const auto found = state.clocks.find(clock);
    if (found == state.clocks.end() || found->second.empty()) return std::nullopt;
    ClockReading reading{};
    for (const Spell& spell : found->second) {
        const measure::Elapsed part = measure::elapsed(spell.from, spell.to.value_or(now));
        reading.ms += part.ms;
        reading.exact = reading.exact && part.exact;
        reading.running = !spell.to;
    }
    return reading;
}

bool clock_running(const CaseState& state, const ClockId& clock) {
    const auto found = state.clocks.find(clock);
    return found != state.clocks.end() && !found->second.empty() && !found->second.back().to;
}

const Undoable* newest_to_undo(const CaseState& state) {
    const bool blade = cutting(state);
    const auto newest = std::find_if(state.undoable.rbegin(), state.undoable.rend(),
                                     [&](const Undoable& one) { return !blade || !std::holds_alternative<ItemsMoved>(one.fact); });
    return newest == state.undoable.rend() ? nullptr : &*newest;
}

bool eye_open(const CaseState& state) { return clock_running(state, "decompressed") || clock_running(state, "open-sky"); }

bool eye_entered(const CaseState& state) { return state.clocks.contains("decompressed"); }

bool opened_by_step(const CaseState& state) {
    const auto opens = [&](const Step& step) {
        return state.steps.contains(step.id) && std::find(step.starts.begin(), step.starts.end(), "decompressed") != step.starts.end();
    };
    const auto& phases = state.brief.procedure.phases;
    return std::any_of(phases.begin(), phases.end(),
                       [&](const Phase& phase) { return std::any_of(phase.steps.begin(), phase.steps.end(), opens); });
}

plan::Inputs inputs_in_use(const CaseState& state) {
    plan::Inputs made = state.inputs;
    const auto& target = state.plan ? state.plan->target : std::nullopt;
    if (state.moved == 0 || !target || !target->spokes) return made;
    made.file.aim = {
        .goal = plan::Goal::Spokes, .share_permille = 0, .spokes = *target->spokes + state.moved, .entry_limit = made.file.aim.entry_limit};
    return made;
}

int sutures_planned(const CaseState& state) { return state.plan ? static_cast<int>(state.plan->order.size()) : 0; }

int sutures_wanted(const CaseState& state, const Step& step) {
    const int all = sutures_planned(state);
    if (step.sutures == 0) return all;
    if (step.sutures < all) return step.sutures;
    // The last suture is left to the step of the whole pattern, so that the count before it comes before it; but a clock that
    // stops with the fourth does so in a pattern of four as well.
    return step.stops.empty() ? all - 1 : all;
}

const Tied* find_tied(const CaseState& state, int n) {
    const auto found = std::find_if(state.sutures.begin(), state.sutures.end(), [&](const Tied& one) { return one.n == n; });
    return found == state.sutures.end() ? nullptr : &*found;
}

std::optional<int> next_suture(const CaseState& state) {
    for (int n = 1; n <= sutures_planned(state); ++n) {
        if (find_tied(state, n) == nullptr) return n;
    }
    return std::nullopt;
}

std::string same_person(const std::string& name) {
    std::string made{};
    for (const char letter : name) {
        if (letter == ' ' && (made.empty() || made.back() == ' ')) continue;
        const auto byte = static_cast<unsigned char>(letter);
        const bool accented = !made.empty() && made.back() == '\xc3' && byte >= 0x80 && byte <= 0x9e && byte != 0x97;  // À to Þ, but ×
        const bool capital = (letter >= 'A' && letter <= 'Z') || accented;
        made += capital ? static_cast<char>(byte + ('a' - 'A')) : letter;
    }
    while (!made.empty() && made.back() == ' ') made.pop_back();
    return made;
}

std::optional<int> check_that_holds(const CaseState& state, const ItemId& item, const std::string& by) {
    const auto tally = state.counts.find(item);
    if (tally == state.counts.end()) return std::nullopt;
    const Seq since = std::max(state.step_since, tally->second.moved);
    std::optional<int> seen{};
    for (const Check& check : tally->second.checks) {
        if (check.seq > since && same_person(check.said.by) == same_person(by)) seen = check.said.seen;
    }
    return seen;
}

std::optional<Difference> difference(const CaseState& state, const ItemId& item) {
    const auto tally = state.counts.find(item);
    if (tally == state.counts.end()) return std::nullopt;
    std::map<std::string, int> holding{};
    std::map<std::string, std::string> told{};
    std::optional<Difference> found{};
    for (const Check& check : tally->second.checks) {
        const auto seen = check_that_holds(state, item, check.said.by);
        if (!seen) continue;
        holding[same_person(check.said.by)] = *seen;
        told[same_person(check.said.by)] = check.said.by;
        if (check.said.seen == *seen && *seen != tally->second.expected()) found = {.seen = *seen, .expected = tally->second.expected()};
    }
    if (!found) return std::nullopt;
    for (const auto& [who, seen] : holding) {
        if (seen == found->seen) found->by[who] = told.at(who);
        found->disputed = found->disputed || seen != found->seen;
    }
    return found;
}

const Recorded* recorded_difference(const CaseState& state, const ItemId& item) {
    const auto tally = state.counts.find(item);
    if (tally == state.counts.end() || tally->second.differences.empty()) return nullptr;
    const Recorded& newest = tally->second.differences.back();
    const auto& checks = tally->second.checks;
    const bool counted_since = !checks.empty() && checks.back().seq > newest.seq;
    return newest.seq > std::max(state.step_since, tally->second.moved) && !counted_since ? &newest : nullptr;
}

std::optional<Difference> open_difference(const CaseState& state, const ItemId& item) {
    return recorded_difference(state, item) == nullptr ? difference(state, item) : std::nullopt;
}

bool counts_agree(const CaseState& state) {
    for (const auto& entry : state.counts) {
        const ItemId& item = entry.first;
        const Tally& tally = entry.second;  // by name: Clang 14 lets no lambda capture a structured binding
        if (recorded_difference(state, item) != nullptr) continue;
        if (difference(state, item)) return false;
        std::set<std::string> people{};
        for (const Check& check : tally.checks) people.insert(same_person(check.said.by));
        const auto agreeing = std::count_if(people.begin(), people.end(),
                                            [&](const std::string& by) { return check_that_holds(state, item, by).has_value(); });
        if (agreeing < 2) return false;
    }
    return true;
}

std::vector<Away> open_departures(const CaseState& state) {
    std::vector<Away> open{};
    std::copy_if(state.departures.begin(), state.departures.end(), std::back_inserter(open), [](const Away& away) { return !away.back; });
    return open;
}

}  // namespace guide
