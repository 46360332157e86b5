#include "measure/figure.hpp"

#include <algorithm>
#include <cstddef>
#include <string_view>

namespace measure {
namespace {

constexpr std::size_t group_of = 3, grouped_from = 5;  // ISO 80000-1: four figures stay together

bool digits(std::string_view text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

/// How many bytes of sign stand before a figure: plus, hyphen or the minus of print.
std::size_t sign_bytes(std::string_view text) {
    constexpr std::string_view minus = "\u2212";
    if (text.starts_with(minus)) return minus.size();
    return text.starts_with('+') || text.starts_with('-') ? 1 : 0;
}

}  // namespace

std::string figure(std::string written, const NumberStyle& style) {
    constexpr std::string_view either = " / ";
    if (const auto at = written.find(either); at != std::string::npos) {
        std::string made = figure(written.substr(0, at), style);
        made += either;
        return made + figure(written.substr(at + either.size()), style);
    }
    const std::size_t from = sign_bytes(written), point = written.find('.');
    const std::size_t whole = (point == std::string::npos ? written.size() : point) - std::min(from, written.size());
    const std::string_view text = written;
    if (point < from || !digits(text.substr(from, whole))) return written;
    if (point != std::string::npos) {
        if (!digits(text.substr(point + 1))) return written;
        written.replace(point, 1, style.decimal);
    }
    if (style.group.empty() || whole < grouped_from) return written;
    for (std::size_t left = whole; left > group_of;) {
        left -= group_of;
        written.insert(from + left, style.group);
    }
    return written;
}

}  // namespace measure
