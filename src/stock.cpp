#include "stock.hpp"

#include "device/environment.hpp"
#include "device/files.hpp"
#include "intake/document.hpp"
#include "intake/instrument.hpp"
#include "intake/kind.hpp"
#include "intake/procedure.hpp"
#include "intake/readings.hpp"
#include "intake/words.hpp"

#include <algorithm>

namespace graftside {
namespace {

constexpr auto procedure_id = "suction-trephine-graft";
constexpr auto files_language = "en";

template <class T>
Try<T> mended(measure::Result<T, measure::Problems> read) {
    if (!read) return stop(read.error());
    return *std::move(read);
}

template <class Reader>
auto read_asset(const std::string& path, Reader read) -> decltype(mended(read(std::string_view{}, path))) {
    auto text = read_text(path);
    if (!text) return text.error();
    return mended(read(*text, path));
}

/// A file in a language where there is one, "NAME.de.toml", else the plain one.
std::string of_language(const std::string& name, const std::string& language) {
    const std::string own = name + "." + language + ".toml";
    return !language.empty() && device::exists(own) ? own : name + ".toml";
}

std::string unit_path(const Options& options, const std::string& assets) {
    if (!options.unit.empty()) return options.unit;
    const auto config = device::config_folder();
    const std::string own = config ? *config + "/unit.toml" : "";
    return !own.empty() && device::exists(own) ? own : of_language(assets + "/unit/unit", options.language);
}

std::string words_path(const std::string& assets, const std::string& language) { return assets + "/words/" + language + ".toml"; }

/// "de, en": the languages that there are words for.
std::string languages(const std::string& assets) {
    std::string all{};
    for (const std::string& path : device::files_in(assets + "/words", ".toml")) {
        const std::string name = path.substr(path.find_last_of('/') + 1);
        all += (all.empty() ? "" : ", ") + name.substr(0, name.size() - std::string_view(".toml").size());
    }
    return all;
}

Try<screen::Words> words_in(const std::string& assets, const std::string& language) {
    const std::string path = words_path(assets, language), others = languages(assets);
    if (!others.empty() && !device::exists(path))
        return stop(Exit::Wrong, path + ": there are no words in the language \"" + language + "\"; there are " + others + ".");
    auto read = read_asset(path, intake::read_words);
    if (!read) return read.error();
    return screen::Words(read->texts);
}

/// An instrument is named by the id of its profile, which is the name of its file.
std::string profile_path(const Stock& stock, const std::string& id) { return stock.assets + "/instruments/" + id + ".toml"; }

/// A surgeon's habits: as asked for, else as the unit's file names them, beside itself.
Try<std::optional<intake::SurgeonFile>> surgeon_of(const Options& options, const intake::UnitFile& unit, const std::string& unit_path) {
    if (options.surgeon.empty() && unit.surgeon_file.empty()) return std::optional<intake::SurgeonFile>();
    const auto slash = unit_path.find_last_of('/');
    const std::string beside = slash == std::string::npos ? unit.surgeon_file : unit_path.substr(0, slash + 1) + unit.surgeon_file;
    auto read = read_asset(options.surgeon.empty() ? beside : options.surgeon, intake::read_surgeon);
    if (!read) return read.error();
    return std::optional(*read);
}

std::optional<intake::Kind> kind_at(const std::string& path) {
    const auto text = read_text(path);
    const auto kind = text ? intake::kind_of(*text, path) : measure::Result<intake::Kind, measure::Problems>(measure::Problems{});
    return kind ? std::optional(*kind) : std::nullopt;
}

/// "suction-trephine, …": the ids of the profiles of one kind.
std::string ids(const Stock& stock, intake::Kind kind) {
    std::string all{};
    for (const std::string& path : device::files_in(stock.assets + "/instruments", ".toml")) {
        const std::string name = path.substr(path.find_last_of('/') + 1);
        if (kind_at(path) == kind) all += (all.empty() ? "" : ", ") + name.substr(0, name.size() - std::string_view(".toml").size());
    }
    return all.empty() ? "none, for there is no such profile" : all;
}

/// Where a value stands that the case's reader has taken already.
intake::Place place_of(const intake::Node& root, std::string_view table, std::string_view key) {
    const intake::Node* node = &root;
    for (const std::string_view part : {table, key}) {
        const auto* entries = std::get_if<intake::Table>(&node->value);
        if (entries == nullptr) return node->at;
        const auto found = std::ranges::find(*entries, part, &intake::Entry::key);
        if (found == entries->end()) return node->at;
        node = &found->node;
    }
    return node->at;
}

/// Profiles that the case asks for and that are not there, or are of another kind. What is wrong inside a profile is told
/// when it is read.
measure::Problems missing_profiles(const Stock& stock, const std::string& text, const std::string& path,
                                   const intake::CaseDocument& document) {
    struct Asked {
        std::string table{}, key{}, id{};
        intake::Kind kind{};
    };
    const auto root = intake::parse(text, path);
    if (!root) return root.error();
    measure::Problems problems{};
    for (const Asked& asked : {Asked{"host", "trephine", document.trephine, intake::Kind::Trephine},
                               Asked{"donor", "punch", document.punch, intake::Kind::Punch}}) {
        const std::string profile = profile_path(stock, asked.id);
        const auto kind = kind_at(profile);
        if (kind == asked.kind || (!kind && device::exists(profile))) continue;
        const intake::Place at = place_of(*root, asked.table, asked.key);
        problems.push_back({path, at.line, at.column, asked.table + "." + asked.key, "\"" + asked.id + "\"", ids(stock, asked.kind)});
    }
    std::ranges::sort(problems, {}, [](const measure::Problem& one) { return std::pair(one.line, one.column); });
    return problems;
}

}  // namespace

Stop stop(const measure::Problems& problems) {
    Stop made{.code = Exit::Wrong};
    for (const measure::Problem& problem : problems) made.lines.push_back(measure::text(problem));
    made.lines.push_back("Correct what stands after each place and try again; `graftside check FILE` looks at a file alone.");
    return made;
}

Stop stop(Exit code, std::string line) { return {.code = code, .lines = {std::move(line)}}; }

Try<std::string> read_text(const std::string& path) {
    auto read = device::read_file(path);
    if (!read) return stop(Exit::Wrong, device::text(read.error()));
    return *std::move(read);
}

Try<Stock> load_stock(const Options& options) {
    const std::string assets = options.assets.empty() ? device::share_folder() : options.assets;
    const std::string from = unit_path(options, assets);
    auto unit = read_asset(from, intake::read_unit);
    if (!unit) return unit.error();
    auto surgeon = surgeon_of(options, *unit, from);
    if (!surgeon) return surgeon.error();
    const std::string usual = *surgeon ? (*surgeon)->language.value_or(unit->language) : unit->language;
    const std::string language = options.language.empty() ? usual : options.language;
    if (*surgeon) unit->sound = intake::heard_by(**surgeon, unit->sound);
    auto words = words_in(assets, language);
    if (!words) return words.error();
    auto file_words =
        language != files_language && device::exists(words_path(assets, files_language)) ? words_in(assets, files_language) : words;
    if (!file_words) return file_words.error();
    return Stock{.assets = assets, .language = language, .words = *words, .file_words = *file_words, .unit = *unit, .surgeon = *surgeon};
}

Try<guide::Procedure> procedure_of(const Stock& stock) {
    return read_asset(of_language(stock.assets + "/procedures/" + procedure_id, stock.language), intake::read_procedure);
}

Try<instrument::Trephine> trephine_of(const Stock& stock, const std::string& id) {
    return read_asset(profile_path(stock, id), intake::read_trephine);
}

Try<guide::Brief> brief_of(const Stock& stock, const intake::CaseDocument& document) {
    auto trephine = trephine_of(stock, document.trephine);
    if (!trephine) return trephine.error();
    auto punch = read_asset(profile_path(stock, document.punch), intake::read_punch);
    if (!punch) return punch.error();
    auto procedure = procedure_of(stock);
    if (!procedure) return procedure.error();
    plan::Inputs inputs{.file = document.file, .trephine = *trephine, .punch = *punch, .limits = stock.unit.unit.limits};
    return guide::Brief{.inputs = std::move(inputs), .procedure = *procedure, .unit = stock.unit.unit};
}

measure::Result<intake::CaseDocument, measure::Problems> whole_case(const std::string& text, const std::string& case_path) {
    auto document = intake::read_case(text, case_path);
    if (!document || document->readings_csv.empty()) return document;
    const std::string csv_path = case_path.substr(0, case_path.find_last_of('/') + 1) + document->readings_csv;
    const auto csv = device::read_file(csv_path);
    if (!csv) {
        const intake::Place at = place_of(*intake::parse(text, case_path), "thickness", "readings_csv");
        return measure::Problems{{case_path, at.line, at.column, "thickness.readings_csv", "\"" + document->readings_csv + "\"",
                                  "a file that can be read: " + device::text(csv.error())}};
    }
    auto readings = intake::read_readings(*csv, csv_path);
    if (!readings) return readings.error();
    document->file.thickness.readings = *std::move(readings);
    document->readings_csv.clear();
    return document;
}

Try<guide::Brief> load_brief(const Stock& stock, const std::string& case_path) {
    const auto text = read_text(case_path);
    if (!text) return text.error();
    const auto document = whole_case(*text, case_path);
    if (!document) return stop(document.error());
    const auto missing = missing_profiles(stock, *text, case_path, *document);
    if (!missing.empty()) return stop(missing);
    return brief_of(stock, *document);
}

std::string ledger_path(const Options& options) {
    if (!options.ledger.empty()) return options.ledger;
    return device::data_folder().value_or(".") + "/cases.ledger";
}

std::string beside_ledger(const Options& options, const std::string& name) {
    const std::string path = ledger_path(options);
    const auto slash = path.find_last_of('/');
    return (slash == std::string::npos ? std::string(".") : path.substr(0, slash)) + "/" + name;
}

std::string program_name() { return "graftside " GRAFTSIDE_VERSION; }

}  // namespace graftside
