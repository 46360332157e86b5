#include "picture/bounds.hpp"
#include "screen/models.hpp"
#include "screen/pages.hpp"
#include "screen/plan_views.hpp"
#include "screen/samples.hpp"
#include "screen/shipped.hpp"
#include "screen/target_draw.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>

using namespace screen;
using picture::Box;
using picture::Ink;

namespace {

Box place_of(const Frame& frame, const std::string& id) {
    const auto found =
        std::find_if(frame.touchables.begin(), frame.touchables.end(), [&](const Touchable& one) { return one.target.id == id; });
    REQUIRE(found != frame.touchables.end());
    return found->box;
}

bool has(const Frame& frame, const std::string& id) {
    return std::any_of(frame.touchables.begin(), frame.touchables.end(), [&](const Touchable& one) { return one.target.id == id; });
}

std::string all_text(const Frame& frame) {
    std::string all;
    for (const auto& shape : frame.shapes) {
        if (const auto* text = std::get_if<picture::Text>(&shape)) all += text->text + "\n";
    }
    return all;
}

/// The panel a target is painted as.
picture::Panel panel_of(const Frame& frame, const std::string& id) {
    const Box box = place_of(frame, id);
    for (const auto& shape : frame.shapes) {
        if (const auto* panel = std::get_if<picture::Panel>(&shape); panel != nullptr && panel->box == box) return *panel;
    }
    FAIL("no panel");
    return {};
}

/// A view with its heart as it should be; false where it has none.
bool set_heart(View& view, std::optional<bool> beat) {
    return std::visit(
        [&](auto& model) {
            if constexpr (requires { model.strip.beat; }) return model.strip.beat = beat, true;
            if constexpr (requires { model.beat; }) return model.beat = beat, true;
            return false;
        },
        view);
}

/// What of a frame is not in another that is else the same.
std::vector<picture::Shape> added(const Frame& frame, const Frame& without) {
    std::vector<picture::Shape> more{};
    auto same = without.shapes.begin();
    for (const auto& shape : frame.shapes) {
        if (same != without.shapes.end() && *same == shape) {
            ++same;
        } else {
            more.push_back(shape);
        }
    }
    CHECK(same == without.shapes.end());
    return more;
}

Box full_place(const std::vector<picture::Shape>& heart) {
    REQUIRE(heart.size() == 2);
    const auto& disc = std::get<picture::Disc>(heart[1]);
    return {disc.centre.x - disc.radius, disc.centre.y - disc.radius, 2 * disc.radius, 2 * disc.radius};
}

/// On the glass, and clear of lettering and of every panel it does not lie in.
void check_clear(const Box& heart, const Frame& frame, const Canvas& canvas) {
    constexpr double clear_mm = 0.8, clear_of_edge_mm = 0.5;
    CHECK(heart.x >= clear_of_edge_mm);
    CHECK(heart.y >= clear_of_edge_mm);
    CHECK(heart.right() <= canvas.glass.width_mm - clear_of_edge_mm);
    for (const auto& shape : frame.shapes) {
        if (const auto* panel = std::get_if<picture::Panel>(&shape); panel != nullptr && !panel->box.contains(heart.centre()))
            CHECK(picture::gap(heart, panel->box) >= clear_mm);
        if (const auto* text = std::get_if<picture::Text>(&shape))
            CHECK(picture::gap(heart, picture::bounds(*text, canvas.lettering)) >= clear_mm);
    }
}

/// The role of the first line that begins so; none where no line does.
std::optional<picture::Type> role_of(const Frame& frame, const std::string& begin) {
    for (const auto& shape : frame.shapes) {
        const auto* text = std::get_if<picture::Text>(&shape);
        if (text != nullptr && text->text.starts_with(begin)) return text->type;
    }
    return std::nullopt;
}

}  // namespace

