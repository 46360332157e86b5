// SQLite's layer to the system with faults on order: the n-th write, sync, truncation or opening fails, once or from then on.
// Everything else goes through to the usual layer. One set of orders for the whole program: no two tests at a time.
#pragma once

#include <string>

namespace faults {

enum class Fails { Never, Once, FromThenOn };

struct Order {
    Fails fails = Fails::Never;
    int at = 0;      // 1 is the next call that can fail
    int again = 0;   // Once: this call fails as well; 0: none
    int code = 0;    // SQLITE_FULL or an SQLITE_IOERR_…
    int system = 0;  // the system's own error number, ENOSPC or EIO
};

/// Registers the layer and gives its name, for Options::vfs.
std::string layer();
void order(const Order& order);
/// The order was carried out at least once.
bool hit();
/// Syncs that went through since the last order.
int syncs();

}  // namespace faults
