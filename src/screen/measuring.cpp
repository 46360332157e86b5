#include "screen/measuring.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace screen {
namespace {

constexpr double least_px_per_mm = 2, most_px_per_mm = 16;
constexpr double most_of_width = 0.5, most_of_height = 0.8;  // the rest is for words and targets

int least_px() { return static_cast<int>(std::ceil(least_px_per_mm * id1_width_mm)); }

int most_px(const Measuring& of) {
    const bool upright = of.height_px > of.width_px;
    const double across = (upright ? 0.9 : most_of_width) * of.width_px, down = (upright ? 0.4 : most_of_height) * of.height_px;
    return static_cast<int>(std::min({most_px_per_mm * id1_width_mm, across, down * id1_width_mm / id1_height_mm}));
}

Target step(const Measuring& of, const std::string& id, const std::string& label, int px, const Words& words) {
    Target made{.id = id, .label = label, .line = words(std::abs(px) == 1 ? "measure.fine" : "measure.coarse"), .weight = Weight::Theatre};
    made.act = Show{.page = "measure-step", .argument = std::to_string(px)};
    if (stepped(of, px) == of) made.why_not = words("measure.end");
    return made;
}

std::vector<std::string> notes(const Measuring& of, const Words& words) {
    std::vector<std::string> made{};
    if (of.told_otherwise) made.push_back(words("measure.told_otherwise"));
    const double reach = far_reach_mm(far_typography(glass_of(of)));
    if (reach < 3000) made.push_back(words("measure.far", {words.figure(fmt::format("{:.1f}", reach / 1000))}));
    if (of.left_out.empty()) return made;
    std::string all{};
    for (const std::string& one : of.left_out) all += (all.empty() ? "" : " · ") + one;
    made.push_back(words("measure.left_out", {all}));
    return made;
}

}  // namespace

Measuring measuring(std::string screen, int width_px, int height_px, double px_per_mm) {
    Measuring made{.screen = std::move(screen), .width_px = width_px, .height_px = height_px, .drawn_px_per_mm = px_per_mm};
    made.card_px = static_cast<int>(std::lround(px_per_mm * id1_width_mm));
    return stepped(std::move(made), 0);
}

double px_per_mm(const Measuring& measuring) { return measuring.card_px / id1_width_mm; }

Glass glass_of(const Measuring& measuring) {
    const double scale = px_per_mm(measuring);
    return {.width_mm = measuring.width_px / scale, .height_mm = measuring.height_px / scale};
}

Measuring stepped(Measuring measuring, int px) {
    measuring.card_px = std::clamp(measuring.card_px + px, least_px(), std::max(least_px(), most_px(measuring)));
    return measuring;
}

MeasureModel measure_page(const Measuring& measuring, const Words& words) {
    const Glass glass = glass_of(measuring);
    const std::string where =
        words("measure.screen", {measuring.screen, std::to_string(measuring.width_px), std::to_string(measuring.height_px)});
    MeasureModel made{.title = words("measure.title"),
                      .figure = words("measure.size", {fmt::format("{:.0f}", glass.width_mm), fmt::format("{:.0f}", glass.height_mm)}),
                      .lines = {words("measure.line"), where},
                      .notes = notes(measuring, words)};
    made.card_w = measuring.card_px / measuring.drawn_px_per_mm;
    made.card_h = made.card_w * id1_height_mm / id1_width_mm;
    made.steps = {step(measuring, "measure-less-10", "− −", -coarse_px, words), step(measuring, "measure-less-1", "−", -1, words),
                  step(measuring, "measure-more-1", "+", 1, words), step(measuring, "measure-more-10", "+ +", coarse_px, words)};
    made.foot = {Target{.id = "measure-leave", .label = words("page.back"), .act = Show{.page = "measure-leave"}},
                 Target{.id = "measure-use",
                        .label = words("measure.use"),
                        .line = words("hand.hold"),
                        .press = Press::Hold,
                        .look = Look::Filled,
                        .act = Show{.page = "measure-use"}}};
    return made;
}

}  // namespace screen
