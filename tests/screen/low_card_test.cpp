// What a card keeps where there is least room for it: under a banner, over what is counted, beside a drawer.
#include "screen/models.hpp"
#include "screen/samples.hpp"
#include "screen/shipped.hpp"
#include "screen/troubled_views.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

using namespace screen;
using picture::Ink;
using picture::Type;

namespace {

using Tables = std::vector<std::pair<std::string, TableModel>>;

/// Every Table view on which the card is to be seen, without the path, which names the step too.
const Tables& tables() {
    static const Tables made = [] {
        Tables all;
        for (const std::string& language : models::languages) {
            for (const auto& views : {samples::shipped(language), samples::troubled(language)}) {
                for (const auto& sample : views) {
                    const auto* table = std::get_if<TableModel>(&sample.view);
                    if (table == nullptr || (table->drawer && table->drawer->open && !table->drawer->narrow)) continue;
                    all.emplace_back(language + " " + sample.name, *table);
                    all.back().second.path.clear();
                }
            }
        }
        return all;
    }();
    return made;
}

template <class Shape>
std::vector<Shape> all_of(const Frame& frame) {
    std::vector<Shape> made;
    for (const auto& shape : frame.shapes) {
        if (const auto* one = std::get_if<Shape>(&shape)) made.push_back(*one);
    }
    return made;
}

/// From the beginning of a line, over as many lines as it takes.
bool says(const Frame& frame, const std::string& words) {
    const auto texts = all_of<picture::Text>(frame);
    for (std::size_t i = 0; i < texts.size(); ++i) {
        std::string read;
        for (std::size_t k = i; k < texts.size() && read.size() < words.size(); ++k) read += (read.empty() ? "" : " ") + texts[k].text;
        if (read == words) return true;
    }
    return false;
}

/// Sentences alone: what to do when something went otherwise.
bool otherwise(const Card& card) {
    return !card.rows.empty() && std::all_of(card.rows.begin(), card.rows.end(), [](const Row& row) { return row.label.empty(); });
}

}  // namespace

TEST_CASE("a card says what it is about on every glass, and what to do first when something went otherwise") {
    const Tables& views = tables();
    CHECK(views.size() > 100);
    for (const auto& on : samples::glasses()) {
        for (const auto& [name, model] : views) {
            const Frame frame = draw(model, samples::canvas(on.glass));
            // Mid-cut nothing is read but the figure, the section and the clock.
            const bool named = (model.card.figure && !otherwise(model.card)) || says(frame, model.card.title);
            if (!named) FAIL_CHECK(name << " on " << on.name << ": no title");
            if (otherwise(model.card) && !says(frame, model.card.rows.front().value))
                FAIL_CHECK(name << " on " << on.name << ": nothing to do");
        }
    }
}

TEST_CASE("how far the blade came before suction was lost does not look like spokes to go") {
    std::size_t seen = 0;
    for (const auto& on : samples::glasses()) {
        for (const auto& table : tables()) {
            const TableModel& model = table.second;
            if (!model.card.figure || !otherwise(model.card)) continue;
            CAPTURE(table.first);
            CAPTURE(on.name);
            ++seen;
            const Frame frame = draw(model, samples::canvas(on.glass));
            CHECK(says(frame, model.card.figure->numeral + " " + model.card.figure->under));
            for (const auto& text : all_of<picture::Text>(frame)) CHECK(text.type != Type::Numeral);
        }
    }
    CHECK(seen > 20);
}

TEST_CASE("the clock face of the next suture stands on every glass, and its hand is seen beside its disc") {
    std::size_t seen = 0;
    for (const auto& on : samples::glasses()) {
        for (const auto& [name, model] : tables()) {
            const auto* face = std::get_if<picture::ClockFace>(&model.card.picture);
            if (face == nullptr || face->next.empty()) continue;
            ++seen;
            const Frame frame = draw(model, samples::canvas(on.glass));
            double dial = 0, disc = 0;
            for (const auto& ring : all_of<picture::Ring>(frame))
                if (ring.ink == Ink::Cornea) dial = std::max(dial, ring.radius);
            for (const auto& one : all_of<picture::Disc>(frame))
                if (one.ink == Ink::AccentFill) disc = std::max(disc, one.radius);
            if (dial == 0 || dial < 2 * disc) FAIL_CHECK(name << " on " << on.name << ": a dial of " << dial << ", its disc " << disc);
        }
    }
    CHECK(seen > 20);
}

TEST_CASE("what the Desk says to have ready stands under its heading in every step, in either language, on every glass") {
    for (const std::string& language : models::languages) {
        const Words& words = models::words(language);
        for (const auto& sample : samples::shipped(language)) {
            const auto* model = std::get_if<DeskModel>(&sample.view);
            if (model == nullptr || !sample.name.starts_with("desk step ")) continue;
            for (const auto& on : samples::glasses()) {
                const Frame frame = draw(*model, samples::canvas(on.glass, Reader::Desk));
                for (const Row& row : model->step) {
                    if (row.label != words("card.ready") || !says(frame, row.label)) continue;
                    const std::string first = row.value.substr(0, row.value.find("\u00A0"));
                    const auto texts = all_of<picture::Text>(frame);
                    const bool seen =
                        std::any_of(texts.begin(), texts.end(), [&](const picture::Text& text) { return text.text.starts_with(first); });
                    if (!seen) FAIL_CHECK(language << " " << sample.name << " on " << on.name << ": nothing under " << row.label);
                }
            }
        }
    }
}

TEST_CASE("before anything is counted the two who confirm have letters of one size, in either language, on every glass") {
    std::size_t seen = 0;
    for (const auto& [name, model] : tables()) {
        if (!name.ends_with(" step opening-count")) continue;
        for (const auto& on : samples::glasses()) {
            const auto texts = all_of<picture::Text>(draw(model, samples::canvas(on.glass)));
            std::set<Type> roles{};
            for (std::size_t i = 0; i < 2; ++i) {
                const std::string begin = model.hand.at(i).label.substr(0, model.hand.at(i).label.find(' '));
                for (const auto& text : texts)
                    if (text.text.starts_with(begin)) roles.insert(text.type);
            }
            if (roles.size() != 1) FAIL_CHECK(name << " on " << on.name << ": " << roles.size() << " sizes");
            ++seen;
        }
    }
    CHECK(seen == 2 * samples::glasses().size());
}