TEST_CASE("the heart takes no room, is wholly on the glass and clear of what stands there, and changes its place, on every glass") {
    std::size_t looked = 0;
#ifdef SHORT_WALKS
    const std::vector<std::string> languages{models::languages.back()};
#else
    const auto& languages = models::languages;
#endif
    for (const std::string& language : languages) {
        auto views = samples::shipped(language);
        for (auto& view : samples::plan_views(language)) views.push_back(std::move(view));
        for (const auto& on : samples::glasses()) {
            for (auto& sample : views) {
                if (!set_heart(sample.view, std::nullopt)) continue;
                const Canvas canvas = samples::canvas(on.glass, reader(sample.view));
                const Frame without = draw(sample.view, canvas);
                CAPTURE(on.name);
                CAPTURE(sample.name);
                std::vector<Box> places{};
                for (const bool beat : {true, false}) {
                    set_heart(sample.view, beat);
                    places.push_back(full_place(added(draw(sample.view, canvas), without)));
                    check_clear(places.back(), without, canvas);
                }
                CHECK(picture::gap(places[0], places[1]) > 0);
                ++looked;
            }
        }
    }
    CHECK(looked > 1000);
}

TEST_CASE("the spoke target is the biggest and stays where it is from the first spoke to the last, whatever comes up meanwhile") {
    for (const auto& on : samples::glasses()) {
        CAPTURE(on.name);
        const Canvas canvas = samples::canvas(on.glass);
        const Box first = place_of(draw(samples::cutting(-3), canvas), "spoke");
        for (int position = -3; position <= 12; ++position) {
            TableModel model = samples::cutting(position);
            if (position % 2 == 0)
                model.banner = Banner{.level = Banner::Level::Watch, .text = "Not on disk: 2 taps are held in memory. The disk is full."};
            if (position % 3 == 0)
                model.hand.insert(
                    model.hand.begin() + 3,
                    {.id = "count-it", .label = "Count the 2nd tap", .line = "a quick second tap was not counted", .look = Look::Hollow});
            if (position > 9) model.hand[0].why_not = "the count is held elsewhere";
            const Frame frame = draw(model, canvas);
            CHECK(place_of(frame, "spoke") == first);
            for (const auto& one : frame.touchables) {
                if (one.target.id != "spoke") CHECK(one.box.w * one.box.h < first.w * first.h);
            }
        }
    }
}

namespace {

/// With every number of spokes, with a tap that was left out, and with the count elsewhere.
bool in_the_cut(const std::string& sample) {
    const std::string step = "step lower ";
    if (!sample.starts_with(step)) return false;
    const std::string state = sample.substr(step.size());
    return state == "bounced" || state == "elsewhere" || state.find_first_not_of("0123456789") == std::string::npos;
}

}  // namespace

// A hand that goes to a place without a look must find there what was there before: common practice, no source.
TEST_CASE("the blade's other targets keep their places through the whole cut, in either language, on every glass") {
    for (const std::string& language : models::languages) {
        std::vector<samples::Sample> cut{};
        for (auto& sample : samples::shipped(language))
            if (in_the_cut(sample.name)) cut.push_back(std::move(sample));
        REQUIRE(cut.size() == 15);
        for (const auto& on : samples::glasses()) {
            // Before the first spoke the ring is let go of where the cut is done later.
            const auto place = [&](const samples::Sample& sample, const std::string& id) -> std::optional<picture::Box> {
                const auto touchables = draw(sample.view, samples::canvas(on.glass)).touchables;
                const auto found = std::find_if(touchables.begin(), touchables.end(), [&](const Touchable& one) {
                    return one.target.id == id || (id == "cut-done" && one.target.id == "let-go");
                });
                return found == touchables.end() ? std::nullopt : std::optional(found->box);
            };
            for (const std::string id : {"spoke", "raised", "undo", "deeper", "suction-lost", "entered", "cut-done"}) {
                const auto first = place(cut.front(), id);
                for (const auto& sample : cut) {
                    CAPTURE(language);
                    CAPTURE(on.name);
                    CAPTURE(sample.name);
                    CAPTURE(id);
                    if (id == "deeper" && (sample.name.ends_with("bounced") || sample.name.ends_with("elsewhere"))) continue;
                    CHECK(place(sample, id) == first);
                }
            }
        }
    }
}

