#include "paper/record.hpp"

#include "guide/tissue.hpp"

#include <algorithm>

namespace paper {
namespace {

bool pack_in_use(const guide::ScanSeen& scan) { return scan.said.item.kind == guide::ItemKind::Pack && !scan.put_aside; }

}  // namespace

const guide::Item* pack_read(const guide::CaseState& state, const std::string& instrument) {
    const auto newest = std::find_if(state.scans.rbegin(), state.scans.rend(), [&](const guide::ScanSeen& scan) {
        return pack_in_use(scan) && scan.said.item.instrument == instrument;
    });
    return newest == state.scans.rend() ? nullptr : &newest->said.item;
}

std::vector<const guide::Item*> other_packs(const guide::CaseState& state) {
    const std::string trephine = state.inputs.trephine.id, punch = state.inputs.punch.id;
    std::vector<const guide::Item*> packs{};
    for (const guide::ScanSeen& scan : state.scans) {
        const guide::Item& item = scan.said.item;
        if (pack_in_use(scan) && item.instrument != trephine && item.instrument != punch) packs.push_back(&item);
    }
    return packs;
}

std::optional<std::string> donation(const guide::CaseState& state) {
    const guide::ScanSeen* read = guide::tissue_read(state);
    return read != nullptr && read->said.item.donation ? read->said.item.donation : state.inputs.file.donor.donation;
}

std::optional<measure::Day> tissue_expires(const guide::CaseState& state) {
    const guide::ScanSeen* read = guide::tissue_read(state);
    return read != nullptr && read->said.item.expires ? read->said.item.expires : state.inputs.file.donor.expires;
}

bool taken_back(const Record& record, guide::Seq seq) {
    const auto undone = all_of<guide::TapUndone>(record);
    return std::any_of(undone.begin(), undone.end(), [&](const auto& one) { return one.fact->event == seq; });
}

bool written_late(const Record& record, guide::Seq seq) {
    const auto late = all_of<guide::WrittenLate>(record);
    return std::any_of(late.begin(), late.end(), [&](const auto& one) { return seq >= one.fact->first && seq <= one.fact->last; });
}

}  // namespace paper
