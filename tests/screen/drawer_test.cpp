// One undraped screen for two readers: the drawer with the Desk's actions is never in the way of the count. What the Table view must
// keep while the blade goes down is look.md's: the spoke target stays where it is, the figure and the clock are read.
#include "screen/drawer.hpp"
#include "screen/desk.hpp"
#include "screen/models.hpp"
#include "screen/samples.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace screen;
using picture::Box;

namespace {

TableModel with(models::Seen& at, bool open, const DeskState& page = {}) {
    at.around.alone = true;
    TableModel made = at.table();
    made.drawer = drawer(desk(at.at.state, page, at.around, models::words()), open, narrow_drawer(at.at.state), models::words());
    return made;
}

Box box_of(const Frame& frame, const std::string& id) {
    for (const Touchable& one : frame.touchables)
        if (one.target.id == id) return one.box;
    FAIL("no target ", id);
    return {};
}

const picture::Text* text_of(const Frame& frame, picture::Type type, const std::string& words) {
    for (const picture::Shape& shape : frame.shapes) {
        const auto* text = std::get_if<picture::Text>(&shape);
        if (text != nullptr && text->type == type && text->text == words) return text;
    }
    return nullptr;
}

/// The lines of bold text that stand in the field: what is typed.
std::string typed_in(const Frame& frame) {
    std::string all;
    Box field;
    for (const picture::Shape& shape : frame.shapes) {
        const auto* panel = std::get_if<picture::Panel>(&shape);
        if (panel != nullptr && panel->edge == picture::Ink::Accent && panel->fill == picture::Ink::Raised) field = panel->box;
        const auto* text = std::get_if<picture::Text>(&shape);
        if (text != nullptr && text->type == picture::Type::Strong && field.contains(text->at)) all += text->text;
    }
    return all;
}

bool drawer_target(const Touchable& one) { return one.target.id.starts_with(drawer_prefix); }

}  // namespace

TEST_CASE("while the blade goes down, the drawer shut or open leaves count target, figure and clock where they are read") {
    models::Seen at("lower");
    at.at.count(5);
    const TableModel bare = at.table();
    for (const auto& on : samples::glasses()) {
        CAPTURE(on.name);
        const Canvas canvas = samples::canvas(on.glass);
        const Box spoke = box_of(draw(bare, canvas), "spoke");
        for (const bool open : {false, true}) {
            CAPTURE(open);
            const Frame frame = draw(with(at, open), canvas);
            CHECK(box_of(frame, "spoke") == spoke);
            const auto* figure = text_of(frame, picture::Type::Numeral, bare.card.figure->numeral);
            REQUIRE(figure != nullptr);
            REQUIRE_FALSE(bare.strip.clocks.empty());
            CHECK(text_of(frame, picture::Type::Value, bare.strip.clocks.front().value) != nullptr);
            const double w = canvas.lettering.width(picture::Type::Numeral, figure->text),
                         cap = canvas.lettering.cap(picture::Type::Numeral);
            const double left = figure->align == picture::Align::Centre ? figure->at.x - w / 2 : figure->at.x;
            for (const Touchable& one : frame.touchables) {
                const bool apart =
                    one.box.x >= left + w || one.box.right() <= left || one.box.y >= figure->at.y || one.box.bottom() <= figure->at.y - cap;
                CHECK(apart);
            }
        }
    }
}

TEST_CASE("shut, the drawer is one target and what the circulating nurse must know") {
    models::Seen at("lower");
    const TableModel table = with(at, false);
    CHECK(table.drawer->handle.press == Press::Tap);
    CHECK(table.drawer->actions.empty());
    CHECK_FALSE(table.drawer->nurse.empty());
    for (const auto& on : samples::glasses()) {
        const Frame frame = draw(table, samples::canvas(on.glass));
        CHECK(std::count_if(frame.touchables.begin(), frame.touchables.end(), drawer_target) == 1);
    }
}

