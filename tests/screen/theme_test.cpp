#include "screen/theme.hpp"
#include "screen/past_views.hpp"
#include "screen/plan_views.hpp"
#include "screen/samples.hpp"
#include "screen/shipped.hpp"
#include "screen/troubled_views.hpp"
#include "support/svg.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numbers>
#include <optional>
#include <set>

using namespace screen;
using picture::Ink;

namespace {

Rgb hex(unsigned rrggbb) {
    return {static_cast<std::uint8_t>(rrggbb >> 16 & 255), static_cast<std::uint8_t>(rrggbb >> 8 & 255),
            static_cast<std::uint8_t>(rrggbb & 255)};
}

using Matrix = std::array<std::array<double, 3>, 3>;

// Machado, Oliveira and Fernandes 2009, severity 1, for linear RGB.
const Matrix protan{{{.152286, 1.052583, -.204868}, {.114503, .786281, .099216}, {-.003882, -.048116, 1.051998}}};
const Matrix deutan{{{.367322, .860646, -.227968}, {.280085, .672501, .047413}, {-.011820, .042940, .968881}}};
const Matrix tritan{{{1.255528, -.076749, -.178779}, {-.078411, .930809, .147602}, {.004733, .691367, .303900}}};

double linear(std::uint8_t c) {
    const double v = c / 255.0;
    return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
}

std::uint8_t encoded(double v) {
    v = std::min(1.0, std::max(0.0, v));
    const double s = v <= 0.0031308 ? v * 12.92 : 1.055 * std::pow(v, 1 / 2.4) - 0.055;
    return static_cast<std::uint8_t>(std::lround(s * 255));
}

Rgb seen(const Matrix& eye, Rgb c) {
    const std::array<double, 3> in{linear(c.r), linear(c.g), linear(c.b)};
    const auto row = [&](std::size_t i) { return encoded(eye[i][0] * in[0] + eye[i][1] * in[1] + eye[i][2] * in[2]); };
    return {row(0), row(1), row(2)};
}

bool near(Rgb a, Rgb b) { return std::abs(a.r - b.r) <= 1 && std::abs(a.g - b.g) <= 1 && std::abs(a.b - b.b) <= 1; }

/// Raw and through three other eyes.
double least_contrast(Rgb a, Rgb b) {
    double least = contrast(a, b);
    for (const auto& eye : {protan, deutan, tritan}) least = std::min(least, contrast(seen(eye, a), seen(eye, b)));
    return least;
}

Rgb of(const Palette& palette, Ink ink) { return palette[static_cast<std::size_t>(ink)]; }

struct Pair {
    Ink ink{}, ground{};
    auto operator<=>(const Pair&) const = default;
};

bool inside(const picture::Polygon& polygon, picture::Point at) {
    bool left = false, right = false;
    for (std::size_t i = 0; i < polygon.points.size(); ++i) {
        const auto &a = polygon.points[i], &b = polygon.points[(i + 1) % polygon.points.size()];
        const double side = (b.x - a.x) * (at.y - a.y) - (b.y - a.y) * (at.x - a.x);
        left = left || side > 0, right = right || side < 0;
    }
    return !(left && right);
}

/// What is painted at a point by the first so many shapes of a frame: the last area there. Nothing on a map of thickness, whose
/// colour depends on the reading.
std::optional<Ink> ground_at(const Frame& frame, picture::Point at, std::size_t shapes) {
    std::optional<Ink> ground = Ink::Ground;
    for (std::size_t i = 0; i < shapes; ++i) {
        const auto& shape = frame.shapes[i];
        if (const auto* panel = std::get_if<picture::Panel>(&shape); panel != nullptr && panel->box.contains(at)) ground = panel->fill;
        if (const auto* disc = std::get_if<picture::Disc>(&shape);
            disc != nullptr && std::hypot(at.x - disc->centre.x, at.y - disc->centre.y) < disc->radius) {
            ground = disc->ink;
        }
        if (const auto* polygon = std::get_if<picture::Polygon>(&shape); polygon != nullptr && inside(*polygon, at)) ground = polygon->ink;
        if (const auto* map = std::get_if<picture::Contours>(&shape); map != nullptr && map->box.contains(at)) ground.reset();
    }
    return ground;
}

struct Painted {
    Theme theme{};
    Light light{};
};
constexpr Painted every_palette[] = {
    {Theme::Dark, Light::Full}, {Theme::Light, Light::Full}, {Theme::Dark, Light::Dimmed}, {Theme::Light, Light::Dimmed}};

picture::Point middle(const picture::Text& text, const Canvas& canvas) {
    const double cap = canvas.lettering.cap(text.type), w = canvas.lettering.width(text.type, text.text);
    const double left = text.align == picture::Align::Left     ? text.at.x
                        : text.align == picture::Align::Centre ? text.at.x - w / 2
                                                               : text.at.x - w;
    return {left + w / 2, text.at.y - cap / 2};
}

/// Where a stroke, a spot or the body of a sign is looked at, and its ink. Panels and maps are no marks.
struct Mark {
    picture::Point at{};
    Ink ink{};
};
std::optional<Mark> mark(const picture::Shape& shape) {
    if (const auto* line = std::get_if<picture::Line>(&shape))
        return Mark{{(line->a.x + line->b.x) / 2, (line->a.y + line->b.y) / 2}, line->ink};
    if (const auto* ring = std::get_if<picture::Ring>(&shape)) {
        const double turn = (ring->from_deg + ring->sweep_deg / 2) * std::numbers::pi / 180;
        return Mark{{ring->centre.x + ring->radius * std::cos(turn), ring->centre.y - ring->radius * std::sin(turn)}, ring->ink};
    }
    if (const auto* disc = std::get_if<picture::Disc>(&shape)) return Mark{disc->centre, disc->ink};
    if (const auto* polygon = std::get_if<picture::Polygon>(&shape)) {
        picture::Point sum{};
        for (const auto& one : polygon->points) sum = {sum.x + one.x, sum.y + one.y};
        const auto n = static_cast<double>(polygon->points.size());
        return Mark{{sum.x / n, sum.y / n}, polygon->ink};
    }
    return std::nullopt;
}

/// Inks that fill areas; a disc in one is no mark, but the ground of what stands on it.
bool fills(Ink ink) {
    constexpr Ink areas[] = {Ink::Ground, Ink::Card,  Ink::Raised,    Ink::AccentFill, Ink::Tissue,
                             Ink::Band,   Ink::Black, Ink::AmberFill, Ink::RedFill};
    return std::find(std::begin(areas), std::end(areas), ink) != std::end(areas);
}

/// How a target lies on what is under it.
struct Lying {
    Ink fill{}, under{}, edge{};
    double edge_mm = 0;
    auto operator<=>(const Lying&) const = default;
};

struct InUse {
    std::set<Pair> lettering{}, marks{};
    std::set<Lying> dead{}, plain{};
};

void look_at_targets(InUse& out, const Frame& frame) {
    for (const auto& [target, box] : frame.touchables) {
        const auto own = std::find_if(frame.shapes.begin(), frame.shapes.end(), [&box = box](const picture::Shape& shape) {
            const auto* panel = std::get_if<picture::Panel>(&shape);
            return panel != nullptr && panel->box == box;
        });
        if (own == frame.shapes.end()) continue;
        const auto& panel = std::get<picture::Panel>(*own);
        const auto under = ground_at(frame, box.centre(), static_cast<std::size_t>(own - frame.shapes.begin()));
        if (!under) continue;
        const Lying lying{panel.fill, *under, panel.edge, panel.edge_width};
        if (!target.why_not.empty()) out.dead.insert(lying);
        if (target.why_not.empty() && panel.fill == Ink::Raised) out.plain.insert(lying);
    }
}

void look(InUse& out, const Frame& frame, const Canvas& canvas) {
    look_at_targets(out, frame);
    for (std::size_t i = 0; i < frame.shapes.size(); ++i) {
        if (const auto* text = std::get_if<picture::Text>(&frame.shapes[i])) {  // text lies above all other shapes
            if (const auto ground = ground_at(frame, middle(*text, canvas), frame.shapes.size()))
                out.lettering.insert({text->ink, *ground});
        }
        const auto one = mark(frame.shapes[i]);
        if (!one || one->ink == Ink::Line || fills(one->ink)) continue;  // Line: decoration only
        const auto ground = ground_at(frame, one->at, i);
        if (ground && fills(*ground)) out.marks.insert({one->ink, *ground});
    }
}

/// Every pair of lettering or mark and what lies under it: Table, Desk, Far and Plan views of the samples and of the whole guide.
/// The Far view, which is white on black in either theme, is kept apart.
struct Everywhere {
    InUse near{}, far{};
};
const Everywhere& everywhere() {
    static const Everywhere made = [] {
        Everywhere all;
        auto views = samples::all();
        for (auto& view : samples::shipped()) views.push_back(std::move(view));
        for (auto& view : samples::plan_views()) views.push_back(std::move(view));
        for (auto& view : samples::past_views()) views.push_back(std::move(view));
        for (auto& view : samples::troubled()) views.push_back(std::move(view));
        for (const auto& glass : samples::glasses()) {
            for (const auto& sample : views) {
                const auto canvas = samples::canvas(glass.glass, reader(sample.view));
                look(reader(sample.view) == Reader::Far ? all.far : all.near, draw(sample.view, canvas), canvas);
            }
        }
        return all;
    }();
    return made;
}

void check(const std::set<Pair>& pairs, const Painted& painted, double least) {
    const auto colours = palette(painted.theme, painted.light);
    for (const auto& pair : pairs) {
        CAPTURE(static_cast<int>(painted.theme));
        CAPTURE(static_cast<int>(painted.light));
        CAPTURE(static_cast<int>(pair.ink));
        CAPTURE(static_cast<int>(pair.ground));
        CHECK(least_contrast(of(colours, pair.ink), of(colours, pair.ground)) >= least);
    }
}

}  // namespace

