// Wording by id, one file a language, and how that language writes numbers. "{0}" stands for the first value, "{1}" for the second.
#pragma once

#include "measure/figure.hpp"

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace screen {

class Words {
public:
    explicit Words(std::map<std::string, std::string> texts);
    /// The words of an id with the values put in; an unknown id gives the id in angle brackets, which a test looks for.
    std::string operator()(std::string_view id, const std::vector<std::string>& values = {}) const;
    bool has(std::string_view id) const;
    /// Where the first value is a number of things: of one, the words of "ID_one".
    std::string counted(std::string_view id, const std::vector<std::string>& values) const;
    /// A figure written with a point, as this language writes it; anything else as it is.
    std::string figure(std::string written) const { return measure::figure(std::move(written), style_); }
    std::vector<std::string> figures(std::vector<std::string> values) const;

private:
    std::map<std::string, std::string> texts_;
    measure::NumberStyle style_{};
};

}  // namespace screen
