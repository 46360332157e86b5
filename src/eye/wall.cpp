#include "eye/wall.hpp"
#include "eye/least_squares.hpp"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace eye {
namespace {

constexpr double equal_um = 1e-8;           // values nearer than this are equal: rounding of the arithmetic only
constexpr double most_root_leverage = 2.0;  // above it a place on the circle is a guess from readings elsewhere
constexpr double unknown_asymmetry_um = 23.0;
constexpr double coordinate_mm = 1e-5;  // places are held to the nanometre: a ring at the very limit counts as on the cut

double rise(double r_mm) { return 1 + thickness_rise_per_mm2 * r_mm * r_mm; }

/// 1, cos a, sin a, cos 2a, sin 2a, up to the order.
Eigen::VectorXd basis(Angle at, int order) {
    const double a = at.deg() * std::numbers::pi / 180;
    Eigen::VectorXd row(2 * order + 1);
    row(0) = 1;
    for (int k = 1; k <= order; ++k) {
        row(2 * k - 1) = std::cos(k * a);
        row(2 * k) = std::sin(k * a);
    }
    return row;
}

struct Design {
    Eigen::MatrixXd rows{};
    Eigen::MatrixXd inverse{};  // of the normal equations; empty when singular

    double root_leverage(Angle at, int order) const {
        if (inverse.size() == 0) return std::numeric_limits<double>::infinity();
        const Eigen::VectorXd row = basis(at, order);
        return std::sqrt(std::max(0.0, row.dot(inverse * row)));
    }
};

Design design(const std::vector<RingReading>& readings, int order) {
    Design made{};
    made.rows.resize(static_cast<Eigen::Index>(readings.size()), 2 * order + 1);
    for (std::size_t i = 0; i < readings.size(); ++i) {
        made.rows.row(static_cast<Eigen::Index>(i)) = basis(readings[i].at, order).transpose();
    }
    if (Eigen::ColPivHouseholderQR<Eigen::MatrixXd>(made.rows).rank() < made.rows.cols()) return made;
    made.inverse = (made.rows.transpose() * made.rows).inverse();
    return made;
}

bool steady(const Design& made, int order) {
    for (int deg = 0; deg < 360; ++deg) {
        if (made.root_leverage(measure::whole_deg(deg), order) > most_root_leverage) return false;
    }
    return true;
}

struct Place {
    double um = std::numeric_limits<double>::infinity();
    Angle at{};
};

/// The lower of two; the lower degree where they are equal.
Place lower(const Place& a, const Place& b) {
    if (std::abs(a.um - b.um) <= equal_um) return {.um = std::min(a.um, b.um), .at = std::min(a.at, b.at)};
    return a.um < b.um ? a : b;
}

Eigen::VectorXd carried_um(const std::vector<RingReading>& readings, Length diameter) {
    Eigen::VectorXd um(static_cast<Eigen::Index>(readings.size()));
    for (std::size_t i = 0; i < readings.size(); ++i) {
        um(static_cast<Eigen::Index>(i)) = readings[i].thickness.um() * rise(diameter.mm() / 2) / rise(readings[i].ring.mm() / 2);
    }
    return um;
}

/// A reading on the cut, carried to the point of the cut that lies in its direction; none when it is not on the cut.
std::optional<Place> carried_to(const Cut& cut, const MapReading& reading) {
    const double x = (reading.at.x - cut.x).mm(), y = (reading.at.y - cut.y).mm();
    if (std::abs(2 * std::hypot(x, y) - cut.diameter.mm()) > on_the_cut.mm() + coordinate_mm) return std::nullopt;
    const Angle at = measure::from_deg(std::atan2(y, x) * 180 / std::numbers::pi);
    const auto from_map = [](const Point& p) { return std::hypot(p.x.mm(), p.y.mm()); };
    const double carried = rise(from_map(on_cut(cut, at))) / rise(from_map(reading.at));
    return Place{.um = reading.thickness.um() * carried, .at = at};
}

struct Round {
    Place thinnest{};
    Length mean{};
    std::vector<Length> profile{};
    std::vector<double> u_um{};
};

/// `um_at` and `u_um_at` take a direction from the cut's centre.
template <class F, class U>
Round all_round(F um_at, U u_um_at) {
    Round round{};
    double sum = 0;
    for (int deg = 0; deg < 360; ++deg) {
        const Angle at = measure::whole_deg(deg);
        const double um = um_at(at);
        sum += um;
        round.thinnest = lower(round.thinnest, {.um = um, .at = at});
        round.profile.push_back(measure::from_um_tenths(um));
        round.u_um.push_back(u_um_at(at));
    }
    round.mean = measure::from_um_tenths(sum / 360);
    return round;
}

}  // namespace

