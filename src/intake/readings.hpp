// Thickness readings as comma-separated text (RFC 4180, read leniently), and the rules that every reading obeys.
//
// The first row is the header: ring_mm, um, and clock or meridian_deg, in any order. Then a row a reading, 1 to 2000. Values
// are parted by commas; a decimal point, never a comma. A value may stand in double quotes ("" is a quote in them), without
// a line break. Blanks round a value, empty lines, lines that begin with #, a byte order mark and CRLF are passed over.
// UTF-8, at most 1 MiB. Whose readings they are and how they were taken is said by the case file that names this one.
#pragma once

#include "intake/rules.hpp"
#include "measure/problem.hpp"
#include "measure/result.hpp"
#include "plan/inputs.hpp"

#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace intake {

Rule<measure::Length> ring_diameter();
Rule<measure::Length> corneal_thickness();

/// The places that have a reading already.
class ReadingPlaces {
public:
    /// False when there is one at this place.
    bool take(const plan::Reading& reading) { return taken_.insert({reading.ring, reading.at}).second; }
    static std::string found_again(const plan::Reading& reading);
    static constexpr auto allowed = "one reading a ring and meridian";

private:
    std::set<std::pair<measure::Length, measure::Angle>> taken_{};
};

measure::Result<std::vector<plan::Reading>, measure::Problems> read_readings(std::string_view text, const std::string& name);

/// Whether a file of this name holds readings: it ends in ".csv".
bool names_readings(std::string_view name);

}  // namespace intake
