// The pages of figures over many cases. Each rate says events, cases and its interval; a page with nothing says so.
#include "screen/format.hpp"
#include "screen/past_view_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace screen {
namespace {

using Is = PastRow::Is;

constexpr double seconds_a_minute = 60;

/// Whole from 10 to 99 per cent; at the ends a place more, so that what is rare is not told as never.
std::string percent_text(double share, const Words& words) {
    const double percent = share * 100;
    const bool whole = percent == 0 || percent == 100 || (percent >= 9.95 && percent <= 99);
    return words.figure(whole ? fmt::format("{:.0f}", percent) : fmt::format("{:.1f}", percent));
}

picture::Axis percent_axis(const Words& words) {
    picture::Axis made{.low = 0, .high = 100};
    for (const int at : {0, 25, 50, 75, 100}) made.ticks.push_back({static_cast<double>(at), std::to_string(at)});
    made.ticks.back().label = words("plan-view.percent", {made.ticks.back().label});
    return made;
}

PastRow rate_row(std::string label, const past::Rate& rate, const Words& words) {
    return {.label = std::move(label),
            .value = words("past.rate", {std::to_string(rate.events), std::to_string(rate.of), percent_text(rate.share, words),
                                         percent_text(rate.low, words), percent_text(rate.high, words)}),
            .mark = picture::IntervalMark{rate.share * 100, rate.low * 100, rate.high * 100}};
}

void add_rate(PastModel& made, std::string label, const std::optional<past::Rate>& rate, const Words& words) {
    if (rate) made.rows.push_back(rate_row(std::move(label), *rate, words));
}

// ---- times ----

PastRow time_row(const past::Time& time, std::string label, const Words& words) {
    const past::Quartiles& of = time.seconds;
    PastRow made{.label = std::move(label)};
    made.value = words("past-view.time",
                       {minutes_text(of.median, words), minutes_text(of.q1, words), minutes_text(of.q3, words), std::to_string(of.n)});
    if (time.about > 0) made.value += words("past-view.about", {std::to_string(time.about)});
    made.mark = picture::BoxMark{of.least / seconds_a_minute, of.q1 / seconds_a_minute, of.median / seconds_a_minute,
                                 of.q3 / seconds_a_minute, of.most / seconds_a_minute};
    return made;
}

// ---- cuts ----

void add_spokes(PastModel& made, const past::Cuts& cuts, const Words& words) {
    const int all = cuts.as_planned + cuts.fewer + cuts.more;
    if (all == 0) return;
    made.rows.push_back(heading(words("past-view.spokes")));
    add_rate(made, words("past-view.as_planned"), past::wilson(cuts.as_planned, all), words);
    add_rate(made, words("past-view.fewer"), past::wilson(cuts.fewer, all), words);
    add_rate(made, words("past-view.more"), past::wilson(cuts.more, all), words);
    const auto spokes = [&words](double value) {
        return value == 0 ? "0" : (value < 0 ? "−" : "+") + words.figure(fmt::format("{:.3g}", std::abs(value)));
    };
    const past::Quartiles& by = *cuts.more_by;
    made.rows.push_back(
        {.label = words("past-view.more_by"),
         .value = words("past-view.more_by_value", {spokes(by.median), spokes(by.q1), spokes(by.q3), spokes(by.least), spokes(by.most)})});
}

void add_shares(PastModel& made, const past::Cuts& cuts, const Words& words) {
    if (cuts.by_share.empty()) return;
    made.rows.push_back(heading(words("past-view.by_share")));
    for (const past::Entries& one : cuts.by_share) {
        const std::string from = percent_text(one.from, words);
        const bool open = !std::isfinite(one.below);
        add_rate(made, open ? words("past-view.share_from", {from}) : words("past-view.share", {from, percent_text(one.below, words)}),
                 one.entered, words);
    }
}

// ---- own reach ----

void add_reach(PastModel& made, const std::string& whose, const past::Spread& of, const Words& words) {
    const auto text = [&words](double value) { return reach_text(value, words); };
    const auto row = [&](std::string label, std::string value, double low, double high) {
        made.rows.push_back({.label = std::move(label), .value = std::move(value), .mark = picture::IntervalMark{of.mean, low, high}});
        made.axis.low = std::min(made.axis.low, low);
        made.axis.high = std::max(made.axis.high, high);
    };
    row(words(whose + "_mean", {std::to_string(of.n)}),
        words("past-view.reach_mean", {text(of.mean), text(of.sd), text(of.mean_low), text(of.mean_high)}), of.mean_low, of.mean_high);
    row(words(whose + "_next"), words("past-view.reach_next", {text(of.next_low), text(of.next_high)}), of.next_low, of.next_high);
}

/// Ends on whole tenths.
void settle_reach_axis(picture::Axis& axis, const Words& words) {
    constexpr double a_tenth = 10;
    const auto from = std::lround(std::floor(axis.low * a_tenth)), to = std::lround(std::ceil(axis.high * a_tenth));
    axis.low = static_cast<double>(from) / a_tenth;
    axis.high = static_cast<double>(to) / a_tenth;
    for (long tenth = from; tenth <= to; ++tenth) {
        const double at = static_cast<double>(tenth) / a_tenth;
        axis.ticks.push_back({at, words.figure(fmt::format("{:.1f}", at))});
    }
}

/// What a profile asks for; `graftside past` prints it as its file has it.
void add_profile_lines(PastModel& made, const past::Spread& own, const std::string& trephine, const Words& words) {
    made.rows.push_back(heading(words("past-view.profile", {instrument_text(trephine, words)})));
    const auto add = [&](const char* id, std::string value) {
        made.rows.push_back({.label = words(std::string("past-view.profile_") + id), .value = std::move(value)});
    };
    add("mean", reach_text(own.mean, words));
    add("sd", reach_text(own.sd, words));
    add("n", std::to_string(own.n));
    add("source", words("past-view.own_cuts"));
}

/// Why there is none: measured too seldom, or with more than one trephine.
std::string no_reach(const past::Cuts& cuts, const Words& words) {
    if (cuts.measured_with.size() > 1) {
        std::string names{};
        for (const std::string& id : cuts.measured_with) names += (names.empty() ? "" : ", ") + instrument_text(id, words);
        return words("past-view.reach_mixed", {names});
    }
    return words("past.reach_not_measured", {std::to_string(cuts.measured)});
}

}  // namespace

