#include "screen/samples.hpp"

#include "screen/sample_parts.hpp"
#include "support/lettering.hpp"

#include <algorithm>

namespace samples {

using namespace screen;

namespace {

using Is = screen::Line::Is;

std::vector<screen::Line> steps(const std::vector<std::string>& titles, std::size_t now) {
    std::vector<screen::Line> made;
    for (std::size_t i = 0; i < titles.size(); ++i)
        made.push_back({.is = i < now ? Is::Done : i == now ? Is::Now : Is::Later, .text = titles[i]});
    return made;
}

}  // namespace

std::vector<screen::Line> path(std::size_t phase, const std::vector<std::string>& titles, std::size_t now) {
    auto made = steps({"Ready", "Donor", "Host", "Open eye", "Suturing", "Closing"}, phase);
    made[phase].inner = steps(titles, now);
    return made;
}

Strip strip(const std::string& phase) {
    return {.eye = "RIGHT EYE",
            .reference = "Case K-0147",
            .sizes = "host 7.50 · donor 7.75 mm",
            .phase = phase,
            .clocks = {{"case", "00:38:10", true}},
            .time = {"time", "09:41", false}};
}

Target target(std::string id, std::string label, std::string line, Look look) {
    return {.id = std::move(id), .label = std::move(label), .line = std::move(line), .look = look};
}

namespace {

std::vector<Target> cutting_hand(bool reached) {
    Target spoke = target("spoke", "+1 spoke", "tap as you hear it", Look::Filled);
    if (reached) spoke = target("spoke", "+1 if turned", "beyond the plan", Look::Hollow);
    spoke.weight = Weight::Spoke;
    std::vector<Target> hand{
        spoke,
        target("raised", "Blade raised 1", "turned back one"),
        target("undo", "Undo tap", "it was not a spoke"),
        target("lost", "Suction lost", "", Look::Watch),
        target("entered", "Chamber entered", "", Look::Watch),
        target("done", "Cut done", reached ? "go to suction off" : "hold: blade stays here", reached ? Look::Filled : Look::Plain)};
    for (Target& one : hand) one.stays = true;
    return hand;
}

Figure figure(int position) {
    if (position < 0) return {std::to_string(-position), "to zero", "then 8 to go"};
    if (position <= 8) return {std::to_string(8 - position), "spokes to go", std::to_string(position) + " of 8 below zero"};
    return {std::to_string(position - 8), "over the plan", std::to_string(position) + " below zero, planned 8"};
}

picture::WallSection section(int position) {
    const double travel = 60.0 * std::max(0, position);
    return {.wall = measure::from_um(612),
            .advance = measure::from_um(60),
            .position = position,
            .planned = 8,
            .band_low = measure::from_um(travel * 0.86),
            .band_high = measure::from_um(travel * 1.23),
            .surface_label = "surface",
            .foot = {"thinnest 612 µm, at 7:30", "band: where the blade may be"}};
}

}  // namespace

TableModel cutting(int position) {
    const bool reached = position >= 8;
    Strip on = strip("Host · cutting");
    on.clocks.insert(on.clocks.begin(), {"Suction on", "01:42", true});
    on.holder = "spoke count: table";
    return {
        .strip = std::move(on),
        .path = path(2,
                     {"Mark the centre", "Set zero", "Raise 3 spokes", "Seat and centre", "Suction on", "Lower the blade", "Suction off",
                      "Dry, ink the marks"},
                     5),
        .card = {.title = reached ? "Depth reached, stop" : "Lower the blade, clockwise",
                 .lines = {reached ? "Surgeon: check the chamber. Then suction off." : "The surgeon says each spoke. Tap as you hear it."},
                 .figure = figure(position),
                 .picture = section(position),
                 .foot = {{"Next, have ready", "spear · marking pen · viscoelastic"}}},
        .hand = cutting_hand(reached),
        .banner = std::nullopt};
}

namespace {

/// In this order sutures 1, 2, 3 … of 16 are tied; the four donor dots are at the first four.
const std::vector<int> order_of_16{9000, 27000, 0, 18000, 4500, 22500, 13500, 31500, 6750, 24750, 15750, 33750, 11250, 29250, 2250, 20250};

std::string mark_of(int centideg) { return std::to_string((45000 - centideg) % 36000 / 2250 + 1); }

std::string suture_line(int n, int centideg) {
    const std::string mark = "Host mark " + mark_of(centideg) + " of 16. ";
    const std::string dot =
        n <= 4 ? "Donor dot " + std::to_string((45000 - centideg) % 36000 / 9000 + 1) + "." : "No donor dot here: split the gap.";
    return (n % 2 == 0 ? "Opposite suture " + std::to_string(n - 1) + ". " : "") + mark + dot;
}

}  // namespace

TableModel suturing(int tied, eye::Side side, eye::Seat seat) {
    std::vector<measure::Angle> order;
    for (const int centi : order_of_16) order.push_back(measure::centideg(centi));
    const int here = order_of_16[static_cast<std::size_t>(std::min(tied, 15))];
    picture::ClockFace face{
        .side = side, .seat = seat, .seat_label = "surgeon sits here", .nasal_label = "nasal", .temporal_label = "temporal"};
    face.done.assign(order.begin(), order.begin() + tied);
    for (int n = tied; n < std::min(tied + 2, 16); ++n) face.next.push_back({n + 1, order[static_cast<std::size_t>(n)]});
    const std::string next = std::to_string(tied + 1), at = tied < 16 ? eye::short_clock_text(order[static_cast<std::size_t>(tied)]) : "";
    TableModel made{
        .strip = strip("Suturing · " + std::to_string(tied) + " of 16 tied"),
        .path = path(4, {"Cardinals, 1 to 4", "Next four, to 8", "Second count", "The rest of the pattern", "Tension and knots"},
                     tied < 4   ? 0
                     : tied < 8 ? 1
                                : 3),
        .card = {.title = "Suture " + next + " at " + at, .lines = {suture_line(tied + 1, here)}, .picture = face},
        .hand = {target("tied", "Suture " + next + " tied", "at " + at, Look::Filled),
                 target("other", "Other mark", "choose where it went"), target("redo", "Redo a suture", "out and in again"),
                 target("else", "Something else happened", "", Look::Watch)},
        .banner = std::nullopt};
    const bool open = tied < 4;
    made.strip.clocks = {{open ? "Open sky" : "Open sky, stopped", "11:08", open}, {"Case", "01:02:44", true}};
    if (side == eye::Side::Left) made.strip.eye = "LEFT EYE";
    made.card.foot = {{"Next, have ready", "next suture · tying forceps"}};
    return made;
}

std::vector<NamedGlass> glasses() {
#ifdef SHORT_WALKS  // a glass of each kind
    return {{"1024x600-10", {223, 125}},
            {"800x1280-10-left", {136, 217, Hand::Left}},
            {"1920x1080-15", {344, 194}},
            {"3840x2160-27", {598, 336}}};
#else
    return {{"1024x600-10", {223, 125}},
            {"1280x800-10", {217, 136}},
            {"1920x1080-15", {344, 194}},
            {"1920x1080-21", {476, 268}},
            {"3840x2160-27", {598, 336}},
            {"800x1280-10", {136, 217}},
            {"1080x1920-21", {268, 476}},
            {"1024x600-10-left", {223, 125, Hand::Left}},
            {"1920x1080-15-left", {344, 194, Hand::Left}},
            {"800x1280-10-left", {136, 217, Hand::Left}},
            {"1024x600-10-high", {222, 130}}};
#endif
}

Canvas canvas(const Glass& glass, Reader reader) {
    const Typography type = typography(reader, glass);
    return {.glass = glass, .type = type, .lettering = support::lettering(type), .finger = {}};
}

}  // namespace samples
