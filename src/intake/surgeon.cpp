#include "intake/surgeon.hpp"

#include "intake/case_rules.hpp"
#include "intake/case_words.hpp"
#include "intake/reading.hpp"

namespace intake {
namespace {

std::optional<plan::Aim> read_aim(Fields& root) {
    const auto permille = root.optional("share", aim_share());
    const auto spokes = root.optional("spokes", own_spokes());
    const auto goal = root.optional("goal", aim_goal());
    if (!root.has("share") && !root.has("spokes") && !root.has("goal")) return std::nullopt;
    root.exactly_one({"share", "spokes", "goal"});
    if (goal) return plan::Aim{.goal = *goal};
    if (spokes) return plan::Aim{.goal = plan::Goal::Spokes, .spokes = *spokes};
    return plan::Aim{.goal = plan::Goal::Share, .share_permille = permille.value_or(0)};
}

}  // namespace

Sound heard_by(const SurgeonFile& surgeon, Sound sound) {
    sound.volume = surgeon.volume.value_or(sound.volume);
    sound.sutures = surgeon.say_sutures.value_or(sound.sutures);
    if (surgeon.suction_every_s) sound.suction_every_s = surgeon.suction_every_s;
    return sound;
}

measure::Result<SurgeonFile, Problems> read_surgeon(std::string_view text, const std::string& name) {
    return read_file(text, name, [](Fields& root) {
        SurgeonFile file{.surgeon = root.required("surgeon", line(28))};
        file.seat = root.optional("seat", one_of<eye::Seat>(seat_words()));
        file.pattern = root.optional("pattern", suture_pattern());
        file.first = root.optional("first", clock_hour());
        file.aim = read_aim(root);
        file.language = root.optional("language", line(20));
        file.volume = root.optional("volume", whole(0, 100));
        file.say_sutures = root.optional("say_sutures", sutures_said());
        file.suction_every_s = read_suction_every(root);
        return file;
    });
}

}  // namespace intake
