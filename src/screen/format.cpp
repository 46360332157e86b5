#include "screen/format.hpp"

#include "plan/plan.hpp"
#include "plan/sources.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <utility>
#include <vector>

namespace screen {
namespace {

std::string eye_text(const guide::CaseState& state, const Words& words) {
    return state.side.empty() ? words("eye.unknown") : words("eye." + state.side);
}

std::string planned_text(const guide::CaseState& state, const Words& words) {
    if (!state.plan || !state.plan->target) return words("plan.open");
    if (!state.plan->target->spokes) return words("plan.to_entry");
    return std::to_string(*state.plan->target->spokes + state.moved);
}

/// "8 spokes", as it is read aloud.
std::string said_spokes(const guide::CaseState& state, const Words& words) {
    if (!state.plan || !state.plan->target) return words("plan.said_open");
    if (!state.plan->target->spokes) return words("plan.said_entry");
    const int spokes = *state.plan->target->spokes + state.moved;
    return spokes == 1 ? words("plan.said_one") : words("plan.said_spokes", {std::to_string(spokes)});
}

std::string pattern_in(const std::string& section, const plan::Pattern& pattern, const Words& words) {
    const std::string interrupted = words(section + ".interrupted", {std::to_string(pattern.interrupted)});
    const std::string running = words(section + (pattern.running == 2 ? ".double_running" : ".running"), {std::to_string(pattern.loops)});
    if (pattern.running == 0) return interrupted;
    return pattern.interrupted == 0 ? running : words("pattern.both", {interrupted, running});
}

std::string aim_text(const plan::Aim& aim, const Words& words) {
    if (aim.goal == plan::Goal::ToEntry) return words("plan.aim_entry");
    if (aim.goal == plan::Goal::Spokes) return words.counted("plan.aim_spokes", {std::to_string(aim.spokes)});
    return words("plan.aim_share", {words.figure(fmt::format("{:.3g}", aim.share_permille / 10.0))});
}

}  // namespace

std::string reading_text(const guide::ClockReading& reading, const Words& words) {
    const std::int64_t seconds = reading.ms / 1000;
    const std::string figure = seconds < 3600 ? fmt::format("{:02}:{:02}", seconds / 60, seconds % 60)
                                              : fmt::format("{}:{:02}:{:02}", seconds / 3600, seconds / 60 % 60, seconds % 60);
    return reading.exact ? figure : words("clock.about", {figure});
}

std::string minutes_text(double seconds, const Words& words) { return words.figure(fmt::format("{:.1f}", seconds / 60)); }

std::string minutes_text(const guide::ClockReading& reading, const Words& words) {
    const std::string figure = minutes_text(static_cast<double>(reading.ms) / 1000, words);
    return reading.exact ? figure : words("clock.about", {figure});
}

std::string reach_text(double reach, const Words& words) { return words.figure(fmt::format("{:.3f}", reach)); }

std::int64_t number_in(const std::string& text) {
    std::int64_t value = 0;
    std::from_chars(text.data(), text.data() + text.size(), value);
    return value;
}

std::string size_text(measure::Length size, const Words& words) { return words.figure(fmt::format("{:.2f}", size.mm())); }

std::string oversize_text(measure::Length oversize, const Words& words) { return words.figure(fmt::format("{:+.2f}", oversize.mm())); }

std::string short_text(double value, const Words& words) { return words.figure(fmt::format("{:g}", value)); }

std::string instrument_text(const std::string& id, const Words& words) {
    const std::string known = "instrument." + id;
    return words.has(known) ? words(known) : id;
}

std::string note_text(const plan::Note& note, const Words& words) {
    std::vector<std::string> values = words.figures(note.values);
    const bool names_profile = note.code == "host-size-not-held" || note.code == "donor-size-not-held";
    if (names_profile && values.size() > 1) values[1] = instrument_text(note.values[1], words);
    return words("note." + note.code, values);
}

std::string source_text(const std::string& source, const Words& words) {
    namespace from = plan::source;
    using Said = std::pair<const char*, const char*>;
    constexpr std::array said{Said{from::usual, "usual"},
                              Said{from::own_file, "own_file"},
                              Said{from::profiles, "profiles"},
                              Said{from::unit, "unit"},
                              Said{from::shelf, "shelf"},
                              Said{from::odd, "odd"},
                              Said{from::depth, "depth"},
                              Said{from::reach, "reach"},
                              Said{from::slant, "slant"},
                              Said{from::slanted_path, "slanted_path"},
                              Said{from::oct_bias, "oct_bias"},
                              Said{from::scheimpflug_bias, "scheimpflug_bias"},
                              Said{from::profile, "profile"},
                              Said{from::quarter_mixed, "quarter_mixed"},
                              Said{from::suction_sizes, "suction_sizes"},
                              Said{from::cold_days, "cold_days"}};
    for (const auto& [told, id] : said) {
        if (source == told) return words(std::string("source.") + id);
    }
    return source;
}

std::string um_text(measure::Length length) { return fmt::format("{} µm", std::lround(length.um())); }

std::string pattern_text(const plan::Pattern& pattern, const Words& words) { return pattern_in("pattern", pattern, words); }

std::string spokes_text(const plan::Target& target, int moved, const Words& words) {
    const std::string raise = std::to_string(target.raise);
    return target.spokes ? words("plan.spokes", {raise, std::to_string(*target.spokes + moved)}) : words("plan.spokes_entry", {raise});
}

std::string chance_text(double chance, const Words& words) {
    const plan::ChanceWords said = plan::chance_words(chance);
    return words(said.id, said.one_in ? std::vector<std::string>{std::to_string(*said.one_in)} : std::vector<std::string>{});
}

std::string listed(const std::vector<std::string>& texts) {
    std::string all{};
    for (const std::string& text : texts) {
        if (!all.empty()) all += "\u00A0· ";
        for (const char letter : text) letter == ' ' ? all += "\u00A0" : all += letter;
    }
    return all;
}

std::string count_title(const guide::CaseState& state, const guide::ItemId& item) {
    const auto& all = state.brief.unit.counts;
    const auto found = std::find_if(all.begin(), all.end(), [&](const guide::CountItem& one) { return one.id == item; });
    return found == all.end() ? item : found->title;
}

std::string filled(std::string text, const guide::CaseState& state, const Words& words) {
    const plan::CaseFile& file = state.inputs.file;
    const bool clockwise = state.inputs.trephine.lower == instrument::Turn::Clockwise;
    const std::vector<std::pair<std::string, std::string>> slots{
        {"{eye}", eye_text(state, words)},
        {"{host}", words("unit.mm", {size_text(file.host_diameter, words)})},
        {"{donor}", words("unit.mm", {size_text(file.donor.diameter, words)})},
        {"{raise}", std::to_string(state.inputs.trephine.raise)},
        {"{planned}", planned_text(state, words)},
        {"{sutures}", pattern_in("pattern_said", file.pattern, words)},
        {"{spokes}", said_spokes(state, words)},
        {"{lower}", words(clockwise ? "turn.clockwise" : "turn.counter_clockwise")},
        {"{aim}", aim_text(file.aim, words)},
    };
    for (const auto& [slot, value] : slots) {
        for (auto at = text.find(slot); at != std::string::npos; at = text.find(slot, at + value.size()))
            text.replace(at, slot.size(), value);
    }
    return text;
}

}  // namespace screen
