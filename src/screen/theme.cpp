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
    {picture::Ink::Steel, 0xF2F4F7},    {picture::Ink::Relief1, 0x1B1F4A}, {picture::Ink::Relief2, 0x24406C},
    {picture::Ink::Relief3, 0x2B607C},  {picture::Ink::Relief4, 0x377C7C}, {picture::Ink::Relief5, 0x67927A},
};
static_assert(std::size(dark) == picture::inks);

// For a bright theatre: ours, in the same roles. The hole of an open eye is light here, since a word stands in it.
constexpr Coloured bright[] = {
    {picture::Ink::Ground, 0xF1F3F6},   {picture::Ink::Card, 0xFFFFFF},    {picture::Ink::Raised, 0xE9EDF2},
    {picture::Ink::Line, 0xC4CCD6},     {picture::Ink::Mark, 0x5E6C80},    {picture::Ink::Text, 0x10151B},
    {picture::Ink::Soft, 0x343E4A},     {picture::Ink::Accent, 0x4A2FA8},  {picture::Ink::AccentFill, 0x4C31A8},
    {picture::Ink::OnAccent, 0xFFFFFF}, {picture::Ink::Cornea, 0x2C6674},  {picture::Ink::Tissue, 0xCFE4E9},
    {picture::Ink::Band, 0xAFC8CF},     {picture::Ink::Amber, 0x5C3A00},   {picture::Ink::AmberFill, 0xFFF0CC},
    {picture::Ink::Red, 0x86130D},      {picture::Ink::RedFill, 0xFFE6E2}, {picture::Ink::Black, 0xE3E8EE},
    {picture::Ink::Steel, 0x10151B},    {picture::Ink::Relief1, 0xD2D6F4}, {picture::Ink::Relief2, 0xCFE0F5},
    {picture::Ink::Relief3, 0xD3ECF5},  {picture::Ink::Relief4, 0xDDF2EC}, {picture::Ink::Relief5, 0xEFF8EA},
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
    {picture::Ink::Steel, 0xB2B3B6},    {picture::Ink::Relief1, 0x0B0D27}, {picture::Ink::Relief2, 0x10213C},
    {picture::Ink::Relief3, 0x153546},  {picture::Ink::Relief4, 0x1C4646}, {picture::Ink::Relief5, 0x395344},
};
static_assert(std::size(dark_dimmed) == picture::inks);

constexpr Coloured light_dimmed[] = {
    {picture::Ink::Ground, 0xC0C2C4},   {picture::Ink::Card, 0xCBCBCB},    {picture::Ink::Raised, 0xBABDC1},
    {picture::Ink::Line, 0x9CA2AA},     {picture::Ink::Mark, 0x576477},    {picture::Ink::Text, 0x10151B},
    {picture::Ink::Soft, 0x242C35},     {picture::Ink::Accent, 0x2C1A69},  {picture::Ink::AccentFill, 0x35217A},
    {picture::Ink::OnAccent, 0xCBCBCB}, {picture::Ink::Cornea, 0x2A626F},  {picture::Ink::Tissue, 0xA5B6BA},
    {picture::Ink::Band, 0x8B9FA5},     {picture::Ink::Amber, 0x3C2400},   {picture::Ink::AmberFill, 0xCBBFA2},
    {picture::Ink::Red, 0x510705},      {picture::Ink::RedFill, 0xCBB7B4}, {picture::Ink::Black, 0xB5B9BE},
    {picture::Ink::Steel, 0x10151B},    {picture::Ink::Relief1, 0xA7AAC3}, {picture::Ink::Relief2, 0xA5B2C3},
    {picture::Ink::Relief3, 0xA8BCC3},  {picture::Ink::Relief4, 0xB0C1BC}, {picture::Ink::Relief5, 0xBEC6BA},
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
