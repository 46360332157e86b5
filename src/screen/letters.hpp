// The letters of a UTF-8 text, each whole. What is typed is never cut within one.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace screen {

/// Letters, not bytes: a minus sign is one.
std::size_t letter_count(std::string_view utf8);
std::vector<std::string> letters_of(std::string_view utf8);
/// Takes the last letter off; an empty text stays.
void erase_letter(std::string& utf8);
/// A name or role as a label begins with it: its first letter a capital, as far as Latin has one in one letter (not ß).
std::string with_capital(std::string utf8);

}  // namespace screen
