#include "picture/clock_face.hpp"

#include "picture/bounds.hpp"
#include "picture/wrap.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace picture {

namespace {

constexpr double rim_gap = 1.8;  // between the rim and what stands outside it
constexpr double cut_share = 0.66;

struct Dial {
    Point centre{};
    double r = 0;
    double turn_of(const ClockFace& face, measure::Angle at) const { return eye::surgeon_from_eye(at, face.side, face.seat).deg(); }
    Point at(double share, double deg) const { return on_circle(centre, r * share, deg); }
};

Type hour_type(int hour) { return hour % 3 == 0 ? Type::Title : Type::Text; }

/// Where nasal and temporal stand: in line with the hour, under it, or in the corners at the bottom of a narrow box.
enum class Words { InLine, Under, Corners };

bool worded(const ClockFace& face) { return !face.seat_label.empty(); }

bool words_at_the_sides(const ClockFace& face) { return worded(face) && face.seat == eye::Seat::Head; }

double word_width(const ClockFace& face, const Lettering& lettering) {
    if (!words_at_the_sides(face)) return 0;
    return std::max(lettering.width(Type::Text, face.nasal_label), lettering.width(Type::Text, face.temporal_label));
}

/// What stands under the bottom hour: where the surgeon sits, and with a temporal seat the word temporal too.
std::vector<std::string> seat_lines(const ClockFace& face, double width, const Lettering& lettering) {
    if (!worded(face)) return {};
    if (words_at_the_sides(face)) return wrap(face.seat_label, Type::Text, width, lettering);
    const std::string both = face.temporal_label + " · " + face.seat_label;
    if (lettering.width(Type::Text, both) <= width) return {both};
    return {face.temporal_label, face.seat_label};
}

struct Room {
    Dial dial{};
    Words words{};
    std::vector<std::string> seat{};
    Box box{};
    double corner_y = 0, seat_y = 0;  // baselines of words in the corners, and of where the surgeon sits
};

/// In the corners the words stand on the line under the bottom hour; the words of the seat share it where all three fit.
bool seat_shares_line(const ClockFace& face, const Box& box, const Lettering& lettering) {
    return box.w / 2 >= lettering.width(Type::Text, face.seat_label) / 2 + 2 * rim_gap + word_width(face, lettering);
}

/// Without words, and with 3 and 9 at the sides, the hours of two digits beside them reach out furthest, 30 degrees up or down.
double half_width_between_hours(double half, const Lettering& lettering) {
    constexpr double across = 0.866, up = 0.5;
    const double w = lettering.width(Type::Text, "10"), h = lettering.cap(Type::Text);
    const double beyond = across * (rim_gap + across * w / 2 + up * h / 2) + w / 2;
    return std::min(half - rim_gap - lettering.width(Type::Title, "9"), (half - beyond) / across);
}

/// The widest dial between words placed so.
double half_width(Words words, const ClockFace& face, const Box& box, const Lettering& lettering) {
    if (!worded(face) && face.seat == eye::Seat::Head) return half_width_between_hours(box.w / 2, lettering);
    const double digits = lettering.width(Type::Title, "12"), word = word_width(face, lettering), half = box.w / 2;
    switch (words) {
        case Words::InLine:
            return half - rim_gap - digits - (word > 0 ? rim_gap + word : 0);
        case Words::Under:
            return half - rim_gap - std::max(digits, word);
        case Words::Corners:
            return half >= rim_gap + word ? half - rim_gap - digits : 0;
    }
    return 0;
}

/// The dial as big as the box allows with the words placed so.
Room room_with(Words words, const ClockFace& face, const Box& box, const Lettering& lettering) {
    const double hour = lettering.cap(Type::Title) + rim_gap, line = pitch(Type::Text, lettering);
    Room made{.words = words, .seat = seat_lines(face, box.w, lettering), .box = box};
    const double own_line = words == Words::Corners && !seat_shares_line(face, box, lettering) ? line : 0;
    const double above = hour + (words_at_the_sides(face) || !worded(face) ? 0 : line);
    const double below = hour + own_line + line * static_cast<double>(made.seat.size()) + lettering.cap(Type::Text) * descent;
    const double r = std::max(0.0, std::min((box.h - above - below) / 2, half_width(words, face, box, lettering)));
    made.dial = {.centre = {box.centre().x, box.y + above + r + (box.h - above - below - 2 * r) / 2}, .r = r};
    made.corner_y = made.dial.centre.y + r + hour + line;
    made.seat_y = made.corner_y + own_line;
    return made;
}

/// The quieter place of the words wins unless the dial grows by a good part with the next.
Room room(const ClockFace& face, const Box& box, const Lettering& lettering) {
    Room best = room_with(Words::InLine, face, box, lettering);
    for (const auto words : {Words::Under, Words::Corners}) {
        if (!words_at_the_sides(face)) break;
        Room tried = room_with(words, face, box, lettering);
        if (tried.dial.r > best.dial.r * 1.08) best = std::move(tried);
    }
    return best;
}

void rim(Shapes& out, const Dial& dial) {
    out.push_back(
        Ring{.centre = dial.centre, .radius = dial.r * (1 + cut_share) / 2, .width = dial.r * (1 - cut_share), .ink = Ink::Tissue});
    out.push_back(Ring{.centre = dial.centre, .radius = dial.r, .width = 0.7, .ink = Ink::Cornea});
    out.push_back(Ring{.centre = dial.centre, .radius = dial.r * cut_share, .width = 0.5, .ink = Ink::Cornea, .dash = 0.6, .gap = 1.2});
}

bool taken(const ClockFace& face, measure::Angle at) {
    const auto near = [at](measure::Angle other) { return apart_centideg(at, other) < 100; };
    return std::any_of(face.done.begin(), face.done.end(), near) ||
           std::any_of(face.next.begin(), face.next.end(), [&](const ClockFace::Next& next) { return near(next.at); });
}

void marks(Shapes& out, const ClockFace& face, const Dial& dial) {
    for (int k = 1; k <= face.marks; ++k) {
        const auto at = eye::mark_angle(k, face.marks, face.mark_offset);
        if (taken(face, at)) continue;
        const double deg = dial.turn_of(face, at);
        out.push_back(Line{.a = dial.at(0.72, deg), .b = dial.at(0.93, deg), .width = std::max(0.5, dial.r * 0.011), .ink = Ink::Mark});
    }
    for (int k = 0; k < face.dots; ++k) {
        const double deg = dial.turn_of(face, eye::mark_angle(k + 1, face.dots, {}));
        out.push_back(Disc{.centre = dial.at(0.58, deg), .radius = std::max(0.8, dial.r * 0.025), .ink = Ink::Soft});
    }
}

void done(Shapes& out, const ClockFace& face, const Dial& dial) {
    for (const auto& at : face.done) {
        const double deg = dial.turn_of(face, at);
        out.push_back(Line{.a = dial.at(0.5, deg), .b = dial.at(0.9, deg), .width = std::max(1.0, dial.r * 0.026), .ink = Ink::Steel});
    }
}

struct Token {
    Point centre{};
    double radius = 0;
};

double token_radius(const std::string& text, Type type, const Lettering& lettering) {
    return std::hypot(lettering.width(type, text), lettering.cap(type)) / 2 + lettering.cap(type) * 0.35;
}

/// The disc of the second suture stands on its own ray, further in if the first is in its way; none where it cannot.
std::optional<Token> second_token(const Dial& dial, double deg, double radius, const Token& first) {
    for (const double share : {0.42, 0.3, 0.15, 0.0, -0.15, -0.3}) {
        const Point centre = dial.at(share, deg);
        const double apart = std::hypot(centre.x - first.centre.x, centre.y - first.centre.y);
        if (apart >= radius + first.radius + 0.8) return Token{centre, radius};
    }
    return std::nullopt;
}

void number(Shapes& out, const Token& token, const std::string& text, Type type, Ink ink, const Lettering& lettering) {
    out.push_back(Text{
        .at = {token.centre.x, token.centre.y + lettering.cap(type) / 2}, .text = text, .type = type, .ink = ink, .align = Align::Centre});
}

Token first_token(const ClockFace& face, const Dial& dial, const Lettering& lettering) {
    const double radius = token_radius(std::to_string(face.next[0].n), Type::Title, lettering);
    const double out = std::max(0.0, std::min(dial.r * 0.36, dial.r * cut_share - radius - 0.8));
    return {on_circle(dial.centre, out, dial.turn_of(face, face.next[0].at)), radius};
}

void next(Shapes& out, const ClockFace& face, const Dial& dial, const Lettering& lettering) {
    if (face.next.empty()) return;
    const Token now = first_token(face, dial, lettering);
    if (face.next.size() > 1) {
        const double deg = dial.turn_of(face, face.next[1].at);
        const std::string text = std::to_string(face.next[1].n);
        const auto token = second_token(dial, deg, token_radius(text, Type::Strong, lettering), now);
        const Point end = token ? token->centre : dial.at(0.5, deg);
        out.push_back(Line{.a = dial.at(0.97, deg), .b = end, .width = 0.8, .ink = Ink::Accent, .dash = 2, .gap = 1.6});
        if (token) {
            out.push_back(Disc{.centre = token->centre, .radius = token->radius, .ink = Ink::Raised});
            out.push_back(Ring{.centre = token->centre, .radius = token->radius, .width = 0.7, .ink = Ink::Accent});
            number(out, *token, text, Type::Strong, Ink::Text, lettering);
        }
    }
    const double deg = dial.turn_of(face, face.next[0].at);
    out.push_back(Line{.a = dial.at(0.97, deg), .b = now.centre, .width = std::max(2.0, dial.r * 0.055), .ink = Ink::Accent});
    out.push_back(Disc{.centre = now.centre, .radius = now.radius, .ink = Ink::AccentFill});
    out.push_back(Ring{.centre = now.centre, .radius = now.radius, .width = 0.8, .ink = Ink::Accent});
    number(out, now, std::to_string(face.next[0].n), Type::Title, Ink::OnAccent, lettering);
}

/// Numbers inside the ends of the sutures; every other one further in where neighbours would touch.
void numbered(Shapes& out, const ClockFace& face, const Dial& dial, const Lettering& lettering) {
    auto all = face.numbered;
    std::sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
    constexpr double outer = 0.42, inner = 0.28;
    const double wide = std::hypot(lettering.width(Type::Text, "24"), lettering.cap(Type::Text)) * 1.1;
    const bool crowded = static_cast<double>(all.size()) * wide > 2 * std::numbers::pi * outer * dial.r;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Point at = dial.at(crowded && i % 2 == 1 ? inner : outer, dial.turn_of(face, all[i].at));
        number(out, {at, 0}, std::to_string(all[i].n), Type::Text, Ink::Text, lettering);
    }
}

