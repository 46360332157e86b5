// What is typed at the Desk: by a keyboard, or where there is none by keys under a finger.
#include "screen/desk_actions.hpp"

#include <string_view>

namespace screen {
namespace {

/// What a field takes, letters of every kind or these only; and under a finger its keys, turned over to others where it has more.
struct Field {
    std::string_view page{};
    std::size_t longest = 0;
    std::string_view only{};
    std::string_view keys{}, turned{};
};
constexpr std::string_view digits = "1234567890", time = "1234567890:", letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ.,",
                           code = "ABCDEFGHIJKLMNOPQRSTUVWXYZ-", signs = "1234567890.:=&";
constexpr Field fields[] = {
    {"note", 240, "", letters},      {"seen", 3, digits, digits},       {"plan", 3, digits, digits},  {"by", 12},
    {"contact", 28, "", letters},    {"tell", 120, "", letters},        {"bank", 28, "", letters},    {"bank-words", 240, "", letters},
    {"label", 240, "", code, signs}, {"material", 40, "", code, signs}, {"lot", 20, "", code, signs}, {"time", 8, time, time},
    {"depth", 4, digits, digits},    {"depth-words", 40, "", letters}};

const Field* field_of(const std::string& page) {
    for (const Field& one : fields)
        if (one.page == page) return &one;
    return nullptr;
}

bool belongs(const Field& field, char32_t letter) {
    if (field.only.empty()) return letter >= U' ' && letter != 0x7f;
    return letter < 0x80 && field.only.find(static_cast<char>(letter)) != std::string_view::npos;
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

bool has_field(const DeskState& desk) { return field_of(desk.page) != nullptr; }

DeskState turned_to(const Show& show) { return {.page = show.page, .argument = show.argument}; }

DeskState keyed_in(DeskState desk, const Show& show) {
    if (show.page == "erase") return typed(std::move(desk), U'\b');
    if (show.page == "put") desk.typed = show.argument;
    if (show.page == "put") return desk;
    for (const char letter : show.argument) desk = typed(std::move(desk), static_cast<char32_t>(static_cast<unsigned char>(letter)));
    return desk;
}

DeskState typed(DeskState desk, char32_t letter) {
    const Field* field = field_of(desk.page);
    if (letter == U'\b') {
        erase(desk.typed);
    } else if (field != nullptr && belongs(*field, letter) && desk.typed.size() < field->longest) {
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
    const Field* field = field_of(desk.page);
    if (field == nullptr) return keys;
    const bool turned = !field->turned.empty() && desk.turned % 2 == 1;
    for (const char letter : turned ? field->turned : field->keys) keys.push_back(key_target(std::string(1, letter)));
    if (!field->turned.empty()) keys.push_back(under_finger("key-turn", turned ? "ABC" : "123", {.page = "turn"}));
    if (field->only.empty()) keys.push_back(under_finger("key-space", words("drawer.space"), {.page = "key", .argument = " "}));
    keys.push_back(under_finger("erase", words("form.erase"), {.page = "erase"}));
    return keys;
}

}  // namespace screen
