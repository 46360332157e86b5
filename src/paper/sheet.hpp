// The handover sheet: what one page says of a case, and how it stands on the page. Everything comes from the record; what the record
// does not hold is said to be not recorded, never left out and never made up. One page whatever was written: lists that are too
// long end with how many more there are, which stand in the JSON.
#pragma once

#include "paper/column.hpp"
#include "paper/page.hpp"
#include "paper/record.hpp"
#include "paper/words.hpp"
#include "picture/clock_face.hpp"

#include <functional>
#include <string>
#include <vector>

namespace paper {

/// A clock on the time line, in minutes from the first one's start.
struct Bar {
    struct Span {
        double from = 0, to = 0;
        bool operator==(const Span&) const = default;
    };
    std::string label{}, value{};
    std::vector<Span> spans{};
    bool phase = false;  // one of the guide's phases; else a clock that runs across them
    bool operator==(const Bar&) const = default;
};

struct Section {
    std::string title{};
    std::vector<Pair> rows{};
    bool operator==(const Section&) const = default;
};

struct Lines {
    std::string title{};
    std::vector<std::string> entries{};
    bool operator==(const Lines&) const = default;
};

struct Sheet {
    std::string title{}, side{}, reference{}, under{}, status{}, status_line{};
    std::string invented{};  // what says that the case is invented; empty: a real one
    std::string times_title{};
    std::vector<Bar> times{};
    Section depth{}, sutures{}, tissue{}, counts{}, record_few{}, record{};  // record_few: short rows, two side by side
    picture::ClockFace face{};
    std::vector<std::string> placed{};  // one entry a suture in place
    Lines otherwise{}, cautions{};
    std::string not_a_device{};
    std::function<std::string(std::size_t)> more{};  // "and 3 more, see the JSON"
};

Sheet sheet(const Record& record, const Words& words);
/// What went otherwise than the guide, each with its time: first what must not give way on a full page, notes last; each oldest first.
std::vector<std::string> otherwise(const Record& record, const Words& words);
Section tissue_section(const Record& record, const Words& words);
Section count_section(const Record& record, const Words& words);
Section depth_section(const Record& record, const Words& words);

/// How tall the lettering of the sheet is.
Caps sheet_caps();
picture::Shapes draw(const Sheet& sheet, Size size, const picture::Lettering& lettering);

}  // namespace paper
