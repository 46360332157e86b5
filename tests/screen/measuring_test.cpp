// A screen measured against a bank card. From outside: ISO/IEC 7810 ID-1 is 85.60 mm by 53.98 mm, so on a glass of W mm and P
// pixels a card is 85.60 P / W pixels wide. What a person does is played: the outline is stepped until it is that wide.
#include "screen/measuring.hpp"
#include "screen/models.hpp"
#include "screen/samples.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace screen;

namespace {

struct Glass_ {
    std::string name{};
    int width_px = 0, height_px = 0;
    double width_mm = 0, height_mm = 0;
};

/// Coarse while more than a coarse step is missing, then fine; as many taps as it took.
int matched(Measuring& at, int card_px) {
    int taps = 0;
    while (at.card_px != card_px && taps < 400) {
        const int off = card_px - at.card_px;
        at = stepped(at, std::abs(off) >= coarse_px ? (off > 0 ? coarse_px : -coarse_px) : (off > 0 ? 1 : -1));
        ++taps;
    }
    return taps;
}

const Target& by_id(const MeasureModel& model, const std::string& id) {
    for (const Target& one : model.steps)
        if (one.id == id) return one;
    FAIL("no target ", id);
    return model.steps.front();
}

}  // namespace

TEST_CASE("an outline as wide as the card gives the size of the glass, within a pixel of the card") {
    const Glass_ rows[] = {{"10 inches", 1024, 600, 222.7, 130.5},
                           {"15.6 inches", 1920, 1080, 345.4, 194.3},
                           {"27 inches", 3840, 2160, 597.7, 336.2},
                           {"21.5 inches upright", 1080, 1920, 267.8, 476.1}};
    for (const auto& row : rows) {
        CAPTURE(row.name);
        // Begun with what the system believes where it knows nothing: 96 dots an inch.
        Measuring at = measuring("one", row.width_px, row.height_px, 96 / 25.4);
        const double card_px = 85.60 * row.width_px / row.width_mm;
        CHECK(matched(at, static_cast<int>(std::lround(card_px))) < 60);
        const Glass found = glass_of(at);
        const double pixel = 1 / card_px;
        CHECK(found.width_mm == doctest::Approx(row.width_mm).epsilon(pixel));
        CHECK(found.height_mm == doctest::Approx(row.height_mm).epsilon(pixel + 0.002));
    }
}

TEST_CASE("on a glass that is known the outline is the card: 85.60 by 53.98 mm") {
    const MeasureModel page = measure_page(measuring("one", 1920, 1080, 4), models::words());
    CHECK(page.card_w == doctest::Approx(85.60).epsilon(0.003));  // a pixel is 0.25 mm
    CHECK(page.card_w / page.card_h == doctest::Approx(85.60 / 53.98).epsilon(1e-9));
}

TEST_CASE("a size that no screen has cannot be reached: 2 to 16 pixels a millimetre, and the target says that it ends") {
    for (const double begun : {0.1, 3.0, 200.0}) {
        Measuring low = measuring("one", 3840, 2160, begun), high = low;
        for (int i = 0; i < 300; ++i) low = stepped(low, -coarse_px), high = stepped(high, coarse_px);
        CHECK(px_per_mm(low) >= 2);
        CHECK(px_per_mm(low) < 2.02);
        CHECK(px_per_mm(high) <= 16);
        CHECK(px_per_mm(high) > 15);
        CHECK_FALSE(by_id(measure_page(low, models::words()), "measure-less-1").why_not.empty());
        CHECK(by_id(measure_page(low, models::words()), "measure-more-1").why_not.empty());
        CHECK_FALSE(by_id(measure_page(high, models::words()), "measure-more-10").why_not.empty());
    }
}

TEST_CASE("the page says which screen it is, and how large by the outline") {
    Measuring at = measuring("HDMI-2", 1920, 1080, 4);
    at.card_px = 428;  // 5 pixels a millimetre
    const MeasureModel page = measure_page(at, models::words());
    CHECK(page.figure.find("384 × 216 mm") != std::string::npos);
    CHECK(page.lines.back().find("HDMI-2, 1920 × 1080") != std::string::npos);
    CHECK(page.foot.back().press == Press::Hold);
}

TEST_CASE("what a screen is too small for is said: the Far view's distance, and what was left out") {
    Measuring at = measuring("one", 1024, 600, 600 / 125.0);
    at.left_out = {"holder"};
    const MeasureModel page = measure_page(at, models::words());
    REQUIRE(page.notes.size() == 2);
    CHECK(page.notes[0].find("1.9 m") != std::string::npos);  // 3 m × 125 / 194 × 1.02
    CHECK(page.notes[1].find("holder") != std::string::npos);
    CHECK(measure_page(measuring("one", 1920, 1080, 4), models::words()).notes.empty());
}

TEST_CASE("no target lies under the card, and the outline lies on the glass, for either hand") {
    for (const auto& on : samples::glasses()) {
        CAPTURE(on.name);
        Measuring at = measuring("one", static_cast<int>(on.glass.width_mm * 4), static_cast<int>(on.glass.height_mm * 4), 4);
        for (int i = 0; i < 60; ++i) {
            const MeasureModel page = measure_page(at, models::words());
            const Frame frame = draw(page, samples::canvas(on.glass));
            const auto& card = std::get<picture::Panel>(frame.shapes[1]).box;
            CHECK(card.w == page.card_w);
            CHECK(card.x >= 0);
            CHECK(card.right() <= on.glass.width_mm);
            CHECK(card.bottom() <= on.glass.height_mm);
            for (const Touchable& one : frame.touchables)
                CHECK((one.box.x >= card.right() || one.box.right() <= card.x || one.box.y >= card.bottom()));
            at = stepped(at, coarse_px);
        }
    }
}