TEST_CASE("contrast is WCAG 2's") {
    // Values by WCAG 2's formula and by colorjs.io 0.7.1, which carries more digits of the three weights: equal to 4 digits on
    // greys, within 0.001 on pure colours.
    struct Row {
        unsigned a = 0, b = 0;
        double ratio = 0;
    };
    const Row rows[] = {{0x777777, 0xFFFFFF, 4.4781}, {0x767676, 0xFFFFFF, 4.5422}, {0x000000, 0xFFFFFF, 21},
                        {0xFF0000, 0xFFFFFF, 3.9979}, {0x0000FF, 0xFFFFFF, 8.5930}, {0x595959, 0xFFFFFF, 7.0047},
                        {0x949494, 0xFFFFFF, 3.0335}, {0x999999, 0xFFFFFF, 2.8490}, {0xFFFF00, 0x000000, 19.5562},
                        {0x00FFFF, 0x000000, 16.7472}};
    for (const auto& row : rows) {
        CAPTURE(row.a);
        const Rgb a = hex(row.a);
        CHECK(std::abs(contrast(a, hex(row.b)) - row.ratio) < (a.r == a.g && a.g == a.b ? 0.00006 : 0.001));
        CHECK(contrast(hex(row.b), hex(row.a)) == contrast(hex(row.a), hex(row.b)));
    }
}

