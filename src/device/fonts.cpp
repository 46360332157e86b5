#include "device/fonts.hpp"

#include "device/files.hpp"
#include "device/font_file.hpp"

#include <cmath>

namespace device {
namespace {

constexpr std::size_t largest_font = std::size_t{4} << 20;
constexpr char32_t instead = U'?';

std::size_t index(picture::Type type) { return static_cast<std::size_t>(type); }

/// The bytes that follow a first byte, or -1.
int followers(unsigned char first) {
    if (first < 0x80) return 0;
    if (first >= 0xc2 && first < 0xe0) return 1;
    if (first >= 0xe0 && first < 0xf0) return 2;
    if (first >= 0xf0 && first < 0xf5) return 3;
    return -1;
}

}  // namespace

std::u32string letters(std::string_view utf8) {
    std::u32string out;
    for (std::size_t i = 0; i < utf8.size(); ++i) {
        const auto first = static_cast<unsigned char>(utf8[i]);
        const int more = followers(first);
        char32_t letter = more <= 0 ? first : first & (0x3fU >> more);
        int got = 0;
        while (got < more && i + 1 < utf8.size() && (static_cast<unsigned char>(utf8[i + 1]) & 0xc0U) == 0x80U) {
            letter = (letter << 6) | (static_cast<unsigned char>(utf8[++i]) & 0x3fU);
            ++got;
        }
        out.push_back(got == more ? letter : U'\ufffd');
    }
    return out;
}

const std::uint16_t* ranges(picture::Type type) {
    static constexpr std::uint16_t figures[] = {' ', ' ', '+', '+', '-', '.', '0', ':', '?', '?', 0x2013, 0x2013, 0x2212, 0x2212, 0};
    // Latin-1, Latin Extended-A, four of Romanian, Greek, Cyrillic, general punctuation, currency and letter-like signs, arrows,
    // mathematical signs
    static constexpr std::uint16_t reading[] = {0x20,   0x7e,   0xa0,   0x17f,  0x218,  0x21b,  0x37e,  0x3ce,  0x400,
                                                0x45f,  0x490,  0x491,  0x2010, 0x205e, 0x20ac, 0x20ac, 0x2122, 0x2122,
                                                0x2126, 0x2126, 0x2190, 0x2193, 0x2202, 0x2265, 0};
    return type == picture::Type::Numeral ? figures : reading;
}

Result<std::shared_ptr<const FontFile>> FontFile::load(const std::string& path) {
    auto bytes = read_file(path, largest_font);
    if (!bytes) return Failure{Failure::What::NoFont, text(bytes.error())};
    const auto file = std::make_shared<FontFile>(*std::move(bytes));
    if (!file->measure()) return Failure{Failure::What::NoFont, path};
    return std::shared_ptr<const FontFile>(file);
}

bool FontFile::measure() {
    const auto* const data = reinterpret_cast<const unsigned char*>(bytes_.data());
    if (bytes_.size() < 1024 || ::stbtt_GetFontOffsetForIndex(data, 0) != 0 || ::stbtt_InitFont(&info_, data, 0) == 0) return false;
    int ascent = 0, descent = 0, x0 = 0, y0 = 0, x1 = 0;
    ::stbtt_GetFontVMetrics(&info_, &ascent, &descent, nullptr);
    ::stbtt_GetCodepointBox(&info_, 'H', &x0, &y0, &x1, &cap_);
    line_ = ascent - descent;
    steps_.assign(kept_letters, -1);
    for (std::size_t letter = 0; letter < kept_letters; ++letter) {
        const int glyph = ::stbtt_FindGlyphIndex(&info_, static_cast<int>(letter));
        if (glyph != 0) ::stbtt_GetGlyphHMetrics(&info_, glyph, &steps_[letter], nullptr);
    }
    return cap_ > 0 && line_ > 0 && has(instead);
}

bool FontFile::has(char32_t letter) const { return letter < steps_.size() && steps_[letter] >= 0; }

int FontFile::step(char32_t letter) const { return steps_[has(letter) ? letter : instead]; }

Fonts::Fonts(Sizes sizes, Pair regular, Pair bold) : sizes_(sizes), regular_(std::move(regular)), bold_(std::move(bold)) {}

Result<Fonts> Fonts::load(const std::string& folder, const Sizes& sizes) {
    measure::expect(sizes.px_per_mm > 0);
    for (const double cap : sizes.cap_mm) measure::expect(cap > 0);
    std::array<std::shared_ptr<const FontFile>, 4> all{};
    std::size_t i = 0;
    for (const char* face : {"B612-Regular.otf", "B612-Bold.otf", "DejaVuSans.ttf", "DejaVuSans-Bold.ttf"}) {
        auto file = FontFile::load(folder + "/" + face);
        if (!file) return file.error();
        all.at(i++) = *std::move(file);
    }
    return Fonts(sizes, {all[0], all[2]}, {all[1], all[3]});
}

const Fonts::Pair& Fonts::files(picture::Type type) const { return sizes_.bold[index(type)] ? bold_ : regular_; }

int Fonts::cap_px(picture::Type type) const {
    constexpr double of_a_pixel = 1e-6;  // 20 mm at 3.78 px/mm must not become a pixel more by rounding errors
    return static_cast<int>(std::ceil(sizes_.cap_mm[index(type)] * sizes_.px_per_mm - of_a_pixel));
}

double Fonts::cap_mm(picture::Type type) const { return cap_px(type) / sizes_.px_per_mm; }

double Fonts::scale(picture::Type type, const FontFile& file) const { return static_cast<double>(cap_px(type)) / file.cap(); }

double Fonts::line_px(picture::Type type, const FontFile& file) const { return scale(type, file) * file.line(); }

double Fonts::step_px(picture::Type type, char32_t letter) const {
    const char32_t shown = has(type, letter) ? letter : instead;
    const FontFile& from = file(type).has(shown) ? file(type) : stand_in(type);
    return scale(type, from) * from.step(shown);
}

double Fonts::width_px(picture::Type type, std::string_view text) const {
    double width = 0;
    for (const char32_t letter : letters(text)) width += step_px(type, letter);
    return width;
}

double Fonts::width_mm(picture::Type type, std::string_view text) const { return width_px(type, text) / sizes_.px_per_mm; }

picture::Lettering Fonts::lettering() const {
    return {.width = [fonts = *this](picture::Type type, std::string_view text) { return fonts.width_mm(type, text); },
            .cap = [fonts = *this](picture::Type type) { return fonts.cap_mm(type); }};
}

bool Fonts::has(picture::Type type, char32_t letter) const {
    for (const std::uint16_t* range = ranges(type); *range != 0; range += 2)
        if (letter >= range[0] && letter <= range[1]) return file(type).has(letter) || stand_in(type).has(letter);
    return false;
}

bool Fonts::stands_in(picture::Type type, char32_t letter) const { return has(type, letter) && !file(type).has(letter); }

}  // namespace device
