// What is typed at the Desk: by a keyboard, or where there is none by keys under a finger.
#include "screen/desk_actions.hpp"
#include "screen/keypad.hpp"
#include "screen/letters.hpp"

#include <string_view>

namespace screen {
namespace {

/// What a field takes, letters of every kind or these only, how many of them, and the pad it has under a finger.
struct Field {
    std::string_view page{};
    std::size_t longest = 0;
    Pad pad{};
    std::string_view only{};
};
constexpr std::string_view digits = "1234567890";
constexpr Field fields[] = {{"note", 240, Pad::Words},
                            {"seen", 3, Pad::Digits, digits},
                            {"plan", 3, Pad::Digits, digits},
                            {"by", 12, Pad::Words},
                            {"initials", 12, Pad::Words},
                            {"contact", 28, Pad::Words},
                            {"tell", 120, Pad::Words},
                            {"bank", 28, Pad::Words},
                            {"bank-words", 240, Pad::Words},
                            {"label", 240, Pad::Code},
                            {"material", 40, Pad::Words},
                            {"lot", 20, Pad::Code},
                            {"time", 8, Pad::Time, "1234567890:"},
                            {"depth", 4, Pad::Digits, digits},
                            {"depth-words", 40, Pad::Words}};

const Field* field_of(const std::string& page) {
    for (const Field& one : fields)
        if (one.page == page) return &one;
    return nullptr;
}

std::string encoded(char32_t letter) {
    std::string made{};
    const auto byte = [&](char32_t bits) { made.push_back(static_cast<char>(bits)); };
    if (letter < 0x80) {
        byte(letter);
    } else if (letter < 0x800) {
        byte(0xc0 | letter >> 6), byte(0x80 | (letter & 0x3f));
    } else if (letter < 0x10000) {
        byte(0xe0 | letter >> 12), byte(0x80 | (letter >> 6 & 0x3f)), byte(0x80 | (letter & 0x3f));
    }
    return made;
}

/// A letter more, where it belongs in the field and has room.
void put(DeskState& desk, const std::string& letter) {
    const Field* field = field_of(desk.page);
    if (field == nullptr || letter.empty() || letter.front() == 0x7f) return;
    const bool control = static_cast<unsigned char>(letter.front()) < U' ';
    const bool belongs = field->only.empty() ? !control : field->only.find(letter) != std::string_view::npos;
    if (belongs && letter_count(desk.typed) < field->longest) desk.typed += letter;
}

/// Those who count, as the unit calls them, and what leads to the letters of anybody else.
Keys names(const guide::CaseState& state, const DeskState& desk, const Words& words) {
    Keys made{.a_row = 1};
    for (const std::string& name : {state.brief.unit.scrub_name, state.brief.unit.circulating_name})
        made.all.push_back({.id = "put-" + name, .label = name, .act = Show{.page = "put", .argument = name}});
    made.all.push_back(turn_to("initials", words("count.somebody"), "", {.page = "initials", .argument = desk.argument}));
    return made;
}

}  // namespace

bool has_field(const DeskState& desk) { return field_of(desk.page) != nullptr; }

DeskState turned_to(const Show& show) { return {.page = show.page, .argument = show.argument}; }

DeskState keyed_in(DeskState desk, const Show& show) {
    if (show.page == "erase") erase_letter(desk.typed);
    if (show.page == "put") desk.typed = show.argument;
    if (show.page == "key") put(desk, show.argument);
    return desk;
}

DeskState typed(DeskState desk, char32_t letter) {
    if (letter == U'\b')
        erase_letter(desk.typed);
    else
        put(desk, encoded(letter));
    return desk;
}

Keys desk_keys(const guide::CaseState& state, const DeskState& desk, const Words& words) {
    if (desk.page == "by") return names(state, desk, words);
    const Field* field = field_of(desk.page);
    return field == nullptr ? Keys{} : keypad(field->pad, desk.turned % 2 == 1, words);
}

}  // namespace screen
