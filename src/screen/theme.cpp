#include "screen/theme.hpp"

#include <cmath>

namespace screen {

namespace {

constexpr Rgb hex(std::uint32_t rrggbb) {
    return {static_cast<std::uint8_t>(rrggbb >> 16 & 0xff), static_cast<std::uint8_t>(rrggbb >> 8 & 0xff),
            static_cast<std::uint8_t>(rrggbb & 0xff)};
}

Rgb dark(picture::Ink ink) {
    switch (ink) {
        case picture::Ink::Ground:
            return hex(0x0F1216);
        case picture::Ink::Card:
            return hex(0x171B21);
        case picture::Ink::Raised:
            return hex(0x222933);
        case picture::Ink::Line:
            return hex(0x36404D);
        case picture::Ink::Mark:
            return hex(0x66758A);
        case picture::Ink::Text:
            return hex(0xF2F4F7);
        case picture::Ink::Soft:
            return hex(0xB7C0CC);
        case picture::Ink::Accent:
            return hex(0xC4B2FF);
        case picture::Ink::AccentFill:
            return hex(0x5236B5);
        case picture::Ink::OnAccent:
            return hex(0xFFFFFF);
        case picture::Ink::Cornea:
            return hex(0x4F8794);
        case picture::Ink::Tissue:
            return hex(0x1B333A);
        case picture::Ink::Band:
            return hex(0x3D5057);
        case picture::Ink::Amber:
            return hex(0xFFC24B);
        case picture::Ink::AmberFill:
            return hex(0x2B2314);
        case picture::Ink::Red:
            return hex(0xFFB0A7);
        case picture::Ink::RedFill:
            return hex(0x32191B);
        case picture::Ink::Black:
            return hex(0x000000);
        case picture::Ink::Steel:
            return hex(0xF2F4F7);
    }
    return {};
}

double linear(std::uint8_t channel) {
    const double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

}  // namespace

Palette palette(Theme) {
    Palette made{};
    for (int i = 0; i < picture::inks; ++i) made[static_cast<std::size_t>(i)] = dark(static_cast<picture::Ink>(i));
    return made;
}

double luminance(Rgb colour) { return 0.2126 * linear(colour.r) + 0.7152 * linear(colour.g) + 0.0722 * linear(colour.b); }

double contrast(Rgb a, Rgb b) {
    const double la = luminance(a), lb = luminance(b);
    return la > lb ? (la + 0.05) / (lb + 0.05) : (lb + 0.05) / (la + 0.05);
}

}  // namespace screen
