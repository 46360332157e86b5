#include "handover.hpp"

#include "commands.hpp"
#include "device/files.hpp"
#include "ledger/codec.hpp"
#include "open_case.hpp"
#include "paper/card.hpp"
#include "paper/csv.hpp"
#include "paper/fhir.hpp"
#include "paper/press.hpp"
#include "paper/sheet.hpp"
#include "plan_json.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <filesystem>
#include <utility>

namespace graftside {
namespace {

using nlohmann::ordered_json;

paper::Words words_of(const screen::Words& words) {
    return paper::Words([words](std::string_view id, const std::vector<std::string>& values) { return words(id, values); },
                        [words](std::string written) { return words.figure(std::move(written)); });
}

paper::Size size_of(const std::string& paper) { return paper == "letter" ? paper::Size::Letter : paper::Size::A4; }

Try<paper::Press> load_press(const Stock& stock) {
    auto press = paper::Press::load(stock.assets + "/fonts");
    if (!press) return stop(Exit::Machine, press.error() + ": this font cannot be read; without it nothing can be printed.");
    return *std::move(press);
}

/// Whether something stands there that must not be replaced: one of `kept`, or anything that is not a plain file.
bool must_stay(const std::string& path, const std::vector<std::string>& kept) {
    namespace fs = std::filesystem;
    std::error_code none;
    const fs::file_status there = fs::symlink_status(path, none);
    if (!fs::exists(there)) return false;
    return !fs::is_regular_file(there) ||
           std::any_of(kept.begin(), kept.end(), [&](const std::string& one) { return fs::equivalent(path, one, none); });
}

Exit write(const std::string& path, const std::string& bytes, const std::vector<std::string>& kept) {
    if (must_stay(path, kept)) return tell(stop(Exit::Wrong, path + ": not replaced. Name a file of its own."));
    const auto written = device::write_file(path, bytes);
    return written ? Exit::Fine : tell(stop(Exit::Machine, device::text(written.error())));
}

paper::Seal seal_of(const ledger::Verdict& verdict) {
    using Sealed = ledger::Verdict::Sealed;
    paper::Seal seal{.hash = verdict.hash, .fingerprint = verdict.fingerprint, .trouble = verdict.why};
    if (verdict.sealed == Sealed::Yes) seal.state = paper::Seal::State::Whole;
    if (verdict.sealed == Sealed::SignatureBad || verdict.sealed == Sealed::EventsAfter) seal.state = paper::Seal::State::Wrong;
    return seal;
}

/// The whole record: what `state` and `plan` say, and every event as it stands on the ledger.
std::string record_json(const paper::Record& record, const Stock& stock) {
    const guide::CaseState& state = record.state;
    ordered_json events = ordered_json::array();
    for (const paper::Entry& entry : record.entries) {
        events.push_back({{"event", entry.seq},
                          {"at", measure::rfc3339(entry.at)},
                          {"who", entry.who},
                          {"kind", entry.kind},
                          {"values", ordered_json::parse(entry.values)},
                          {"written_late", paper::written_late(record, entry.seq)}});
    }
    const bool sealed = record.seal.state == paper::Seal::State::Whole;
    const std::string seal = sealed ? record.seal.fingerprint : "";
    const ordered_json all = {
        {"case", paper::reference(record)},
        {"program", record.program},
        {"invented", state.inputs.file.invented},
        {"hash", record.seal.hash},
        {"whole", record.seal.trouble.empty() && record.seal.state != paper::Seal::State::Wrong},
        {"sealed_by", sealed ? ordered_json(seal) : ordered_json(nullptr)},
        {"state", ordered_json::parse(state_json(state, seal, 0, paper::last_moment(record)))},
        {"plan", state.plan ? ordered_json::parse(plan_json(state.inputs, *state.plan, stock.file_words)) : ordered_json(nullptr)},
        {"otherwise", paper::otherwise(record, words_of(stock.file_words))},
        {"events", events}};
    return all.dump(2) + "\n";
}

Try<std::string> sheet_pdf(const paper::Record& record, const Stock& stock, paper::Size size) {
    const auto press = load_press(stock);
    if (!press) return press.error();
    const paper::Sheet sheet = paper::sheet(record, words_of(stock.words));
    const paper::Caps caps = paper::sheet_caps();
    return press->pdf({.size = size,
                       .caps = caps,
                       .shapes = paper::draw(sheet, size, press->lettering(caps)),
                       .title = sheet.title + ", " + sheet.reference,
                       .program = record.program,
                       .at = paper::last_moment(record)});
}

Try<std::string> card_pdf(const guide::Brief& brief, const plan::Plan& plan, const Stock& stock, paper::Size size) {
    const auto press = load_press(stock);
    if (!press) return press.error();
    const paper::Card card = paper::card(brief, plan, words_of(stock.words));
    const paper::Caps caps = paper::card_caps();
    return press->pdf({.size = size,
                       .caps = caps,
                       .shapes = paper::draw(card, size, press->lettering(caps)),
                       .title = card.title + ", " + card.reference,
                       .program = program_name(),
                       .at = *measure::instant_from_rfc3339(measure::iso(brief.inputs.file.date) + "T00:00:00Z")});
}

}  // namespace

Try<paper::Record> record_of(const ledger::Ledger& ledger, const std::string& reference) {
    auto events = ledger.load(reference);
    if (!events) return stop(events.error());
    if (events->empty()) return stop(Exit::Wrong, reference + ": no such case in this ledger. `graftside verify` lists the cases.");
    const auto verdict = ledger.verify(reference);
    if (!verdict) return stop(verdict.error());
    paper::Record record{.events = *std::move(events), .seal = seal_of(*verdict), .program = program_name()};
    for (const guide::Event& event : record.events) {
        const ledger::Encoded fact = ledger::encode(event.fact);
        record.entries.push_back(
            {.seq = event.seq, .at = event.at, .who = std::string(ledger::who_text(event.who)), .kind = fact.tag, .values = fact.json});
    }
    record.state = guide::fold(record.events);
    return record;
}

Try<std::string> handover_bytes(const paper::Record& record, const Stock& stock, const HandoverForm& form) {
    if (form.format == "csv") return paper::csv(record);
    if (form.format == "json") return record_json(record, stock);
    if (form.format == "fhir") return paper::fhir(record, words_of(stock.file_words));
    return sheet_pdf(record, stock, size_of(form.paper));
}

std::string handover_ending(const std::string& format) { return format == "fhir" ? ".fhir.json" : "." + format; }

Exit card_command(const Options& options, const std::string& case_path, Form form, const std::string& card_path) {
    const Exit printed = plan_command(options, case_path, form);
    if (printed == Exit::No) return tell(stop(Exit::No, card_path + ": not written, the plan cannot be used."));
    if (printed != Exit::Fine) return printed;
    const auto stock = load_stock(options);
    if (!stock) return tell(stock.error());
    const auto brief = load_brief(*stock, case_path);
    if (!brief) return tell(brief.error());
    const auto pdf = card_pdf(*brief, plan::make(brief->inputs), *stock, size_of(options.paper));
    return pdf ? write(card_path, *pdf, {case_path}) : tell(pdf.error());
}

Exit handover_command(const Options& options, const Handover& asked) {
    const auto stock = load_stock(options);
    if (!stock) return tell(stock.error());
    const std::string path = ledger_path(options);
    const auto ledger = ledger::Ledger::open(path, {.station_key = "", .vfs = "", .purpose = ledger::Purpose::Look});
    if (!ledger) return tell(stop(ledger.error()));
    const auto record = record_of(*ledger, asked.reference);
    if (!record) return tell(record.error());
    const auto bytes = handover_bytes(*record, *stock, {.format = asked.format, .paper = options.paper});
    return bytes ? write(asked.path, *bytes, {path, path + ".txt", path + ".key", path + ".past"}) : tell(bytes.error());
}

}  // namespace graftside
