#include "screen/keypad.hpp"

#include "screen/letters.hpp"

namespace screen {
namespace {

constexpr auto signs = "1234567890.,:-/+%", code_letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ-", code_signs = "1234567890.:=&";

Target key(std::string id, std::string label, Show show) {
    return {.id = std::move(id), .label = std::move(label), .weight = Weight::Elsewhere, .act = std::move(show)};
}

Keys keys(const std::string& all, int a_row) {
    Keys made{.a_row = a_row};
    for (const std::string& letter : letters_of(all)) made.all.push_back(key("key-" + letter, letter, {.page = "key", .argument = letter}));
    return made;
}

/// Two sides: letters, and what is seldom needed between them.
Keys two_sides(const std::string& letters, const std::string& other, bool on_letters) {
    constexpr int most_a_row = 13, digits_a_row = 3;
    const bool few = other.size() <= 12;
    Keys made = keys(on_letters ? letters : other, !on_letters && few ? digits_a_row : most_a_row);
    made.all.push_back(key("key-turn", on_letters ? "123" : "ABC", {.page = "turn"}));
    return made;
}

void add_space(Keys& keys, const Words& words) {
    keys.all.push_back(key("key-space", words("drawer.space"), {.page = "key", .argument = " "}));
    keys.wide_last = true;
}

}  // namespace

Keys keypad(Pad pad, bool turned, const Words& words) {
    constexpr int a_row = 3;
    switch (pad) {
        case Pad::Digits: {
            Keys made = keys("1234567890", a_row);
            made.wide_last = true;  // nought, under the others
            return made;
        }
        case Pad::Time:
            return keys("123456789:0", a_row);  // nought under the eight, as on every pad
        case Pad::Reference:
            return two_sides(words("keys.letters") + "-.", "123456789-0", turned);
        case Pad::Words:
        case Pad::Code: {
            const bool code = pad == Pad::Code;
            Keys made = two_sides(code ? code_letters : words("keys.letters"), code ? code_signs : signs, !turned);
            add_space(made, words);
            return made;
        }
    }
    return {};
}

Keys figure_keypad(const std::string& point, bool sign) {
    constexpr int a_row = 3;
    Keys made = keys(sign ? "123456789.0-" : "123456789.0", a_row);
    if (!sign) made.wide_last = true;
    for (Target& one : made.all)
        if (one.label == ".") one.label = point;
    return made;
}

Target erase_key(const Words& words) { return key("erase", words("form.erase"), {.page = "erase"}); }

}  // namespace screen
