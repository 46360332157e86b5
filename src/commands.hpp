// The command line without a window: plan, check, state, play, verify. Each prints and gives an exit code of the contract.
#pragma once

#include "stock.hpp"

#include <string>
#include <vector>

namespace graftside {

enum class Form { Text, Json };

Exit plan_command(const Options& options, const std::string& case_path, Form form);
Exit check_command(const std::vector<std::string>& paths, Form form);
Exit state_command(const Options& options, const std::string& reference, Form form);
Exit play_command(const Options& options, const std::string& script_path, const std::string& case_path);
Exit play_list_command();
Exit verify_command(const Options& options, const std::string& reference);
/// Takes over what only the text mirror has of a case: for people, when a ledger was lost or an older copy was put back.
Exit recover_command(const Options& options, const std::string& reference);

/// Tells why on stderr.
Exit tell(const Stop& stop);

}  // namespace graftside
