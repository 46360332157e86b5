#include "ledger/codec.hpp"

#include "ledger/archive.hpp"
#include "ledger/fact_fields.hpp"

#include <type_traits>
#include <utility>

namespace ledger {
namespace {

template <class F>
measure::Result<guide::Fact, Failure> fact_from(const Json& json) {
    F fact{};
    Reader reader(json);
    each(reader, fact);
    if (reader.good()) return guide::Fact{std::move(fact)};
    return Failure{.what = Failure::What::Damaged, .detail = std::string(tag<F>) + ": cannot read \"" + reader.bad_key() + "\""};
}

template <std::size_t I>
measure::Result<guide::Fact, Failure> decode_as(std::string_view wanted, const Json& json) {
    if constexpr (I == std::variant_size_v<guide::Fact>) {
        return Failure{.what = Failure::What::Newer, .detail = "unknown kind of event \"" + std::string(wanted) + "\""};
    } else {
        using F = std::variant_alternative_t<I, guide::Fact>;
        static_assert(!tag<F>.empty(), "a fact needs a tag");
        return wanted == tag<F> ? fact_from<F>(json) : decode_as<I + 1>(wanted, json);
    }
}

}  // namespace

Encoded encode(const guide::Fact& fact) {
    return std::visit(
        []<class F>(const F& held) {
            Writer writer;
            each(writer, held);
            return Encoded{.tag = std::string(tag<F>), .json = std::move(writer).done().dump()};
        },
        fact);
}

measure::Result<guide::Fact, Failure> decode(std::string_view tag, std::string_view json) {
    const Json read = Json::parse(json, nullptr, false);
    if (read.is_discarded()) return Failure{.what = Failure::What::Damaged, .detail = std::string(tag) + ": no JSON"};
    return decode_as<0>(tag, read);
}

std::string_view who_text(guide::Who who) { return word(who); }

std::optional<guide::Who> who_from(std::string_view text) { return from_word<guide::Who>(text); }

}  // namespace ledger
