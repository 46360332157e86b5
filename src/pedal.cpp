#include "pedal.hpp"

namespace graftside {
namespace {

std::string name(const device::Key& key) {
    using device::KeyName;
    if (key.name == KeyName::Function) return "F" + std::to_string(key.function);
    if (key.name == KeyName::PageUp) return "PageUp";
    if (key.name == KeyName::PageDown) return "PageDown";
    if (key.name == KeyName::Home) return "Home";
    return key.name == KeyName::End ? "End" : "";
}

}  // namespace

bool Pedal::is(const device::Key& key) const { return !set_.key.empty() && name(key) == set_.key; }

bool Pedal::counts(const device::Key& key) {
    if (key.repeated) return false;
    const bool bounced = last_ms_ && key.time_ms - *last_ms_ < set_.bounce_ms;
    if (!bounced) last_ms_ = key.time_ms;
    return !bounced;
}

}  // namespace graftside
