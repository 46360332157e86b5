#include "paper/printed.hpp"

#include <doctest/doctest.h>

// What the card has to hold is common practice, no source; the figures are those of the plan, which tests/cases holds to another route.

namespace {

using printed::says;

std::vector<std::string> case_files() {
    std::vector<std::string> paths{};
    for (const std::string name :
         {"example", "left-temporal", "to-entry", "double-running", "twenty-four", "twelve", "surgeon-no-ladder", "advance-62-5"}) {
        paths.push_back(TESTS_DIR "/cases/" + name + ".case.toml");
    }
    return paths;
}

}  // namespace

TEST_CASE("the card of the demo case has all that is needed to go on without a screen") {
    const std::string text = printed::text_of(printed::card_pdf(printed::demo_brief()));
    for (const std::string words :
         {"RIGHT EYE", "Case DEMO-1", "2026-11-25", "INVENTED CASE", "If the screen dies, go on from this card", "7.50 mm", "7.75 mm",
          "3 to zero, then 8", "Raise from zero", "clockwise", "±", "16 interrupted", "6. 7:30 mark 11", "16. ", "Donor button lies",
          "Suction lost at spoke", "surgeon decides: by hand", "11 cadaver eyes", "not a medical device"}) {
        CAPTURE(words);
        CHECK(says(text, words));
    }
}

TEST_CASE("there is a box for every spoke raised, back to zero and below zero, and some beyond the plan") {
    const paper::Card card = paper::card(printed::demo_brief(), plan::make(printed::demo_brief().inputs), printed::words());
    REQUIRE(card.spokes.size() == 3);
    CHECK(card.spokes[0].planned == 3);
    CHECK(card.spokes[1].planned == 3);
    CHECK(card.spokes[2].planned == 8);
    CHECK(card.spokes[2].spare > 0);
    CHECK(card.face.numbered.size() == 16);
}

TEST_CASE("to entry there is no planned number, and the range is said") {
    const guide::Brief brief = printed::brief(TESTS_DIR "/cases/to-entry.case.toml");
    const plan::Plan plan = plan::make(brief.inputs);
    REQUIRE(plan.target->entry_to);
    const paper::Card card = paper::card(brief, plan, printed::words());
    CHECK(says(card.spokes_line, "to entry"));
    CHECK(says(card.spokes_line, std::to_string(*plan.target->entry_from) + " to " + std::to_string(*plan.target->entry_to)));
    CHECK(card.spokes.back().planned == *plan.target->entry_to);
}

TEST_CASE("every card is one page, nothing outside it and nothing on anything else") {
    for (const std::string& path : case_files()) {
        const guide::Brief brief = printed::brief(path);
        const plan::Plan plan = plan::make(brief.inputs);
        CAPTURE(path);
        REQUIRE(plan.target);
        for (const auto size : {paper::Size::A4, paper::Size::Letter}) {
            const auto lettering = printed::press().lettering(paper::card_caps());
            const auto shapes = paper::draw(paper::card(brief, plan, printed::words()), size, lettering);
            CHECK(printed::faults(shapes, size, lettering) == "");
            const std::string pdf = printed::card_pdf(brief, size);
            CHECK(printed::pages_of(pdf) == 1);
            CHECK_FALSE(says(printed::text_of(pdf), "<"));  // an id without words stands in angle brackets
        }
    }
}

TEST_CASE("two hundred spokes, the most a case file may ask for, still are one page and say how many have no box") {
    guide::Brief brief = printed::demo_brief();
    brief.inputs.file.aim = {.goal = plan::Goal::Spokes, .spokes = 200};
    const auto lettering = printed::press().lettering(paper::card_caps());
    const auto shapes = paper::draw(paper::card(brief, plan::make(brief.inputs), printed::words()), paper::Size::Letter, lettering);
    CHECK(printed::faults(shapes, paper::Size::Letter, lettering) == "");
    const std::string text = printed::text_of(printed::card_pdf(brief, paper::Size::Letter));
    CHECK(says(text, "more: go on with strokes"));
}

TEST_CASE("no patient's name can stand on the card: it asks for none") {
    const std::string text = printed::text_of(printed::card_pdf(printed::demo_brief()));
    CHECK_FALSE(says(text, "Name"));
    CHECK_FALSE(says(text, "Patient"));
}
