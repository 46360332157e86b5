// The picture of a card, whichever it is.
#include "measure/overloaded.hpp"
#include "screen/table_parts.hpp"

#include <algorithm>

namespace screen {

namespace {

/// On a small dial the disc of the next suture covers where its hand points.
bool reads(const Pen& pen, const picture::ClockFace& face, const Box& box) {
    double dial = 0, disc = 0;
    for (const auto& shape : picture::draw(face, box, pen.canvas().lettering)) {
        if (const auto* ring = std::get_if<picture::Ring>(&shape); ring != nullptr && ring->ink == Ink::Cornea)
            dial = std::max(dial, ring->radius);
        if (const auto* of = std::get_if<picture::Disc>(&shape); of != nullptr && of->ink == Ink::AccentFill)
            disc = std::max(disc, of->radius);
    }
    return dial >= 2 * disc;
}

/// With its words where it can be read beside them, else the hours alone, as from afar.
picture::ClockFace face_for(const Pen& pen, const picture::ClockFace& face, const Box& box) {
    picture::ClockFace made = face;
    if (!face.next.empty() && !reads(pen, face, box)) made.seat_label = made.nasal_label = made.temporal_label = {};
    return made;
}

}  // namespace

void draw_picture(Pen& pen, const Picture& picture, const Box& box) {
    const auto& lettering = pen.canvas().lettering;
    std::visit(measure::overloaded{
                   [](const std::monostate&) {},
                   [&](const picture::ClockFace& face) { pen.add(picture::draw(face_for(pen, face, box), box, lettering)); },
                   [&](const picture::WallSection& section) { pen.add(picture::draw(section, box, lettering)); },
                   [&](const picture::OpenEye& eye) { pen.add(picture::draw(eye, box, lettering)); },
               },
               picture);
}

bool points_to_next(const Picture& picture) {
    const auto* face = std::get_if<picture::ClockFace>(&picture);
    return face != nullptr && !face->next.empty();
}

bool hand_seen(const Pen& pen, const Picture& picture, const Box& box) {
    return reads(pen, face_for(pen, std::get<picture::ClockFace>(picture), box), box);
}

}  // namespace screen
