#include "ledger/fault_layer.hpp"

#include <sqlite3.h>

namespace faults {
namespace {

struct Standing {
    Order order{};
    int calls = 0, syncs = 0;
    bool hit = false;
};

Standing& standing() {
    static Standing now;
    return now;
}

sqlite3_vfs* usual() { return sqlite3_vfs_find("unix"); }

/// SQLITE_OK, or the code this call is to fail with.
int fate() {
    Standing& now = standing();
    if (now.order.fails == Fails::Never) return SQLITE_OK;
    ++now.calls;
    const bool fails =
        now.order.fails == Fails::Once ? now.calls == now.order.at || now.calls == now.order.again : now.calls >= now.order.at;
    now.hit = now.hit || fails;
    return fails ? now.order.code : SQLITE_OK;
}

struct Wrapped {
    sqlite3_file base;  // what SQLite sees
    sqlite3_file* real;
};

sqlite3_file* real(sqlite3_file* file) { return reinterpret_cast<Wrapped*>(file)->real; }

int close(sqlite3_file* f) { return real(f)->pMethods->xClose(real(f)); }
int read(sqlite3_file* f, void* into, int size, sqlite3_int64 at) { return real(f)->pMethods->xRead(real(f), into, size, at); }
int write(sqlite3_file* f, const void* from, int size, sqlite3_int64 at) {
    const int code = fate();
    if (code == SQLITE_OK) return real(f)->pMethods->xWrite(real(f), from, size, at);
    if (size > 1) real(f)->pMethods->xWrite(real(f), from, size / 2, at);  // a refused write may leave a part
    return code == SQLITE_FULL ? SQLITE_FULL : SQLITE_IOERR_WRITE;
}
int truncate(sqlite3_file* f, sqlite3_int64 size) {
    const int code = fate();
    return code == SQLITE_OK ? real(f)->pMethods->xTruncate(real(f), size) : code == SQLITE_FULL ? SQLITE_FULL : SQLITE_IOERR_TRUNCATE;
}
int sync(sqlite3_file* f, int flags) {
    const int code = fate();
    if (code != SQLITE_OK) return code == SQLITE_FULL ? SQLITE_FULL : SQLITE_IOERR_FSYNC;
    ++standing().syncs;
    return real(f)->pMethods->xSync(real(f), flags);
}
int size(sqlite3_file* f, sqlite3_int64* into) { return real(f)->pMethods->xFileSize(real(f), into); }
int lock(sqlite3_file* f, int level) { return real(f)->pMethods->xLock(real(f), level); }
int unlock(sqlite3_file* f, int level) { return real(f)->pMethods->xUnlock(real(f), level); }
int reserved(sqlite3_file* f, int* into) { return real(f)->pMethods->xCheckReservedLock(real(f), into); }
int control(sqlite3_file* f, int what, void* with) { return real(f)->pMethods->xFileControl(real(f), what, with); }
int sector(sqlite3_file* f) { return real(f)->pMethods->xSectorSize(real(f)); }
int traits(sqlite3_file* f) { return real(f)->pMethods->xDeviceCharacteristics(real(f)); }

const sqlite3_io_methods methods{.iVersion = 1,
                                 .xClose = close,
                                 .xRead = read,
                                 .xWrite = write,
                                 .xTruncate = truncate,
                                 .xSync = sync,
                                 .xFileSize = size,
                                 .xLock = lock,
                                 .xUnlock = unlock,
                                 .xCheckReservedLock = reserved,
                                 .xFileControl = control,
                                 .xSectorSize = sector,
                                 .xDeviceCharacteristics = traits};

int open(sqlite3_vfs*, sqlite3_filename name, sqlite3_file* file, int flags, int* out) {
    file->pMethods = nullptr;
    if (const int code = fate(); code != SQLITE_OK) return code == SQLITE_FULL ? SQLITE_FULL : SQLITE_CANTOPEN;
    auto* wrapped = reinterpret_cast<Wrapped*>(file);
    wrapped->real = reinterpret_cast<sqlite3_file*>(wrapped + 1);
    const int code = usual()->xOpen(usual(), name, wrapped->real, flags, out);
    if (wrapped->real->pMethods != nullptr) file->pMethods = &methods;
    return code;
}

int last_error(sqlite3_vfs*, int, char*) { return standing().hit ? standing().order.system : 0; }

}  // namespace

std::string layer() {
    static sqlite3_vfs made = [] {
        sqlite3_vfs vfs = *usual();
        vfs.iVersion = 1;
        vfs.zName = "faults";
        vfs.szOsFile = static_cast<int>(sizeof(Wrapped)) + usual()->szOsFile;
        vfs.pNext = nullptr;
        vfs.xOpen = open;
        vfs.xGetLastError = last_error;
        return vfs;
    }();
    if (sqlite3_vfs_find("faults") == nullptr) sqlite3_vfs_register(&made, 0);
    return "faults";
}

void order(const Order& order) { standing() = {.order = order}; }
bool hit() { return standing().hit; }
int syncs() { return standing().syncs; }

}  // namespace faults
