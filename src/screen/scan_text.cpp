#include "screen/scan_text.hpp"

#include "guide/tissue.hpp"

#include <algorithm>

namespace screen {

std::string item_text(const guide::Item& item, const Words& words) {
    switch (item.kind) {
        case guide::ItemKind::Tissue:
            return words("packs.tissue", {guide::tissue_text(item)});
        case guide::ItemKind::Pack:
            return item.lot ? words("packs.pack_lot", {*item.lot}) : words("packs.pack", {item.gtin.value_or("")});
        case guide::ItemKind::Part:
            return words("packs.part");
        case guide::ItemKind::Unread:
            return words("packs.unread");
    }
    return {};
}

std::string parts_text(const guide::Item& item, const guide::Item& before, const Words& words) {
    std::string text{};
    const auto add = [&](const std::string& part) { text += (text.empty() ? "" : ", ") + part; };
    if (item.product && !before.product) add(words("packs.product", {*item.product, item.division.value_or("")}));
    if (item.expires && !before.expires) add(words("packs.expiry", {measure::iso(*item.expires)}));
    if (item.collected && !before.collected) add(words("packs.collected", {measure::iso(*item.collected)}));
    return text;
}

std::string joined_text(const guide::CaseState& state, const guide::ScanSeen& scan, const Words& words) {
    const guide::Item& item = scan.said.item;
    if (item.kind == guide::ItemKind::Part) {
        const std::string parts = parts_text(item, {}, words);
        return parts.empty() ? words("packs.not_joined") : words("packs.part_not_joined", {parts});
    }
    const guide::ScanSeen* begun = guide::find_scan(state, scan.said.completes);
    if (begun == nullptr) return {};
    const std::string parts = parts_text(item, begun->said.item, words);
    if (parts.empty()) return {};
    return words("packs.joined", {parts, item_text(item, words), measure::hour_minute(begun->at)});
}

std::string objection_text(const guide::Objection& one, const Words& words) {
    // Only sizes are figures among the values.
    const auto values = one.what == guide::Against::WrongSize ? words.figures(one.values) : one.values;
    return words("scan." + std::string(guide::name(one.what)), values);
}

std::string objections_text(const guide::ScanSeen& scan, const Words& words) {
    std::string text{};
    for (const guide::Objection& one : scan.said.against) text += (text.empty() ? "" : " ") + objection_text(one, words);
    return text;
}

namespace {

/// Which item it is stands before what speaks against it, unless that begins with it.
std::string with_item(const guide::ScanSeen& scan, const std::string& against, const Words& words) {
    const std::string item = item_text(scan.said.item, words);
    return against.starts_with(item) ? against : words("scan.item", {item, against});
}

}  // namespace

std::string unfitting_text(const guide::ScanSeen& scan, const Words& words) { return with_item(scan, objections_text(scan, words), words); }

std::string stop_reason(const guide::ScanSeen& scan, const Words& words) {
    // What is another item altogether weighs more than its date.
    const auto& all = scan.said.against;
    const auto worst =
        std::find_if(all.begin(), all.end(), [](const guide::Objection& one) { return one.what != guide::Against::Expired; });
    return with_item(scan, objection_text(worst == all.end() ? all.front() : *worst, words), words);
}

std::string stop_text(const guide::ScanSeen& scan, const Words& words) {
    const std::string why = stop_reason(scan, words);
    return guide::never_overruled(scan) ? why : words("refused.scan-stands-why", {why});
}

std::string unchecked_text(const guide::ScanSeen& scan, const Words& words) {
    const guide::Item& item = scan.said.item;
    const bool claimed = item.kind == guide::ItemKind::Pack || item.kind == guide::ItemKind::Tissue;
    std::string text{};
    if (!claimed || scan.put_aside || scan.overruled || !scan.said.against.empty()) return text;
    if (item.kind == guide::ItemKind::Pack && !item.instrument) text = words("packs.unlisted");
    if (!item.expires) text += (text.empty() ? "" : " ") + words("packs.undated");
    return text;
}

std::string standing_text(const guide::ScanSeen& scan, const Words& words) {
    if (scan.put_aside) return words("packs.aside");
    if (scan.overruled) return words("packs.overruled");
    if (!scan.said.against.empty()) return words("packs.stands");
    switch (scan.said.item.kind) {
        case guide::ItemKind::Unread:
            return {};
        case guide::ItemKind::Part:
            return words("packs.no_number");
        case guide::ItemKind::Tissue:
        case guide::ItemKind::Pack:
            return words(unchecked_text(scan, words).empty() ? "packs.fits" : "packs.unchecked");
    }
    return {};
}

}  // namespace screen
