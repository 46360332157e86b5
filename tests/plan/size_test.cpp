#include "plan/sizes.hpp"
#include "sample.hpp"

#include <doctest/doctest.h>

using namespace plan;
using sample::from_mm;
using sample::from_um;
using Level = Note::Level;

// Arch Ophthalmol 1988;106:1228-33: front +0.21 (0.06 to 0.35), back +0.42 (0.13 to 0.79) mm: nominal 7.5 gives 7.56 to 7.85
// and 7.63 to 8.29 mm. Decentration 0.58 mm: Ophthalmic Surg Lasers 1998;29:106-13.
TEST_CASE("sizes of the sample case") {
    const Plan plan = make(sample::scar());
    CHECK(plan.sizes == Sizes{.oversize = from_um(250),
                              .clearance = from_um(1800),
                              .clearance_deg = 90,
                              .clearance_usual_offset = from_um(1220),
                              .button_front = {.low = from_mm(7.56), .high = from_mm(7.85)},
                              .button_back = {.low = from_mm(7.63), .high = from_mm(8.29)}});
}

TEST_CASE("sizes that the profiles do not hold stop the plan [H-05]") {
    Inputs inputs = sample::scar();
    inputs.file.donor.diameter = from_mm(7.8);
    CHECK(sample::refused(make(inputs), "donor-size-not-held"));
    inputs = sample::scar();
    inputs.file.host_diameter = from_mm(7.6);
    CHECK(sample::refused(make(inputs), "host-size-not-held"));
    CHECK(make(inputs).wall.has_value());
    CHECK(make(inputs).order.size() == 16);
}

// Ophthalmology 1989;96:299-305 for, Ophthalmology 2008;115:268-75 against.
TEST_CASE("what speaks for and against an oversize stands side by side") {
    Inputs inputs = sample::scar();
    const auto with_donor = [&](double mm) {
        inputs.file.donor.diameter = from_mm(mm);
        return make(inputs);
    };
    CHECK(sample::note(with_donor(7.75), "oversize-quarter-for") != nullptr);
    CHECK(sample::note(with_donor(7.75), "oversize-quarter-against") != nullptr);
    CHECK(sample::note(with_donor(7.5), "same-size-for") != nullptr);
    CHECK(sample::says(with_donor(7.5), "same-size-against", Level::Watch));
    CHECK(sample::note(with_donor(8.0), "oversize-half-for") != nullptr);
    CHECK(sample::note(with_donor(8.0), "oversize-half-against") != nullptr);
    CHECK(sample::note(with_donor(8.0), "oversize-large") == nullptr);
    CHECK(sample::says(with_donor(8.25), "oversize-large", Level::Watch));
    CHECK(sample::says(with_donor(7.25), "undersize", Level::Watch));
    CHECK(sample::note(with_donor(7.5), "undersize") == nullptr);
}

// Cornea 2004;23:345-9: over 24.5 mm; Sci Rep 2020;10:18594: small grafts in keratoconus.
TEST_CASE("keratoconus and long eyes are told of the same size, keratoconus of a small host") {
    Inputs inputs = sample::scar();
    CHECK(sample::note(make(inputs), "same-size-option") == nullptr);
    inputs.file.axial_length_mm = 24.5;
    CHECK(sample::note(make(inputs), "same-size-option") == nullptr);
    inputs.file.axial_length_mm = 24.51;
    CHECK(sample::note(make(inputs), "same-size-option") != nullptr);
    inputs.file.reason = Reason::Keratoconus;
    CHECK(sample::says(make(inputs), "host-small-keratoconus", Level::Watch));
    inputs.file.host_diameter = from_mm(7.75);
    CHECK(sample::note(make(inputs), "host-small-keratoconus") == nullptr);
}

// Common practice, no source: 7.0 to 8.5 mm.
TEST_CASE("hosts outside 7.0 to 8.5 mm are asked about") {
    Inputs inputs = sample::scar();
    for (const double usual : {7.0, 7.5, 8.5}) {
        inputs.file.host_diameter = from_mm(usual);
        CHECK(sample::note(make(inputs), "host-outside-usual") == nullptr);
    }
    for (const double unusual : {6.5, 9.0}) {
        inputs.file.host_diameter = from_mm(unusual);
        CHECK(sample::says(make(inputs), "host-outside-usual", Level::Watch));
    }
}

TEST_CASE("only the unit's own limit judges the way to the limbus, and a cut over the limbus stops") {
    Inputs inputs = sample::scar();
    CHECK(sample::note(make(inputs), "clearance-under-limit") == nullptr);
    inputs.limits.clearance = from_mm(1.8);
    CHECK(sample::note(make(inputs), "clearance-under-limit") == nullptr);
    CHECK(sample::says(make(inputs), "clearance-offset-under-limit", Level::Watch));
    inputs.limits.clearance = from_mm(1.81);
    CHECK(sample::says(make(inputs), "clearance-under-limit", Level::Watch));
    inputs.limits.clearance = from_mm(1.22);
    CHECK(sample::note(make(inputs), "clearance-offset-under-limit") == nullptr);
    inputs.file.centre_y = from_mm(1.8);
    CHECK(sample::refused(make(inputs), "cut-leaves-cornea"));
}
