// Small drawing words shared by the views: text, blocks of text, icons. A view sets boxes; sizes and colours stand here and
// in target_draw.
#pragma once

#include "picture/wrap.hpp"
#include "screen/frame.hpp"

#include <initializer_list>

namespace screen {

using picture::Align;
using picture::Box;
using picture::Ink;
using picture::Point;
using picture::Type;

/// Text broken into lines in one role.
struct Block {
    std::vector<std::string> lines{};
    Type type{};
    double width = 0, height = 0;  // from the first cap to under the last descender
    bool fits = true;              // no line wider, nor more lines, than was allowed
};

/// How a text may be set: the roles to try, biggest first, the room, and the most lines.
struct Room {
    double width = 0, height = 1e9;
    std::size_t most_lines = 2;
    bool typed = false;  // by a person: a word without an end is broken
};

enum class Icon { Tick, Circle, Dot, Triangle, Octagon, Muted };

class Pen {
public:
    explicit Pen(const Canvas& canvas) : canvas_(canvas) {}

    const Canvas& canvas() const { return canvas_; }
    double cap(Type type) const { return canvas_.lettering.cap(type); }
    double pitch(Type type) const { return picture::pitch(type, canvas_.lettering); }
    double width(Type type, const std::string& text) const { return canvas_.lettering.width(type, text); }
    /// The gap between things, and the margin of the glass.
    double gap() const;

    /// The first role in which the text fits the room; the last role, marked, where none does.
    Block block(const std::string& text, std::initializer_list<Type> roles, const Room& room) const;

    void add(picture::Shape shape) { frame_.shapes.push_back(std::move(shape)); }
    void add(const picture::Shapes& shapes) { frame_.shapes.insert(frame_.shapes.end(), shapes.begin(), shapes.end()); }
    /// The heart in a narrow box: two places, one above the other, the full one changing with each beat, so that a picture that
    /// stands still is seen to.
    void heart(const Box& box, bool beat);
    void panel(const Box& box, Ink fill) { add(picture::Panel{.box = box, .radius = 2, .fill = fill, .edge = fill}); }
    /// `at` is the top left, top middle or top right of the text.
    void text(Point at, const std::string& text, Type type, Ink ink, Align align = Align::Left);
    void text(Point at, const Block& block, Ink ink, Align align = Align::Left);
    void icon(Icon icon, const Box& box, Ink ink, Ink on);
    void touch(const Target& target, const Box& box) { frame_.touchables.push_back({target, box}); }
    void falls_short(const std::string& what) { frame_.short_of.push_back(what); }
    void gives_way(const std::string& what) { frame_.gave_way.push_back(what); }

    Frame take() { return std::move(frame_); }

private:
    const Canvas& canvas_;
    Frame frame_{};
};

/// How bad it is, as ink and as sign: nothing is told by colour alone. A notice has no sign.
Ink level_ink(Banner::Level level);
void level_sign(Pen& pen, Banner::Level level, const Box& box, Ink on);
/// A text with a sign of its letters' height on its left, in the biggest role in which both take no more height than the text alone in the
/// biggest; where there is none such, the text alone.
struct BesideSign {
    Block block{};
    double sign = 0;  // side of the sign's box; none: no sign
    double indent() const { return sign * 1.4; }
};
BesideSign beside_sign(const Pen& pen, const std::string& text, std::initializer_list<Type> roles, const Room& room);

/// A row of boxes of even width side by side.
Box part(const Box& row, int i, int n, double gap);
/// The box mirrored in `within`: the left-handed place of a right-handed one.
Box mirrored(const Box& box, const Box& within);
Box inset(const Box& box, double by);

}  // namespace screen
