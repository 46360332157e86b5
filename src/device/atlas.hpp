// Pictures of the letters: one sheet with every role but the giant numerals, which have a sheet of their own at exact size.
// One byte a pixel. Rasterised and packed by ImGui's font atlas; no window is needed. A graphics card takes sheets of a bounded size
// only, so letters that are read from 3 m are rasterised smaller and drawn larger.
#pragma once

#include "device/fonts.hpp"

#include <array>
#include <cstdint>
#include <memory>

struct ImFontAtlas;
struct ImFont;

namespace device {

/// A letter on its sheet: its box from the pen on the baseline, in pixels, y down, and the same box on the sheet, 0 to 1.
struct Glyph {
    float x0 = 0, y0 = 0, x1 = 0, y1 = 0;
    float u0 = 0, v0 = 0, u1 = 0, v1 = 0;
};

struct Sheet {
    int width = 0, height = 0;
    const std::uint8_t* alpha = nullptr;
};

class Atlas {
public:
    enum class Which { Reading, Figures };
    explicit Atlas(const Fonts& fonts);
    Atlas(Atlas&&) noexcept;
    Atlas& operator=(Atlas&&) noexcept;
    ~Atlas();

    static Which which(picture::Type type) { return type == picture::Type::Numeral ? Which::Figures : Which::Reading; }
    Sheet sheet(Which which) const;
    /// Frees the pictures once they are on the graphics card; the boxes stay.
    void forget_pictures();
    Glyph glyph(picture::Type type, char32_t letter) const;

private:
    std::unique_ptr<ImFontAtlas> reading_, figures_;
    std::array<const ImFont*, picture::types> fonts_{};
    std::array<float, picture::types> grown_{};  // how much larger letters are drawn than they stand on the sheet
};

}  // namespace device
