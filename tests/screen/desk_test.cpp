// What the Desk offers at each place, and by which key.
#include "guide/tissue.hpp"
#include "picture/wrap.hpp"
#include "screen/desk_seen.hpp"
#include "screen/format.hpp"
#include "screen/plan_views.hpp"
#include "screen/shipped.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

using namespace screen;
using models::by_key;
using models::intent;
using models::shown;

TEST_CASE("every action has a key of its own on its page, at every step") {
    models::Seen at;
    at.around.volume = 50;
    at.around.foot_switch = "F9";
    for (const auto& phase : models::brief().procedure.phases) {
        for (const auto& step : phase.steps) {
            if (!guide::applies(at.at.state, step)) continue;
            at.at.up_to(step.id);
            for (const std::string page : {"", "clocks", "counts", "otherwise", "sound", "note", "plan", "plan-why", "reader"}) {
                CAPTURE(step.id);
                CAPTURE(page);
                std::set<std::string> keys{};
                for (const Target& one : shown(at, {.page = page}).actions) {
                    CHECK_FALSE(one.key.empty());
                    CHECK(keys.insert(one.key).second);
                }
            }
        }
    }
}

TEST_CASE("a spoke has a key at the desk only while the desk holds the count, and never a letter or a digit") {
    models::Seen at("lower");
    CHECK_FALSE(by_key(shown(at), "Space"));
    const auto take = by_key(shown(at), "H");
    REQUIRE(take);
    CHECK(take->press == Press::Hold);
    REQUIRE(at.at.does(guide::HoldCount{.source = guide::Source::Desk}, guide::Who::Circulating));
    const DeskModel model = shown(at);
    CHECK_FALSE(by_key(model, "H"));
    const auto spoke = by_key(model, "Space");
    REQUIRE(spoke);
    CHECK(by_key(desk(at.at.state, {}, at.around, models::words("de")), "Leertaste"));
    CHECK(std::get<guide::CountSpoke>(intent(*spoke)).source == guide::Source::Desk);
    for (const Target& one : model.actions) {
        const auto* intents = std::get_if<std::vector<guide::Intent>>(&one.act);
        if (intents == nullptr || one.key == "Space" || one.id == "count-it") continue;
        for (const auto& asked : *intents) CHECK_FALSE(std::holds_alternative<guide::CountSpoke>(asked));
    }
}

TEST_CASE("sign in, time out and sign out are finished here when it is their turn, and their times stand here") {
    for (const std::string step : {"sign-in", "time-out", "sign-out"}) {
        CAPTURE(step);
        models::Seen at(step);
        const auto finish = by_key(shown(at), "F");
        REQUIRE(finish);
        CHECK(std::get<guide::FinishStep>(intent(*finish)).step == step);
        REQUIRE(at.at.does(intent(*finish), guide::Who::Circulating));
        int not_yet = 0;
        for (const Row& row : shown(at).times) not_yet += row.value == "not yet" ? 1 : 0;
        CHECK(not_yet == (step == "sign-in" ? 2 : (step == "time-out" ? 1 : 0)));
    }
    models::Seen elsewhere("lower");
    CHECK_FALSE(by_key(shown(elsewhere), "F"));
}

TEST_CASE("a clock is started or stopped now or 15 s, 30 s or a minute ago") {
    models::Seen at("tissue-number");
    const DeskModel model = shown(at, {.page = "clock", .argument = "donor-out"});
    const std::vector<std::pair<std::string, int>> wanted{{"Enter", 0}, {"1", 15}, {"2", 30}, {"3", 60}};
    for (const auto& one : wanted) {
        const auto target = by_key(model, one.first);
        REQUIRE(target);
        const auto mark = std::get<guide::MarkClock>(intent(*target));
        CHECK(mark.start);
        CHECK(mark.clock == "donor-out");
        CHECK(mark.ago_s == one.second);
    }
}