PastRow heading(std::string text) { return {.is = Is::Heading, .label = std::move(text)}; }
PastRow sentence(std::string text) { return {.is = Is::Words, .label = std::move(text)}; }

picture::Axis minutes_axis(double most, const Words& words) {
    constexpr int ticks = 6;
    int step = 1;
    for (const int one : {2, 5, 10, 15, 30, 60, 120, 240, 480}) {
        if (most > step * ticks) step = one;
    }
    const int last = std::max(1, static_cast<int>(std::ceil(most / step))) * step;
    picture::Axis made{.low = 0, .high = static_cast<double>(last)};
    for (int at = 0; at <= last; at += step) made.ticks.push_back({static_cast<double>(at), std::to_string(at)});
    made.ticks.back().label = words("past-view.min", {made.ticks.back().label});
    return made;
}

std::string clock_title(const std::string& id, const Words& words) {
    const std::string known = "past-view.clock_" + id;
    return words.has(known) ? words(known) : id;
}

std::string end_text(guide::CaseEnd end, const Words& words) {
    switch (end) {
        case guide::CaseEnd::Done:
            return words("past-view.done");
        case guide::CaseEnd::Converted:
            return words("past-view.converted");
        case guide::CaseEnd::Abandoned:
            return words("past-view.abandoned");
    }
    return "";
}

