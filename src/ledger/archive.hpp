// Field lists to JSON and back. Included by codec.cpp only: the JSON library is heavy.
#pragma once

#include "ledger/enum_words.hpp"
#include "ledger/plan_fields.hpp"
#include "measure/expect.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace ledger {

using Json = nlohmann::json;  // its objects keep their keys sorted

inline bool valid_utf8(const std::string& text) {
    if (std::all_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; })) return true;
    try {
        return !Json(text).dump().empty();
    } catch (const Json::exception&) {
        return false;
    }
}

class Writer {
public:
    void operator()(const char* key, const auto& value) { object_[key] = json(value); }
    template <class T>
    void operator()(const char* key, const std::optional<T>& value) {
        if (value) object_[key] = json(*value);  // absent: the key is left out
    }
    Json done() && { return std::move(object_); }

private:
    static Json json(bool value) { return value; }
    static Json json(std::integral auto value) { return value; }
    static Json json(double value) {
        measure::expect(std::isfinite(value));
        return value;
    }
    /// Bytes that are no text (a scan may hold any) are kept as numbers.
    static Json json(const std::string& value) {
        if (valid_utf8(value)) return value;
        Json bytes = Json::array();
        for (char c : value) bytes.push_back(static_cast<unsigned char>(c));
        return Json{{"bytes", bytes}};
    }
    static Json json(measure::Length value) { return value.nm(); }
    static Json json(measure::Angle value) { return value.centideg(); }
    static Json json(const measure::Day& value) { return value == measure::Day{} ? std::string() : measure::iso(value); }
    template <class E>
    requires std::is_enum_v<E>
    static Json json(E value) {
        measure::expect(!word(value).empty());
        return std::string(word(value));
    }
    static Json json(const std::pair<int, int>& value) { return Json::array({value.first, value.second}); }
    template <class T>
    static Json json(const std::vector<T>& values) {
        Json array = Json::array();
        for (const T& value : values) array.push_back(json(value));
        return array;
    }
    template <class T>
    requires std::is_aggregate_v<T>
    static Json json(const T& value) {
        Writer inner;
        each(inner, value);
        return std::move(inner).done();
    }

    Json object_ = Json::object();
};

class Reader {
public:
    explicit Reader(const Json& object) : object_(object) { good_ = object.is_object(); }

    void operator()(const char* key, auto& value) {
        const auto found = good_ ? object_.find(key) : object_.end();
        if (found == object_.end() || read(*found, value)) return;  // missing: the member keeps its default
        good_ = false;
        bad_key_ = key;
    }
    bool good() const { return good_; }
    const std::string& bad_key() const { return bad_key_; }

private:
    static bool read(const Json& json, bool& value) { return json.is_boolean() && (value = json.get<bool>(), true); }
    template <std::integral T>
    static bool read(const Json& json, T& value) {
        if (!json.is_number_integer()) return false;
        const bool fits =
            json.is_number_unsigned() ? std::in_range<T>(json.get<std::uint64_t>()) : std::in_range<T>(json.get<std::int64_t>());
        if (fits) value = json.get<T>();
        return fits;
    }
    static bool read(const Json& json, double& value) { return json.is_number() && (value = json.get<double>(), true); }
    static bool read(const Json& json, std::string& value) {
        if (json.is_string()) return value = json.get<std::string>(), true;
        std::vector<std::uint8_t> bytes;
        if (!json.is_object() || !json.contains("bytes") || !json["bytes"].is_array()) return false;
        for (const Json& one : json["bytes"])
            if (!read(one, bytes.emplace_back())) return false;
        value.assign(bytes.begin(), bytes.end());
        return true;
    }
    static bool read(const Json& json, measure::Length& value) {
        std::int64_t nm = 0;
        return read(json, nm) && (value = measure::nm(nm), true);
    }
    static bool read(const Json& json, measure::Angle& value) {
        int centideg = 0;
        return read(json, centideg) && (value = measure::centideg(centideg), true);
    }
    static bool read(const Json& json, measure::Day& value) {
        if (!json.is_string()) return false;
        const auto text = json.get<std::string>();
        const auto day = text.empty() ? std::optional(measure::Day{}) : measure::day_from_iso(text);
        return day && (value = *day, true);
    }
    template <class E>
    requires std::is_enum_v<E>
    static bool read(const Json& json, E& value) {
        const auto known = json.is_string() ? from_word<E>(json.get<std::string>()) : std::nullopt;
        return known && (value = *known, true);
    }
    static bool read(const Json& json, std::pair<int, int>& value) {
        return json.is_array() && json.size() == 2 && read(json[0], value.first) && read(json[1], value.second);
    }
    template <class T>
    static bool read(const Json& json, std::optional<T>& value) {
        return read(json, value.emplace());
    }
    template <class T>
    static bool read(const Json& json, std::vector<T>& values) {
        if (!json.is_array()) return false;
        values.clear();
        for (const Json& one : json)
            if (!read(one, values.emplace_back())) return false;
        return true;
    }
    template <class T>
    requires std::is_aggregate_v<T>
    static bool read(const Json& json, T& value) {
        Reader inner(json);
        each(inner, value);
        return inner.good();
    }

    const Json& object_;
    bool good_ = true;
    std::string bad_key_{};
};

}  // namespace ledger