// What asks why or goes back is not looked for over what is tapped next, and a finger on its way there must not meet it.
TEST_CASE("upright, nothing stands over the biggest target, and the time of day stays on the strip") {
    for (const std::string& language : models::languages) {
        for (const auto& sample : samples::shipped(language)) {
            const auto* model = std::get_if<TableModel>(&sample.view);
            if (model == nullptr || model->drawer || model->hand.empty() || model->hand.front().stays) continue;
            for (const auto& on : samples::glasses()) {
                if (!on.glass.portrait()) continue;
                CAPTURE(language);
                CAPTURE(on.name);
                CAPTURE(sample.name);
                const Frame frame = draw(*model, samples::canvas(on.glass));
                const Box first = place_of(frame, model->hand.front().id);
                for (const Target& one : model->hand) CHECK(place_of(frame, one.id).y >= first.y);
                CHECK(all_text(frame).find(model->strip.time.value) != std::string::npos);
            }
        }
    }
}

TEST_CASE("what is to be done mid-cut keeps its words where its way back stands beside the count, in either language, on every glass") {
    int seen = 0;
    for (const std::string& language : models::languages) {
        for (const auto& sample : samples::shipped(language)) {
            const auto* model = std::get_if<TableModel>(&sample.view);
            if (model == nullptr || model->drawer || !model->card.figure || model->hand.empty() || model->hand.back().id != "come-back")
                continue;
            for (const auto& on : samples::glasses()) {
                CAPTURE(on.name);
                CAPTURE(sample.name);
                const Frame frame = draw(*model, samples::canvas(on.glass));
                const std::string line = model->card.lines.front();
                CHECK(all_text(frame).find(line.substr(0, line.find(' '))) != std::string::npos);
                CHECK(std::any_of(frame.shapes.begin(), frame.shapes.end(), [&](const picture::Shape& shape) {
                    const auto* text = std::get_if<picture::Text>(&shape);
                    return text != nullptr && text->text == model->card.figure->numeral && text->type == Type::Numeral;
                }));
                ++seen;
            }
        }
    }
    CHECK(seen > 0);
}

TEST_CASE("what went otherwise bears its sign beside its title, in either language, on every glass") {
    for (const std::string& language : models::languages) {
        std::set<std::string> seen{};
        for (const auto& sample : samples::shipped(language)) {
            const auto* model = std::get_if<TableModel>(&sample.view);
            if (model == nullptr || model->card.level == Banner::Level::Notice || !seen.insert(model->card.title).second) continue;
            TableModel plain = *model;
            plain.card.level = Banner::Level::Notice;
            for (const auto& on : samples::glasses()) {
                CAPTURE(on.name);
                CAPTURE(sample.name);
                const auto signs = [&](const TableModel& of) {
                    const auto shapes = draw(of, samples::canvas(on.glass)).shapes;
                    return std::count_if(shapes.begin(), shapes.end(),
                                         [](const picture::Shape& shape) { return !std::holds_alternative<picture::Text>(shape); });
                };
                CHECK(signs(*model) > signs(plain));
            }
        }
        CHECK(seen.size() > 20);
    }
}

TEST_CASE("the picture of an open eye gives way to what is to be had ready") {
    std::size_t seen = 0;
    for (const std::string& language : models::languages) {
        for (const auto& sample : samples::shipped(language)) {
            const auto* model = std::get_if<TableModel>(&sample.view);
            if (model == nullptr || model->drawer || model->banner || model->card.foot.empty()) continue;
            if (!std::holds_alternative<picture::OpenEye>(model->card.picture)) continue;
            ++seen;
            for (const auto& on : samples::glasses()) {
                CAPTURE(language);
                CAPTURE(on.name);
                CAPTURE(sample.name);
                const std::string label = model->card.foot.front().label;
                CHECK(all_text(draw(*model, samples::canvas(on.glass))).find(label.substr(0, label.find(' '))) != std::string::npos);
            }
        }
    }
    CHECK(seen > 3);
}