TEST_CASE("a count is opened, passed back, and counted with what is seen and whose initials") {
    models::Seen at("opening-count");
    const DeskModel item = shown(at, {.page = "count", .argument = "needles"});
    CHECK(std::get<guide::MoveItems>(intent(*by_key(item, "O"))).by == 1);
    CHECK(std::get<guide::MoveItems>(intent(*by_key(item, "P"))).by == -1);
    CHECK(std::get<Show>(by_key(item, "S")->act).page == "seen");
    const DeskModel seen = shown(at, {.page = "seen", .argument = "needles", .typed = "7"});
    CHECK((std::get<Show>(by_key(seen, "Enter")->act) == Show{.page = "who", .argument = "needles=7"}));
    const DeskModel who = shown(at, {.page = "who", .argument = "needles=7"});
    CHECK((std::get<Show>(by_key(who, "T")->act) == Show{.page = "initials", .argument = "needles=7"}));
    const DeskModel by = shown(at, {.page = "initials", .argument = "needles=7", .typed = "AB"});
    const auto check = std::get<guide::CheckCount>(intent(*by_key(by, "Enter")));
    CHECK(check.item == "needles");
    CHECK(check.seen == 7);
    CHECK(check.by == "AB");
}

TEST_CASE("the surgeon's number of spokes is read back with what it comes to, takes a reason, and the count follows at once") {
    models::Seen at("lower");
    at.at.state.inputs = samples::eight_readings();
    at.at.does(guide::CountSpoke{.source = guide::Source::Table});
    const int planned = *guide::blade(at.at.state).planned;
    REQUIRE(planned > 1);
    CHECK(std::get<Show>(by_key(shown(at), "L")->act).page == "plan");
    CHECK_FALSE(by_key(shown(at, {.page = "plan"}), "Enter")->why_not.empty());
    const std::string fewer = std::to_string(planned - 1);
    const DeskModel typed = shown(at, {.page = "plan", .argument = "", .typed = fewer});
    REQUIRE(typed.field);
    CHECK(typed.field->line.find("then " + fewer) != std::string::npos);
    CHECK((std::get<Show>(by_key(typed, "Enter")->act) == Show{.page = "plan-why", .argument = fewer}));
    CHECK_FALSE(by_key(shown(at, {.page = "plan", .argument = "", .typed = "0"}), "Enter")->why_not.empty());
    const auto reason = by_key(shown(at, {.page = "plan-why", .argument = fewer}), "1");
    REQUIRE(reason);
    CHECK_FALSE(std::get<guide::AcceptPlan>(intent(*reason)).why.empty());
    const int to_go = *guide::blade(at.at.state).to_go;
    REQUIRE(at.at.does(intent(*reason), guide::Who::Circulating));
    CHECK(guide::blade(at.at.state).planned == planned - 1);
    CHECK(guide::blade(at.at.state).to_go == to_go - 1);
    models::Seen open("viscoelastic-in");
    CHECK_FALSE(by_key(shown(open), "L"));
}

TEST_CASE("a field takes what belongs in it, up to its length, and gives letters back whole") {
    DeskState seen{.page = "seen", .argument = "needles", .typed = ""};
    for (const char32_t letter : U"1x2 3456") seen = typed(seen, letter);
    CHECK(seen.typed == "123");
    DeskState note{.page = "note"};
    for (const char32_t letter : U"a\u00e4\u20ac") note = typed(note, letter);
    CHECK(note.typed.find("\u00e4") != std::string::npos);
    note = typed(note, U'\b');
    note = typed(note, U'\b');
    CHECK(note.typed.substr(0, 1) == "a");
    for (int i = 0; i < 1000; ++i) note = typed(note, U'n');
    CHECK(note.typed.size() <= 241);
    CHECK(typed(DeskState{}, U'n').typed.empty());
}

TEST_CASE("an empty field writes nothing and says why; the note warns not to write names") {
    models::Seen at("lower");
    const DeskModel model = shown(at, {.page = "note"});
    CHECK_FALSE(by_key(model, "Enter")->why_not.empty());
    REQUIRE(model.field);
    CHECK(model.line.find("No names") != std::string::npos);
    CHECK(by_key(shown(at, {.page = "note", .typed = "x"}), "Enter")->why_not.empty());
}

TEST_CASE("whether the circulating nurse may leave the room: not in a pause, nor from suction on to the fourth suture") {
    models::Seen before("tissue-number"), pause("time-out"), cutting("lower"), open("cardinals"), after("next-four");
    CHECK_FALSE(shown(before).stay);
    CHECK(shown(pause).stay);
    CHECK(shown(cutting).stay);
    CHECK(shown(open).stay);
    CHECK_FALSE(shown(after).stay);
    CHECK(shown(before).nurse == "This step is yours");
    CHECK(shown(after).nurse == "You may leave the room");
}

