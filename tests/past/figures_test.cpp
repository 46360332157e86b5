#include "past/figures.hpp"

#include <doctest/doctest.h>

using namespace past;
using doctest::Approx;
using guide::CaseEnd;
using guide::CutEnd;
using measure::from_um;

namespace {

struct Row {
    std::string reference{};
    int day = 1;
    double minutes = 10;
    CutEnd end = CutEnd::AtPlan;
    int position = 8;
    double depth_um = 0;
};

/// Plan of 8 spokes of 60 um in a wall of 600 um.
Summary one(const Row& row) {
    Summary made{.reference = row.reference, .day = {2026, 11, row.day}, .end = CaseEnd::Done};
    made.times = {{.id = "open-sky", .ms = static_cast<std::int64_t>(row.minutes * 60'000), .exact = true}};
    made.cut = Cut{.end = row.end, .seatings = 1, .position = row.position, .planned = 8, .travel = row.position * from_um(60)};
    made.cut->thinnest = from_um(600);
    if (row.depth_um > 0) made.cut->depth = from_um(row.depth_um);
    return made;
}

std::vector<std::string> names(const Figures& made) {
    std::vector<std::string> all;
    for (const Summary& summary : made.list) all.push_back(summary.reference);
    return all;
}

using Names = std::vector<std::string>;

}  // namespace

TEST_CASE("no case gives no figure and no rate of nothing") {
    const Figures made = figures({}, {});
    CHECK(made == Figures{});
    CHECK_FALSE(made.done);
    CHECK_FALSE(made.cuts.entered);
}

TEST_CASE("open cases and rehearsals are left out and counted; days at both ends of a range are in it") {
    Summary open = one({"K-5", 5});
    open.end.reset();
    Summary invented = one({"K-6", 6});
    invented.invented = true;
    const std::vector<Summary> all{one({"K-1", 1}), one({"K-3", 3}), one({"K-2", 2}), one({"K-4", 4}), open, invented};
    const Figures made = figures(all, {.from = Day{2026, 11, 2}, .to = Day{2026, 11, 3}});
    CHECK(names(made) == Names{"K-3", "K-2"});
    CHECK(made.left_out == LeftOut{.open = 1, .invented = 1, .filtered = 2});
    CHECK(names(figures(all, {.invented = true})) == Names{"K-6"});
    CHECK(figures(all, {.invented = true}).left_out.invented == 5);
}

TEST_CASE("a filter by eye and by reason leaves the others out") {
    Summary left = one({"K-1"}), oedema = one({"K-2"});
    left.side = eye::Side::Left;
    oedema.reason = plan::Reason::Oedema;
    CHECK(names(figures({left, oedema}, {.side = eye::Side::Left})) == Names{"K-1"});
    CHECK(names(figures({left, oedema}, {.reason = plan::Reason::Oedema})) == Names{"K-2"});
}

TEST_CASE("times are those of cases done to the end, with what went by the wall clock counted") {
    std::vector<Summary> all{one({"K-1", 1, 4}), one({"K-2", 1, 2}), one({"K-3", 1, 3}), one({"K-4", 1, 1}), one({"K-5", 1, 99})};
    all[4].end = CaseEnd::Abandoned;
    all[0].times[0].exact = false;
    const Figures made = figures(all, {});
    REQUIRE(made.times.size() == 1);
    CHECK(made.times[0].id == "open-sky");
    CHECK(made.times[0].seconds == Quartiles{.n = 4, .least = 60, .q1 = 105, .median = 150, .q3 = 195, .most = 240});
    CHECK(made.times[0].about == 1);
    CHECK(made.done->events == 4);
    CHECK(made.abandoned->events == 1);
}

TEST_CASE("spokes are held to the plan where a number was planned and the cut did not enter") {
    std::vector<Summary> all{one({"K-1", 1, 1, CutEnd::AtPlan, 8}),   one({"K-2", 1, 1, CutEnd::Surgeon, 7}),
                             one({"K-3", 1, 1, CutEnd::Surgeon, 10}), one({"K-4", 1, 1, CutEnd::Entered, 5}),
                             one({"K-5", 1, 1, CutEnd::AtPlan, 8}),   one({"K-6", 1, 1, CutEnd::AtPlan, 20})};
    all[4].cut->planned.reset();
    all[5].cut->seatings = 2;
    const Cuts made = figures(all, {}).cuts;
    CHECK(made.ended == 6);
    CHECK(made.second_seatings == 1);
    CHECK(made.as_planned == 1);
    CHECK(made.fewer == 1);
    CHECK(made.more == 1);
    CHECK(made.more_by == Quartiles{.n = 3, .least = -1, .q1 = -0.5, .median = 0, .q3 = 1, .most = 2});
    CHECK(made.entered->events == 1);
    CHECK(made.entered->of == 6);
}

TEST_CASE("entries stand by the share of the wall at which the cut ended, each with its interval") {
    const std::vector<Summary> all{one({"K-1", 1, 1, CutEnd::AtPlan, 7}), one({"K-2", 1, 1, CutEnd::Entered, 7}),
                                   one({"K-3", 1, 1, CutEnd::AtPlan, 6}), one({"K-4", 1, 1, CutEnd::Entered, 10}),
                                   one({"K-5", 1, 1, CutEnd::Entered, 9})};
    const auto made = figures(all, {}).cuts.by_share;
    REQUIRE(made.size() == 4);
    CHECK(made[0].from == 0.6);
    CHECK(made[0].entered.of == 1);
    CHECK(made[1].from == 0.7);
    CHECK(made[1].entered == *wilson(1, 2));
    CHECK(made[2].from == 0.9);
    CHECK(made[3].from == 1.0);
    CHECK(made[3].entered == *wilson(1, 1));
}

// Depths of 480 um travel chosen so that the reaches are R's example 1.02, 1.10, 0.95, 1.08, 1.00: mean 1.03, SD 0.0608276253029823.
TEST_CASE("the unit's own reach comes from measured depths alone, three at the least") {
    std::vector<Summary> all;
    for (const double reach : {1.02, 1.10, 0.95, 1.08, 1.00}) {
        all.push_back(one({"K-" + std::to_string(all.size()), 1, 1, CutEnd::AtPlan, 8, reach * 480}));
    }
    all.push_back(one({"K-9"}));
    const Cuts made = figures(all, {}).cuts;
    CHECK(made.measured == 5);
    REQUIRE(made.reach);
    CHECK(made.reach->mean == Approx(1.03).epsilon(1e-9));
    CHECK(made.reach->sd == Approx(0.0608276253029823).epsilon(1e-9));
    all.erase(all.begin() + 2, all.begin() + 5);
    CHECK(figures(all, {}).cuts.measured == 2);
    CHECK_FALSE(figures(all, {}).cuts.reach);
}

TEST_CASE("what was still to go: the rest of the phase that runs and all later ones, of cases that ran longer in it") {
    std::vector<Summary> all;
    for (int i = 1; i <= 7; ++i) {
        Summary timed = one({"K-" + std::to_string(i)});
        timed.times = {{.id = "host", .ms = i * 60'000}, {.id = "suturing", .ms = 600'000}, {.id = "closing", .ms = 300'000 + i * 1000}};
        all.push_back(timed);
    }
    // Two and a half minutes in: the cases of 3 to 7 minutes, 0.5 to 4.5 minutes, 10 and 5 minutes with 3 to 7 s beside: by hand.
    const auto rest = still_to_go(all, {"host", "suturing", "closing"}, 150);
    REQUIRE(rest);
    CHECK(rest->n == 5);
    CHECK(rest->least == Approx(30 + 600 + 303));
    CHECK(rest->median == Approx(150 + 600 + 305));
    CHECK(rest->most == Approx(270 + 600 + 307));
    CHECK_FALSE(still_to_go(all, {"host", "suturing", "closing"}, 180));  // the case of just 3 minutes was over by then: four are left
    CHECK_FALSE(still_to_go(all, {}, 0));
    CHECK_FALSE(still_to_go(all, {"host", "suturing", "debrief"}, 0));
    all[4].end = CaseEnd::Abandoned;
    CHECK_FALSE(still_to_go(all, {"host", "suturing", "closing"}, 150));
}

TEST_CASE("a reach is one trephine's: cuts with several give none until one is asked for") {
    std::vector<Summary> all;
    for (const double reach : {1.02, 1.10, 0.95, 1.2}) {
        all.push_back(one({"K-" + std::to_string(all.size()), 1, 1, CutEnd::AtPlan, 8, reach * 480}));
        all.back().trephine = reach > 1.15 ? "turns-62" : "suction-60";
    }
    const Cuts mixed = figures(all, {}).cuts;
    CHECK(mixed.measured == 4);
    CHECK(mixed.measured_with == std::set<std::string>{"suction-60", "turns-62"});
    CHECK_FALSE(mixed.reach);
    const Figures asked = figures(all, {.trephine = "suction-60"});
    REQUIRE(asked.cuts.reach);
    CHECK(asked.cuts.reach->n == 3);
    CHECK(asked.cuts.reach->mean == Approx((1.02 + 1.10 + 0.95) / 3).epsilon(1e-9));
    CHECK(asked.left_out.filtered == 1);
}

TEST_CASE("departures and counts that differed are told by case, the most frequent first") {
    std::vector<Summary> all{one({"K-1"}), one({"K-2"}), one({"K-3"})};
    all[0].departures = {"patient-moved", "suction-lost"};
    all[1].departures = {"suction-lost"};
    all[2].counts_differed = 2;
    const Figures made = figures(all, {});
    REQUIRE(made.departures.size() == 2);
    CHECK(made.departures[0] == DepartureRate{.id = "suction-lost", .cases = *wilson(2, 3)});
    CHECK(made.departures[1] == DepartureRate{.id = "patient-moved", .cases = *wilson(1, 3)});
    CHECK(*made.counts_differed == *wilson(1, 3));
}
