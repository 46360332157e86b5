#include "device/atlas.hpp"

#include "device/font_file.hpp"

#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <type_traits>

namespace device {
namespace {

static_assert(std::is_same_v<ImWchar, std::uint16_t>, "the ranges of letters are handed over as they are");

/// The lines of the largest letters on the sheet of what is read, and of the largest that stand there at twice their width, in pixels. A
/// pixel of a letter that is drawn larger stays far below what is seen from 3 m.
constexpr double largest_line_px = 160, finest_line_px = 96;

ImFontConfig config_of(const FontFile& file, double line_px, picture::Type type) {
    const std::string& bytes = file.bytes();
    ImFontConfig config;
    config.FontData = const_cast<char*>(bytes.data());  // read only: the atlas does not own it
    config.FontDataSize = static_cast<int>(bytes.size());
    config.FontDataOwnedByAtlas = false;
    config.SizePixels = static_cast<float>(line_px);
    const bool between = Atlas::which(type) != Atlas::Which::Figures && line_px <= finest_line_px;
    config.OversampleH = between ? 2 : 1;  // text stands between pixels, giant figures do not
    config.OversampleV = 1;                // baselines are whole pixels
    config.GlyphRanges = ranges(type);
    return config;
}

/// The role's own letters, and merged into them, on the same baseline, those that only the font that stands in has.
const ImFont* add(ImFontAtlas& atlas, const Fonts& fonts, picture::Type type, double grown) {
    const ImFontConfig own = config_of(fonts.file(type), fonts.line_px(type) / grown, type);
    const ImFont* font = atlas.AddFont(&own);
    if (Atlas::which(type) == Atlas::Which::Figures) return font;  // digits alone: nothing is lacking
    ImFontConfig other = config_of(fonts.stand_in(type), fonts.stand_in_line_px(type) / grown, type);
    other.MergeMode = true;
    atlas.AddFont(&other);
    return font;
}

}  // namespace

Atlas::Atlas(const Fonts& fonts) : reading_(std::make_unique<ImFontAtlas>()), figures_(std::make_unique<ImFontAtlas>()) {
    for (ImFontAtlas* const atlas : {reading_.get(), figures_.get()})
        atlas->Flags |= ImFontAtlasFlags_NoMouseCursors | ImFontAtlasFlags_NoBakedLines | ImFontAtlasFlags_NoPowerOfTwoHeight;
    for (int i = 0; i < picture::types; ++i) {
        const auto type = static_cast<picture::Type>(i);
        const bool figures = which(type) == Which::Figures;
        const double grown = figures ? 1 : std::max(1.0, fonts.line_px(type) / largest_line_px);
        fonts_[static_cast<std::size_t>(i)] = add(figures ? *figures_ : *reading_, fonts, type, grown);
        grown_[static_cast<std::size_t>(i)] = static_cast<float>(grown);
    }
    measure::expect(reading_->Build() && figures_->Build());
}

Atlas::Atlas(Atlas&&) noexcept = default;
Atlas& Atlas::operator=(Atlas&&) noexcept = default;
Atlas::~Atlas() = default;

Sheet Atlas::sheet(Which which) const {
    unsigned char* pixels = nullptr;
    Sheet out;
    (which == Which::Figures ? *figures_ : *reading_).GetTexDataAsAlpha8(&pixels, &out.width, &out.height);
    out.alpha = pixels;
    return out;
}

void Atlas::forget_pictures() {
    reading_->ClearTexData();
    figures_->ClearTexData();
}

Glyph Atlas::glyph(picture::Type type, char32_t letter) const {
    const ImFont& font = *fonts_[static_cast<std::size_t>(type)];
    const ImFontGlyph* found = letter <= 0xffff ? font.FindGlyphNoFallback(static_cast<ImWchar>(letter)) : nullptr;
    if (found == nullptr) found = font.FindGlyphNoFallback('?');
    measure::expect(found != nullptr);
    const float baseline = std::round(font.Ascent), grown = grown_[static_cast<std::size_t>(type)];
    return {grown * found->X0, grown * (found->Y0 - baseline),
            grown * found->X1, grown * (found->Y1 - baseline),
            found->U0,         found->V0,
            found->U1,         found->V1};
}

}  // namespace device
