#include "screen/words.hpp"

namespace screen {

Words::Words(std::map<std::string, std::string> texts) : texts_(std::move(texts)) {
    if (has("number.decimal")) style_ = {.decimal = (*this)("number.decimal"), .group = (*this)("number.group")};
}

std::vector<std::string> Words::figures(std::vector<std::string> values) const {
    for (std::string& value : values) value = figure(std::move(value));
    return values;
}

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

std::string Words::counted(std::string_view id, const std::vector<std::string>& values) const {
    const std::string one = std::string(id) + "_one";
    return (*this)(!values.empty() && values.front() == "1" && has(one) ? one : id, values);
}

}  // namespace screen
