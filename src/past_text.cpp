#include "past_text.hpp"

#include "ledger/enum_words.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

namespace graftside {
namespace {

constexpr std::size_t listed = 20;

std::string percent(double share, const screen::Words& words) { return words.figure(fmt::format("{:.1f}", share * 100)); }

/// "5:30", of seconds; over an hour "1:05:30".
std::string clock_text(double seconds) {
    const auto whole = std::lround(seconds);
    const long hours = whole / 3600, minutes = whole / 60 % 60;
    return hours > 0 ? fmt::format("{}:{:02}:{:02}", hours, minutes, whole % 60) : fmt::format("{}:{:02}", minutes, whole % 60);
}

std::string rate_text(const past::Rate& rate, const screen::Words& words) {
    return words("past.rate", {std::to_string(rate.events), std::to_string(rate.of), percent(rate.share, words), percent(rate.low, words),
                               percent(rate.high, words)});
}

void add_rate(std::string& text, const std::string& id, const std::optional<past::Rate>& rate, const screen::Words& words) {
    if (rate) text += words(id, {rate_text(*rate, words)}) + "\n";
}

void add_cuts(std::string& text, const past::Cuts& cuts, const screen::Words& words) {
    if (cuts.ended == 0) return;
    text += "\n" + words("past.cuts", {std::to_string(cuts.ended), std::to_string(cuts.second_seatings)}) + "\n";
    text += words("past.planned", {std::to_string(cuts.as_planned), std::to_string(cuts.fewer), std::to_string(cuts.more)}) + "\n";
    add_rate(text, "past.entered", cuts.entered, words);
    for (const past::Entries& one : cuts.by_share) {
        text += words("past.entered_at", {percent(one.from, words), rate_text(one.entered, words)}) + "\n";
    }
    if (cuts.measured_with.size() > 1) {
        text += words("past.reach_mixed", {fmt::format("{}", fmt::join(cuts.measured_with, ", "))}) + "\n";
        return;
    }
    if (!cuts.reach) {
        text += words("past.reach_not_measured", {std::to_string(cuts.measured)}) + "\n";
        return;
    }
    const past::Spread& reach = *cuts.reach;
    const auto figure = [&words](double value) { return words.figure(fmt::format("{:.3f}", value)); };
    text += words("past.reach", {figure(reach.mean), figure(reach.sd), std::to_string(reach.n), figure(reach.mean_low),
                                 figure(reach.mean_high), figure(reach.next_low), figure(reach.next_high)}) +
            "\n";
    text += words("past.reach_profile", {*cuts.measured_with.begin()}) + "\n";
    text += fmt::format("    [reach]\n    mean = {:.3f}\n    sd = {:.3f}\n    n = {}\n    source = \"own cuts\"\n", reach.mean, reach.sd,
                        reach.n);
}

void add_list(std::string& text, const past::Figures& figures, const screen::Words& words) {
    if (figures.list.empty()) return;
    text += "\n" + words("past.list", {std::to_string(std::min(listed, figures.list.size())), std::to_string(figures.list.size())}) + "\n";
    for (std::size_t i = 0; i < figures.list.size() && i < listed; ++i) {
        const past::Summary& one = figures.list[i];
        const std::string end = one.end ? std::string(ledger::word(*one.end)) : "";
        text += fmt::format("{}  {}  {}  {:.2f}/{:.2f}  {}\n", measure::iso(one.day), one.reference, ledger::word(one.side), one.host.mm(),
                            one.donor.mm(), end);
    }
}

}  // namespace

std::string past_text(const past::Figures& figures, const screen::Words& words) {
    const past::LeftOut& out = figures.left_out;
    std::string text = words("past.cases", {std::to_string(figures.cases)}) + "\n" +
                       words("past.left_out", {std::to_string(out.open), std::to_string(out.invented), std::to_string(out.filtered)}) +
                       "\n";
    if (figures.cases == 0) return text;
    add_rate(text, "past.done", figures.done, words);
    add_rate(text, "past.converted", figures.converted, words);
    add_rate(text, "past.abandoned", figures.abandoned, words);
    text += "\n" + words("past.times") + "\n";
    for (const past::Time& one : figures.times) {
        text += words("past.time", {one.id, clock_text(one.seconds.median), clock_text(one.seconds.q1), clock_text(one.seconds.q3),
                                    std::to_string(one.seconds.n)});
        text += (one.about > 0 ? words("past.about", {std::to_string(one.about)}) : "") + "\n";
    }
    add_cuts(text, figures.cuts, words);
    text += "\n";
    add_rate(text, "past.counts", figures.counts_differed, words);
    for (const past::DepartureRate& one : figures.departures) {
        text += words("past.departure", {one.id, rate_text(one.cases, words)}) + "\n";
    }
    add_list(text, figures, words);
    return text;
}

}  // namespace graftside
