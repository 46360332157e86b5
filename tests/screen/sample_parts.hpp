// Parts that the sample views share.
#pragma once

#include "screen/model.hpp"

namespace samples {

std::vector<screen::Line> path(std::size_t phase, const std::vector<std::string>& titles, std::size_t now);
screen::Strip strip(const std::string& phase);
screen::Target target(std::string id, std::string label, std::string line, screen::Look look = screen::Look::Plain);

}  // namespace samples
