#include "intake/scan_keys.hpp"

#include <doctest/doctest.h>

#include <array>

using namespace intake;

namespace {

/// Keys `gap` ms apart from `from` on; '\x1d' is Ctrl+], '\n' is Enter.
std::vector<Heard> keyed(Burst& burst, std::string_view text, std::int64_t from, std::int64_t gap) {
    std::vector<Heard> all;
    for (const char c : text) {
        const Key::Is is = c == '\x1d' ? Key::Is::Gs : c == '\n' ? Key::Is::Enter : Key::Is::Character;
        for (Heard& one : hear(burst, {.is = is, .character = static_cast<char32_t>(c), .at_ms = from})) all.push_back(std::move(one));
        from += gap;
    }
    return all;
}

using Is = Heard::Is;

}  // namespace

TEST_CASE("keys in quick succession are a scan, ended by Enter, with GS from Ctrl+]") {
    Burst burst;
    CHECK(keyed(burst,
                "10LOT42\x1d"
                "21SN7\n",
                1000, 4) == std::vector<Heard>{{Is::Scan,
                                                "10LOT42\x1d"
                                                "21SN7"}});
    CHECK(burst == Burst{});
}

TEST_CASE("a scan without Enter ends with the silence after it") {
    Burst burst;
    CHECK(keyed(burst, "=G12341765432170", 1000, 4).empty());
    CHECK_FALSE(hear_silence(burst, 1000 + 15 * 4 + 50));
    CHECK(hear_silence(burst, 1000 + 15 * 4 + 51) == Heard{Is::Scan, "=G12341765432170"});
    CHECK_FALSE(hear_silence(burst, 5000));
}

TEST_CASE("keys with a hand's gaps are typing, each as it comes") {
    Burst burst;
    const auto heard = keyed(burst, "abcdefg\n", 0, 120);
    std::string all;
    for (const Heard& one : heard) {
        CHECK(one.is == Is::Typing);
        all += one.text;
    }
    CHECK(all == "abcdefg\n");
}

TEST_CASE("a gap of 50 ms is still one burst, 51 is not; five keys are no scan, six are") {
    Burst burst;
    CHECK(keyed(burst, "123456\n", 0, 50) == std::vector<Heard>{{Is::Scan, "123456"}});
    CHECK(keyed(burst, "123456\n", 0, 51).front().is == Is::Typing);
    burst = {};
    CHECK(keyed(burst, "12345\n", 0, 4) == std::vector<Heard>{{Is::Typing, "12345\n"}});
}

TEST_CASE("a scan into half a typed word leaves both whole") {
    Burst burst;
    CHECK(keyed(burst, "n", 0, 0).empty());
    CHECK(keyed(burst, "=<T0416003\n", 400, 3) == std::vector<Heard>{{Is::Typing, "n"}, {Is::Scan, "=<T0416003"}});
    CHECK(keyed(burst, "=<T0416003", 1000, 3).empty());
    CHECK(keyed(burst, "=>019031\n", 1300, 3) == std::vector<Heard>{{Is::Scan, "=<T0416003"}, {Is::Scan, "=>019031"}});
}

TEST_CASE("letters beyond ASCII are kept as UTF-8") {
    Burst burst;
    for (const char32_t c : {U'µ', U'é', U'€', U'𝄞'}) CHECK(hear(burst, {.is = Key::Is::Character, .character = c, .at_ms = 0}).empty());
    CHECK(hear_silence(burst, 100) == Heard{Is::Typing, "µé€𝄞"});
}

TEST_CASE("the layout's test comes back unchanged, or what is wrong is named") {
    CHECK(judge_layout(layout_test) == LayoutVerdict{.right = true});
    std::string swapped(layout_test);
    for (char& c : swapped) c = c == 'Y' ? 'Z' : c == 'Z' ? 'Y' : c == 'y' ? 'z' : c == 'z' ? 'y' : c;  // a German layout
    using Pairs = std::vector<std::pair<std::string, std::string>>;
    CHECK(judge_layout(swapped) == LayoutVerdict{.wrong = Pairs{{"Y", "Z"}, {"Z", "Y"}, {"y", "z"}, {"z", "y"}}});
    std::string without_gs(layout_test);
    std::erase(without_gs, '\x1d');
    CHECK(judge_layout(without_gs) == LayoutVerdict{.gs_lost = true});
    std::string accent(layout_test);
    accent.replace(accent.find('/'), 1, "§");
    CHECK(judge_layout(accent) == LayoutVerdict{.wrong = Pairs{{"/", "§"}}});
    CHECK_FALSE(judge_layout("=<>"));
}
