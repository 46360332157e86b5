// A wording file: `language` (a code such as "en"), `name` (the language's own name), and texts by id. Tables are flattened
// with dots, so [step] done = "Done" is "step.done". In a text {0} to {9} stand for values that the program puts in, and names
// such as {host} for the figures of the case (placeholders.hpp); any other brace is a mistake. Whether every id that the program uses is
// there is for a test of the program.
#pragma once

#include "measure/problem.hpp"
#include "measure/result.hpp"

#include <map>
#include <string>
#include <string_view>

namespace intake {

struct WordsFile {
    std::string language{};
    std::string name{};
    std::map<std::string, std::string> texts{};
    bool operator==(const WordsFile&) const = default;
};

measure::Result<WordsFile, measure::Problems> read_words(std::string_view text, const std::string& name);

}  // namespace intake
