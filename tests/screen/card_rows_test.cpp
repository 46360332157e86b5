#include "screen/audit.hpp"
#include "screen/table_parts.hpp"
#include "support/lettering.hpp"

#include <doctest/doctest.h>

using namespace screen;

namespace {

/// The plan as it is agreed in German, with its longest labels: a compound is one word and is never broken.
Card plan_card() {
    return {.title = "Plan vereinbaren",
            .rows = {{"Empfänger", "7,50 mm"},
                     {"Spender", "7,75 mm"},
                     {"Klinge", "3 bis null, dann 8"},
                     {"Dünnste Stelle am Schnitt", "612 µm ± 14 µm"},
                     {"Restdicke erwartet", "110 µm ± 93 µm"},
                     {"Eröffnungsrisiko", "unter 1 von 100"},
                     {"Nähte", "16 Einzelknüpfnähte"}}};
}

}  // namespace

TEST_CASE("no label of a card stands over its value, whatever the shape of the card") {
    for (const Glass& glass : {Glass{222, 130}, Glass{223, 125}, Glass{344, 194}}) {
        const Typography type = typography(Reader::Table, glass);
        const Canvas canvas{.glass = glass, .type = type, .lettering = support::lettering(type), .finger = {}};
        for (double w = 0.42; w < 0.8; w += 0.02) {
            for (double h = 0.4; h < 1; h += 0.05) {
                CAPTURE(glass.width_mm);
                CAPTURE(w);
                CAPTURE(h);
                Pen pen(canvas);
                const double high = h * glass.height_mm;
                draw_card(pen, plan_card(), {0, 0, w * glass.width_mm, high}, {high, high});
                for (const Finding& one : audit(pen.take(), canvas)) {
                    CAPTURE(one.what);
                    CHECK(one.is != Finding::Is::TextsOverlap);
                }
            }
        }
    }
}