// It defers to the surgeon wherever it says what is usual.
TEST_CASE("what is usual once something went otherwise is marked as that, in either language, on every glass") {
    for (const std::string& language : models::languages) {
        const std::string usual = models::words(language)("card.usual"), mark = usual.substr(0, usual.find(' '));
        std::size_t seen = 0;
        for (const auto& sample : samples::shipped(language)) {
            const auto* model = std::get_if<TableModel>(&sample.view);
            // While the blade can turn no card comes between; the loss itself has a card in that step.
            const bool turning = sample.name.ends_with(" lower") || sample.name.ends_with(" suction-on");
            const bool otherwise = (sample.name.starts_with("away ") && !turning) || sample.name == "step lower lost";
            if (model == nullptr || model->drawer || !otherwise) continue;
            ++seen;
            CHECK(model->card.rows.size() > 1);
            for (const auto& on : samples::glasses()) {
                CAPTURE(on.name);
                CAPTURE(sample.name);
                CHECK(all_text(draw(*model, samples::canvas(on.glass))).find(mark) != std::string::npos);
            }
        }
        CHECK(seen > 20);
    }
}

TEST_CASE("a line that gives way to the label over it is told") {
    for (const auto& sample : samples::shipped("en")) {
        if (sample.name != "step next-four") continue;
        const auto told = [&](const Glass& glass) { return draw(sample.view, samples::canvas(glass)).gave_way; };
        const std::vector<std::string> small = told({217, 136}), large = told({598, 336});
        CHECK(std::find(small.begin(), small.end(), "Other mark: choose where it went") != small.end());
        CHECK(large.empty());
    }
}

TEST_CASE("every target of a model can be touched on every glass") {
    for (const auto& on : samples::glasses()) {
        for (const auto& sample : samples::all()) {
            const auto* model = std::get_if<TableModel>(&sample.view);
            if (model == nullptr) continue;
            CAPTURE(on.name);
            CAPTURE(sample.name);
            const Frame frame = draw(*model, samples::canvas(on.glass));
            for (const auto& target : model->hand) CHECK(has(frame, target.id));
            for (const auto& count : model->card.counts) CHECK((has(frame, count.fewer.id) && has(frame, count.more.id)));
        }
    }
}

TEST_CASE("a left hand has the targets on the left, in landscape as the mirror image") {
    const Glass right{344, 194}, left{344, 194, Hand::Left};
    const Frame a = draw(samples::cutting(3), samples::canvas(right)), b = draw(samples::cutting(3), samples::canvas(left));
    REQUIRE(a.touchables.size() == b.touchables.size());
    for (const auto& one : a.touchables) CHECK(place_of(b, one.target.id).x == doctest::Approx(344 - one.box.right()).epsilon(1e-9));
}

TEST_CASE("two answers of the same worth are of the same size, whether they lead or ask for care") {
    for (const auto& on : samples::glasses()) {
        for (const Look look : {Look::Filled, Look::Hollow}) {
            CAPTURE(on.name);
            CAPTURE(static_cast<int>(look));
            TableModel model = samples::cutting(3);
            model.hand = {{.id = "right", .label = "Right eye", .look = look}, {.id = "left", .label = "Left eye", .look = look}};
            const Frame frame = draw(model, samples::canvas(on.glass));
            const Box a = place_of(frame, "right"), b = place_of(frame, "left");
            CHECK(a.w == doctest::Approx(b.w).epsilon(1e-9));
            CHECK(a.h == doctest::Approx(b.h).epsilon(1e-9));
        }
    }
}

TEST_CASE("the eye, the running clock and who holds the count are on the strip of every glass") {
    for (const auto& on : samples::glasses()) {
        CAPTURE(on.name);
        const std::string all = all_text(draw(samples::cutting(3), samples::canvas(on.glass)));
        for (const std::string wanted : {"RIGHT EYE", "01:42", "Suction on", "spoke count: table", "Case K-0147", "Lower the blade"}) {
            CAPTURE(wanted);
            CHECK(all.find(wanted) != std::string::npos);
        }
    }
}

TEST_CASE("a dead target is quiet and says why not") {
    TableModel model = samples::cutting(3);
    model.hand[0].why_not = "the count is held elsewhere";
    const Frame frame = draw(model, samples::canvas({344, 194}));
    CHECK(panel_of(frame, "spoke").fill == Ink::Ground);
    CHECK(all_text(frame).find("held elsewhere") != std::string::npos);
    CHECK(all_text(frame).find("tap as you hear it") == std::string::npos);
}

