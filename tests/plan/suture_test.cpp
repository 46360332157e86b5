#include "plan/sutures.hpp"
#include "sample.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>

using namespace plan;
using sample::from_mm;
using Level = Note::Level;

namespace {

Inputs with(const Pattern& pattern) {
    Inputs inputs = sample::scar();
    inputs.file.pattern = pattern;
    return inputs;
}

std::vector<std::string> clocks(const std::vector<Suture>& order) {
    std::vector<std::string> hours{};
    for (const Suture& one : order) hours.push_back(eye::short_clock_text(measure::centideg(one.centideg)));
    return hours;
}

/// All gaps after the first `count` sutures, hundredths of a degree.
std::set<int> gaps(const std::vector<Suture>& order, std::size_t count) {
    std::vector<int> places{};
    for (std::size_t i = 0; i < count; ++i) places.push_back(order[i].centideg);
    std::sort(places.begin(), places.end());
    std::set<int> found{places.front() + 36000 - places.back()};
    for (std::size_t i = 1; i < places.size(); ++i) found.insert(places[i] - places[i - 1]);
    return found;
}

}  // namespace

// First, opposite, the two at right angles, then halves: Ophthalmologe 2005;102:1128-36 for the second suture; the rest is
// common practice, no source.
TEST_CASE("sixteen and twelve sutures go opposite after opposite") {
    using Hours = std::vector<std::string>;
    CHECK(clocks(make(with({.interrupted = 16})).order) ==
          Hours{"12", "6", "3", "9", "1:30", "7:30", "4:30", "10:30", "12:45", "6:45", "3:45", "9:45", "2:15", "8:15", "5:15", "11:15"});
    CHECK(clocks(make(with({.interrupted = 12})).order) == Hours{"12", "6", "3", "9", "1", "7", "4", "10", "2", "8", "5", "11"});
    CHECK(clocks(make(with({.interrupted = 8})).order) == Hours{"12", "6", "3", "9", "1:30", "7:30", "4:30", "10:30"});
}

TEST_CASE("for every even number each suture is followed by its opposite and no place is sewn twice") {
    for (int count = 2; count <= 32; count += 2) {
        CAPTURE(count);
        const auto order = make(with({.interrupted = count})).order;
        REQUIRE(order.size() == static_cast<std::size_t>(count));
        std::set<int> places{};
        for (std::size_t i = 0; i < order.size(); ++i) {
            places.insert(order[i].centideg);
            CHECK(order[i].n == static_cast<int>(i) + 1);
            CHECK(order[static_cast<std::size_t>(*order[i].opposite - 1)].opposite == order[i].n);
            if (i % 2 == 0) {
                const int across = measure::apart_centideg(measure::centideg(order[i].centideg), measure::centideg(order[i + 1].centideg));
                CHECK(across >= 17999);
            }
        }
        CHECK(places.size() == order.size());
    }
}

TEST_CASE("after 4, 8 and 16 sutures all gaps are equal") {
    for (const int count : {4, 8, 16, 32}) {
        const auto order = make(with({.interrupted = count})).order;
        for (const std::size_t sewn : {4U, 8U, 16U}) {
            if (sewn <= order.size()) CHECK(gaps(order, sewn) == std::set<int>{36000 / static_cast<int>(sewn)});
        }
    }
}

// Chord D sin(pi / N): 7.75 mm gives 2.966, 2.006, 1.512, 1.012; 8.0 mm 3.061, 2.071, 1.561, 1.044 mm for 8, 12, 16, 24.
// The rule that gave even sutures in 50 of 50 grafts: Eur J Ophthalmol, doi 10.1177/1120672120974285.
TEST_CASE("the chord between neighbours is the host diameter times the sine") {
    struct Row {
        double host_mm;
        int count;
        double chord_mm;
    };
    for (const Row& row : {Row{7.75, 8, 2.966}, Row{7.75, 12, 2.006}, Row{7.75, 16, 1.512}, Row{7.75, 24, 1.012}, Row{8, 8, 3.061},
                           Row{8, 12, 2.071}, Row{8, 16, 1.561}, Row{8, 24, 1.044}}) {
        Inputs inputs = with({.interrupted = row.count});
        inputs.file.host_diameter = from_mm(row.host_mm);
        CAPTURE(row.host_mm);
        CAPTURE(row.count);
        CHECK(std::abs(make(inputs).spacing.mm() - row.chord_mm) <= 0.0005);
    }
}

TEST_CASE("sixteen sutures each have their mark; four sit on the donor's dots") {
    const auto order = make(with({.interrupted = 16})).order;
    CHECK(order[0] == Suture{.n = 1, .centideg = 9000, .host_mark = 1, .between = {}, .donor_mark = 1, .opposite = 2});
    CHECK(order[1] == Suture{.n = 2, .centideg = 27000, .host_mark = 9, .between = {}, .donor_mark = 3, .opposite = 1});
    CHECK(order[2].donor_mark == 2);
    CHECK(order[3].donor_mark == 4);
    CHECK(order[5] == Suture{.n = 6, .centideg = 22500, .host_mark = 11, .between = {}, .donor_mark = {}, .opposite = 5});
    CHECK(sample::note(make(with({.interrupted = 16})), "off-the-marks") == nullptr);
}

