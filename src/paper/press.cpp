#include "paper/press.hpp"

#include "measure/expect.hpp"
#include "measure/overloaded.hpp"

#include <cairo/cairo-pdf.h>
#include <fontconfig/fontconfig.h>
#include <pango/pangocairo.h>
#include <pango/pangofc-fontmap.h>

#include <algorithm>
#include <numbers>

namespace paper {
namespace {

using picture::Ink;

constexpr double pt_per_mm = 72 / 25.4;
constexpr double pt(double mm) { return mm * pt_per_mm; }

template <auto Free>
struct Frees {
    void operator()(auto* one) const { Free(one); }
};
using Surface = std::unique_ptr<cairo_surface_t, Frees<cairo_surface_destroy>>;
using Cairo = std::unique_ptr<cairo_t, Frees<cairo_destroy>>;
using FontOptions = std::unique_ptr<cairo_font_options_t, Frees<cairo_font_options_destroy>>;
using Config = std::unique_ptr<FcConfig, Frees<FcConfigDestroy>>;
using Description = std::unique_ptr<PangoFontDescription, Frees<pango_font_description_free>>;
template <class T>
using Object = std::unique_ptr<T, Frees<g_object_unref>>;
using Layout = Object<PangoLayout>;

bool bold(picture::Type type) { return type != picture::Type::Text && type != picture::Type::Lead; }

/// 0 black to 1 white. Words are black or nearly; nothing is told by a grey alone.
double grey(Ink ink) {
    switch (ink) {
        case Ink::Ground:
        case Ink::Card:
        case Ink::Raised:
        case Ink::OnAccent:
        case Ink::AmberFill:
        case Ink::RedFill:
            return 1;
        case Ink::Tissue:
            return 0.93;
        case Ink::Band:
            return 0.8;
        case Ink::Line:
            return 0.7;
        case Ink::Relief1:
            return 0.4;
        case Ink::Relief2:
            return 0.52;
        case Ink::Relief3:
            return 0.64;
        case Ink::Relief4:
            return 0.76;
        case Ink::Relief5:
            return 0.88;
        case Ink::Mark:
        case Ink::Cornea:
            return 0.35;
        case Ink::Soft:
            return 0.25;
        case Ink::Text:
        case Ink::Accent:
        case Ink::AccentFill:
        case Ink::Amber:
        case Ink::Red:
        case Ink::Black:
        case Ink::Steel:
            return 0;
    }
    measure::expect(false);
    return 0;
}

Config config_with(const std::string& fonts, std::string& missing) {
    Config config(FcConfigCreate());
    for (const char* face : {"B612-Regular.otf", "B612-Bold.otf", "DejaVuSans.ttf", "DejaVuSans-Bold.ttf"}) {
        const std::string path = fonts + "/" + face;
        if (FcConfigAppFontAddFile(config.get(), reinterpret_cast<const FcChar8*>(path.c_str())) == FcFalse) missing = path;
    }
    return config;
}

FontOptions unhinted() {
    FontOptions options(cairo_font_options_create());
    cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
    return options;
}

/// Printable bytes of one line: control characters, which a note may hold, become blanks.
std::string one_line(std::string_view text) {
    std::string line(text);
    std::replace_if(
        line.begin(), line.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; }, ' ');
    return line;
}

cairo_status_t take(void* into, const unsigned char* bytes, unsigned int count) {
    static_cast<std::string*>(into)->append(reinterpret_cast<const char*>(bytes), count);
    return CAIRO_STATUS_SUCCESS;
}

}  // namespace

/// The private fonts, and lettering set in them. Sizes here are points.
struct Press::Type {
    Config config{};
    Object<PangoFontMap> map{};
    Object<PangoContext> context{};
    double cap_share = 1;  // cap height over size

    explicit Type(Config own) : config(std::move(own)), map(pango_cairo_font_map_new_for_font_type(CAIRO_FONT_TYPE_FT)) {
        measure::expect(map != nullptr);
        pango_fc_font_map_set_config(PANGO_FC_FONT_MAP(map.get()), config.get());
        context.reset(pango_font_map_create_context(map.get()));
        pango_cairo_context_set_font_options(context.get(), unhinted().get());
        pango_context_set_round_glyph_positions(context.get(), FALSE);
        pango_context_set_language(context.get(), pango_language_from_string("en"));
        pango_context_set_base_dir(context.get(), PANGO_DIRECTION_LTR);
        constexpr double probe = 1000;
        PangoRectangle ink{};
        pango_layout_get_extents(set("H", true, probe).get(), &ink, nullptr);
        cap_share = ink.height / (probe * PANGO_SCALE);
    }

    Layout set(std::string_view text, bool bold, double size) const {
        Layout layout(pango_layout_new(context.get()));
        const Description description(pango_font_description_new());
        pango_font_description_set_family_static(description.get(), "B612");
        pango_font_description_set_weight(description.get(), bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
        pango_font_description_set_absolute_size(description.get(), size * PANGO_SCALE);
        pango_layout_set_font_description(layout.get(), description.get());
        pango_layout_set_auto_dir(layout.get(), FALSE);
        pango_layout_set_single_paragraph_mode(layout.get(), TRUE);
        const std::string line = one_line(text);
        pango_layout_set_text(layout.get(), line.data(), static_cast<int>(line.size()));
        return layout;
    }
    Layout set(std::string_view text, picture::Type type, const Caps& caps) const {
        return set(text, bold(type), pt(cap_of(caps, type)) / cap_share);
    }
};

namespace {

/// In points.
double width_of(PangoLayout* layout) {
    PangoRectangle logical{};
    pango_layout_get_extents(layout, nullptr, &logical);
    return static_cast<double>(logical.width) / PANGO_SCALE;
}

/// Strokes and fills of a page. cairo's y runs down as ours does; its angles run clockwise, ours the other way.
struct Pen {
    cairo_t* cairo = nullptr;