TEST_CASE("every action of the Desk is reached in the drawer, at every step, turning on where they are many") {
    models::Seen at;
    at.around.volume = 50;
    at.around.alone = true;
    for (const auto& phase : models::brief().procedure.phases) {
        for (const auto& step : phase.steps) {
            if (!guide::applies(at.at.state, step)) continue;
            at.at.up_to(step.id);
            at.around.now = at.at.now;
            for (const std::string page : {"", "clocks", "counts", "otherwise", "sound", "screen"}) {
                CAPTURE(step.id);
                CAPTURE(page);
                std::vector<std::string> reached{};
                for (std::size_t turned = 0; turned < 6; ++turned) {
                    const Drawer shown = *with(at, true, {.page = page, .turned = turned}).drawer;
                    for (const Target& one : shown.actions) {
                        CHECK(one.weight == Weight::Elsewhere);
                        reached.push_back(one.id);
                    }
                }
                for (const Target& one : desk(at.at.state, {.page = page}, at.around, models::words()).actions)
                    CHECK(std::find(reached.begin(), reached.end(), drawer_prefix + one.id) != reached.end());
            }
        }
    }
}

TEST_CASE("on the same screen the count is not offered a second time") {
    models::Seen at("lower");
    const Drawer shown = *with(at, true).drawer;
    for (const Target& one : shown.actions) {
        CHECK(one.id != std::string(drawer_prefix) + "spoke");
        CHECK(one.id != std::string(drawer_prefix) + "take-count");
    }
}

TEST_CASE("what a keyboard would type has keys under a finger: digits, names, letters") {
    models::Seen at("lower");
    const std::string item = models::brief().unit.counts.front().id;
    const auto keys = [&](const DeskState& page) {
        at.around.alone = true;
        at.around.now = at.at.now;
        const auto form = typing_page(desk(at.at.state, page, at.around, models::words()), models::words());
        return form ? form->keys.all.size() : 0;
    };
    CHECK(keys({.page = "seen", .argument = item}) == 0);  // nothing may lie over the cut
    CHECK(keys({.page = "note"}) == 0);
    at = models::Seen("tissue-here");
    CHECK(keys({.page = "seen", .argument = item}) == 10);
    CHECK(keys({.page = "by", .argument = item + "=7"}) == 3);
    CHECK(keys({.page = "note"}) == 28);  // with space and what turns the pad over
    CHECK(keys({.page = "note", .turned = 1}) == 19);
    CHECK(keys({}) == 0);
    DeskState seen{.page = "seen", .argument = item};
    for (const std::string letter : {"1", "x", "2"}) seen = keyed_in(seen, {.page = "key", .argument = letter});
    CHECK(seen.typed == "12");
    CHECK(keyed_in(seen, {.page = "erase"}).typed == "1");
    CHECK(keyed_in({.page = "by"}, {.page = "put", .argument = "circulating nurse"}).typed == "circulating nurse");
}

TEST_CASE("while the blade goes down the drawer says what is asked and what is typed, on every glass") {
    models::Seen at("lower");
    const std::string item = models::brief().unit.counts.front().id;
    for (const auto& on : samples::glasses()) {
        CAPTURE(on.name);
        const TableModel table = with(at, true, {.page = "by", .argument = item + "=12", .typed = "AB"});
        const Frame frame = draw(table, samples::canvas(on.glass));
        std::string all;
        for (const picture::Shape& shape : frame.shapes)
            if (const auto* text = std::get_if<picture::Text>(&shape)) all += text->text + " ";
        CHECK(all.find("whose") != std::string::npos);
        CHECK(all.find("AB_") != std::string::npos);
        CHECK(box_of(frame, "desk/checked").h >= 15 - 1e-6);
    }
}

