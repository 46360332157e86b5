#include "voice.hpp"

#include "device/files.hpp"

#include <spdlog/spdlog.h>

namespace graftside {

Voice::Voice(const Options& options, const Stock& stock) : folder_(stock.assets + "/voice/" + stock.language), speaker_(device::silence()) {
    if (!stock.unit.sound.on) return;
    if (!options.voice.empty()) {
        speaker_ = device::recorder(options.voice);
        return;
    }
    auto opened = device::loudspeaker();
    if (opened)
        speaker_ = *std::move(opened);
    else
        trouble_ = device::text(opened.error());
}

const device::Clip* Voice::clip(const screen::PhraseId& id) {
    const auto known = clips_.find(id);
    if (known != clips_.end()) return &known->second;
    constexpr std::string_view awake = "awake-";  // the mild words where there are any, else the usual ones
    const bool usual = id.starts_with(awake) && !device::exists(folder_ + "/" + id + ".wav");
    auto read = device::read_wav(folder_ + "/" + (usual ? id.substr(awake.size()) : id) + ".wav");
    if (read) return &clips_.emplace(id, *std::move(read)).first->second;
    if (missing_.insert(id).second) spdlog::warn("cannot be said: {}", device::text(read.error()));
    return nullptr;
}

bool Voice::say(const screen::PhraseIds& ids, double loudness) {
    std::vector<device::Clip> clips{};
    for (const screen::PhraseId& id : ids) {
        const device::Clip* one = clip(id);
        if (one == nullptr) return false;
        clips.push_back(*one);
    }
    if (!clips.empty() && loudness > 0) speaker_->say(clips, loudness);
    return true;
}

}  // namespace graftside
