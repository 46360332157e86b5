// What is told for the handover: where the knots are, which suture material, where the specimens went, who at the tissue bank was
// told. Nothing here is told before there is something to tell of; a later word replaces an earlier one, the record keeps both.
#include "guide/draft.hpp"
#include "guide/tissue.hpp"

#include <algorithm>

namespace guide {

Decision decide_told(Draft draft, const TellKnots& intent) {
    const CaseState& state = draft.state();
    if (!eye_entered(state)) return refuse(Refused::EyeNotOpened);
    if (state.sutures.empty()) return refuse(Refused::NoSuture);
    if (state.knots && state.knots->fact.side == intent.side) return refuse(Refused::AlreadyDone);
    draft.add(KnotsTold{.side = intent.side});
    return std::move(draft).facts();
}

/// The lot is that of the pack where one was read; a pack that something speaks against names no suture that was used.
Decision decide_told(Draft draft, const NameSutures& intent) {
    const CaseState& state = draft.state();
    SuturesNamed named{.material = intent.material, .lot = intent.lot, .pack = intent.pack};
    if (named.material.empty()) return refuse(Refused::NeedsText);
    if (intent.pack != 0) {
        const ScanSeen* scan = find_scan(state, intent.pack);
        const bool pack = scan != nullptr && scan->said.item.kind == ItemKind::Pack;
        if (!pack || scan->put_aside) return refuse(Refused::UnknownId, {std::to_string(intent.pack)});
        if (stands(*scan)) return refuse(Refused::ScanStands);
        if (scan->said.item.lot) named.lot = *scan->said.item.lot;
    }
    const auto same = [&](const Said<SuturesNamed>& one) { return one.fact.material == named.material && one.fact.lot == named.lot; };
    if (std::any_of(state.materials.begin(), state.materials.end(), same)) return refuse(Refused::AlreadyDone);
    draft.add(std::move(named));
    return std::move(draft).facts();
}

/// A label of the wrong side is never written down: the specimen is labelled anew.
Decision decide_told(Draft draft, const TellSpecimen& intent) {
    const CaseState& state = draft.state();
    if (!eye_entered(state)) return refuse(Refused::EyeNotOpened);
    if (intent.side.empty() && intent.to != SentTo::Discarded) return refuse(Refused::NeedsLabel);
    if (!intent.side.empty() && intent.side != planned_side(state)) return refuse(Refused::LabelDiffers);
    SpecimenTold told{.what = intent.what, .to = intent.to, .side = intent.side};
    const auto before = state.specimens.find(intent.what);
    if (before != state.specimens.end() && before->second.fact == told) return refuse(Refused::AlreadyDone);
    draft.add(std::move(told));
    return std::move(draft).facts();
}

Decision decide_told(Draft draft, const TellBank& intent) {
    if (intent.contact.empty()) return refuse(Refused::NeedsName);
    if (intent.text.empty()) return refuse(Refused::NeedsText);
    draft.add(BankTold{.contact = intent.contact, .text = intent.text});
    return std::move(draft).facts();
}

}  // namespace guide