TEST_CASE("while the blade goes down what stops a hand comes first in the drawer, each departure in a few words") {
    models::Seen at("lower");
    at.around.alone = true;
    const DeskModel list = desk(at.at.state, {.page = "otherwise"}, at.around, models::words());
    const auto level = [](const Target& one) { return one.look == Look::Stop ? 0 : one.id == "desk-back" ? 2 : 1; };
    CHECK(std::is_sorted(list.actions.begin(), list.actions.end(), [&](const Target& a, const Target& b) { return level(a) < level(b); }));
    CHECK(level(list.actions.front()) == 0);
    CHECK(models::find(list.actions, "patient-moved")->label == "Patient moves");
    CHECK(models::find(list.actions, "converted") == std::nullopt);  // told on the Table, by a hold
    at.around.alone = false;
    const DeskModel own = desk(at.at.state, {.page = "otherwise"}, at.around, models::words());
    CHECK(models::find(own.actions, "patient-moved")->label == "Patient coughs or moves");
}

TEST_CASE("while the blade goes down each target of a count says in the drawer of what") {
    models::Seen at("lower");
    at.around.alone = true;
    const DeskModel model = desk(at.at.state, {.page = "count", .argument = "needles"}, at.around, models::words());
    for (const Target& one : model.actions) CHECK(one.label.starts_with("Needles: ") == (one.id != "desk-back"));
    models::Seen before("opening-count");
    before.around.alone = true;
    for (const Target& one : desk(before.at.state, {.page = "count", .argument = "needles"}, before.around, models::words()).actions)
        CHECK(one.label.find("Needles") == std::string::npos);
}

TEST_CASE("somebody who is neither of the two of the unit gives initials, by letters") {
    models::Seen at("tissue-here");
    at.around.alone = true;
    at.around.now = at.at.now;
    const std::string item = models::brief().unit.counts.front().id;
    const auto keys = desk(at.at.state, {.page = "by", .argument = item + "=7"}, at.around, models::words()).keys.all;
    DeskState page = turned_to(std::get<Show>(models::find(keys, "initials")->act));
    for (const std::string letter : {"Ä", "B"}) page = keyed_in(page, {.page = "key", .argument = letter});
    const auto form = typing_page(desk(at.at.state, page, at.around, models::words()), models::words());
    REQUIRE(form);
    CHECK(form->typed->text == "ÄB");
    const auto write = models::find(form->foot, "desk/checked");
    REQUIRE(write != std::nullopt);
    const auto check = std::get<guide::CheckCount>(std::get<std::vector<guide::Intent>>(write->act).front());
    CHECK(check.item == item);
    CHECK(check.seen == 7);
    CHECK(check.by == "ÄB");
}

TEST_CASE(
    "what is typed is read whole: the longest label, lot, material and contact on every glass; of a note as much as there is room for") {
    models::Seen at("next-four");
    at.around.alone = true;
    at.around.now = at.at.now;
    const std::pair<const char*, std::size_t> longest[] = {{"lot", 20}, {"material", 40}, {"contact", 28}, {"label", 60}, {"note", 240}};
    for (const auto& on : samples::glasses()) {
        for (const auto& one : longest) {
            const std::string page = one.first;
            const std::size_t letters = one.second;
            CAPTURE(on.name);
            CAPTURE(page);
            const std::string text = std::string(letters - 1, 'N') + "4";
            const DeskModel seen = desk(at.at.state, {.page = page, .argument = "1", .typed = text}, at.around, models::words());
            CHECK(typed_in(draw(seen, samples::canvas(on.glass, Reader::Desk))) == text + "_");
            const auto form = typing_page(seen, models::words());
            REQUIRE(form);
            const std::string shown = typed_in(draw(*form, samples::canvas(on.glass)));
            CHECK(shown.size() > std::min<std::size_t>(letters, 60));
            CHECK((text + "_").ends_with(shown));
        }
    }
}

