// Pages to PDF, by cairo and pango: black and greys on white, lettering in B612 from the program's own folder and nowhere else, a
// letter that B612 lacks from DejaVu Sans beside it.
// The same page gives the same bytes whatever the day, the folder, the zone and the language of the machine: a private
// fontconfig without the system's fonts, no hinting, a fixed language, the page's own date. Text can be searched and copied.
// Letters that both lack are drawn as boxes with their number.
#pragma once

#include "measure/result.hpp"
#include "paper/page.hpp"
#include "picture/lettering.hpp"

#include <memory>
#include <string>

namespace paper {

class Press {
public:
    /// `fonts` holds the regular and bold faces of both; the error says which file is not there.
    static measure::Result<Press, std::string> load(const std::string& fonts);

    /// May outlive the press.
    picture::Lettering lettering(const Caps& caps) const;
    std::string pdf(const Page& page) const;

private:
    struct Type;
    explicit Press(std::shared_ptr<const Type> type) : type_(std::move(type)) {}
    std::shared_ptr<const Type> type_;
};

}  // namespace paper
