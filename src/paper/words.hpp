// Wording by id, handed in by whoever holds the wording file. An id without words is for the caller to show.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace paper {

class Words {
public:
    using Find = std::function<std::string(std::string_view, const std::vector<std::string>&)>;
    explicit Words(Find find) : find_(std::move(find)) {}
    /// The words of an id with the values put in.
    std::string operator()(std::string_view id, const std::vector<std::string>& values = {}) const { return find_(id, values); }

private:
    Find find_;
};

}  // namespace paper