/// The centre of a label that clears the rim: its support towards the dial touches the tangent.
Point outside(const Dial& dial, double deg, double w, double h) {
    const Point unit = on_circle({}, 1, deg);
    const double out = dial.r + rim_gap + std::abs(unit.x) * w / 2 + std::abs(unit.y) * h / 2;
    return on_circle(dial.centre, out, deg);
}

using Labels = std::vector<Text>;

Text hour_label(const ClockFace& face, const Dial& dial, int hour, const Lettering& lettering) {
    const Type type = hour_type(hour);
    Text made{.text = std::to_string(hour), .type = type, .ink = type == Type::Title ? Ink::Text : Ink::Soft, .align = Align::Centre};
    const double cap = lettering.cap(type), deg = dial.turn_of(face, eye::from_clock(hour, 0));
    const Point at = outside(dial, deg, lettering.width(type, made.text), cap);
    made.at = {at.x, at.y + cap / 2};
    return made;
}

Text side_word(const Room& room, const std::string& word, bool left, const Lettering& lettering) {
    const double cap = lettering.cap(Type::Text), title = lettering.cap(Type::Title), away = left ? -1 : 1;
    const Dial& dial = room.dial;
    Text made{.text = word, .type = Type::Text, .ink = Ink::Soft, .align = left ? Align::Right : Align::Left};
    switch (room.words) {
        case Words::InLine:
            made.at = {dial.centre.x + away * (dial.r + 2 * rim_gap + lettering.width(Type::Title, "12")), dial.centre.y + cap / 2};
            break;
        case Words::Under:
            made.at = {dial.centre.x + away * (dial.r + rim_gap), dial.centre.y + title / 2 + pitch(Type::Text, lettering)};
            break;
        case Words::Corners:
            made.at = {left ? room.box.x : room.box.right(), room.corner_y};
            made.align = left ? Align::Left : Align::Right;
            break;
    }
    return made;
}

