// The names that stand in braces in a procedure's and a language's wording, for what the program puts in.
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <vector>

namespace intake {

/// Figures and words of the case: see the procedure file's own comments.
inline constexpr std::array<std::string_view, 9> placeholders{"eye",     "host",   "donor", "raise", "planned",
                                                              "sutures", "spokes", "lower", "aim"};

/// The names in braces, in order; nothing when a brace stands alone.
std::optional<std::vector<std::string_view>> names_in_braces(std::string_view text);
bool is_placeholder(std::string_view name);

}  // namespace intake
