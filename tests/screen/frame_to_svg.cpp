// frame_to_svg FOLDER [NAME] [light]: every sample view on every glass as an SVG file, to look at without a window.
#include "screen/audit.hpp"
#include "screen/models.hpp"
#include "screen/past_views.hpp"
#include "screen/plan_views.hpp"
#include "screen/samples.hpp"
#include "screen/shipped.hpp"
#include "screen/troubled_views.hpp"
#include "support/svg.hpp"

#include <algorithm>
#include <fstream>
#include <iostream>

int main(int argc, char** argv) {
    if (argc < 2) {
        std::cerr << "usage: frame_to_svg FOLDER [NAME] [light]\n";
        return 2;
    }
    const std::string folder = argv[1], wanted = argc > 2 ? argv[2] : "";
    const auto palette = screen::palette(argc > 3 ? screen::Theme::Light : screen::Theme::Dark);
    auto views = samples::all();
    for (const std::string& language : models::languages) {
        for (auto& view : samples::shipped(language)) views.push_back({language + " shipped " + view.name, std::move(view.view)});
        for (auto& view : samples::plan_views(language)) views.push_back({language + " " + view.name, std::move(view.view)});
        for (auto& view : samples::past_views(language)) views.push_back({language + " " + view.name, std::move(view.view)});
        for (auto& view : samples::troubled(language)) views.push_back({language + " troubled " + view.name, std::move(view.view)});
    }
    for (const auto& glass : samples::glasses()) {
        for (const auto& sample : views) {
            std::string name = sample.name + " " + glass.name;
            if (name.find(wanted) == std::string::npos) continue;
            std::replace(name.begin(), name.end(), ' ', '-');
            const auto canvas = samples::canvas(glass.glass, screen::reader(sample.view));
            const auto frame = screen::draw(sample.view, canvas);
            std::ofstream(folder + "/" + name + ".svg") << support::svg(frame.shapes, canvas, palette);
            for (const auto& found : screen::audit(frame, canvas))
                std::cout << name << ": " << screen::name(found.is) << ": " << found.what << "\n";
            for (const auto& what : frame.short_of) std::cout << name << ": falls short: " << what << "\n";
        }
    }
}
