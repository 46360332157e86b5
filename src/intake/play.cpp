#include "intake/play.hpp"

#include "eye/frame.hpp"
#include "intake/document.hpp"
#include "intake/play_table.hpp"
#include "intake/utf8.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <set>

namespace intake {
namespace {

using measure::Problem;
using nlohmann::json;

constexpr std::size_t longest_line = 64 * 1024;  // bytes

/// What is wrong with one line. The first thing is enough: a play stops there anyway.
struct Wrong {
    std::string key{}, found{}, allowed{};
    int column = 1;
};
template <class T>
using Outcome = measure::Result<T, Wrong>;

std::string shown(const json& value) {
    return value.is_string() ? "\"" + one_line(value.get<std::string>()) + "\""
                             : one_line(value.dump(-1, ' ', false, json::error_handler_t::replace));
}

/// The object of a line. A key that stands twice is refused: a JSON reader would drop one of the two unseen.
Outcome<json> object_of(std::string_view line) {
    if (line.size() > longest_line)
        return Wrong{"json", fmt::format("{} bytes", line.size()), fmt::format("at most {} bytes a line", longest_line)};
    std::set<std::string> keys;
    std::string twice;
    const auto watch = [&](int depth, json::parse_event_t event, json& parsed) {
        if (event == json::parse_event_t::key && depth == 1 && !keys.insert(parsed.get<std::string>()).second)
            twice = parsed.get<std::string>();
        return true;
    };
    try {
        json object = json::parse(line, watch);
        if (!twice.empty()) return Wrong{one_line(twice), "the key twice", "each key once"};
        if (!object.is_object()) return Wrong{"json", shown(object), "an object such as {\"at\": …, \"who\": …, \"do\": …}"};
        return object;
    } catch (const json::parse_error& error) {
        const std::string_view before = line.substr(0, std::min(line.size(), error.byte == 0 ? 0 : error.byte - 1));
        return Wrong{"json", "no JSON from here on", "one JSON object a line", static_cast<int>(characters(before)) + 1};
    }
}

std::optional<PlayValues::Value> value_of(const json& value, const PlayField& field) {
    switch (field.form) {
        case Form::None:
            return std::nullopt;
        case Form::Text:
            return value.is_string() ? std::optional<PlayValues::Value>(value.get<std::string>()) : std::nullopt;
        case Form::Whole: {
            if (!value.is_number_integer() || (value.is_number_unsigned() && value.get<std::uint64_t>() > INT64_MAX)) return std::nullopt;
            const auto whole = value.get<std::int64_t>();
            return whole >= field.low && whole <= field.high ? std::optional<PlayValues::Value>(whole) : std::nullopt;
        }
        case Form::Flag:
            return value.is_boolean() ? std::optional<PlayValues::Value>(value.get<bool>()) : std::nullopt;
        case Form::Word:
            return value.is_string() && is_one_of(value.get<std::string>(), field.words)
                       ? std::optional<PlayValues::Value>(value.get<std::string>())
                       : std::nullopt;
        case Form::ClockHour:
            return value.is_string() && eye::from_clock_text(value.get<std::string>())
                       ? std::optional<PlayValues::Value>(value.get<std::string>())
                       : std::nullopt;
    }
    measure::expect(false);
    return std::nullopt;
}

/// Takes the fields that are there into `values`.
std::optional<Wrong> take(const json& object, std::span<const PlayField> fields, PlayValues& values) {
    for (std::size_t i = 0; i < fields.size(); ++i) {
        const PlayField& field = fields[i];
        if (field.form == Form::None) continue;
        const auto found = object.find(std::string(field.name));
        if (found == object.end()) {
            if (field.need == Need::Required) return Wrong{std::string(field.name), "nothing", allowed(field)};
            continue;
        }
        const auto value = value_of(*found, field);
        if (!value) return Wrong{std::string(field.name), shown(*found), allowed(field)};
        if (field.form == Form::ClockHour && values.has(fields[i - 1].name)) {
            return Wrong{std::string(field.name), fmt::format("{} as well", fields[i - 1].name), "one of the two"};
        }
        values.set(field.name, *value);
    }
    return std::nullopt;
}

std::optional<Wrong> unknown_field(const json& object, const PlayIntent& intent) {
    const auto named = [](std::string_view name) {
        return [name](const PlayField& field) { return field.form != Form::None && field.name == name; };
    };
    for (const auto& [key, value] : object.items()) {
        if (std::ranges::any_of(common_fields(), named(key)) || std::ranges::any_of(intent.fields, named(key))) continue;
        std::string known = "at, who, do, from, expect";
        for (const PlayField& field : intent.fields) {
            if (field.form != Form::None) known += fmt::format(", {}", field.name);
        }
        return Wrong{one_line(key), "an unknown field", known};
    }
    return std::nullopt;
}

guide::Who who_from(std::string_view word) {
    return word == "surgeon" ? guide::Who::Surgeon : word == "circulating" ? guide::Who::Circulating : guide::Who::Scrub;
}

Outcome<PlayLine> line_of(const json& object) {
    PlayValues values;
    if (auto wrong = take(object, common_fields(), values)) return *std::move(wrong);
    auto at = measure::instant_from_rfc3339(values.text("at"));
    if (!at) return Wrong{"at", shown(object["at"]), "a time such as \"2026-11-25T09:41:07.250Z\""};
    at->boot = 1;
    at->boottime_ms = at->utc_ms;
    const auto intent = std::ranges::find(play_intents(), std::string_view(values.text("do")), &PlayIntent::name);
    if (intent == play_intents().end()) return Wrong{"do", shown(object["do"]), "an intent of `graftside play --list`"};
    if (auto wrong = unknown_field(object, *intent)) return *std::move(wrong);
    if (auto wrong = take(object, intent->fields, values)) return *std::move(wrong);
    return PlayLine{
        .line = 0, .at = *at, .who = who_from(values.text("who")), .intent = intent->make(values), .expect_refused = values.has("expect")};
}

Problem problem(const Wrong& wrong, const std::string& name, int number) {
    return {.file = name, .line = number, .column = wrong.column, .key = wrong.key, .found = wrong.found, .allowed = wrong.allowed};
}

}  // namespace

measure::Result<PlayLine, Problem> read_play_line(std::string_view line, const std::string& name, int number) {
    const auto object = object_of(line);
    if (!object) return problem(object.error(), name, number);
    auto read = line_of(*object);
    if (!read) return problem(read.error(), name, number);
    read->line = number;
    return *std::move(read);
}

measure::Result<std::vector<PlayLine>, Problems> read_play(std::string_view text, const std::string& name) {
    std::vector<PlayLine> lines;
    Problems problems;
    for (int number = 1; !text.empty(); ++number) {
        const auto end = std::min(text.find('\n'), text.size());
        const std::string_view line = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        if (line.find_first_not_of(" \t\r") == std::string_view::npos) continue;
        auto read = read_play_line(line, name, number);
        if (!read) {
            problems.push_back(read.error());
        } else if (!lines.empty() && read->at.utc_ms < lines.back().at.utc_ms) {
            const std::string earliest = "no time before " + measure::rfc3339(lines.back().at);
            problems.push_back(problem({.key = "at", .found = measure::rfc3339(read->at), .allowed = earliest}, name, number));
        } else {
            lines.push_back(*std::move(read));
        }
    }
    if (!problems.empty()) return problems;
    return lines;
}

std::string play_list() {
    std::string out = "Fields of every line:\n";
    const auto row = [](const PlayField& field) {
        return fmt::format("    {:<20}{}{}\n", field.name, allowed(field), field.need == Need::Required ? "" : " (optional)");
    };
    for (const PlayField& field : common_fields()) out += row(field);
    for (const PlayIntent& intent : play_intents()) {
        out += fmt::format("{}\n", intent.name);
        for (const PlayField& field : intent.fields) {
            if (field.form != Form::None) out += row(field);
        }
    }
    return out;
}

}  // namespace intake