void times_page(PastModel& made, const PastSeen& seen, const Words& words) {
    const std::vector<past::Time>& times = seen.figures.times;
    if (times.empty()) return made.rows.push_back(sentence(words("past-view.no_times")));
    made.lines.push_back(words("past-view.times_line"));
    double most = 0;
    std::vector<PastRow> phases(seen.procedure.phases.size()), clocks{};
    for (const past::Time& time : times) {
        most = std::max(most, time.seconds.most / seconds_a_minute);
        const auto phase = std::find_if(seen.procedure.phases.begin(), seen.procedure.phases.end(),
                                        [&](const guide::Phase& one) { return one.id == time.id; });
        if (phase == seen.procedure.phases.end()) {
            clocks.push_back(time_row(time, clock_title(time.id, words), words));
        } else {
            phases[static_cast<std::size_t>(phase - seen.procedure.phases.begin())] = time_row(time, phase->title, words);
        }
    }
    std::erase_if(phases, [](const PastRow& row) { return row.label.empty(); });
    made.rows = std::move(phases);
    made.rows.insert(made.rows.end(), clocks.begin(), clocks.end());
    made.axis = minutes_axis(most, words);
}

void cuts_page(PastModel& made, const PastSeen& seen, const Words& words) {
    const past::Cuts& cuts = seen.figures.cuts;
    if (cuts.ended == 0) return made.rows.push_back(sentence(words("past-view.no_cuts")));
    made.lines.push_back(words("past-view.rates_line"));
    made.axis = percent_axis(words);
    add_rate(made, words("past-view.entered"), cuts.entered, words);
    add_rate(made, words("past-view.second_seating"), past::wilson(cuts.second_seatings, cuts.ended), words);
    add_spokes(made, cuts, words);
    add_shares(made, cuts, words);
}

void reach_page(PastModel& made, const PastSeen& seen, const Words& words) {
    const past::Cuts& cuts = seen.figures.cuts;
    made.lines.push_back(words("past-view.reach_line"));
    made.axis = {.low = 1, .high = 1, .ticks = {}};
    made.rows.push_back(
        {.is = Is::Caution, .label = words("past-view.reach_caution", {std::to_string(cuts.measured), std::to_string(cuts.ended)})});
    if (cuts.reach) add_reach(made, "past-view.own", *cuts.reach, words);
    if (!cuts.reach) made.rows.push_back(sentence(no_reach(cuts, words)));
    if (seen.shipped) {
        add_reach(made, "past-view.shipped", past::spread(seen.shipped->n, seen.shipped->mean, seen.shipped->sd), words);
        made.rows.push_back(sentence(words("past-view.shipped_from", {source_text(seen.shipped->source, words)})));
    }
    settle_reach_axis(made.axis, words);
    if (cuts.reach) add_profile_lines(made, *cuts.reach, *cuts.measured_with.begin(), words);
}

void otherwise_page(PastModel& made, const PastSeen& seen, const Words& words) {
    const past::Figures& figures = seen.figures;
    made.lines.push_back(words("past-view.rates_line"));
    made.axis = percent_axis(words);
    std::vector<std::pair<std::string, past::Rate>> told{};
    for (const past::DepartureRate& one : figures.departures) {
        told.emplace_back(guide::departure_title(seen.procedure, one.id), one.cases);
    }
    if (told.empty()) told.emplace_back(words("past-view.no_departure"), *past::wilson(0, figures.cases));
    if (figures.counts_differed) told.emplace_back(words("past-view.counts_differed"), *figures.counts_differed);
    std::stable_sort(told.begin(), told.end(), [](const auto& a, const auto& b) { return a.second.events > b.second.events; });
    for (const auto& [title, rate] : told) made.rows.push_back(rate_row(title, rate, words));
    made.rows.push_back(heading(words("past-view.ends")));
    add_rate(made, words("past-view.done"), figures.done, words);
    add_rate(made, words("past-view.converted"), figures.converted, words);
    add_rate(made, words("past-view.abandoned"), figures.abandoned, words);
}

}  // namespace screen