TEST_CASE("the test's own simulation of colour vision agrees with published values") {
    struct Row {
        unsigned in = 0, protan = 0, deutan = 0, tritan = 0;
    };
    const Row rows[] = {{0xff0000, 0x6d5f00, 0xa39000, 0xff000f}, {0x00ff00, 0xffe500, 0xefd63a, 0x00f7d9},
                        {0x0000ff, 0x0059ff, 0x003dfb, 0x006b96}, {0xffff00, 0xfff400, 0xfffa31, 0xffeed9},
                        {0xd55e00, 0x817100, 0x9e8c00, 0xeb4050}, {0x0072b2, 0x5375b5, 0x3b67b1, 0x008289},
                        {0x808080, 0x808080, 0x808080, 0x808080}};
    for (const auto& row : rows) {
        CAPTURE(row.in);
        CHECK(near(seen(protan, hex(row.in)), hex(row.protan)));
        CHECK(near(seen(deutan, hex(row.in)), hex(row.deutan)));
        CHECK(near(seen(tritan, hex(row.in)), hex(row.tritan)));
    }
}

TEST_CASE("the dark theme is look.md's table") {
    const auto dark = palette(Theme::Dark);
    CHECK(of(dark, Ink::Ground) == hex(0x0F1216));
    CHECK(of(dark, Ink::Card) == hex(0x171B21));
    CHECK(of(dark, Ink::Raised) == hex(0x222933));
    CHECK(of(dark, Ink::Line) == hex(0x36404D));
    CHECK(of(dark, Ink::Mark) == hex(0x66758A));
    CHECK(of(dark, Ink::Text) == hex(0xF2F4F7));
    CHECK(of(dark, Ink::Soft) == hex(0xB7C0CC));
    CHECK(of(dark, Ink::Accent) == hex(0xC4B2FF));
    CHECK(of(dark, Ink::AccentFill) == hex(0x5236B5));
    CHECK(of(dark, Ink::OnAccent) == hex(0xFFFFFF));
    CHECK(of(dark, Ink::Cornea) == hex(0x4F8794));
    CHECK(of(dark, Ink::Tissue) == hex(0x1B333A));
    CHECK(of(dark, Ink::Amber) == hex(0xFFC24B));
    CHECK(of(dark, Ink::Red) == hex(0xFFB0A7));
}

