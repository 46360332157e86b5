#include "plan/wall.hpp"
#include "sample.hpp"

#include <doctest/doctest.h>

using namespace plan;
using sample::from_mm;
using sample::from_um;
using sample::reading;
using Level = Note::Level;

// Carried to the cut by the profile of 80 normal eyes (Acta Ophthalmol, year not known); the fit's own algebra is
// tested in tests/eye.
TEST_CASE("three directions within 0.25 mm of the cut make a circle") {
    Inputs inputs = sample::scar();
    inputs.file.thickness.readings = {reading(7.25, "12:00", 640), reading(7.75, "4:00", 640), reading(7.5, "8:00", 640)};
    CHECK(wall_from(inputs.file).wall->basis == "circle");
    inputs.file.thickness.readings[0].ring = from_mm(7.2499);
    CHECK(wall_from(inputs.file).wall->basis == "centre");
    inputs.file.thickness.readings = {reading(7.5, "12:00", 640), reading(7.5, "4:00", 640), reading(7.5, "4:00", 641)};
    CHECK(wall_from(inputs.file).wall->basis == "centre");
}

TEST_CASE("the wall stands to a tenth of a micrometre, with where and how sure") {
    const auto found = wall_from(sample::scar().file);
    REQUIRE(found.wall.has_value());
    CHECK(found.wall->basis == "circle");
    CHECK(found.wall->thinnest <= from_um(612));
    CHECK(found.wall->thinnest.nm() % 100 == 0);
    CHECK(found.wall->profile.size() == 360);
    CHECK_FALSE(found.wall->rms.has_value());
    CHECK_FALSE(found.depth_bar.has_value());
}

// Repeatability of one reading: Cornea 2000;19:792-5 (ultrasound 8.3, slit scanning 4.9 um); Cornea 2013;32(12) (OCT at the
// edge 4.1 to 6.4 um); Eye Vis 2016;3:6 (Scheimpflug 4.8 um).
TEST_CASE("each instrument has its own scatter") {
    CHECK(reading_sd(Method::Ultrasound) == from_um(8));
    CHECK(reading_sd(Method::Oct) == from_um(6));
    CHECK(reading_sd(Method::Scheimpflug) == from_um(5));
    CHECK(reading_sd(Method::SlitScanning) == from_um(5));
}

TEST_CASE("readings on one side of the cut are refused and plan nothing [H-04]") {
    Inputs inputs = sample::scar();
    inputs.file.thickness.readings = {reading(7.5, "12:00", 640), reading(7.5, "1:00", 645), reading(7.5, "2:00", 650)};
    const Plan plan = make(inputs);
    CHECK(sample::refused(plan, "circle-fit-refused"));
    CHECK_FALSE(plan.wall.has_value());
    CHECK(plan.order.size() == 16);
}

TEST_CASE("nine readings on two rings are a map, eight are not; the centre counts as one and as a ring") {
    Inputs inputs = sample::centre();
    for (const char* clock : {"12:00", "3:00", "6:00", "9:00"}) {
        inputs.file.thickness.readings.push_back(reading(5, clock, 580));
        inputs.file.thickness.readings.push_back(reading(9, clock, 680));
    }
    CHECK(make(inputs).wall->basis == "map");
    CHECK(surface_from(inputs.file).has_value());
    inputs.file.thickness.readings.pop_back();
    CHECK(make(inputs).wall->basis == "centre");
    CHECK_FALSE(surface_from(inputs.file).has_value());
}

TEST_CASE("a map that does not reach the cut is refused, and never silently read as its centre [H-04]") {
    const Plan plan = make(sample::map(2, 4));
    CHECK(sample::refused(plan, "map-fit-refused"));
    CHECK_FALSE(plan.wall.has_value());
    Inputs line = sample::centre();
    for (const double ring : {3.0, 5.0, 6.0, 9.0}) {
        for (const char* clock : {"12:00", "6:00"}) line.file.thickness.readings.push_back(reading(ring, clock, 600));
    }
    CHECK(sample::refused(make(line), "map-fit-open"));
}

TEST_CASE("the thinnest of a map is never above a reading on the cut") {
    Inputs inputs = sample::map(5, 9);
    const Length before = make(inputs).wall->thinnest;
    inputs.file.thickness.readings.push_back(reading(7.5, "1:30", 570));
    const Wall wall = *make(inputs).wall;
    CHECK(wall.basis == "map");
    CHECK(wall.thinnest == from_um(570));
    CHECK(wall.thinnest < before);
    CHECK(wall.thinnest_at == measure::whole_deg(45));
    // Off the centre the same reading is not on the cut.
    inputs.file.centre_x = from_mm(-0.5);
    CHECK(make(inputs).wall->thinnest > from_um(570));
}

TEST_CASE("a map of a cut off the centre is thinnest towards the centre") {
    Inputs inputs = sample::map(5, 9);
    inputs.file.centre_x = from_mm(0.4);
    const Wall wall = *make(inputs).wall;
    CHECK(wall.thinnest_at == measure::whole_deg(180));
    CHECK(wall.thinnest == measure::from_um_tenths(540 * (1 + 0.0088 * 3.35 * 3.35)));
}

TEST_CASE("a reading that the others do not bear out is named by its number, used, and widens the uncertainty") {
    Inputs inputs = sample::map(5, 9);
    const Plan plain = make(inputs);
    auto& wrong = inputs.file.thickness.readings[5];
    wrong.thickness = wrong.thickness + from_um(80);
    const Plan plan = make(inputs);
    const Note* odd = sample::note(plan, "reading-odd");
    REQUIRE(odd != nullptr);
    CHECK(odd->level == Level::Watch);
    CHECK(odd->values.at(0) == "6");
    CHECK(odd->values.at(4) == "+80");
    CHECK(sample::says(plan, "map-scatter", Level::Watch));
    CHECK(plan.wall->u > plain.wall->u);
    CHECK(sample::note(plain, "reading-odd") == nullptr);
}

