#include "intake/words.hpp"
#include "problems.hpp"

using namespace intake;

namespace {

test::Lines problems(const std::string& text) {
    return test::lines(read_words("language = \"en\"\nname = \"English\"\n" + text, "w.toml"));
}

}  // namespace

TEST_CASE("nested tables of words are flattened with dots") {
    const auto read = read_words(R"(language = "pt-BR"
name = "Português"
yes = "Sim"
[step]
done = "{0} de {1}"
[step.may]
skip = "Host {host}"
)",
                                 "w.toml");
    REQUIRE(read);
    CHECK(*read == WordsFile{.language = "pt-BR",
                             .name = "Português",
                             .texts = {{"yes", "Sim"}, {"step.done", "{0} de {1}"}, {"step.may.skip", "Host {host}"}}});
}

TEST_CASE("what is wrong with a wording is told at its place") {
    struct Row {
        std::string name, text;
        test::Lines lines;
    };
    const std::string braces = "; allowed in braces only 0 to 9, eye, host, donor, raise, planned, sutures, spokes, lower, aim";
    const std::vector<Row> rows{
        {"all well", "[a]\nb = \"{0}{9}\"\nc = \"\"\n", {}},
        {"open brace", "[a]\nb = \"{0\"\n", {"w.toml:4:5: a.b: found \"{0\"" + braces}},
        {"closing brace", "[a]\nb = \"0}\"\n", {"w.toml:4:5: a.b: found \"0}\"" + braces}},
        {"empty braces", "[a]\nb = \"{}\"\n", {"w.toml:4:5: a.b: found \"{}\"" + braces}},
        {"two digits", "[a]\nb = \"{10}\"\n", {"w.toml:4:5: a.b: found \"{10}\"" + braces}},
        {"brace in brace", "[a]\nb = \"{{0}}\"\n", {"w.toml:4:5: a.b: found \"{{0}}\"" + braces}},
        {"unknown name", "[a]\nb = \"{depth}\"\n", {"w.toml:4:5: a.b: found \"{depth}\"" + braces}},
        {"a number", "[a]\nb = 5\n", {"w.toml:4:5: a.b: found 5; allowed text, or a table of texts"}},
        {"one id by two ways", "\"a.b\" = \"x\"\n[a]\nb = \"y\"\n", {"w.toml:3:1: a.b: found the id again; allowed each id once"}},
    };
    for (const Row& row : rows) {
        CAPTURE(row.name);
        CHECK(problems(row.text) == row.lines);
    }
    CHECK(test::lines(read_words("", "w.toml")) ==
          test::Lines{"w.toml:1:1: language: found nothing; allowed a language code such as \"en\" or \"pt-BR\"",
                      "w.toml:1:1: name: found nothing; allowed text of 1 to 40 characters on one line, no blanks at its ends"});
}
