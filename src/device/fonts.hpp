// The program's lettering, B612, as measures: how large each role is in pixels and how wide a text is. Needs neither a
// window nor OpenGL, so that layouts can be tested and audited. Pictures of the letters are made in atlas.hpp. A letter that
// B612 lacks (a name in another alphabet) comes from DejaVu Sans, its capitals as tall; what both lack is shown as '?'.
// Cap heights are given in millimetres; in pixels they are whole numbers, rounded up, so that tops are sharp and no
// lettering falls under the height that was asked for.
#pragma once

#include "device/failure.hpp"
#include "picture/lettering.hpp"

#include <array>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

namespace device {

struct Sizes {
    std::array<double, picture::types> cap_mm{};  // by picture::Type
    std::array<bool, picture::types> bold{};
    double px_per_mm = 0;
};

/// A font file in memory and its own proportions, in font units.
class FontFile;

class Fonts {
public:
    /// From B612-Regular.otf, B612-Bold.otf, DejaVuSans.ttf and DejaVuSans-Bold.ttf in a folder.
    static Result<Fonts> load(const std::string& folder, const Sizes& sizes);

    /// The width of a text: the sum of its letters' steps. A letter that both fonts lack is as wide as '?', which is drawn for it.
    double width_mm(picture::Type type, std::string_view text) const;
    double width_px(picture::Type type, std::string_view text) const;
    /// The step of one letter.
    double step_px(picture::Type type, char32_t letter) const;
    /// Height of a capital H.
    double cap_mm(picture::Type type) const;
    int cap_px(picture::Type type) const;
    /// Ascent less descent: the size by which font programs go.
    double line_px(picture::Type type) const { return line_px(type, file(type)); }
    /// The same of the font that stands in.
    double stand_in_line_px(picture::Type type) const { return line_px(type, stand_in(type)); }
    /// The same measures for the drawing of pictures; good for as long as anybody holds them.
    picture::Lettering lettering() const;
    double px_per_mm() const { return sizes_.px_per_mm; }

    /// Whether the role can show a letter. Numerals are digits and a few signs only.
    bool has(picture::Type type, char32_t letter) const;
    /// Whether B612 itself lacks it, so that the other font stands in.
    bool stands_in(picture::Type type, char32_t letter) const;
    const FontFile& file(picture::Type type) const { return *files(type).own; }
    const FontFile& stand_in(picture::Type type) const { return *files(type).stand_in; }

private:
    /// A face, and the one that has the letters it lacks.
    struct Pair {
        std::shared_ptr<const FontFile> own{}, stand_in{};
    };
    Fonts(Sizes sizes, Pair regular, Pair bold);
    const Pair& files(picture::Type type) const;
    double scale(picture::Type type, const FontFile& file) const;
    double line_px(picture::Type type, const FontFile& file) const;

    Sizes sizes_{};
    Pair regular_{}, bold_{};
};

/// Ranges of letters a role is made for, as first and last, ended by 0: what atlas.hpp draws and `has` allows.
const std::uint16_t* ranges(picture::Type type);

/// The letters of a UTF-8 text; a broken byte becomes U+FFFD.
std::u32string letters(std::string_view utf8);

}  // namespace device