// Cornea 2013;32:257-61: in keratoconus the edge cannot be told from the centre. IOVS 2011;52:206-14: nor in oedema.
TEST_CASE("a central reading alone plans no depth unless the edge looks normal, and never in keratoconus or oedema [H-04]") {
    Inputs inputs = sample::centre();
    CHECK(make(inputs).target.has_value());
    for (const Reason reason : {Reason::Scar, Reason::Dystrophy, Reason::Regraft, Reason::Infection, Reason::Trauma, Reason::Other}) {
        inputs.file.reason = reason;
        inputs.file.thickness.edge_looks_normal = true;
        CHECK_FALSE(make(inputs).ladder.empty());
        inputs.file.thickness.edge_looks_normal = false;
        CHECK(sample::refused(make(inputs), "centre-alone"));
    }
    inputs.file.thickness.edge_looks_normal = true;
    inputs.file.reason = Reason::Keratoconus;
    CHECK(sample::refused(make(inputs), "centre-never-in-keratoconus"));
    inputs.file.reason = Reason::Oedema;
    CHECK(sample::refused(make(inputs), "centre-never-in-oedema"));
    CHECK(make(inputs).wall->basis == "centre");
}

TEST_CASE("a depth from the centre is marked as an estimate and its aim is capped at 70 %") {
    const Plan plan = make(sample::centre());
    CHECK(sample::says(plan, "estimate-from-centre", Level::Watch));
    CHECK(sample::says(plan, "aim-capped", Level::Watch));
    CHECK(plan.target->share_permille == 700);
    Inputs low = sample::centre();
    low.file.aim.share_permille = 650;
    CHECK(make(low).target->share_permille == 650);
    CHECK(sample::note(make(low), "aim-capped") == nullptr);
}

TEST_CASE("no reading that can be used is said as such") {
    Inputs inputs = sample::scar();
    inputs.file.thickness.central = std::nullopt;
    inputs.file.thickness.readings = {reading(5, "12:00", 600)};
    CHECK(sample::refused(make(inputs), "too-few-readings"));
}

TEST_CASE("readings that scatter by over 30 um about the fit are flagged") {
    Inputs inputs = sample::scar();
    auto& readings = inputs.file.thickness.readings;
    readings = {};
    for (int hour = 1; hour <= 12; ++hour) {
        readings.push_back({.ring = from_mm(7.5), .at = eye::from_clock(hour, 0), .thickness = from_um(hour % 3 == 0 ? 700 : 640)});
    }
    CHECK(sample::note(make(inputs), "residual-large") == nullptr);
    for (auto& one : readings) one.thickness = one.thickness > from_um(650) ? from_um(720) : from_um(640);
    CHECK(sample::says(make(inputs), "residual-large", Level::Watch));
}

TEST_CASE("readings that an estimate from the centre leaves out are told, and a thinner one forbids a depth [H-04]") {
    Inputs inputs = sample::scar();
    inputs.file.thickness.central = from_um(540);
    inputs.file.thickness.edge_looks_normal = true;
    inputs.file.thickness.readings = {};
    CHECK(sample::note(make(inputs), "readings-left-out") == nullptr);
    REQUIRE(make(inputs).target.has_value());
    inputs.file.thickness.readings = {reading(7.5, "6:00", 700)};
    CHECK(sample::says(make(inputs), "readings-left-out", Level::Watch));
    REQUIRE(make(inputs).target.has_value());
    inputs.file.thickness.readings = {reading(7.5, "6:00", 400)};
    CHECK(sample::refused(make(inputs), "reading-under-estimate"));
    CHECK_FALSE(make(inputs).target.has_value());
}

TEST_CASE("an offset of the cut that readings on its ring do not carry is told") {
    Inputs inputs = sample::scar();
    CHECK(sample::note(make(inputs), "offset-not-in-readings") == nullptr);
    inputs.file.centre_y = from_mm(0.8);
    CHECK(make(inputs).wall->basis == "circle");
    CHECK(sample::says(make(inputs), "offset-not-in-readings", Level::Watch));
}

TEST_CASE("a map is not carried outside its readings [H-04]") {
    Inputs inputs = sample::scar();
    inputs.file.host_diameter = from_mm(8.0);
    inputs.file.thickness.central = from_um(540);
    const auto ring = [&](double mm) {
        inputs.file.thickness.readings = {};
        for (const char* hour : {"12:00", "1:30", "3:00", "4:30", "6:00", "7:30", "9:00", "10:30"})
            inputs.file.thickness.readings.push_back(reading(mm, hour, 620));
    };
    ring(7.6);  // 0.2 mm inside the cut all round
    CHECK(make(inputs).wall->basis == "map");
    ring(7.4);  // 0.3 mm
    CHECK(sample::refused(make(inputs), "map-fit-refused"));
    CHECK_FALSE(make(inputs).wall.has_value());
}

// Three readings leave no residual: 640, 641 and 940 um put the wall 100 um under all of them, which no eye does.
TEST_CASE("a fit that swings far under all its readings is told, though none of them can be named") {
    Inputs inputs = sample::scar();
    inputs.file.thickness.readings = {reading(7.5, "12:00", 640), reading(7.5, "4:00", 641), reading(7.5, "8:00", 940)};
    CHECK(sample::says(make(inputs), "fit-under-readings", Level::Watch));
    inputs.file.thickness.readings.back().thickness = from_um(650);
    CHECK(sample::note(make(inputs), "fit-under-readings") == nullptr);
}
