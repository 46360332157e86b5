#include "paper/printed.hpp"

#include "commands.hpp"
#include "guide/decide.hpp"
#include "intake/play.hpp"
#include "ledger/codec.hpp"
#include "picture/bounds.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <memory>
#include <sstream>

namespace printed {
namespace {

const graftside::Stock& stock() {
    static const graftside::Stock loaded = [] {
        auto made = graftside::load_stock({.assets = SOURCE_DIR "/assets", .unit = SOURCE_DIR "/assets/unit/unit.toml"});
        REQUIRE(made);
        return *made;
    }();
    return loaded;
}

std::string read(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    REQUIRE(in);
    return {std::istreambuf_iterator<char>(in), {}};
}

/// Appends what was decided, folds it, and keeps it in the words of the ledger.
void write(paper::Record& record, const guide::Facts& facts, guide::Who who, const measure::Instant& at) {
    for (const guide::Fact& fact : facts) {
        const guide::Event event{.seq = record.events.size() + 1, .at = at, .who = who, .fact = fact};
        const ledger::Encoded encoded = ledger::encode(fact);
        record.events.push_back(event);
        record.entries.push_back(
            {.seq = event.seq, .at = at, .who = std::string(ledger::who_text(who)), .kind = encoded.tag, .values = encoded.json});
        record.state = guide::apply(std::move(record.state), event);
    }
}

measure::Instant start() {
    auto at = *measure::instant_from_rfc3339("2026-11-25T08:00:00.000Z");
    at.boot = 1;
    return at;
}

paper::Record begun(const guide::Brief& brief) {
    paper::Record record{.program = "graftside 0.0.0"};
    write(record, guide::opening(brief, record.program, guide::Source::Table), guide::Who::Program, start());
    record.seal = {.hash = std::string(60, 'a') + "4711"};
    return record;
}

void carry_out(paper::Record& record, const intake::PlayLine& line) {
    guide::Intent intent = line.intent;
    if (auto* accept = std::get_if<guide::AcceptPlan>(&intent)) {
        accept->inputs = record.state.inputs;
        accept->plan = plan::make(accept->inputs);
    }
    const auto decided = guide::decide(record.state, line.who, intent, line.at);
    REQUIRE(decided);
    write(record, *decided, line.who, line.at);
}

std::string told_by(const std::string& command) {
    const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), pclose);
    REQUIRE(pipe);
    std::string text{};
    std::array<char, 4096> some{};
    while (const std::size_t got = fread(some.data(), 1, some.size(), pipe.get())) text.append(some.data(), got);
    return text;
}

/// The answer of a tool on a PDF.
std::string asked(const std::string& tool, const std::string& pdf, const std::string& after = "") {
    const std::string path = OUT_DIR "/asked.pdf";
    std::ofstream(path, std::ios::binary) << pdf;
    return told_by(tool + " " + path + " " + after + " 2>&1");
}

std::string long_note(int n) {
    std::string note = "note " + std::to_string(n) + ":";
    for (int i = 0; i < 60; ++i) note += " much was said at this moment";
    return note;
}

}  // namespace

paper::Words words() {
    return paper::Words([](std::string_view id, const std::vector<std::string>& values) { return stock().words(id, values); });
}

guide::Brief brief(const std::string& case_path) {
    const auto made = graftside::load_brief(stock(), case_path);
    REQUIRE(made);
    return *made;
}

guide::Brief demo_brief() { return brief(SOURCE_DIR "/demo-data/demo.case.toml"); }

paper::Record demo(std::size_t lines) {
    const std::string path = TESTS_DIR "/journeys/demo.jsonl";
    const auto script = intake::read_play(read(path), path);
    REQUIRE(script);
    paper::Record record = begun(demo_brief());
    for (std::size_t i = 0; i < std::min(lines, script->size()); ++i) carry_out(record, (*script)[i]);
    if (!record.state.closed) return record;
    record.seal.state = paper::Seal::State::Whole;
    record.seal.fingerprint = "0011 2233 4455 6677";
    return record;
}

paper::Record opened() { return begun(demo_brief()); }

void add(paper::Record& record, const std::vector<guide::Fact>& facts) {
    for (const guide::Fact& fact : facts) {
        measure::Instant at = record.events.back().at;
        at.utc_ms += 1000, at.boottime_ms += 1000;
        write(record, {fact}, guide::Who::Circulating, at);
    }
}