TEST_CASE("every lettering on what lies under it has 7 to 1, raw and to three other eyes, in every view and light") {
    CHECK(everywhere().near.lettering.size() >= 10);
    CHECK(everywhere().far.lettering.size() >= 4);
    for (const Painted& one : every_palette) {
        check(everywhere().near.lettering, one, 7);
        if (one.theme == Theme::Dark) check(everywhere().far.lettering, one, 7);
    }
}

TEST_CASE("every mark that is drawn has 3 to 1 on what lies under it, raw and to three other eyes, in every view and light") {
    CHECK(everywhere().near.marks.size() >= 10);
    CHECK(everywhere().far.marks.size() >= 4);
    auto light = everywhere().near.marks;
    light.erase({Ink::Accent, Ink::AccentFill});  // the filled target: see the next case but one
    for (const Painted& one : every_palette) {
        check(one.theme == Theme::Dark ? everywhere().near.marks : light, one, 3);
        if (one.theme == Theme::Dark) check(everywhere().far.marks, one, 3);
    }
}

TEST_CASE("marks have 3 to 1 on what they stand on, raw and to three other eyes") {
    const Pair pairs[] = {{Ink::Mark, Ink::Card},     {Ink::Mark, Ink::Raised},   {Ink::Cornea, Ink::Card},  {Ink::Steel, Ink::Tissue},
                          {Ink::Steel, Ink::Band},    {Ink::Accent, Ink::Tissue}, {Ink::Accent, Ink::Band},  {Ink::Accent, Ink::Card},
                          {Ink::Accent, Ink::Raised}, {Ink::Accent, Ink::Ground}, {Ink::Amber, Ink::Ground}, {Ink::Amber, Ink::AmberFill},
                          {Ink::Red, Ink::RedFill},   {Ink::Red, Ink::Ground},    {Ink::Amber, Ink::Card},   {Ink::Soft, Ink::Tissue},
                          {Ink::Soft, Ink::Card},     {Ink::Soft, Ink::Raised},   {Ink::Steel, Ink::Black}};
    for (const Painted& one : every_palette) {
        CAPTURE(static_cast<int>(one.light));
        const auto colours = palette(one.theme, one.light);
        for (const auto& pair : pairs) {
            CAPTURE(static_cast<int>(one.theme));
            CAPTURE(static_cast<int>(pair.ink));
            CAPTURE(static_cast<int>(pair.ground));
            CHECK(least_contrast(of(colours, pair.ink), of(colours, pair.ground)) >= 3);
        }
    }
}

TEST_CASE("dimmed, no colour gives more light than in full, and what gives most gives about half") {
    for (const Theme theme : {Theme::Dark, Theme::Light}) {
        const auto full = palette(theme), dimmed = palette(theme, Light::Dimmed);
        double most_full = 0, most_dimmed = 0;
        for (std::size_t i = 0; i < full.size(); ++i) {
            CAPTURE(i);
            CHECK(luminance(dimmed[i]) <= luminance(full[i]));
            most_full = std::max(most_full, luminance(full[i])), most_dimmed = std::max(most_dimmed, luminance(dimmed[i]));
        }
        CHECK(most_dimmed <= 0.65 * most_full);
    }
}

