#include "picture/wrap.hpp"
#include "picture/bounds.hpp"
#include "support/lettering.hpp"

#include <doctest/doctest.h>

using namespace picture;

namespace {

/// Every letter one millimetre wide, capitals two high.
const Lettering even{.width = [](Type, std::string_view text) { return static_cast<double>(text.size()); },
                     .cap = [](Type) { return 2.0; }};

}  // namespace

TEST_CASE("text breaks by words, in lines of even length") {
    CHECK(wrap("one two", Type::Text, 20, even) == std::vector<std::string>{"one two"});
    CHECK(wrap("one two three", Type::Text, 9, even) == std::vector<std::string>{"one two", "three"});
    CHECK(wrap("aa bb cc dd", Type::Text, 8, even) == std::vector<std::string>{"aa bb", "cc dd"});
    CHECK(wrap("", Type::Text, 8, even).empty());
}

TEST_CASE("a word wider than the room stays whole") {
    CHECK(wrap("a longestword", Type::Text, 5, even) == std::vector<std::string>{"a", "longestword"});
}

TEST_CASE("a figure and its unit are not parted") {
    CHECK(wrap("host 7.50 mm: now", Type::Text, 9, even) == std::vector<std::string>{"host", "7.50 mm:", "now"});
    CHECK(wrap("at 80 % of it", Type::Text, 5, even) == std::vector<std::string>{"at", "80 %", "of it"});
}

TEST_CASE("no line is wider than the room where its words are not") {
    const std::string text = "The surgeon says each spoke. Tap as you hear it, and tell the surgeon what is left.";
    for (double width = 9; width < 90; width += 0.5) {
        CAPTURE(width);
        CHECK(widest(wrap(text, Type::Text, width, even), Type::Text, even) <= width);
    }
}

TEST_CASE("the box of a text is where its strokes are") {
    const Text left{.at = {10, 20}, .text = "ABC"};
    CHECK(bounds(left, even) == Box{10, 18, 3, 2});
    CHECK(bounds(Text{.at = {10, 20}, .text = "ABC", .align = Align::Right}, even) == Box{7, 18, 3, 2});
    CHECK(bounds(Text{.at = {10, 20}, .text = "ABCD", .align = Align::Centre}, even) == Box{8, 18, 4, 2});
    CHECK(bounds(Text{.at = {10, 20}, .text = "gap"}, even).h == doctest::Approx(2.66).epsilon(1e-9));
}

TEST_CASE("B612's figures are of one width, so that nothing jumps when a figure changes") {
    const auto lettering = support::lettering(screen::table_typography({344, 194}));
    for (const Type type : {Type::Numeral, Type::Value, Type::Text, Type::Strong}) {
        for (const std::string digit : {"0", "1", "2", "3", "4", "5", "6", "7", "9"})
            CHECK(lettering.width(type, digit) == lettering.width(type, "8"));
    }
}

TEST_CASE("what a person typed is filled line by line, and a word without an end is broken between letters") {
    using Lines = std::vector<std::string>;
    CHECK(wrap_typed("one two three", Type::Text, 9, even) == Lines{"one two", "three"});
    CHECK(wrap_typed("a longestword", Type::Text, 5, even) == Lines{"a", "longe", "stwor", "d"});
    CHECK(wrap_typed("nnnnn", Type::Text, 5, even) == Lines{"nnnnn"});
    CHECK(wrap_typed("a  b ", Type::Text, 9, even) == Lines{"a  b "});
    CHECK(wrap_typed("", Type::Text, 9, even) == Lines{""});
    std::string umlauts;
    for (int i = 0; i < 4; ++i) umlauts += "ä";
    for (const std::string& line : wrap_typed(umlauts, Type::Text, 3, even)) CHECK(line.size() % 2 == 0);
}
