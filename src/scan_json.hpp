// What `state --json` says of the scans, of the tissue and of what was told for the handover.
#pragma once

#include "guide/state.hpp"

#include <nlohmann/json.hpp>

namespace graftside {

/// Each scan in its order: the bytes, what they say, what speaks against, and what became of it.
nlohmann::ordered_json scans_json(const guide::CaseState& state);
/// Null where nothing is known of the tissue.
nlohmann::ordered_json tissue_json(const guide::CaseState& state, const measure::Day& today);
/// What was told for the handover: knots, suture material, specimens, the tissue bank. Keys of `state`.
nlohmann::ordered_json told_json(const guide::CaseState& state);

}  // namespace graftside
