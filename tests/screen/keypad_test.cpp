// Keys under a finger: the letters are the language's, each is typed and taken back whole, and what is no letter is easy to hit.
#include "screen/keypad.hpp"

#include "screen/desk.hpp"
#include "screen/drawer.hpp"
#include "screen/letters.hpp"
#include "screen/models.hpp"
#include "screen/new_case.hpp"
#include "screen/samples.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace screen;

namespace {

std::vector<std::string> labels(const Keys& keys) {
    std::vector<std::string> made{};
    for (const Target& one : keys.all) made.push_back(one.label);
    return made;
}

bool has(const Keys& keys, const std::string& label) {
    const auto all = labels(keys);
    return std::find(all.begin(), all.end(), label) != all.end();
}

picture::Box box_of(const Frame& frame, const std::string& id) {
    for (const Touchable& one : frame.touchables)
        if (one.target.id == id) return one.box;
    FAIL("no target ", id);
    return {};
}

}  // namespace

TEST_CASE("nought stands under the eight on every pad of figures") {
    for (const Keys& keys : {keypad(Pad::Time, false, models::words()), figure_keypad(".", true)}) {
        REQUIRE(keys.a_row == 3);
        CHECK(keys.all.at(10).label == "0");
    }
}

TEST_CASE("a label that a name begins has a capital, also an accented one; what has none stays") {
    CHECK(with_capital("scrub nurse") == "Scrub nurse");
    CHECK(with_capital("ältere Schwester") == "Ältere Schwester");
    for (const std::string same : {"", "AB", "ÄB", "ßa", "÷a", "7", "œ"}) CHECK(with_capital(same) == same);
}

TEST_CASE("letters are whole: counted, parted and taken back") {
    CHECK(letter_count("Aß−Ö") == 4);
    CHECK(letters_of("Aß−Ö") == std::vector<std::string>{"A", "ß", "−", "Ö"});
    std::string text = "Aß−Ö";
    for (const char* left : {"Aß−", "Aß", "A", "", ""}) {
        erase_letter(text);
        CHECK(text == left);
    }
}

// German has these four besides the Latin 26: ä, ö, ü as capitals, and ß (Rat für deutsche Rechtschreibung,
// Amtliches Regelwerk, Laut-Buchstaben-Zuordnungen, Vorbemerkungen).
TEST_CASE("the letters are those of the language; labels are printed in the same signs everywhere; digits are on the other side") {
    for (const std::string letter : {"Ä", "Ö", "Ü", "ß"}) {
        CAPTURE(letter);
        CHECK(has(keypad(Pad::Words, false, models::words("de")), letter));
        CHECK(has(keypad(Pad::Reference, true, models::words("de")), letter));
        CHECK_FALSE(has(keypad(Pad::Code, false, models::words("de")), letter));
        CHECK_FALSE(has(keypad(Pad::Words, false, models::words()), letter));
    }
    const Words third({{"keys.letters", "АБВ"}, {"drawer.space", "_"}});
    CHECK(labels(keypad(Pad::Words, false, third)) == std::vector<std::string>{"А", "Б", "В", "123", "_"});
    for (const Pad pad : {Pad::Words, Pad::Code}) {
        for (const char digit : std::string("0123456789")) CHECK(has(keypad(pad, true, models::words()), std::string(1, digit)));
    }
}

TEST_CASE("a note takes so many letters, not bytes, and a key that is no letter of its field types nothing") {
    DeskState by{.page = "initials", .argument = "needles=1"};
    for (int i = 0; i < 20; ++i) by = keyed_in(by, {.page = "key", .argument = "Ö"});
    CHECK(letter_count(by.typed) == 12);
    by = keyed_in(by, {.page = "erase"});
    CHECK(letter_count(by.typed) == 11);
    CHECK(by.typed.ends_with("Ö"));
    DeskState depth{.page = "depth"};
    for (const std::string key : {"Ä", "4", " ", "\n"}) depth = keyed_in(depth, {.page = "key", .argument = key});
    CHECK(depth.typed == "4");
}

TEST_CASE("what makes the case leads once all is there that no case goes without, and not with one of them missing") {
    const std::map<std::string, std::string> whole{{"reference", "K-1"}, {"eye", "right"},    {"reason", "scar"}, {"keratometry", "44.0"},
                                                   {"across", "11.8"},   {"upright", "11.2"}, {"method", "oct"},  {"at_12", "560"},
                                                   {"host", "7.50"},     {"donor", "7.75"}};
    const auto leads = [](const ScreenState& form) { return new_case(form, {}, {}, models::words()).foot.back().look == Look::Filled; };
    ScreenState form{.page = "new"};
    form.draft = whole;
    CHECK(leads(form));
    for (const auto& missing : whole) {
        CAPTURE(missing.first);
        form.draft = whole;
        form.draft[missing.first].clear();
        CHECK_FALSE(leads(form));
    }
}

TEST_CASE("a reference is typed in digits and letters of the language, and taken back by the letter") {
    ScreenState form{.page = "new", .field = "reference"};
    form = after(form, {.page = "key", .argument = "7"});
    form = after(form, {.page = "turn"});
    CHECK(has(new_case(form, {}, {}, models::words("de")).keys, "Ö"));
    for (const std::string key : {"Ö", "ß"}) form = after(form, {.page = "key", .argument = key});
    CHECK(new_case(form, {}, {}, models::words("de")).fields.front().value == "7Öß");
    form = after(form, {.page = "erase"});
    CHECK(form.draft["reference"] == "7Ö");
    for (int i = 0; i < 30; ++i) form = after(form, {.page = "key", .argument = "Ü"});
    CHECK(letter_count(form.draft["reference"]) == 20);
    CHECK(case_text(form, "2026-01-31").find("reference = \"7Ö") != std::string::npos);
    form = after(form, {.page = "field", .argument = "keratometry"});
    CHECK_FALSE(has(new_case(form, {}, {}, models::words("de")).keys, "Ö"));
}

TEST_CASE("space and erase are at least twice as wide as a letter, in every language on every glass") {
    models::Seen at("tissue-here");
    at.around.alone = true;
    at.around.now = at.at.now;
    for (const std::string& language : models::languages) {
        const Words& words = models::words(language);
        for (const std::size_t turned : {0U, 1U}) {
            const DeskState page{.page = "note", .turned = turned};
            const auto form = typing_page(desk(at.at.state, page, at.around, words), words);
            REQUIRE(form);
            for (const auto& on : samples::glasses()) {
                CAPTURE(language);
                CAPTURE(on.name);
                const Frame frame = draw(*form, samples::canvas(on.glass));
                CHECK(frame.short_of.empty());
                const picture::Box key = box_of(frame, turned == 0 ? "desk/key-A" : "desk/key-1");
                CHECK(key.w >= 15 - 1e-6);
                CHECK(key.h >= 15 - 1e-6);
                CHECK(box_of(frame, "desk/key-space").w >= 2 * key.w);
                CHECK(box_of(frame, "desk/erase").w >= 2 * key.w);
            }
        }
    }
}
