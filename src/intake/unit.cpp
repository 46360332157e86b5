#include "intake/unit.hpp"

#include "intake/reading.hpp"
#include "intake/scan_parts.hpp"

#include <set>

namespace intake {
namespace {

Rule<Glass> glass() {
    constexpr Range side{.low = 50, .high = 3000};
    const Rule<measure::Length> length = millimetres(side);
    return {.allowed = "[width, height], each " + length.allowed, .read = [length](const Node& node) -> std::optional<Glass> {
                const auto* sides = std::get_if<List>(&node.value);
                if (sides == nullptr || sides->size() != 2) return std::nullopt;
                const auto width = length.read((*sides)[0]);
                const auto height = length.read((*sides)[1]);
                return width && height ? std::optional(Glass{.width = *width, .height = *height}) : std::nullopt;
            }};
}

void read_counts(Fields& root, std::vector<guide::CountItem>& counts) {
    std::set<std::string> ids;
    root.tables("count", [&](Fields& fields) {
        guide::CountItem item{.id = fields.required("id", id()), .title = fields.required("title", line(28))};
        if (!item.id.empty() && !ids.insert(item.id).second) fields.wrong("id", "each id once");
        counts.push_back(std::move(item));
    });
    if (!root.has("count")) root.missing("count", "at least one [[count]] with id and title");
    if (root.is_empty_list("count")) root.wrong("count", "at least one [[count]] with id and title");
}

/// A GTIN as a symbol has it: 14 digits, shorter ones with zeros before them.
Rule<std::string> gtin() {
    constexpr std::size_t length = 14;
    return {.allowed = "14 digits in quotes, the last their check digit (zeros before a shorter number)",
            .read = [](const Node& node) -> std::optional<std::string> {
                const auto* text = std::get_if<std::string>(&node.value);
                if (text == nullptr || text->size() != length || !scan::all(*text, scan::is_digit)) return std::nullopt;
                return scan::gs1_check_holds(*text) ? std::optional(*text) : std::nullopt;
            }};
}

void read_packs(Fields& root, std::vector<guide::Pack>& packs) {
    std::set<std::string> numbers;
    root.tables("pack", [&](Fields& fields) {
        guide::Pack pack{.gtin = fields.required("gtin", gtin()),
                         .instrument = fields.required("instrument", id()),
                         .size = fields.required("size_mm", millimetres({.low = 1, .high = 12}))};
        if (!pack.gtin.empty() && !numbers.insert(pack.gtin).second) fields.wrong("gtin", "each number once");
        packs.push_back(std::move(pack));
    });
}

void read_names(Fields& fields, guide::Unit& unit) {
    unit.scrub_name = fields.optional("scrub", line(28)).value_or(unit.scrub_name);
    unit.circulating_name = fields.optional("circulating", line(28)).value_or(unit.circulating_name);
    if (unit.scrub_name == unit.circulating_name) fields.wrong("circulating", "another name than the scrub nurse's: two people count");
}

void read_limits(Fields& fields, plan::Limits& limits) {
    limits.clearance = fields.optional("clearance_mm", millimetres({.low = 0, .high = 5}));
    limits.endothelium_per_mm2 = fields.optional("endothelium_per_mm2", whole(0, 10'000));
}

std::vector<measure::Length> sizes(Fields& fields, std::string_view key) {
    std::vector<measure::Length> found;
    for (const auto& [size, at] : fields.list(key, millimetres({.low = 1, .high = 12}))) found.push_back(size);
    return found;
}

void read_stock(Fields& fields, plan::Limits& limits) {
    limits.hosts_in_stock = sizes(fields, "host_mm");
    limits.donors_in_stock = sizes(fields, "donor_mm");
}

void read_sound(Fields& fields, Sound& sound) {
    sound.on = fields.optional("on", flag()).value_or(sound.on);
    sound.volume = fields.optional("volume", whole(0, 100)).value_or(sound.volume);
    sound.sutures = fields.optional("sutures", sutures_said()).value_or(sound.sutures);
    sound.suction_every_s = read_suction_every(fields);
    sound.awake = fields.optional("patient", one_of<bool>({{"asleep", false}, {"awake", true}})).value_or(sound.awake);
}

/// Keys that nobody types with.
std::set<std::string> keys_apart() {
    std::set<std::string> keys{"PageUp", "PageDown", "Home", "End", "Insert"};
    for (int n = 1; n <= 24; ++n) keys.insert("F" + std::to_string(n));
    return keys;
}

Rule<std::string> pedal_key() {
    return {.allowed =
                "F1 to F24, PageUp, PageDown, Home, End, Insert; or, without a Desk, a letter A to Z, a digit, Space, Enter, Tab, "
                "Escape, Backspace, Delete, Left, Right, Up, Down",
            .read = [](const Node& node) -> std::optional<std::string> {
                const std::set<std::string> typed{"Space", "Enter", "Tab", "Escape", "Backspace", "Delete", "Left", "Right", "Up", "Down"};
                const auto* key = std::get_if<std::string>(&node.value);
                if (key == nullptr || key->empty()) return std::nullopt;
                const bool sign = key->size() == 1 && (scan::is_digit(key->front()) || (key->front() >= 'A' && key->front() <= 'Z'));
                return sign || typed.contains(*key) || keys_apart().contains(*key) ? std::optional(*key) : std::nullopt;
            }};
}

void read_foot_switch(Fields& fields, FootSwitch& pedal) {
    pedal.key = fields.required("key", pedal_key());
    pedal.bounce_ms = fields.optional("bounce_ms", whole(50, 1000)).value_or(pedal.bounce_ms);
}

}  // namespace

bool also_typed(const FootSwitch& pedal) { return !pedal.key.empty() && !keys_apart().contains(pedal.key); }

measure::Result<UnitFile, Problems> read_unit(std::string_view text, const std::string& name) {
    return read_file(text, name, [](Fields& root) {
        UnitFile file;
        file.language = root.optional("language", line(20)).value_or(file.language);
        file.theme = root.optional("theme", one_of<Theme>({{"dark", Theme::Dark}, {"light", Theme::Light}})).value_or(file.theme);
        file.hand = root.optional("hand", one_of<Hand>({{"right", Hand::Right}, {"left", Hand::Left}})).value_or(file.hand);
        file.surgeon_file = root.optional("surgeon_file", line(80)).value_or("");
        const auto set_ups = one_of<SetUp>({{"draped", SetUp::Draped}, {"undraped", SetUp::Undraped}});
        file.set_up = root.optional("set_up", set_ups).value_or(file.set_up);
        using guide::Source;
        const auto holders = one_of<Source>({{"table", Source::Table}, {"desk", Source::Desk}, {"foot-switch", Source::FootSwitch}});
        file.holder = root.optional("holder", holders).value_or(file.holder);
        root.table("screens_mm", [&](Fields& fields) {
            file.table = fields.optional("table", glass());
            file.desk = fields.optional("desk", glass());
            file.far = fields.optional("far", glass());
        });
        read_counts(root, file.unit.counts);
        read_packs(root, file.unit.packs);
        root.table("names", [&](Fields& fields) { read_names(fields, file.unit); });
        root.table("sound", [&](Fields& fields) { read_sound(fields, file.sound); });
        root.table("foot_switch", [&](Fields& fields) { read_foot_switch(fields, file.foot_switch); });
        root.table("limits", [&](Fields& fields) { read_limits(fields, file.unit.limits); });
        root.table("stock", [&](Fields& fields) { read_stock(fields, file.unit.limits); });
        return file;
    });
}

}  // namespace intake
