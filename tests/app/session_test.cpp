// What goes on between the glass and the cases: the list, a new case by touch, refusals, a locked record, a file that changed.
// Worked as the loop works it: a target of the view is touched, the next view is looked at. Plan figures by the contract of the case
// file: 480 um is 8 spokes of 60 um (the shipped profile), 0.80 of a wall of 610 um is 488 um, so 8 are within and 9 are not.
#include "app/demo.hpp"
#include "measure/length.hpp"

#include <filesystem>

using graftside::Session;
using testplace::Folder;

namespace {

measure::Instant at(std::int64_t s) { return demo::later(demo::script().front().at, s * 1000); }

Session started(const Folder& folder, const std::string& case_file) {
    graftside::Options options = demo::options(folder.file("a.ledger"));
    options.on = measure::Day{.year = 2026, .month = 11, .day = 25};
    auto session = Session::start(options, demo::stock(), case_file, at(0));
    REQUIRE(session);
    return *std::move(session);
}

void type(Session& session, const std::string& field, const std::string& text) {
    demo::tap(session, "field-" + field, at(1));
    for (const char letter : text) demo::tap(session, std::string("key-") + letter, at(1));
}

/// Takes so many letters of a field back.
void erase(Session& session, const std::string& field, int letters) {
    demo::tap(session, "field-" + field, at(1));
    for (int i = 0; i < letters; ++i) demo::tap(session, "erase", at(1));
}

void pick(Session& session, const std::string& field, const std::string& choice) {
    demo::tap(session, "field-" + field, at(1));
    demo::tap(session, "pick-" + choice, at(1));
}

/// A case by touch that lacks nothing; `keratometry` as typed.
void fill(Session& session, const std::string& keratometry) {
    demo::tap(session, "new", at(1));
    type(session, "reference", "147-2");
    pick(session, "eye", "left");
    pick(session, "reason", "oedema");
    type(session, "keratometry", keratometry);
    type(session, "across", "11.8");
    type(session, "upright", "11.1");
    pick(session, "method", "oct");
    for (const char* reading : {"at_12", "at_3", "at_6", "at_9"}) type(session, reading, "610");
    pick(session, "host", "7.50");
    pick(session, "donor", "7.75");
}

const screen::FormModel::Field& field(const screen::FormModel& form, const std::string& id) {
    for (const auto& one : form.fields)
        if (one.target.id == "field-" + id) return one;
    FAIL("no field ", id);
    return form.fields.front();
}

}  // namespace

TEST_CASE("a new case by touch gives a case whose inputs are what was touched, and its plan") {
    const Folder folder;
    Session session = started(folder, "");
    fill(session, "43.5");
    demo::tap(session, "make", at(2));
    REQUIRE(session.open() != nullptr);
    const guide::CaseState& state = session.open()->state();
    const plan::CaseFile& file = state.inputs.file;
    CHECK(file.reference == "147-2");
    CHECK((file.date == measure::Day{.year = 2026, .month = 11, .day = 25}));
    CHECK(file.side == eye::Side::Left);
    CHECK(file.keratometry_D == 43.5);
    CHECK(file.white_to_white_horizontal == measure::nm(11800000));
    CHECK(file.white_to_white_vertical == measure::nm(11100000));
    REQUIRE(file.thickness.readings.size() == 4);
    CHECK(file.thickness.readings[3].thickness == measure::nm(610000));
    CHECK(file.thickness.readings[3].ring == measure::nm(7500000));
    CHECK(file.host_diameter == measure::nm(7500000));
    CHECK(file.donor.diameter == measure::nm(7750000));
    const plan::Plan made = plan::make(state.inputs);
    REQUIRE((made.wall && made.target));
    CHECK(made.wall->basis == "circle");
    CHECK(made.wall->thinnest == measure::nm(610000));
    CHECK(made.target->spokes == 8);
    CHECK(made.target->bound_by == plan::Bound::Aim);
    CHECK(std::holds_alternative<screen::TableModel>(session.view(at(3))));
}

TEST_CASE("a wrong field and a missing one say what is allowed, and mended they make the case") {
    const Folder folder;
    Session session = started(folder, "");
    fill(session, "99");
    erase(session, "reference", 5);
    demo::tap(session, "make", at(2));
    CHECK(session.open() == nullptr);
    const auto view = session.view(at(3));
    const auto* form = std::get_if<screen::FormModel>(&view);
    REQUIRE(form != nullptr);
    CHECK(field(*form, "keratometry").problem.find("30") != std::string::npos);
    CHECK_FALSE(field(*form, "reference").problem.empty());
    CHECK(field(*form, "host").problem.empty());
    CHECK(field(*form, "at_12").problem.empty());
    type(session, "reference", "9");
    erase(session, "keratometry", 2);
    type(session, "keratometry", "44");
    demo::tap(session, "make", at(5));
    REQUIRE(session.open() != nullptr);
    CHECK(session.open()->reference() == "9");
}

