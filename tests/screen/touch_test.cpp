#include "screen/touch.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

using namespace screen;

namespace {

const picture::Box wide{100, 20, 60, 60};

Touchable spoke() { return {{.id = "spoke", .weight = Weight::Spoke, .look = Look::Filled}, wide}; }
Touchable tied(int n) { return {{.id = "tied-" + std::to_string(n), .weight = Weight::Theatre, .look = Look::Filled}, wide}; }
Touchable elsewhere() { return {{.id = "key", .weight = Weight::Elsewhere}, {0, 0, 15, 15}}; }
Touchable held() { return {{.id = "lock", .press = Press::Hold, .weight = Weight::Theatre, .look = Look::Filled}, wide}; }

/// What happens on the glass: a press on a target, a drag, a lifted finger.
struct Report {
    enum class Is { Down, Move, Up } is{};
    std::int64_t at_ms = 0;
    Touchable on{};
    picture::Point at{};
};
using Reports = std::vector<Report>;

Report down(std::int64_t at_ms, const Touchable& on) { return {Report::Is::Down, at_ms, on, on.box.centre()}; }
Report move(std::int64_t at_ms, picture::Point at) { return {Report::Is::Move, at_ms, {}, at}; }
Report up(std::int64_t at_ms) { return {Report::Is::Up, at_ms, {}, {}}; }

struct Sums {
    int counted = 0, bounced = 0;
    std::string last{};  // id of the last target counted
    bool operator==(const Sums&) const = default;
};

class Player {
public:
    Player& meet(const Report& report) {
        switch (report.is) {
            case Report::Is::Down:
                return take(touch.press({report.on}, report.at, report.at_ms));
            case Report::Is::Move:
                touch.move(report.at);
                return *this;
            case Report::Is::Up:
                return take(touch.release(report.at_ms));
        }
        return *this;
    }
    Player& tick(std::int64_t at_ms) { return take(touch.tick(at_ms)); }

    Touch touch{};
    Sums sums{};

private:
    Player& take(const Outcome& outcome) {
        if (const auto* counted = std::get_if<Counted>(&outcome)) ++sums.counted, sums.last = counted->target.id;
        if (std::holds_alternative<Bounced>(outcome)) ++sums.bounced;
        return *this;
    }
};

/// Reports handed over as a program that draws `fps` frames a second meets them: those since the last frame, then a tick.
Sums played(const Reports& reports, int fps) {
    Player player;
    std::size_t next = 0;
    for (int frame = 0; next < reports.size() || frame < 2 * fps; ++frame) {
        const std::int64_t now = frame * std::int64_t{1000} / fps;
        for (; next < reports.size() && reports[next].at_ms <= now; ++next) player.meet(reports[next]);
        player.tick(now);
    }
    return player.sums;
}

constexpr int rates[] = {5, 10, 24, 30, 60, 90, 120, 144};

}  // namespace

TEST_CASE("a tap counts on press, whatever becomes of the release") {
    Player player;
    CHECK(player.meet(down(0, spoke())).sums.counted == 1);
    CHECK(player.meet(move(40, {0, 0})).meet(up(60)).sums.counted == 1);  // dragged off: the count stays, and stays one
    CHECK(player.meet(down(400, spoke())).sums.counted == 2);
    CHECK(player.meet(down(800, spoke())).sums.counted == 3);  // the release was smeared away
}

TEST_CASE("the number of counted spokes is the number of presses, from 5 to 144 frames a second") {
    // Spokes said one after the other, a double tap to catch up (150 ms apart), lost releases, drags; look.md, Touch.
    Reports reports;
    std::int64_t at = 20;
    int presses = 0;
    for (const int gap : {900, 700, 150, 1100, 150, 150, 640, 333, 120, 110, 1800, 215}) {
        reports.push_back(down(at, spoke()));
        ++presses;
        if (presses % 3 != 0) reports.push_back(move(at + 30, {0, 0}));
        if (presses % 2 == 0) reports.push_back(up(at + 60));
        at += gap;
    }
    for (const int fps : rates) {
        CAPTURE(fps);
        CHECK(played(reports, fps) == Sums{presses, 0, "spoke"});
    }
}

TEST_CASE("bounces are told and not counted, the same at every frame rate") {
    Reports reports;
    for (const int at : {100, 160, 1000, 1109, 2000, 2110, 3000, 3040, 3080}) reports.push_back(down(at, spoke()));
    for (const int fps : rates) {
        CAPTURE(fps);
        CHECK(played(reports, fps) == Sums{5, 4, "spoke"});  // counted: 100, 1000, 2000, 2110, 3000
    }
}

