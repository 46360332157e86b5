#include "screen/new_case.hpp"

#include "screen/keypad.hpp"
#include "screen/letters.hpp"

#include <algorithm>
#include <array>

namespace screen {
namespace {

/// One field: its id among the words, the key of the case file that its problems come under, and its choices (none: typed).
struct Field {
    std::string id{}, key{};
    std::vector<std::string> choices{};
};

std::vector<Field> fields(const SizesInStock& sizes) {
    return {{"reference", "case.reference"},
            {"eye", "case.eye", {"right", "left"}},
            {"reason", "case.reason", {"scar", "keratoconus", "oedema", "dystrophy", "regraft", "infection", "trauma", "other"}},
            {"seat", "case.seat", {"head", "temporal"}},
            {"keratometry", "eye.keratometry_D"},
            {"across", "eye.white_to_white_mm"},
            {"upright", "eye.white_to_white_mm"},
            {"method", "thickness.method", {"oct", "ultrasound", "scheimpflug", "slit-scanning"}},
            {"at_12", "thickness.readings"},
            {"at_3", "thickness.readings"},
            {"at_6", "thickness.readings"},
            {"at_9", "thickness.readings"},
            {"host", "host.diameter_mm", sizes.host},
            {"donor", "donor.diameter_mm", sizes.donor},
            {"aim", "aim", {"0.70", "0.75", "0.80", "0.90", "to-entry"}},
            {"pattern", "sutures.pattern", {"8 interrupted", "12 interrupted", "16 interrupted", "24 interrupted"}}};
}

std::string value_of(const ScreenState& screen, const std::string& id) {
    const auto found = screen.draft.find(id);
    return found == screen.draft.end() ? "" : found->second;
}

/// The aim as a number of spokes, the surgeon's own: "spokes-8".
constexpr std::string_view own_spokes = "spokes-";

/// A value as people read it: a choice in words where there are some, a figure as the language writes it. The reference is no figure.
std::string shown(const std::string& field, const std::string& value, const Words& words) {
    if (value.starts_with(own_spokes)) return words.counted("form.aim_spokes", {value.substr(own_spokes.size())});
    const std::string id = "form." + field + "_" + value;
    if (words.has(id)) return words(id);
    return field == "reference" ? value : typed_figure(value, words);
}

/// What may stand in a field, in words.
std::string allowed(const Field& field, const Words& words) {
    const std::string id = "form.allowed_" + field.id;
    if (!field.choices.empty()) return words("form.allowed", {words("form.allowed_pick")});
    return words("form.allowed", {words(words.has(id) ? id : "form.allowed_at")});
}

/// The problem of a field, or of one of its rows.
std::string problem_of(const Field& field, const FieldProblems& problems, const Words& words) {
    const auto found = std::find_if(problems.begin(), problems.end(),
                                    [&](const auto& one) { return one.first == field.key || one.first.starts_with(field.key + "["); });
    if (found == problems.end()) return "";
    return found->second.empty() ? allowed(field, words) : found->second;
}

/// A surgeon's habit may be none of the usual choices.
std::vector<std::string> with_own(std::vector<std::string> choices, const std::string& value) {
    if (!choices.empty() && !value.empty() && std::find(choices.begin(), choices.end(), value) == choices.end()) choices.push_back(value);
    return choices;
}

Target key(const std::string& id, std::string label, Show show) {
    Target made{.id = id, .label = std::move(label), .act = std::move(show)};
    made.weight = Weight::Elsewhere;
    return made;
}

Keys typing_keys(const Field& field, bool turned, const Words& words) {
    return field.id == "reference" ? keypad(Pad::Reference, turned, words) : figure_keypad(decimal_sign(words), true);
}

std::string reading_text(const ScreenState& screen, const std::string& id, const std::string& clock) {
    const std::string um = value_of(screen, id);
    if (um.empty()) return "";
    return "  { ring_mm = " + value_of(screen, "host") + ", clock = \"" + clock + "\", um = " + um + " },\n";
}

std::string quoted(const std::string& text) { return "\"" + text + "\""; }

/// `key = value`, or nothing for a field that is empty: the reader then says that the key is missing.
std::string entry(const std::string& key, const std::string& value) { return value.empty() ? "" : key + " = " + value + "\n"; }
std::string text_entry(const std::string& key, const std::string& value) { return value.empty() ? "" : entry(key, quoted(value)); }

std::string aim_text(const std::string& aim) {
    if (aim.empty()) return "";
    if (aim == "to-entry") return "goal = \"to-entry\"\n";
    return aim.starts_with(own_spokes) ? entry("spokes", aim.substr(own_spokes.size())) : entry("share", aim);
}

}  // namespace

std::string typed_figure(std::string typed, const Words& words) {
    const auto point = typed.find('.');
    if (point != std::string::npos) typed.replace(point, 1, decimal_sign(words));
    return typed;
}

std::string decimal_sign(const Words& words) { return words.has("number.decimal") ? words("number.decimal") : "."; }

ScreenState after(ScreenState screen, const Show& show) {
    if (show.page == "field") {
        screen.field = show.argument;
        screen.turned = false;
    } else if (show.page == "key") {
        const std::size_t longest = screen.field == initials_field ? 12 : 20;
        std::string& typed = screen.draft[screen.field];
        if (letter_count(typed) < longest) typed += show.argument;
    } else if (show.page == "turn") {
        screen.turned = !screen.turned;
    } else if (show.page == "erase") {
        erase_letter(screen.draft[screen.field]);
    } else if (show.page == "pick") {
        screen.draft[screen.field] = show.argument;
    } else {
        const bool kept = screen.page == "new" || screen.page.starts_with("plan");  // the plan of what was typed was looked at
        if (show.page == "new" && !kept) {
            screen.draft = {{"seat", "head"}, {"aim", "0.80"}, {"pattern", "16 interrupted"}};
            for (const auto& [field, value] : screen.habits) screen.draft[field] = value;
            screen.field = "reference";
        }
        if (show.page == "count-initials") {
            screen.field = initials_field;
            screen.draft.erase(initials_field);
        }
        screen.page = show.page;
        screen.argument = show.argument;
        screen.turned = false;
        screen.plan = {};
    }
    return screen;
}

FormModel new_case(const ScreenState& screen, const SizesInStock& sizes, const FieldProblems& problems, const Words& words) {
    FormModel made{.title = words("form.title"), .lines = {words("form.line")}};
    const std::string surgeon = value_of(screen, "surgeon"), first = value_of(screen, "first");
    if (!surgeon.empty()) made.lines = {words(first.empty() ? "form.habits" : "form.habits_first", {surgeon, first})};
    for (const Field& field : fields(sizes)) {
        FormModel::Field one{.value = shown(field.id, value_of(screen, field.id), words), .now = field.id == screen.field};
        one.target = key("field-" + field.id, words("form." + field.id), {.page = "field", .argument = field.id});
        one.problem = problem_of(field, problems, words);
        if (one.now && field.choices.empty()) made.keys = typing_keys(field, screen.turned, words);
        for (const std::string& choice : one.now ? with_own(field.choices, value_of(screen, field.id)) : std::vector<std::string>{}) {
            made.keys.all.push_back(key("pick-" + choice, shown(field.id, choice, words), {.page = "pick", .argument = choice}));
            if (choice == value_of(screen, field.id)) made.keys.all.back().look = Look::Filled;
        }
        made.fields.push_back(std::move(one));
    }
    made.foot = {key("back", words("page.back"), {.page = "cases"}), erase_key(words),
                 key("see-plan", words("plan-view.see"), {.page = "look-at-new"}), key("make", words("form.make"), {.page = "make"})};
    // It leads once all is there that no case file goes without; a tap before that says what is missing.
    const auto given = [&](const std::string& id) { return !value_of(screen, id).empty(); };
    constexpr std::array needed{"reference", "eye", "reason", "keratometry", "across", "upright", "method", "host", "donor"};
    constexpr std::array readings{"at_12", "at_3", "at_6", "at_9"};
    if (std::all_of(needed.begin(), needed.end(), given) && std::any_of(readings.begin(), readings.end(), given))
        made.foot.back().look = Look::Filled;
    return made;
}

std::string case_text(const ScreenState& screen, const std::string& day) {
    const auto value = [&](const std::string& id) { return value_of(screen, id); };
    std::string text = "[case]\n" + text_entry("reference", value("reference")) + "date = " + day + "\n" + text_entry("eye", value("eye")) +
                       text_entry("reason", value("reason")) + text_entry("seat", value("seat"));
    text += "\n[eye]\n" + entry("keratometry_D", value("keratometry"));
    if (!value("across").empty() && !value("upright").empty())
        text += "white_to_white_mm = [" + value("across") + ", " + value("upright") + "]\n";
    text += "\n[thickness]\n" + text_entry("method", value("method")) + "measured = " + day + "\n";
    const std::string readings = reading_text(screen, "at_12", "12:00") + reading_text(screen, "at_3", "3:00") +
                                 reading_text(screen, "at_6", "6:00") + reading_text(screen, "at_9", "9:00");
    if (!readings.empty() && !value("host").empty()) text += "readings = [\n" + readings + "]\n";
    text += "\n[host]\ntrephine = \"suction-trephine\"\n" + entry("diameter_mm", value("host"));
    text += "\n[donor]\npunch = \"vacuum-punch\"\n" + entry("diameter_mm", value("donor"));
    text += "\n[aim]\n" + aim_text(value("aim"));
    text += "\n[sutures]\n" + text_entry("pattern", value("pattern")) + text_entry("first", value("first"));
    return text;
}

}  // namespace screen
