// Pieces of FHIR resources, for fhir*.cpp only: the JSON library is heavy.
#pragma once

#include "paper/record.hpp"

#include <nlohmann/json.hpp>

#include <optional>
#include <string>
#include <vector>

namespace paper::r4 {

using Json = nlohmann::ordered_json;

inline Json text(const std::string& words) { return {{"text", words}}; }

/// UCUM, the Unified Code for Units of Measure.
inline Json quantity(double value, const std::string& unit, const std::string& code) {
    return {{"value", value}, {"unit", unit}, {"system", "http://unitsofmeasure.org"}, {"code", code}};
}
inline Json millimetres(measure::Length length) { return quantity(length.mm(), "mm", "mm"); }
inline Json micrometres(measure::Length length) { return quantity(length.um(), "µm", "um"); }
inline Json degrees(int centideg) { return quantity(centideg / 100.0, "°", "deg"); }
inline Json seconds(std::int64_t ms) { return quantity(static_cast<double>(ms) / 1000, "s", "s"); }

inline Json not_recorded() {
    const Json unknown = {
        {"system", "http://terminology.hl7.org/CodeSystem/data-absent-reason"}, {"code", "unknown"}, {"display", "Unknown"}};
    return {{"coding", Json::array({unknown})}, {"text", "not recorded"}};
}

/// A value with the name of its element: "valueQuantity" and the like.
struct Value {
    std::string element{};
    Json json{};
};
inline Value absent() { return {"dataAbsentReason", not_recorded()}; }
inline Value value_or_absent(const std::optional<Value>& value) { return value.value_or(absent()); }

struct Component {
    std::string code{};
    Value value{};
};

/// What all resources of one bundle share.
struct Context {
    const Record* record = nullptr;
    std::string subject{};                                       // words, not a name
    std::string status{};                                        // of observations: final once the case is closed
    Json procedure{}, tissue{}, trephine{}, punch{}, program{};  // references
};

struct Observation {
    std::string code{};
    Value value{};
    std::optional<measure::Instant> at{}, until{};
    std::vector<Component> components{};
    Json focus{};  // a reference; null: none
    std::string note{};
};

Json resource(const Context& context, const Observation& observation);

/// Everything that was measured, counted and timed.
std::vector<Observation> observations(const Context& context);

}  // namespace paper::r4
