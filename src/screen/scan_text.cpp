#include "screen/scan_text.hpp"

namespace screen {

std::string item_text(const guide::Item& item, const Words& words) {
    switch (item.kind) {
        case guide::ItemKind::Tissue:
            return words("packs.tissue", {item.donation.value_or("")});
        case guide::ItemKind::Pack:
            return item.lot ? words("packs.pack_lot", {*item.lot}) : words("packs.pack", {item.gtin.value_or("")});
        case guide::ItemKind::Part:
            return words("packs.part");
        case guide::ItemKind::Unread:
            return words("packs.unread");
    }
    return {};
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

std::string unfitting_text(const guide::ScanSeen& scan, const Words& words) {
    return words("scan.item", {item_text(scan.said.item, words), objections_text(scan, words)});
}

}  // namespace screen
