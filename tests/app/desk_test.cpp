// The Desk at work, without a window: keys as the keyboard sends them, scans as a reader types them, and the Table view beside it.
#include "app/at_desk.hpp"
#include "device/fonts.hpp"

using demo::at;
using demo::AtDesk;
using demo::newest;
using demo::started;
using graftside::Session;
using testplace::Folder;

TEST_CASE("a note is written by its key, its letters and Enter, as the circulating nurse's") {
    const Folder folder;
    AtDesk desk(started(folder));
    desk.types(U"n");
    desk.types(U"Lens kit late 12");
    CHECK(desk.state().notes.empty());
    desk.types(U"\n");
    REQUIRE(desk.state().notes.size() == 1);
    CHECK(desk.state().notes.front().second == "Lens kit late 12");
    CHECK(newest(desk).who == guide::Who::Circulating);
}

TEST_CASE("a scan is recorded wherever the desk stands, and not a letter of it ends up in a note or does anything else") {
    const Folder folder;
    AtDesk desk(started(folder));
    const guide::Seq before = desk.state().last;
    desk.scans(U"=NCKXH1234567");
    CHECK(std::holds_alternative<guide::Scanned>(newest(desk).fact));
    CHECK(std::get<guide::Scanned>(newest(desk).fact).bytes == "=NCKXH1234567");
    CHECK(desk.state().last > before);
    desk.types(U"n");
    desk.types(U"before ");
    desk.scans(U"0104012345678901");
    desk.types(U"after\n");
    REQUIRE(desk.state().notes.size() == 1);
    CHECK(desk.state().notes.front().second == "before after");
}

TEST_CASE("the test of a reader says which characters its keyboard puts elsewhere, and goes into no record") {
    const Folder folder;
    AtDesk desk(started(folder));
    const guide::Seq before = desk.state().last;
    const std::u32string right = device::letters(std::string(intake::layout_test));
    std::u32string swapped = right, short_of_gs = right;
    for (char32_t& letter : swapped) letter = letter == U'Y' ? U'Z' : letter == U'Z' ? U'Y' : letter;
    short_of_gs.erase(short_of_gs.find(U'\x1d'), 1);
    const auto told = [&](const std::u32string& scan) {
        desk.types(U"mr");
        desk.scans(scan);
        const std::string line = desk.desk.view(at(1)).line;
        desk.escape();
        return line;
    };
    const screen::Words& words = desk.session.stock().words;
    CHECK(told(right) == words("reader.right"));
    CHECK(told(swapped) == words("reader.wrong", {"Y came as Z, Z came as Y"}));
    CHECK(told(short_of_gs) == words("reader.gs_lost"));
    CHECK(told(U"=NCKXH1234567") == words("reader.other"));
    CHECK(desk.state().last == before);
    desk.scans(right);  // the page is left: a scan is a scan again
    CHECK(std::holds_alternative<guide::Scanned>(newest(desk).fact));
}

TEST_CASE("the Enter of a reader that is slow to send it does not send off the note") {
    const Folder folder;
    AtDesk desk(started(folder));
    desk.types(U"n");
    desk.types(U"half a");
    desk.keys(U"0104012345678901", 4);  // heard by the silence after it
    desk.ms -= 300;
    desk.keys(U"\n", 4);
    CHECK(desk.state().notes.empty());
    desk.types(U" note\n");
    REQUIRE(desk.state().notes.size() == 1);
    CHECK(desk.state().notes.front().second == "half a note");
}

TEST_CASE("no letter, digit or Enter typed at the desk counts a spoke, also while it holds the count; the space bar does then") {
    const Folder folder;
    AtDesk desk(started(folder, demo::before_cut()));
    const auto turned = [&] { return guide::blade(desk.state()).spokes_turned; };
    desk.types(U"0123456789 \n+- ");
    CHECK(turned() == 0);
    CHECK(desk.state().holder == std::optional(guide::Source::Table));
    desk.holds(U'h', 900);
    CHECK(desk.state().holder == std::optional(guide::Source::Desk));
    desk.types(U"0123456789\n");
    desk.escape();
    CHECK(turned() == 0);
    desk.types(U"  ");
    CHECK(turned() == 2);
    CHECK(std::holds_alternative<guide::SpokeTurned>(newest(desk).fact));
    CHECK(newest(desk).who == guide::Who::Circulating);
}

TEST_CASE("the count is taken over by a hold of 0.8 s, not by a tap of its key, and not by a key that repeats") {
    const Folder folder;
    AtDesk desk(started(folder, demo::before_cut()));
    desk.types(U"h");
    desk.holds(U'h', 500);
    CHECK(desk.state().holder == std::optional(guide::Source::Table));
    const guide::Seq before = desk.state().last;
    for (int i = 0; i < 20; ++i) desk.desk.character({.code = U'h', .time_ms = desk.ms + 30 * i, .repeated = true}, desk.touch);
    desk.desk.tick(desk.touch, desk.ms + 2000);
    CHECK(desk.state().last == before);  // nor is it a scan
    CHECK(desk.state().holder == std::optional(guide::Source::Table));
    desk.ms += 3000;
    desk.holds(U'h', 850);
    CHECK(desk.state().holder == std::optional(guide::Source::Desk));
}

