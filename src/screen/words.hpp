// Wording by id, one file a language. "{0}" stands for the first value, "{1}" for the second.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace screen {

class Words {
public:
    explicit Words(std::map<std::string, std::string> texts) : texts_(std::move(texts)) {}
    /// The words of an id with the values put in; an unknown id gives the id in angle brackets, which a test looks for.
    std::string operator()(std::string_view id, const std::vector<std::string>& values = {}) const;
    bool has(std::string_view id) const;

private:
    std::map<std::string, std::string> texts_;
};

}  // namespace screen
