// Against R 4.2.2: prop.test(correct = FALSE), quantile(type = 7), t.test and the prediction interval of lm(x ~ 1).
#include "past/statistics.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace past;
using doctest::Approx;

namespace {

constexpr double digits = 1e-12;

}  // namespace

TEST_CASE("Wilson's interval is R's prop.test without continuity correction") {
    struct Row {
        int events = 0, of = 0;
        double low = 0, high = 0;
    };
    for (const Row& row : {Row{9, 2011, 0.00235631137065569, 0.00848397520627336}, Row{9, 830, 0.00571505749404695, 0.0204787214187749},
                           Row{4, 543, 0.00286830202156393, 0.0187859793605228}, Row{22, 3384, 0.00429727069763059, 0.00982424573169716},
                           Row{17, 1351, 0.00787109096802032, 0.0200594529154188}, Row{0, 10, 0, 0.277532799862889},
                           Row{10, 10, 0.722467200137111, 1}, Row{1, 1, 0.206549314377238, 1}}) {
        CAPTURE(row.events);
        CAPTURE(row.of);
        const auto rate = wilson(row.events, row.of);
        REQUIRE(rate);
        CHECK(rate->low == Approx(row.low).epsilon(digits));
        CHECK(rate->high == Approx(row.high).epsilon(digits));
    }
    CHECK_FALSE(wilson(0, 0));
}

// Expulsive bleeding in grafting: Ophthalmic Surg 1994;25:521-5, Am J Ophthalmol 1989;108:670-5, Eye Contact Lens 2016;42:206-10;
// early donor failure, Cornea 1988;7:89-95, prints 0.8 to 2.0.
TEST_CASE("published counts have the intervals that were worked out from them") {
    const auto percent = [](double share) { return std::round(share * 10'000) / 100; };
    struct Row {
        int events = 0, of = 0;
        double share = 0, low = 0, high = 0;
    };
    for (const Row& row :
         {Row{9, 2011, 0.45, 0.24, 0.85}, Row{9, 830, 1.08, 0.57, 2.05}, Row{4, 543, 0.74, 0.29, 1.88}, Row{22, 3384, 0.65, 0.43, 0.98}}) {
        const Rate rate = *wilson(row.events, row.of);
        CHECK(percent(rate.share) == Approx(row.share));
        CHECK(percent(rate.low) == Approx(row.low));
        CHECK(percent(rate.high) == Approx(row.high));
    }
    CHECK(std::round(wilson(17, 1351)->low * 1000) == 8);
    CHECK(std::round(wilson(17, 1351)->high * 1000) == 20);
}

TEST_CASE("quartiles are R's type 7") {
    CHECK(quartiles({4, 2, 3, 1}) == Quartiles{.n = 4, .least = 1, .q1 = 1.75, .median = 2.5, .q3 = 3.25, .most = 4});
    CHECK(quartiles({3, 1, 4, 1, 5, 9, 2, 6}) == Quartiles{.n = 8, .least = 1, .q1 = 1.75, .median = 3.5, .q3 = 5.25, .most = 9});
    CHECK(quartiles({7.5, 2, 11}) == Quartiles{.n = 3, .least = 2, .q1 = 4.75, .median = 7.5, .q3 = 9.25, .most = 11});
    CHECK(quartiles({5}) == Quartiles{.n = 1, .least = 5, .q1 = 5, .median = 5, .q3 = 5, .most = 5});
    CHECK_FALSE(quartiles({}));
}

TEST_CASE("mean, scatter, and the intervals of the mean and of the next value are R's") {
    const auto found = spread({1.02, 1.10, 0.95, 1.08, 1.00});
    REQUIRE(found);
    CHECK(found->n == 5);
    CHECK(found->mean == Approx(1.03).epsilon(digits));
    CHECK(found->sd == Approx(0.0608276253029823).epsilon(digits));
    CHECK(found->mean_low == Approx(0.954472527565059).epsilon(digits));
    CHECK(found->mean_high == Approx(1.10552747243494).epsilon(digits));
    CHECK(found->next_low == Approx(0.844996230972272).epsilon(digits));
    CHECK(found->next_high == Approx(1.21500376902773).epsilon(digits));
    CHECK(spread(found->n, found->mean, found->sd) == *found);
    CHECK_FALSE(spread({1, 2}));
    CHECK(spread({1, 2, 3}));
}

// Clin Ophthalmol 2014;8:2391-6: 83.7 ± 6.53 % of 11, printed with the normal's 1.96 as 79.8 to 87.6; by Student's t of 10 it is wider.
TEST_CASE("eleven cuts with the published scatter have a wider interval than the printed one, which took the normal's 1.96") {
    const Spread found = spread(11, 83.7, 6.53);
    CHECK(found.mean - 1.959964 * found.sd / std::sqrt(11.0) == Approx(79.84).epsilon(1e-4));
    CHECK(found.mean_low == Approx(83.7 - 2.228139 * 6.53 / std::sqrt(11.0)).epsilon(1e-6));
}
