#include "screen/theme.hpp"

#include <cmath>
#include <iterator>

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
constexpr Coloured light[] = {
    {picture::Ink::Ground, 0xF1F3F6},   {picture::Ink::Card, 0xFFFFFF},    {picture::Ink::Raised, 0xE9EDF2},
    {picture::Ink::Line, 0xC4CCD6},     {picture::Ink::Mark, 0x5E6C80},    {picture::Ink::Text, 0x10151B},
    {picture::Ink::Soft, 0x343E4A},     {picture::Ink::Accent, 0x4A2FA8},  {picture::Ink::AccentFill, 0x4C31A8},
    {picture::Ink::OnAccent, 0xFFFFFF}, {picture::Ink::Cornea, 0x2C6674},  {picture::Ink::Tissue, 0xCFE4E9},
    {picture::Ink::Band, 0xAFC8CF},     {picture::Ink::Amber, 0x5C3A00},   {picture::Ink::AmberFill, 0xFFF0CC},
    {picture::Ink::Red, 0x86130D},      {picture::Ink::RedFill, 0xFFE6E2}, {picture::Ink::Black, 0xE3E8EE},
    {picture::Ink::Steel, 0x10151B},    {picture::Ink::Relief1, 0xD2D6F4}, {picture::Ink::Relief2, 0xCFE0F5},
    {picture::Ink::Relief3, 0xD3ECF5},  {picture::Ink::Relief4, 0xDDF2EC}, {picture::Ink::Relief5, 0xEFF8EA},
};
static_assert(std::size(light) == picture::inks);

double linear(std::uint8_t channel) {
    const double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

}  // namespace

Palette palette(Theme theme) {
    Palette made{};
    for (const auto& [ink, rrggbb] : theme == Theme::Dark ? dark : light) made[static_cast<std::size_t>(ink)] = hex(rrggbb);
    return made;
}

double luminance(Rgb colour) { return 0.2126 * linear(colour.r) + 0.7152 * linear(colour.g) + 0.0722 * linear(colour.b); }

double contrast(Rgb a, Rgb b) {
    const double la = luminance(a), lb = luminance(b);
    return la > lb ? (la + 0.05) / (lb + 0.05) : (lb + 0.05) / (la + 0.05);
}

}  // namespace screen
