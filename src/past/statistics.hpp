// The few statistics that figures over past cases are told with, each with its uncertainty. No case is known here.
#pragma once

#include <optional>
#include <vector>

namespace past {

/// A share of cases with its Wilson 95 % interval (score interval without continuity correction; z = 1.959964).
struct Rate {
    int events = 0, of = 0;
    double share = 0, low = 0, high = 0;
    bool operator==(const Rate&) const = default;
};
/// None of nothing.
std::optional<Rate> wilson(int events, int of);

/// Median and quartiles by linear interpolation between order statistics at (n - 1) p: R's type 7, its default.
struct Quartiles {
    int n = 0;
    double least = 0, q1 = 0, median = 0, q3 = 0, most = 0;
    bool operator==(const Quartiles&) const = default;
};
std::optional<Quartiles> quartiles(std::vector<double> values);

/// Mean and sample SD (n - 1) with two 95 % intervals of Student's t: of the mean, mean ± t SD / √n, and of one more value,
/// mean ± t SD √(1 + 1/n). Three values are the least, as the profile's reach asks.
struct Spread {
    int n = 0;
    double mean = 0, sd = 0;
    double mean_low = 0, mean_high = 0, next_low = 0, next_high = 0;
    bool operator==(const Spread&) const = default;
};
std::optional<Spread> spread(const std::vector<double>& values);
/// Of what is told by its mean and sample SD alone; two values are the least.
Spread spread(int n, double mean, double sd);

}  // namespace past
