#include "ledger/mirror.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <array>
#include <charconv>

namespace ledger {
namespace {

std::string escaped(std::string_view text) {
    std::string made;
    for (char c : text) {
        if (c == '\t')
            made += "\\t";
        else if (c == '\n')
            made += "\\n";
        else if (c == '\\')
            made += "\\\\";
        else
            made += c;
    }
    return made;
}

std::string unescaped(std::string_view text) {
    std::string made;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] != '\\' || i + 1 == text.size()) {
            made += text[i];
            continue;
        }
        ++i;
        made += text[i] == 't' ? '\t' : text[i] == 'n' ? '\n' : text[i];
    }
    return made;
}

/// The part up to the next tab, taken off the front.
std::string_view take(std::string_view& line) {
    const auto end = line.find('\t');
    const auto part = line.substr(0, end);
    line.remove_prefix(end == std::string_view::npos ? line.size() : end + 1);
    return part;
}

template <class T>
bool number(std::string_view text, T& into) {
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), into);
    return error == std::errc{} && end == text.data() + text.size();
}

template <class F>
void each_line(std::string_view text, F&& use) {
    for (auto end = text.find('\n'); end != std::string_view::npos; end = text.find('\n')) {
        use(text.substr(0, end));
        text.remove_prefix(end + 1);
    }
}

/// Place in the ledger of the last line that the ledger knows, 0 if it knows none.
std::int64_t last_known(sqlite3* db, std::string_view text) {
    while (!text.empty()) {
        const auto start = text.substr(0, text.size() - 1).rfind('\n');
        const auto line = start == std::string_view::npos ? text : text.substr(start + 1);
        const auto row = line.ends_with('\n') ? row_of_line(line.substr(0, line.size() - 1)) : std::nullopt;
        if (const auto id = row ? id_of(db, *row) : std::nullopt) return *id;
        text.remove_suffix(line.size());
    }
    return 0;
}

}  // namespace

std::string mirror_line(const Row& row) {
    return hex(row.hash) + '\t' + escaped(row.reference) + '\t' + std::to_string(row.seq) + '\t' + measure::rfc3339(row.at) + '\t' +
           std::to_string(row.at.boottime_ms) + '\t' + std::to_string(row.at.boot) + '\t' + row.who + '\t' + row.tag + '\t' + row.body +
           '\n';
}

std::optional<Row> row_of_line(std::string_view line) {
    Row row;
    if (!from_hex(take(line), row.hash)) return std::nullopt;
    row.reference = unescaped(take(line));
    if (!number(take(line), row.seq)) return std::nullopt;
    const auto at = measure::instant_from_rfc3339(take(line));
    if (!at) return std::nullopt;
    row.at = *at;
    if (!number(take(line), row.at.boottime_ms) || !number(take(line), row.at.boot)) return std::nullopt;
    row.who = take(line);
    row.tag = take(line);
    row.body = line;
    return row;
}

std::vector<Row> rows_beyond(std::string_view mirror, Tails tails) {
    std::vector<Row> beyond;
    each_line(mirror, [&](std::string_view line) {
        auto row = row_of_line(line);
        if (!row) return;
        Tail& tail = tails[row->reference];
        row->prev = tail.hash;
        if (fault(*row, tail)) return;  // known already, or of another chain
        tail = {.seq = row->seq, .hash = row->hash};
        beyond.push_back(*std::move(row));
    });
    return beyond;
}

std::optional<Failure> Mirror::mend(sqlite3* db) {
    behind_ = true;
    const bool fresh = ::access(path_.c_str(), F_OK) != 0;
    file_ = File(::open(path_.c_str(), O_CREAT | O_WRONLY | O_APPEND | O_CLOEXEC, 0600));
    if (!file_) return system_failure(Failure::What::CannotWrite, path_);
    if (fresh) sync_folder_of(path_);
    const auto text = read_all(path_);
    if (!text) return text.error();
    const Rows missing = rows_after(db, path_, last_known(db, *text));
    if (missing.failure) return missing.failure;
    std::string lines = text->empty() || text->ends_with('\n') ? "" : "\n";  // a line torn off stays, ended, for people to see
    for (const Row& row : missing.rows) lines += mirror_line(row);
    if (!lines.empty())
        if (auto failed = write_through(file_, lines, path_)) return failed;
    behind_ = false;
    return std::nullopt;
}

std::optional<Failure> Mirror::add(sqlite3* db, std::span<const Row> rows) {
    if (behind_) return mend(db);  // writes these rows too
    std::string lines;
    for (const Row& row : rows) lines += mirror_line(row);
    auto failed = write_through(file_, lines, path_);
    behind_ = failed.has_value();
    return failed;
}

}  // namespace ledger
