// How a reader takes keys from a table: every key is asked for by name with a rule; what is wrong goes to a report with
// its place, and the keys never asked for are unknown. A reader goes on after a problem, so that all are told at once;
// the values it made are used only when the report stayed empty.
// Places: an unknown key at the key, a wrong value at the value, a missing key at its table's header.
#pragma once

#include "intake/document.hpp"
#include "intake/rules.hpp"

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace intake {

class Report {
public:
    explicit Report(std::string file) : file_(std::move(file)) {}
    void add(Place at, std::string key, std::string found, std::string allowed);
    bool empty() const { return problems_.empty(); }
    std::size_t size() const { return problems_.size(); }
    /// The value if nothing was wrong, else all problems sorted by place.
    template <class T>
    measure::Result<T, Problems> result(T value) const {
        if (problems_.empty()) return value;
        return sorted();
    }

private:
    Problems sorted() const;
    std::string file_;
    Problems problems_{};
};

/// One table while it is read.
class Fields {
public:
    /// `table` must hold a table and, like the report, outlive this.
    Fields(const Node& table, std::string path, Report& report) : table_(&table), path_(std::move(path)), report_(&report) {}

    /// A value that must be there; when it is missing or wrong that is reported and an empty value given.
    template <class T>
    T required(std::string_view key, const Rule<T>& rule) {
        if (find(key) == nullptr) missing(key, rule.allowed);
        return optional(key, rule).value_or(T{});
    }
    template <class T>
    std::optional<T> optional(std::string_view key, const Rule<T>& rule) {
        const Entry* entry = take(key);
        return entry == nullptr ? std::nullopt : checked(entry->node, path_of(key), rule);
    }
    /// The values of a list, each with its place; none when the key is absent.
    template <class T>
    std::vector<std::pair<T, Place>> list(std::string_view key, const Rule<T>& rule) {
        std::vector<std::pair<T, Place>> values;
        const List* nodes = list_nodes(key, "a list: " + rule.allowed);
        for (std::size_t i = 0; nodes != nullptr && i < nodes->size(); ++i) {
            const Node& node = (*nodes)[i];
            if (auto value = checked(node, element_path(key, i), rule)) values.emplace_back(*std::move(value), node.at);
        }
        return values;
    }
    /// Reads the table under a key; absent, it is not read.
    template <class Read>
    void table(std::string_view key, Read read) {
        const Entry* entry = take(key);
        if (entry == nullptr) return;
        read_table(entry->node, path_of(key), read);
    }
    template <class Read>
    void required_table(std::string_view key, const std::string& allowed, Read read) {
        if (find(key) == nullptr) missing(key, allowed);
        table(key, read);
    }
    /// Reads each table of a list under a key.
    template <class Read>
    void tables(std::string_view key, Read read) {
        const List* nodes = list_nodes(key, "a list of tables");
        for (std::size_t i = 0; nodes != nullptr && i < nodes->size(); ++i) read_table((*nodes)[i], element_path(key, i), read);
    }

    bool has(std::string_view key) const { return find(key) != nullptr; }
    /// The place of a key's value; of the table when the key is absent.
    Place at(std::string_view key) const;
    Place header() const { return table_->at; }
    const std::string& path() const { return path_; }
    std::string path_of(std::string_view key) const;
    bool is_empty_list(std::string_view key) const;
    Report& report() { return *report_; }
    void missing(std::string_view key, const std::string& allowed);
    void wrong(std::string_view key, const std::string& allowed);
    /// Reports when none of the keys is there, and each but the first that is.
    void exactly_one(std::initializer_list<std::string_view> keys);
    /// Reports the keys that were never asked for.
    void finish();

private:
    const Entry* find(std::string_view key) const;
    const Entry* take(std::string_view key);
    const List* list_nodes(std::string_view key, const std::string& allowed);
    std::string element_path(std::string_view key, std::size_t index) const;

    template <class T>
    std::optional<T> checked(const Node& node, const std::string& path, const Rule<T>& rule) {
        auto value = rule.read(node);
        if (!value) report_->add(node.at, path, shown(node), rule.allowed);
        return value;
    }
    template <class Read>
    void read_table(const Node& node, const std::string& path, Read& read) {
        if (!std::holds_alternative<Table>(node.value)) {
            report_->add(node.at, path, shown(node), "a table");
            return;
        }
        Fields fields(node, path, *report_);
        read(fields);
        fields.finish();
    }

    const Node* table_;
    std::string path_;
    Report* report_;
    std::vector<std::string> asked_{};
};

/// Parses, reads the whole file with `read(Fields&) -> T`, and gives the value or all problems.
template <class Read>
auto read_file(std::string_view text, const std::string& name, Read read)
    -> measure::Result<decltype(read(std::declval<Fields&>())), Problems> {
    const auto root = parse(text, name);
    if (!root) return root.error();
    Report report(name);
    Fields fields(*root, "", report);
    auto value = read(fields);
    fields.finish();
    return report.result(std::move(value));
}

}  // namespace intake
