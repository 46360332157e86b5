#include "intake/procedure_checks.hpp"

#include "intake/placeholders.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <set>
#include <string_view>

namespace intake {
namespace {

using guide::Closes;
using Ids = std::set<std::string>;

constexpr std::array<std::string_view, 5> clock_names{"suction", "decompressed", "open-sky", "donor-out", "case"};

bool is_clock_name(std::string_view text) { return std::ranges::find(clock_names, text) != clock_names.end(); }

void report_wrong(const Mention& mention, const std::string& allowed, Report& report) {
    report.add(mention.at, mention.path, "\"" + one_line(mention.text) + "\"", allowed);
}

/// Reports ids that stood before and gives all of them; an id that could not be read was reported already.
Ids unique_ids(const std::vector<Mention>& mentions, Report& report) {
    Ids ids;
    for (const Mention& mention : mentions) {
        if (!mention.text.empty() && !ids.insert(mention.text).second) report_wrong(mention, "each id once", report);
    }
    return ids;
}

void check_known(const std::vector<Mention>& mentions, const Ids& known, const std::string& allowed, Report& report) {
    for (const Mention& mention : mentions) {
        if (!known.contains(mention.text)) report_wrong(mention, allowed, report);
    }
}

void check_needs(const PlacedProcedure& procedure, Report& report) {
    Ids earlier;
    for (const PlacedStep& step : procedure.steps) {
        check_known(step.needs, earlier, "the id of an earlier step", report);
        earlier.insert(step.id.text);
    }
}

/// The guide asks for these by id before a spoke counts as below zero.
void check_steps_for_the_count(const Ids& steps, Report& report) {
    for (const std::string id : {"zero", "raise"}) {
        if (!steps.contains(id))
            report.add({}, "phase.step.id", "no \"" + id + "\"", "a step with this id: the count of spokes rests on it");
    }
}

void check_clocks(const PlacedProcedure& procedure, Ids phases, Report& report) {
    for (const Mention& phase : procedure.phases) {
        if (is_clock_name(phase.text)) report_wrong(phase, "an id that is no clock's name", report);
    }
    for (std::string_view clock : clock_names) phases.emplace(clock);
    const std::string allowed = fmt::format("{} or a phase id", fmt::join(clock_names, ", "));
    for (const PlacedStep& step : procedure.steps) check_known(step.clocks, phases, allowed, report);
}

/// The steps that close in one way beyond the first are reported; gives how many there are.
int check_at_most_one(const PlacedProcedure& procedure, Closes closes, const std::string& allowed, Report& report) {
    int count = 0;
    for (const PlacedStep& step : procedure.steps) {
        if (step.closes == closes && ++count > 1) report_wrong(step.closes_at, allowed, report);
    }
    return count;
}

void check_closes(const PlacedProcedure& procedure, Report& report) {
    const std::string one_cut = "exactly one step with closes = \"cut\"";
    if (check_at_most_one(procedure, Closes::Cut, one_cut, report) == 0) report.add({}, "phase.step.closes", "no \"cut\"", one_cut);
    check_at_most_one(procedure, Closes::Side, "at most one step with closes = \"side\"", report);
    check_at_most_one(procedure, Closes::Close, "at most one step with closes = \"close\"", report);
}

void check_wording(const std::vector<Mention>& wording, bool eye_hidden, Report& report) {
    for (const Mention& line : wording) {
        const auto names = names_in_braces(line.text);
        if (!names || !std::ranges::all_of(*names, is_placeholder)) {
            report_wrong(line, fmt::format("in braces only {}", fmt::join(placeholders, ", ")), report);
        } else if (eye_hidden && std::ranges::find(*names, "eye") != names->end()) {
            report_wrong(line, "no {eye} up to the step that closes with \"side\": the side is entered blind", report);
        }
    }
}

void check_all_wording(const PlacedProcedure& procedure, Report& report) {
    check_wording(procedure.other_wording, false, report);
    const auto side = std::ranges::find(procedure.steps, Closes::Side, &PlacedStep::closes);
    for (auto step = procedure.steps.begin(); step != procedure.steps.end(); ++step) {
        check_wording(step->wording, side != procedure.steps.end() && step <= side, report);
    }
}

}  // namespace

void check(const PlacedProcedure& procedure, Report& report) {
    const Ids phases = unique_ids(procedure.phases, report);
    const Ids departures = unique_ids(procedure.departures, report);
    std::vector<Mention> steps;
    for (const PlacedStep& step : procedure.steps) steps.push_back(step.id);
    const Ids known_steps = unique_ids(steps, report);
    check_steps_for_the_count(known_steps, report);
    check_known(procedure.reopened, known_steps, "the id of a step", report);
    check_needs(procedure, report);
    check_clocks(procedure, phases, report);
    check_closes(procedure, report);
    const std::string allowed = "the id of a [[departure]]";
    check_known(procedure.departures_of_phases, departures, allowed, report);
    for (const PlacedStep& step : procedure.steps) check_known(step.departures, departures, allowed, report);
    check_all_wording(procedure, report);
}

}  // namespace intake
