// What is shipped must read without a problem, and say of itself what it has to say.
#include "intake/case.hpp"
#include "intake/instrument.hpp"
#include "intake/kind.hpp"
#include "intake/procedure.hpp"
#include "intake/unit.hpp"
#include "problems.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>

using namespace intake;
namespace fs = std::filesystem;

namespace {

std::string read(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    REQUIRE_MESSAGE(in.good(), path.string());
    return {std::istreambuf_iterator<char>(in), {}};
}

/// The TOML files of a folder of the project.
std::vector<fs::path> files(const std::string& folder) {
    std::vector<fs::path> found;
    for (const auto& entry : fs::directory_iterator(fs::path(SOURCE_DIR) / folder)) {
        if (entry.path().extension() == ".toml") found.push_back(entry.path());
    }
    std::ranges::sort(found);
    return found;
}

test::Lines problems(const fs::path& path) {
    test::Lines told;
    for (const auto& problem : check(read(path), path.filename().string())) told.push_back(measure::text(problem));
    return told;
}

}  // namespace

TEST_CASE("every shipped file reads without a problem, as what its folder says") {
    const std::vector<std::pair<std::string, std::set<Kind>>> folders{{"assets/instruments", {Kind::Trephine, Kind::Punch}},
                                                                      {"assets/procedures", {Kind::Procedure}},
                                                                      {"assets/unit", {Kind::Unit}},
                                                                      {"assets/words", {Kind::Words}},
                                                                      {"demo-data", {Kind::Case}}};
    for (const auto& [folder, kinds] : folders) {
        CHECK(!files(folder).empty());
        for (const fs::path& path : files(folder)) {
            CAPTURE(path.string());
            CHECK(problems(path) == test::Lines{});
            const auto kind = kind_of(read(path), "file");
            REQUIRE(kind);
            CHECK(kinds.contains(*kind));
        }
    }
}

// Common practice, no source: the figures of the usual pair.
TEST_CASE("the usual pair of instruments is as common practice has it") {
    const auto trephine = read_trephine(read(fs::path(SOURCE_DIR) / "assets/instruments/suction-trephine.toml"), "t");
    REQUIRE(trephine);
    CHECK(trephine->id == "suction-trephine");
    CHECK(trephine->advance == measure::from_um(60));
    CHECK(trephine->raise == 3);
    CHECK(trephine->marks == 16);
    CHECK(trephine->suction);
    CHECK(trephine->reach == published_reach());
    std::vector<measure::Length> halves;
    for (int twice = 12; twice <= 18; ++twice) halves.push_back(measure::from_mm(twice / 2.0));
    CHECK(trephine->diameters == halves);

    const auto punch = read_punch(read(fs::path(SOURCE_DIR) / "assets/instruments/vacuum-punch.toml"), "p");
    REQUIRE(punch);
    CHECK(punch->id == "vacuum-punch");
    CHECK(punch->dots == 4);
    CHECK(punch->vacuum);
    std::vector<measure::Length> donors{measure::from_mm(6.0)};
    for (int quarters = 26; quarters <= 36; ++quarters) donors.push_back(measure::from_mm(quarters / 4.0));
    donors.push_back(measure::from_mm(9.5));
    CHECK(punch->diameters == donors);
}

TEST_CASE("every shipped figure of an instrument is said to be common practice without a source") {
    for (const fs::path& path : files("assets/instruments")) {
        CAPTURE(path.string());
        CHECK(read(path).find("Common practice, no source") != std::string::npos);
        CHECK(read(path).find("the leaflet in the pack") != std::string::npos);
    }
}

TEST_CASE("no limit is shipped as normal") {
    const auto unit = read_unit(read(fs::path(SOURCE_DIR) / "assets/unit/unit.toml"), "unit.toml");
    REQUIRE(unit);
    CHECK(unit->unit.limits == plan::Limits{});
    REQUIRE(unit->unit.counts.size() == 4);
    CHECK(unit->unit.counts[0].id == "needles");
    CHECK(unit->unit.counts[1].id == "blades");
    CHECK(unit->unit.counts[2].id == "spears");
    CHECK(unit->unit.counts[3].id == "swabs");
}

TEST_CASE("demonstration cases say that they are invented, and the profiles hold their sizes") {
    const auto sizes = [](const auto& profile, measure::Length size) {
        return std::ranges::find(profile.diameters, size) != profile.diameters.end();
    };
    std::set<std::string> references;
    for (const fs::path& path : files("demo-data")) {
        CAPTURE(path.string());
        const auto document = read_case(read(path), "case");
        REQUIRE(document);
        CHECK(document->file.invented);
        CHECK(document->file.reference.starts_with("DEMO-"));
        CHECK(references.insert(document->file.reference).second);
        CHECK(read(path).find("invented") < 20);
        const fs::path instruments = fs::path(SOURCE_DIR) / "assets/instruments";
        const auto trephine = read_trephine(read(instruments / (document->trephine + ".toml")), "t");
        const auto punch = read_punch(read(instruments / (document->punch + ".toml")), "p");
        REQUIRE(trephine);
        REQUIRE(punch);
        CHECK(sizes(*trephine, document->file.host_diameter));
        CHECK(sizes(*punch, document->file.donor.diameter));
    }
    CHECK(references.size() >= 3);
}

// Common practice, no source: who takes part in a pause, a count or an agreement is there for it.
TEST_CASE("whoever the step needs stays: pauses, counts, the plan, the sizes and the side keep the circulating nurse in the room") {
    for (const fs::path& path : files("assets/procedures")) {
        const auto procedure = read_procedure(read(path), path.filename().string());
        REQUIRE(procedure);
        int stays = 0;
        for (const guide::Phase& phase : procedure->phases) {
            for (const guide::Step& step : phase.steps) {
                using guide::Closes;
                const bool needed = step.who == "all" || step.pause != guide::Pause::None || step.closes == Closes::Counts ||
                                    step.closes == Closes::Plan || step.closes == Closes::Side || step.id == "sizes-confirmed";
                if (!needed) continue;
                CAPTURE(step.id);
                CHECK(step.nurse == guide::Nurse::Stay);
                ++stays;
            }
        }
        CHECK(stays >= 11);
    }
}

TEST_CASE("what is offered once the cut is made does not say that it is not to be made yet") {
    for (const fs::path& path : files("assets/procedures")) {
        const auto procedure = read_procedure(read(path), path.filename().string());
        REQUIRE(procedure);
        bool cut = false;
        std::set<std::string> offered;
        for (const guide::Phase& phase : procedure->phases) {
            for (const guide::Step& step : phase.steps) {
                cut = cut || step.closes == guide::Closes::Cut;
                if (!cut) continue;
                offered.insert(step.departures.begin(), step.departures.end());
                offered.insert(phase.departures.begin(), phase.departures.end());
            }
        }
        CHECK(offered.contains("tense-eye"));
        for (const std::string& id : offered) {
            CAPTURE(id);
            const guide::Departure* departure = guide::find_departure(*procedure, id);
            REQUIRE(departure != nullptr);
            for (const std::string& line : departure->lines) {
                CHECK(line.find("Do not cut") == std::string::npos);
                CHECK(line.find("nicht schneiden") == std::string::npos);
            }
        }
    }
}
