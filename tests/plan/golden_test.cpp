// Whole plans against tests/cases/NAME.expected.json, made by tests/cases/expected.py by another route.
// Allowed apart: 0.1 um, 1e-5 of a chance, 1e-4 of a share (a last digit that rounds the other way); nothing else.
#include "intake/case.hpp"
#include "intake/instrument.hpp"
#include "intake/readings.hpp"
#include "intake/words.hpp"
#include "plan/plan.hpp"
#include "plan_json.hpp"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace {

using Json = nlohmann::ordered_json;
namespace fs = std::filesystem;

std::string text_of(const fs::path& path) {
    std::ifstream file(path);
    std::stringstream all;
    all << file.rdbuf();
    return all.str();
}

std::vector<fs::path> cases() {
    std::vector<fs::path> found{};
    for (const auto& entry : fs::directory_iterator(TESTS_DIR "/cases")) {
        if (entry.path().string().ends_with(".case.toml")) found.push_back(entry.path());
    }
    std::sort(found.begin(), found.end());
    return found;
}

std::string profile(const std::string& id) { return text_of(fs::path(SOURCE_DIR "/assets/instruments") / (id + ".toml")); }

Json planned(const fs::path& path) {
    auto document = intake::read_case(text_of(path), path.filename().string());
    REQUIRE(static_cast<bool>(document));
    if (!document->readings_csv.empty()) {
        const auto readings = intake::read_readings(text_of(path.parent_path() / document->readings_csv), document->readings_csv);
        REQUIRE(static_cast<bool>(readings));
        document->file.thickness.readings = *readings;
    }
    const auto trephine = intake::read_trephine(profile(document->trephine), document->trephine);
    const auto punch = intake::read_punch(profile(document->punch), document->punch);
    const auto words = intake::read_words(text_of(SOURCE_DIR "/assets/words/en.toml"), "en.toml");
    REQUIRE(static_cast<bool>(trephine));
    REQUIRE(static_cast<bool>(punch));
    REQUIRE(static_cast<bool>(words));
    const plan::Inputs inputs{.file = document->file, .trephine = *trephine, .punch = *punch, .limits = {}};
    return Json::parse(plan_json(inputs, plan::make(inputs), screen::Words(words->texts)));
}

double allowed(const std::string& key) {
    if (key == "entry_chance") return 1e-5;
    if (key == "share") return 1.01e-4;
    const bool rounded = key.ends_with("_um") && key != "travel_um" && !key.starts_with("clearance") && !key.starts_with("oversize");
    return rounded ? 0.101 : 1e-9;
}

void compare(const std::string& key, const Json& expected, const Json& found) {
    CAPTURE(key);
    if (expected.is_number() && found.is_number()) {
        CHECK(std::abs(expected.get<double>() - found.get<double>()) <= allowed(key));
        return;
    }
    REQUIRE(expected.type_name() == std::string(found.type_name()));
    if (expected.is_object() || expected.is_array()) REQUIRE(expected.size() == found.size());
    if (expected.is_object()) {
        for (const auto& [name, value] : expected.items()) {
            REQUIRE(found.contains(name));
            compare(name, value, found[name]);
        }
    } else if (expected.is_array()) {
        for (std::size_t i = 0; i < expected.size(); ++i) compare(key, expected[i], found[i]);
    } else {
        CHECK(expected == found);
    }
}

}  // namespace

TEST_CASE("every golden case is planned as the second route plans it") {
    const auto paths = cases();
    REQUIRE(paths.size() >= 40);
    for (const fs::path& path : paths) {
        const std::string name = path.filename().string();
        CAPTURE(name);
        const std::string stem = path.string().substr(0, path.string().size() - std::string(".case.toml").size());
        const Json expected = Json::parse(text_of(stem + ".expected.json"));
        const Json found = planned(path);
        for (const auto& [key, value] : expected.items()) {
            if (key != "exit") compare(key, value, found.at(key));
        }
        const bool refused = std::any_of(found["notes"].begin(), found["notes"].end(), [](const Json& n) { return n["level"] == "stop"; });
        CHECK(refused == (expected["exit"] == 1));
        CHECK(found["planned"].is_null() == refused);
    }
}

TEST_CASE("the JSON of a plan has the agreed keys in the agreed order") {
    const Json found = planned(TESTS_DIR "/cases/example.case.toml");
    const auto keys = [](const Json& object) {
        std::string all{};
        for (const auto& [key, value] : object.items()) all += key + " ";
        return all;
    };
    CHECK(keys(found) == "case eye formula wall ladder planned sizes sutures notes ");
    CHECK(keys(found["wall"]) == "basis thinnest_um thinnest_deg mean_um u_um rms_um profile_um ");
    CHECK(keys(found["ladder"][0]) == "spoke travel_um share reserve_um reserve_u95_um entry_chance words ");
    CHECK(keys(found["planned"]) == "spokes raise travel_um bound_by aim_share entry_from entry_to ");
    CHECK(keys(found["sizes"]) ==
          "oversize_um clearance_um clearance_deg clearance_usual_offset_um button_front_range_um button_back_range_um ");
    CHECK(keys(found["sutures"]) == "pattern spacing_um order running ");
    CHECK(keys(found["sutures"]["order"][0]) == "n clock deg mark opposite ");
    CHECK(keys(found["notes"][0]) == "code level text source ");
    for (const Json& note : found["notes"]) CHECK(note["text"].get<std::string>().find_first_of("<{") == std::string::npos);
}
