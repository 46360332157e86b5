// What is tapped again and again while things are counted stays where it is, whatever the numbers, whoever agrees, whatever comes up
// beside it: a tap that lands on the next thing's + is a wrong count. Common practice, no source.
#include "screen/models.hpp"
#include "screen/samples.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <functional>
#include <map>
#include <set>

using namespace models;

namespace {

using Places = std::map<std::string, picture::Box>;

/// Where the targets of a count stand: fewer and more, who agrees, and what takes a tap back.
Places places(const screen::Frame& frame) {
    Places made{};
    for (const auto& one : frame.touchables) {
        const std::string& id = one.target.id;
        const auto begins = [&](const std::string& with) { return id.compare(0, with.size(), with) == 0; };
        if (begins("more-") || begins("fewer-") || begins("check-") || id == "undo") made[id] = one.box;
    }
    return made;
}

struct Said {
    std::string name{};
    std::function<void(sample::Case&)> happens{};
};

/// A count from nothing told to a difference that both see and that one takes back.
std::vector<Said> course(const guide::Brief& brief) {
    const std::string scrub = brief.unit.scrub_name, circulating = brief.unit.circulating_name;
    const auto moves = [](const std::string& item, int by) {
        return [=](sample::Case& at) { REQUIRE(at.does(guide::MoveItems{.item = item, .by = by})); };
    };
    const auto sees = [](int missing, const std::string& by) {
        return [=](sample::Case& at) {
            const int expected = at.state.counts.at("needles").expected();
            REQUIRE(at.does(guide::CheckCount{.item = "needles", .seen = expected - missing, .by = by}));
        };
    };
    return {{"one needle", moves("needles", 1)}, {"two needles", moves("needles", 1)},    {"twelve needles", moves("needles", 10)},
            {"one blade", moves("blades", 1)},   {"a needle back", moves("needles", -1)}, {"MK differs", sees(1, "MK")},
            {"one agrees", sees(0, scrub)},      {"both agree", sees(0, circulating)},    {"MK sees it now", sees(0, "MK")},
            {"one differs", sees(2, scrub)},     {"both differ", sees(2, circulating)},   {"one more", moves("needles", 1)}};
}

void check_same(const Places& now, const Places& first) {
    CHECK(now.size() == first.size());
    for (const auto& [id, box] : now) {
        const std::string& name = id;
        CAPTURE(name);
        CHECK(first.contains(id));
        if (first.contains(id)) CHECK(box == first.at(id));
    }
}

/// Every view of the step as the course goes, with what a refused tap says.
void walk(const std::string& step, const std::string& language, const samples::NamedGlass& on, bool alone) {
    const guide::Brief brief = brief_of_unit(language);
    sample::Case at(brief);
    at.up_to(step);
    screen::Around around{.alone = alone};
    const auto canvas = samples::canvas(on.glass);
    const auto seen = [&] {
        around.now = at.now;
        return places(screen::draw(screen::view(at.state, {}, around, words(language)), canvas));
    };
    const Places first = seen();
    REQUIRE(first.size() == 2 * brief.unit.counts.size() + 3);
    for (const Said& said : course(brief)) {
        said.happens(at);
        CAPTURE(said.name);
        REQUIRE(guide::current_step(at.state)->id == step);
        check_same(seen(), first);
        around.refusal = words(language)("refused.count-differs");
        check_same(seen(), first);
        around.refusal.reset();
    }
}

}  // namespace

TEST_CASE("what is tapped in a count stays where it is from the first tap to the last, at every count, on every glass") {
    for (const std::string& language : languages) {
        for (const std::string step : {"opening-count", "count-before-last", "final-count"}) {
            for (const auto& on : samples::glasses()) {
                for (const bool alone : {false, true}) {
                    CAPTURE(language);
                    CAPTURE(step);
                    CAPTURE(on.name);
                    CAPTURE(alone);
                    walk(step, language, on, alone);
                }
            }
        }
    }
}

// At the table a bare number was read as what had been counted.
TEST_CASE("the number of a count stands with its word, in as many letters as all of them have room for, on every glass") {
    for (const std::string& language : models::languages) {
        sample::Case at(brief_of_unit(language));
        REQUIRE(at.does(guide::MoveItems{.item = "spears", .by = 20}));
        at.up_to("opening-count");
        const auto model = screen::table(at.state, {}, models::words(language));
        REQUIRE_FALSE(model.card.counts.empty());
        for (const auto& on : samples::glasses()) {
            CAPTURE(language);
            CAPTURE(on.name);
            std::set<std::string> shown{};
            for (const auto& shape : draw(model, samples::canvas(on.glass)).shapes) {
                if (const auto* text = std::get_if<picture::Text>(&shape)) shown.insert(text->text);
            }
            const auto all = [&](auto member) {
                return std::all_of(model.card.counts.begin(), model.card.counts.end(),
                                   [&](const screen::CountRow& row) { return shown.contains(row.*member); });
            };
            CHECK((all(&screen::CountRow::expected) || all(&screen::CountRow::due) || all(&screen::CountRow::line)));
        }
    }
}
