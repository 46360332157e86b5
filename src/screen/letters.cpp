#include "screen/letters.hpp"

#include <algorithm>

namespace screen {
namespace {

bool begins_letter(char byte) { return (static_cast<unsigned char>(byte) & 0xc0U) != 0x80U; }

}  // namespace

std::size_t letter_count(std::string_view utf8) { return static_cast<std::size_t>(std::count_if(utf8.begin(), utf8.end(), begins_letter)); }

std::vector<std::string> letters_of(std::string_view utf8) {
    std::vector<std::string> made{};
    for (const char byte : utf8) {
        if (begins_letter(byte) || made.empty()) made.emplace_back();
        made.back() += byte;
    }
    return made;
}

void erase_letter(std::string& utf8) {
    while (!utf8.empty() && !begins_letter(utf8.back())) utf8.pop_back();
    if (!utf8.empty()) utf8.pop_back();
}

std::string with_capital(std::string utf8) {
    if (utf8.empty()) return utf8;
    const bool accented =
        utf8.size() > 1 && utf8[0] == '\xc3' && utf8[1] >= '\xa0' && utf8[1] <= '\xbe' && utf8[1] != '\xb7';  // à to þ, but ÷
    if (accented || (utf8[0] >= 'a' && utf8[0] <= 'z')) utf8[accented ? 1 : 0] = static_cast<char>(utf8[accented ? 1 : 0] - ('a' - 'A'));
    return utf8;
}

}  // namespace screen
