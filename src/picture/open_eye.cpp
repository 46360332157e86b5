#include "picture/clock_face.hpp"

#include <algorithm>

namespace picture {

Shapes draw(const OpenEye& eye, const Box& box, const Lettering& lettering) {
    const Point centre = box.centre();
    const double rim = std::min(box.w, box.h) / 2 - 0.5, hole = rim * 0.66;
    const double cap = lettering.cap(Type::Lead);
    return {
        Disc{.centre = centre, .radius = rim, .ink = Ink::Tissue},
        Ring{.centre = centre, .radius = rim, .width = 0.8, .ink = Ink::Cornea},
        Disc{.centre = centre, .radius = hole, .ink = Ink::Black},
        Ring{.centre = centre, .radius = hole, .width = 0.8, .ink = Ink::Steel, .dash = 2, .gap = 1.4},
        Text{.at = {centre.x, centre.y + cap / 2}, .text = eye.label, .type = Type::Lead, .ink = Ink::Soft, .align = Align::Centre},
    };
}

}  // namespace picture
