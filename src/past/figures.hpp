// Figures over many cases: what happened, how long it took, how the cut came out, each with how sure it is. Pure.
// Times and departures are of cases that were done to the end; the cut, of every case whose cut ended.
#pragma once

#include "past/statistics.hpp"
#include "past/summary.hpp"

#include <set>

namespace past {

struct Filter {
    std::optional<Day> from{}, to{};  // both included
    std::optional<eye::Side> side{};
    std::optional<plan::Reason> reason{};
    std::string trephine{};  // the profile's id; empty: any
    bool invented = false;   // rehearsals instead of cases
    bool operator==(const Filter&) const = default;
};

/// Cases that are not in the figures, and why.
struct LeftOut {
    int open = 0, invented = 0, filtered = 0;  // `invented`: of the kind that was not asked for
    bool operator==(const LeftOut&) const = default;
};

struct Time {
    std::string id{};
    Quartiles seconds{};
    int about = 0;  // of these went by the wall clock across a restart of the machine
    bool operator==(const Time&) const = default;
};

/// Of the reliable cuts that ended with the travel in this range of the thinnest wall, those that ended by entering.
struct Entries {
    double from = 0, below = 0;  // share; the last range has no end
    Rate entered{};
    bool operator==(const Entries&) const = default;
};

struct Cuts {
    int ended = 0, second_seatings = 0;
    std::optional<Rate> entered{};
    int as_planned = 0, fewer = 0, more = 0;  // spokes below zero against the plan; one seating, a number planned, not entered
    std::optional<Quartiles> more_by{};       // spokes over the plan, negative under it
    std::vector<Entries> by_share{};          // ranges that hold a cut
    std::optional<Spread> reach{};            // none: measured in fewer than three cuts, or in cuts of more than one trephine
    int measured = 0;
    std::set<std::string> measured_with{};  // the profiles' ids: a reach is one instrument's
    bool operator==(const Cuts&) const = default;
};

struct DepartureRate {
    std::string id{};
    Rate cases{};
    bool operator==(const DepartureRate&) const = default;
};

struct Figures {
    int cases = 0;
    LeftOut left_out{};
    std::optional<Rate> done{}, converted{}, abandoned{};
    std::vector<Time> times{};  // by id
    Cuts cuts{};
    std::vector<DepartureRate> departures{};  // the most frequent first
    std::optional<Rate> counts_differed{};    // cases in which somebody once counted another number
    std::vector<Summary> list{};              // newest first
    bool operator==(const Figures&) const = default;
};

Figures figures(std::vector<Summary> all, const Filter& filter);

/// What was still to go, in seconds, in cases that were done and whose phase `phases.front()` had run for more than `so_far_s`: the
/// rest of it and all the later phases. None under five such cases (our own choice), or without a phase.
std::optional<Quartiles> still_to_go(const std::vector<Summary>& all, const std::vector<std::string>& phases, double so_far_s);
/// How a phase or clock went in the cases that were done; null if it never ran.
const Time* find_time(const Figures& figures, const std::string& id);
/// Under so many cases a middle half is not told.
constexpr int least_cases = 5;

}  // namespace past
