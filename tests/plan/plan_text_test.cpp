#include "screen/plan_text.hpp"
#include "intake/words.hpp"
#include "sample.hpp"

#include <doctest/doctest.h>

#include <fstream>
#include <sstream>

namespace {

screen::Words english() {
    std::ifstream file(SOURCE_DIR "/assets/words/en.toml");
    std::stringstream all;
    all << file.rdbuf();
    const auto words = intake::read_words(all.str(), "en.toml");
    REQUIRE(static_cast<bool>(words));
    return screen::Words(words->texts);
}

std::string told(const plan::Inputs& inputs) { return screen::plan_text(inputs, plan::make(inputs), english()); }

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("a plan is told in words with the uncertainty and the source beside each depth [H-04]") {
    const std::string text = told(sample::scar());
    CAPTURE(text);
    CHECK(has(text, "Plan for case K-0147, right eye\nInvented case, for rehearsal\n"));
    CHECK(has(text, "Host 7.50 mm, donor 7.75 mm, oversize +0.25 mm"));
    CHECK(has(text, "To the limbus 1.80 mm at 12 o'clock; 1.22 mm with the usual 0.58 mm off centre"));
    CHECK(has(text, "3 to zero, then 8. Held by the aim, 80 % of the thinnest"));
    CHECK(has(text, "Travel below zero 480 µm"));
    CHECK(has(text, "Expected left 110 ± 92 µm (95 %), chance of entering about 1 in"));
    CHECK(has(text, "Source: Clin Ophthalmol 2014;8:2391-6, 11 cadaver eyes"));
    CHECK(has(text, "Host 7.75, donor 8.00 (+0.25): to the limbus "));
    CHECK(has(text, "<- the case"));
    CHECK(has(text, "1. 12 o'clock, mark 1\n"));
    CHECK(has(text, "6. 7:30 o'clock, mark 11\n"));
    CHECK(has(text, "The surgeon, the leaflet in the pack and local rules decide."));
    CHECK_FALSE(has(text, "This plan cannot be used"));
}

TEST_CASE("a refused plan says first why, tells no depth, and gives the rest") {
    plan::Inputs inputs = sample::centre();
    inputs.file.thickness.edge_looks_normal = false;
    const std::string text = told(inputs);
    CAPTURE(text);
    CHECK(text.find("This plan cannot be used") < text.find("Sizes"));
    CHECK(has(text, "- A reading at the centre alone carries no depth"));
    CHECK(has(text, "None planned"));
    CHECK(has(text, "None: no estimate of depth"));
    CHECK_FALSE(has(text, "chance of entering"));
    CHECK(has(text, "16. 11:15 o'clock, mark 16\n"));
}

TEST_CASE("a place between two marks is said in thirds") {
    plan::Inputs inputs = sample::scar();
    inputs.file.pattern = {.interrupted = 12};
    const std::string text = told(inputs);
    CAPTURE(text);
    CHECK(has(text, "5. 1 o'clock, between marks 2 and 3, one third on\n"));
    CHECK(has(text, "9. 2 o'clock, between marks 3 and 4, two thirds on\n"));
}

TEST_CASE("every word of a plan is there, whatever the pattern and the aim") {
    std::vector<plan::Inputs> tried{sample::scar(), sample::centre(), sample::scar(), sample::scar(), sample::scar()};
    tried[2].file.aim = {.goal = plan::Goal::ToEntry};
    tried[2].file.pattern = {.interrupted = 12, .loops = 12, .running = 1};
    tried[3].file.aim = {.goal = plan::Goal::Spokes, .share_permille = 0, .spokes = 10};
    tried[3].trephine.marks = 0;
    tried[4].file.aim.share_permille = 950;
    tried[4].file.pattern = {.interrupted = 15};
    tried.push_back(sample::map(5, 9));
    tried.back().file.thickness.readings[3].thickness = measure::from_um(800);
    tried.back().file.pattern = {.interrupted = 0, .loops = 12, .running = 2};
    tried.back().trephine.marks = 7;
    tried.push_back(sample::map(2, 4));
    tried.back().limits = {.hosts_in_stock = sample::sizes({8}), .donors_in_stock = sample::sizes({8})};
    tried.back().file.donor.stored = measure::Day{2026, 11, 1};
    for (const plan::Method method : {plan::Method::Ultrasound, plan::Method::Scheimpflug, plan::Method::SlitScanning}) {
        tried.push_back(sample::map(5, 9));
        tried.back().file.thickness.method = method;
        tried.back().file.thickness.central = measure::from_um(700);
    }
    for (const auto& inputs : tried) {
        const std::string text = told(inputs);
        CAPTURE(text);
        CHECK_FALSE(has(text, "<note."));
        CHECK_FALSE(has(text, "<plan"));
        CHECK_FALSE(has(text, "<chance."));
        CHECK_FALSE(has(text, "{"));
    }
}
