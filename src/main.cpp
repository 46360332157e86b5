#include "app.hpp"
#include "commands.hpp"
#include "ledger/enum_words.hpp"

#include <fmt/format.h>
#include <spdlog/sinks/stdout_color_sinks.h>
#include <spdlog/spdlog.h>
#include <CLI/CLI.hpp>

#include <algorithm>
#include <cstdio>
#include <exception>

namespace {

using graftside::Exit;
using graftside::Form;

/// "WxH" as two numbers.
template <class Number>
std::optional<std::pair<Number, Number>> two_numbers(const std::string& text) {
    Number width{}, height{};
    char cross = 0;
    std::istringstream in(text);
    in >> width >> cross >> height;
    if (!in || cross != 'x' || !(width > 0) || !(height > 0) || in.peek() != std::istringstream::traits_type::eof()) return std::nullopt;
    return std::pair(width, height);
}

struct Words {
    std::string on{};
    std::vector<std::string> views{}, screens_mm{}, windows{};
    std::string file{}, reference{}, case_path{}, card{}, format{}, out{};
    std::vector<std::string> files{};
    bool json = false, list = false;
    std::string from{}, to{}, eye{}, reason{}, trephine{};
    bool invented = false;
};

CLI::Validator size_in(const std::string& unit) {
    return CLI::Validator([](std::string& text) { return two_numbers<double>(text) ? "" : "WIDTHxHEIGHT, such as 344x194"; },
                          "WxH in " + unit);
}

/// A day as YYYY-MM-DD.
std::string wrong_day(const std::string& text) { return measure::day_from_iso(text) ? "" : "a day as YYYY-MM-DD"; }

/// The views as they were asked for, each once; the plan is a page of the Table view.
std::vector<screen::Reader> readers(const std::vector<std::string>& asked) {
    std::vector<screen::Reader> made{};
    for (const std::string& word : asked) {
        const screen::Reader reader = word == "desk" ? screen::Reader::Desk : (word == "far" ? screen::Reader::Far : screen::Reader::Table);
        if (std::find(made.begin(), made.end(), reader) == made.end()) made.push_back(reader);
    }
    return made;
}

void add_options(CLI::App& app, graftside::Options& options, Words& words) {
    app.add_option("--ledger", options.ledger, "the ledger's file instead of the usual one");
    app.add_option("--assets", options.assets, "the folder of words, profiles and procedures");
    app.add_option("--unit", options.unit, "the unit's settings");
    app.add_option("--surgeon", options.surgeon, "a surgeon's habits, from which a new case begins");
    app.add_option("--language", options.language, "two letters, such as en");
    app.add_option("--view", words.views, "which views, one or more of table, desk, far; plan: the table, on the plan")
        ->delimiter(',')
        ->check(CLI::IsMember({"table", "plan", "desk", "far"}));
    app.add_option("--monitor", options.monitors, "which monitor, from 0; one a view")->delimiter(',')->check(CLI::NonNegativeNumber);
    app.add_option("--screen-mm", words.screens_mm, "lit size of the screen; one a view")->delimiter(',')->check(size_in("mm"));
    app.add_option("--screens", options.screens, "the file of screens measured with a bank card instead of the usual one");
    app.add_option("--set-up", options.set_up, "draped: the scrub nurse taps; undraped: one screen, touched by the circulating nurse")
        ->check(CLI::IsMember({"draped", "undraped"}));
    app.add_flag("--kiosk", options.kiosk, "no pointer on the table and far screens; a case that stands open is not closed from outside");
    app.add_option("--window", words.windows, "a window instead of the full screen; one a view")->delimiter(',')->check(size_in("pixels"));
    app.add_option("--theme", options.theme, "colours")->check(CLI::IsMember({"dark", "light"}));
    app.add_option("--on", words.on, "a day instead of today, YYYY-MM-DD")->check(wrong_day);
    app.add_option("--pictures", options.pictures, "a folder that gets a PNG of every frame and where its targets are")
        ->check(CLI::ExistingDirectory);
    app.add_option("--voice", options.voice, "a WAV file that gets what is said, instead of the loudspeaker");
    app.add_option("--paper", options.paper, "the size of printed sheets")->check(CLI::IsMember({"a4", "letter"}));
    app.add_flag("--quiet", options.quiet, "say only what went wrong");
    app.set_version_flag("--version", graftside::program_name());
    app.fallthrough();
    app.require_subcommand(0, 1);
}

struct Commands {
    CLI::App* open = nullptr;
    CLI::App* plan = nullptr;
    CLI::App* check = nullptr;
    CLI::App* state = nullptr;
    CLI::App* play = nullptr;
    CLI::App* handover = nullptr;
    CLI::App* past = nullptr;
    CLI::App* verify = nullptr;
    CLI::App* recover = nullptr;
};

CLI::App* add_past(CLI::App& app, Words& words) {
    CLI::App* past = app.add_subcommand("past", "figures over the cases that are over");
    past->add_flag("--json", words.json, "as JSON, with every case");
    past->add_option("--from", words.from, "the first day of operation, YYYY-MM-DD")->check(wrong_day);
    past->add_option("--to", words.to, "the last day of operation, YYYY-MM-DD")->check(wrong_day);
    past->add_option("--eye", words.eye, "one side only")->check(CLI::IsMember({"right", "left"}));
    past->add_option("--reason", words.reason, "one reason of the graft only")
        ->check(CLI::IsMember({"scar", "keratoconus", "oedema", "dystrophy", "regraft", "infection", "trauma", "other"}));
    past->add_option("--trephine", words.trephine, "cuts with one trephine only, by the id of its profile");
    past->add_flag("--invented", words.invented, "the rehearsals instead");
    return past;
}

past::Filter past_filter(const Words& words) {
    return {.from = measure::day_from_iso(words.from),
            .to = measure::day_from_iso(words.to),
            .side = ledger::from_word<eye::Side>(words.eye),
            .reason = ledger::from_word<plan::Reason>(words.reason),
            .trephine = words.trephine,
            .invented = words.invented};
}

Commands add_commands(CLI::App& app, Words& words) {
    Commands commands{};
    commands.open = app.add_subcommand("open", "start a case, or take it up where its ledger stands");
    commands.open->add_option("FILE", words.file, "a case file")->required();
    commands.plan = app.add_subcommand("plan", "the plan of a case and its working");
    commands.plan->add_option("FILE", words.file, "a case file")->required();
    commands.plan->add_flag("--json", words.json, "as JSON");
    commands.plan->add_option("--card", words.card, "writes the one-page fallback card to this PDF file");
    commands.check = app.add_subcommand("check", "whether files are fine: case, procedure, instrument, unit, words");
    commands.check->add_option("FILE", words.files, "the files")->required();
    commands.check->add_flag("--json", words.json, "as JSON");
    commands.state = app.add_subcommand("state", "where a case stands, as at its last event");
    commands.state->add_option("REFERENCE", words.reference, "the case")->required();
    commands.state->add_flag("--json", words.json, "as JSON");
    commands.play = app.add_subcommand("play", "carry out a script of intents, without a window");
    commands.play->add_option("SCRIPT", words.file, "one JSON object a line");
    commands.play->add_option("--case", words.case_path, "the case file");
    commands.play->add_flag("--list", words.list, "the intents and their fields");
    commands.handover = app.add_subcommand("handover", "the record of a case as a file: one-page sheet, FHIR R4, CSV or JSON");
    commands.handover->add_option("REFERENCE", words.reference, "the case")->required();
    commands.handover->add_option("--as", words.format, "which format")->required()->check(CLI::IsMember({"pdf", "fhir", "csv", "json"}));
    commands.handover->add_option("-o,--out", words.out, "the file to write")->required();
    commands.past = add_past(app, words);
    commands.verify = app.add_subcommand("verify", "whether the ledger and the seals are whole");
    commands.verify->add_option("REFERENCE", words.reference, "one case; else all");
    commands.recover = app.add_subcommand("recover", "take over the events of a case that only the text mirror has");
    commands.recover->add_option("REFERENCE", words.reference, "the case")->required();
    return commands;
}

Exit run(const Commands& commands, const graftside::Options& options, const Words& words) {
    const Form form = words.json ? Form::Json : Form::Text;
    if (*commands.plan) {
        if (words.card.empty()) return graftside::plan_command(options, words.file, form);
        return graftside::card_command(options, words.file, form, words.card);
    }
    if (*commands.check) return graftside::check_command(words.files, form);
    if (*commands.state) return graftside::state_command(options, words.reference, form);
    if (*commands.handover) return graftside::handover_command(options, {words.reference, words.format, words.out});
    if (*commands.past) return graftside::past_command(options, past_filter(words), form);
    if (*commands.verify) return graftside::verify_command(options, words.reference);
    if (*commands.recover) return graftside::recover_command(options, words.reference);
    if (*commands.play) {
        if (words.list) return graftside::play_list_command();
        if (!words.file.empty() && !words.case_path.empty()) return graftside::play_command(options, words.file, words.case_path);
        return graftside::tell(graftside::stop(Exit::Wrong, "play: give a script and --case FILE, or --list"));
    }
    return graftside::run_window(options, *commands.open ? words.file : "");
}

int parse_and_run(int argc, char** argv) {
    CLI::App app("A theatre-side step guide with a live turn counter for full-thickness corneal grafting.", "graftside");
    graftside::Options options{};
    Words words{};
    add_options(app, options, words);
    const Commands commands = add_commands(app, words);
    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        return app.exit(error) == 0 ? 0 : static_cast<int>(Exit::Wrong);
    }
    for (const std::string& size : words.screens_mm) options.screens_mm.push_back(*two_numbers<double>(size));
    for (const std::string& size : words.windows) options.windows_px.push_back(*two_numbers<int>(size));
    if (!words.views.empty()) options.views = readers(words.views);
    options.on_plan = std::find(words.views.begin(), words.views.end(), "plan") != words.views.end();
    options.on = measure::day_from_iso(words.on);
    return static_cast<int>(run(commands, options, words));
}

}  // namespace

int main(int argc, char** argv) {
    spdlog::set_default_logger(spdlog::stderr_color_st("graftside"));
    try {
        return parse_and_run(argc, argv);
    } catch (const std::exception& error) {
        spdlog::error("the program cannot go on: {}", error.what());
    }
    return static_cast<int>(Exit::Machine);
}
