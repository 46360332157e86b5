#include "guide/tissue.hpp"

#include "measure/expect.hpp"

#include <algorithm>

namespace guide {
namespace {

bool live_tissue(const ScanSeen& scan) { return scan.said.item.kind == ItemKind::Tissue && !scan.put_aside && !scan.completed; }

bool speaks(const ScanSeen& scan, Against what) {
    return std::any_of(scan.said.against.begin(), scan.said.against.end(), [&](const Objection& one) { return one.what == what; });
}

/// Two words that answer one question: the later one counts.
std::optional<TissueWord> opposite(TissueWord what) {
    switch (what) {
        case TissueWord::Accepted:
            return TissueWord::Unfit;
        case TissueWord::Unfit:
            return TissueWord::Accepted;
        case TissueWord::Grafted:
            return TissueWord::NotUsed;
        case TissueWord::NotUsed:
            return TissueWord::Grafted;
        case TissueWord::BackUpNamed:
        case TissueWord::LeftOver:
            return std::nullopt;
    }
    return std::nullopt;
}

std::string text_or_dash(const std::optional<std::string>& text) { return text.value_or("-"); }

}  // namespace

std::optional<Item> planned_tissue(const CaseState& state) {
    if (const auto& named = state.inputs.file.donor.donation) return tissue_named(*named);
    const auto first = std::find_if(state.scans.begin(), state.scans.end(), live_tissue);
    return first == state.scans.end() ? std::nullopt : std::optional(first->said.item);
}

const ScanSeen* tissue_read(const CaseState& state) {
    const auto planned = planned_tissue(state);
    const ScanSeen* newest = nullptr;
    for (auto scan = state.scans.rbegin(); scan != state.scans.rend(); ++scan) {
        if (!live_tissue(*scan) || number_alone(state, *scan)) continue;
        if (planned && same_item(scan->said.item, *planned) != SameItem::No) return &*scan;
        if (newest == nullptr) newest = &*scan;
    }
    return newest;
}

bool number_alone(const CaseState& state, const ScanSeen& scan) {
    const auto fuller = [&](const ScanSeen& other) {
        const Item& item = other.said.item;
        return live_tissue(other) && item.donation == scan.said.item.donation && item.product && item.division;
    };
    return live_tissue(scan) && !scan.said.item.product && std::any_of(state.scans.begin(), state.scans.end(), fuller);
}

const ScanSeen* other_tissue_read(const CaseState& state) {
    const ScanSeen* read = tissue_read(state);
    const auto other = std::find_if(state.scans.rbegin(), state.scans.rend(), [&](const ScanSeen& scan) {
        return live_tissue(scan) && same_item(scan.said.item, read->said.item) == SameItem::No;
    });
    return other == state.scans.rend() ? nullptr : &*other;
}

bool of_same_tissue(const ScanSeen& scan, const Item& item) {
    return live_tissue(scan) && same_item(scan.said.item, item) == SameItem::Yes && !contradict(scan.said.item, item);
}

const ScanSeen* find_scan(const CaseState& state, Seq event) {
    const auto found = std::find_if(state.scans.begin(), state.scans.end(), [&](const ScanSeen& scan) { return scan.seq == event; });
    return found == state.scans.end() ? nullptr : &*found;
}

bool stands(const ScanSeen& scan) { return !scan.said.against.empty() && !scan.put_aside && !scan.overruled && !scan.completed; }

const ScanSeen* standing_scan(const CaseState& state) {
    const auto newest = std::find_if(state.scans.rbegin(), state.scans.rend(), stands);
    return newest == state.scans.rend() ? nullptr : &*newest;
}

bool never_overruled(const ScanSeen& scan) {
    const bool read_to_the_end = scan.said.item.product && scan.said.item.division;
    const bool grafted_elsewhere = scan.said.item.kind == ItemKind::Tissue && speaks(scan, Against::UsedBefore);
    return grafted_elsewhere || speaks(scan, Against::Allocated) || (speaks(scan, Against::WhichCornea) && !read_to_the_end);
}

bool needs_contact(const ScanSeen& scan) { return scan.said.item.kind != ItemKind::Pack && speaks(scan, Against::Expired); }

std::vector<Objection> settled_on(const ScanSeen& scan) {
    std::vector<Objection> settled = scan.settled;
    if (scan.overruled) settled.insert(settled.end(), scan.said.against.begin(), scan.said.against.end());
    return settled;
}

const Told* find_told(const CaseState& state, TissueWord what) {
    for (auto told = state.tissue.rbegin(); told != state.tissue.rend(); ++told) {
        if (told->what == what) return &*told;
        if (opposite(what) == std::optional(told->what)) return nullptr;
    }
    return nullptr;
}

std::optional<Stored> stored(const CaseState& state, const Day& today) {
    constexpr int cold_flagged = 7, cold_usual = 14, culture_usual = 28;
    const plan::Donor& donor = state.inputs.file.donor;
    const ScanSeen* read = tissue_read(state);
    const std::optional<Day> since = donor.stored ? donor.stored : read == nullptr ? std::nullopt : read->said.item.collected;
    if (!donor.storage || !since) return std::nullopt;
    const bool cold = *donor.storage == plan::Storage::Cold;
    const int days = measure::days_between(*since, today);
    const StorageDays band = days > (cold ? cold_usual : culture_usual) ? StorageDays::Over
                             : cold && days > cold_flagged              ? StorageDays::Flagged
                                                                        : StorageDays::Usual;
    return Stored{.days = days, .band = band};
}

std::optional<Density> density(const CaseState& state) {
    const auto counted = state.inputs.file.donor.endothelium_per_mm2;
    if (!counted) return std::nullopt;
    Density made{.counted = *counted, .low = *counted * 9 / 10, .high = *counted * 11 / 10};
    if (const auto least = state.inputs.limits.endothelium_per_mm2) {
        made.under = made.counted < *least;
        made.perhaps_under = !made.under && *counted * 9 < *least * 10;
    }
    return made;
}

std::string_view name(KnotSide side) {
    switch (side) {
        case KnotSide::Host:
            return "host";
        case KnotSide::Donor:
            return "donor";
        case KnotSide::NotBuried:
            return "not-buried";
    }
    measure::expect(false);
    return "";
}

std::string_view name(Specimen what) {
    switch (what) {
        case Specimen::HostButton:
            return "host-button";
        case Specimen::Rim:
            return "rim";
        case Specimen::Medium:
            return "medium";
    }
    measure::expect(false);
    return "";
}

std::string_view name(SentTo to) {
    switch (to) {
        case SentTo::Pathology:
            return "pathology";
        case SentTo::Culture:
            return "culture";
        case SentTo::Discarded:
            return "discarded";
    }
    measure::expect(false);
    return "";
}

std::vector<Remark> bank_note(const CaseState& state) {
    const ScanSeen* read = tissue_read(state);
    const Item item = read == nullptr ? planned_tissue(state).value_or(Item{}) : read->said.item;
    std::vector<Remark> note{
        {.id = "bank.tissue", .values = {text_or_dash(item.donation), text_or_dash(item.product), text_or_dash(item.division)}},
        {.id = "bank.case", .values = {state.inputs.file.reference, measure::iso(state.inputs.file.date)}}};
    if (item.expires) note.push_back({.id = "bank.expires", .values = {measure::iso(*item.expires)}});
    const auto told = [&](TissueWord what, const std::string& id) {
        const Told* found = find_told(state, what);
        if (found != nullptr) note.push_back({.id = id, .values = {found->text, measure::rfc3339(found->at)}});
    };
    told(TissueWord::Accepted, "bank.accepted");
    told(TissueWord::Unfit, "bank.unfit");
    told(TissueWord::Grafted, "bank.grafted");
    told(TissueWord::NotUsed, "bank.not-used");
    told(TissueWord::LeftOver, "bank.left-over");
    if (find_told(state, TissueWord::Grafted) == nullptr && find_told(state, TissueWord::NotUsed) == nullptr) {
        note.push_back({.id = "bank.use-not-told", .values = {}});
    }
    return note;
}

}  // namespace guide
