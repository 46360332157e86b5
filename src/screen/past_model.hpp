// Past cases: a page of figures, a list or a filter to choose from, or one case again. What has no room is turned to, never dropped.
#pragma once

#include "picture/chart.hpp"
#include "screen/model_parts.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace screen {

struct PastModel {
    struct Row {
        enum class Is { Figure, Heading, Words, Caution } is{};
        std::string label{}, value{};  // of words and cautions the label alone
        picture::Mark mark{};          // on the axis of the page
    };
    std::string title{};
    std::vector<std::string> lines{};
    std::vector<Target> tabs{};  // the pages; the one that stands is filled
    std::vector<Row> rows{};
    picture::Axis axis{};
    Picture picture{};              // beside the rows
    std::vector<Target> choices{};  // in place of rows: those from the first shown on, as many as could have room
    std::size_t from = 0, all = 0;  // the first row or choice shown; how many rows or choices there are
    Target more{};                  // turns on, where not all of them have room
    std::function<std::string(std::size_t from, std::size_t to, std::size_t all)> which{};  // "1 to 6 of 40"; the words outlive it
    std::vector<Target> foot{};
    std::optional<Banner> banner{};
    std::string muted{};
};

}  // namespace screen