paper::Record crowded() {
    guide::Brief brief = demo_brief();
    brief.inputs.file.pattern = {.interrupted = 24};
    brief.inputs.file.reference = "A-LONG-REFERENCE-OF-A-CASE-0147";
    brief.inputs.file.donor.donation = "PL001499A00T0416003Z5499171234562018123";
    for (int i = 0; i < 12; ++i)
        brief.unit.counts.push_back({"item-" + std::to_string(i), "Something else that is counted " + std::to_string(i)});
    paper::Record record = begun(brief);
    plan::Plan plan = plan::make(brief.inputs);
    plan.notes.insert(plan.notes.end(), 6, {.code = "no-depth-claim", .level = plan::Note::Level::Watch});
    add(record,
        {guide::SideEntered{"right"}, guide::PlanAccepted{brief.inputs, plan, ""}, guide::PlanAccepted{brief.inputs, plan, long_note(0)}});
    for (int seating = 0; seating < 2; ++seating) {
        add(record, {guide::SuctionTurned{guide::Suction::On}});
        for (int i = 0; i < 12; ++i) add(record, {guide::SpokeTurned{.by = 1, .owes_reason = i > 10}});
        add(record, {guide::CutEnded{guide::CutEnd::Surgeon, 9}, guide::SuctionTurned{guide::Suction::Lost}});
    }
    for (int i = 0; i < 6; ++i) {
        guide::Item pack{.kind = guide::ItemKind::Pack,
                         .gtin = "09506000134352",
                         .lot = "LOT-OF-20-LETTERS-" + std::to_string(i),
                         .serial = "SERIAL-20-LETTERS-00"};
        pack.expires = measure::Day{2027, 1, 31};
        if (i < 2) pack.instrument = i == 0 ? "suction-trephine" : "vacuum-punch";
        add(record, {guide::Scanned{.bytes = "x", .item = pack}});
    }
    for (const plan::Suture& one : plan.order) add(record, {guide::SutureTied{one.n, one.centideg}});
    for (const int n : {3, 7})
        add(record, {guide::SutureCut{n, "loose"}, guide::SutureTied{n, plan.order[static_cast<std::size_t>(n - 1)].centideg}});
    for (int i = 0; i < 12; ++i) add(record, {guide::Departed{brief.procedure.departures[static_cast<std::size_t>(i)].id, long_note(i)}});
    for (const guide::CountItem& item : brief.unit.counts) {
        add(record, {guide::ItemsMoved{item.id, 2}, guide::CountChecked{item.id, 2, 2, "a scrub nurse with a long role"},
                     guide::CountChecked{item.id, 3, 2, "a circulating nurse"}});
    }
    add(record, {guide::KnotsTold{guide::KnotSide::Host}, guide::SuturesNamed{long_note(15), "LOT-OF-20-LETTERS-00"},
                 guide::BankTold{"somebody with a long name", long_note(16)}});
    for (const auto what : {guide::Specimen::HostButton, guide::Specimen::Rim, guide::Specimen::Medium})
        add(record, {guide::SpecimenTold{what, guide::SentTo::Pathology, "right"}});
    add(record, {guide::NoteWritten{long_note(13)}, guide::TimeCorrected{5, start().utc_ms, long_note(14)}, guide::WrittenLate{4, 9}});
    return record;
}

paper::Press press() {
    auto made = paper::Press::load(FONTS_DIR);
    REQUIRE(made);
    return *std::move(made);
}

std::string sheet_pdf(const paper::Record& record, paper::Size size) {
    const paper::Press on = press();
    const paper::Sheet sheet = paper::sheet(record, words());
    return on.pdf({.size = size,
                   .caps = paper::sheet_caps(),
                   .shapes = paper::draw(sheet, size, on.lettering(paper::sheet_caps())),
                   .title = sheet.title,
                   .program = record.program,
                   .at = paper::last_moment(record)});
}

std::string card_pdf(const guide::Brief& brief, paper::Size size) {
    const paper::Press on = press();
    const paper::Card card = paper::card(brief, plan::make(brief.inputs), words());
    return on.pdf({.size = size,
                   .caps = paper::card_caps(),
                   .shapes = paper::draw(card, size, on.lettering(paper::card_caps())),
                   .title = card.title,
                   .program = "graftside 0.0.0",
                   .at = start()});
}

std::string text_of(const std::string& pdf) {
    std::istringstream words(asked("pdftotext -layout", pdf, "-"));
    std::string text{};
    for (std::string word; words >> word;) text += word + " ";
    return text;
}

std::string info_of(const std::string& pdf) { return asked("TZ=UTC pdfinfo", pdf); }
std::string fonts_of(const std::string& pdf) { return asked("pdffonts", pdf); }

int pages_of(const std::string& pdf) {
    const std::string info = info_of(pdf);
    const auto at = info.find("Pages:");
    return at == std::string::npos ? 0 : std::stoi(info.substr(at + 6));
}

bool says(const std::string& text, const std::string& words) { return text.find(words) != std::string::npos; }

std::string faults(const picture::Shapes& shapes, paper::Size size, const picture::Lettering& lettering) {
    const picture::Box sheet = paper::sheet_of(size);
    std::vector<const picture::Text*> texts{};
    std::string found{};
    for (const picture::Shape& shape : shapes) {
        const auto* text = std::get_if<picture::Text>(&shape);
        if (text == nullptr || text->text.empty()) continue;
        const picture::Box box = picture::bounds(*text, lettering);
        constexpr double least = 10;  // mm: what a printer may not reach, and a little
        const bool inside = box.x >= least && box.y >= least && box.right() <= sheet.w - least && box.bottom() <= sheet.h - least;
        if (!inside) found += "outside: " + text->text + "\n";
        for (const picture::Text* other : texts) {
            if (picture::overlap(box, picture::bounds(*other, lettering))) found += other->text + " on " + text->text + "\n";
        }
        texts.push_back(text);
    }
    return found;
}

}  // namespace printed
