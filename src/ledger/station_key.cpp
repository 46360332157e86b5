#include "ledger/station_key.hpp"

#include "ledger/place.hpp"

#include <fcntl.h>
#include <sodium.h>
#include <sys/stat.h>

#include <cerrno>
#include <span>

namespace ledger {
namespace {

using Seed = std::array<unsigned char, crypto_sign_SEEDBYTES>;

std::optional<Failure> write_new_key(const std::string& path) {
    if (auto failed = make_folder_of(path)) return failed;
    const File file(::open(path.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, 0600));
    if (!file) return system_failure(Failure::What::CannotWrite, path);
    Seed seed{};
    randombytes_buf(seed.data(), seed.size());
    std::string text = hex(seed) + '\n';
    auto failed = write_through(file, text, path);
    sodium_memzero(text.data(), text.size());
    sodium_memzero(seed.data(), seed.size());
    sync_folder_of(path);
    return failed;
}

measure::Result<Seed, Failure> read_seed(const std::string& path) {
    struct stat status {};
    if (::stat(path.c_str(), &status) != 0) return system_failure(Failure::What::CannotOpen, path);
    if ((status.st_mode & 077) != 0)
        return Failure{.what = Failure::What::CannotOpen, .path = path, .detail = "others may read this key; make it mode 0600"};
    const auto text = read_all(path);
    if (!text) return text.error();
    Seed seed{};
    const bool whole = !text->empty() && from_hex(std::string_view(*text).substr(0, text->size() - (text->ends_with('\n') ? 1 : 0)), seed);
    if (!whole) return Failure{.what = Failure::What::Damaged, .path = path, .detail = "not 64 hex digits"};
    return seed;
}

}  // namespace

measure::Result<Signed, Failure> sign(const Hash& hash, const std::string& key_path) {
    struct stat status {};
    if (::stat(key_path.c_str(), &status) != 0 && errno == ENOENT)
        if (auto failed = write_new_key(key_path)) return *failed;
    auto seed = read_seed(key_path);
    if (!seed) return seed.error();
    Signed made;
    std::array<unsigned char, crypto_sign_SECRETKEYBYTES> secret{};
    crypto_sign_seed_keypair(made.key.data(), secret.data(), seed->data());
    crypto_sign_detached(made.signature.data(), nullptr, hash.data(), hash.size(), secret.data());
    sodium_memzero(secret.data(), secret.size());
    return made;
}

bool genuine(const Signed& by, const Hash& hash) {
    return crypto_sign_verify_detached(by.signature.data(), hash.data(), hash.size(), by.key.data()) == 0;
}

std::string fingerprint(const PublicKey& key) {
    Hash hash{};
    crypto_generichash(hash.data(), hash.size(), key.data(), key.size(), nullptr, 0);
    const std::string digits = hex(std::span(hash).first(16));
    std::string grouped;
    for (std::size_t i = 0; i < digits.size(); i += 4) grouped += (i == 0 ? "" : " ") + digits.substr(i, 4);
    return grouped;
}

}  // namespace ledger
