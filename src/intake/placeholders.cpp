#include "intake/placeholders.hpp"

#include <algorithm>

namespace intake {

std::optional<std::vector<std::string_view>> names_in_braces(std::string_view text) {
    std::vector<std::string_view> names;
    while (true) {
        const auto brace = text.find_first_of("{}");
        if (brace == std::string_view::npos) return names;
        const auto end = text.find('}', brace);
        if (text[brace] == '}' || end == std::string_view::npos) return std::nullopt;
        names.push_back(text.substr(brace + 1, end - brace - 1));
        text.remove_prefix(end + 1);
    }
}

bool is_placeholder(std::string_view name) { return std::ranges::find(placeholders, name) != placeholders.end(); }

}  // namespace intake
