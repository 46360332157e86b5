// The round trip: symbols drawn by zint 2.11, read by zxing-cpp's ZXingReader 1.4 and dmtxread 0.7, neither of which shares code
// with it or with us. What the reader gives, its own symbology identifier before it, must say what went into the symbol.
// dmtxread tells nothing of GS in its text, so it is asked about ISBT 128 only.
#include "intake/scan.hpp"
#include "intake/scan_keys.hpp"

#include <doctest/doctest.h>
#include <stdlib.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <string>

namespace {

constexpr measure::Day today{2026, 11, 25};

std::string output_of(const std::string& command) {
    const std::unique_ptr<std::FILE, int (*)(std::FILE*)> pipe(::popen(command.c_str(), "r"), ::pclose);
    REQUIRE(pipe != nullptr);
    std::string all;
    std::array<char, 4096> part{};
    while (const std::size_t read = std::fread(part.data(), 1, part.size(), pipe.get())) all.append(part.data(), read);
    return all;
}

/// A picture of one symbol, gone with this.
class Symbol {
public:
    /// No quiet zone is drawn unless asked for, and none is read without it. `data` has no single quote.
    Symbol(const std::string& kind, const std::string& data) {
        std::string name = (std::filesystem::temp_directory_path() / "graftside-symbol-XXXXXX").string();
        REQUIRE(::mkdtemp(name.data()) != nullptr);
        folder_ = name;
        output_of("zint -w 10 --vwhitesp=10 --scale=2 --notext -b " + kind + " -o " + picture() + " -d '" + data + "' 2>&1");
        REQUIRE_MESSAGE(std::filesystem::exists(picture()), "no symbol: is zint installed, and does it take " << data);
    }
    ~Symbol() {
        std::error_code ignored;
        std::filesystem::remove_all(folder_, ignored);
    }
    Symbol(const Symbol&) = delete;
    Symbol& operator=(const Symbol&) = delete;

    /// "]d2" and the bytes, as a reader set to send its identifier would.
    std::string read() const {
        const std::string said = output_of("ZXingReader " + picture() + " 2>&1"), key = "Identifier: ";
        const auto at = said.find(key);
        REQUIRE_MESSAGE(at != std::string::npos, said);
        return said.substr(at + key.size(), 3) + output_of("ZXingReader -bytes " + picture());
    }
    std::string read_otherwise() const { return output_of("dmtxread -N1 " + picture()); }

private:
    std::string picture() const { return folder_ + "/symbol.png"; }
    std::string folder_;
};

constexpr auto code_128 = "20", gs1_128 = "16", data_matrix = "71", gs1_data_matrix = "71 --gs1";

}  // namespace

TEST_CASE("ISBT 128 comes back from Code 128 and Data Matrix as it went in") {
    for (const std::string data : {"=G12341765432170", "=<T0416003", "&>0183652359", "=A99991712345600=,000012",
                                   "=+04000=/A9997XYZ100T0479=A99991712345600=,000012=>019031"}) {
        CAPTURE(data);
        const guide::Label wanted = intake::read_scan(data, today);
        REQUIRE_FALSE(std::holds_alternative<guide::Unread>(wanted));
        const Symbol lines(code_128, data), squares(data_matrix, data);
        CHECK(lines.read() == "]C0" + data);
        CHECK((intake::read_scan(lines.read(), today) == wanted));
        CHECK((intake::read_scan(squares.read(), today) == wanted));
        CHECK((intake::read_scan(squares.read_otherwise(), today) == wanted));
    }
}

TEST_CASE("a compound message with its European code comes back from Data Matrix") {
    const std::string data = "=+05000=Z54991712345600=%T300=<T0416003&>0183652359&,4PL001499Z549917123456A00T041600320181231";
    const Symbol symbol(data_matrix, data);
    CHECK(symbol.read() == "]d1" + data);
    CHECK(symbol.read_otherwise() == data);
    CHECK(std::get<guide::Isbt>(intake::read_scan(symbol.read(), today)).european->split == "003");
}

TEST_CASE("GS1 element strings come back with their separators from both kinds of symbol") {
    const guide::Gs1 wanted{.gtin = "09506000134352",
                            .lot = "LOT42",
                            .serial = "SN7",
                            .additional = "A-7",
                            .expires = guide::PackDate{.day = {2026, 12, 31}, .month_only = true},
                            .produced = guide::PackDate{.day = {2024, 2, 29}}};
    for (const std::string kind : {gs1_128, gs1_data_matrix}) {
        CAPTURE(kind);
        const Symbol symbol(kind, "[01]09506000134352[17]261200[11]240229[10]LOT42[21]SN7[240]A-7");
        const guide::Label read = intake::read_scan(symbol.read(), today);
        REQUIRE(std::holds_alternative<guide::Gs1>(read));
        CHECK((std::get<guide::Gs1>(read) == wanted));
    }
}

TEST_CASE("the printed test of a reader holds what it is judged by") {
    CHECK(output_of("ZXingReader -bytes '" SOURCE_DIR "/assets/reader-test.png'") == intake::layout_test);
}

TEST_CASE("digits in a plain symbol are no GS1 number") {
    CHECK(std::holds_alternative<guide::Unread>(intake::read_scan(Symbol(code_128, "4006381333931").read(), today)));
}
