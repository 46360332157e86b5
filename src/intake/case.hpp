// A case file as values, with the ids of the two instrument profiles it asks for, and back to text.
//
// [case]      reference, date, eye = right|left, reason, seat = head|temporal (head), invented (false)
// [eye]       keratometry_D or radius_mm, white_to_white_mm = [horizontal, vertical], axial_length_mm, lens
// [thickness] method, measured, central_um, through_scar (false), edge = "looks-normal",
//             readings = [{ ring_mm, clock or meridian_deg, um }], or readings_csv = "NAME.csv", a file beside the case
//             (readings.hpp); one of central_um, readings, readings_csv must be there
// [host]      trephine, diameter_mm, centre_mm = [x, y] ([0, 0])
// [donor]     punch, diameter_mm, storage, stored, expires, endothelium_per_mm2, donation
// [aim]       exactly one of share, spokes, goal = "to-entry"; entry_limit (0.05)
// [sutures]   pattern ("16 interrupted"), first ("12:00")
//
// Whether the profiles hold the sizes and what may be planned is decided elsewhere.
#pragma once

#include "measure/problem.hpp"
#include "measure/result.hpp"
#include "plan/inputs.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace intake {

struct CaseDocument {
    plan::CaseFile file{};
    std::string trephine{}, punch{};
    std::string readings_csv{};  // the file that holds the readings, to be read next; empty: there is none, or it was read
    bool operator==(const CaseDocument&) const = default;
};

/// `name` is the file's name as problems give it.
measure::Result<CaseDocument, measure::Problems> read_case(std::string_view text, const std::string& name);
/// TOML that reads back to an equal document.
std::string write_case(const CaseDocument& document);

/// "N interrupted", "N running", "N double running", "N interrupted + M running"; N interrupted even, 4 to 32; 4 to 64 bites.
std::optional<plan::Pattern> pattern_from(std::string_view text);
std::string text(const plan::Pattern& pattern);

}  // namespace intake
