// The one table of what a play script may say: for each intent its name, its fields, and how it is made from them.
#pragma once

#include "guide/intent.hpp"

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>

namespace intake {

/// Values of the fields that stood in a line, each of the form its field asks for.
class PlayValues {
public:
    using Value = std::variant<std::string, std::int64_t, bool>;
    void set(std::string_view field, Value value) { values_.insert_or_assign(std::string(field), std::move(value)); }
    bool has(std::string_view field) const { return values_.contains(field); }
    std::string text(std::string_view field) const;  // "" when absent
    std::optional<std::int64_t> whole(std::string_view field) const;
    std::optional<bool> flag(std::string_view field) const;
    int count(std::string_view field) const { return static_cast<int>(whole(field).value_or(0)); }

private:
    std::map<std::string, Value, std::less<>> values_{};
};

enum class Form {
    None,       // no further field
    Text,       //
    Whole,      // a whole number from `low` to `high`
    Flag,       // true or false
    Word,       // one of `words`
    ClockHour,  // "7:30"; stands instead of the field before it
};
enum class Need { Required, Optional };

struct PlayField {
    std::string_view name{};
    Form form = Form::None;
    Need need = Need::Optional;
    std::int64_t low = 0, high = 0;
    std::string_view words{};  // "right|left"
};

struct PlayIntent {
    std::string_view name{};  // the `do`
    std::array<PlayField, 4> fields{};
    guide::Intent (*make)(const PlayValues& values) = nullptr;
};

std::span<const PlayIntent> play_intents();
/// The fields that every line may bear: at, who, do, from, expect.
std::span<const PlayField> common_fields();

/// What a field may hold, in words.
std::string allowed(const PlayField& field);
bool is_one_of(std::string_view word, std::string_view words);

}  // namespace intake