Labels words(const ClockFace& face, const Room& room, const Lettering& lettering) {
    const Dial& dial = room.dial;
    Labels made;
    if (!worded(face)) return made;
    double y = room.seat_y;
    for (const auto& text : room.seat) {
        made.push_back({.at = {dial.centre.x, y}, .text = text, .type = Type::Text, .ink = Ink::Soft, .align = Align::Centre});
        y += pitch(Type::Text, lettering);
    }
    if (words_at_the_sides(face)) {
        const bool nasal_left = dial.turn_of(face, eye::nasal(face.side)) == 180;
        made.push_back(side_word(room, face.nasal_label, nasal_left, lettering));
        made.push_back(side_word(room, face.temporal_label, !nasal_left, lettering));
        return made;
    }
    const double above = dial.centre.y - dial.r - rim_gap - lettering.cap(Type::Title) - lettering.cap(Type::Text) * 0.6;
    made.push_back({.at = {dial.centre.x, above}, .text = face.nasal_label, .type = Type::Text, .ink = Ink::Soft, .align = Align::Centre});
    return made;
}

bool clear_of(const Text& text, const Labels& others, const Lettering& lettering) {
    const Box own = bounds(text, lettering);
    return std::none_of(others.begin(), others.end(), [&](const Text& other) { return overlap(own, bounds(other, lettering)); });
}

/// The quarter hours, then the words, then the other hours: on a small dial what would touch is left out, all of a kind.
Labels labels(const ClockFace& face, const Room& room, const Lettering& lettering) {
    Labels quarters, others;
    for (int hour = 1; hour <= 12; ++hour) (hour % 3 == 0 ? quarters : others).push_back(hour_label(face, room.dial, hour, lettering));
    Labels made = quarters;
    const auto add_all = [&](const Labels& more) {
        if (std::all_of(more.begin(), more.end(), [&](const Text& text) { return clear_of(text, made, lettering); })) {
            made.insert(made.end(), more.begin(), more.end());
        }
    };
    add_all(words(face, room, lettering));
    add_all(others);
    return made;
}

}  // namespace

Shapes draw(const ClockFace& face, const Box& box, const Lettering& lettering) {
    const Room made = room(face, box, lettering);
    Shapes out;
    rim(out, made.dial);
    marks(out, face, made.dial);
    done(out, face, made.dial);
    next(out, face, made.dial, lettering);
    numbered(out, face, made.dial, lettering);
    for (auto& label : labels(face, made, lettering)) out.push_back(std::move(label));
    return out;
}

}  // namespace picture
