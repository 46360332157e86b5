// Tissue, packs and counts on the handover sheet. What no event holds is said to be not recorded.
#include "paper/format.hpp"
#include "paper/sheet.hpp"

#include <algorithm>

namespace paper {
namespace {

std::string or_not_recorded(const std::string& text, const Words& words) { return text.empty() ? words("paper.not_recorded") : text; }

/// When a step was done, "08:34"; empty when it was skipped or is not done.
std::string done_at(const guide::CaseState& state, const guide::StepId& id) {
    return guide::confirmed(state, id) ? measure::hour_minute(state.steps.at(id).at) : "";
}

std::string storage_text(const plan::Donor& donor, const Words& words) {
    if (!donor.storage) return words("paper.not_recorded");
    return words(*donor.storage == plan::Storage::Cold ? "paper.cold" : "paper.culture");
}

std::string density_text(const plan::Donor& donor, const Words& words) {
    if (!donor.endothelium_per_mm2) return words("paper.not_recorded");
    return words("paper.density_value", {number(*donor.endothelium_per_mm2)});
}

/// What is known of a step that says more than a tap can hold.
std::string done_but(const guide::CaseState& state, const guide::StepId& id, const char* what, const Words& words) {
    const std::string at = done_at(state, id);
    return at.empty() ? words("paper.not_recorded") : words(what, {at});
}

/// The checks of the last gate: who saw how many.
std::string checked_text(const guide::Tally& tally, const Words& words) {
    std::vector<std::string> people{};
    std::string text{};
    for (auto check = tally.checks.rbegin(); check != tally.checks.rend(); ++check) {
        if (std::find(people.begin(), people.end(), check->said.by) != people.end()) continue;
        people.push_back(check->said.by);
        const std::string one = words("paper.seen_by", {number(check->said.seen), check->said.by, measure::hour_minute(check->at)});
        text = text.empty() ? one : one + "; " + text;
    }
    return or_not_recorded(text, words);
}

std::string pause_text(const guide::CaseState& state, guide::Pause pause, const Words& words) {
    for (const guide::Phase& phase : state.brief.procedure.phases) {
        for (const guide::Step& step : phase.steps) {
            if (step.pause == pause) return or_not_recorded(done_at(state, step.id), words);
        }
    }
    return words("paper.not_recorded");
}

}  // namespace

Section tissue_section(const Record& record, const Words& words) {
    const guide::CaseState& state = record.state;
    const plan::CaseFile& file = state.inputs.file;
    const std::string none = words("paper.not_recorded");
    return {.title = words("paper.tissue"),
            .rows = {{words("paper.donation"), or_not_recorded(file.donor.donation.value_or(""), words)},
                     {words("paper.storage"), storage_text(file.donor, words)},
                     {words("paper.storage_day"), none},
                     {words("paper.expires"), file.donor.expires ? measure::iso(*file.donor.expires) : none},
                     {words("paper.density"), density_text(file.donor, words)},
                     {words("paper.trephine_lot"), none},
                     {words("paper.punch_lot"), none},
                     {words("paper.suture_material"), none},
                     {words("paper.specimens"), done_but(state, "specimens", "paper.specimens_value", words)},
                     {words("paper.shield"), done_but(state, "pad-and-shield", "paper.at", words)}}};
}

Section count_section(const Record& record, const Words& words) {
    const guide::CaseState& state = record.state;
    using guide::Pause;
    const std::string pauses = words(
        "paper.pauses_value",
        {pause_text(state, Pause::SignIn, words), pause_text(state, Pause::TimeOut, words), pause_text(state, Pause::SignOut, words)});
    Section made{.title = words("paper.counts"), .rows = {{words("paper.pauses"), pauses}}};
    for (const guide::CountItem& item : state.brief.unit.counts) {
        const auto tally = state.counts.find(item.id);
        if (tally == state.counts.end()) continue;
        const std::string moved = words("paper.moved_items", {number(tally->second.opened), number(tally->second.passed_back)});
        made.rows.push_back({item.title, moved + "; " + checked_text(tally->second, words)});
    }
    return made;
}

}  // namespace paper
