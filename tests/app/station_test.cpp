// What a session does for its station: light, heart, set-up, the drawer of the one undraped screen, and the file of measured screens.
#include "device/files.hpp"
#include "own_screens.hpp"
#include "touching.hpp"
#include "voice.hpp"

#include "app/demo.hpp"

#include <algorithm>

using graftside::Desk;
using graftside::Session;
using testplace::Folder;

namespace {

measure::Instant at(std::int64_t ms) { return demo::later(demo::script().front().at, ms); }

Session started(const Folder& folder, graftside::Options options, const std::string& case_file) {
    options.ledger = folder.file("a.ledger");
    options.assets = SOURCE_DIR "/assets";
    auto session = Session::start(options, demo::stock(), case_file, at(0));
    REQUIRE(session);
    return *std::move(session);
}

screen::TableModel table(const Session& session, const Desk& desk) {
    const auto view = graftside::table_view(session, desk, at(1000));
    REQUIRE(std::holds_alternative<screen::TableModel>(view));
    return std::get<screen::TableModel>(view);
}

/// A tap on a target of the drawer or of the page that types, as the loop carries it out.
void tap_drawer(Session& session, Desk& desk, const std::string& id) {
    const auto view = graftside::table_view(session, desk, at(1000));
    std::vector<screen::Target> all{};
    if (const auto* form = std::get_if<screen::FormModel>(&view)) {
        all = form->keys.all;
        all.insert(all.end(), form->foot.begin(), form->foot.end());
    } else {
        const auto drawer = *std::get<screen::TableModel>(view).drawer;
        all = drawer.actions;
        all.push_back(drawer.handle);
    }
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const screen::Target& one) { return one.id == screen::drawer_prefix + id; });
    CAPTURE(id);
    REQUIRE(found != all.end());
    graftside::carry_out(session, desk, screen::Counted{*found}, at(1000));
}

device::Screen glass(const std::string& name, int reported_mm) {
    return {.name = name, .report = {.width_px = 1920, .height_px = 1080, .width_mm = reported_mm, .height_mm = reported_mm * 9 / 16}};
}

}  // namespace

