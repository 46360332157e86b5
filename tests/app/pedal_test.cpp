// The foot switch: which keys it may type, what of its presses counts, and what is shown of those that do not.
#include "pedal.hpp"

#include "app/at_desk.hpp"

#include <algorithm>

using demo::at;
using demo::AtDesk;
using demo::started;
using graftside::Session;
using testplace::Folder;

namespace {

std::optional<screen::Target> at_desk(const AtDesk& desk) {
    const auto actions = desk.desk.view(at(9000)).actions;
    const auto found = std::find_if(actions.begin(), actions.end(), [](const screen::Target& one) { return one.id == "count-it"; });
    return found == actions.end() ? std::nullopt : std::optional(*found);
}

}  // namespace

TEST_CASE("a pedal counts only while it holds the count, once a press, and not for a key that bounces or repeats") {
    using Press = graftside::Pedal::Press;
    const Folder folder;
    AtDesk desk(started(folder, demo::before_cut()));
    desk.session.pedal(Press::Counts, at(9000));
    CHECK(guide::blade(desk.state()).spokes_turned == 0);
    CHECK_FALSE(desk.session.act(guide::Who::Circulating, {guide::HoldCount{.source = guide::Source::FootSwitch}}, at(9001)));
    desk.session.pedal(Press::Counts, at(9002));
    CHECK(guide::blade(desk.state()).spokes_turned == 1);
    desk.session.pedal(Press::HeldDown, at(9003));
    CHECK(guide::blade(desk.state()).spokes_turned == 1);

    graftside::Pedal pedal({.key = "F9", .bounce_ms = 200});
    const auto f9 = [](std::int64_t ms) { return device::Key{.name = device::KeyName::Function, .function = 9, .time_ms = ms}; };
    CHECK(pedal.is(f9(0)));
    CHECK_FALSE(pedal.is({.name = device::KeyName::Function, .function = 8}));
    CHECK_FALSE(graftside::Pedal({}).is(f9(0)));
    CHECK(pedal.press(f9(1000)) == Press::Counts);
    CHECK(pedal.press(f9(1199)) == Press::Bounced);
    CHECK(pedal.press(f9(1200)) == Press::Counts);
    device::Key held = f9(2000);
    held.repeated = true;
    CHECK(pedal.press(held) == Press::HeldDown);
}

TEST_CASE("a press of the pedal that was left out is shown on Table view and Desk, where it can be counted as the pedal's") {
    using Press = graftside::Pedal::Press;
    const Folder folder;
    graftside::Stock stock = demo::stock();
    stock.unit.foot_switch.key = "F9";
    demo::play(folder.file("a.ledger"), demo::before_cut());
    auto begun = Session::start(demo::options(folder.file("a.ledger")), stock, demo::case_path(), at(0));
    REQUIRE(begun);
    AtDesk desk(*std::move(begun));
    const auto offered = [&](bool there) {
        CHECK(demo::has_target(desk.session.view(at(9000)), "count-it") == there);
        CHECK(at_desk(desk).has_value() == there);
    };
    desk.session.pedal(Press::Bounced, at(9000));
    offered(false);  // the Table view counts
    REQUIRE_FALSE(desk.session.act(guide::Who::Circulating, {guide::HoldCount{.source = guide::Source::FootSwitch}}, at(9001)));
    desk.session.pedal(Press::Bounced, at(9002));
    offered(true);
    CHECK(guide::blade(desk.state()).spokes_turned == 0);
    demo::tap(desk.session, "count-it", at(9003));
    CHECK(guide::blade(desk.state()).spokes_turned == 1);
    CHECK(desk.state().holder == std::optional(guide::Source::FootSwitch));
    offered(false);
    desk.session.pedal(Press::Bounced, at(9004));
    const auto at_the_desk = at_desk(desk);
    REQUIRE(at_the_desk);
    desk.desk.take(screen::Counted{*at_the_desk}, at(9005));
    CHECK(guide::blade(desk.state()).spokes_turned == 2);
    offered(false);
    desk.session.pedal(Press::Bounced, at(9006));
    desk.session.pedal(Press::Counts, at(9007));
    offered(false);
    desk.session.pedal(Press::Bounced, at(9008));
    REQUIRE_FALSE(desk.session.act(guide::Who::Scrub, {guide::HoldCount{.source = guide::Source::Table}}, at(9009)));
    offered(false);
}

TEST_CASE("a pedal knows every key that a unit's file may name, and no other") {
    using device::KeyName;
    std::vector<device::Key> keys{{.name = KeyName::Letter, .letter = 'B'}, {.name = KeyName::Letter, .letter = '7'}};
    for (int n = 1; n <= 24; ++n) keys.push_back({.name = KeyName::Function, .function = n});
    for (const KeyName one :
         {KeyName::Enter, KeyName::Escape, KeyName::Backspace, KeyName::Delete, KeyName::Insert, KeyName::Tab, KeyName::Space,
          KeyName::Left, KeyName::Right, KeyName::Up, KeyName::Down, KeyName::Home, KeyName::End, KeyName::PageUp, KeyName::PageDown})
        keys.push_back({.name = one});
    std::vector<std::string> names{"B",    "7",     "Enter", "Escape", "Backspace", "Delete", "Insert", "Tab",     "Space",
                                   "Left", "Right", "Up",    "Down",   "Home",      "End",    "PageUp", "PageDown"};
    for (int n = 1; n <= 24; ++n) names.push_back("F" + std::to_string(n));
    for (const std::string& name : names) {
        const graftside::Pedal pedal({.key = name});
        CAPTURE(name);
        CHECK(std::count_if(keys.begin(), keys.end(), [&](const device::Key& key) { return pedal.is(key); }) == 1);
    }
}

TEST_CASE("a pedal that types a key of the Desk is taken only where there is no Desk, draped, and stays so") {
    const Folder folder;
    const auto start = [&](const std::string& key, graftside::Options options) {
        graftside::Stock stock = demo::stock();
        stock.unit.foot_switch.key = key;
        options.ledger = folder.file("a.ledger");
        return Session::start(options, stock, "", at(0));
    };
    graftside::Options with_desk{}, undraped{};
    with_desk.views = {screen::Reader::Table, screen::Reader::Desk};
    undraped.set_up = "undraped";
    for (const auto& options : {with_desk, undraped}) {
        CHECK(start("F9", options));
        const auto refused = start("B", options);
        REQUIRE_FALSE(refused);
        CHECK(refused.error().code == graftside::Exit::Wrong);
        CHECK(refused.error().lines.front().find("foot_switch.key: B ") == 0);
    }
    auto draped = start("B", {});
    REQUIRE(draped);
    demo::tap(*draped, "set-up", at(1));
    CHECK(demo::target(draped->view(at(2)), "undraped").why_not == demo::stock().words("set_up.pedal_types"));
    draped->turn_screen({.page = "undraped"});
    CHECK_FALSE(draped->alone());
}
