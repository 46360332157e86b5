#include "paper/format.hpp"

#include "eye/frame.hpp"

#include <fmt/format.h>

#include <cmath>
#include <utility>
#include <vector>

namespace paper {

std::string size_text(measure::Length size, const Words& words) {
    return words("unit.mm", {words.figure(fmt::format("{:.2f}", size.mm()))});
}

std::string oversize_text(measure::Length oversize, const Words& words) {
    const std::string figure = oversize.nm() == 0 ? "0.00" : fmt::format("{:+.2f}", oversize.mm());
    return words("unit.mm", {words.figure(figure)});
}

std::string short_text(double value, const Words& words) { return words.figure(fmt::format("{:g}", value)); }

std::string note_text(const plan::Note& note, const Words& words) {
    std::vector<std::string> values = note.values;
    for (std::string& value : values) value = words.figure(std::move(value));
    return words("note." + note.code, values);
}

std::string whole_um(measure::Length length) { return number(std::lround(length.um())); }

std::string duration_text(const guide::ClockReading& reading, const Words& words) {
    const std::int64_t s = reading.ms / 1000;
    const std::string figure =
        s < 3600 ? fmt::format("{}:{:02}", s / 60, s % 60) : fmt::format("{}:{:02}:{:02}", s / 3600, s / 60 % 60, s % 60);
    return reading.exact ? figure : words("clock.about", {figure});
}

std::string pattern_text(const plan::Pattern& pattern, const Words& words) {
    const std::string interrupted = words("pattern.interrupted", {number(pattern.interrupted)});
    if (pattern.running == 0) return interrupted;
    const std::string running = words(pattern.running == 2 ? "pattern.double_running" : "pattern.running", {number(pattern.loops)});
    return pattern.interrupted == 0 ? running : words("pattern.both", {interrupted, running});
}

std::string chance_text(double chance, const Words& words) {
    const plan::ChanceWords said = plan::chance_words(chance);
    return said.one_in ? words(said.id, {number(*said.one_in)}) : words(said.id);
}

std::string hour_text(int centideg) { return eye::short_clock_text(measure::centideg(centideg)); }

std::string mark_text(int centideg, const plan::Inputs& inputs, const Words& words) {
    if (inputs.trephine.marks == 0) return {};
    const auto place = eye::mark_place(measure::centideg(centideg), inputs.trephine.marks, inputs.trephine.mark_offset);
    if (place.mark) return words("paper.mark", {number(*place.mark)});
    return place.between ? words("paper.between", {number(place.between->first), number(place.between->second)}) : "";
}

std::string step_text(const guide::CaseState& state, const guide::StepId& id, const char* what, const Words& words) {
    if (!guide::confirmed(state, id)) return words("paper.not_recorded");
    return words(what, {measure::hour_minute(state.steps.at(id).at)});
}

}  // namespace paper
