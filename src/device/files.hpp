// Reading and writing whole files, bounded, with a clear failure. What the bytes mean is decided elsewhere.
#pragma once

#include "device/failure.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace device {

/// The whole file; one of more than `most` bytes is refused (formats.md: a case file is at most 1 MiB).
Result<std::string> read_file(const std::string& path, std::size_t most = std::size_t{1} << 20);

/// Written beside its place, flushed to the disk and put in place in one step: a reader sees the old file or the new one.
Result<measure::Done> write_file(const std::string& path, std::string_view bytes);

/// Makes the folder and those above it, for this user alone where they are new.
Result<measure::Done> make_folder(const std::string& path);

bool exists(const std::string& path);

/// The files of a folder whose names end so, sorted; none where there is no such folder.
std::vector<std::string> files_in(const std::string& folder, const std::string& ending);

}  // namespace device
