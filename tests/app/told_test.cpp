// What every view says of the station, whatever it shows: what is wrong with it, and that the voice is muted.
#include "touching.hpp"

#include "app/demo.hpp"

using graftside::Desk;
using graftside::Session;
using testplace::Folder;

namespace {

measure::Instant at(std::int64_t ms) { return demo::later(demo::script().front().at, ms); }

/// At a unit with a voice.
Session started(const Folder& folder, const std::string& case_file, graftside::Options options = {}) {
    options.ledger = folder.file("a.ledger");
    options.assets = SOURCE_DIR "/assets";
    graftside::Stock stock = demo::stock();
    stock.unit.sound.on = true;
    auto session = Session::start(options, stock, case_file, at(0));
    REQUIRE(session);
    return *std::move(session);
}

/// A view of a station whose Far screen is missing and whose voice is muted.
void check_told(const screen::View& view) {
    CHECK(demo::banner(view) == demo::stock().words("banner.screens_lost", {"Far"}));
    CHECK(demo::muted(view) == demo::stock().words("strip.muted"));
}

}  // namespace

TEST_CASE("every view whose screen is missing is named, and a wall clock that jumped does not hide it") {
    const Folder folder;
    Session session = started(folder, demo::case_path());
    const auto says = [&] { return demo::banner(session.view(at(9000))); };
    const auto& words = demo::stock().words;
    session.tick(at(1000));
    measure::Instant jumped = at(2000);
    jumped.utc_ms += 3'600'000;
    session.tick(jumped);
    CHECK(says() == words("banner.clock_jumped"));
    session.screens_lost({"table"});
    CHECK(says().starts_with(words("banner.own_screen_lost")));
    CHECK(says().find("PC clock jumped") != std::string::npos);
    session.screens_lost({"table", "far"});
    CHECK(says().starts_with(words("banner.own_screen_lost")));
    CHECK(says().find(words("banner.named.screens_lost", {"Far"})) != std::string::npos);
    REQUIRE(session.far(at(9000)).banner);
    CHECK(session.far(at(9000)).banner->text == words("far.screens_lost"));
    session.screens_lost({});
    CHECK(says() == words("banner.clock_jumped"));
}

TEST_CASE("what a touch on the machine came to is told until the next touch; what the station lacks, as long as it does") {
    const Folder folder;
    Session session = started(folder, demo::case_path());
    Desk desk(session);
    const auto says = [&] { return demo::banner(session.view(at(9000))); };
    const auto& words = demo::stock().words;
    session.size_unknown(true);
    session.no_sound();
    CHECK(says().starts_with(words("banner.no_sound")));
    CHECK(says().find("screen size not known") != std::string::npos);
    session.notice("Kept.");
    session.size_unknown(false);
    CHECK(says() == "Kept. " + words("banner.no_sound"));
    demo::tap(session, "finish-tissue-here", at(9001));
    CHECK(says() == words("banner.no_sound"));
    session.notice("Kept.");
    desk.take(screen::Counted{{.id = "clocks", .act = screen::Show{.page = "clocks"}}}, at(9002));
    CHECK(says() == words("banner.no_sound"));
}

TEST_CASE("lists, forms, past cases and the plan say what is wrong with the station, as the Table view does") {
    const Folder folder;
    Session session = started(folder, "");
    session.turn_sound({.page = "mute", .argument = ""});
    session.screens_lost({"far"});
    const std::vector<std::vector<std::string>> ways{{}, {"new"}, {"new", "field-reference"}, {"files"}, {"set-up"}, {"past"}};
    for (const auto& way : ways) {
        for (const std::string& id : way) demo::tap(session, id, at(1));
        CAPTURE((way.empty() ? "the list" : way.back()));
        check_told(session.view(at(2)));
        if (!way.empty()) session.touched({.act = screen::Show{.page = "cases"}}, at(3));
    }
    check_told(Desk(session).view(at(2)));
    const Folder other;
    Session open = started(other, demo::case_path(), {.on_plan = true});
    open.turn_sound({.page = "mute", .argument = ""});
    open.screens_lost({"far"});
    for (const char* page : {"plan", "plan-why", "plan-reading", "", "departures", "count-initials"}) {
        CAPTURE(page);
        open.touched({.act = screen::Show{.page = page}}, at(4));
        check_told(open.view(at(4)));
    }
}

TEST_CASE("the page on which a note is typed on the one undraped screen says it too") {
    const Folder folder;
    Session session = started(folder, demo::case_path(), {.set_up = "undraped"});
    session.turn_sound({.page = "mute", .argument = ""});
    session.screens_lost({"far"});
    Desk desk(session);
    for (const char* page : {"drawer", "note"}) desk.take(screen::Counted{{.act = screen::Show{.page = page}}}, at(1));
    const screen::View view = graftside::table_view(session, desk, at(2));
    REQUIRE(std::holds_alternative<screen::FormModel>(view));
    check_told(view);
}
