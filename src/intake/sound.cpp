#include "intake/sound.hpp"

namespace intake {

Rule<Sound::Sutures> sutures_said() {
    using Sutures = Sound::Sutures;
    return one_of<Sutures>({{"from-fifth", Sutures::FromFifth}, {"every", Sutures::Every}, {"none", Sutures::None}});
}

std::optional<int> read_suction_every(Fields& fields) {
    const auto seconds = fields.optional("suction_every_s", whole(15, 600));
    if (seconds.value_or(0) % 15 != 0) fields.wrong("suction_every_s", "a multiple of 15, from 15 to 600");
    return seconds;
}

}  // namespace intake
