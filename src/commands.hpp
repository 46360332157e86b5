// The command line without a window: plan, check, state, play, handover, past, verify. Each prints and gives an exit code of the contract.
#pragma once

#include "past/figures.hpp"
#include "stock.hpp"

#include <string>
#include <vector>

namespace graftside {

enum class Form { Text, Json };

Exit plan_command(const Options& options, const std::string& case_path, Form form);
/// The plan as `plan_command` prints it, and the fallback card as a PDF; no card of a plan that is refused.
Exit card_command(const Options& options, const std::string& case_path, Form form, const std::string& card_path);
Exit check_command(const std::vector<std::string>& paths, Form form);
Exit state_command(const Options& options, const std::string& reference, Form form);
Exit play_command(const Options& options, const std::string& script_path, const std::string& case_path);
Exit play_list_command();
/// The record of a case as a file, by its format: "pdf", "fhir", "csv", "json".
struct Handover {
    std::string reference{}, format{}, path{};
};
Exit handover_command(const Options& options, const Handover& asked);
Exit past_command(const Options& options, const past::Filter& filter, Form form);
Exit verify_command(const Options& options, const std::string& reference);
/// Takes over what only the text mirror has of a case: for people, when a ledger was lost or an older copy was put back.
Exit recover_command(const Options& options, const std::string& reference);

/// Tells why on stderr.
Exit tell(const Stop& stop);

}  // namespace graftside
