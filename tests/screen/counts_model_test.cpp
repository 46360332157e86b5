// A count that differs, from the screen alone: told by one, seen by the other, recorded with a reason by a hold.
// Resolved or recorded: perioperative nurses' recommended practice 2006; the form is the project's.
#include "screen/desk.hpp"
#include "screen/letters.hpp"
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
    CHECK(find(seen.hand(), "record-difference") == std::nullopt);

    const auto otherwise = turned(seen, *find(seen.hand(), "something-else"));
    CHECK(find(otherwise.choices, "count-differs") != std::nullopt);  // while another item differs its place in the hand is taken
    CHECK(find(otherwise.choices, "by-somebody")->label == "Somebody else confirms");
    const auto items = turned(seen, *find(seen.hand(), "count-differs"));
    const auto numbers = turned(seen, *find(items.choices, "differs-needles"));
    CHECK(find(numbers.choices, "seen-4") == std::nullopt);  // what is expected is no difference
    CHECK(find(numbers.choices, "seen-3")->line == "1 missing");
    CHECK(find(numbers.choices, "seen-2")->line == "2 missing");
    const auto german = page(seen.at.state, {.page = "count-seen", .argument = "needles"}, seen.around, words("de"));
    CHECK(find(german.choices, "seen-3")->line == "1 fehlt");
    CHECK(find(german.choices, "seen-2")->line == "2 fehlen");
    CHECK(find(numbers.choices, "seen-5")->line == "1 too many");
    const auto who = turned(seen, *find(numbers.choices, "seen-3"));
    CHECK(find(who.choices, "by-1")->line == "sees 3");
    CHECK(find(seen.hand(), "check-scrub")->look == screen::Look::Filled);
    tap(seen, *find(who.choices, "by-1"));
    REQUIRE(seen.table().card.cautions.size() == 1);
    CHECK(seen.table().card.cautions.front().find("3 seen by scrub nurse, 4 expected") != std::string::npos);
    CHECK(seen.table().card.title == "Count again: Needles");
    CHECK(find(seen.hand(), "check-circulating")->look == screen::Look::Hollow);
    CHECK(find(seen.hand(), "also-sees")->look == screen::Look::Plain);  // what a recount shows comes first
    CHECK(find(seen.hand(), "check-circulating")->line == "if all are there now");
    CHECK(screen::desk(seen.at.state, {}, seen.around, words()).counts.front().value == "3 seen, 4 expected");

    CHECK(find(seen.hand(), "also-sees")->label == "Second person also sees 3");
    CHECK(find(seen.hand(), "also-sees")->line == "Circulating nurse");
    CHECK(find(seen.hand(), "check-scrub")->label == "Scrub nurse confirms");
    tap(seen, *find(seen.hand(), "also-sees"));
    CHECK(seen.table().card.cautions.front().find("3 seen by circulating nurse and scrub nurse, 4 expected") != std::string::npos);
    CHECK(find(seen.hand(), "also-sees") == std::nullopt);
    CHECK(seen.table().card.title == "Search: Needles");
    CHECK(find(seen.hand(), "record-difference")->look == screen::Look::Hollow);
    const auto reasons = turned(seen, *find(seen.hand(), "record-difference"));
    REQUIRE(!reasons.choices.empty());
    CHECK(std::all_of(reasons.choices.begin(), reasons.choices.end(),
                      [](const screen::Target& one) { return one.press == screen::Press::Hold; }));
    tap(seen, reasons.choices.front());
    CHECK(guide::current_step(seen.at.state)->id != "opening-count");
}

