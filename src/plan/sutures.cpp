#include "plan/sutures.hpp"

#include "measure/expect.hpp"
#include "plan/sources.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <tuple>

namespace plan {
namespace {

using Level = Note::Level;

constexpr int turn = 36000;

Length chord(Length diameter, int count) { return measure::from_mm(diameter.mm() * std::sin(std::numbers::pi / count)); }

Angle place(const CaseFile& file, int position, int count) {
    return measure::centideg(file.first_suture.centideg() - (position * turn + count / 2) / count);
}

Suture suture(const Inputs& inputs, int n, Angle at) {
    const auto host = eye::mark_place(at, inputs.trephine.marks, inputs.trephine.mark_offset);
    // The donor lies with its first dot at 12 o'clock.
    const auto donor = eye::mark_place(at, inputs.punch.dots, {});
    return {.n = n,
            .centideg = at.centideg(),
            .host_mark = host.mark,
            .between = host.between,
            .between_permille = host.part_permille,
            .donor_mark = donor.mark,
            .opposite = {}};
}

/// The shorter way from pair to pair; pairs lie on half a turn.
int apart(int a, int b, int pairs) {
    const int way = std::abs(a - b);
    return std::min(way, pairs - way);
}

int next_pair(const std::vector<int>& placed, int pairs) {
    int best = -1;
    std::tuple<int, int> best_is{};
    for (int k = 0; k < pairs; ++k) {
        int nearest = pairs;
        for (int other : placed) nearest = std::min(nearest, apart(k, other, pairs));
        const std::tuple is{nearest, apart(k, placed.back(), pairs)};
        if (nearest > 0 && (best < 0 || is > best_is)) {
            best = k;
            best_is = is;
        }
    }
    return best;
}

std::vector<Suture> interrupted_order(const Inputs& inputs, int count) {
    std::vector<Suture> order{};
    for (int position : pair_order(count)) {
        const int n = static_cast<int>(order.size()) + 1;
        order.push_back(suture(inputs, n, place(inputs.file, position, count)));
        order.back().opposite = n % 2 == 1 ? n + 1 : n - 1;
    }
    return order;
}

std::vector<Suture> loop_order(const Inputs& inputs, int count) {
    std::vector<Suture> order{};
    for (int position = 0; position < count; ++position) order.push_back(suture(inputs, position + 1, place(inputs.file, position, count)));
    return order;
}

void note_marks(const Inputs& inputs, Sutures& sutures) {
    const auto off = std::count_if(sutures.order.begin(), sutures.order.end(), [](const Suture& s) { return !s.host_mark; });
    if (off == 0 || inputs.trephine.marks < 1) return;
    sutures.notes.push_back(
        {.code = "off-the-marks",
         .source = source::usual,
         .level = Level::Info,
         .values = {fmt::format("{}", off), fmt::format("{}", sutures.order.size()), fmt::format("{}", inputs.trephine.marks)}});
    const std::size_t count = sutures.order.size();
    if (inputs.trephine.marks == 16 && count != 8 && count != 16) {
        sutures.notes.push_back({.code = "try-8-or-16", .source = source::usual, .level = Level::Info, .values = {}});
    }
}

/// Bites of one running suture, `by` hundredths of a degree clockwise from where it starts.
std::vector<Angle> bites(const Running& running, int by) {
    std::vector<Angle> found{};
    for (int k = 0; k < running.loops; ++k) {
        const int on = (k * turn + running.loops / 2) / running.loops + by;
        found.push_back(measure::centideg(running.start_centideg + (running.clockwise ? -on : on)));
    }
    return found;
}

}  // namespace

std::vector<RunningPath> running_paths(const Pattern& pattern, const Running& running) {
    measure::expect(running.loops > 0);
    // Half the finest gap that both patterns share: never on an interrupted suture.
    const int beside = pattern.interrupted > 0 ? turn / (2 * std::lcm(pattern.interrupted, running.loops)) : 0;
    std::vector<RunningPath> paths{{.clockwise = running.clockwise, .bites = bites(running, beside)}};
    if (running.sutures < 2) return paths;
    Running second = running;
    second.clockwise = !running.clockwise;
    paths.push_back({.clockwise = second.clockwise, .bites = bites(second, beside + turn / (2 * running.loops))});
    return paths;
}

std::vector<int> pair_order(int count) {
    measure::expect(count > 0 && count % 2 == 0);
    const int pairs = count / 2;
    std::vector<int> placed{0};
    while (static_cast<int>(placed.size()) < pairs) placed.push_back(next_pair(placed, pairs));
    std::vector<int> order{};
    for (int k : placed) order.insert(order.end(), {k, k + pairs});
    return order;
}

Sutures sutures_from(const Inputs& inputs) {
    const Pattern& pattern = inputs.file.pattern;
    const int count = pattern.interrupted > 0 ? pattern.interrupted : pattern.loops;
    Sutures sutures{};
    const bool even = pattern.interrupted % 2 == 0;
    if (count < 1 || !even || (pattern.running > 0 && pattern.loops < 1)) {
        sutures.notes.push_back(
            {.code = "odd-sutures", .source = source::usual, .level = Level::Stop, .values = {fmt::format("{}", count)}});
        return sutures;
    }
    sutures.spacing = chord(inputs.file.host_diameter, count);
    sutures.order = pattern.interrupted > 0 ? interrupted_order(inputs, count) : loop_order(inputs, count);
    if (pattern.running > 0) {
        sutures.running = Running{.loops = pattern.loops,
                                  .sutures = pattern.running,
                                  .spacing = chord(inputs.file.host_diameter, pattern.loops),
                                  .start_centideg = inputs.file.first_suture.centideg(),
                                  .clockwise = true};
    }
    note_marks(inputs, sutures);
    if (pattern.interrupted > 0)
        sutures.notes.push_back({.code = "second-opposite", .source = source::opposite, .level = Level::Info, .values = {}});
    if (pattern.interrupted > 0 && pattern.running > 0) {
        sutures.notes.push_back({.code = "running-between", .source = source::usual, .level = Level::Info, .values = {}});
    }
    if (pattern.running == 2) {
        sutures.notes.push_back({.code = "running-second", .source = source::usual, .level = Level::Info, .values = {}});
    }
    return sutures;
}

}  // namespace plan