TEST_CASE("a second spoke of the space bar so soon that it bounced is not counted, and can be") {
    const Folder folder;
    AtDesk desk(started(folder, demo::before_cut()));
    desk.holds(U'h', 900);
    desk.keys(U"  ", 80);
    CHECK(guide::blade(desk.state()).spokes_turned == 1);
    desk.types(U"i");
    CHECK(guide::blade(desk.state()).spokes_turned == 2);
}

TEST_CASE("nothing done at the desk turns a page of the Table view or puts a refusal on it") {
    const Folder folder;
    AtDesk desk(started(folder, demo::before_cut()));
    const auto banner = demo::banner(desk.session.view(at(9000)));
    desk.types(U"n");
    desk.types(U"a note\n");
    desk.types(U"c");
    desk.types(U"1\n");
    desk.types(U"1\n");
    desk.types(U"x");
    desk.escape();
    const auto view = desk.session.view(at(9000));
    CHECK(std::holds_alternative<screen::TableModel>(view));
    CHECK(demo::banner(view) == banner);
    CHECK(demo::has_target(view, "spoke"));
}

TEST_CASE("a refusal at the desk stands on the desk until the next key, and only there") {
    const Folder folder;
    AtDesk desk(started(folder, demo::before_cut()));
    desk.types(U"k");
    desk.types(U"1");
    for (int i = 0; i < 40; ++i) desk.types(U"p");
    const auto shown = desk.desk.view(at(9000)).banner;
    REQUIRE(shown);
    CHECK(shown->text.find("count") != std::string::npos);
    CHECK(demo::banner(desk.session.view(at(9000))) != shown->text);
}

TEST_CASE("needles are opened, then counted by two people with their initials, by the keyboard alone") {
    const Folder folder;
    AtDesk desk(started(folder));
    desk.types(U"k");
    desk.types(U"1");
    desk.types(U"oo");
    const auto& tally = desk.state().counts.at(desk.state().brief.unit.counts.front().id);
    CHECK(tally.opened == 2);
    for (const std::u32string who : {U"AB", U"CD"}) {
        desk.types(U"s");
        desk.types(U"2\n");
        desk.types(U"t");
        desk.types(who + U"\n");
    }
    REQUIRE(tally.checks.size() == 2);
    CHECK(tally.checks.front().said.by == "AB");
    CHECK(tally.checks.back().said.by == "CD");
    CHECK(tally.checks.back().said.seen == 2);
}

TEST_CASE("a clock started 30 s ago at the desk reads half a minute at once") {
    const Folder folder;
    AtDesk desk(started(folder));
    desk.types(U"c");
    desk.types(U"4");
    desk.types(U"2");
    CHECK(guide::clock_running(desk.state(), "donor-out"));
    const auto& mark = std::get<guide::ClockMarked>(newest(desk).fact);
    CHECK(mark.ago_s == 30);
}

TEST_CASE("what is said follows the taps where the unit has a voice; muted it is not loud, and the views say so") {
    const Folder folder;
    const std::string ledger = folder.file("a.ledger");
    demo::play(ledger, demo::before_cut());
    graftside::Stock stock = demo::stock();
    stock.unit.sound.on = true;
    auto session = Session::start(demo::options(ledger), stock, demo::case_path(), at(0));
    REQUIRE(session);
    demo::tap(*session, "spoke", at(9000));
    CHECK(session->to_say() == screen::PhraseIds{"to-zero-2"});
    CHECK(session->to_say().empty());
    CHECK(session->loudness() == doctest::Approx(0.7));
    session->turn_sound({.page = "volume", .argument = "-10"});
    CHECK(session->loudness() == doctest::Approx(0.6));
    session->turn_sound({.page = "mute", .argument = ""});
    CHECK(session->loudness() == 0);
    const std::string word = stock.words("strip.muted");
    CHECK(demo::banner(session->view(at(9001))).empty());
    CHECK(demo::muted(session->view(at(9001))) == word);
    CHECK(session->far(at(9001)).muted == word);
    CHECK(graftside::Desk(*session.operator->()).view(at(9001)).strip.muted == word);
    session->turn_sound({.page = "mute", .argument = ""});
    CHECK(demo::muted(session->view(at(9001))).empty());
    session->turn_sound({.page = "volume", .argument = "-60"});
    CHECK(session->loudness() == 0);
    CHECK(demo::muted(session->view(at(9001))) == word);
    CHECK(session->far(at(9001)).muted == word);

    Folder silent_folder;
    demo::play(silent_folder.file("a.ledger"), demo::before_cut());
    auto silent = Session::start(demo::options(silent_folder.file("a.ledger")), demo::stock(), demo::case_path(), at(0));
    REQUIRE(silent);
    silent->turn_sound({.page = "mute", .argument = ""});
    CHECK(demo::muted(silent->view(at(9000))).empty());  // there is nothing to mute
    demo::tap(*silent, "spoke", at(9000));
    CHECK(silent->to_say().empty());
}