TEST_CASE("the refractory time is 110 ms on spokes, 2 s on what closes a step, 300 ms elsewhere") {
    struct Row {
        std::string name{};
        Touchable on{};
        std::int64_t gap = 0;
        int counted = 0;
    };
    const Row rows[] = {
        {"spoke, 109 ms", spoke(), 109, 1},  {"spoke, 110 ms", spoke(), 110, 2},         {"step, 1999 ms", tied(1), 1999, 1},
        {"step, 2000 ms", tied(1), 2000, 2}, {"elsewhere, 299 ms", elsewhere(), 299, 1}, {"elsewhere, 300 ms", elsewhere(), 300, 2},
    };
    for (const auto& row : rows) {
        CAPTURE(row.name);
        Player player;
        player.meet(down(0, row.on)).meet(down(row.gap, row.on));
        CHECK(player.sums.counted == row.counted);
        CHECK(player.sums.bounced == 2 - row.counted);
    }
}

TEST_CASE("a second touch on 'Suture tied' does not reach the next label") {
    Player player;
    player.meet(down(0, tied(6))).meet(down(180, tied(7)));
    CHECK(player.sums == Sums{1, 1, "tied-6"});
    CHECK(player.meet(down(2100, tied(7))).sums == Sums{2, 1, "tied-7"});
}

TEST_CASE("a double tap on the step before the cut is no spoke; what comes after it is") {
    // Half a second for a double tap is common practice, no source.
    const Touchable suction{{.id = "suction-on", .weight = Weight::Theatre, .look = Look::Filled}, wide};
    Player player;
    CHECK(player.meet(down(0, suction)).meet(down(200, spoke())).meet(down(499, spoke())).sums == Sums{1, 2, "suction-on"});
    CHECK(player.meet(down(500, spoke())).sums == Sums{2, 2, "spoke"});
}

TEST_CASE("a bounce does not put off the next count") {
    Player player;
    player.meet(down(0, spoke())).meet(down(80, spoke())).meet(down(120, spoke()));
    CHECK(player.sums == Sums{2, 1, "spoke"});
}

TEST_CASE("another target answers as soon as a finger can be there, and not to the rest of a hand") {
    const Touchable lost{{.id = "suction-lost", .weight = Weight::Theatre, .look = Look::Watch}, {100, 100, 60, 20}};
    Player player;
    player.meet(down(0, tied(1))).meet(down(80, lost));
    CHECK(player.sums == Sums{2, 0, "suction-lost"});
    Player palm;
    palm.meet(down(0, tied(1))).meet(down(79, lost)).meet(down(140, lost));  // it rolls on
    CHECK(palm.sums == Sums{1, 2, "tied-1"});
    CHECK(palm.meet(down(220, lost)).sums == Sums{2, 2, "suction-lost"});
}

TEST_CASE("the heel of the hand on bare glass or a dead target takes no spoke from the finger") {
    Touchable dead{{.id = "dead", .why_not = "not now"}, {0, 0, 30, 30}};
    Player player;
    player.meet(down(0, dead)).meet({Report::Is::Down, 5, spoke(), {1, 1}}).meet(down(20, spoke()));
    CHECK(player.sums == Sums{1, 0, "spoke"});
}

TEST_CASE("a palm counts once") {
    Reports reports;
    for (const int at : {100, 101, 103, 110, 140}) reports.push_back(down(at, spoke()));
    for (const int fps : rates) CHECK(played(reports, fps).counted == 1);
}

TEST_CASE("a hold counts once after 0.8 s, the same at every frame rate") {
    struct Row {
        std::string name{};
        Reports reports{};
        int counted = 0;
    };
    const picture::Point slack{wide.right() + 7.9, 50}, gone{wide.right() + 8.1, 50};
    const Row rows[] = {
        {"held long", {down(100, held()), up(1250)}, 1},
        {"let go at 799 ms", {down(100, held()), up(899)}, 0},
        {"let go at 800 ms", {down(100, held()), up(900)}, 1},
        {"moved by 7.9 mm", {down(100, held()), move(300, slack), up(1000)}, 1},
        {"moved by 8.1 mm", {down(100, held()), move(300, gone), up(1000)}, 0},
        {"another press came", {down(100, held()), down(500, elsewhere())}, 1},
    };
    for (const auto& row : rows) {
        for (const int fps : rates) {
            CAPTURE(row.name);
            CAPTURE(fps);
            CHECK(played(row.reports, fps).counted == row.counted);
        }
    }
}

TEST_CASE("a dead target counts nothing, nor does bare glass") {
    Touchable dead = spoke();
    dead.target.why_not = "the count is held elsewhere";
    Player player;
    CHECK(player.meet(down(0, dead)).sums == Sums{});
    CHECK(player.meet({Report::Is::Down, 10, spoke(), {1, 1}}).sums == Sums{});
    CHECK(player.meet(down(20, spoke())).sums.counted == 1);
}

TEST_CASE("the finger shows the ring of a hold and the flash of a tap") {
    Player player;
    player.meet(down(0, held()));
    CHECK(player.touch.finger(400).holding == "lock");
    CHECK(player.touch.finger(400).held == doctest::Approx(0.5).epsilon(1e-9));
    CHECK(player.touch.lively(400));
    player.tick(800);
    CHECK(player.touch.finger(810).holding.empty());
    CHECK(player.touch.finger(810).flash == "lock");
    CHECK(player.touch.finger(1000).flash.empty());
    CHECK_FALSE(player.touch.lively(1000));
}
