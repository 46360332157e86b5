#include "intake/words.hpp"

#include "intake/placeholders.hpp"
#include "intake/reading.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

namespace intake {
namespace {

bool is_value(std::string_view name) { return name.size() == 1 && name[0] >= '0' && name[0] <= '9'; }

bool well_formed(std::string_view text) {
    const auto names = names_in_braces(text);
    return names && std::ranges::all_of(*names, [](std::string_view name) { return is_value(name) || is_placeholder(name); });
}

Rule<std::string> language_code() {
    return {.allowed = "a language code such as \"en\" or \"pt-BR\"", .read = [](const Node& node) -> std::optional<std::string> {
                const auto* code = std::get_if<std::string>(&node.value);
                if (code == nullptr || code->size() < 2 || code->size() > 20) return std::nullopt;
                constexpr auto letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-";
                return code->find_first_not_of(letters) == std::string::npos ? std::optional(*code) : std::nullopt;
            }};
}

/// Nesting is bounded by `parse`.
void flatten(const Table& table, const std::string& prefix, WordsFile& words, Report& report) {
    for (const Entry& entry : table) {
        if (prefix.empty() && (entry.key == "language" || entry.key == "name")) continue;
        const std::string id = prefix + entry.key;
        if (const auto* inner = std::get_if<Table>(&entry.node.value)) {
            flatten(*inner, id + ".", words, report);
            continue;
        }
        const auto* text = std::get_if<std::string>(&entry.node.value);
        if (text == nullptr) {
            report.add(entry.node.at, one_line(id), shown(entry.node), "text, or a table of texts");
        } else if (!well_formed(*text)) {
            report.add(entry.node.at, one_line(id), shown(entry.node),
                       fmt::format("in braces only 0 to 9, {}", fmt::join(placeholders, ", ")));
        } else if (!words.texts.emplace(id, *text).second) {
            report.add(entry.at, one_line(id), "the id again", "each id once");
        }
    }
}

}  // namespace

measure::Result<WordsFile, Problems> read_words(std::string_view text, const std::string& name) {
    const auto root = parse(text, name);
    if (!root) return root.error();
    Report report(name);
    Fields fields(*root, "", report);
    WordsFile words;
    words.language = fields.required("language", language_code());
    words.name = fields.required("name", line(40));
    flatten(*std::get_if<Table>(&root->value), "", words, report);
    return report.result(std::move(words));
}

}  // namespace intake