std::optional<Thickness> fit_circle(const std::vector<RingReading>& readings, Length diameter, Length sd) {
    const int n = static_cast<int>(readings.size());
    int order = std::min(2, (n - 1) / 2);
    while (order > 0 && !steady(design(readings, order), order)) --order;
    if (order < 1) return std::nullopt;

    const Design made = design(readings, order);
    const Eigen::VectorXd carried = carried_um(readings, diameter);
    const Eigen::VectorXd coefficients = made.inverse * (made.rows.transpose() * carried);
    const auto u_um_at = [&](Angle at) { return sd.um() * made.root_leverage(at, order); };
    Round round = all_round([&](Angle at) { return coefficients.dot(basis(at, order)); }, u_um_at);
    Place thinnest = round.thinnest;
    for (int i = 0; i < n; ++i) {
        thinnest = lower(thinnest, {.um = carried(i), .at = readings[static_cast<std::size_t>(i)].at});
    }
    std::optional<Length> rms{};
    if (n > 2 * order + 1) rms = measure::from_um((carried - made.rows * coefficients).norm() / std::sqrt(static_cast<double>(n)));
    std::vector<OddReading> odd{};
    for (const OddRow& row : odd_rows(made.rows, carried, sd.um())) odd.push_back({.reading = row.row, .off = measure::from_um(row.off)});
    return Thickness{.thinnest = measure::from_um_tenths(thinnest.um),
                     .thinnest_at = thinnest.at,
                     .mean = round.mean,
                     .u_um = u_um_at(thinnest.at),
                     .rms = rms,
                     .order = order,
                     .profile = std::move(round.profile),
                     .u_round_um = std::move(round.u_um),
                     .odd = std::move(odd)};
}

Thickness from_surface(const Surface& surface, const std::vector<MapReading>& readings, const Cut& cut) {
    const auto u_um_at = [&](Angle at) { return surface.sd.um() * surface.root_leverage(on_cut(cut, at)); };
    Round round = all_round([&](Angle at) { return surface.um_at(on_cut(cut, at)); }, u_um_at);
    Place thinnest = round.thinnest;
    for (const MapReading& reading : readings) {
        if (const auto on = carried_to(cut, reading)) thinnest = lower(thinnest, *on);
    }
    return {.thinnest = measure::from_um_tenths(thinnest.um),
            .thinnest_at = thinnest.at,
            .mean = round.mean,
            .u_um = u_um_at(thinnest.at),
            .rms = surface.rms,
            .order = surface.order,
            .profile = std::move(round.profile),
            .u_round_um = std::move(round.u_um),
            .odd = surface.odd};
}

Thickness from_centre(Length central, const Cut& cut, Length sd) {
    const auto distance_mm = [&](Angle at) {
        const double a = at.deg() * std::numbers::pi / 180;
        return std::hypot(cut.x.mm() + cut.diameter.mm() / 2 * std::cos(a), cut.y.mm() + cut.diameter.mm() / 2 * std::sin(a));
    };
    const auto u_um_at = [&](Angle at) {
        const double r = distance_mm(at);
        return std::hypot(sd.um() * rise(r), thickness_rise_sd_per_mm2 * central.um() * r * r);
    };
    Round round = all_round([&](Angle at) { return central.um() * rise(distance_mm(at)); }, u_um_at);
    return {.thinnest = measure::from_um_tenths(round.thinnest.um - unknown_asymmetry_um),
            .thinnest_at = std::nullopt,
            .mean = round.mean,
            .u_um = u_um_at(round.thinnest.at),
            .rms = std::nullopt,
            .order = 0,
            .profile = std::move(round.profile),
            .u_round_um = std::move(round.u_um),
            .odd = {}};
}

}  // namespace eye