TEST_CASE("while the blade can turn the Desk says how far it is, lost suction too") {
    const auto spokes = [](models::Seen& at) { return shown(at).step.front(); };
    models::Seen at("lower");
    CHECK(spokes(at).label == "Spokes");
    CHECK(spokes(at).value == "3 to zero");
    CHECK(shown(at).step[1].value == "then 8 spokes to go");
    for (int i = 0; i < 5; ++i) REQUIRE(at.at.does(guide::CountSpoke{.source = guide::Source::Table}));
    CHECK(spokes(at).value == "6 spokes to go");
    CHECK(shown(at).step[1].value.starts_with("2 of 8"));
    CHECK(shown(at).level == Banner::Level::Notice);
    at.at.count(6);
    CHECK(shown(at).title == "Depth reached, stop");
    CHECK(shown(at).level == Banner::Level::Notice);
    at.at.count(1);
    CHECK(shown(at).title == "One over the plan");
    CHECK(shown(at).level == Banner::Level::Watch);
    CHECK(spokes(at).value.starts_with("+1"));
    models::Seen before("seat");
    for (const Row& row : shown(before).step) CHECK(row.label != "Spokes");
}

TEST_CASE(
    "lost suction and what stops everything are the Desk's title, with what is usual, and nothing is to be had ready for what waits") {
    const auto labels = [](const DeskModel& model) {
        std::set<std::string> all{};
        for (const Row& row : model.step) all.insert(row.label);
        return all;
    };
    models::Seen at("lower");
    REQUIRE(labels(shown(at)).contains("Next, have ready"));
    REQUIRE(at.at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
    CHECK(shown(at).title == "Suction lost");
    CHECK(labels(shown(at)) == std::set<std::string>{"Spokes", "", "Usual practice"});
    models::Seen open("scissors");
    REQUIRE(open.at.does(guide::Depart{.what = "eye-bulging"}));
    CHECK(shown(open).level == Banner::Level::Stop);
    CHECK(labels(shown(open)).contains("Usual practice"));
    CHECK_FALSE(labels(shown(open)).contains("Next, have ready"));
    CHECK(shown(open).actions.front().id == "come-back");  // nothing stands before the way out
}

TEST_CASE("while the ring is seated anew the Desk names the step, she stays, and in the second seating the depth is not reliable") {
    models::Seen at("lower");
    at.at.count(5);
    REQUIRE(at.at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
    REQUIRE(at.at.does(guide::ReopenStep{.step = "zero", .why = "re-seated in the same groove"}));
    CHECK(shown(at).title != "Suction lost");
    CHECK(shown(at).stay);
    at.at.up_to("lower");
    const auto says = [&at](const std::string& words) {
        const DeskModel model = shown(at);
        return std::any_of(model.step.begin(), model.step.end(), [&](const Row& row) { return row.value == words; });
    };
    CHECK(says("second seating: depth not reliable"));
    CHECK(std::get<FarModel::Numeral>(far(at.at.state, at.around, models::words()).shown).to_zero);
    at.at.count(5);
    CHECK(std::get<FarModel::Numeral>(far(at.at.state, at.around, models::words()).shown).watch);
    models::Seen first("lower");
    first.at.count(5);
    CHECK_FALSE(std::get<FarModel::Numeral>(far(first.at.state, first.around, models::words()).shown).watch);
}

TEST_CASE("once the cut is done the count is neither shown nor offered, and the spokes are no longer changed") {
    models::Seen at("lower");
    at.around.foot_switch = "F9";
    const auto offered = [&at](const std::string& key) { return by_key(shown(at), key).has_value(); };
    for (const std::string key : {"H", "J", "L"}) CHECK(offered(key));
    CHECK_FALSE(shown(at).strip.holder.empty());
    REQUIRE(at.at.does(guide::EndCut{.how = guide::CutEnd::Surgeon}));
    for (const std::string key : {"H", "J", "L"}) CHECK_FALSE(offered(key));
    CHECK(shown(at).strip.holder.empty());
}

TEST_CASE("what goes otherwise while the blade can turn is the Desk's title, with how far the blade is, and its way back leads") {
    models::Seen at("lower");
    at.at.count(5);
    REQUIRE(at.at.does(guide::Depart{.what = "anaesthetist-stop"}));
    const auto* away = guide::find_departure(at.at.state.brief.procedure, "anaesthetist-stop");
    CHECK(shown(at).title == away->title);
    CHECK(shown(at).step.front().label == "Spokes");
    CHECK(shown(at).actions.front().id == "come-back");
    CHECK(shown(at).actions.front().label == away->back);
    REQUIRE(by_key(shown(at), "Z"));  // told by mistake it is taken back, the count as it was
    CHECK(by_key(shown(at), "Z")->label == "Undo: Anaesthetist asks to stop");
    models::Seen mistaken = at;
    REQUIRE(mistaken.at.does(intent(*by_key(shown(mistaken), "Z"))));
    CHECK(guide::open_departures(mistaken.at.state).empty());
    CHECK(guide::blade(mistaken.at.state).position == guide::blade(at.at.state).position);
    REQUIRE(at.at.does(guide::HoldCount{.source = guide::Source::Desk}, guide::Who::Circulating));
    CHECK(by_key(shown(at), "Space")->look == Look::Hollow);
}

TEST_CASE("at a count the Desk says what to do, and names what is to be counted again") {
    models::Seen at("opening-count");
    CHECK(shown(at).how == guide::current_step(at.at.state)->lines);
    CHECK_FALSE(by_key(shown(at), "F"));  // nothing is counted yet
    REQUIRE(at.at.does(guide::MoveItems{.item = "needles", .by = 4}));
    REQUIRE(at.at.does(guide::CheckCount{.item = "needles", .seen = 3, .by = at.at.state.brief.unit.scrub_name}));
    CHECK(shown(at).title == "Count again: Needles");
    CHECK(shown(at).level == Banner::Level::Watch);
    CHECK(shown(at).how == std::vector<std::string>{"Needles: 3 seen by scrub nurse, 4 expected."});
    const auto also = by_key(shown(at), "G");
    REQUIRE(also);
    CHECK(also->label == "Second person also sees 3");
    REQUIRE(at.at.does(intent(*also), guide::Who::Circulating));
    CHECK_FALSE(by_key(shown(at), "G"));  // to record it asks for a reason, on the Table
    CHECK(shown(at).title == "Search: Needles");
}

TEST_CASE("the circulating nurse confirms a count at the Desk, which says that she has; beside a drawer the hand has a target for it") {
    models::Seen at("opening-count");
    REQUIRE(at.at.does(guide::MoveItems{.item = "needles", .by = 4}));
    at.around.alone = true;  // there the hand's own target stands beside the drawer
    CHECK_FALSE(by_key(shown(at), "F"));
    at.around.alone = false;
    const auto hers = by_key(shown(at), "F");
    REQUIRE(hers);
    CHECK(hers->label == "Circulating nurse confirms");
    for (const guide::Intent& one : std::get<std::vector<guide::Intent>>(hers->act)) {
        REQUIRE(std::get<guide::CheckCount>(one).by == at.at.state.brief.unit.circulating_name);
        REQUIRE(at.at.does(one, guide::Who::Circulating));
    }
    CHECK_FALSE(by_key(shown(at), "F"));
    CHECK(shown(at).how == std::vector<std::string>{"Circulating nurse has confirmed."});
    models::Seen scrub("opening-count");
    REQUIRE(scrub.at.does(guide::MoveItems{.item = "needles", .by = 4}));
    REQUIRE(scrub.at.does(guide::CheckCount{.item = "needles", .seen = 4, .by = scrub.at.state.brief.unit.scrub_name}));
    CHECK(shown(scrub).how == std::vector<std::string>{"Scrub nurse has confirmed."});
}

TEST_CASE("'Eye bulging' has one key at the Desk wherever the Table has its octagon, and her own step's key stands over the spokes'") {
    models::Seen at("lower");
    CHECK_FALSE(by_key(shown(at), "E"));
    at.at.up_to("scissors");
    const auto bulging = by_key(shown(at), "E");
    REQUIRE(bulging);
    CHECK(bulging->look == Look::Stop);
    CHECK(std::get<guide::Depart>(intent(*bulging)).what == "eye-bulging");
    models::Seen before("time-out");
    CHECK(shown(before).actions.front().key == "F");
    CHECK(by_key(shown(before), "H"));
}

TEST_CASE("a step of the circulating nurse's own says at the Desk what to do, another's not") {
    models::Seen own("tissue-number");
    CHECK(shown(own).how == guide::current_step(own.at.state)->lines);
    models::Seen other("zero");
    CHECK(shown(other).how.empty());
}

TEST_CASE("at the Desk what is usual has a line for each thing to do where there is room, and goes into one text where there is not") {
    models::Seen at("scissors");
    REQUIRE(at.at.does(guide::Depart{.what = "eye-bulging"}));
    const auto alone = [&](const Glass& glass) {
        const Frame frame = draw(shown(at), samples::canvas(glass, Reader::Desk));
        return std::any_of(frame.shapes.begin(), frame.shapes.end(), [](const picture::Shape& shape) {
            const auto* text = std::get_if<picture::Text>(&shape);
            return text != nullptr && text->text == "Head up.";
        });
    };
    CHECK(alone({476, 268}));
    const Glass low{217, 80};
    CHECK_FALSE(alone(low));
    CHECK(draw(shown(at), samples::canvas(low, Reader::Desk)).short_of.empty());
}

TEST_CASE("what ends a case is listed at the Desk as elsewhere, and says where it is held") {
    models::Seen at("scissors");
    std::size_t ends = 0;
    for (const Target& one : shown(at, {.page = "otherwise"}).actions) {
        if (one.id != "converted" && one.id != "abandoned") continue;
        CHECK(one.why_not == "on the Table view");
        ++ends;
    }
    CHECK(ends > 0);
}

TEST_CASE("a scan that does not fit is told over the actions, and not once more among what was written") {
    models::Seen at("tissue-here");
    REQUIRE(at.at.does(guide::Scan{.bytes = "pack", .label = guide::Gs1{.lot = "L1"}}, guide::Who::Circulating));
    CHECK(shown(at).record.size() == 1);
    REQUIRE(at.at.does(guide::Scan{.bytes = "old", .label = guide::Gs1{.lot = "L2", .expires = guide::PackDate{.day = {2020, 1, 31}}}},
                       guide::Who::Circulating));
    REQUIRE(guide::standing_scan(at.at.state) != nullptr);
    CHECK(shown(at).heading == "What was scanned does not fit");
    CHECK(shown(at).record.empty());
    CHECK(shown(at).stay);  // it waits to be put aside here
}

TEST_CASE("a list breaks after a dot only, never within an item nor before a dot") {
    const picture::Lettering even{.width = [](picture::Type, std::string_view text) { return static_cast<double>(text.size()); },
                                  .cap = [](picture::Type) { return 2.0; }};
    const std::string list = listed({"spare trephine", "spare donor punch", "sutures"});
    for (const double width : {20.0, 26.0, 40.0}) {
        const std::vector<std::string> lines = picture::wrap(list, picture::Type::Text, width, even);
        REQUIRE(lines.size() >= 2);
        for (std::size_t i = 0; i + 1 < lines.size(); ++i) CHECK(lines[i].ends_with("·"));
        for (const std::string& line : lines) CHECK_FALSE(line.starts_with("·"));
    }
    CHECK(listed({"sutures"}) == "sutures");
}

TEST_CASE("what to open now and not yet stands here as the procedure says it") {
    models::Seen at;
    bool now = false, later = false;
    for (const auto& phase : models::brief().procedure.phases) {
        for (const auto& step : phase.steps) {
            if (!guide::applies(at.at.state, step)) continue;
            at.at.up_to(step.id);
            const DeskModel model = shown(at);
            const auto has = [&](const std::string& label) {
                return std::any_of(model.step.begin(), model.step.end(), [&](const Row& row) { return row.label == label; });
            };
            CHECK(has("Open packs now") == !step.open_now.empty());
            CHECK(has("Do not open yet") == !step.open_later.empty());
            now = now || !step.open_now.empty();
            later = later || !step.open_later.empty();
        }
    }
    CHECK((now && later));
}

TEST_CASE("on an upright screen no clock and no count gives way to a list of actions") {
    for (const std::string& language : models::languages) {
        for (const samples::Sample& sample : samples::shipped(language)) {
            const auto* model = std::get_if<DeskModel>(&sample.view);
            if (model == nullptr) continue;
            CAPTURE(language);
            CAPTURE(sample.name);
            for (const auto& on : samples::glasses())
                if (on.glass.portrait()) CHECK(draw(*model, samples::canvas(on.glass, Reader::Desk)).short_of.empty());
        }
    }
}

TEST_CASE("who counted is one of the unit's two by a key, she first, with what each has seen here; nothing counts by Enter") {
    models::Seen at("opening-count");
    at.at.state.brief.unit.circulating_name = "KL", at.at.state.brief.unit.scrub_name = "MN";
    const DeskState page{.page = "who", .argument = "needles=7"};
    CHECK_FALSE(has_field(page));
    CHECK_FALSE(by_key(shown(at, page), "Enter"));
    CHECK(by_key(shown(at, page), "1")->label == "KL");
    CHECK(by_key(shown(at, page), "2")->label == "MN");
    CHECK(by_key(shown(at, page), "1")->line.empty());
    const auto check = std::get<guide::CheckCount>(intent(*by_key(shown(at, page), "1")));
    CHECK(check.item == "needles");
    CHECK(check.seen == 7);
    CHECK(check.by == "KL");
    REQUIRE(at.at.does(check, guide::Who::Circulating));
    CHECK(by_key(shown(at, page), "1")->line == "7 seen");
    CHECK(by_key(shown(at, page), "2")->line.empty());
}

TEST_CASE("a plan that is changed is read back over the actions until the next thing is done, and is listed with its reason") {
    models::Seen at("lower");
    at.at.state.inputs = samples::eight_readings();
    const std::string before = shown(at).line;
    const std::string fewer = std::to_string(*guide::blade(at.at.state).planned - 1);
    REQUIRE(at.at.does(intent(*by_key(shown(at, {.page = "plan-why", .argument = fewer}), "1")), guide::Who::Circulating));
    const std::string said = "Plan: " + fewer + " spokes, surgeon: thickness read anew";
    CHECK(shown(at).line == said);
    CHECK(shown(at).record.front().value == said);
    REQUIRE(at.at.does(guide::GoDeeper{}));
    CHECK(shown(at).line == before);
    CHECK(shown(at).record[0].value == "Surgeon deeper: one spoke more");
    CHECK(shown(at).record[1].value == said);
    REQUIRE(at.at.does(guide::UndoTap{}));
    CHECK(shown(at).record[0].value == said);
}

TEST_CASE("a corrected time is read back and listed once, by what the tap meant") {
    models::Seen at("cardinals");
    const guide::Spell open = at.at.state.clocks.at("open-sky").back();
    REQUIRE(at.at.does(guide::CorrectTime{.event = open.from_seq, .utc_ms = open.from.utc_ms, .why = "tapped late"}));
    const std::string title = guide::find_step(at.at.state.brief.procedure, "button-out")->title;
    CHECK(shown(at).line == title + ": corrected to " + measure::rfc3339(open.from).substr(11, 8) + ", tapped late");
    CHECK(shown(at).record.size() == 1);
    REQUIRE(at.at.does(guide::TieSuture{}));
    CHECK(shown(at).line != shown(at).record.front().value);
}

TEST_CASE("what was written stands in the order of its time, the newest first, whatever it is") {
    models::Seen at("tissue-number");
    REQUIRE(at.at.does(guide::WriteNote{.text = "first"}));
    REQUIRE(at.at.does(guide::Depart{.what = "sterile-break"}));
    REQUIRE(at.at.does(guide::Scan{.bytes = "pack", .label = guide::Gs1{.lot = "L1"}}, guide::Who::Circulating));
    REQUIRE(at.at.does(guide::WriteNote{.text = "last"}));
    std::vector<std::string> said{};
    for (const Row& row : shown(at).record) said.push_back(row.value);
    REQUIRE(said.size() == 4);
    CHECK(said[0] == "Note: last");
    CHECK(said[1].starts_with("Lot L1"));
    CHECK(said[2] == "Sterile break");
    CHECK(said[3] == "Note: first");
}

TEST_CASE("a departure told by mistake is taken back at the Desk by a key, which names it") {
    models::Seen at("tissue-number");
    CHECK_FALSE(by_key(shown(at), "Z"));
    REQUIRE(at.at.does(guide::Depart{.what = "sterile-break"}));
    const auto undo = by_key(shown(at), "Z");
    REQUIRE(undo);
    CHECK(undo->label == "Undo: Sterile break");
    REQUIRE(at.at.does(intent(*undo), guide::Who::Circulating));
    CHECK(at.at.state.departures.empty());
    CHECK(shown(at).record.empty());
    CHECK_FALSE(by_key(shown(at), "Z"));
}

TEST_CASE("before a case stands open the strip has no pill for an eye") {
    const auto pills = [](const DeskModel& model) {
        const Frame frame = draw(model, samples::canvas(samples::glasses().front().glass, Reader::Desk));
        return std::count_if(frame.shapes.begin(), frame.shapes.end(), [](const picture::Shape& shape) {
            const auto* panel = std::get_if<picture::Panel>(&shape);
            return panel != nullptr && panel->edge == picture::Ink::Accent && panel->fill == picture::Ink::Ground;
        });
    };
    models::Seen at("tissue-number");
    CHECK(pills(empty_desk({}, at.around, models::words())) == 0);
    CHECK(pills(shown(at)) == 1);
}
