// phrases WORDS.toml: what the voice can say, one phrase a line, "ID TAB TEXT", the first line the name of the voice. Used when the
// program is built, to speak each into a file.
#include "intake/words.hpp"
#include "screen/callouts.hpp"
#include "stock.hpp"

#include <fmt/format.h>

int main(int argc, char** argv) {
    const std::string path = argc == 2 ? argv[1] : "";
    const auto text = graftside::read_text(path);
    const auto read = intake::read_words(text ? *text : "", path);
    if (!text || !read) {
        fmt::print(stderr, "usage: phrases WORDS.toml\n");
        return 2;
    }
    const screen::Words words(read->texts);
    fmt::print("{}\n", words("say.voice"));
    for (const screen::Phrase& phrase : screen::phrases(words)) fmt::print("{}\t{}\n", phrase.id, phrase.text);
    return 0;
}
