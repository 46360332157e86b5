#include "past_shelf.hpp"

#include "device/files.hpp"
#include "ledger/archive.hpp"
#include "ledger/fact_fields.hpp"
#include "open_case.hpp"

#include <map>
#include <string_view>

// The fields of a summary in the side file, in the manner of the ledger's own.
namespace past {

void each(auto& field, ledger::a<Timed> auto& v) {
    field("id", v.id);
    field("ms", v.ms);
    field("exact", v.exact);
}

void each(auto& field, ledger::a<Cut> auto& v) {
    field("end", v.end);
    field("seatings", v.seatings);
    field("position", v.position);
    field("planned", v.planned);
    field("travel_nm", v.travel);
    field("thinnest_nm", v.thinnest);
    field("depth_nm", v.depth);
}

void each(auto& field, ledger::a<Held> auto& v) {
    field("item", v.item);
    field("used", v.used);
}

void each(auto& field, ledger::a<Summary> auto& v) {
    field("reference", v.reference);
    field("day", v.day);
    field("side", v.side);
    field("reason", v.reason);
    field("invented", v.invented);
    field("trephine", v.trephine);
    field("host_nm", v.host);
    field("donor_nm", v.donor);
    field("end", v.end);
    field("times", v.times);
    field("cut", v.cut);
    field("departures", v.departures);
    field("counts", v.counts);
    field("counts_differed", v.counts_differed);
    field("items", v.items);
}

}  // namespace past

namespace graftside {
namespace {

/// Raised when a summary holds more, or means something else by the same name: lines of another form are made again.
constexpr std::string_view form = "3";
constexpr std::size_t largest = std::size_t{1} << 30;  // bytes; a case takes about one KiB

std::string shelf_path(const ledger::Ledger& ledger) { return ledger.path() + ".past"; }

/// Each line: last hash of the record, form, summary, parted by tabs. By hash, the summary unread.
std::map<std::string_view, std::string_view> lines_by_hash(std::string_view text) {
    constexpr std::size_t hash_digits = 64;
    std::map<std::string_view, std::string_view> lines{};
    for (std::size_t end = text.find('\n'); end != std::string_view::npos; end = text.find('\n')) {
        const std::string_view line = text.substr(0, end);
        const std::size_t before = hash_digits + 1 + form.size() + 1;
        if (line.size() > before && line[hash_digits] == '\t' && line.substr(hash_digits + 1, form.size()) == form) {
            lines[line.substr(0, hash_digits)] = line.substr(before);
        }
        text.remove_prefix(end + 1);
    }
    return lines;
}

std::optional<past::Summary> read(std::string_view json) {
    const ledger::Json parsed = ledger::Json::parse(json, nullptr, false);
    if (parsed.is_discarded()) return std::nullopt;
    past::Summary summary{};
    ledger::Reader reader(parsed);
    each(reader, summary);
    return reader.good() ? std::optional(std::move(summary)) : std::nullopt;
}

std::string written(const past::Summary& summary) {
    ledger::Writer writer;
    each(writer, summary);
    return std::move(writer).done().dump();
}

}  // namespace

Try<std::vector<past::Summary>> summaries(const ledger::Ledger& ledger) {
    const auto kept = device::read_file(shelf_path(ledger), largest);
    const auto lines = kept ? lines_by_hash(*kept) : decltype(lines_by_hash(""))();
    std::vector<past::Summary> all{};
    std::string shelf{};
    bool made_new = false;
    for (const ledger::End& end : ledger.ends()) {
        const auto line = lines.find(end.hash);
        auto known = line == lines.end() ? std::nullopt : read(line->second);
        if (!known) {
            const auto events = ledger.load(end.reference);
            if (!events) return stop(events.error());
            known = past::summary(guide::fold(*events));
            made_new = made_new || known->end;
        }
        if (known->end)
            shelf +=
                end.hash + "\t" + std::string(form) + "\t" + (line == lines.end() ? written(*known) : std::string(line->second)) + "\n";
        all.push_back(*std::move(known));
    }
    // What cannot be kept is made again the next time: that costs time and nothing else.
    if (made_new) static_cast<void>(static_cast<bool>(device::write_file(shelf_path(ledger), shelf)));
    return all;
}

}  // namespace graftside
