#include "device/fonts.hpp"
#include "device/atlas.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>
#include <string>
#include <vector>

using namespace device;
using picture::Type;

namespace {

Sizes sizes(double px_per_mm) {
    Sizes out{.px_per_mm = px_per_mm};
    for (int i = 0; i < picture::types; ++i) {
        out.cap_mm[static_cast<std::size_t>(i)] = 4.1 + i;
        out.bold[static_cast<std::size_t>(i)] = i % 2 == 0;
    }
    out.cap_mm[static_cast<std::size_t>(Type::Numeral)] = 40;
    return out;
}

Fonts fonts(const Sizes& of) {
    auto loaded = Fonts::load(FONTS_DIR, of);
    REQUIRE(static_cast<bool>(loaded));
    return *std::move(loaded);
}

Type type(int i) { return static_cast<Type>(i); }

/// Rows of a glyph's picture that are at least half inked somewhere.
int inked_rows(const Atlas& atlas, Type of, char32_t letter) {
    const Glyph glyph = atlas.glyph(of, letter);
    const Sheet sheet = atlas.sheet(Atlas::which(of));
    const auto across = [&](float u) { return static_cast<int>(std::lround(u * static_cast<float>(sheet.width))); };
    const auto down = [&](float v) { return static_cast<int>(std::lround(v * static_cast<float>(sheet.height))); };
    int rows = 0;
    for (int y = down(glyph.v0); y < down(glyph.v1); ++y) {
        int most = 0;
        for (int x = across(glyph.u0); x < across(glyph.u1); ++x) most = std::max(most, int{sheet.alpha[y * sheet.width + x]});
        rows += most >= 128 ? 1 : 0;
    }
    return rows;
}

}  // namespace

// What the eye meets is the picture of an H: counted in its pixels, not taken from the font's tables.
TEST_CASE("an H is as tall as asked, to half a pixel, and never smaller") {
    for (const double px_per_mm : {3.78, 4.68, 6.43}) {
        const Sizes asked = sizes(px_per_mm);
        const Fonts made = fonts(asked);
        const Atlas atlas(made);
        for (int i = 0; i < picture::types; ++i) {
            if (type(i) == Type::Numeral) continue;
            CAPTURE(px_per_mm);
            CAPTURE(i);
            const double asked_px = asked.cap_mm[static_cast<std::size_t>(i)] * px_per_mm;
            const int rows = inked_rows(atlas, type(i), U'H');
            CHECK(rows >= asked_px - 1e-6);
            CHECK(rows < asked_px + 1);
            CHECK(rows == made.cap_px(type(i)));
            const Glyph h = atlas.glyph(type(i), U'H');
            CHECK(h.y1 >= 0);
            CHECK(h.y1 <= 1);  // stands on the baseline; the picture may bear an empty row
        }
    }
}

// OpenGL 3.3 cards of the last fifteen years take textures of 8192 (common practice, no source); what is larger is drawn as nothing.
TEST_CASE("the sheets of letters that are read from 3 m stay within what a graphics card takes, and their letters keep their size") {
    for (const double scale : {1.0, 1.4, 1.8}) {  // 1920 to 3840 pixels across
        CAPTURE(scale);
        Sizes far{.px_per_mm = 6.43};
        // look.md's 22 and 120 minutes of arc at 3 m.
        far.cap_mm.fill(19.2 * scale);
        far.cap_mm[static_cast<std::size_t>(Type::Display)] = 34.6 * scale;
        far.cap_mm[static_cast<std::size_t>(Type::Numeral)] = 104.7 * scale;
        const Fonts made = fonts(far);
        const Atlas atlas(made);
        for (const auto which : {Atlas::Which::Reading, Atlas::Which::Figures}) {
            CHECK(atlas.sheet(which).width <= 8192);
            CHECK(atlas.sheet(which).height <= 8192);
        }
        for (const Type of : {Type::Text, Type::Display}) {
            const Glyph h = atlas.glyph(of, U'H');
            const double tall = made.cap_px(of);
            CHECK(std::abs(static_cast<double>(h.y1 - h.y0) - tall) <= 0.03 * tall);
        }
    }
}

TEST_CASE("the giant digits are as tall as asked") {
    const Fonts made = fonts(sizes(4.68));
    const Atlas atlas(made);
    // B612's flat-topped digits are as tall as its capitals, to two per cent.
    for (const char32_t digit : {U'1', U'4', U'7'})
        CHECK(inked_rows(atlas, Type::Numeral, digit) == doctest::Approx(40 * 4.68).epsilon(0.02));
}

// look.md: numerals are tabular, nothing jumps when a figure changes.
TEST_CASE("all digits are equally wide in every role") {
    const Fonts made = fonts(sizes(4.0));
    for (int i = 0; i < picture::types; ++i)
        for (const char digit : std::string("0123456789")) {
            CAPTURE(i);
            CAPTURE(digit);
            CHECK(made.width_mm(type(i), std::string(1, digit)) == doctest::Approx(made.width_mm(type(i), "0")).epsilon(1e-9));
        }
}

