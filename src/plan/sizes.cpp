#include "plan/sizes.hpp"

#include "eye/limbus.hpp"

namespace plan {
namespace {

// Button over nominal diameter, five trephines pooled, 60 fresh human eyes: front +0.21 (0.06 to 0.35) mm, back +0.42
// (0.13 to 0.79) mm (Arch Ophthalmol 1988;106:1228-33).
constexpr measure::Interval front_over{.low = measure::nm(60'000), .high = measure::nm(350'000)};
constexpr measure::Interval back_over{.low = measure::nm(130'000), .high = measure::nm(790'000)};

measure::Interval beyond(Length diameter, const measure::Interval& over) {
    return {.low = diameter + over.low, .high = diameter + over.high};
}

}  // namespace

Sizes sizes_from(const CaseFile& file) {
    const auto clearance = eye::clearance({.horizontal = file.white_to_white_horizontal, .vertical = file.white_to_white_vertical},
                                          {.diameter = file.host_diameter, .x = file.centre_x, .y = file.centre_y});
    return {.oversize = file.donor.diameter - file.host_diameter,
            .clearance = clearance.least,
            .clearance_deg = clearance.deg,
            .clearance_usual_offset = clearance.least - usual_offset,
            .button_front = beyond(file.host_diameter, front_over),
            .button_back = beyond(file.host_diameter, back_over)};
}

}  // namespace plan