TEST_CASE("a tapped target is brighter at its edge, a held one fills") {
    Canvas canvas = samples::canvas({344, 194});
    CHECK(panel_of(draw(samples::cutting(3), canvas), "spoke").edge == Ink::Accent);
    canvas.finger.flash = "spoke";
    CHECK(panel_of(draw(samples::cutting(3), canvas), "spoke").edge == Ink::Text);

    TableModel model = samples::cutting(3);
    model.hand[0].press = Press::Hold;
    const auto sweep = [&](double held) {
        canvas.finger = {.holding = "spoke", .held = held};
        double widest = 0;
        for (const auto& shape : draw(model, canvas).shapes) {
            if (const auto* ring = std::get_if<picture::Ring>(&shape); ring != nullptr && ring->sweep_deg < 360)
                widest = std::max(widest, ring->sweep_deg);
        }
        return widest;
    };
    CHECK(sweep(0.25) == doctest::Approx(90).epsilon(1e-9));
    CHECK(sweep(0.75) == doctest::Approx(270).epsilon(1e-9));
}

TEST_CASE("a long label wraps by words into three lines at most, and steps down no further than text") {
    TableModel model = samples::cutting(3);
    model.hand[3].label = "Suction lost while turning, ring moved";
    for (const auto& on : samples::glasses()) {
        CAPTURE(on.name);
        const Canvas canvas = samples::canvas(on.glass);
        const Frame frame = draw(model, canvas);
        const Box box = place_of(frame, "lost");
        int lines = 0;
        for (const auto& shape : frame.shapes) {
            const auto* text = std::get_if<picture::Text>(&shape);
            if (text != nullptr && box.contains(text->at)) ++lines;
        }
        CHECK(lines >= 1);
        CHECK(lines <= 3);
    }
}

TEST_CASE("what to do when something went otherwise keeps its letters when a banner comes, in either language, on every glass") {
    const Banner banner{.level = Banner::Level::Watch,
                        .text = "Not on disk: 12 taps are held in memory. The disk is not saving. Call technical support.",
                        .brief = "Note: 12 taps not on disk."};
    for (const std::string& language : models::languages) {
        std::set<std::string> seen{};
        for (const auto& sample : samples::shipped(language)) {
            const auto* model = std::get_if<TableModel>(&sample.view);
            if (model == nullptr || !sample.name.starts_with("away ") || model->card.figure) continue;
            if (model->card.rows.empty() || model->banner || !seen.insert(model->card.title).second) continue;
            TableModel told = *model;
            told.banner = banner;
            const std::string begin = model->card.rows.front().value.substr(0, 8);
            for (const auto& on : samples::glasses()) {
                CAPTURE(on.name);
                CAPTURE(sample.name);
                const Canvas canvas = samples::canvas(on.glass);
                const auto without = role_of(draw(*model, canvas), begin);
                CHECK(without.has_value());
                CHECK(role_of(draw(told, canvas), begin) == without);
            }
        }
        CHECK(seen.contains(guide::find_departure(models::brief(language).procedure, "eye-bulging")->title));
    }
}

TEST_CASE("what to do once suction is lost is as large as what to do otherwise, from 21 inches on") {
    for (const Glass& glass : {Glass{476, 268}, Glass{598, 336}, Glass{268, 476}}) {
        CAPTURE(glass.width_mm);
        models::Seen at("lower");
        at.at.count(13);
        REQUIRE(at.at.does(guide::TurnSuction{.to = guide::Suction::Lost}));
        const Canvas canvas = samples::canvas(glass);
        const auto role = role_of(draw(at.table(), canvas), at.table().card.rows.front().value.substr(0, 8));
        REQUIRE(role);
        CHECK(canvas.type.of(*role) >= canvas.type.of(picture::Type::Lead));
    }
}

TEST_CASE("what to do when something went otherwise is in the biggest letters where a large glass has room for them with air") {
    models::Seen at("final-count");
    REQUIRE(at.at.does(guide::Depart{.what = "needle-lost"}));
    const std::string begin = at.table().card.rows.front().value.substr(0, 8), title = at.table().card.title;
    for (const Glass& glass : {Glass{598, 336}, Glass{268, 476}}) {
        CHECK(role_of(draw(at.table(), samples::canvas(glass)), begin) == picture::Type::Display);
        CHECK(role_of(draw(at.table(), samples::canvas(glass)), title) == picture::Type::Display);
    }
    CHECK(role_of(draw(at.table(), samples::canvas({344, 194})), begin) == picture::Type::Title);
}

