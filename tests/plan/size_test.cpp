#include "plan/size_options.hpp"
#include "plan/sizes.hpp"
#include "sample.hpp"

#include <doctest/doctest.h>

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

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

// Ophthalmology 1989;96:299-305: 45.4 and 43.8 D, -3.5 and -1.8 D for +0.25 and 0. Registry of 878, Ophthalmology
// 2008;115:268-75: -1.41 and -1.45 D, no difference. Both are said: a range, never one promise.
TEST_CASE("the pair that differs and the registry that finds no difference are both told, for either size") {
    const auto words_of = [](const std::vector<Note>& notes) {
        std::string all{};
        for (const Note& note : notes) all += note.code + " " + note.source + "\n";
        return all;
    };
    for (const double mm : {0.0, 0.25}) {
        const Evidence found = evidence(from_mm(mm));
        CHECK(found.speaks_for.size() >= 1);
        CHECK(found.against.size() >= 1);
        const std::string all = words_of(found.speaks_for) + words_of(found.against);
        CAPTURE(all);
        CHECK(all.find("Ophthalmology 1989;96:299-305") != std::string::npos);
        CHECK(all.find("Ophthalmology 2008;115:268-75") != std::string::npos);
    }
    CHECK(evidence(from_mm(0.5)).against.size() >= 1);
    CHECK(evidence(from_mm(-0.25)).speaks_for.empty());
}

TEST_CASE("a size that is not on the unit's own list is said; a unit that lists nothing has said nothing") {
    Inputs inputs = sample::scar();
    CHECK(sample::note(make(inputs), "host-not-in-stock") == nullptr);
    inputs.limits.hosts_in_stock = sample::sizes({7.0, 8.0});
    CHECK(sample::says(make(inputs), "host-not-in-stock", Level::Watch));
    CHECK(sample::note(make(inputs), "donor-not-in-stock") == nullptr);
    inputs.limits.donors_in_stock = sample::sizes({7.75});
    CHECK(sample::note(make(inputs), "donor-not-in-stock") == nullptr);
    inputs.limits.donors_in_stock = sample::sizes({8.25});
    CHECK(sample::says(make(inputs), "donor-not-in-stock", Level::Watch));
}

TEST_CASE("what another size would change is what a case of that size would be planned") {
    const Inputs inputs = sample::map(5, 9);
    const auto options = size_options(inputs);
    REQUIRE(options.size() == 5);
    CHECK(std::count_if(options.begin(), options.end(), [](const SizeOption& option) { return option.chosen; }) == 1);
    std::vector<std::string> said{};
    for (const SizeOption& option : options) {
        said.push_back(fmt::format("{} {} {}", option.host.mm(), option.donor.mm(), option.spokes.value_or(0)));
        Inputs with = inputs;
        with.file.host_diameter = option.host;
        with.file.donor.diameter = option.donor;
        const Plan plan = make(with);
        CHECK(option.sizes == plan.sizes);
        CHECK(option.spacing == plan.spacing);
        CHECK(option.thinnest == plan.wall->thinnest);
        CHECK(option.spokes == plan.target->spokes);
        CHECK(option.held);
    }
    // 7.0, 7.5 and 7.75 mm: 598.2, 606.8 and 611.4 um by the profile of 540 um, so 7, 8 and 8 spokes of 60 um at 80 %.
    CHECK(said == std::vector<std::string>{"7 7.25 7", "7.5 7.5 8", "7.5 7.75 8", "7.5 8 8", "7.75 8 8"});
}

TEST_CASE("sizes at the end of the range, not held or not in stock are told as such") {
    Inputs inputs = sample::scar();
    inputs.file.host_diameter = from_mm(6);
    inputs.file.donor.diameter = from_mm(6);
    const auto options = size_options(inputs);
    CHECK(options.size() == 3);
    CHECK(options.front().host == from_mm(6));
    CHECK(options.front().refused == "centre-alone");
    inputs = sample::scar();
    inputs.file.donor.diameter = from_mm(7.8);
    inputs.limits.hosts_in_stock = sample::sizes({8.0});
    for (const SizeOption& option : size_options(inputs)) {
        CHECK(option.held == (option.donor != from_mm(7.8)));
        CHECK(option.in_stock == (option.host == from_mm(8.0)));
        if (option.chosen) CHECK(option.refused == "donor-size-not-held");
    }
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
