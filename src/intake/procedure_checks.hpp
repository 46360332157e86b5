// What must hold between the parts of a procedure file, told at the place of the part that breaks it.
#pragma once

#include "guide/procedure.hpp"
#include "intake/reading.hpp"

#include <string>
#include <vector>

namespace intake {

/// An id or a line with where it stands.
struct Mention {
    std::string text{};
    Place at{};
    std::string path{};
};

/// A step with the places that the checks name.
struct PlacedStep {
    Mention id{};
    std::string phase{};
    guide::Closes closes = guide::Closes::Tap;
    Mention closes_at{};
    std::vector<Mention> needs{}, clocks{}, departures{}, wording{};
};

struct PlacedProcedure {
    std::vector<Mention> phases{}, departures{};  // their ids
    std::vector<Mention> departures_of_phases{};  // the ids that phases name
    std::vector<Mention> reopened{};              // the steps that departures name
    std::vector<PlacedStep> steps{};
    std::vector<Mention> other_wording{};  // outside steps
};

void check(const PlacedProcedure& procedure, Report& report);

}  // namespace intake