TEST_CASE("the spoke's letters are the biggest while it leads, and smaller while something stands open or the plan is reached") {
    const Canvas canvas = samples::canvas({344, 194});
    models::Seen at("lower");
    CHECK(role_of(draw(at.table(), canvas), "+1 spoke") == picture::Type::Display);
    REQUIRE(at.at.does(guide::Depart{.what = "patient-moved"}));
    CHECK(role_of(draw(at.table(), canvas), "+1 if turned") == picture::Type::Title);
    models::Seen reached("lower");
    reached.at.count(11);
    CHECK(role_of(draw(reached.table(), canvas), "+1 if turned") == picture::Type::Title);
}

TEST_CASE("choices have a big label where all have air, and what stops a hand is as large in the foot of a page as it weighs") {
    const Canvas large = samples::canvas({476, 268}), usual = samples::canvas({344, 194});
    models::Seen at("donor-on");
    const Frame page = draw(screen::view(at.at.state, {.page = "departures"}, at.around, models::words()), usual);
    CHECK(place_of(page, "eye-bulging").w >= 2 * place_of(page, "back").w);
    CHECK(role_of(page, "Eye bulging") == picture::Type::Title);
    PickModel model{.title = "Which?"};
    for (const std::string label : {"loose", "tight", "broke"}) model.choices.push_back({.id = label, .label = label});
    CHECK(role_of(draw(model, large), "loose") == picture::Type::Title);
    std::string& label = model.choices.front().label;
    while (label.size() < 290) label += " wherever it is set";
    CHECK(role_of(draw(model, large), "tight") != picture::Type::Title);
}

TEST_CASE("a sign and the label beside it stand in the middle of their target as one") {
    for (const auto& on : samples::glasses()) {
        for (const std::string& language : models::languages) {
            sample::Case at(models::brief(language));
            at.up_to("lower");
            at.count(5);
            Around around{};
            around.now = at.now;
            const Canvas canvas = samples::canvas(on.glass);
            const Frame frame = draw(table(at.state, around, models::words(language)), canvas);
            for (const std::string id : {"deeper", "cut-done"}) {
                CAPTURE(on.name);
                CAPTURE(id);
                const Box box = place_of(frame, id);
                double left = box.right(), right = box.x;
                for (const auto& shape : frame.shapes) {
                    std::optional<Box> one;
                    if (const auto* text = std::get_if<picture::Text>(&shape)) one = picture::bounds(*text, canvas.lettering);
                    if (const auto* ring = std::get_if<picture::Ring>(&shape))
                        one = Box{ring->centre.x - ring->radius, ring->centre.y, 2 * ring->radius, 0};
                    if (!one || !box.contains(one->centre())) continue;
                    left = std::min(left, one->x);
                    right = std::max(right, one->right());
                }
                CHECK(std::abs(left - box.x - (box.right() - right)) < 1);
            }
        }
    }
}

TEST_CASE("every field of a form can be reached by picking fields that are shown, on every glass") {
    for (const auto& on : samples::glasses()) {
        CAPTURE(on.name);
        FormModel model{.title = "New case"};
        for (int i = 0; i < 20; ++i)
            model.fields.push_back(
                {.target = {.id = std::to_string(i), .label = "Field " + std::to_string(i), .weight = Weight::Elsewhere}});
        const Canvas canvas = samples::canvas(on.glass);
        int reached = 0;
        for (int steps = 0; steps < 20 && reached < 19; ++steps) {
            for (auto& field : model.fields) field.now = field.target.id == std::to_string(reached);
            for (const auto& one : draw(model, canvas).touchables) reached = std::max(reached, std::stoi(one.target.id));
        }
        CHECK(reached == 19);
        for (auto& field : model.fields) field.now = field.target.id == "19";
        CHECK(draw(model, canvas).touchables.front().target.id != "19");  // and one back from there
    }
}
