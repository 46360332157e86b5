#include "intake/reading.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

namespace intake {

void Report::add(Place at, std::string key, std::string found, std::string allowed) {
    problems_.push_back({.file = file_,
                         .line = at.line,
                         .column = at.column,
                         .key = std::move(key),
                         .found = std::move(found),
                         .allowed = std::move(allowed)});
}

Problems Report::sorted() const {
    Problems all = problems_;
    std::ranges::stable_sort(all, {}, [](const measure::Problem& p) { return Place{.line = p.line, .column = p.column}; });
    return all;
}

const Entry* Fields::find(std::string_view key) const {
    const auto& entries = *std::get_if<Table>(&table_->value);
    const auto entry = std::ranges::find(entries, key, &Entry::key);
    return entry == entries.end() ? nullptr : &*entry;
}

const Entry* Fields::take(std::string_view key) {
    if (std::ranges::find(asked_, key) == asked_.end()) asked_.emplace_back(key);
    return find(key);
}

const List* Fields::list_nodes(std::string_view key, const std::string& allowed) {
    const Entry* entry = take(key);
    if (entry == nullptr) return nullptr;
    const auto* nodes = std::get_if<List>(&entry->node.value);
    if (nodes == nullptr) wrong(key, allowed);
    return nodes;
}

Place Fields::at(std::string_view key) const {
    const Entry* entry = find(key);
    return entry == nullptr ? table_->at : entry->node.at;
}

std::string Fields::path_of(std::string_view key) const {
    const std::string own = one_line(key);
    return path_.empty() ? own : path_ + "." + own;
}

bool Fields::is_empty_list(std::string_view key) const {
    const Entry* entry = find(key);
    const auto* nodes = entry == nullptr ? nullptr : std::get_if<List>(&entry->node.value);
    return nodes != nullptr && nodes->empty();
}

std::string Fields::element_path(std::string_view key, std::size_t index) const { return fmt::format("{}[{}]", path_of(key), index + 1); }

void Fields::missing(std::string_view key, const std::string& allowed) { report_->add(table_->at, path_of(key), "nothing", allowed); }

void Fields::wrong(std::string_view key, const std::string& allowed) {
    const Entry* entry = find(key);
    if (entry == nullptr) return missing(key, allowed);
    report_->add(entry->node.at, path_of(key), shown(entry->node), allowed);
}

void Fields::exactly_one(std::initializer_list<std::string_view> keys) {
    std::vector<const Entry*> there;
    for (std::string_view key : keys) {
        if (const Entry* entry = find(key)) there.push_back(entry);
    }
    const std::string allowed = fmt::format("exactly one of {}", fmt::join(keys, ", "));
    if (there.empty()) return missing(*keys.begin(), allowed);
    std::ranges::sort(there, {}, &Entry::at);
    for (std::size_t i = 1; i < there.size(); ++i) {
        report_->add(there[i]->at, path_of(there[i]->key), there.front()->key + " as well", allowed);
    }
}

void Fields::finish() {
    for (const Entry& entry : *std::get_if<Table>(&table_->value)) {
        if (std::ranges::find(asked_, entry.key) != asked_.end()) continue;
        report_->add(entry.at, path_of(entry.key), "an unknown key", fmt::format("{}", fmt::join(asked_, ", ")));
    }
}

}  // namespace intake