TEST_CASE("somebody else agrees or differs by initials, and two who see the same need be neither of the unit's two [H-13]") {
    Seen seen("opening-count");
    REQUIRE(seen.at.does(guide::MoveItems{.item = "needles", .by = 4}));
    const auto typed = [&](const std::string& argument, const std::string& initials) {
        screen::ScreenState page = screen::after({}, {.page = "count-initials", .argument = argument});
        for (const std::string& letter : screen::letters_of(initials)) page = screen::after(page, {.page = "key", .argument = letter});
        return std::get<screen::FormModel>(screen::view(seen.at.state, page, seen.around, words()));
    };
    CHECK(find(typed("", "ÄB").foot, "initials-done")->why_not.empty());
    CHECK(find(typed("needles=3", "").foot, "initials-done")->why_not == words()("desk.type_first"));
    tap(seen, *find(typed("needles=3", "ÄB").foot, "initials-done"));
    CHECK(find(seen.hand(), "record-difference") == std::nullopt);
    tap(seen, *find(typed("needles=3", "CD").foot, "initials-done"));
    REQUIRE(find(seen.hand(), "record-difference") != std::nullopt);
    CHECK(find(seen.hand(), "also-sees") == std::nullopt);

    const screen::Show all{.page = "count-initials"};
    tap(seen, *find(typed(all.argument, "ÄB").foot, "initials-done"));
    CHECK(find(typed(all.argument, "äb").foot, "initials-done")->why_not == words()("count.agreed"));
    CHECK(guide::current_step(seen.at.state)->id == "opening-count");
    tap(seen, *find(typed(all.argument, "CD").foot, "initials-done"));
    CHECK(guide::current_step(seen.at.state)->id != "opening-count");
}

TEST_CASE("a recount that agrees settles a difference and nothing is left to record") {
    Seen seen("opening-count");
    REQUIRE(seen.at.does(guide::MoveItems{.item = "needles", .by = 4}));
    const std::string scrub = seen.at.state.brief.unit.scrub_name;
    REQUIRE(seen.at.does(guide::CheckCount{.item = "needles", .seen = 3, .by = scrub}));
    tap(seen, *find(seen.hand(), "check-scrub"));
    CHECK(find(seen.hand(), "also-sees") == std::nullopt);
    tap(seen, *find(seen.hand(), "check-circulating"));
    CHECK(guide::current_step(seen.at.state)->id != "opening-count");
}

TEST_CASE("a number that is expected says so, where somebody sees another one and where there is no room for what was opened") {
    Seen seen("opening-count");
    REQUIRE(seen.at.does(guide::MoveItems{.item = "needles", .by = 4}));
    CHECK(seen.table().card.counts.front().expected == "4 expected");
    REQUIRE(seen.at.does(guide::CheckCount{.item = "needles", .seen = 3, .by = seen.at.state.brief.unit.scrub_name}));
    CHECK(seen.table().card.counts.front().line == "3 seen, 4 expected");
}

TEST_CASE("whoever is left with another number is named, and one tap takes what that person sees now [H-13]") {
    Seen seen("opening-count");
    REQUIRE(seen.at.does(guide::MoveItems{.item = "needles", .by = 4}));
    REQUIRE(seen.at.does(guide::CheckCount{.item = "needles", .seen = 3, .by = "MK"}));
    tap(seen, *find(seen.hand(), "check-scrub"));
    tap(seen, *find(seen.hand(), "check-circulating"));
    CHECK(guide::current_step(seen.at.state)->id == "opening-count");
    CHECK(seen.table().card.cautions.front().find("Still to count again: MK.") != std::string::npos);
    const auto hand = seen.hand();
    REQUIRE(find(hand, "counted-again") != std::nullopt);
    CHECK(find(hand, "counted-again")->label == "MK now sees 4");
    tap(seen, *find(hand, "counted-again"));
    CHECK(guide::current_step(seen.at.state)->id != "opening-count");
}

TEST_CASE("what takes a tap back in a count says which, and takes back no other") {
    Seen seen("opening-count");
    CHECK(find(seen.hand(), "undo")->why_not == words()("count.no_undo"));
    REQUIRE(seen.at.does(guide::MoveItems{.item = "needles", .by = 4}));
    const auto hand = seen.hand();
    CHECK(find(hand, "undo")->label == "Undo: Needles +4");
    REQUIRE(seen.at.does(guide::MoveItems{.item = "needles", .by = 1}, guide::Who::Circulating));
    CHECK(find(seen.hand(), "undo")->label == "Undo: Needles +1");
    tap(seen, *find(hand, "undo"));  // shown before the Desk wrote: it still takes back what it names
    CHECK(seen.at.state.counts.at("needles").expected() == 1);
}
