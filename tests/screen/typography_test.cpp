#include "screen/typography.hpp"
#include "screen/samples.hpp"

#include <doctest/doctest.h>

using namespace screen;
using picture::Type;

TEST_CASE("character heights are those of the visual angle") {
    // h = 2 d tan(alpha / 2): ergonomics tables for 16, 20 and 22 minutes of arc, rounded to 0.01 mm.
    struct Row {
        double arcmin = 0, distance_mm = 0, height_mm = 0;
    };
    const Row rows[] = {{16, 500, 2.33},  {20, 500, 2.91},   {22, 500, 3.20},   {16, 1000, 4.65}, {20, 1000, 5.82},
                        {22, 1000, 6.40}, {16, 3000, 13.96}, {20, 3000, 17.45}, {22, 3000, 19.20}};
    for (const auto& row : rows) {
        CAPTURE(row.arcmin);
        CHECK(std::abs(cap_mm(row.arcmin, row.distance_mm) - row.height_mm) < 0.005);
    }
}

TEST_CASE("no role of the Table view is under look.md's least size on any glass") {
    // Scrub nurse at 0.7 m: titles and values 30 minutes of arc, text 20.
    for (const auto& glass : samples::glasses()) {
        CAPTURE(glass.name);
        const Typography type = table_typography(glass.glass);
        for (const auto role : {Type::Numeral, Type::Display, Type::Title, Type::Value}) CHECK(type.of(role) >= 6.108);
        for (const auto role : {Type::Strong, Type::Text, Type::Lead}) CHECK(type.of(role) >= 4.072);
    }
}

TEST_CASE("lettering grows with the glass, and less than the glass") {
    const double small = table_typography({217, 136}).of(Type::Text), middle = table_typography({476, 268}).of(Type::Text),
                 large = table_typography({598, 336}).of(Type::Text);
    CHECK(middle > small);
    CHECK(large > middle);
    CHECK(large / small < 336.0 / 136);
}
