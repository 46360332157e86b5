// A count that differs, from the screen alone: told by one, seen by the other, recorded with a reason by a hold.
// Resolved or recorded: perioperative nurses' recommended practice 2006; the form is the project's.
#include "screen/desk.hpp"
#include "screen/models.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace models;

namespace {

/// The page that a target turns to, as a list to choose from.
screen::PickModel turned(const Seen& seen, const screen::Target& target) {
    return screen::page(seen.at.state, screen::after({}, std::get<screen::Show>(target.act)), seen.around, words());
}

void tap(Seen& seen, const screen::Target& target) {
    for (const auto& intent : std::get<std::vector<guide::Intent>>(target.act)) REQUIRE(seen.at.does(intent));
}

}  // namespace

TEST_CASE("a difference is told, seen by the other one and recorded, by targets alone [H-13]") {
    Seen seen("opening-count");
    REQUIRE(seen.at.does(guide::MoveItems{.item = "needles", .by = 4}));
    CHECK(find(seen.hand(), "record-difference") == nullptr);

    const auto otherwise = turned(seen, *find(seen.hand(), "something-else"));
    const auto items = turned(seen, *find(otherwise.choices, "count-differs"));
    const auto numbers = turned(seen, *find(items.choices, "differs-needles"));
    CHECK(find(numbers.choices, "seen-4") == nullptr);  // what is expected is no difference
    CHECK(find(numbers.choices, "seen-3")->line == "1 missing");
    CHECK(find(numbers.choices, "seen-5")->line == "1 too many");
    const auto who = turned(seen, *find(numbers.choices, "seen-3"));
    CHECK(find(who.choices, "by-1")->line == "sees 3");
    CHECK(find(seen.hand(), "check-scrub")->look == screen::Look::Filled);
    tap(seen, *find(who.choices, "by-1"));
    REQUIRE(seen.table().card.cautions.size() == 1);
    CHECK(seen.table().card.cautions.front().find("3 seen, 4 expected") != std::string::npos);
    CHECK(find(seen.hand(), "check-circulating")->look == screen::Look::Hollow);
    CHECK(find(seen.hand(), "check-circulating")->line == "if all are there now");
    CHECK(screen::desk(seen.at.state, {}, seen.around, words()).counts.front().value == "3 seen, 4 expected");

    tap(seen, *find(seen.hand(), "also-sees"));
    CHECK(find(seen.hand(), "also-sees") == nullptr);
    const auto reasons = turned(seen, *find(seen.hand(), "record-difference"));
    REQUIRE(!reasons.choices.empty());
    CHECK(std::all_of(reasons.choices.begin(), reasons.choices.end(),
                      [](const screen::Target& one) { return one.press == screen::Press::Hold; }));
    tap(seen, reasons.choices.front());
    CHECK(guide::current_step(seen.at.state)->id != "opening-count");
}

TEST_CASE("a recount that agrees settles a difference and nothing is left to record") {
    Seen seen("opening-count");
    REQUIRE(seen.at.does(guide::MoveItems{.item = "needles", .by = 4}));
    const std::string scrub = seen.at.state.brief.unit.scrub_name;
    REQUIRE(seen.at.does(guide::CheckCount{.item = "needles", .seen = 3, .by = scrub}));
    tap(seen, *find(seen.hand(), "check-scrub"));
    CHECK(find(seen.hand(), "also-sees") == nullptr);
    tap(seen, *find(seen.hand(), "check-circulating"));
    CHECK(guide::current_step(seen.at.state)->id != "opening-count");
}