TEST_CASE("a reference that is known already makes no second case") {
    const Folder folder;
    {
        Session first = started(folder, "");
        fill(first, "43.5");
        demo::tap(first, "make", at(2));
        REQUIRE(first.open() != nullptr);
    }
    Session session = started(folder, "");
    fill(session, "43.5");
    demo::tap(session, "make", at(2));
    CHECK(session.open() == nullptr);
    const auto view = session.view(at(3));
    REQUIRE(std::holds_alternative<screen::FormModel>(view));
    CHECK(field(std::get<screen::FormModel>(view), "reference").problem == demo::stock().words("form.known"));
}

TEST_CASE("a reference with letters is typed, makes the case and is what is written") {
    const Folder folder;
    Session session = started(folder, "");
    fill(session, "43.5");
    erase(session, "reference", 5);
    demo::tap(session, "key-turn", at(1));
    for (const char* key : {"key-K", "key--", "key-turn", "key-1", "key-2"}) demo::tap(session, key, at(1));
    demo::tap(session, "make", at(2));
    REQUIRE(session.open() != nullptr);
    CHECK(session.open()->reference() == "K-12");
}

TEST_CASE("a case is taken up from the list at the spoke where it stood") {
    const Folder folder;
    demo::play(folder.file("a.ledger"), demo::before_cut());
    Session session = started(folder, "");
    CHECK(session.open() == nullptr);
    demo::tap(session, "case-" + demo::reference(), demo::cut().front().at);
    REQUIRE(session.open() != nullptr);
    for (int i = 0; i < 6; ++i) demo::tap(session, "spoke", demo::cut().front().at);
    const guide::Blade blade = guide::blade(session.open()->state());
    CHECK(blade.spokes_turned == 6);
    CHECK(blade.position == 3);  // raised by three, then six turned
    CHECK(blade.to_go == 5);
}

TEST_CASE("a refusal is said in words until the next tap, and changes nothing") {
    const Folder folder;
    Session session = started(folder, demo::case_path());
    const guide::CaseState before = session.open()->state();
    session.touched({.act = std::vector<guide::Intent>{guide::FinishStep{.step = "back-up"}}}, at(1));
    CHECK(demo::banner(session.view(at(1))).starts_with("Not yet. Now: "));
    CHECK((session.open()->state() == before));
    demo::tap(session, "finish-tissue-here", at(2));
    CHECK(demo::banner(session.view(at(2))).empty());
    CHECK(session.open()->state().steps.contains("tissue-here"));
}

TEST_CASE("the first refusal of a row of intents keeps back the rest") {
    const Folder folder;
    Session session = started(folder, demo::case_path());
    const guide::Seq before = session.open()->state().last;
    session.touched({.act = std::vector<guide::Intent>{guide::TieSuture{.n = 1}, guide::FinishStep{.step = "tissue-here"}}}, at(1));
    CHECK(session.open()->state().last == before);
}

TEST_CASE("a closed case from the list shows the locked record with its seal, and no tap writes to it") {
    const Folder folder;
    const guide::CaseState closed = demo::play(folder.file("a.ledger"), demo::script());
    Session session = started(folder, "");
    demo::tap(session, "case-" + demo::reference(), at(4000));
    const auto view = session.view(at(4000));
    const auto* table = std::get_if<screen::TableModel>(&view);
    REQUIRE(table != nullptr);
    CHECK(table->card.title == "The record is locked");
    REQUIRE(table->hand.size() == 1);
    CHECK(table->hand.front().id == "to-list");
    CHECK_FALSE(session.open()->seal().empty());
    session.touched({.act = std::vector<guide::Intent>{guide::CountSpoke{.source = guide::Source::Table}}}, at(4001));
    CHECK((session.open()->state() == closed));
    CHECK(demo::banner(session.view(at(4001))) == "The record is locked.");
}

TEST_CASE("a case file that changed since the case was opened is said so, and what was opened counts") {
    const Folder folder;
    const std::string path = folder.file("demo.case.toml");
    const std::string text = testplace::read(demo::case_path());
    testplace::write(path, text);
    { CHECK(demo::banner(started(folder, path).view(at(1))).empty()); }
    { CHECK(demo::banner(started(folder, path).view(at(1))).empty()); }  // taken up with the same file
    const auto place = text.find("7.75");
    REQUIRE(place != std::string::npos);
    std::string changed = text;
    changed.replace(place, 4, "8.00");
    testplace::write(path, changed);
    const Session session = started(folder, path);
    CHECK(demo::banner(session.view(at(2))) == demo::stock().words("banner.file_changed"));
    CHECK(session.open()->state().inputs.file.donor.diameter == measure::nm(7750000));
}

TEST_CASE("a case file that is broken stays on the list with its problems") {
    const Folder folder;
    std::filesystem::create_directory(folder.file("case-files"));
    testplace::write(folder.file("case-files/bad.case.toml"), "[case]\nreference = 7\n");
    Session session = started(folder, "");
    demo::tap(session, "files", at(1));
    demo::tap(session, "file-bad.case.toml", at(2));
    CHECK(session.open() == nullptr);
    const auto view = session.view(at(2));
    REQUIRE(std::holds_alternative<screen::PickModel>(view));
    REQUIRE_FALSE(std::get<screen::PickModel>(view).lines.empty());
    CHECK(std::get<screen::PickModel>(view).lines.front().find("bad.case.toml:1:1:") != std::string::npos);
}
