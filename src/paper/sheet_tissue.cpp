// Tissue, packs and counts on the handover sheet. What no event holds is said to be not recorded.
#include "guide/tissue.hpp"
#include "paper/format.hpp"
#include "paper/sheet.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace paper {
namespace {

std::string or_not_recorded(const std::string& text, const Words& words) { return text.empty() ? words("paper.not_recorded") : text; }

/// When a step was done, "08:34"; empty when it was skipped or is not done.
std::string done_at(const guide::CaseState& state, const guide::StepId& id) {
    return guide::confirmed(state, id) ? measure::hour_minute(state.steps.at(id).at) : "";
}

std::string donation_text(const guide::CaseState& state, const Words& words) {
    const auto number = donation(state);
    if (!number) return words("paper.not_recorded");
    const guide::ScanSeen* read = guide::tissue_read(state);
    if (read == nullptr) return words("paper.not_read", {*number});
    const guide::Item& item = read->said.item;
    return words("paper.read_at",
                 {item.product ? *number + " " + *item.product + item.division.value_or("") : *number, measure::hour_minute(read->at)});
}

std::string days_text(const guide::CaseState& state, const Words& words) {
    const auto stored = guide::stored(state, state.inputs.file.date);
    if (!stored) return words("paper.day_not_recorded");
    const std::string day = words("paper.day", {number(stored->days)});
    switch (stored->band) {
        case guide::StorageDays::Usual:
            return day;
        case guide::StorageDays::Flagged:
            return day + ", " + words("paper.day_flagged");
        case guide::StorageDays::Over:
            return day + ", " + words("paper.day_over");
    }
    return day;
}

std::string storage_text(const guide::CaseState& state, const Words& words) {
    const auto storage = state.inputs.file.donor.storage;
    const std::string kind =
        !storage ? words("paper.not_recorded") : words(*storage == plan::Storage::Cold ? "paper.cold" : "paper.culture");
    return kind + "; " + days_text(state, words);
}

std::string density_text(const guide::CaseState& state, const Words& words) {
    const auto density = guide::density(state);
    if (!density) return words("paper.not_recorded");
    const std::string text = words("paper.density_value", {number(density->counted), number(density->low), number(density->high)});
    if (density->under) return text + ", " + words("paper.density_under");
    return density->perhaps_under ? text + ", " + words("paper.density_perhaps") : text;
}

/// What was told of the tissue, in one of two words that exclude each other; else what the step on the Table says by its tap.
std::string told_text(const guide::CaseState& state, const std::vector<std::pair<guide::TissueWord, const char*>>& either,
                      const Words& words, const guide::StepId& step = {}) {
    for (const auto& one : either) {
        const guide::Told* told = guide::find_told(state, one.first);
        if (told == nullptr) continue;
        const std::string text = words(one.second, {measure::hour_minute(told->at)});
        return told->text.empty() ? text : text + ": " + told->text;
    }
    return step_text(state, step, "paper.step_at", words);
}

/// "lot A1, expires 2027-01-31", as far as the label says.
std::string pack_text(const guide::Item* pack, const Words& words) {
    if (pack == nullptr) return words("paper.not_recorded");
    std::string text = pack->lot ? words("paper.lot", {*pack->lot}) : words("paper.no_lot");
    if (pack->serial) text += ", " + words("paper.serial", {*pack->serial});
    return pack->expires ? text + ", " + words("paper.expires_on", {measure::iso(*pack->expires)}) : text;
}

std::string packs_text(const guide::CaseState& state, const Words& words) {
    std::string text{};
    for (const guide::Item* pack : other_packs(state))
        text += (text.empty() ? "" : "; ") + pack->gtin.value_or("?") + " " + pack_text(pack, words);
    return or_not_recorded(text, words);
}

std::string materials_text(const guide::CaseState& state, const Words& words) {
    std::string text{};
    for (const auto& one : state.materials) {
        if (!text.empty()) text += "; ";
        text += one.fact.material;
        if (!one.fact.lot.empty()) text += ", " + words("paper.lot", {one.fact.lot});
    }
    return or_not_recorded(text, words);
}

/// Which specimens went where, with the side on their labels; else when the labels were read back.
std::string specimens_text(const guide::CaseState& state, const Words& words) {
    if (state.specimens.empty()) return step_text(state, "specimens", "paper.specimens_value", words);
    std::string text{}, side{};
    for (const auto& entry : state.specimens) {
        const guide::SpecimenTold& told = entry.second.fact;
        if (!text.empty()) text += ", ";
        text += words("paper.specimen", {words("specimen." + std::string(guide::name(told.what))),
                                         words("specimen.to_" + std::string(guide::name(told.to)))});
        if (!told.side.empty()) side = told.side;
    }
    return side.empty() ? text : text + "; " + words("specimen.label_" + side);
}

std::string bank_text(const guide::CaseState& state, const Words& words) {
    if (!state.bank) return words("paper.not_recorded");
    return words("paper.bank_told", {state.bank->fact.contact, measure::hour_minute(state.bank->at), state.bank->fact.text});
}

/// The checks of the last gate: who saw how many.
std::string checked_text(const guide::Tally& tally, const Words& words) {
    std::vector<std::string> people{};
    std::string text{};
    for (auto check = tally.checks.rbegin(); check != tally.checks.rend(); ++check) {
        if (std::find(people.begin(), people.end(), check->said.by) != people.end()) continue;
        people.push_back(check->said.by);
        const std::string one = words("paper.seen_by", {number(check->said.seen), check->said.by, measure::hour_minute(check->at)});
        text.insert(0, text.empty() ? one : fmt::format("{}; ", one));
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
    using guide::TissueWord;
    const guide::CaseState& state = record.state;
    const auto expires = tissue_expires(state);
    const std::string none = words("paper.not_recorded");
    return {.title = words("paper.tissue"),
            .rows = {{words("paper.donation"), donation_text(state, words)},
                     {words("paper.storage"), storage_text(state, words)},
                     {words("paper.expires"), expires ? measure::iso(*expires) : none},
                     {words("paper.density"), density_text(state, words)},
                     {words("paper.used"),
                      told_text(state, {{TissueWord::Grafted, "paper.grafted"}, {TissueWord::NotUsed, "paper.not_used"}}, words)},
                     {words("paper.left_over"), told_text(state, {{TissueWord::LeftOver, "paper.told_at"}}, words)},
                     {words("paper.trephine_lot"), pack_text(pack_read(state, state.inputs.trephine.id), words)},
                     {words("paper.punch_lot"), pack_text(pack_read(state, state.inputs.punch.id), words)},
                     {words("paper.shield"), step_text(state, "pad-and-shield", "paper.at", words)},
                     {words("paper.suture_material"), materials_text(state, words)},
                     {words("paper.specimens"), specimens_text(state, words)},
                     {words("paper.bank"), bank_text(state, words)},
                     {words("paper.accepted"),
                      told_text(state, {{TissueWord::Unfit, "paper.found_unfit"}, {TissueWord::Accepted, "paper.told_at"}}, words,
                                "tissue-accepted")},
                     {words("paper.back_up"), told_text(state, {{TissueWord::BackUpNamed, "paper.told_at"}}, words, "back-up")},
                     {words("paper.other_packs"), packs_text(state, words)}}};
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
        const std::string differs = tally->second.differences.empty() ? "" : words("paper.difference_recorded") + "; ";
        made.rows.push_back({item.title, differs + moved + "; " + checked_text(tally->second, words)});
    }
    return made;
}

}  // namespace paper
