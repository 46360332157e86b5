#include "scan_json.hpp"

#include "guide/tissue.hpp"
#include "measure/expect.hpp"

#include <algorithm>

namespace graftside {
namespace {

using nlohmann::ordered_json;

template <class T>
ordered_json or_null(const std::optional<T>& value) {
    return value ? ordered_json(*value) : ordered_json(nullptr);
}

ordered_json or_null(const std::optional<measure::Day>& day) { return day ? ordered_json(measure::iso(*day)) : ordered_json(nullptr); }

std::string name(guide::ItemKind kind) {
    switch (kind) {
        case guide::ItemKind::Unread:
            return "unread";
        case guide::ItemKind::Part:
            return "part";
        case guide::ItemKind::Tissue:
            return "tissue";
        case guide::ItemKind::Pack:
            return "pack";
    }
    measure::expect(false);
    return {};
}

std::string name(guide::StorageDays band) {
    switch (band) {
        case guide::StorageDays::Usual:
            return "usual";
        case guide::StorageDays::Flagged:
            return "flagged";
        case guide::StorageDays::Over:
            return "over";
    }
    measure::expect(false);
    return {};
}

ordered_json item_json(const guide::Item& item) {
    return {{"kind", name(item.kind)},
            {"donation", or_null(item.donation)},
            {"product", or_null(item.product)},
            {"division", or_null(item.division)},
            {"gtin", or_null(item.gtin)},
            {"lot", or_null(item.lot)},
            {"serial", or_null(item.serial)},
            {"expires", or_null(item.expires)},
            {"instrument", or_null(item.instrument)},
            {"size_mm", item.size ? ordered_json(item.size->mm()) : ordered_json(nullptr)}};
}

/// Bytes that are no text of one byte a character stand as \xHH.
std::string printable(const std::string& bytes) {
    constexpr auto digits = "0123456789abcdef";
    std::string text{};
    for (const char c : bytes) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte >= 0x20 && byte < 0x7f && c != '\\') {
            text += c;
        } else {
            text += std::string("\\x") + digits[byte >> 4] + digits[byte & 15];
        }
    }
    return text;
}

}  // namespace

ordered_json scans_json(const guide::CaseState& state) {
    ordered_json scans = ordered_json::array();
    for (const guide::ScanSeen& scan : state.scans) {
        ordered_json against = ordered_json::array();
        for (const guide::Objection& one : scan.said.against) against.push_back({{"what", guide::name(one.what)}, {"values", one.values}});
        scans.push_back({{"event", scan.seq},
                         {"at", measure::rfc3339(scan.at)},
                         {"bytes", printable(scan.said.bytes)},
                         {"item", item_json(scan.said.item)},
                         {"against", against},
                         {"put_aside", scan.put_aside},
                         {"overruled", scan.overruled},
                         {"completed", scan.completed}});
    }
    return scans;
}

ordered_json tissue_json(const guide::CaseState& state, const measure::Day& today) {
    const auto tissue = guide::planned_tissue(state);
    const auto stored = guide::stored(state, today);
    const auto density = guide::density(state);
    if (!tissue && !stored && !density && state.tissue.empty()) return nullptr;
    ordered_json json{{"planned", tissue ? item_json(*tissue) : ordered_json(nullptr)}};
    json["stored"] = stored ? ordered_json{{"days", stored->days}, {"band", name(stored->band)}} : ordered_json(nullptr);
    json["endothelium_per_mm2"] = density ? ordered_json{{"counted", density->counted},
                                                         {"low", density->low},
                                                         {"high", density->high},
                                                         {"under_minimum", density->under},
                                                         {"perhaps_under", density->perhaps_under}}
                                          : ordered_json(nullptr);
    const auto told = [&](guide::TissueWord what) -> ordered_json {
        const guide::Told* found = guide::find_told(state, what);
        return found == nullptr ? ordered_json(nullptr) : ordered_json{{"at", measure::rfc3339(found->at)}, {"text", found->text}};
    };
    json["accepted"] = told(guide::TissueWord::Accepted);
    json["unfit"] = told(guide::TissueWord::Unfit);
    json["back_up"] = told(guide::TissueWord::BackUpNamed);
    json["grafted"] = told(guide::TissueWord::Grafted);
    json["not_used"] = told(guide::TissueWord::NotUsed);
    json["left_over"] = told(guide::TissueWord::LeftOver);
    return json;
}

ordered_json told_json(const guide::CaseState& state) {
    ordered_json materials = ordered_json::array(), specimens = ordered_json::object();
    for (const auto& one : state.materials) {
        materials.push_back({{"at", measure::rfc3339(one.at)},
                             {"material", one.fact.material},
                             {"lot", one.fact.lot.empty() ? ordered_json(nullptr) : ordered_json(one.fact.lot)},
                             {"pack", one.fact.pack == 0 ? ordered_json(nullptr) : ordered_json(one.fact.pack)}});
    }
    for (const auto& [what, said] : state.specimens) {
        specimens[std::string(guide::name(what))] = {
            {"at", measure::rfc3339(said.at)},
            {"to", guide::name(said.fact.to)},
            {"side", said.fact.side.empty() ? ordered_json(nullptr) : ordered_json(said.fact.side)}};
    }
    ordered_json json{{"knots", nullptr}, {"suture_material", materials}, {"specimens", specimens}, {"bank", nullptr}};
    if (state.knots) json["knots"] = {{"at", measure::rfc3339(state.knots->at)}, {"side", guide::name(state.knots->fact.side)}};
    if (state.bank) {
        const guide::BankTold& bank = state.bank->fact;
        json["bank"] = {{"at", measure::rfc3339(state.bank->at)}, {"contact", bank.contact}, {"text", bank.text}};
    }
    return json;
}

}  // namespace graftside
