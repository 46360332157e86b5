// The Plan view worked by touch on the demo case: opened from the Table, changed, agreed, changed again in the operation, and from
// the form before a case begins. The demo's thinnest reading is 618 um: 8 spokes of 60 um are 480, within 0.80 of it, 9 are not.
#include "app/demo.hpp"
#include "measure/length.hpp"

#include <algorithm>

using graftside::Session;
using testplace::Folder;

namespace {

measure::Instant at(std::int64_t s) { return demo::later(demo::script().back().at, s * 1000); }

/// The demo case at the step that agrees the plan.
Session at_plan(const Folder& folder) {
    demo::Script lines{};
    for (const auto& line : demo::script()) {
        if (std::holds_alternative<guide::AcceptPlan>(line.intent)) break;
        lines.push_back(line);
    }
    demo::play(folder.file("a.ledger"), lines);
    auto session = Session::start(demo::options(folder.file("a.ledger")), demo::stock(), demo::case_path(), at(0));
    REQUIRE(session);
    return *std::move(session);
}

Session before_the_cut(const Folder& folder) {
    demo::play(folder.file("a.ledger"), demo::before_cut());
    auto session = Session::start(demo::options(folder.file("a.ledger")), demo::stock(), demo::case_path(), at(0));
    REQUIRE(session);
    return *std::move(session);
}

const screen::PlanModel plan_view(const Session& session) {
    const auto view = session.view(at(1));
    REQUIRE(std::holds_alternative<screen::PlanModel>(view));
    return std::get<screen::PlanModel>(view);
}

}  // namespace

TEST_CASE("the plan is opened from its card, changed, and what was looked at is agreed by the hold") {
    const Folder folder;
    {
        Session session = at_plan(folder);
        demo::tap(session, "to-plan", at(1));
        CHECK(plan_view(session).spokes == "3 to zero, then 8");
        demo::tap(session, "rung-7", at(2));
        CHECK(session.open()->state().plan == std::nullopt);  // looked at, not agreed
        CHECK(demo::target(session.view(at(2)), "use-plan").press == screen::Press::Hold);
        demo::tap(session, "use-plan", at(3));
        const guide::CaseState& state = session.open()->state();
        REQUIRE(state.plan);
        CHECK(state.plan->target->spokes == 7);
        CHECK(state.inputs.file.aim.goal == plan::Goal::Spokes);
        CHECK(std::holds_alternative<screen::TableModel>(session.view(at(4))));
    }
    const auto events = demo::on_disk(folder.file("a.ledger"));
    CHECK(std::ranges::count_if(events, [](const auto& event) { return std::holds_alternative<guide::PlanAccepted>(event.fact); }) == 1);
}

TEST_CASE("leaving the view forgets what was changed there, and a what-if is never agreed") {
    const Folder folder;
    Session session = at_plan(folder);
    demo::tap(session, "to-plan", at(1));
    demo::tap(session, "ask-reading-5", at(2));
    demo::tap(session, "doubt-30", at(3));
    CHECK(plan_view(session).spokes == "3 to zero, then 7");
    CHECK_FALSE(demo::target(session.view(at(3)), "use-plan").why_not.empty());
    demo::tap(session, "back", at(4));
    demo::tap(session, "to-plan", at(5));
    CHECK(plan_view(session).spokes == "3 to zero, then 8");
    CHECK(demo::target(session.view(at(5)), "use-plan").why_not.empty());
}

TEST_CASE("a plan changed in the operation is a new event with its reason, and the counter follows at once") {
    const Folder folder;
    {
        Session session = before_the_cut(folder);
        CHECK(guide::blade(session.open()->state()).planned == 8);
        session.touched({.id = "to-plan", .act = screen::Show{.page = "plan"}}, at(1));
        CHECK_FALSE(demo::target(session.view(at(1)), "use-plan").why_not.empty());  // nothing is changed yet
        demo::tap(session, "rung-9", at(2));
        demo::tap(session, "use-plan", at(3));
        CHECK(guide::blade(session.open()->state()).planned == 8);  // not before the reason
        demo::tap(session, "why-3", at(4));
        CHECK(guide::blade(session.open()->state()).planned == 9);
        CHECK(std::holds_alternative<screen::TableModel>(session.view(at(5))));
    }
    const auto events = demo::on_disk(folder.file("a.ledger"));
    const auto& last = std::get<guide::PlanAccepted>(events.back().fact);
    CHECK(last.why == demo::stock().words("why.plan_3"));
    CHECK(last.shown.target->spokes == 9);
    CHECK(events.back().who == guide::Who::Scrub);
}

TEST_CASE("the plan of a new case is seen and mended before the case begins, and no side is told") {
    const Folder folder;
    graftside::Options options = demo::options(folder.file("a.ledger"));
    options.on = measure::Day{.year = 2026, .month = 11, .day = 25};
    auto started = Session::start(options, demo::stock(), "", at(0));
    REQUIRE(started);
    Session& session = *started;
    const auto type = [&](const std::string& field, const std::string& text) {
        demo::tap(session, "field-" + field, at(1));
        for (const char letter : text) demo::tap(session, std::string("key-") + letter, at(1));
    };
    const auto pick = [&](const std::string& field, const std::string& choice) {
        demo::tap(session, "field-" + field, at(1));
        demo::tap(session, "pick-" + choice, at(1));
    };
    demo::tap(session, "new", at(1));
    type("reference", "147-3");
    pick("eye", "left");
    pick("reason", "scar");
    type("keratometry", "43.5");
    type("across", "11.8");
    type("upright", "11.1");
    pick("method", "oct");
    for (const char* reading : {"at_12", "at_3", "at_6", "at_9"}) type(reading, "610");
    pick("host", "7.50");
    pick("donor", "7.75");
    demo::tap(session, "see-plan", at(2));
    CHECK(session.open() == nullptr);
    CHECK(plan_view(session).spokes == "3 to zero, then 8");
    CHECK(plan_view(session).strip->eye == demo::stock().words("strip.eye_unknown"));
    CHECK(plan_view(session).strip->time.label == demo::stock().words("clock.day"));  // a time of day has its name on every view
    demo::tap(session, "ask-reading-0", at(3));
    demo::tap(session, "mend", at(3));
    for (int i = 0; i < 3; ++i) demo::tap(session, "erase", at(3));
    for (const char* key : {"key-5", "key-9", "key-0"}) demo::tap(session, key, at(3));
    demo::tap(session, "put-reading", at(3));
    CHECK(plan_view(session).spokes == "3 to zero, then 7");  // 0.80 x 590 = 472
    demo::tap(session, "use-plan", at(4));
    REQUIRE(session.open() != nullptr);
    CHECK(session.open()->reference() == "147-3");
    CHECK(session.open()->state().inputs.file.thickness.readings.front().thickness == measure::from_um(590));
    CHECK(session.open()->state().plan == std::nullopt);  // begun, not agreed
}
