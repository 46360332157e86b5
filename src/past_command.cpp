#include "commands.hpp"
#include "open_case.hpp"
#include "past_shelf.hpp"
#include "past_text.hpp"

#include <fmt/format.h>

namespace graftside {

Exit past_command(const Options& options, const past::Filter& filter, Form form) {
    const auto stock = load_stock(options);
    if (!stock) return tell(stock.error());
    const auto ledger = ledger::Ledger::open(ledger_path(options), {.station_key = "", .vfs = "", .purpose = ledger::Purpose::Look});
    if (!ledger) return tell(stop(ledger.error()));
    const auto all = summaries(*ledger);
    if (!all) return tell(all.error());
    const past::Figures made = past::figures(*all, filter);
    fmt::print("{}", form == Form::Json ? past_json(made, filter) : past_text(made, stock->words));
    return Exit::Fine;
}

}  // namespace graftside
