#include "plan/target.hpp"

#include "measure/expect.hpp"
#include "plan/ladder.hpp"
#include "plan/sources.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace plan {
namespace {

using Level = Note::Level;

constexpr int most_permille_from_centre = 700;  // usual practice: a depth from a central reading alone stays well short
constexpr double may_enter = 0.10;
constexpr double most_likely_in = 0.90;

std::optional<int> first_with(const std::vector<Rung>& ladder, double chance) {
    for (const Rung& rung : ladder) {
        if (rung.entry_chance >= chance) return rung.spoke;
    }
    return std::nullopt;
}

Target blank(const Inputs& inputs, const Footing& footing) {
    return {.spokes = std::nullopt,
            .raise = inputs.trephine.raise,
            .bound_by = {},
            .share_permille = 0,
            .entry_from = first_with(footing.ladder, may_enter),
            .entry_to = first_with(footing.ladder, most_likely_in)};
}

std::string percent(double share) { return fmt::format("{:g}", share * 100); }

bool within(const Rung& rung, Length thinnest, int permille) { return 1000 * rung.travel.nm() <= permille * thinnest.nm(); }

TargetFinding by_share(const Inputs& inputs, const Footing& footing) {
    if (footing.ladder.empty()) return {};
    const Aim& aim = inputs.file.aim;
    const int permille = footing.from_centre ? std::min(aim.share_permille, most_permille_from_centre) : aim.share_permille;
    const auto allowed = [&](const Rung& rung) {
        return within(rung, footing.wall->thinnest, permille) && rung.entry_chance <= aim.entry_limit;
    };
    const auto stop = std::find_if_not(footing.ladder.begin(), footing.ladder.end(), allowed);
    const int spokes = static_cast<int>(stop - footing.ladder.begin()) - 1;
    TargetFinding found{};
    if (permille < aim.share_permille) {
        found.notes.push_back({.code = "aim-capped",
                               .source = source::usual,
                               .level = Level::Watch,
                               .values = {percent(aim.share_permille / 1000.0), percent(permille / 1000.0)}});
    }
    if (spokes < 1) {
        found.notes.push_back({.code = "no-spokes", .source = source::own_file, .level = Level::Stop, .values = {}});
        return found;
    }
    Target target = blank(inputs, footing);
    target.spokes = spokes;
    target.share_permille = permille;
    const bool aim_goes_on = stop != footing.ladder.end() && within(*stop, footing.wall->thinnest, permille);
    target.bound_by = aim_goes_on ? Bound::EntryLimit : Bound::Aim;
    found.target = target;
    return found;
}

bool over_limit(const Inputs& inputs, const Footing& footing) {
    const int spokes = inputs.file.aim.spokes;
    if (footing.ladder.empty()) return false;
    // The ladder ends where the chance is as good as sure, or after its last rung.
    const auto at = std::min(static_cast<std::size_t>(spokes), footing.ladder.size() - 1);
    return footing.ladder[at].entry_chance > inputs.file.aim.entry_limit;
}

TargetFinding by_surgeon(const Inputs& inputs, const Footing& footing) {
    TargetFinding found{};
    if (inputs.file.aim.spokes < 1) {
        found.notes.push_back({.code = "own-number-zero", .source = source::own_file, .level = Level::Stop, .values = {}});
        return found;
    }
    Target target = blank(inputs, footing);
    target.spokes = inputs.file.aim.spokes;
    target.bound_by = Bound::Surgeon;
    found.target = target;
    const Length down = travel(inputs.trephine, inputs.file.aim.spokes);
    if (footing.wall && down >= footing.wall->thinnest) {
        found.notes.push_back({.code = "own-number-through",
                               .source = source::own_file,
                               .level = Level::Watch,
                               .values = {fmt::format("{:g}", down.um()), fmt::format("{:.0f}", footing.wall->thinnest.um())}});
    }
    if (over_limit(inputs, footing)) {
        found.notes.push_back({.code = "over-entry-limit",
                               .source = source::depth,
                               .level = Level::Watch,
                               .values = {fmt::format("{}", inputs.file.aim.spokes), percent(inputs.file.aim.entry_limit)}});
    }
    return found;
}

TargetFinding to_entry(const Inputs& inputs, const Footing& footing) {
    Target target = blank(inputs, footing);
    target.bound_by = Bound::ToEntry;
    TargetFinding found{.target = target, .notes = {}};
    if (target.entry_from && target.entry_to) {
        found.notes.push_back({.code = "to-entry-range",
                               .source = source::depth,
                               .level = Level::Watch,
                               .values = {fmt::format("{}", *target.entry_from), fmt::format("{}", *target.entry_to)}});
    }
    return found;
}

}  // namespace

TargetFinding target_from(const Inputs& inputs, const Footing& footing) {
    switch (inputs.file.aim.goal) {
        case Goal::Share:
            return by_share(inputs, footing);
        case Goal::Spokes:
            return by_surgeon(inputs, footing);
        case Goal::ToEntry:
            return to_entry(inputs, footing);
    }
    measure::expect(false);
    return {};
}

}  // namespace plan
