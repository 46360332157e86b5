#include "intake/screens.hpp"

#include "intake/reading.hpp"
#include "intake/toml_text.hpp"

#include <algorithm>
#include <tuple>

namespace intake {
namespace {

template <class T>
Rule<std::pair<T, T>> two(const Rule<T>& each) {
    return {.allowed = "[width, height], each " + each.allowed, .read = [each](const Node& node) -> std::optional<std::pair<T, T>> {
                const auto* sides = std::get_if<List>(&node.value);
                if (sides == nullptr || sides->size() != 2) return std::nullopt;
                const auto width = each.read((*sides)[0]);
                const auto height = each.read((*sides)[1]);
                return width && height ? std::optional(std::pair(*width, *height)) : std::nullopt;
            }};
}

}  // namespace

measure::Result<MeasuredScreens, Problems> read_screens(std::string_view text, const std::string& name) {
    return read_file(text, name, [](Fields& root) {
        MeasuredScreens screens;
        root.tables("screen", [&](Fields& fields) {
            MeasuredScreen one{.screen = {.name = fields.required("name", line(80))}};
            std::tie(one.screen.width_px, one.screen.height_px) = fields.required("pixels", two(whole(1, 32'000)));
            std::tie(one.screen.reported_width_mm, one.screen.reported_height_mm) = fields.required("reported_mm", two(whole(0, 32'000)));
            std::tie(one.glass.width, one.glass.height) = fields.required("glass_mm", two(millimetres({.low = 50, .high = 3000})));
            const auto same = [&](const MeasuredScreen& other) { return other.screen == one.screen; };
            if (!one.screen.name.empty() && std::ranges::any_of(screens, same)) fields.wrong("name", "each screen once");
            screens.push_back(std::move(one));
        });
        return screens;
    });
}

std::string screens_text(const MeasuredScreens& screens) {
    std::string text = "# Screens measured against a bank card, written by graftside itself. A screen that is not here is believed.\n";
    for (const MeasuredScreen& one : screens) {
        text += fmt::format("\n[[screen]]\nname = {}\npixels = [{}, {}]\nreported_mm = [{}, {}]\nglass_mm = [{:.2f}, {:.2f}]\n",
                            quoted(one.screen.name), one.screen.width_px, one.screen.height_px, one.screen.reported_width_mm,
                            one.screen.reported_height_mm, one.glass.width.mm(), one.glass.height.mm());
    }
    return text;
}

MeasuredScreens with(MeasuredScreens screens, const MeasuredScreen& measured) {
    std::erase_if(screens, [&](const MeasuredScreen& one) { return one.screen == measured.screen; });
    screens.push_back(measured);
    return screens;
}

}  // namespace intake