    void ink(Ink one) const {
        const double level = grey(one);
        cairo_set_source_rgb(cairo, level, level, level);
    }
    void stroke(Ink one, double width, double dash, double gap) const {
        const std::array<double, 2> dashes{pt(dash), pt(gap)};
        cairo_set_dash(cairo, dashes.data(), dash > 0 ? 2 : 0, 0);
        cairo_set_line_width(cairo, pt(width));
        ink(one);
        cairo_stroke(cairo);
    }
    void fill(Ink one) const {
        ink(one);
        cairo_fill(cairo);
    }
    void arc(picture::Point centre, double radius, double from_deg, double sweep_deg) const {
        constexpr double rad = std::numbers::pi / 180;
        cairo_new_sub_path(cairo);
        cairo_arc_negative(cairo, pt(centre.x), pt(centre.y), pt(radius), -from_deg * rad, -(from_deg + sweep_deg) * rad);
    }
    void outline(const picture::Box& box, double radius) const {
        const double r = std::min({radius, box.w / 2, box.h / 2});
        if (r <= 0) return cairo_rectangle(cairo, pt(box.x), pt(box.y), pt(box.w), pt(box.h));
        cairo_new_sub_path(cairo);
        const auto corner = [&](double x, double y, double turn) {
            constexpr double quarter = std::numbers::pi / 2;
            cairo_arc(cairo, pt(x), pt(y), pt(r), turn * quarter, (turn + 1) * quarter);
        };
        corner(box.right() - r, box.y + r, -1);
        corner(box.right() - r, box.bottom() - r, 0);
        corner(box.x + r, box.bottom() - r, 1);
        corner(box.x + r, box.y + r, 2);
        cairo_close_path(cairo);
    }

    void operator()(const picture::Line& line) const {
        cairo_move_to(cairo, pt(line.a.x), pt(line.a.y));
        cairo_line_to(cairo, pt(line.b.x), pt(line.b.y));
        stroke(line.ink, line.width, line.dash, line.gap);
    }
    void operator()(const picture::Ring& ring) const {
        arc(ring.centre, ring.radius, ring.from_deg, ring.sweep_deg);
        stroke(ring.ink, ring.width, ring.dash, ring.gap);
    }
    void operator()(const picture::Disc& disc) const {
        arc(disc.centre, disc.radius, 0, 360);
        fill(disc.ink);
    }
    void operator()(const picture::Panel& panel) const {
        outline(panel.box, panel.radius);
        fill(panel.fill);
        if (panel.edge_width <= 0) return;
        outline(panel.box, panel.radius);
        stroke(panel.edge, panel.edge_width, 0, 0);
    }
    void operator()(const picture::Polygon& polygon) const {
        for (const picture::Point& point : polygon.points) cairo_line_to(cairo, pt(point.x), pt(point.y));
        cairo_close_path(cairo);
        fill(polygon.ink);
    }
    /// No page holds a map: on paper the thinnest place is told in words.
    void operator()(const picture::Contours&) const { measure::expect(false); }
};

void letter(const Pen& pen, const picture::Text& text, PangoLayout* layout) {
    const double width = width_of(layout);
    const double back = text.align == picture::Align::Left ? 0 : text.align == picture::Align::Centre ? width / 2 : width;
    pen.ink(text.ink);
    cairo_move_to(pen.cairo, pt(text.at.x) - back, pt(text.at.y));
    pango_cairo_show_layout_line(pen.cairo, pango_layout_get_line_readonly(layout, 0));
}

void say_of_itself(cairo_surface_t* surface, const Page& page) {
    const std::string at = measure::rfc3339({.utc_ms = page.at.utc_ms / 1000 * 1000, .offset_min = page.at.offset_min});
    const std::string seconds = at.substr(0, 19) + at.substr(at.find_last_of("Z+-"));
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, page.title.c_str());
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, page.program.c_str());
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, seconds.c_str());
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_MOD_DATE, seconds.c_str());
}

}  // namespace

measure::Result<Press, std::string> Press::load(const std::string& fonts) {
    std::string missing{};
    Config config = config_with(fonts, missing);
    if (!missing.empty()) return missing;
    return Press(std::make_shared<const Type>(std::move(config)));
}

picture::Lettering Press::lettering(const Caps& caps) const {
    return {.width = [type = type_, caps](picture::Type role,
                                          std::string_view text) { return width_of(type->set(text, role, caps).get()) / pt_per_mm; },
            .cap = [caps](picture::Type role) { return cap_of(caps, role); }};
}

std::string Press::pdf(const Page& page) const {
    std::string bytes{};
    const picture::Box sheet = sheet_of(page.size);
    {
        const Surface surface(cairo_pdf_surface_create_for_stream(take, &bytes, pt(sheet.w), pt(sheet.h)));
        say_of_itself(surface.get(), page);
        const Cairo cairo(cairo_create(surface.get()));
        const Pen pen{.cairo = cairo.get()};
        pango_cairo_update_context(cairo.get(), type_->context.get());
        for (const picture::Shape& shape : page.shapes) {
            if (!std::holds_alternative<picture::Text>(shape)) {
                std::visit(measure::overloaded{pen, [](const picture::Text&) {}}, shape);
            }
        }
        for (const picture::Shape& shape : page.shapes) {
            if (const auto* text = std::get_if<picture::Text>(&shape))
                letter(pen, *text, type_->set(text->text, text->type, page.caps).get());
        }
        cairo_show_page(cairo.get());
        measure::expect(cairo_status(cairo.get()) == CAIRO_STATUS_SUCCESS);
    }
    return bytes;
}

}  // namespace paper
