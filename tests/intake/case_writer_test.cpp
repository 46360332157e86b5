// A case made by touch is written as a file that reads back to the same case.
#include "good_case.hpp"
#include "intake/case.hpp"
#include "problems.hpp"

#include <string>
#include <vector>

using namespace intake;
using measure::centideg;
using measure::from_mm;
using measure::from_um;

namespace {

const std::string& good = test::good_case;

}  // namespace

TEST_CASE("a case that is written reads back equal") {
    const auto first = read_case(good, "k.toml");
    REQUIRE(first);
    CHECK(*read_case(write_case(*first), "w.toml") == *first);

    CaseDocument all = *first;
    all.file.reference = "He said \"K\" ä";
    all.file.invented = true;
    all.file.seat = eye::Seat::Temporal;
    all.file.keratometry_D = 337.5 / 7.77;
    all.file.axial_length_mm = 23.61;
    all.file.lens = plan::Lens::Pseudophakic;
    all.file.thickness.measured = measure::Day{.year = 2026, .month = 2, .day = 28};
    all.file.thickness.central = from_um(538.1);
    all.file.thickness.through_scar = true;
    all.file.thickness.edge_looks_normal = true;
    all.file.thickness.readings.push_back({.ring = from_mm(8.125), .at = centideg(1), .thickness = from_um(700.3)});
    all.file.centre_x = from_mm(-0.58);
    all.file.donor = {.diameter = from_mm(7.75),
                      .storage = plan::Storage::Cold,
                      .stored = measure::Day{.year = 2026, .month = 12, .day = 20},
                      .expires = measure::Day{.year = 2027, .month = 1, .day = 1},
                      .endothelium_per_mm2 = 2400,
                      .donation = "G123498654321"};
    all.file.first_suture = centideg(7500);
    for (const auto& aim : {plan::Aim{.goal = plan::Goal::Share, .share_permille = 805, .spokes = 0, .entry_limit = 0.013},
                            plan::Aim{.goal = plan::Goal::Spokes, .share_permille = 0, .spokes = 8, .entry_limit = 0.05},
                            plan::Aim{.goal = plan::Goal::ToEntry, .share_permille = 0, .spokes = 0, .entry_limit = 0.5}}) {
        for (const char* pattern : {"16 interrupted", "16 running", "24 double running", "12 interrupted + 12 running"}) {
            all.file.aim = aim;
            all.file.pattern = pattern_from(pattern).value();
            const auto again = read_case(write_case(all), "w.toml");
            CHECK(test::lines(again) == std::vector<std::string>{});
            if (again) CHECK(*again == all);
        }
    }
}