TEST_CASE("the filled target stands out: by its edge where the ground is dark, by its fill where it is light") {
    const auto dark = palette(Theme::Dark), light = palette(Theme::Light);
    CHECK(least_contrast(of(dark, Ink::Accent), of(dark, Ink::AccentFill)) >= 3);
    for (const Ink ground : {Ink::Ground, Ink::Card, Ink::Raised})
        CHECK(least_contrast(of(light, Ink::AccentFill), of(light, ground)) >= 3);
}

TEST_CASE("a dead target lies flat in a thin edge, no lighter than what it lies on; a live one stands out") {
    const auto &dead = everywhere().near.dead, &plain = everywhere().near.plain;
    CHECK(dead.size() >= 2);
    CHECK(plain.size() >= 3);
    double thickest = 0, thinnest = 9;
    for (const Lying& one : dead) thickest = std::max(thickest, one.edge_mm);
    for (const Lying& one : plain) thinnest = std::min(thinnest, one.edge_mm);
    CHECK(thickest <= 0.3);
    CHECK(thickest < thinnest);
    for (const Painted& painted : every_palette) {
        const auto colours = palette(painted.theme, painted.light);
        CAPTURE(static_cast<int>(painted.theme));
        CAPTURE(static_cast<int>(painted.light));
        for (const Lying& one : dead) {
            CAPTURE(static_cast<int>(one.under));
            CHECK(luminance(of(colours, one.fill)) <= luminance(of(colours, one.under)));
            CHECK(contrast(of(colours, one.fill), of(colours, one.under)) <= 1.15);
        }
        const double least = painted.theme == Theme::Light ? 1.15 : 1.05;  // light on dark is seen sooner, and has its edge
        for (const Lying& one : plain) {
            CAPTURE(static_cast<int>(one.under));
            CHECK(least_contrast(of(colours, one.fill), of(colours, one.under)) >= least);
            CHECK(least_contrast(of(colours, one.edge), of(colours, one.fill)) >= 1.35);
        }
    }
}

TEST_CASE("the bands of a map of thickness tell apart, thinner is darker, and their lines are seen, raw, in grey and to three other eyes") {
    for (const Painted& one : every_palette) {
        const auto colours = palette(one.theme, one.light);
        const bool full = one.light == Light::Full;
        CAPTURE(static_cast<int>(one.theme));
        CAPTURE(full);
        for (int bands = 1; bands <= 8; ++bands) {  // the Plan view makes no more
            CAPTURE(bands);
            const double least = bands > 5 ? (full ? 1.2 : 1.13) : (full ? 1.4 : 1.25);
            for (int band = 0; band < bands; ++band) {
                CAPTURE(band);
                const Rgb here = support::band_colour(colours, band, bands);
                CHECK(least_contrast(here, of(colours, Ink::Text)) >= 3);
                if (band + 1 == bands) continue;
                const Rgb next = support::band_colour(colours, band + 1, bands);
                CHECK(luminance(here) < luminance(next));
                CHECK(least_contrast(here, next) >= least);  // a contrast of luminances: what is left in grey
            }
        }
    }
}

TEST_CASE("a frame kept as a picture has a legend of two by two numbers in all its steps, as the window paints it") {
    const picture::Contours legend{.box = {0, 0, 5, 60},
                                   .columns = 2,
                                   .rows = 2,
                                   .values = {700, 700, 540, 540},
                                   .inside = {9, 9, 9, 9},
                                   .low = 540,
                                   .high = 700,
                                   .step = 20};
    const auto colours = palette(Theme::Light);
    const std::string made = support::svg({legend}, samples::canvas({100, 100}), colours);
    for (int band = 0; band < 8; ++band) {
        CAPTURE(band);
        const Rgb of_band = support::band_colour(colours, band, 8);
        CHECK(made.find(fmt::format("#{:02x}{:02x}{:02x}", of_band.r, of_band.g, of_band.b)) != std::string::npos);
    }
}
