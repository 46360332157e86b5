#include "sample.hpp"

#include <doctest/doctest.h>

using namespace plan;
using sample::from_um;
using Level = Note::Level;

namespace {

/// An even wall of this thickness, read at twelve places: the thinnest is the figure itself.
Inputs even_wall(double um) {
    Inputs inputs = sample::scar();
    inputs.file.thickness.readings = {};
    for (int hour = 1; hour <= 12; ++hour) {
        inputs.file.thickness.readings.push_back(
            {.ring = inputs.file.host_diameter, .at = eye::from_clock(hour, 0), .thickness = from_um(um)});
    }
    inputs.file.aim.entry_limit = 0.5;
    return inputs;
}

}  // namespace

// Plain division, whole spokes of 60 um rounded down.
TEST_CASE("planned spokes are the whole spokes within the share, exact where binary fractions are not") {
    struct Row {
        double wall_um;
        int permille, spokes;
    };
    for (const Row& row :
         {Row{450, 800, 6}, Row{500, 800, 6}, Row{550, 800, 7}, Row{600, 800, 8}, Row{650, 800, 8}, Row{700, 800, 9}, Row{750, 800, 10},
          Row{450, 900, 6}, Row{500, 900, 7}, Row{550, 900, 8}, Row{600, 900, 9}, Row{650, 900, 9}, Row{700, 900, 10}, Row{750, 900, 11}}) {
        Inputs inputs = even_wall(row.wall_um);
        inputs.file.aim.share_permille = row.permille;
        CAPTURE(row.wall_um);
        CAPTURE(row.permille);
        const Plan plan = make(inputs);
        REQUIRE(plan.target.has_value());
        CHECK(plan.target->spokes == row.spokes);
        CHECK(plan.target->bound_by == Bound::Aim);
        CHECK(plan.target->share_permille == row.permille);
        CHECK(plan.target->raise == 3);
    }
}

