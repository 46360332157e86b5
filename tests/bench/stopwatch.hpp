// Time since the program was started, and its memory now, as the kernel counts them.
#pragma once

#include <time.h>
#include <unistd.h>

#include <cstdlib>
#include <fstream>
#include <string>

namespace bench {

/// Milliseconds since the kernel started this program: proc(5), the 22nd field of /proc/self/stat, in clock ticks since boot.
inline double ms_since_start() {
    std::ifstream file("/proc/self/stat");
    std::string line;
    std::getline(file, line);
    std::size_t at = line.rfind(')') + 1;  // the second field, the only one that may hold spaces
    for (int field = 3; field <= 22; ++field) at = line.find(' ', at) + 1;
    const double started_s = std::strtod(line.c_str() + at, nullptr) / static_cast<double>(::sysconf(_SC_CLK_TCK));
    timespec now{};
    ::clock_gettime(CLOCK_BOOTTIME, &now);
    return (static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) / 1e9 - started_s) * 1000;
}

/// Resident memory in MB: proc(5), the second field of /proc/self/statm, in pages.
inline double resident_mb() {
    double size = 0, resident = 0;
    std::ifstream("/proc/self/statm") >> size >> resident;
    return resident * static_cast<double>(::sysconf(_SC_PAGESIZE)) / 1e6;
}

}  // namespace bench
