#include "eye/least_squares.hpp"

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/students_t.hpp>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace eye {
namespace {

namespace bm = boost::math;
using Policy = bm::policies::policy<bm::policies::promote_double<false>>;

constexpr double in_all_rows = 0.05;  // chance that a sound set of readings has a row called odd
constexpr std::size_t most_odd = 5;
constexpr double alone = 1e-9;  // 1 - leverage below it: nothing else says anything of that row

struct Judged {
    std::size_t at = 0;  // in the rows that were judged
    double t = 0, off = 0;
};

/// The row with the largest studentised deleted residual.
std::optional<Judged> worst(const Eigen::MatrixXd& rows, const Eigen::VectorXd& values, double sd) {
    const auto fit = least_squares(rows, values);
    if (!fit || fit->spare() < 2) return std::nullopt;
    const double squares = fit->residuals.squaredNorm();
    Judged found{};
    for (Eigen::Index i = 0; i < rows.rows(); ++i) {
        const double free = 1 - std::pow(fit->root_leverage(rows.row(i)), 2);
        if (free < alone) continue;
        const double e = fit->residuals(i);
        const double others = std::sqrt(std::max(0.0, squares - e * e / free) / static_cast<double>(fit->spare() - 1));
        const double t = std::abs(e) / (std::max(others, sd) * std::sqrt(free));
        if (t > found.t) found = {.at = static_cast<std::size_t>(i), .t = t, .off = e / free};
    }
    return found;
}

double limit(std::size_t rows, Eigen::Index columns) {
    const bm::students_t_distribution<double, Policy> t(static_cast<double>(rows) - static_cast<double>(columns) - 1);
    return bm::quantile(t, 1 - in_all_rows / (2 * static_cast<double>(rows)));
}

}  // namespace

double Fit::scatter() const { return residuals.norm() / std::sqrt(static_cast<double>(spare())); }

std::optional<Fit> least_squares(const Eigen::MatrixXd& rows, const Eigen::VectorXd& values) {
    const Eigen::Index columns = rows.cols();
    if (rows.rows() < columns) return std::nullopt;
    const Eigen::ColPivHouseholderQR<Eigen::MatrixXd> qr(rows);
    if (qr.rank() < columns) return std::nullopt;
    Fit fit{};
    fit.coefficients = qr.solve(values);
    fit.residuals = values - rows * fit.coefficients;
    // X P = Q R, so (X' X)^-1 = P R^-1 R^-T P' and the leverage of x is |R^-T P' x|^2.
    const Eigen::MatrixXd r = qr.matrixR().topLeftCorner(columns, columns);
    const Eigen::MatrixXd turned = qr.colsPermutation().transpose() * Eigen::MatrixXd::Identity(columns, columns);
    fit.root = r.triangularView<Eigen::Upper>().transpose().solve(turned);
    return fit;
}

std::vector<OddRow> odd_rows(const Eigen::MatrixXd& rows, const Eigen::VectorXd& values, double sd) {
    std::vector<Eigen::Index> kept(static_cast<std::size_t>(rows.rows()));
    std::iota(kept.begin(), kept.end(), 0);
    const std::size_t most = std::clamp<std::size_t>(kept.size() / 10, 1, most_odd);
    std::vector<OddRow> aside{};
    std::size_t odd = 0;
    while (aside.size() < most) {
        const auto found = worst(rows(kept, Eigen::all), values(kept), sd);
        if (!found) break;
        aside.push_back({.row = static_cast<std::size_t>(kept[found->at]), .off = found->off});
        if (found->t > limit(kept.size(), rows.cols())) odd = aside.size();
        kept.erase(kept.begin() + static_cast<std::ptrdiff_t>(found->at));
    }
    aside.resize(odd);
    return aside;
}

double explained_scatter(double sd, Eigen::Index spare) {
    const bm::chi_squared_distribution<double, Policy> chi(static_cast<double>(spare));
    return sd * std::sqrt(bm::quantile(chi, 0.975) / static_cast<double>(spare));
}

}  // namespace eye
