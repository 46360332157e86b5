// Text that is no TOML, or that the TOML library must not see as it stands.
#include "good_case.hpp"
#include "intake/case.hpp"
#include "problems.hpp"

#include <string>
#include <vector>

using namespace intake;

namespace {

const std::string& good = test::good_case;

std::vector<std::string> problems(const std::string& text) { return test::lines(read_case(text, "k.toml")); }

}  // namespace

TEST_CASE("a file that cannot be read as TOML is one problem at its place") {
    struct Row {
        std::string name, text;
        int line, column;
    };
    const std::vector<Row> rows{
        {"no value", "[case]\nreference =\n", 2, 12},
        {"not UTF-8", "[case]\nreference = \"\xff\"\n", 2, 14},
        {"a letter outside the strings, where the library has a hole", "[case]\nÖ = 1", 2, 1},
        {"another one", "[case]\nreference = ア", 2, 13},
        {"a letter after an escaped line end, closed by nothing", "[case]\nreference = \"\"\"a\\\nö", 3, 2},
        {"brackets where a name should be", "[case]\n[[[", 2, 3},
        {"deep nesting", "[case]\nreference = " + std::string(2000, '['), 2, 29},
        {"a long dotted key",
         "x = 1\n" + std::string("a.") +
             [] {
                 std::string s;
                 for (int i = 0; i < 100'000; ++i) s += "a.";
                 return s;
             }() +
             "a = 1",
         2, 1},
    };
    for (const Row& row : rows) {
        CAPTURE(row.name);
        const auto read = read_case(row.text, "k.toml");
        REQUIRE(!read);
        CHECK(read.error().size() == 1);
        CHECK(read.error().front().key == "toml");
        CHECK(read.error().front().line == row.line);
        if (row.line > 1) CHECK(read.error().front().column == row.column);
    }
}

TEST_CASE("letters of every plane come back as they were written, also after an escaped line end and a byte order mark") {
    for (const char* raw : {"Ö", "é\u0300", "ア", "\U0001F441"}) {
        const std::string letters = raw;
        CAPTURE(letters);
        const auto read = read_case(test::replaced(good, "\"K-0147\"", "\"\"\"\\\n  " + letters + "\"\"\""), "k.toml");
        REQUIRE(read);
        CHECK(read->file.reference == letters);
    }
    CHECK(problems("\xEF\xBB\xBF" + good) == std::vector<std::string>{});
    CHECK(problems("\xEF\xBB\xBF" + test::replaced(good, "[case]", "[cäse]")).size() == 1);
}

TEST_CASE("a file of 1 MiB is read and one byte more is not") {
    const auto padded = [](std::size_t size) { return good + "#" + std::string(size - good.size() - 1, ' '); };
    CHECK(read_case(padded(1024 * 1024), "k.toml"));
    CHECK(problems(padded(1024 * 1024 + 1)) ==
          std::vector<std::string>{"k.toml:1:1: file: found 1048577 bytes; allowed at most 1048576 bytes"});
}
