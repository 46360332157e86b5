#include "picture/wrap.hpp"

#include <algorithm>
#include <sstream>

namespace picture {

namespace {

/// A figure and its unit stay together: "7.75 mm", "80 %".
bool belongs(const std::string& before, const std::string& word) {
    if (before.empty() || before.back() < '0' || before.back() > '9') return false;
    const std::string bare = word.substr(0, word.find_last_not_of(".,:;") + 1);
    return bare == "mm" || bare == "µm" || bare == "%" || bare == "D" || bare == "s" || bare == "min" || bare == "°C" || bare == "Uhr";
}

std::vector<std::string> words_of(const std::string& text) {
    std::vector<std::string> made;
    std::istringstream words(text);
    for (std::string word; words >> word;) {
        if (!made.empty() && belongs(made.back(), word)) {
            made.back() += " " + word;
        } else {
            made.push_back(word);
        }
    }
    return made;
}

/// What of a word too wide for a line goes on it: up to a slash, as a DOI is broken in print. Nothing else is ever broken.
std::string head_of(const std::string& word, Type type, double width, const Lettering& lettering) {
    for (auto slash = word.rfind('/'); slash != std::string::npos && slash > 0; slash = word.rfind('/', slash - 1)) {
        std::string head = word.substr(0, slash + 1);
        if (head.size() < word.size() && lettering.width(type, head) <= width) return head;
    }
    return word;
}

std::vector<std::string> greedy(const std::vector<std::string>& words, Type type, double width, const Lettering& lettering) {
    std::vector<std::string> lines;
    for (std::string word : words) {
        const bool fits = !lines.empty() && lettering.width(type, lines.back() + " " + word) <= width;
        if (fits) {
            lines.back() += " " + word;
        } else {
            while (lettering.width(type, word) > width) {
                std::string head = head_of(word, type, width, lettering);
                if (head.size() == word.size()) break;
                word.erase(0, head.size());
                lines.push_back(std::move(head));
            }
            lines.push_back(std::move(word));
        }
    }
    return lines;
}

}  // namespace

std::vector<std::string> wrap(const std::string& text, Type type, double width, const Lettering& lettering) {
    const auto words = words_of(text);
    auto lines = greedy(words, type, width, lettering);
    if (lines.size() < 2) return lines;
    // As many lines, but of even length: no lonely last word.
    double low = width / 2, high = width;
    for (int i = 0; i < 8; ++i) {
        const double middle = (low + high) / 2;
        auto tighter = greedy(words, type, middle, lettering);
        const bool same =
            tighter.size() == lines.size() && widest(tighter, type, lettering) <= std::max(middle, widest(lines, type, lettering));
        (same ? high : low) = middle;
        if (same) lines = std::move(tighter);
    }
    return lines;
}

namespace {

/// The byte at which the letter that begins at `from` ends.
std::size_t letter_end(const std::string& text, std::size_t from) {
    std::size_t to = from + 1;
    while (to < text.size() && (static_cast<unsigned char>(text[to]) & 0xc0U) == 0x80U) ++to;
    return to;
}

}  // namespace

std::vector<std::string> wrap_typed(const std::string& text, Type type, double width, const Lettering& lettering) {
    std::vector<std::string> lines{""};
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t word = std::min(text.find_first_not_of(' ', from), text.size()), to = std::min(text.find(' ', word), text.size());
        const bool fits = lettering.width(type, lines.back() + text.substr(from, to - from)) <= width;
        if (!fits && !lines.back().empty()) lines.emplace_back();
        for (std::size_t at = fits ? from : word; at < to;) {
            const std::string letter = text.substr(at, letter_end(text, at) - at);
            if (!lines.back().empty() && lettering.width(type, lines.back() + letter) > width) lines.emplace_back();
            lines.back() += letter;
            at += letter.size();
        }
        from = to;
    }
    return lines;
}

double widest(const std::vector<std::string>& lines, Type type, const Lettering& lettering) {
    double most = 0;
    for (const auto& line : lines) most = std::max(most, lettering.width(type, line));
    return most;
}

double pitch(Type type, const Lettering& lettering) { return lettering.cap(type) * 1.6; }

}  // namespace picture
