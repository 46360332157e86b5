// Scans and tissue: what was scanned is recorded either way; what speaks against it stands in the same event and holds the steps up
// until the item is put aside or the surgeon overrules. Never overruled: tissue of another patient.
#include "guide/draft.hpp"
#include "guide/tissue.hpp"

#include <algorithm>
#include <iterator>

namespace guide {
namespace {

/// "7.50", of whole hundredths.
std::string millimetres_text(measure::Length length) {
    constexpr std::int64_t hundredth_nm = 10'000, whole = 100;
    const std::int64_t hundredths = length.nm() / hundredth_nm;
    const std::string rest = std::to_string(hundredths % whole);
    return std::to_string(hundredths / whole) + (rest.size() < 2 ? ".0" : ".") + rest;
}

const Pack* listed_pack(const CaseState& state, const Item& item) {
    const auto& packs = state.brief.unit.packs;
    const auto found = std::find_if(packs.begin(), packs.end(), [&](const Pack& pack) { return item.gtin == std::optional(pack.gtin); });
    return found == packs.end() ? nullptr : &*found;
}

/// All that `one` says of tissue beside its number, `other` says something of too.
bool says_no_more(const Item& one, const Item& other) {
    return (!one.product || other.product) && (!one.division || other.division) && (!one.expires || other.expires) &&
           (!one.collected || other.collected);
}

/// The label that is being read symbol by symbol: the newest scan, while nothing else was read since and nothing decided on it.
const ScanSeen* being_read(const CaseState& state, const Instant& now) {
    constexpr std::int64_t one_label_ms = 120'000;  // our own limit, no source
    if (state.scans.empty()) return nullptr;
    const ScanSeen& newest = state.scans.back();
    const bool decided = newest.put_aside || std::any_of(state.tissue.begin(), state.tissue.end(), [&](const Told& told) {
                             return told.what != TissueWord::BackUpNamed && told.at.utc_ms >= newest.at.utc_ms;
                         });
    const bool soon = measure::elapsed(newest.at, now).ms <= one_label_ms;
    return newest.said.item.kind == ItemKind::Tissue && !decided && soon ? &newest : nullptr;
}

/// The earlier scan is of the same label: number, product and division are told and agree, or it said nothing that is not said again.
bool said_again(const ScanSeen& scan, const Scanned& said) {
    const Item &before = scan.said.item, &now = said.item;
    if (scan.put_aside || scan.completed || before.kind != now.kind) return false;
    if (now.kind != ItemKind::Tissue) return scan.said.bytes == said.bytes;
    if (contradict(before, now)) return false;
    const SameItem same = same_item(before, now);
    return same == SameItem::Yes || (same == SameItem::Perhaps && says_no_more(before, now));
}

/// The scan that this one says again or reads on from. A part of a label, which bears no number, belongs to the label that is being read
/// or to none: both corneas of a donor bear one number, and two labels may lie on the table.
const ScanSeen* begun(const CaseState& state, const Scanned& said, const Instant& now) {
    if (said.item.kind == ItemKind::Part) {
        const ScanSeen* label = being_read(state, now);
        if (label != nullptr && !contradict(said.item, label->said.item)) return label;
    }
    const auto found = std::find_if(state.scans.rbegin(), state.scans.rend(), [&](const ScanSeen& scan) { return said_again(scan, said); });
    return found == state.scans.rend() ? nullptr : &*found;
}

Item completed(Item item, const Item& part) {
    if (part.product) item.product = part.product, item.division = part.division;
    if (part.expires) item.expires = part.expires, item.expires_minute = part.expires_minute;
    if (part.collected) item.collected = part.collected;
    return item;
}

bool expired(const Item& item, const CaseState& state, const Instant& now) {
    if (!item.expires) return false;
    const Day today = measure::day_of(now), day = std::max(today, state.inputs.file.date);
    if (*item.expires != day || !item.expires_minute || today != day) return *item.expires < day;
    constexpr std::int64_t minute_ms = 60'000, day_minutes = 24 * 60;
    const std::int64_t local = now.utc_ms / minute_ms + now.offset_min;
    return local % day_minutes > *item.expires_minute;
}

void judge_tissue(const CaseState& state, const Item& item, std::vector<Objection>& against) {
    const auto planned = planned_tissue(state);
    if (!planned || !item.donation || same_item(item, *planned) != SameItem::No) return;
    const Told* backup = find_told(state, TissueWord::BackUpNamed);
    if (backup != nullptr && tissue_named(backup->text).donation == item.donation) return;
    against.push_back({.what = Against::NotPlannedTissue, .values = {tissue_text(item), tissue_text(*planned)}});
}

void judge_pack(const CaseState& state, const Item& item, std::vector<Objection>& against) {
    if (!item.instrument || !item.size) return;
    const plan::Inputs& inputs = state.inputs;
    const bool host = *item.instrument == inputs.trephine.id, donor = *item.instrument == inputs.punch.id;
    const measure::Length wanted = host ? inputs.file.host_diameter : inputs.file.donor.diameter;
    if (!host && !donor) {
        against.push_back({.what = Against::NotPlannedPack, .values = {*item.instrument}});
    } else if (*item.size != wanted) {
        against.push_back({.what = Against::WrongSize, .values = {millimetres_text(*item.size), millimetres_text(wanted)}});
    }
}

void judge_elsewhere(const Item& item, const std::vector<Elsewhere>& elsewhere, std::vector<Objection>& against) {
    for (const Elsewhere& other : elsewhere) {
        const SameItem same = same_item(item, other.item);
        if (same == SameItem::No) continue;
        const Against what = same == SameItem::Perhaps ? Against::WhichCornea : other.used ? Against::UsedBefore : Against::Allocated;
        const Objection objection{.what = what, .values = {other.reference}};
        if (std::find(against.begin(), against.end(), objection) == against.end()) against.push_back(objection);
    }
}

/// What the surgeon has overruled on this label before is not raised again.
void leave_out_overruled(const CaseState& state, Scanned& said) {
    for (const ScanSeen& scan : state.scans) {
        const bool this_label = scan.seq == said.completes || same_item(scan.said.item, said.item) == SameItem::Yes;
        if (!this_label || scan.put_aside) continue;
        const std::vector<Objection> settled = settled_on(scan);
        std::erase_if(said.against, [&](const Objection& one) { return std::find(settled.begin(), settled.end(), one) != settled.end(); });
    }
}

}  // namespace

Decision decide_scan(Draft draft, const Scan& intent) {
    const CaseState& state = draft.state();
    Scanned said{.bytes = intent.bytes, .meaning = "", .item = item_of(intent.label)};
    const ScanSeen* before = begun(state, said, draft.now());
    if (before != nullptr) {
        said.item = completed(before->said.item, said.item);
        said.completes = before->seq;
    }
    for (const ScanSeen& scan : state.scans) {
        if (of_same_tissue(scan, said.item)) said.item = completed(scan.said.item, said.item);
    }
    if (const Pack* pack = listed_pack(state, said.item)) said.item.instrument = pack->instrument, said.item.size = pack->size;
    if (expired(said.item, state, draft.now())) {
        said.against.push_back({.what = Against::Expired, .values = {measure::iso(*said.item.expires)}});
    }
    judge_tissue(state, said.item, said.against);
    judge_pack(state, said.item, said.against);
    judge_elsewhere(said.item, intent.elsewhere, said.against);
    leave_out_overruled(state, said);
    draft.add(std::move(said));
    return std::move(draft).facts();
}

Decision decide_scan(Draft draft, Who who, const Overrule& intent) {
    const CaseState& state = draft.state();
    if (who != Who::Surgeon) return refuse(Refused::NeedsSurgeon);
    if (intent.why.empty()) return refuse(Refused::NeedsReason);
    const ScanSeen* scan = find_scan(state, intent.event);
    if (scan == nullptr) return refuse(Refused::UnknownId, {std::to_string(intent.event)});
    if (scan->overruled || scan->put_aside || scan->completed) return refuse(Refused::AlreadyDone);
    if (never_overruled(*scan)) return refuse(Refused::NeverOverruled);
    if (needs_contact(*scan) && intent.contact.empty()) return refuse(Refused::NeedsContact);
    draft.add(Overruled{.event = intent.event, .why = intent.why, .contact = intent.contact});
    return std::move(draft).facts();
}

Decision decide_scan(Draft draft, const PutAside& intent) {
    const ScanSeen* scan = find_scan(draft.state(), intent.event);
    if (scan == nullptr) return refuse(Refused::UnknownId, {std::to_string(intent.event)});
    if (scan->put_aside || scan->completed) return refuse(Refused::AlreadyDone);
    draft.add(ItemPutAside{.event = intent.event, .why = intent.why});
    return std::move(draft).facts();
}

Decision decide_tissue(Draft draft, Who who, const TellTissue& intent) {
    const bool judges = intent.what == TissueWord::Accepted || intent.what == TissueWord::Unfit;
    if (judges && who != Who::Surgeon) return refuse(Refused::NeedsSurgeon);
    const bool needs_text = intent.what != TissueWord::Accepted && intent.what != TissueWord::Grafted;
    if (needs_text && intent.text.empty()) return refuse(Refused::NeedsReason);
    if (intent.what == TissueWord::Accepted) {
        if (const auto stopped = scan_that_stops(draft.state())) return *stopped;
    }
    if (intent.what == TissueWord::Grafted) {
        if (find_told(draft.state(), TissueWord::Unfit) != nullptr) return refuse(Refused::TissueUnfit);
        // Which of two was grafted is on the record for good: the other is put aside first.
        if (const ScanSeen* other = other_tissue_read(draft.state())) return refuse(Refused::TwoTissues, {tissue_text(other->said.item)});
    }
    draft.add(TissueTold{.what = intent.what, .text = intent.text});
    return std::move(draft).facts();
}

std::optional<Refusal> scan_that_stops(const CaseState& state) {
    const ScanSeen* scan = standing_scan(state);
    if (scan == nullptr) return std::nullopt;
    return refuse(Refused::ScanStands, {std::string(name(scan->said.against.front().what)), std::to_string(scan->seq)});
}

}  // namespace guide
