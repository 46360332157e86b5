// What was scanned and what speaks against it, in words. Nothing is judged here.
#pragma once

#include "guide/state.hpp"
#include "screen/words.hpp"

#include <string>

namespace screen {

/// "Tissue G1234 V0001 001", "Lot A1".
std::string item_text(const guide::Item& item, const Words& words);
/// "product V0001 001, expiry 2026-12-01": what `item` says of tissue that `before` did not say.
std::string parts_text(const guide::Item& item, const guide::Item& before, const Words& words);
/// Which label a part was joined to, or that it was joined to none and how to go on. Empty of what is no part.
std::string joined_text(const guide::CaseState& state, const guide::ScanSeen& scan, const Words& words);
/// "Expired on 2026-01-31."
std::string objection_text(const guide::Objection& one, const Words& words);
/// All of them, one after the other; empty where nothing speaks against it.
std::string objections_text(const guide::ScanSeen& scan, const Words& words);
/// Which item does not fit, and why: "Lot A1: Expired on 2026-01-31."
std::string unfitting_text(const guide::ScanSeen& scan, const Words& words);
/// The same for a banner, which has room for one reason, the worst; and with how to go on.
std::string stop_reason(const guide::ScanSeen& scan, const Words& words);
std::string stop_text(const guide::ScanSeen& scan, const Words& words);
/// Of what nothing speaks against, what could not be checked, a sentence each: the size of a pack that the unit's list does not have, an
/// expiry that was not read.
std::string unchecked_text(const guide::ScanSeen& scan, const Words& words);
/// What became of it: put aside, overruled, does not fit, partly checked, fits. Empty of raw bytes.
std::string standing_text(const guide::ScanSeen& scan, const Words& words);

}  // namespace screen
