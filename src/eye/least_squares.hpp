// Least squares by a QR decomposition with column pivoting, and which rows the others do not bear out. For the fits of this
// folder only; a row is a reading, its columns the functions that are fitted.
#pragma once

#include <Eigen/Dense>

#include <cstddef>
#include <optional>
#include <vector>

namespace eye {

struct Fit {
    Eigen::VectorXd coefficients{};
    Eigen::MatrixXd root{};  // of the inverse normal equations: |root x| is the root of the leverage of a row x
    Eigen::VectorXd residuals{};

    double root_leverage(const Eigen::VectorXd& row) const { return (root * row).norm(); }
    Eigen::Index spare() const { return residuals.size() - coefficients.size(); }
    /// Standard deviation of one row by its own residuals; wants spare rows.
    double scatter() const;
};

/// None where the rows leave a coefficient open.
std::optional<Fit> least_squares(const Eigen::MatrixXd& rows, const Eigen::VectorXd& values);

/// A row that stands further from what the others say than chance allows.
struct OddRow {
    std::size_t row = 0;  // from 0
    double off = 0;       // deleted residual: the value less what the fit without it gives there
};

/// By the externally studentised (deleted) residual e / (s_i sqrt(1 - h)), s_i from the fit without the row and never under
/// `sd`: a row must be odd among its like and beyond what its instrument repeats. Limit: Student's t at 0.05 over all rows
/// (Bonferroni). Several at once hide each other, so the worst is set aside and the rest judged again, up to `most` rows or a
/// tenth of all, and all up to the last that is over its limit count (the generalised extreme studentised deviate,
/// Technometrics 1983;25:165-72, from memory).
std::vector<OddRow> odd_rows(const Eigen::MatrixXd& rows, const Eigen::VectorXd& values, double sd);

/// The largest scatter of residuals that the repeatability `sd` explains: 97.5 % point of chi-squared with `spare` degrees.
double explained_scatter(double sd, Eigen::Index spare);

}  // namespace eye