TEST_CASE("an advance of 62.5 um is counted as such and asked about") {
    Inputs inputs = even_wall(600);
    inputs.trephine.advance = from_um(62.5);
    CHECK(make(inputs).target->spokes == 7);
    CHECK(travel(inputs.trephine, 7) == measure::nm(437'500));
    CHECK(sample::says(make(inputs), "advance-quoted", Level::Watch));
    CHECK(sample::note(make(even_wall(600)), "advance-quoted") == nullptr);
}

TEST_CASE("the entry limit can only lower the spokes, and the plan says that it did [H-04]") {
    Inputs inputs = even_wall(600);
    inputs.file.aim.share_permille = 900;
    inputs.file.aim.entry_limit = 0.05;
    const Plan plan = make(inputs);
    CHECK(plan.target->spokes == 8);
    CHECK(plan.target->bound_by == Bound::EntryLimit);
    CHECK(plan.ladder[8].entry_chance <= 0.05);
    CHECK(plan.ladder[9].entry_chance > 0.05);
    inputs.file.aim.share_permille = 800;
    CHECK(make(inputs).target->bound_by == Bound::Aim);
    inputs.file.aim.share_permille = 600;
    CHECK(make(inputs).target->spokes == 6);
}

TEST_CASE("where the next spoke breaks both, the aim is named") {
    Inputs inputs = even_wall(600);
    inputs.file.aim.share_permille = 899;
    inputs.file.aim.entry_limit = 0.1;
    CHECK(make(inputs).target->spokes == 8);
    CHECK(make(inputs).target->bound_by == Bound::Aim);
}

TEST_CASE("a plan of no spokes is refused") {
    Inputs inputs = even_wall(600);
    inputs.trephine.advance = from_um(250);
    inputs.file.aim.share_permille = 400;
    CHECK(sample::refused(make(inputs), "no-spokes"));
    inputs.file.aim.share_permille = 420;
    CHECK(make(inputs).target->spokes == 1);
    inputs.file.aim = {.goal = Goal::Spokes, .share_permille = 0, .spokes = 0};
    CHECK(sample::refused(make(inputs), "own-number-zero"));
}

TEST_CASE("the surgeon's own number is taken as given, and a chance over the limit is said") {
    Inputs inputs = even_wall(600);
    inputs.file.aim = {.goal = Goal::Spokes, .share_permille = 0, .spokes = 9, .entry_limit = 0.05};
    const Plan plan = make(inputs);
    CHECK(plan.target->spokes == 9);
    CHECK(plan.target->bound_by == Bound::Surgeon);
    CHECK(plan.target->share_permille == 0);
    CHECK(sample::says(plan, "over-entry-limit", Level::Watch));
    CHECK_FALSE(sample::stopped(plan));
    inputs.file.aim.spokes = 8;
    CHECK(sample::note(make(inputs), "over-entry-limit") == nullptr);
    inputs.file.aim.spokes = 40;
    CHECK(sample::says(make(inputs), "over-entry-limit", Level::Watch));
}

TEST_CASE("the surgeon's own number stands without a ladder, with no depth claim and no refusal") {
    Inputs inputs = sample::centre();
    inputs.file.thickness.edge_looks_normal = false;
    inputs.file.aim = {.goal = Goal::Spokes, .share_permille = 0, .spokes = 7};
    const Plan plan = make(inputs);
    CHECK(plan.ladder.empty());
    CHECK(plan.target->spokes == 7);
    CHECK_FALSE(plan.target->entry_from.has_value());
    CHECK(sample::says(plan, "no-depth-claim", Level::Watch));
    CHECK(sample::says(plan, "centre-alone", Level::Watch));
    CHECK_FALSE(sample::stopped(plan));
}

TEST_CASE("to entry plans no number but says between which spokes to expect it") {
    Inputs inputs = even_wall(600);
    inputs.file.aim = {.goal = Goal::ToEntry};
    const Plan plan = make(inputs);
    CHECK_FALSE(plan.target->spokes.has_value());
    CHECK(plan.target->bound_by == Bound::ToEntry);
    const int from = *plan.target->entry_from;
    const int to = *plan.target->entry_to;
    CHECK(plan.ladder[static_cast<std::size_t>(from)].entry_chance >= 0.10);
    CHECK(plan.ladder[static_cast<std::size_t>(from - 1)].entry_chance < 0.10);
    CHECK(plan.ladder[static_cast<std::size_t>(to)].entry_chance >= 0.90);
    CHECK(plan.ladder[static_cast<std::size_t>(to - 1)].entry_chance < 0.90);
    CHECK(sample::note(plan, "to-entry-range")->values == std::vector<std::string>{std::to_string(from), std::to_string(to)});
}

TEST_CASE("a profile with no usable reach plans no depth") {
    Inputs inputs = even_wall(600);
    inputs.trephine.reach.n = 1;
    CHECK(sample::refused(make(inputs), "reach-unusable"));
    inputs.file.aim = {.goal = Goal::ToEntry};
    CHECK_FALSE(sample::stopped(make(inputs)));
}

// Plain division: 80 % of 900 um is 720 um, 72 spokes of 10 um. The table that is shown ends before; the count does not.
TEST_CASE("a fine advance is counted beyond the rungs that are shown") {
    Inputs inputs = even_wall(900);
    inputs.trephine.advance = from_um(10);
    const Plan plan = make(inputs);
    REQUIRE(plan.target.has_value());
    CHECK(plan.ladder.size() == 60);
    CHECK(plan.target->spokes == 72);
    CHECK(plan.target->bound_by == Bound::Aim);
    REQUIRE(plan.target->entry_from.has_value());
    CHECK(*plan.target->entry_from > 72);
    CHECK(*plan.target->entry_to > *plan.target->entry_from);
}

TEST_CASE("the surgeon's own number is told when it goes through the thinnest place [H-04]") {
    Inputs inputs = even_wall(600);
    inputs.file.aim = {.goal = Goal::Spokes, .spokes = 9};
    CHECK(sample::note(make(inputs), "own-number-through") == nullptr);
    inputs.file.aim.spokes = 10;
    CHECK(sample::says(make(inputs), "own-number-through", Level::Watch));
    inputs.file.aim.spokes = 200;
    CHECK(sample::says(make(inputs), "own-number-through", Level::Watch));
    CHECK(sample::says(make(inputs), "over-entry-limit", Level::Watch));
}
