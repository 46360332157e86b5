#include "intake/kind.hpp"

#include "intake/case.hpp"
#include "intake/document.hpp"
#include "intake/instrument.hpp"
#include "intake/procedure.hpp"
#include "intake/readings.hpp"
#include "intake/screens.hpp"
#include "intake/surgeon.hpp"
#include "intake/unit.hpp"
#include "intake/words.hpp"
#include "measure/expect.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace intake {
namespace {

bool has(const Table& root, std::string_view key) { return std::ranges::find(root, key, &Entry::key) != root.end(); }

/// The word under `kind`, which only instrument profiles have.
std::optional<Kind> instrument_kind(const Table& root) {
    const auto entry = std::ranges::find(root, std::string_view("kind"), &Entry::key);
    if (entry == root.end()) return std::nullopt;
    const auto* word = std::get_if<std::string>(&entry->node.value);
    if (word != nullptr && *word == "punch") return Kind::Punch;
    if (word != nullptr && *word == "trephine") return Kind::Trephine;
    return has(root, "dots") || has(root, "vacuum") ? Kind::Punch : Kind::Trephine;  // its reader says what is wrong with `kind`
}

std::optional<Kind> guessed(const Table& root) {
    if (has(root, "surgeon")) return Kind::Surgeon;
    if (has(root, "language") && has(root, "name")) return Kind::Words;  // its tables may be called as it likes
    if (const auto kind = instrument_kind(root)) return kind;
    constexpr std::array<std::string_view, 3> of_a_case{"case", "thickness", "donor"};
    if (std::ranges::any_of(of_a_case, [&](std::string_view key) { return has(root, key); })) return Kind::Case;
    if (has(root, "phase")) return Kind::Procedure;
    if (has(root, "screen")) return Kind::Screens;
    if (has(root, "advance_um")) return Kind::Trephine;
    if (has(root, "sizes_mm")) return Kind::Punch;
    constexpr std::array<std::string_view, 6> of_a_unit{"count", "holder", "hand", "theme", "set_up", "screens_mm"};
    if (std::ranges::any_of(of_a_unit, [&](std::string_view key) { return has(root, key); })) return Kind::Unit;
    if (has(root, "language")) return Kind::Words;
    return std::nullopt;
}

template <class T>
Problems problems(const measure::Result<T, Problems>& read) {
    return read ? Problems{} : read.error();
}

}  // namespace

measure::Result<Kind, Problems> kind_of(std::string_view text, const std::string& name) {
    if (names_readings(name)) return Kind::Readings;
    const auto root = parse(text, name);
    if (!root) return root.error();
    if (const auto kind = guessed(*std::get_if<Table>(&root->value))) return *kind;
    return Problems{{.file = name,
                     .line = 1,
                     .column = 1,
                     .key = "file",
                     .found = "no key that tells what it is",
                     .allowed = "a case, procedure, trephine, punch, unit or words file"}};
}

std::string_view text(Kind kind) {
    switch (kind) {
        case Kind::Case:
            return "case";
        case Kind::Procedure:
            return "procedure";
        case Kind::Trephine:
            return "trephine";
        case Kind::Punch:
            return "punch";
        case Kind::Unit:
            return "unit";
        case Kind::Words:
            return "words";
        case Kind::Readings:
            return "readings";
        case Kind::Screens:
            return "screens";
        case Kind::Surgeon:
            return "surgeon";
    }
    measure::expect(false);
    return {};
}

Problems check(std::string_view text, const std::string& name) {
    const auto kind = kind_of(text, name);
    if (!kind) return kind.error();
    switch (*kind) {
        case Kind::Case:
            return problems(read_case(text, name));
        case Kind::Procedure:
            return problems(read_procedure(text, name));
        case Kind::Trephine:
            return problems(read_trephine(text, name));
        case Kind::Punch:
            return problems(read_punch(text, name));
        case Kind::Unit:
            return problems(read_unit(text, name));
        case Kind::Words:
            return problems(read_words(text, name));
        case Kind::Readings:
            return problems(read_readings(text, name));
        case Kind::Screens:
            return problems(read_screens(text, name));
        case Kind::Surgeon:
            return problems(read_surgeon(text, name));
    }
    measure::expect(false);
    return {};
}

}  // namespace intake
