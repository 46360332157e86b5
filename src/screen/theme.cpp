#include "screen/theme.hpp"

#include <cmath>
#include <iterator>
#include <span>

namespace screen {

namespace {

constexpr Rgb hex(std::uint32_t rrggbb) {
    return {static_cast<std::uint8_t>(rrggbb >> 16 & 0xff), static_cast<std::uint8_t>(rrggbb >> 8 & 0xff),
            static_cast<std::uint8_t>(rrggbb & 0xff)};
}

struct Coloured {
    picture::Ink ink{};
    std::uint32_t rrggbb = 0;
};

// look.md's dark table; Band, AmberFill, RedFill, Black, Steel and the relief are chosen to go with it.
constexpr Coloured dark[] = {
    {picture::Ink::Ground, 0x0F1216},   {picture::Ink::Card, 0x171B21},    {picture::Ink::Raised, 0x222933},
    {picture::Ink::Line, 0x36404D},     {picture::Ink::Mark, 0x66758A},    {picture::Ink::Text, 0xF2F4F7},
    {picture::Ink::Soft, 0xB7C0CC},     {picture::Ink::Accent, 0xC4B2FF},  {picture::Ink::AccentFill, 0x5236B5},
    {picture::Ink::OnAccent, 0xFFFFFF}, {picture::Ink::Cornea, 0x4F8794},  {picture::Ink::Tissue, 0x1B333A},
    {picture::Ink::Band, 0x3D5057},     {picture::Ink::Amber, 0xFFC24B},   {picture::Ink::AmberFill, 0x2B2314},
    {picture::Ink::Red, 0xFFB0A7},      {picture::Ink::RedFill, 0x32191B}, {picture::Ink::Black, 0x000000},
    {picture::Ink::Steel, 0xF2F4F7},    {picture::Ink::Relief1, 0x1D1D46}, {picture::Ink::Relief2, 0x213D67},
    {picture::Ink::Relief3, 0x225C73},  {picture::Ink::Relief4, 0x3A7975}, {picture::Ink::Relief5, 0x769270},
};
static_assert(std::size(dark) == picture::inks);

// For a bright theatre: ours, in the same roles. The hole of an open eye is light here, since a word stands in it.
constexpr Coloured bright[] = {
    {picture::Ink::Ground, 0xF1F3F6},   {picture::Ink::Card, 0xFFFFFF},    {picture::Ink::Raised, 0xD8DFE8},
    {picture::Ink::Line, 0xA2AEBC},     {picture::Ink::Mark, 0x5E6C80},    {picture::Ink::Text, 0x10151B},
    {picture::Ink::Soft, 0x343E4A},     {picture::Ink::Accent, 0x4A2FA8},  {picture::Ink::AccentFill, 0x4C31A8},
    {picture::Ink::OnAccent, 0xFFFFFF}, {picture::Ink::Cornea, 0x2C6674},  {picture::Ink::Tissue, 0xCFE4E9},
    {picture::Ink::Band, 0xAFC8CF},     {picture::Ink::Amber, 0x5C3A00},   {picture::Ink::AmberFill, 0xFFF0CC},
    {picture::Ink::Red, 0x7A100B},      {picture::Ink::RedFill, 0xFFE6E2}, {picture::Ink::Black, 0xE3E8EE},
    {picture::Ink::Steel, 0x10151B},    {picture::Ink::Relief1, 0x5B5CB0}, {picture::Ink::Relief2, 0x5B82BC},
    {picture::Ink::Relief3, 0x66A8C6},  {picture::Ink::Relief4, 0x8BD0CB}, {picture::Ink::Relief5, 0xD8F4D1},
};
static_assert(std::size(bright) == picture::inks);

// The same with half the light on the glass: white at half its luminance in the dark theme, the grounds at six tenths in the light
// one. What is lettered or marked was taken as dim as its contrast allows, 7 to 1 and 3 to 1.
constexpr Coloured dark_dimmed[] = {
    {picture::Ink::Ground, 0x020304},   {picture::Ink::Card, 0x080B0E},    {picture::Ink::Raised, 0x0F1319},
    {picture::Ink::Line, 0x333D49},     {picture::Ink::Mark, 0x586577},    {picture::Ink::Text, 0xB2B3B6},
    {picture::Ink::Soft, 0x9AA2AC},     {picture::Ink::Accent, 0xA797DA},  {picture::Ink::AccentFill, 0x342077},
    {picture::Ink::OnAccent, 0xC9C9C9}, {picture::Ink::Cornea, 0x406E7A},  {picture::Ink::Tissue, 0x0B191E},
    {picture::Ink::Band, 0x1F2B2F},     {picture::Ink::Amber, 0xD4A13D},   {picture::Ink::AmberFill, 0x151007},
    {picture::Ink::Red, 0xDE9891},      {picture::Ink::RedFill, 0x190A0B}, {picture::Ink::Black, 0x000000},
    {picture::Ink::Steel, 0xB2B3B6},    {picture::Ink::Relief1, 0x0C0B24}, {picture::Ink::Relief2, 0x192941},
    {picture::Ink::Relief3, 0x1F3F4D},  {picture::Ink::Relief4, 0x2C5351}, {picture::Ink::Relief5, 0x50634B},
};
static_assert(std::size(dark_dimmed) == picture::inks);

constexpr Coloured light_dimmed[] = {
    {picture::Ink::Ground, 0xC0C2C4},   {picture::Ink::Card, 0xCBCBCB},    {picture::Ink::Raised, 0xAFB4B9},
    {picture::Ink::Line, 0x868E98},     {picture::Ink::Mark, 0x525F71},    {picture::Ink::Text, 0x10151B},
    {picture::Ink::Soft, 0x1E262E},     {picture::Ink::Accent, 0x2C1A69},  {picture::Ink::AccentFill, 0x35217A},
    {picture::Ink::OnAccent, 0xCBCBCB}, {picture::Ink::Cornea, 0x2A626F},  {picture::Ink::Tissue, 0xA5B6BA},
    {picture::Ink::Band, 0x8B9FA5},     {picture::Ink::Amber, 0x362000},   {picture::Ink::AmberFill, 0xCBBFA2},
    {picture::Ink::Red, 0x480504},      {picture::Ink::RedFill, 0xCBB7B4}, {picture::Ink::Black, 0xB5B9BE},
    {picture::Ink::Steel, 0x10151B},    {picture::Ink::Relief1, 0x5B5EA4}, {picture::Ink::Relief2, 0x5A7BAC},
    {picture::Ink::Relief3, 0x6397AE},  {picture::Ink::Relief4, 0x7FB3AF}, {picture::Ink::Relief5, 0xB5CCB0},
};
static_assert(std::size(light_dimmed) == picture::inks);

std::span<const Coloured> table(Theme theme, Light light) {
    if (theme == Theme::Dark) return light == Light::Full ? std::span(dark) : std::span(dark_dimmed);
    return light == Light::Full ? std::span(bright) : std::span(light_dimmed);
}

double linear(std::uint8_t channel) {
    const double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

}  // namespace

Palette palette(Theme theme, Light light) {
    Palette made{};
    for (const auto& [ink, rrggbb] : table(theme, light)) made[static_cast<std::size_t>(ink)] = hex(rrggbb);
    return made;
}

double luminance(Rgb colour) { return 0.2126 * linear(colour.r) + 0.7152 * linear(colour.g) + 0.0722 * linear(colour.b); }

double contrast(Rgb a, Rgb b) {
    const double la = luminance(a), lb = luminance(b);
    return la > lb ? (la + 0.05) / (lb + 0.05) : (lb + 0.05) / (la + 0.05);
}

}  // namespace screen
