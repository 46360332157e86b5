#include "past/figures.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <limits>
#include <map>

namespace past {
namespace {

bool wanted(const Summary& one, const Filter& filter) {
    return (!filter.from || one.day >= *filter.from) && (!filter.to || one.day <= *filter.to) &&
           (!filter.side || one.side == *filter.side) && (!filter.reason || one.reason == *filter.reason) &&
           (filter.trephine.empty() || one.trephine == filter.trephine);
}

/// Keeps the cases the figures are of, newest first, and counts the others.
LeftOut leave_out(std::vector<Summary>& all, const Filter& filter) {
    LeftOut out{};
    std::erase_if(all, [&](const Summary& one) {
        int* why = one.invented != filter.invented ? &out.invented : !one.end ? &out.open : !wanted(one, filter) ? &out.filtered : nullptr;
        if (why != nullptr) *why += 1;
        return why != nullptr;
    });
    std::sort(all.begin(), all.end(),
              [](const Summary& a, const Summary& b) { return a.day != b.day ? a.day > b.day : a.reference > b.reference; });
    return out;
}

template <class Is>
std::optional<Rate> rate(const std::vector<Summary>& all, Is is) {
    return wilson(static_cast<int>(std::count_if(all.begin(), all.end(), is)), static_cast<int>(all.size()));
}

bool done(const Summary& one) { return one.end == guide::CaseEnd::Done; }

double seconds_of(const Timed& timed) {
    constexpr double ms_a_second = 1000;
    return static_cast<double>(timed.ms) / ms_a_second;
}

std::vector<Time> times(const std::vector<Summary>& all) {
    std::map<std::string, std::pair<std::vector<double>, int>> by_id{};
    for (const Summary& one : all) {
        if (!done(one)) continue;
        for (const Timed& timed : one.times) {
            auto& [seconds, about] = by_id[timed.id];
            seconds.push_back(seconds_of(timed));
            about += timed.exact ? 0 : 1;
        }
    }
    std::vector<Time> made{};
    for (auto& [id, found] : by_id) made.push_back({.id = id, .seconds = *quartiles(std::move(found.first)), .about = found.second});
    return made;
}

/// Where a range of the share begins; the last has no end.
constexpr std::array<double, 6> share_from{0, 0.6, 0.7, 0.8, 0.9, 1.0};

std::vector<Entries> by_share(const std::vector<Summary>& all) {
    std::vector<Entries> made{};
    for (std::size_t i = 0; i < share_from.size(); ++i) {
        const double from = share_from[i];
        const double below = i + 1 < share_from.size() ? share_from[i + 1] : std::numeric_limits<double>::infinity();
        int cuts = 0, entered = 0;
        for (const Summary& one : all) {
            const auto share = share_at_end(one);
            if (!share || *share < from || *share >= below) continue;
            cuts += 1;
            entered += one.cut->end == guide::CutEnd::Entered ? 1 : 0;
        }
        if (const auto found = wilson(entered, cuts)) made.push_back({.from = from, .below = below, .entered = *found});
    }
    return made;
}

void against_plan(const Cut& cut, Cuts& made, std::vector<double>& more_by) {
    if (cut.seatings != 1 || !cut.planned || cut.end == guide::CutEnd::Entered) return;
    const int more = cut.position - *cut.planned;
    (more == 0 ? made.as_planned : more < 0 ? made.fewer : made.more) += 1;
    more_by.push_back(more);
}

Cuts cuts(const std::vector<Summary>& all) {
    Cuts made{};
    int entered = 0;
    std::vector<double> more_by{}, reaches{};
    for (const Summary& one : all) {
        if (!one.cut || !one.cut->end) continue;
        made.ended += 1;
        made.second_seatings += one.cut->seatings > 1 ? 1 : 0;
        entered += one.cut->end == guide::CutEnd::Entered ? 1 : 0;
        against_plan(*one.cut, made, more_by);
        if (const auto found = reach(one)) {
            reaches.push_back(*found);
            made.measured_with.insert(one.trephine);
        }
    }
    made.entered = wilson(entered, made.ended);
    made.more_by = quartiles(std::move(more_by));
    made.by_share = by_share(all);
    made.measured = static_cast<int>(reaches.size());
    if (made.measured_with.size() < 2) made.reach = spread(reaches);
    return made;
}

std::vector<DepartureRate> departures(const std::vector<Summary>& all) {
    std::map<std::string, int> cases{};
    for (const Summary& one : all) {
        for (const std::string& id : one.departures) cases[id] += 1;
    }
    std::vector<DepartureRate> made{};
    for (const auto& [id, count] : cases) made.push_back({.id = id, .cases = *wilson(count, static_cast<int>(all.size()))});
    std::stable_sort(made.begin(), made.end(),
                     [](const DepartureRate& a, const DepartureRate& b) { return a.cases.events > b.cases.events; });
    return made;
}

/// Of one case; none where a phase is not told or the first was over by then.
std::optional<double> rest_of(const Summary& one, const std::vector<std::string>& phases, double so_far_s) {
    double rest = -so_far_s;
    for (const std::string& phase : phases) {
        const auto timed = std::find_if(one.times.begin(), one.times.end(), [&](const Timed& time) { return time.id == phase; });
        if (timed == one.times.end()) return std::nullopt;
        rest += seconds_of(*timed);
        if (rest <= 0) return std::nullopt;
    }
    return phases.empty() ? std::nullopt : std::optional(rest);
}

}  // namespace

Figures figures(std::vector<Summary> all, const Filter& filter) {
    Figures made{.left_out = leave_out(all, filter)};
    made.cases = static_cast<int>(all.size());
    made.done = rate(all, done);
    made.converted = rate(all, [](const Summary& one) { return one.end == guide::CaseEnd::Converted; });
    made.abandoned = rate(all, [](const Summary& one) { return one.end == guide::CaseEnd::Abandoned; });
    made.times = times(all);
    made.cuts = cuts(all);
    made.departures = departures(all);
    made.counts_differed = rate(all, [](const Summary& one) { return one.counts_differed > 0; });
    made.list = std::move(all);
    return made;
}

std::optional<Quartiles> still_to_go(const std::vector<Summary>& all, const std::vector<std::string>& phases, double so_far_s) {
    std::vector<double> rests{};
    for (const Summary& one : all) {
        const auto rest = done(one) ? rest_of(one, phases, so_far_s) : std::nullopt;
        if (rest) rests.push_back(*rest);
    }
    return static_cast<int>(rests.size()) < least_cases ? std::nullopt : quartiles(std::move(rests));
}

const Time* find_time(const Figures& figures, const std::string& id) {
    const auto found = std::find_if(figures.times.begin(), figures.times.end(), [&](const Time& time) { return time.id == id; });
    return found == figures.times.end() ? nullptr : &*found;
}

}  // namespace past