TEST_CASE("a width grows with the text and with the role's height alone") {
    const Fonts coarse = fonts(sizes(4.0)), fine = fonts(sizes(8.0));
    CHECK(coarse.width_mm(Type::Text, "") == 0);
    const double one = coarse.width_mm(Type::Text, "Raise"), two = coarse.width_mm(Type::Text, "RaiseRaise");
    CHECK(two == doctest::Approx(2 * one).epsilon(1e-9));
    // the same glass at twice the pixels: only the rounding up to whole pixels differs
    const double ratio = fine.cap_mm(Type::Text) / coarse.cap_mm(Type::Text);
    CHECK(fine.width_mm(Type::Text, "Raise") == doctest::Approx(one * ratio).epsilon(1e-9));
}

TEST_CASE("the measures handed to the drawing of pictures are the same") {
    const picture::Lettering lettering = fonts(sizes(4.0)).lettering();
    const Fonts made = fonts(sizes(4.0));
    CHECK(lettering.width(Type::Title, "Raise 3 spokes") == made.width_mm(Type::Title, "Raise 3 spokes"));
    CHECK(lettering.cap(Type::Title) == made.cap_mm(Type::Title));
}

TEST_CASE("broken text has a width and does no harm") {
    CHECK(letters("a\xc2\xb5\xe2\x80\x93") == U"aµ–");
    CHECK(letters("\xc2") == U"\ufffd");
    CHECK(letters("\xe2\x80x") == U"\ufffdx");
    CHECK(letters("\xff\x80") == U"\ufffd\ufffd");
    CHECK(letters("\xf0\x9f\x98\x80") == U"\U0001F600");
    CHECK(fonts(sizes(4.0)).width_mm(Type::Text, "\xff") > 0);
}

TEST_CASE("a missing or damaged font is a failure that names it") {
    const auto missing = Fonts::load("/nowhere", sizes(4.0));
    REQUIRE_FALSE(static_cast<bool>(missing));
    CHECK(missing.error().what == Failure::What::NoFont);
    CHECK(text(missing.error()).find("/nowhere/B612-Regular.otf") != std::string::npos);

    const auto folder = std::filesystem::temp_directory_path() / "device-fonts-test";
    std::filesystem::create_directories(folder);
    std::ofstream(folder / "B612-Regular.otf") << std::string(5000, 'x');
    const auto damaged = Fonts::load(folder.string(), sizes(4.0));
    std::filesystem::remove_all(folder);
    REQUIRE_FALSE(static_cast<bool>(damaged));
    CHECK(damaged.error().what == Failure::What::NoFont);
}

// Names and references are typed in any alphabet. B612 has none of these letters: Polish, Czech, Turkish, Cyrillic.
TEST_CASE("a letter that B612 lacks is drawn from the font that stands in, its capitals as tall, and is not the question mark") {
    const Fonts made = fonts(sizes(4.0));
    const Atlas atlas(made);
    for (int i = 0; i < picture::types; ++i) {
        if (type(i) == Type::Numeral) continue;
        CAPTURE(i);
        const Glyph question = atlas.glyph(type(i), U'?');
        for (const char32_t letter : {U'Ł', U'ř', U'ğ', U'Ж'}) {
            CAPTURE(static_cast<std::uint32_t>(letter));
            CHECK(made.stands_in(type(i), letter));
            const Glyph glyph = atlas.glyph(type(i), letter);
            CHECK((glyph.u0 != question.u0 || glyph.v0 != question.v0));
            CHECK(made.step_px(type(i), letter) > glyph.x1 - glyph.x0 - 3);
        }
        const int cap = made.cap_px(type(i));
        CHECK(std::abs(inked_rows(atlas, type(i), U'Ł') - cap) <= 1);
        CHECK(std::abs(inked_rows(atlas, type(i), U'Ж') - cap) <= 1);
        CHECK_FALSE(made.has(type(i), U'漢'));  // neither font has it: '?'
    }
}

// Every letter that the program's own words and procedures use: a letter that the font lacks would be shown as '?'.
TEST_CASE("B612 has every letter of the program's words and procedures") {
    const Fonts made = fonts(sizes(4.0));
    int files = 0;
    std::set<char32_t> missing;
    for (const char* const folder : {"words", "procedures"}) {
        const auto path = std::filesystem::path(SOURCE_DIR) / "assets" / folder;
        if (!std::filesystem::exists(path)) continue;
        for (const auto& entry : std::filesystem::directory_iterator(path)) {
            if (entry.path().extension() != ".toml") continue;
            ++files;
            std::stringstream all;
            all << std::ifstream(entry.path()).rdbuf();
            for (const char32_t letter : letters(all.str()))
                for (int i = 0; i < picture::types; ++i)
                    if (letter >= U' ' && type(i) != Type::Numeral && (!made.has(type(i), letter) || made.stands_in(type(i), letter)))
                        missing.insert(letter);
        }
    }
    for (const char32_t letter : missing) FAIL_CHECK("no letter for U+" << std::hex << static_cast<std::uint32_t>(letter));
    CHECK(files > 0);
}
