#include "pedal.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace graftside {
namespace {

using device::KeyName;

constexpr std::pair<KeyName, const char*> names[] = {
    {KeyName::Enter, "Enter"},   {KeyName::Escape, "Escape"}, {KeyName::Backspace, "Backspace"}, {KeyName::Delete, "Delete"},
    {KeyName::Insert, "Insert"}, {KeyName::Tab, "Tab"},       {KeyName::Space, "Space"},         {KeyName::Left, "Left"},
    {KeyName::Right, "Right"},   {KeyName::Up, "Up"},         {KeyName::Down, "Down"},           {KeyName::Home, "Home"},
    {KeyName::End, "End"},       {KeyName::PageUp, "PageUp"}, {KeyName::PageDown, "PageDown"},
};

/// As a unit's file calls it.
std::string name(const device::Key& key) {
    if (key.name == KeyName::Function) return "F" + std::to_string(key.function);
    if (key.name == KeyName::Letter) return {key.letter};
    const auto* const found = std::find_if(std::begin(names), std::end(names), [&](const auto& one) { return one.first == key.name; });
    return found == std::end(names) ? "" : found->second;
}

}  // namespace

bool Pedal::is(const device::Key& key) const { return !set_.key.empty() && name(key) == set_.key; }

Pedal::Press Pedal::press(const device::Key& key) {
    if (key.repeated) return Press::HeldDown;
    if (last_ms_ && key.time_ms - *last_ms_ < set_.bounce_ms) return Press::Bounced;
    last_ms_ = key.time_ms;
    return Press::Counts;
}

}  // namespace graftside