TEST_CASE("nothing that the hand offers stands in the drawer beside it a second time") {
    for (const std::string step : {"tissue-here", "cardinals", "next-four"}) {
        models::Seen at(step);
        for (const std::string page : {"", "otherwise", "clock"}) {
            CAPTURE(step);
            CAPTURE(page);
            const TableModel table = with(at, true, {.page = page, .argument = "case"});
            for (const Target& action : table.drawer->actions) {
                CHECK(action.id != "desk/otherwise");
                for (const Target& one : table.hand) CHECK(action.id != drawer_prefix + one.id);
            }
        }
        CHECK(with(at, true, {.page = "clock", .argument = "case"}).drawer->actions.size() == 5);
    }
    models::Seen cut("lower");  // its hand has no place for it
    bool offered = false;
    for (std::size_t turned = 0; turned < 6; ++turned) {
        const TableModel table = with(cut, true, {.turned = turned});
        for (const Target& one : table.drawer->actions) offered = offered || one.id == "desk/otherwise";
    }
    CHECK(offered);
}

TEST_CASE("what stops everything is read beside an open drawer, whose actions are then few") {
    models::Seen open_eye("cardinals");
    CHECK_FALSE(with(open_eye, true).drawer->narrow);
    REQUIRE(open_eye.at.does(guide::Depart{.what = "vitreous"}));
    CHECK_FALSE(with(open_eye, true).drawer->narrow);
    REQUIRE(open_eye.at.does(guide::Depart{.what = "eye-bulging"}));
    const TableModel table = with(open_eye, true);
    CHECK(table.drawer->narrow);
    for (const auto& on : samples::glasses()) {
        CAPTURE(on.name);
        const Frame frame = draw(table, samples::canvas(on.glass));
        CHECK(std::any_of(frame.shapes.begin(), frame.shapes.end(), [](const picture::Shape& shape) {
            const auto* text = std::get_if<picture::Text>(&shape);
            return text != nullptr && text->text.starts_with("Eye bulging");
        }));
    }
}

TEST_CASE("what befalls the blade has targets of its own beside the drawer, and is listed at a Desk of its own") {
    models::Seen cut("lower");
    const auto offered = [&](bool alone, const std::string& what) {
        cut.around.alone = alone;
        const auto all = desk(cut.at.state, {.page = "otherwise"}, cut.around, models::words()).actions;
        return std::any_of(all.begin(), all.end(), [&](const Target& one) { return one.id == what; });
    };
    for (const std::string what : {"suction-lost", "entered-by-trephine"}) {
        CHECK_FALSE(offered(true, what));
        CHECK(offered(false, what));
    }
    CHECK(offered(true, "tilt"));
}

TEST_CASE("the way back stands on each part of a list that is turned on, and where nothing was read a sentence says so") {
    models::Seen at("next-four");
    for (std::size_t turned = 0; turned < 3; ++turned) {
        const auto shown = with(at, true, {.page = "otherwise", .turned = turned}).drawer.value().actions;
        REQUIRE(shown.size() > 2);
        CHECK(shown[shown.size() - 2].id == "desk/desk-back");
        CHECK(shown.back().label == models::words()("list.more"));
    }
    CHECK(with(at, true, {.page = "scans"}).drawer->line == models::words()("packs.none_read"));
    CHECK_FALSE(with(at, true, {.page = "overrule", .argument = "0="}).drawer->heading.empty());
}

TEST_CASE("labels of one page share one size: letters as few as these are not the bigger ones") {
    models::Seen at("next-four");
    const TableModel model = with(at, true, {.page = "depth-how", .argument = "500"});
    for (const auto& on : samples::glasses()) {
        const Frame frame = draw(model, samples::canvas(on.glass));
        bool shown = false;
        for (const auto type : {picture::Type::Title, picture::Type::Strong, picture::Type::Text}) {
            const bool here = text_of(frame, type, models::words()("packs.depth_oct")) != nullptr;
            CHECK((text_of(frame, type, models::words()("packs.depth_ultrasound")) != nullptr) == here);
            shown = shown || here;
        }
        CHECK(shown);
    }
}
