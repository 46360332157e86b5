// A voice that is not heard has a sign of its own on every view, whatever else stands there: a crossed-out loudspeaker, with its word where
// there is room.
#include "measure/overloaded.hpp"
#include "picture/bounds.hpp"
#include "screen/frame.hpp"
#include "screen/models.hpp"
#include "screen/shipped.hpp"
#include "screen/troubled_views.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <variant>

using namespace screen;
using picture::Box;

namespace {

std::string word_of(const View& view) {
    const auto on = [](const Strip& strip) { return strip.muted; };
    return std::visit(measure::overloaded{
                          [&](const TableModel& model) { return on(model.strip); }, [&](const DeskModel& model) { return on(model.strip); },
                          [&](const PlanModel& model) { return model.strip ? on(*model.strip) : ""; },
                          [&](const PickModel& model) { return model.strip ? on(*model.strip) : model.muted; },
                          [](const FormModel& model) { return model.muted; }, [](const FarModel& model) { return model.muted; },
                          [](const MeasureModel& model) { return model.muted; }, [](const PastModel& model) { return model.muted; }},
                      view);
}

Box round(const std::vector<picture::Point>& points) {
    Box made{points.front().x, points.front().y, 0, 0};
    double right = made.x, bottom = made.y;
    for (const auto& at : points) {
        made.x = std::min(made.x, at.x), made.y = std::min(made.y, at.y);
        right = std::max(right, at.x), bottom = std::max(bottom, at.y);
    }
    return {made.x, made.y, right - made.x, bottom - made.y};
}

/// The loudspeaker, in two pieces of four corners, and the two strokes of its cross; where it stands, none where it is not drawn.
std::optional<Box> sign_on(const Frame& frame) {
    const auto& shapes = frame.shapes;
    for (std::size_t i = 0; i + 3 < shapes.size(); ++i) {
        const auto *body = std::get_if<picture::Polygon>(&shapes[i]), *horn = std::get_if<picture::Polygon>(&shapes[i + 1]);
        const auto *down = std::get_if<picture::Line>(&shapes[i + 2]), *up = std::get_if<picture::Line>(&shapes[i + 3]);
        if (body == nullptr || horn == nullptr || down == nullptr || up == nullptr) continue;
        if (body->points.size() != 4 || horn->points.size() != 4) continue;
        std::vector<picture::Point> all = body->points;
        all.insert(all.end(), horn->points.begin(), horn->points.end());
        all.insert(all.end(), {down->a, down->b, up->a, up->b});
        return round(all);
    }
    return std::nullopt;
}

bool clear(const Frame& frame, const Box& sign, const Canvas& canvas) {
    const bool over_text = std::any_of(frame.shapes.begin(), frame.shapes.end(), [&](const picture::Shape& shape) {
        const auto* text = std::get_if<picture::Text>(&shape);
        return text != nullptr && picture::overlap(picture::bounds(*text, canvas.lettering), sign);
    });
    const bool over_target = std::any_of(frame.touchables.begin(), frame.touchables.end(),
                                         [&](const Touchable& one) { return picture::overlap(one.box, sign); });
    return !over_text && !over_target && sign.x >= 0 && sign.y >= 0 && sign.right() <= canvas.glass.width_mm &&
           sign.bottom() <= canvas.glass.height_mm;
}

}  // namespace

TEST_CASE("a muted voice has its sign on every view and every glass, whatever banner stands, clear of text and targets") {
    for (const std::string& language : models::languages) {
        for (const samples::Sample& sample : samples::troubled(language)) {
            CAPTURE(sample.name);
            CHECK(word_of(sample.view) == models::words(language)("strip.muted"));
            for (const auto& on : samples::glasses()) {
                CAPTURE(on.name);
                const Canvas canvas = samples::canvas(on.glass, reader(sample.view));
                const Frame frame = draw(sample.view, canvas);
                const auto sign = sign_on(frame);
                REQUIRE(sign);
                CHECK(clear(frame, *sign, canvas));
                // As large as the lettering beside it at least.
                CHECK(sign->h >= canvas.lettering.cap(picture::Type::Text));
            }
        }
    }
}

TEST_CASE("a voice that is heard, or that the unit does not have, has no such sign") {
    const samples::NamedGlass on = samples::glasses()[2];
    for (const samples::Sample& sample : samples::shipped()) {
        CAPTURE(sample.name);
        CHECK(word_of(sample.view).empty());
        CHECK_FALSE(sign_on(draw(sample.view, samples::canvas(on.glass, reader(sample.view)))));
    }
    Around around{};
    const auto word = [&] { return muted(around, models::words()); };
    around.muted = true;
    CHECK(word().empty());  // there is no voice
    around.volume = 70;
    CHECK(word() == "muted");
    around.muted = false;
    CHECK(word().empty());
    around.volume = 0;
    CHECK(word() == "muted");
}

TEST_CASE("no sign of a Far view lies over its words") {
    for (const std::string& language : models::languages) {
        for (const samples::Sample& sample : samples::troubled(language)) {
            if (reader(sample.view) != Reader::Far) continue;
            for (const auto& on : samples::glasses()) {
                CAPTURE(sample.name);
                CAPTURE(on.name);
                const Canvas canvas = samples::canvas(on.glass, Reader::Far);
                const Frame frame = draw(sample.view, canvas);
                for (const picture::Shape& shape : frame.shapes) {
                    const auto* sign = std::get_if<picture::Polygon>(&shape);
                    if (sign != nullptr && sign->points.size() == 3) CHECK(clear(frame, round(sign->points), canvas));
                }
            }
        }
    }
}

TEST_CASE("the list of cases, a form, past cases and the measuring of a screen say what is wrong with the station too") {
    for (const samples::Sample& sample : samples::troubled()) {
        CAPTURE(sample.name);
        const bool told = std::visit([](const auto& model) { return model.banner.has_value(); }, sample.view);
        const bool nothing = sample.name.find("muted ") != std::string::npos;
        const bool elsewhere = sample.name.starts_with("far ");  // there the gravest alone
        if (!elsewhere) CHECK(told != nothing);
    }
}
