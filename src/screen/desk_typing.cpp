// What is typed at the Desk: by a keyboard, or where there is none by keys under a finger.
#include "screen/desk_actions.hpp"

namespace screen {
namespace {

constexpr std::size_t longest_note = 240, longest_initials = 12, longest_number = 3;

bool letter_belongs(const std::string& page, char32_t letter) {
    if (page == "seen" || page == "plan") return letter >= U'0' && letter <= U'9';
    return letter >= U' ' && letter != 0x7f;
}

std::size_t longest(const std::string& page) {
    if (page == "seen" || page == "plan") return longest_number;
    return page == "by" ? longest_initials : longest_note;
}

void append(std::string& text, char32_t letter) {
    const auto byte = [&](char32_t bits) { text.push_back(static_cast<char>(bits)); };
    if (letter < 0x80) {
        byte(letter);
    } else if (letter < 0x800) {
        byte(0xc0 | letter >> 6), byte(0x80 | (letter & 0x3f));
    } else if (letter < 0x10000) {
        byte(0xe0 | letter >> 12), byte(0x80 | (letter >> 6 & 0x3f)), byte(0x80 | (letter & 0x3f));
    }
}

void erase(std::string& text) {
    while (!text.empty() && (static_cast<unsigned char>(text.back()) & 0xc0U) == 0x80U) text.pop_back();
    if (!text.empty()) text.pop_back();
}

Target under_finger(std::string id, std::string label, Show show) {
    return {.id = std::move(id), .label = std::move(label), .weight = Weight::Pointer, .act = std::move(show)};
}

Target key_target(const std::string& letter) { return under_finger("key-" + letter, letter, {.page = "key", .argument = letter}); }

}  // namespace

bool has_field(const DeskState& desk) { return desk.page == "note" || desk.page == "seen" || desk.page == "by" || desk.page == "plan"; }

DeskState turned_to(const Show& show) { return {.page = show.page, .argument = show.argument}; }

DeskState keyed_in(DeskState desk, const Show& show) {
    if (show.page == "erase") return typed(std::move(desk), U'\b');
    if (show.page == "put") desk.typed = show.argument;
    if (show.page == "put") return desk;
    for (const char letter : show.argument) desk = typed(std::move(desk), static_cast<char32_t>(static_cast<unsigned char>(letter)));
    return desk;
}

DeskState typed(DeskState desk, char32_t letter) {
    if (letter == U'\b') {
        erase(desk.typed);
    } else if (has_field(desk) && letter_belongs(desk.page, letter) && desk.typed.size() < longest(desk.page)) {
        append(desk.typed, letter);
    }
    return desk;
}

std::vector<Target> desk_keys(const guide::CaseState& state, const DeskState& desk, const Words& words) {
    std::vector<Target> keys{};
    if (desk.page == "by") {
        for (const std::string& name : {state.brief.unit.scrub_name, state.brief.unit.circulating_name})
            keys.push_back(under_finger("put-" + name, name, {.page = "put", .argument = name}));
        return keys;
    }
    if (!has_field(desk)) return keys;
    const std::string letters = desk.page == "seen" || desk.page == "plan" ? "1234567890" : "ABCDEFGHIJKLMNOPQRSTUVWXYZ.,";
    for (const char letter : letters) keys.push_back(key_target(std::string(1, letter)));
    if (desk.page == "note") keys.push_back(under_finger("key-space", words("drawer.space"), {.page = "key", .argument = " "}));
    keys.push_back(under_finger("erase", words("form.erase"), {.page = "erase"}));
    return keys;
}

}  // namespace screen
