#include "eye/surface.hpp"

#include "eye/least_squares.hpp"
#include "measure/expect.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <set>

namespace eye {
namespace {

constexpr int usual_order = 2;
constexpr int most_order = 4;
constexpr std::size_t readings_a_coefficient = 2;
constexpr double most_over_readings = 1.5;
constexpr Length beside_a_ring = measure::nm(250'000);

Eigen::Index terms(int order) { return order == 1 ? 4 : (order + 1) * (order + 2) / 2; }

/// 1, x, y, x^2, x y, y^2, ... up to the order, coordinates in parts of `reach`; for order 1: 1, x, y, x^2 + y^2.
Eigen::VectorXd monomials(const Point& point, Length reach, int order) {
    const double x = point.x.mm() / reach.mm(), y = point.y.mm() / reach.mm();
    Eigen::VectorXd row(terms(order));
    Eigen::Index i = 0;
    for (int degree = 0; degree <= order; ++degree) {
        for (int k = 0; k <= degree; ++k) row(i++) = std::pow(x, degree - k) * std::pow(y, k);
    }
    if (order == 1) row(i) = x * x + y * y;
    return row;
}

Length farthest(const std::vector<MapReading>& readings) {
    double mm = 0;
    for (const MapReading& reading : readings) mm = std::max(mm, std::hypot(reading.at.x.mm(), reading.at.y.mm()));
    return measure::from_mm(mm);
}

Eigen::MatrixXd design(const std::vector<MapReading>& readings, Length reach, int order) {
    Eigen::MatrixXd rows(static_cast<Eigen::Index>(readings.size()), terms(order));
    for (std::size_t i = 0; i < readings.size(); ++i) {
        rows.row(static_cast<Eigen::Index>(i)) = monomials(readings[i].at, reach, order).transpose();
    }
    return rows;
}

Eigen::VectorXd thicknesses(const std::vector<MapReading>& readings) {
    Eigen::VectorXd um(static_cast<Eigen::Index>(readings.size()));
    for (std::size_t i = 0; i < readings.size(); ++i) um(static_cast<Eigen::Index>(i)) = readings[i].thickness.um();
    return um;
}

std::vector<double> by_rows(const Eigen::MatrixXd& matrix) {
    std::vector<double> values{};
    for (Eigen::Index i = 0; i < matrix.rows(); ++i) {
        for (Eigen::Index k = 0; k < matrix.cols(); ++k) values.push_back(matrix(i, k));
    }
    return values;
}

/// Farther out than any reading, by more than what counts as on a ring.
bool beyond(const Surface& surface, const Point& point) {
    constexpr double rounding_mm = 2e-6;  // places are whole nanometres
    return std::hypot(point.x.mm(), point.y.mm()) > surface.reach.mm() + beside_a_ring.mm() + rounding_mm;
}

double most_supported(const Surface& surface) { return most_over_readings * surface.widest; }

/// The surface of one order; none where the readings leave a coefficient open.
std::optional<Surface> surface_of(const std::vector<MapReading>& readings, int order, Length sd) {
    const Length reach = farthest(readings);
    if (reach.nm() == 0) return std::nullopt;
    const Eigen::MatrixXd rows = design(readings, reach, order);
    const Eigen::VectorXd um = thicknesses(readings);
    const auto fit = least_squares(rows, um);
    if (!fit || fit->spare() < 1) return std::nullopt;
    Surface surface{.order = order, .reach = reach, .sd = sd};
    surface.scattered = fit->scatter() > explained_scatter(sd.um(), fit->spare());
    if (surface.scattered) surface.sd = measure::from_um(fit->scatter());
    surface.rms = measure::from_um(fit->residuals.norm() / std::sqrt(static_cast<double>(readings.size())));
    for (Eigen::Index i = 0; i < rows.rows(); ++i) surface.widest = std::max(surface.widest, fit->root_leverage(rows.row(i)));
    surface.coefficients_um.assign(fit->coefficients.begin(), fit->coefficients.end());
    surface.spread = by_rows(fit->root);
    for (const OddRow& row : odd_rows(rows, um, sd.um())) surface.odd.push_back({.reading = row.row, .off = measure::from_um(row.off)});
    return surface;
}

/// Whether the instrument explains the residuals once the odd readings are set aside: then no higher order is called for.
bool explained(const Surface& surface, std::vector<MapReading> readings, Length sd) {
    if (!surface.scattered) return true;
    std::set<std::size_t> odd{};
    for (const OddReading& one : surface.odd) odd.insert(one.reading);
    for (auto row = odd.rbegin(); row != odd.rend(); ++row) readings.erase(readings.begin() + static_cast<std::ptrdiff_t>(*row));
    const auto fit = least_squares(design(readings, surface.reach, surface.order), thicknesses(readings));
    return fit && fit->spare() > 0 && fit->scatter() <= explained_scatter(sd.um(), fit->spare());
}

/// The degree of the cut that is farthest from being supported; none: all are.
std::optional<Angle> open_at(const Surface& surface, const Cut& cut) {
    std::optional<Angle> open{};
    double most = most_supported(surface);
    for (int deg = 0; deg < 360; ++deg) {
        const Angle at = measure::whole_deg(deg);
        const Point point = on_cut(cut, at);
        const double here =
            beyond(surface, point) ? most_over_readings + std::hypot(point.x.mm(), point.y.mm()) : surface.root_leverage(point);
        if (here <= most) continue;
        most = here;
        open = at;
    }
    return open;
}

/// The surface of one order, where the readings bear it all round the cut.
SurfaceFit borne(const std::vector<MapReading>& readings, const Cut& cut, int order, Length sd) {
    auto surface = surface_of(readings, order, sd);
    if (!surface) return {};
    const auto open = open_at(*surface, cut);
    if (open) return {.surface = std::nullopt, .open = open};
    return {.surface = std::move(surface), .open = std::nullopt};
}

}  // namespace

Point on_ring(Length ring, Angle at) {
    const double a = at.deg() * std::numbers::pi / 180, r = ring.mm() / 2;
    return {.x = measure::from_mm(r * std::cos(a)), .y = measure::from_mm(r * std::sin(a))};
}

Point on_cut(const Cut& cut, Angle at) {
    const Point round = on_ring(cut.diameter, at);
    return {.x = cut.x + round.x, .y = cut.y + round.y};
}

Estimate Surface::at(const Point& point) const {
    const double root = root_leverage(point);
    return {.thickness = measure::from_um_tenths(um_at(point)),
            .u = measure::from_um(sd.um() * root),
            .supported = root <= most_supported(*this) && !beyond(*this, point)};
}

double Surface::um_at(const Point& point) const {
    const auto size = static_cast<Eigen::Index>(coefficients_um.size());
    return Eigen::Map<const Eigen::VectorXd>(coefficients_um.data(), size).dot(monomials(point, reach, order));
}

double Surface::root_leverage(const Point& point) const {
    using ByRows = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
    const auto size = static_cast<Eigen::Index>(coefficients_um.size());
    return (Eigen::Map<const ByRows>(spread.data(), size, size) * monomials(point, reach, order)).norm();
}

SurfaceFit fit_surface(const std::vector<MapReading>& readings, const Cut& cut, Length sd) {
    SurfaceFit found{};
    for (int order = usual_order; order <= most_order; ++order) {
        const auto wanted = static_cast<std::size_t>(terms(order)) * readings_a_coefficient;
        if (order > usual_order && readings.size() < wanted) break;
        auto fit = borne(readings, cut, order, sd);
        if (order == usual_order && !fit.surface) return fit.open ? fit : borne(readings, cut, 1, sd);
        if (!fit.surface) break;
        found = std::move(fit);
        if (explained(*found.surface, readings, sd)) break;
    }
    return found;
}

}  // namespace eye
