#include "intake/scan_keys.hpp"

#include <algorithm>

namespace intake {
namespace {

constexpr std::int64_t longest_gap_ms = 50;
constexpr int shortest_scan = 6;
constexpr char gs = '\x1d';

std::string utf8(char32_t c) {
    const auto byte = [](char32_t value) { return static_cast<char>(static_cast<unsigned char>(value)); };
    const auto tail = [&](int shift, char32_t from) { return byte(0x80 | (from >> shift & 0x3f)); };
    if (c < 0x80) return {byte(c)};
    if (c < 0x800) return {byte(0xc0 | c >> 6), tail(0, c)};
    if (c < 0x10000) return {byte(0xe0 | c >> 12), tail(6, c), tail(0, c)};
    return {byte(0xf0 | c >> 18), tail(12, c), tail(6, c), tail(0, c)};
}

bool is_scan(const Burst& burst) { return burst.keys >= shortest_scan; }

std::optional<Heard> end(Burst& burst) {
    if (burst.keys == 0) return std::nullopt;
    Heard heard{.is = is_scan(burst) ? Heard::Is::Scan : Heard::Is::Typing, .text = std::move(burst.text)};
    burst = {};
    return heard;
}

/// The characters of a text, one string each.
std::vector<std::string> characters(std::string_view text) {
    std::vector<std::string> all{};
    for (const char c : text) {
        const bool goes_on = (static_cast<unsigned char>(c) & 0xc0) == 0x80;
        if (goes_on && !all.empty()) {
            all.back() += c;
        } else {
            all.emplace_back(1, c);
        }
    }
    return all;
}

}  // namespace

std::vector<Heard> hear(Burst& burst, const Key& key) {
    std::vector<Heard> heard{};
    const auto tell = [&](std::optional<Heard> one) {
        if (one) heard.push_back(*std::move(one));
    };
    if (burst.keys > 0 && key.at_ms - burst.last_ms > longest_gap_ms) tell(end(burst));
    if (key.is == Key::Is::Enter) {
        const bool scanned = is_scan(burst);
        if (!scanned) burst.text += '\n', burst.keys = 1;
        tell(end(burst));
        return heard;
    }
    burst.text += key.is == Key::Is::Gs ? std::string(1, gs) : utf8(key.character);
    burst.keys += 1;
    burst.last_ms = key.at_ms;
    return heard;
}

std::optional<Heard> hear_silence(Burst& burst, std::int64_t now_ms) {
    return now_ms - burst.last_ms > longest_gap_ms ? end(burst) : std::nullopt;
}

std::optional<LayoutVerdict> judge_layout(std::string_view came) {
    std::vector<std::string> wanted = characters(layout_test), got = characters(came);
    LayoutVerdict verdict{};
    if (got.size() + 1 == wanted.size()) {
        wanted.erase(std::find(wanted.begin(), wanted.end(), std::string(1, gs)));
        verdict.gs_lost = true;
    }
    if (got.size() != wanted.size()) return std::nullopt;
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        if (got[i] != wanted[i]) verdict.wrong.emplace_back(wanted[i], got[i]);
    }
    verdict.right = verdict.wrong.empty() && !verdict.gs_lost;
    return verdict;
}

}  // namespace intake
