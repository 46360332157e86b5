#include "plan/ladder.hpp"

#include "measure/expect.hpp"

#include <boost/math/distributions/students_t.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace plan {
namespace {

namespace bm = boost::math;
// Plain double all through: the same digits whatever the width of long double.
using Policy = bm::policies::policy<bm::policies::promote_double<false>>;
using StudentT = bm::students_t_distribution<double, Policy>;

constexpr int most_rungs = 400;  // a bound for a reach that is far off
constexpr double as_good_as_sure = 0.999;
constexpr double normal_975 = 1.96;
constexpr double z_most = 8.5;  // the normal density beyond holds 2e-17

double spread(const instrument::Reach& reach) { return reach.sd * std::sqrt(1 + 1.0 / reach.n); }

/// Step of the trapezoid rule in z. `width` is k s / u, over which the t distribution turns. The error falls as
/// exp(-2 pi sqrt(n - 1) width / step), by the distance of its nearest pole from the real line, and for large n, where it
/// nears the normal, as exp(-2 (pi width / step)^2). The normal density alone needs no less than 0.25.
double step(double width, int n) {
    const double by_pole = 2 * std::numbers::pi * std::sqrt(n - 1.0) / 25;
    return std::clamp(width * std::min(by_pole, 0.75), 1.0 / 1024, 0.25);
}

Rung rung(const instrument::Trephine& trephine, const WallFigures& wall, int spoke) {
    measure::expect(trephine.advance.nm() > 0 && wall.thinnest.nm() > 0 && usable(trephine.reach));
    const double t_975 = bm::quantile(StudentT(trephine.reach.n - 1), 0.975);
    const Length down = travel(trephine, spoke);
    const double blade = t_975 * spread(trephine.reach) * down.um();
    return {.spoke = spoke,
            .travel = down,
            .share = static_cast<double>(down.nm()) / static_cast<double>(wall.thinnest.nm()),
            .reserve = measure::from_um_tenths(wall.thinnest.um() - trephine.reach.mean * down.um()),
            .reserve_u95 = measure::from_um_tenths(std::hypot(blade, normal_975 * wall.u_um)),
            .entry_chance = entry_chance(trephine.reach, wall, down)};
}

}  // namespace

bool usable(const instrument::Reach& reach) { return reach.n >= 2 && reach.sd > 0 && reach.mean > 0; }

double entry_chance(const instrument::Reach& reach, const WallFigures& wall, Length travelled) {
    measure::expect(usable(reach));
    if (travelled.nm() <= 0) return 0;
    const StudentT t(reach.n - 1);
    const double scale = spread(reach) * travelled.um();
    const double gap = wall.thinnest.um() - reach.mean * travelled.um();
    if (wall.u_um == 0) return bm::cdf(bm::complement(t, gap / scale));

    const double h = step(scale / wall.u_um, reach.n);
    const int half = static_cast<int>(std::ceil(z_most / h));
    double sum = 0;
    for (int i = -half; i <= half; ++i) {
        const double z = i * h;
        sum += std::exp(-z * z / 2) * bm::cdf(bm::complement(t, (gap + wall.u_um * z) / scale));
    }
    return std::clamp(sum * h / std::sqrt(2 * std::numbers::pi), 0.0, 1.0);
}

std::vector<Rung> ladder(const instrument::Trephine& trephine, const WallFigures& wall) {
    std::vector<Rung> rungs{};
    for (int spoke = 0; spoke < most_rungs; ++spoke) {
        rungs.push_back(rung(trephine, wall, spoke));
        if (rungs.back().entry_chance > as_good_as_sure) break;
    }
    return rungs;
}

std::optional<Rung> rung_at(const Plan& plan, const instrument::Trephine& trephine, int spoke) {
    if (plan.ladder.empty() || !plan.wall || spoke < 0) return std::nullopt;
    if (static_cast<std::size_t>(spoke) < plan.ladder.size()) return plan.ladder[static_cast<std::size_t>(spoke)];
    return rung(trephine, {.thinnest = plan.wall->thinnest, .u_um = plan.wall->u.um()}, spoke);
}

ChanceWords chance_words(double chance) {
    if (chance < 0.01) return {.id = "chance.under", .one_in = std::nullopt};
    if (chance >= 0.9) return {.id = "chance.sure", .one_in = std::nullopt};
    if (chance > 0.5) return {.id = "chance.half", .one_in = std::nullopt};
    const double exact = 1 / chance;
    const int near = static_cast<int>(std::lround(exact));
    return {.id = "chance.about", .one_in = near > 20 ? 5 * static_cast<int>(std::lround(exact / 5)) : near};
}

}  // namespace plan
