#include "ledger/enum_words.hpp"
#include "past_text.hpp"

#include <nlohmann/json.hpp>

#include <cmath>

namespace graftside {
namespace {

using nlohmann::ordered_json;

/// Six decimals: more than any of these figures carries.
double rounded(double value) { return std::round(value * 1e6) / 1e6; }

template <class T>
ordered_json or_null(const std::optional<T>& value, ordered_json (*json)(const T&)) {
    return value ? json(*value) : ordered_json(nullptr);
}

template <class E>
ordered_json word_json(const E& value) {
    return std::string(ledger::word(value));
}

ordered_json day_json(const measure::Day& day) { return measure::iso(day); }

ordered_json um_json(const measure::Length& length) { return length.um(); }

ordered_json rate_json(const past::Rate& rate) {
    return {
        {"events", rate.events}, {"of", rate.of}, {"share", rounded(rate.share)}, {"low", rounded(rate.low)}, {"high", rounded(rate.high)}};
}

ordered_json quartiles_json(const past::Quartiles& found) {
    return {{"n", found.n},
            {"least", rounded(found.least)},
            {"q1", rounded(found.q1)},
            {"median", rounded(found.median)},
            {"q3", rounded(found.q3)},
            {"most", rounded(found.most)}};
}

ordered_json spread_json(const past::Spread& found) {
    return {{"n", found.n},
            {"mean", rounded(found.mean)},
            {"sd", rounded(found.sd)},
            {"mean_95", {rounded(found.mean_low), rounded(found.mean_high)}},
            {"next_cut_95", {rounded(found.next_low), rounded(found.next_high)}}};
}

ordered_json cuts_json(const past::Cuts& cuts) {
    ordered_json by_share = ordered_json::array();
    for (const past::Entries& one : cuts.by_share) {
        by_share.push_back({{"from", one.from},
                            {"below", std::isinf(one.below) ? ordered_json(nullptr) : ordered_json(one.below)},
                            {"entered", rate_json(one.entered)}});
    }
    return {{"ended", cuts.ended},
            {"second_seatings", cuts.second_seatings},
            {"entered", or_null(cuts.entered, rate_json)},
            {"as_planned", cuts.as_planned},
            {"fewer", cuts.fewer},
            {"more", cuts.more},
            {"more_by_spokes", or_null(cuts.more_by, quartiles_json)},
            {"entries_by_share", by_share},
            {"depths_measured", cuts.measured},
            {"measured_with", cuts.measured_with},
            {"reach", or_null(cuts.reach, spread_json)}};
}

ordered_json times_json(const past::Summary& one) {
    ordered_json times = ordered_json::object();
    for (const past::Timed& timed : one.times)
        times[timed.id] = {{"seconds", rounded(static_cast<double>(timed.ms) / 1000)}, {"exact", timed.exact}};
    return times;
}

ordered_json cut_json(const past::Cut& cut) {
    return {{"end", or_null(cut.end, word_json<guide::CutEnd>)},
            {"seatings", cut.seatings},
            {"position", cut.position},
            {"planned", cut.planned ? ordered_json(*cut.planned) : ordered_json(nullptr)},
            {"travel_um", cut.travel.um()},
            {"thinnest_um", or_null(cut.thinnest, um_json)},
            {"depth_um", or_null(cut.depth, um_json)}};
}

ordered_json case_json(const past::Summary& one) {
    return {{"case", one.reference},        {"date", measure::iso(one.day)},
            {"eye", word_json(one.side)},   {"reason", word_json(one.reason)},
            {"trephine", one.trephine},     {"host_mm", one.host.mm()},
            {"donor_mm", one.donor.mm()},   {"ended", or_null(one.end, word_json<guide::CaseEnd>)},
            {"times", times_json(one)},     {"cut", or_null(one.cut, cut_json)},
            {"departures", one.departures}, {"counts", {{"checks", one.counts}, {"differed", one.counts_differed}}}};
}

}  // namespace

std::string past_json(const past::Figures& figures, const past::Filter& filter) {
    ordered_json times = ordered_json::array(), departures = ordered_json::array(), list = ordered_json::array();
    for (const past::Time& one : figures.times)
        times.push_back({{"id", one.id}, {"seconds", quartiles_json(one.seconds)}, {"about", one.about}});
    for (const past::DepartureRate& one : figures.departures) departures.push_back({{"id", one.id}, {"cases", rate_json(one.cases)}});
    for (const past::Summary& one : figures.list) list.push_back(case_json(one));
    const ordered_json json{
        {"cases", figures.cases},
        {"left_out", {{"open", figures.left_out.open}, {"invented", figures.left_out.invented}, {"filtered", figures.left_out.filtered}}},
        {"filter",
         {{"from", or_null(filter.from, day_json)},
          {"to", or_null(filter.to, day_json)},
          {"eye", or_null(filter.side, word_json<eye::Side>)},
          {"reason", or_null(filter.reason, word_json<plan::Reason>)},
          {"trephine", filter.trephine.empty() ? ordered_json(nullptr) : ordered_json(filter.trephine)},
          {"invented", filter.invented}}},
        {"intervals", "Wilson 95 %; quartiles by linear interpolation (R type 7); reach by Student's t"},
        {"done", or_null(figures.done, rate_json)},
        {"converted", or_null(figures.converted, rate_json)},
        {"abandoned", or_null(figures.abandoned, rate_json)},
        {"times", times},
        {"cuts", cuts_json(figures.cuts)},
        {"departures", departures},
        {"counts_differed", or_null(figures.counts_differed, rate_json)},
        {"list", list}};
    return json.dump() + "\n";
}

}  // namespace graftside
