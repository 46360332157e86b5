// What is said beside the figures: cautions, what speaks for and against, what was found odd in the case file.
// The words are in assets/words under "note.<code>"; nothing here changes a figure.
#pragma once

#include "plan/plan.hpp"

namespace plan {

/// What speaks for and against an oversize, by published series; never one promise.
struct Evidence {
    std::vector<Note> speaks_for{}, against{};
    bool operator==(const Evidence&) const = default;
};
Evidence evidence(Length oversize);

/// Sizes: held by the profiles and on the unit's shelf or not, oversize for and against, usual range, distance to the limbus, the button.
std::vector<Note> size_notes(const Inputs& inputs, const Sizes& sizes);

/// Age and way of the readings.
std::vector<Note> reading_notes(const CaseFile& file);

/// The donor tissue: expiry, storage, endothelium.
std::vector<Note> tissue_notes(const Inputs& inputs);

/// What stands beside every blade ladder.
std::vector<Note> ladder_notes(const Inputs& inputs);

/// The trephine as its profile states it.
std::vector<Note> trephine_notes(const instrument::Trephine& trephine);

void append(std::vector<Note>& notes, std::vector<Note> more);

bool stops(const std::vector<Note>& notes);

}  // namespace plan