TEST_CASE("the heart beats once a second on every view, and stands still when the loop does") {
    const Folder folder;
    Session session = started(folder, {}, demo::case_path());
    const Desk desk(session);
    const auto beats = [&] {
        const auto view = session.view(at(99'000));  // whatever the clock says
        const bool beat = *std::get<screen::TableModel>(view).strip.beat;
        CHECK(*session.far(at(99'000)).beat == beat);
        CHECK(*desk.view(at(99'000)).strip.beat == beat);
        return beat;
    };
    session.tick(at(1000));
    const bool first = beats();
    session.tick(at(1400));
    CHECK(beats() == first);
    session.tick(at(2000));
    CHECK(beats() != first);
    CHECK(beats() != first);  // drawn again without a turn of the loop: the same
}

TEST_CASE("the heart stands still while the record does not answer, says why, and beats again when it is back") {
    const Folder folder;
    Session session = started(folder, {}, demo::case_path());
    const auto beat = [&](int second) {
        session.tick(at(second * 1000));
        return *session.far(at(99'000)).beat;
    };
    const bool first = beat(1);
    CHECK(beat(2) != first);
    std::filesystem::rename(folder.file("a.ledger"), folder.file("away"));
    CHECK(beat(3) != first);
    CHECK(beat(4) != first);
    CHECK_FALSE(demo::banner(session.view(at(4000))).empty());
    std::filesystem::rename(folder.file("away"), folder.file("a.ledger"));
    CHECK(beat(5) == first);
    CHECK(beat(6) != first);
    CHECK(demo::banner(session.view(at(6000))).empty());
}

TEST_CASE("dimmed on the list or at the Desk, for all views and until it is turned back") {
    const Folder folder;
    Session session = started(folder, {}, "");
    demo::tap(session, "set-up", at(1));
    demo::tap(session, "dim", at(2));
    CHECK(session.dimmed());
    Desk desk(session);
    screen::Touch touch;
    desk.key({.name = device::KeyName::Letter, .letter = 'D', .time_ms = 1000}, touch);
    desk.character({.code = U'd', .time_ms = 1000}, touch);
    desk.tick(touch, 1200);
    CHECK_FALSE(session.dimmed());
}

TEST_CASE("the set-up is chosen before the case; a Desk with a window of its own needs no drawer") {
    const Folder folder;
    Session session = started(folder, {}, "");
    CHECK_FALSE(session.alone());
    demo::tap(session, "set-up", at(1));
    demo::tap(session, "undraped", at(2));
    CHECK(session.alone());
    demo::tap(session, "draped", at(3));
    CHECK_FALSE(session.alone());
    const Folder other;
    CHECK(started(other, {.set_up = "undraped"}, "").alone());
    const Folder third;
    Session desk = started(third, {.views = {screen::Reader::Table, screen::Reader::Desk}, .set_up = "undraped"}, "");
    CHECK_FALSE(desk.alone());
    demo::tap(desk, "set-up", at(1));
    CHECK_FALSE(demo::target(desk.view(at(1)), "undraped").why_not.empty());
}

TEST_CASE("on one undraped screen what is touched is the circulating nurse's, the drawer opens and shuts by one tap each") {
    const Folder folder;
    Session session = started(folder, {.set_up = "undraped"}, demo::case_path());
    Desk desk(session);
    CHECK_FALSE(table(session, desk).drawer->open);
    tap_drawer(session, desk, "drawer");
    CHECK(table(session, desk).drawer->open);
    tap_drawer(session, desk, "note");
    for (const std::string letter : {"key-P", "key-A", "key-C", "key-K"}) tap_drawer(session, desk, letter);
    tap_drawer(session, desk, "write");
    REQUIRE(session.open()->state().notes.size() == 1);
    CHECK(session.open()->state().notes.front().second == "PACK");
    tap_drawer(session, desk, "counts");
    tap_drawer(session, desk, "count-needles");
    tap_drawer(session, desk, "opened");
    tap_drawer(session, desk, "seen");
    tap_drawer(session, desk, "key-1");
    tap_drawer(session, desk, "seen-by");
    tap_drawer(session, desk, "put-circulating nurse");
    tap_drawer(session, desk, "checked");
    const auto& checks = session.open()->state().counts.at("needles").checks;
    REQUIRE(checks.size() == 1);
    CHECK(checks.front().said.by == "circulating nurse");
    tap_drawer(session, desk, "drawer");
    CHECK_FALSE(table(session, desk).drawer->open);
    demo::tap(session, "finish-tissue-here", at(2000));
    REQUIRE_FALSE(session.open()->newest().empty());
    CHECK(session.open()->newest().front().who == guide::Who::Circulating);
    const Folder other;
    Session draped = started(other, {}, demo::case_path());
    demo::tap(draped, "finish-tissue-here", at(2000));
    CHECK(draped.open()->newest().front().who == guide::Who::Scrub);
}

TEST_CASE("on one undraped screen a scan is taken with the drawer shut, and a letter does nothing there") {
    const Folder folder;
    Session session = started(folder, {.set_up = "undraped"}, demo::case_path());
    Desk desk(session);
    screen::Touch keys;
    std::int64_t ms = 1000;
    // With the drawer open these three write a note.
    for (const char32_t letter : std::u32string(U"na")) {
        desk.character({.code = letter, .time_ms = ms += 400}, keys);
        desk.tick(keys, ms + 300);
    }
    desk.key({.name = device::KeyName::Enter, .time_ms = ms += 400}, keys);
    desk.tick(keys, ms + 300);
    CHECK(session.open()->state().notes.empty());
    const std::uint64_t before = session.open()->state().last;
    ms = 5000;
    for (const char32_t letter : std::u32string(U"=NCKXH1234567")) desk.character({.code = letter, .time_ms = ms += 3}, keys);
    desk.key({.name = device::KeyName::Enter, .time_ms = ms + 3}, keys);
    desk.tick(keys, ms + 500);
    CHECK(session.open()->state().last > before);
    const auto& newest = session.open()->newest();
    const auto scan = [](const guide::Event& event) { return std::holds_alternative<guide::Scanned>(event.fact); };
    CHECK(std::count_if(newest.begin(), newest.end(), scan) == 1);
}

TEST_CASE("a case is under way from its opening to its lock: so long nothing sleeps, and a station of its own stays open") {
    const Folder folder;
    Session list = started(folder, {}, "");
    CHECK_FALSE(list.under_way());
    const Folder other;
    demo::play(other.file("a.ledger"), demo::script());
    CHECK_FALSE(started(other, {}, demo::case_path()).under_way());
    const Folder third;
    CHECK(started(third, {}, demo::case_path()).under_way());
}

TEST_CASE("a new case begins with the surgeon's habits, and the form can change them") {
    const Folder folder;
    testplace::write(folder.file("ab.toml"),
                     "surgeon = \"AB\"\nseat = \"temporal\"\npattern = \"12 interrupted\"\nfirst = \"1:30\"\nspokes = 7\nvolume = 20\n");
    const auto stock = graftside::load_stock(
        {.assets = SOURCE_DIR "/assets", .unit = SOURCE_DIR "/assets/unit/unit.toml", .surgeon = folder.file("ab.toml")});
    REQUIRE(stock);
    CHECK(stock->unit.sound.volume == 20);
    auto session = Session::start({.ledger = folder.file("a.ledger"), .assets = SOURCE_DIR "/assets"}, *stock, "", at(0));
    REQUIRE(session);
    demo::tap(*session.operator->(), "new", at(1));
    const auto tap = [&](const std::string& id) { demo::tap(*session.operator->(), id, at(1)); };
    const auto type = [&](const std::string& field, const std::string& text) {
        tap("field-" + field);
        for (const char letter : text) tap(std::string("key-") + letter);
    };
    const auto pick = [&](const std::string& field, const std::string& choice) { tap("field-" + field), tap("pick-" + choice); };
    type("reference", "1"), pick("eye", "left"), pick("reason", "oedema"), type("keratometry", "43"), type("across", "11.8"),
        type("upright", "11.1");
    pick("method", "oct");
    for (const char* reading : {"at_12", "at_3", "at_6", "at_9"}) type(reading, "610");
    pick("host", "7.50"), pick("donor", "7.75");
    const auto form = std::get<screen::FormModel>(session->view(at(1)));
    CHECK(form.lines.front().find("AB") != std::string::npos);
    CHECK(form.lines.front().find("1:30") != std::string::npos);
    tap("field-aim");
    CHECK(demo::has_target(session->view(at(1)), "pick-spokes-7"));
    tap("make");
    REQUIRE(session->open() != nullptr);
    const plan::CaseFile& file = session->open()->state().inputs.file;
    CHECK(file.seat == eye::Seat::Temporal);
    CHECK(file.pattern.interrupted == 12);
    CHECK(file.first_suture == measure::centideg(4500));
    CHECK(file.aim.goal == plan::Goal::Spokes);
    CHECK(file.aim.spokes == 7);
}

TEST_CASE("the unit's file may name a surgeon's, which lies beside it; the words are the surgeon's, unless the command line says others") {
    const Folder folder;
    testplace::write(folder.file("ab.toml"), "surgeon = \"AB\"\nlanguage = \"no-such\"\n");
    testplace::write(folder.file("unit.toml"), "surgeon_file = \"ab.toml\"\n" + testplace::read(SOURCE_DIR "/assets/unit/unit.toml"));
    const auto lacks = graftside::load_stock({.assets = SOURCE_DIR "/assets", .unit = folder.file("unit.toml")});
    REQUIRE_FALSE(lacks);
    CHECK(lacks.error().lines.front().find("no-such.toml") != std::string::npos);
    const auto stock = graftside::load_stock({.assets = SOURCE_DIR "/assets", .unit = folder.file("unit.toml"), .language = "en"});
    REQUIRE(stock);
    REQUIRE(stock->surgeon);
    CHECK(stock->surgeon->surgeon == "AB");
}

TEST_CASE("a surgeon's file that is wrong stops the program, as a unit's does") {
    const Folder folder;
    testplace::write(folder.file("ab.toml"), "surgeon = \"AB\"\nseat = \"side\"\n");
    const auto stock = graftside::load_stock(
        {.assets = SOURCE_DIR "/assets", .unit = SOURCE_DIR "/assets/unit/unit.toml", .surgeon = folder.file("ab.toml")});
    REQUIRE_FALSE(stock);
    CHECK(stock.error().code == graftside::Exit::Wrong);
    CHECK(stock.error().lines.front().find("ab.toml:2:8: seat") != std::string::npos);
}

TEST_CASE("a measured screen is known again at the next start, by name, pixels and what it says of itself") {
    const Folder folder;
    const std::string path = folder.file("new/screens.toml");
    CHECK_FALSE(graftside::measured_size(path, glass("HDMI-1", 480)));
    CHECK_FALSE(graftside::keep_size(path, glass("HDMI-1", 480), {.width_mm = 344.25, .height_mm = 193.64}));
    CHECK_FALSE(graftside::keep_size(path, glass("DP-2", 480), {.width_mm = 527, .height_mm = 296}));
    const auto found = graftside::measured_size(path, glass("HDMI-1", 480));
    REQUIRE(found);
    CHECK(*found == device::GlassSize{.width_mm = 344.25, .height_mm = 193.64});
    CHECK_FALSE(graftside::measured_size(path, glass("HDMI-1", 600)));  // another screen in its place
    CHECK_FALSE(graftside::measured_size(path, glass("HDMI-2", 480)));
}

TEST_CASE("a file of screens that is spoilt is passed over, and what cannot be kept is said") {
    const Folder folder;
    testplace::write(folder.file("screens.toml"), "[[screen]]\nname = 7\n");
    CHECK_FALSE(graftside::measured_size(folder.file("screens.toml"), glass("HDMI-1", 480)));
    testplace::write(folder.file("file"), "");
    CHECK(graftside::keep_size(folder.file("file/screens.toml"), glass("HDMI-1", 480), {.width_mm = 344, .height_mm = 194}));
}

TEST_CASE("what has no sound is not said in part, and whoever asked is told") {
    const Folder folder;
    graftside::Options options{};
    options.voice = folder.file("said.wav");
    graftside::Stock stock = demo::stock();
    stock.assets = folder.file("assets");
    stock.unit.sound.on = true;
    const std::string clips = stock.assets + "/voice/" + stock.language;
    REQUIRE(device::make_folder(clips));
    REQUIRE(device::write_wav(clips + "/suture-6.wav", {.rate = 8000, .samples = std::vector<std::int16_t>(4000, 100)}));
    graftside::Voice voice(options, stock);
    CHECK(voice.say({"suture-6"}, 0.7));
    const auto said = device::read_wav(options.voice);
    REQUIRE(said);
    CHECK_FALSE(voice.say({"suture-6", "at-7"}, 0.7));
    CHECK(*device::read_wav(options.voice) == *said);
    CHECK(voice.say({"awake-suture-6"}, 0.7));  // the usual words where there are no mild ones
    CHECK(device::read_wav(options.voice)->samples.size() == 2 * said->samples.size());
}
