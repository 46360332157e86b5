// Where things are on this machine: the user's data folder (XDG base directories) and the program's own share folder.
#pragma once

#include <optional>
#include <string>

namespace device {

/// A variable of the environment that is set and not empty.
std::optional<std::string> variable(const std::string& name);

/// $XDG_DATA_HOME/graftside, or ~/.local/share/graftside. XDG base directory specification 0.8: a relative path counts as
/// unset. None when neither is known.
std::optional<std::string> data_folder();
/// $XDG_CONFIG_HOME/graftside, or ~/.config/graftside, by the same rules.
std::optional<std::string> config_folder();

/// The path of the running program.
std::string program_path();
/// <program>/../share/graftside, laid out alike in the build tree.
std::string share_folder();

}  // namespace device
