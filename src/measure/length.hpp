// Lengths as whole nanometres: 62.5 um, 7.75 mm and 0.1 um are exact, so equality, hashes and the blade ladder are exact.
// Made by named functions, read by named members; only the operators that exist physically.
#pragma once

#include <compare>
#include <cstdint>

namespace measure {

class Length {
public:
    constexpr Length() = default;
    friend constexpr Length nm(std::int64_t);
    constexpr std::int64_t nm() const { return nm_; }
    constexpr double um() const { return static_cast<double>(nm_) / 1e3; }
    constexpr double mm() const { return static_cast<double>(nm_) / 1e6; }
    friend constexpr Length operator+(Length a, Length b) { return Length(a.nm_ + b.nm_); }
    friend constexpr Length operator-(Length a, Length b) { return Length(a.nm_ - b.nm_); }
    friend constexpr Length operator*(std::int64_t n, Length a) { return Length(n * a.nm_); }
    constexpr auto operator<=>(const Length&) const = default;

private:
    explicit constexpr Length(std::int64_t n) : nm_(n) {}
    std::int64_t nm_ = 0;
};

constexpr Length nm(std::int64_t n) { return Length(n); }

/// The nearest whole nanometre of a figure in micrometres.
Length from_um(double um);
/// The nearest tenth of a micrometre of a figure in micrometres: the precision of every wall figure before it is used.
Length from_um_tenths(double um);
/// The nearest whole nanometre of a figure in millimetres.
Length from_mm(double mm);

}  // namespace measure
