// The words of a card as pieces that stand one under the other: title, what to do, rows, words said aloud, cautions,
// foot. Each knows its height, so that the card can leave out what is secondary before it draws.
#pragma once

#include "screen/pen.hpp"

#include <functional>

namespace screen {

struct Piece {
    enum class Kind { Needed, Title, Caution, Line, Say, Hint, Foot } kind{};  // the foot gives way first; what is needed never goes
    double height = 0, after = 0;                                              // with the space after it, which the last one needs not
    std::function<void(double y)> draw{};
    std::string text{};  // said when it had to go and is missed
};
using Pieces = std::vector<Piece>;

/// The roles a card speaks in, biggest voice first: the roomy one where there is nothing but words and they go in, one size between.
/// What to do when something went otherwise is sentences alone.
struct Voice {
    Type line = Type::Text, say = Type::Strong, sentence = Type::Strong, label = Type::Text, value = Type::Strong;
    bool short_foot = false;  // label and value in one line
    bool close = false;       // sentences with less between them
    Type title = Type::Title;
};
inline constexpr Voice roomy{Type::Lead, Type::Title, Type::Title, Type::Lead, Type::Title}, between{Type::Lead, Type::Strong, Type::Lead};
/// What to do when something went otherwise, where a large glass has the room: read by more people than stand at it.
inline constexpr Voice loud{.sentence = Type::Display, .title = Type::Display};
/// Where else something would have to go: sentences in the usual letters, close together, under a title that is smaller still.
inline constexpr Voice low{.sentence = Type::Text, .short_foot = true, .close = true},
    lowest{.sentence = Type::Text, .short_foot = true, .close = true, .title = Type::Strong};

/// A card that has rows and none of them a label.
bool sentences_alone(const Card& card);

/// Without the space after the last piece.
double height_of(const Pieces& pieces);
Pieces card_pieces(Pen& pen, const Card& card, const Box& box, const Voice& voice);

}  // namespace screen
