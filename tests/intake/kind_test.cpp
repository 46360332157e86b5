#include "intake/kind.hpp"
#include "problems.hpp"

using namespace intake;

TEST_CASE("a file is told by its keys, also one that is not right yet") {
    const std::vector<std::pair<std::string, Kind>> rows{
        {"[case]\nreference = \"x\"\n", Kind::Case},
        {"[donor]\npunch = \"x\"\n", Kind::Case},
        {"[[phase]]\nid = \"x\"\n", Kind::Procedure},
        {"kind = \"trephine\"\n", Kind::Trephine},
        {"kind = \"punch\"\n", Kind::Punch},
        {"kind = \"knife\"\ndots = 4\n", Kind::Punch},
        {"kind = \"knife\"\n", Kind::Trephine},
        {"advance_um = 60\n", Kind::Trephine},
        {"sizes_mm = [7.5]\n", Kind::Punch},
        {"language = \"en\"\n[[count]]\nid = \"x\"\n", Kind::Unit},
        {"language = \"en\"\nname = \"English\"\n[count]\nx = \"y\"\n[case]\nx = \"y\"\n", Kind::Words},
        {"language = \"en\"\n", Kind::Words},
    };
    for (const auto& row : rows) {
        const std::string text = row.first;
        CAPTURE(text);
        const auto guessed = kind_of(text, "f");
        REQUIRE(guessed);
        CHECK(*guessed == row.second);
    }
}

TEST_CASE("a file of no kind, and one that is no TOML, are problems") {
    CHECK(test::lines(kind_of("", "f")) ==
          test::Lines{"f:1:1: file: found no key that tells what it is; allowed a case, procedure, trephine, punch, unit or words file"});
    CHECK(check("x = 1", "f").size() == 1);
    REQUIRE(check("x =", "f").size() == 1);
    CHECK(check("x =", "f").front().key == "toml");
}

TEST_CASE("a file is checked by the reader of its kind") {
    const auto first_key = [](const std::string& text) { return check(text, "f").at(0).key; };
    CHECK(first_key("[case]\n") == "case.reference");
    CHECK(first_key("[[phase]]\n") == "id");
    CHECK(first_key("kind = \"trephine\"\n") == "id");
    CHECK(first_key("kind = \"punch\"\n") == "id");
    CHECK(first_key("hand = \"right\"\n") == "count");
    CHECK(first_key("language = \"en\"\n") == "name");
    CHECK(text(Kind::Words) == "words");
}
