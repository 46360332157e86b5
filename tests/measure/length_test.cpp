#include "measure/length.hpp"
#include "measure/angle.hpp"

#include <doctest/doctest.h>

using namespace measure;

template <class A, class B>
concept multipliable = requires(A a, B b) {
    a* b;
};
static_assert(!multipliable<Length, Length>, "a length times a length is no length");

TEST_CASE("an advance of 62.5 um and nine spokes of it are exact") {
    CHECK(9 * from_um(62.5) == nm(562'500));
    CHECK(from_mm(7.75) == nm(7'750'000));
}

TEST_CASE("a share of the wall compares exactly where binary fractions do not: 0.9 x 0.6 / 0.06 is 9") {
    const Length wall = from_mm(0.6);
    const Length advance = from_um(60);
    CHECK(9 * 1000 * advance == 900 * wall);
}

TEST_CASE("wall figures are rounded to the nearest tenth of a micrometre") {
    CHECK(from_um_tenths(612.04) == nm(612'000));
    CHECK(from_um_tenths(612.06) == nm(612'100));
}

TEST_CASE("directions are kept in one turn and compared by the shorter way round") {
    CHECK(centideg(-100).centideg() == 35900);
    CHECK(centideg(36000).centideg() == 0);
    CHECK(from_deg(-90.0) == centideg(27000));
    CHECK(apart_centideg(centideg(35900), centideg(100)) == 200);
    CHECK(apart_centideg(centideg(0), centideg(18000)) == 18000);
}
