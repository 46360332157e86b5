// Figures of the donor tissue and of what was scanned, read off the state; no rule stands here.
//
// Storage, both shown as usual practice beside the tissue bank's own word, which counts: cold, 2 to 8 °C, flagged after 7 days,
// usually to 14 (Int Ophthalmol 2008;28:155-63; JAMA Ophthalmol 2017;135:1401-9); warm culture, to 28 days, never in the
// refrigerator (Int Ophthalmol 2008;28:155-63). A density is good to 10 % (Transplantation 2004;78:1299-302).
#pragma once

#include "guide/state.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace guide {

/// The tissue this case is to have: the case file's, else the first one read that was not put aside.
std::optional<Item> planned_tissue(const CaseState& state);
/// The tissue of this case: the newest reading of the planned one, else of any, that was not put aside; a number alone last.
const ScanSeen* tissue_read(const CaseState& state);
/// Its label was not read to the product, and another reading of the same number was: it names no tissue beside that one.
bool number_alone(const CaseState& state, const ScanSeen& scan);
/// Another tissue that was read too and not put aside, such as a back-up; null if there is none.
const ScanSeen* other_tissue_read(const CaseState& state);
/// A reading that counts of the very tissue that `item` is: number, product and division agree, and no date speaks against it.
bool of_same_tissue(const ScanSeen& scan, const Item& item);
const ScanSeen* find_scan(const CaseState& state, Seq event);
/// Something speaks against it, and it is neither put aside, overruled, nor completed by a later one.
bool stands(const ScanSeen& scan);
/// The newest of those that stand.
const ScanSeen* standing_scan(const CaseState& state);
/// Another patient's tissue never, nor what was grafted in another case. Which cornea of one donor it is, only when its own label has been
/// read to the end.
bool never_overruled(const ScanSeen& scan);
/// Expired tissue: only with the contact at the tissue bank.
bool needs_contact(const ScanSeen& scan);
/// What the surgeon has overruled on this label, in this scan and those it goes on from.
std::vector<Objection> settled_on(const ScanSeen& scan);
/// What was told last in this word; none if another word of the same question came after (accepted or unfit, grafted or not used).
const Told* find_told(const CaseState& state, TissueWord what);

enum class StorageDays { Usual, Flagged, Over };
struct Stored {
    int days = 0;
    StorageDays band{};
    bool operator==(const Stored&) const = default;
};
/// Days in storage on a day; none unless both the kind and the first day are known.
std::optional<Stored> stored(const CaseState& state, const Day& today);

struct Density {
    int counted = 0, low = 0, high = 0;         // cells/mm²; 10 % either way
    bool under = false, perhaps_under = false;  // the unit's minimum
    bool operator==(const Density&) const = default;
};
std::optional<Density> density(const CaseState& state);

/// A sentence by its id in the wording, with what goes into it.
struct Remark {
    std::string id{};
    std::vector<std::string> values{};
    bool operator==(const Remark&) const = default;
};
/// "host", "pathology", "rim" …: ids in the wording and in JSON.
std::string_view name(KnotSide side);
std::string_view name(Specimen what);
std::string_view name(SentTo to);

/// What goes back to the tissue bank: which tissue, what became of it and when, what was left over. No patient is named;
/// the reference is the unit's own.
std::vector<Remark> bank_note(const CaseState& state);

}  // namespace guide
