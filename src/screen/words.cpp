#include "screen/words.hpp"

namespace screen {

bool Words::has(std::string_view id) const { return texts_.contains(std::string(id)); }

std::string Words::operator()(std::string_view id, const std::vector<std::string>& values) const {
    const auto found = texts_.find(std::string(id));
    if (found == texts_.end()) return "<" + std::string(id) + ">";
    std::string text = found->second;
    for (std::size_t i = 0; i < values.size(); ++i) {
        const std::string slot = "{" + std::to_string(i) + "}";
        for (auto at = text.find(slot); at != std::string::npos; at = text.find(slot, at + values[i].size())) {
            text.replace(at, slot.size(), values[i]);
        }
    }
    return text;
}

}  // namespace screen
