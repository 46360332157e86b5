#include "paper/printed.hpp"

#include <doctest/doctest.h>

namespace {

using picture::Type;

picture::Lettering lettering() {
    // Every letter half as wide as it is tall: counts bytes, which is enough here.
    return {.width = [](Type, std::string_view text) { return static_cast<double>(text.size()); }, .cap = [](Type) { return 2.0; }};
}

std::vector<std::string> texts(const picture::Shapes& shapes) {
    std::vector<std::string> found{};
    for (const auto& shape : shapes) {
        if (const auto* text = std::get_if<picture::Text>(&shape)) found.push_back(text->text);
    }
    return found;
}

std::string more(std::size_t count) { return "and " + std::to_string(count) + " more"; }

}  // namespace

TEST_CASE("what is too wide is cut with an ellipsis, by whole letters") {
    CHECK(paper::cut_to("short", Type::Text, 5, lettering()) == "short");
    CHECK(paper::cut_to("longer text", Type::Text, 9, lettering()) == "longer…");
    CHECK(paper::cut_to("ééééé", Type::Text, 8, lettering()) == "éé…");
    CHECK(paper::cut_to("x", Type::Text, 0, lettering()) == "…");
}

TEST_CASE("a text of too many lines keeps its beginning and says that it goes on") {
    const auto lines = paper::lines_of("one two three four five six seven", Type::Text, 12, 2, lettering());
    REQUIRE(lines.size() == 2);
    CHECK(lines[0].starts_with("one"));
    CHECK(lines[1].ends_with("…"));
    CHECK(paper::lines_of(std::string(100'000, 'x'), Type::Text, 12, 2, lettering()).back().ends_with("…"));
}

TEST_CASE("a list that is too long ends with how many more there are") {
    const std::vector<std::string> entries{"a", "b", "c", "d", "e"};
    for (std::size_t rows = 1; rows <= 6; ++rows) {
        picture::Shapes shapes{};
        const auto by = lettering();
        const double height = static_cast<double>(rows) * picture::pitch(Type::Text, by) + 0.01;
        paper::Column column({.x = 0, .y = 0, .w = 20, .h = height}, shapes, by);
        column.list(entries, 2, more);
        auto said = texts(shapes);
        CAPTURE(rows);
        CHECK(said.size() == std::min<std::size_t>(rows, 5));
        if (rows >= 5) {
            CHECK(said == entries);
        } else {
            CHECK(said.back() == more(5 - (rows - 1)));
        }
        CHECK(column.left() >= 0);
    }
}

TEST_CASE("a row whose value does not fit beside its label wraps, and a full column takes no more") {
    picture::Shapes shapes{};
    const auto by = lettering();
    paper::Column column({.x = 0, .y = 0, .w = 30, .h = 9}, shapes, by);
    CHECK(column.pair({"label", "a value of four words"}));
    CHECK(texts(shapes).size() == 2);
    CHECK(column.pair({"label", "a value"}));
    CHECK_FALSE(column.pair({"label", "a value"}));
    CHECK(column.left() >= 0);
}
