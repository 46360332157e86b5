// What the program reads before it can do anything: words, unit settings, profiles, procedure; and a case with all of them. Words,
// procedure and shipped unit settings are those of the language.
// Where a file cannot be read or is not valid, what to tell and with which exit code.
#pragma once

#include "guide/brief.hpp"
#include "intake/case.hpp"
#include "intake/surgeon.hpp"
#include "intake/unit.hpp"
#include "ledger/failure.hpp"
#include "measure/problem.hpp"
#include "measure/result.hpp"
#include "screen/typography.hpp"
#include "screen/words.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace graftside {

/// The contract's exit codes.
enum class Exit { Fine = 0, No = 1, Wrong = 2, Machine = 3 };

/// Why the program stops: lines for stderr and the exit code.
struct Stop {
    Exit code = Exit::Wrong;
    std::vector<std::string> lines{};               // English
    std::optional<ledger::Failure::What> ledger{};  // where it was the ledger: a screen says it in its own words
};

template <class T>
using Try = measure::Result<T, Stop>;

/// The global options of the command line.
struct Options {
    std::string ledger{};   // empty: by the XDG rules
    std::string assets{};   // empty: the program's own share folder
    std::string unit{};     // empty: the unit's file, else the one shipped
    std::string surgeon{};  // empty: the one that the unit's file names, if any
    std::string language{};
    std::vector<screen::Reader> views{screen::Reader::Table};  // each once
    bool on_plan = false;                                      // the Table view begins on the plan
    std::vector<int> monitors{};                               // one a view; left out: the first ones
    std::string theme{};
    std::vector<std::pair<double, double>> screens_mm{};  // one a view
    std::string screens{};                                // empty: screens.toml of the configuration folder
    std::string set_up{};                                 // draped, undraped; empty: the unit's
    bool kiosk = false;                                   // no pointer on Table and Far view, no closing in a case
    std::vector<std::pair<int, int>> windows_px{};        // one a view; none: full screen
    std::optional<measure::Day> on{};
    bool quiet = false;
    std::string pictures{};    // a folder: one PNG a frame, for journeys
    std::string paper = "a4";  // a4, letter: the size of printed sheets
    std::string voice{};       // a WAV file in place of the loudspeaker, for journeys
};

struct Stock {
    std::string assets{};
    std::string language{};
    screen::Words words;
    screen::Words file_words;  // of what leaves as JSON or FHIR: the same in every language
    intake::UnitFile unit{};
    std::optional<intake::SurgeonFile> surgeon{};
};

Stop stop(const measure::Problems& problems);
Stop stop(Exit code, std::string line);

Try<Stock> load_stock(const Options& options);
/// The whole of a file; what cannot be read is wrong use.
Try<std::string> read_text(const std::string& path);
/// A case file with the readings that it names in a file beside it, taken in.
measure::Result<intake::CaseDocument, measure::Problems> whole_case(const std::string& text, const std::string& case_path);
/// A case file with the profiles and the procedure it asks for.
Try<guide::Brief> load_brief(const Stock& stock, const std::string& case_path);
/// The guide in the program's language.
Try<guide::Procedure> procedure_of(const Stock& stock);
Try<instrument::Trephine> trephine_of(const Stock& stock, const std::string& id);
Try<guide::Brief> brief_of(const Stock& stock, const intake::CaseDocument& document);

std::string ledger_path(const Options& options);
/// A file or folder of this name in the ledger's folder.
std::string beside_ledger(const Options& options, const std::string& name);
std::string program_name();

}  // namespace graftside
