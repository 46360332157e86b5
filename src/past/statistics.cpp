#include "past/statistics.hpp"

#include "measure/expect.hpp"

#include <boost/math/distributions/students_t.hpp>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace past {
namespace {

namespace bm = boost::math;
using Policy = bm::policies::policy<bm::policies::promote_double<false>>;
using StudentT = bm::students_t_distribution<double, Policy>;

constexpr double z_975 = 1.959963984540054;

/// The value at (n - 1) p of a sorted list.
double at(const std::vector<double>& sorted, double p) {
    const double place = static_cast<double>(sorted.size() - 1) * p;
    const auto below = static_cast<std::size_t>(place);
    const double rest = place - static_cast<double>(below);
    return below + 1 < sorted.size() ? sorted[below] + rest * (sorted[below + 1] - sorted[below]) : sorted[below];
}

}  // namespace

std::optional<Rate> wilson(int events, int of) {
    if (of == 0) return std::nullopt;
    measure::expect(of > 0 && events >= 0 && events <= of);
    const double n = of, p = events / n, z2 = z_975 * z_975;
    const double middle = (p + z2 / (2 * n)) / (1 + z2 / n);
    const double half = z_975 / (1 + z2 / n) * std::sqrt(p * (1 - p) / n + z2 / (4 * n * n));
    // At the ends the bound is the end itself; in doubles it would miss it by a hair.
    return Rate{.events = events, .of = of, .share = p, .low = events == 0 ? 0 : middle - half, .high = events == of ? 1 : middle + half};
}

std::optional<Quartiles> quartiles(std::vector<double> values) {
    if (values.empty()) return std::nullopt;
    std::sort(values.begin(), values.end());
    return Quartiles{.n = static_cast<int>(values.size()),
                     .least = values.front(),
                     .q1 = at(values, 0.25),
                     .median = at(values, 0.5),
                     .q3 = at(values, 0.75),
                     .most = values.back()};
}

Spread spread(int n, double mean, double sd) {
    measure::expect(n >= 2);
    const double t = bm::quantile(StudentT(n - 1), 0.975);
    const double of_mean = t * sd / std::sqrt(n), of_next = t * sd * std::sqrt(1 + 1.0 / n);
    return {.n = n,
            .mean = mean,
            .sd = sd,
            .mean_low = mean - of_mean,
            .mean_high = mean + of_mean,
            .next_low = mean - of_next,
            .next_high = mean + of_next};
}

std::optional<Spread> spread(const std::vector<double>& values) {
    constexpr std::size_t least = 3;
    if (values.size() < least) return std::nullopt;
    const auto n = static_cast<double>(values.size());
    const double mean = std::accumulate(values.begin(), values.end(), 0.0) / n;
    const double squares =
        std::accumulate(values.begin(), values.end(), 0.0, [&](double sum, double value) { return sum + (value - mean) * (value - mean); });
    const double sd = std::sqrt(squares / (n - 1));
    return spread(static_cast<int>(values.size()), mean, sd);
}

}  // namespace past