TEST_CASE("twelve sutures on sixteen marks fall between them, and the plan says so") {
    const Plan plan = make(with({.interrupted = 12}));
    CHECK(plan.order[4].between == std::pair(2, 3));
    CHECK_FALSE(plan.order[4].host_mark.has_value());
    CHECK(plan.order[4].between_permille == 333);  // 1 o'clock, a third of the way
    CHECK(plan.order[5].between_permille == 333);  // 7 o'clock, opposite
    CHECK(plan.order[8].between_permille == 667);  // 2 o'clock
    CHECK(sample::says(plan, "off-the-marks", Level::Info));
}

TEST_CASE("the order starts where the surgeon says") {
    Inputs inputs = with({.interrupted = 8});
    inputs.file.first_suture = eye::from_clock(10, 30);
    CHECK(clocks(make(inputs).order) == std::vector<std::string>{"10:30", "4:30", "1:30", "7:30", "12", "6", "3", "9"});
}

TEST_CASE("a running suture alone lists its loops clockwise, with no opposite") {
    const Plan plan = make(with({.interrupted = 0, .loops = 24, .running = 2}));
    REQUIRE(plan.order.size() == 24);
    CHECK(clocks(plan.order)[1] == "12:30");
    CHECK_FALSE(plan.order[1].opposite.has_value());
    REQUIRE(plan.running.has_value());
    CHECK(plan.running->sutures == 2);
    CHECK(plan.running->spacing == plan.spacing);
}

TEST_CASE("interrupted with a running one keeps both spacings") {
    const Plan plan = make(with({.interrupted = 8, .loops = 16, .running = 1}));
    CHECK(plan.order.size() == 8);
    CHECK(std::abs(plan.spacing.mm() - 7.5 * std::sin(3.14159265358979 / 8)) < 1e-6);
    CHECK(std::abs(plan.running->spacing.mm() - 7.5 * std::sin(3.14159265358979 / 16)) < 1e-6);
    CHECK(sample::says(plan, "running-between", Level::Info));
}

// Marks are what the profile says: odd numbers, none, or a ring that is seated with mark 1 elsewhere.
TEST_CASE("sutures find their marks on any ring") {
    Inputs inputs = with({.interrupted = 8});
    inputs.trephine.marks = 7;
    CHECK(make(inputs).order[0].host_mark == 1);
    CHECK(make(inputs).order[1].between == std::pair(4, 5));
    CHECK(make(inputs).order[1].between_permille == 500);
    inputs.trephine.marks = 0;
    const Plan unmarked = make(inputs);
    CHECK(std::none_of(unmarked.order.begin(), unmarked.order.end(), [](const Suture& s) { return s.host_mark || s.between; }));
    CHECK(sample::note(make(inputs), "off-the-marks") == nullptr);
    inputs.trephine.marks = 16;
    inputs.trephine.mark_offset = measure::centideg(-2250);
    CHECK(make(inputs).order[0].host_mark == 16);
    CHECK(make(inputs).order[2].host_mark == 4);
}

TEST_CASE("the seat turns the picture, never the plan") {
    Inputs inputs = with({.interrupted = 16});
    const Plan head = make(inputs);
    inputs.file.seat = eye::Seat::Temporal;
    CHECK(make(inputs) == head);
}

TEST_CASE("a running suture alone is sewn from its start, clockwise") {
    Inputs inputs = with({.interrupted = 0, .loops = 16, .running = 1});
    inputs.file.first_suture = eye::from_clock(3, 0);
    const auto paths = running_paths(inputs.file.pattern, *make(inputs).running);
    REQUIRE(paths.size() == 1);
    CHECK(paths[0].clockwise);
    REQUIRE(paths[0].bites.size() == 16);
    CHECK(paths[0].bites[0] == eye::from_clock(3, 0));
    CHECK(paths[0].bites[4] == eye::from_clock(6, 0));
}

TEST_CASE("a second running suture goes the other way round, its bites between those of the first") {
    const Inputs inputs = with({.interrupted = 0, .loops = 12, .running = 2});
    const auto paths = running_paths(inputs.file.pattern, *make(inputs).running);
    REQUIRE(paths.size() == 2);
    CHECK_FALSE(paths[1].clockwise);
    CHECK(paths[1].bites[0] == eye::from_clock(11, 30));
    CHECK(paths[1].bites[1] == eye::from_clock(10, 30));
    CHECK(sample::says(make(inputs), "running-second", Level::Info));
}

TEST_CASE("bites of a running suture never meet an interrupted one, whatever the two numbers") {
    for (int interrupted = 4; interrupted <= 32; interrupted += 2) {
        for (int loops = 4; loops <= 64; ++loops) {
            const Inputs inputs = with({.interrupted = interrupted, .loops = loops, .running = 1});
            const Plan plan = make(inputs);
            int least = 36000;
            const auto paths = running_paths(inputs.file.pattern, *plan.running);
            for (const Angle bite : paths[0].bites) {
                for (const Suture& one : plan.order) {
                    least = std::min(least, measure::apart_centideg(bite, measure::centideg(one.centideg)));
                }
            }
            CAPTURE(interrupted);
            CAPTURE(loops);
            CHECK(least >= 36000 / (2 * std::lcm(interrupted, loops)) - 2);
        }
    }
}

TEST_CASE("an odd number has no opposites and is refused") { CHECK(sample::refused(make(with({.interrupted = 15})), "odd-sutures")); }
