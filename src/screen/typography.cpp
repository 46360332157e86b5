#include "screen/typography.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace screen {

namespace {

constexpr double scrub_nurse_mm = 700;  // look.md's reading distance at the table
constexpr double text_arcmin = 20, title_arcmin = 30;

/// What of a glass lettering can grow with: the height, but in portrait not past the width.
double reach(const Glass& glass) { return std::min(glass.height_mm, glass.width_mm / 1.25); }

double& slot(Typography& type, picture::Type role) { return type.cap_mm[static_cast<std::size_t>(role)]; }

}  // namespace

double cap_mm(double arcmin, double distance_mm) { return 2 * distance_mm * std::tan(arcmin / 60 * std::numbers::pi / 180 / 2); }

double table_minimum_mm(picture::Type type) {
    switch (type) {
        case picture::Type::Numeral:
        case picture::Type::Display:
        case picture::Type::Title:
        case picture::Type::Value:
            return cap_mm(title_arcmin, scrub_nurse_mm);
        case picture::Type::Strong:
        case picture::Type::Text:
        case picture::Type::Lead:
            return cap_mm(text_arcmin, scrub_nurse_mm);
    }
    return cap_mm(title_arcmin, scrub_nurse_mm);
}

Typography table_typography(const Glass& glass) {
    // The minima hold up to 150 mm of height; from there lettering grows with the root, so that more fits as well.
    const double growth = std::max(1.0, std::sqrt(reach(glass) / 150));
    Typography type;
    for (const auto role : {picture::Type::Title, picture::Type::Value, picture::Type::Strong, picture::Type::Text}) {
        slot(type, role) = table_minimum_mm(role) * growth;
    }
    slot(type, picture::Type::Lead) = 5.4 * growth;
    slot(type, picture::Type::Display) = 9.4 * growth;
    slot(type, picture::Type::Numeral) = glass.portrait() ? std::min(0.14 * glass.height_mm, 0.3 * glass.width_mm)
                                                          : std::min(0.28 * glass.height_mm, 0.146 * glass.width_mm);
    return type;
}

bool bold(picture::Type type) { return type != picture::Type::Text && type != picture::Type::Lead; }

}  // namespace screen
