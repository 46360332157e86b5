// What `state --json` says of the scans and of the tissue.
#pragma once

#include "guide/state.hpp"

#include <nlohmann/json.hpp>

namespace graftside {

/// Each scan in its order: the bytes, what they say, what speaks against, and what became of it.
nlohmann::ordered_json scans_json(const guide::CaseState& state);
/// Null where nothing is known of the tissue.
nlohmann::ordered_json tissue_json(const guide::CaseState& state, const measure::Day& today);

}  // namespace graftside
