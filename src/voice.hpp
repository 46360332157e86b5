// The voice: phrases by their ids to the loudspeaker, or to whatever stands in for it. What cannot be said is told once in the log,
// to whoever asked, and stops nothing.
#pragma once

#include "device/sound.hpp"
#include "screen/callouts.hpp"
#include "stock.hpp"

#include <map>
#include <memory>
#include <set>

namespace graftside {

class Voice {
public:
    /// Silent unless the unit has switched sound on.
    Voice(const Options& options, const Stock& stock);
    /// Why nothing can be heard; empty when all is well.
    const std::string& trouble() const { return trouble_; }
    /// False when a part of it has no sound: what is not whole is not said at all.
    bool say(const screen::PhraseIds& ids, double loudness);

private:
    const device::Clip* clip(const screen::PhraseId& id);

    std::string folder_;
    std::unique_ptr<device::Speaker> speaker_;
    std::map<screen::PhraseId, device::Clip> clips_{};
    std::set<screen::PhraseId> missing_{};
    std::string trouble_{};
};

}  // namespace graftside
