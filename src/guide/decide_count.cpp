// Counts: what was opened, added and passed back, and two people who see the same.
#include "guide/draft.hpp"

namespace guide {

Decision decide_count(Draft draft, const MoveItems& intent) {
    const auto tally = draft.state().counts.find(intent.item);
    if (tally == draft.state().counts.end()) return refuse(Refused::UnknownId, {intent.item});
    if (intent.by == 0 || tally->second.expected() + intent.by < 0) return refuse(Refused::CountDiffers);
    draft.add(ItemsMoved{.item = intent.item, .by = intent.by});
    return std::move(draft).facts();
}

Decision decide_count(Draft draft, const CheckCount& intent) {
    const auto tally = draft.state().counts.find(intent.item);
    if (tally == draft.state().counts.end()) return refuse(Refused::UnknownId, {intent.item});
    if (same_person(intent.by).empty()) return refuse(Refused::NeedsSecondPerson);
    if (intent.seen < 0) return refuse(Refused::CountDiffers);
    if (check_that_holds(draft.state(), intent.item, intent.by) == std::optional(intent.seen)) return refuse(Refused::NeedsSecondPerson);
    draft.add(CountChecked{.item = intent.item, .seen = intent.seen, .expected = tally->second.expected(), .by = intent.by});
    draft.settle();
    return std::move(draft).facts();
}

Decision decide_count(Draft draft, const RecordDifference& intent) {
    if (!draft.state().counts.contains(intent.item)) return refuse(Refused::UnknownId, {intent.item});
    if (recorded_difference(draft.state(), intent.item) != nullptr) return refuse(Refused::AlreadyDone);
    const auto found = difference(draft.state(), intent.item);
    if (!found) return refuse(Refused::NoDifference);
    if (found->disputed || found->by.size() < 2) return refuse(Refused::NeedsSecondPerson);
    if (intent.why.empty()) return refuse(Refused::NeedsReason);
    draft.add(DifferenceRecorded{.item = intent.item, .seen = found->seen, .expected = found->expected, .why = intent.why});
    draft.settle();
    return std::move(draft).facts();
}

}  // namespace guide
