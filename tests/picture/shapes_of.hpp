// The shapes of one kind in a picture, and letters to draw it with, for the tests of pictures.
#pragma once

#include "picture/shape.hpp"
#include "support/lettering.hpp"

#include <variant>
#include <vector>

namespace pictures {

inline picture::Lettering lettering() { return support::lettering(screen::table_typography({344, 194})); }

template <class T>
std::vector<T> all(const picture::Shapes& shapes) {
    std::vector<T> made;
    for (const auto& shape : shapes)
        if (const auto* one = std::get_if<T>(&shape)) made.push_back(*one);
    return made;
}

}  // namespace pictures
