#include "stock.hpp"

#include "device/environment.hpp"
#include "device/files.hpp"
#include "intake/instrument.hpp"
#include "intake/procedure.hpp"
#include "intake/words.hpp"

namespace graftside {
namespace {

constexpr auto procedure_id = "suction-trephine-graft";

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

/// An instrument is named by the id of its profile, which is the name of its file.
std::string profile_path(const Stock& stock, const std::string& id) { return stock.assets + "/instruments/" + id + ".toml"; }

}  // namespace

Stop stop(const measure::Problems& problems) {
    Stop made{.code = Exit::Wrong};
    for (const measure::Problem& problem : problems) made.lines.push_back(measure::text(problem));
    made.lines.push_back("Mend what stands after each place and try again; `graftside check FILE` looks at a file alone.");
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
    const auto config = device::config_folder();
    const std::string own = config ? *config + "/unit.toml" : "";
    const std::string fallback = !own.empty() && device::exists(own) ? own : assets + "/unit/unit.toml";
    auto unit = read_asset(options.unit.empty() ? fallback : options.unit, intake::read_unit);
    if (!unit) return unit.error();
    const std::string language = options.language.empty() ? unit->language : options.language;
    auto words = read_asset(assets + "/words/" + language + ".toml", intake::read_words);
    if (!words) return words.error();
    return Stock{.assets = assets, .words = screen::Words(words->texts), .unit = *unit};
}

Try<guide::Brief> brief_of(const Stock& stock, const intake::CaseDocument& document) {
    auto trephine = read_asset(profile_path(stock, document.trephine), intake::read_trephine);
    if (!trephine) return trephine.error();
    auto punch = read_asset(profile_path(stock, document.punch), intake::read_punch);
    if (!punch) return punch.error();
    auto procedure = read_asset(stock.assets + "/procedures/" + procedure_id + ".toml", intake::read_procedure);
    if (!procedure) return procedure.error();
    plan::Inputs inputs{.file = document.file, .trephine = *trephine, .punch = *punch, .limits = stock.unit.unit.limits};
    return guide::Brief{.inputs = std::move(inputs), .procedure = *procedure, .unit = stock.unit.unit};
}

Try<guide::Brief> load_brief(const Stock& stock, const std::string& case_path) {
    auto document = read_asset(case_path, intake::read_case);
    if (!document) return document.error();
    return brief_of(stock, *document);
}

std::string ledger_path(const Options& options) {
    if (!options.ledger.empty()) return options.ledger;
    return device::data_folder().value_or(".") + "/cases.ledger";
}

std::string program_name() { return "graftside " GRAFTSIDE_VERSION; }

}  // namespace graftside
