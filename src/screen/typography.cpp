#include "screen/typography.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace screen {

namespace {

constexpr double scrub_nurse_mm = 700;  // look.md's reading distance at the table
constexpr double text_arcmin = 20, title_arcmin = 30;
constexpr double circulating_nurse_mm = 600, desk_arcmin = 16;
constexpr double surgeon_mm = 3000, far_numeral_arcmin = 120, far_arcmin = 22;
// What the Far view's layout takes at 3 m: one giant figure with two lines under it, beside a column for "not on disk".
constexpr double far_width_mm = 344, far_height_mm = 194, far_ease = 1.015;
constexpr double far_upright_width_mm = 200, far_upright_height_mm = 340;  // the same one over the other

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

double minimum_mm(Reader reader, picture::Type type) {
    switch (reader) {
        case Reader::Table:
            return table_minimum_mm(type);
        case Reader::Desk:
            return cap_mm(desk_arcmin, circulating_nurse_mm);
        case Reader::Far:
            return cap_mm(type == picture::Type::Numeral ? far_numeral_arcmin : far_arcmin, surgeon_mm);
    }
    return table_minimum_mm(type);
}

Typography desk_typography(const Glass& glass) {
    // On a large desk display lettering grows, but more fits as well.
    const double growth = std::max(1.0, std::pow(reach(glass) / 130, 0.75)), least = minimum_mm(Reader::Desk, picture::Type::Text);
    Typography type{.reader = Reader::Desk};
    type.cap_mm.fill(least * growth);
    for (const auto role : {picture::Type::Title, picture::Type::Value}) slot(type, role) = 1.35 * least * growth;
    for (const auto role : {picture::Type::Display, picture::Type::Numeral}) slot(type, role) = 2.4 * least * growth;
    return type;
}

Typography far_typography(const Glass& glass) {
    const double across = glass.portrait() ? far_upright_width_mm : far_width_mm,
                 down = glass.portrait() ? far_upright_height_mm : far_height_mm;
    const double share = far_ease * std::min(glass.width_mm / across, glass.height_mm / down);
    Typography type{.reader = Reader::Far};
    for (std::size_t role = 0; role < type.cap_mm.size(); ++role)
        type.cap_mm[role] = share * minimum_mm(Reader::Far, static_cast<picture::Type>(role));
    slot(type, picture::Type::Display) *= 1.8;
    slot(type, picture::Type::Title) *= 1.35;  // words that have no room in that one
    return type;
}

Typography typography(Reader reader, const Glass& glass) {
    switch (reader) {
        case Reader::Table:
            return table_typography(glass);
        case Reader::Desk:
            return desk_typography(glass);
        case Reader::Far:
            return far_typography(glass);
    }
    return table_typography(glass);
}

double far_reach_mm(const Typography& type) {
    return surgeon_mm * std::min(1.0, type.of(picture::Type::Text) / minimum_mm(Reader::Far, picture::Type::Text));
}

bool bold(picture::Type type) { return type != picture::Type::Text && type != picture::Type::Lead; }

}  // namespace screen
