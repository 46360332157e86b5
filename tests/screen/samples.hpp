// Invented views of every kind, and the glasses they must work on. Figures are made up for the tests.
#pragma once

#include "screen/frame.hpp"

#include <string>
#include <vector>

namespace samples {

struct Sample {
    std::string name{};
    screen::View view{};
};

std::vector<Sample> all();
screen::TableModel cutting(int position);
screen::TableModel suturing(int tied, eye::Side side, eye::Seat seat);

struct NamedGlass {
    std::string name{};
    screen::Glass glass{};
};

/// Look.md: from 1024 x 600 on 10 inches to 3840 x 2160 on 27, portrait too.
std::vector<NamedGlass> glasses();
screen::Canvas canvas(const screen::Glass& glass, screen::Reader reader = screen::Reader::Table);

}  // namespace samples
