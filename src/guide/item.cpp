#include "guide/item.hpp"

#include "measure/expect.hpp"
#include "measure/overloaded.hpp"

#include <string_view>

namespace guide {
namespace {

constexpr std::size_t number_length = 13, european_length = 40;

/// ISBT 128's own product codes stand in a European code with two zeros before them.
std::string product_of(const std::string& system, const std::string& product) {
    return system == "A" && product.starts_with("00") ? product.substr(2) : product;
}

Item of_european(const EuropeanCode& code) {
    return {.kind = ItemKind::Tissue,
            .donation = code.donation,
            .product = product_of(code.system, code.product),
            .division = code.split,
            .expires = code.expires};
}

Item of_isbt(const Isbt& label) {
    Item item = label.european ? of_european(*label.european) : Item{.kind = ItemKind::Part};
    if (label.donation) item.kind = ItemKind::Tissue, item.donation = label.donation->number;
    if (label.product) item.product = label.product->code, item.division = label.product->division;
    if (label.expires) item.expires = label.expires->day, item.expires_minute = label.expires->minute;
    if (label.collected) item.collected = label.collected->day;
    return item;
}

bool differ(const auto& one, const auto& other) { return one && other && one != other; }

Item of_pack(const Gs1& pack) {
    Item item{.kind = ItemKind::Pack, .gtin = pack.gtin, .lot = pack.lot, .serial = pack.serial};
    if (pack.expires) item.expires = pack.expires->day;
    return item;
}

}  // namespace

SameItem same_item(const Item& one, const Item& other) {
    if (one.gtin && one.serial) return one.gtin == other.gtin && one.serial == other.serial ? SameItem::Yes : SameItem::No;
    if (!one.donation || one.donation != other.donation) return SameItem::No;
    if (differ(one.product, other.product) || differ(one.division, other.division)) return SameItem::No;
    const bool told = one.product && other.product && one.division && other.division;
    return told ? SameItem::Yes : SameItem::Perhaps;
}

bool contradict(const Item& one, const Item& other) {
    return differ(one.product, other.product) || differ(one.division, other.division) || differ(one.expires, other.expires) ||
           differ(one.collected, other.collected);
}

Item tissue_named(const std::string& text) {
    std::string code = text;
    std::erase(code, ' ');
    if (code.size() < european_length) return {.kind = ItemKind::Tissue, .donation = code.substr(0, number_length)};
    return {.kind = ItemKind::Tissue,
            .donation = code.substr(8, number_length),
            .product = product_of(code.substr(21, 1), code.substr(22, 7)),
            .division = code.substr(29, 3)};
}

std::string tissue_text(const Item& item) {
    std::string text = item.donation.value_or("");
    if (item.product) text += " " + *item.product;
    if (item.division) text += " " + *item.division;
    return text;
}

Item item_of(const Label& label) {
    return std::visit(
        measure::overloaded{[](const Unread&) { return Item{}; }, [](const Isbt& read) { return of_isbt(read); },
                            [](const EuropeanCode& read) { return of_european(read); }, [](const Gs1& read) { return of_pack(read); }},
        label);
}

std::string_view name(Against what) {
    switch (what) {
        case Against::Expired:
            return "expired";
        case Against::NotPlannedTissue:
            return "not-planned-tissue";
        case Against::NotPlannedPack:
            return "not-planned-pack";
        case Against::WrongSize:
            return "wrong-size";
        case Against::UsedBefore:
            return "used-before";
        case Against::Allocated:
            return "allocated";
        case Against::WhichCornea:
            return "which-cornea";
    }
    measure::expect(false);
    return "";
}

}  // namespace guide
