// Wording by id and how its language writes numbers, handed in by whoever holds the wording file. An id without words is for the
// caller to show.
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
    using Figure = std::function<std::string(std::string)>;
    explicit Words(
        Find find, Figure figure = [](const std::string& written) { return written; })
        : find_(std::move(find)), figure_(std::move(figure)) {}
    /// The words of an id with the values put in.
    std::string operator()(std::string_view id, const std::vector<std::string>& values = {}) const { return find_(id, values); }

    /// A figure written with a point, as the language writes it.
    std::string figure(std::string written) const { return figure_(std::move(written)); }

private:
    Find find_;
    Figure figure_;
};

}  // namespace paper
