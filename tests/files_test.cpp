// Files and folders appear whole or not at all, also where the disk is full at any moment.

#include <catch2/catch.hpp>
#include <csignal>
#include <cstdlib>

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>
#include <letterlode/files.hpp>

#include "support/scratch_folder.hpp"

using namespace lode;
using namespace lode::test;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

namespace {

using Tree = std::map<std::string, std::string>;

const std::vector<NamedFile> sign{{"puzzle.json", "{}\n"},
                                  {"layers/1-letters.svg", std::string(1000, 'x')},
                                  {"layers/deep/er/2.svg", "<svg/>"},
                                  {"empty.txt", ""}};
const Tree sign_tree{{"puzzle.json", "{}\n"},
                     {"layers", "<folder>"},
                     {"layers/1-letters.svg", std::string(1000, 'x')},
                     {"layers/deep", "<folder>"},
                     {"layers/deep/er", "<folder>"},
                     {"layers/deep/er/2.svg", "<svg/>"},
                     {"empty.txt", ""}};

Tree in_folder(const std::string& folder, const Tree& tree) {
    Tree moved{{folder, "<folder>"}};
    for (const auto& [path, bytes] : tree) moved[folder + "/" + path] = bytes;
    return moved;
}

// A real disk, until so many calls or so many bytes have been spent: then it is full. What is on it can still
// be removed and renamed.
class FullDisk : public Disk {
  public:
    FullDisk(long calls, long bytes) : calls_left_(calls), bytes_left_(bytes) {}
    long calls_made = 0;
    long bytes_written = 0;

    void write(const std::string& path, std::string_view bytes) override {
        spend(path);
        const auto fitting = std::min(static_cast<long>(bytes.size()), bytes_left_);
        Disk::write(path, bytes.substr(0, static_cast<std::size_t>(fitting)));
        bytes_left_ -= fitting;
        bytes_written += fitting;
        if (fitting < static_cast<long>(bytes.size())) throw DiskFault("cannot write " + path + ": full");
    }
    void make_folders(const std::string& path) override {
        spend(path);
        Disk::make_folders(path);
    }
    void rename(const std::string& from, const std::string& to) override {
        spend(to);
        Disk::rename(from, to);
    }
    void exchange(const std::string& a, const std::string& b) override {
        spend(b);
        Disk::exchange(a, b);
    }

  private:
    void spend(const std::string& path) {
        ++calls_made;
        if (calls_left_-- <= 0) throw DiskFault("cannot write " + path + ": full");
    }
    long calls_left_;
    long bytes_left_;
};

constexpr long plenty = 1'000'000;

// Writes a folder, or a file, on a disk with this much room; returns whether it was written.
template <class Write>
bool is_written(const ScratchFolder& scratch, const Tree& before, const Tree& after, FullDisk disk,
                Write write) {
    bool written = false;
    try {
        write(disk);
        written = true;
    } catch (const DiskFault& fault) {
        CHECK_THAT(fault.what(), Contains("full"));
    }
    CHECK(scratch.all() == (written ? after : before));
    return written;
}

void whole_folder(const std::string& path, bool replace, Disk& disk) {
    const auto written = write_folder(path, sign, replace, disk);
    REQUIRE(written);
}

std::string refused_folder(const std::string& path, bool replace = false) {
    Disk disk;
    const auto written = write_folder(path, sign, replace, disk);
    REQUIRE_FALSE(written);
    CHECK(written.refusal().reason == Refusal::Reason::unusable);
    CHECK_FALSE(written.refusal().advice.empty());
    return written.refusal().message;
}

// Runs in a process of its own, whose exit code is returned.
template <class Run>
int in_another_process(Run run) {
    const pid_t child = ::fork();
    if (child == 0) ::_exit(run());
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    REQUIRE(WIFEXITED(status));
    return WEXITSTATUS(status);
}

}  // namespace

TEST_CASE("a folder is written with all its files, and its parents are made") {
    const ScratchFolder scratch;
    Disk disk;
    CHECK(write_folder(scratch / "sign", sign, false, disk).value() == scratch / "sign");
    CHECK(scratch.all() == in_folder("sign", sign_tree));
    CHECK(write_folder(scratch / "a/b/c/", sign, false, disk).value() == scratch / "a/b/c");
    CHECK(fs::exists(scratch / "a/b/c/layers/deep/er/2.svg"));
    CHECK(write_folder(scratch / "none", {}, false, disk));
    CHECK(fs::is_empty(scratch / "none"));
}

TEST_CASE("a folder appears whole or not at all, at whichever call the disk is full") {
    long refused = 0;
    for (long room = 0;; ++room) {
        const ScratchFolder scratch;
        CAPTURE(room);
        if (is_written(scratch, {}, in_folder("sign", sign_tree), FullDisk(room, plenty),
                       [&](Disk& disk) { whole_folder(scratch / "sign", false, disk); }))
            break;
        ++refused;
    }
    CHECK(refused == 1 + 2 + 4 + 1);  // the folder, its two inner ones, its four files, the renaming
}

TEST_CASE("a folder appears whole or not at all, at whichever byte the disk is full") {
    for (long room = 0; room <= 1009; ++room) {
        const ScratchFolder scratch;
        CAPTURE(room);
        CHECK(is_written(scratch, {}, in_folder("sign", sign_tree), FullDisk(plenty, room),
                         [&](Disk& disk) { whole_folder(scratch / "sign", false, disk); }) == (room == 1009));
        if (room == 20) room = 990;
    }
}

TEST_CASE("a folder that is to be replaced stands untouched until the new one is whole") {
    const Tree old{{"old.txt", "precious"}, {"layers", "<folder>"}, {"layers/1-letters.svg", "old"}};
    long refused = 0;
    for (long room = 0;; ++room) {
        const ScratchFolder scratch;
        Disk real;
        CHECK(write_folder(scratch / "sign", {{"old.txt", "precious"}, {"layers/1-letters.svg", "old"}},
                           false, real));
        CAPTURE(room);
        if (is_written(scratch, in_folder("sign", old), in_folder("sign", sign_tree), FullDisk(room, plenty),
                       [&](Disk& disk) { whole_folder(scratch / "sign", true, disk); }))
            break;
        ++refused;
    }
    CHECK(refused == 8);
    for (const long room : {0L, 1L, 3L, 4L, 500L, 1008L}) {
        const ScratchFolder scratch;
        Disk real;
        CHECK(write_folder(scratch / "sign", {{"old.txt", "precious"}, {"layers/1-letters.svg", "old"}},
                           false, real));
        CHECK_FALSE(is_written(scratch, in_folder("sign", old), {}, FullDisk(plenty, room),
                               [&](Disk& disk) { whole_folder(scratch / "sign", true, disk); }));
    }
}

TEST_CASE("a file appears whole or not at all, and an old one stays until the new one is whole") {
    for (const bool there : {false, true})
        for (long calls = 0; calls < 3; ++calls)
            for (long bytes = 0; bytes <= 9; ++bytes) {
                const ScratchFolder scratch;
                Disk real;
                if (there) write_file(scratch / "key.txt", "old", real);
                CAPTURE(there, calls, bytes);
                CHECK(is_written(scratch, there ? Tree{{"key.txt", "old"}} : Tree{},
                                 {{"key.txt", "123456789"}}, FullDisk(calls, bytes), [&](Disk& disk) {
                                     write_file(scratch / "key.txt", "123456789", disk);
                                 }) == (calls == 2 && bytes == 9));
            }
}

TEST_CASE("a disk from which nothing can be removed still keeps what stood there before") {
    struct Stuck : FullDisk {
        using FullDisk::FullDisk;
        void remove_all(const std::string& path) override { throw DiskFault("cannot remove " + path); }
    };
    const ScratchFolder scratch;
    Disk real;
    CHECK(write_folder(scratch / "sign", {{"old.txt", "precious"}}, false, real));
    Stuck disk(3, plenty);
    CHECK_THROWS_AS(write_folder(scratch / "sign", sign, true, disk), DiskFault);
    CHECK(scratch.all().at("sign/old.txt") == "precious");
    CHECK(scratch.all().count("sign/puzzle.json") == 0);
}

TEST_CASE("a folder that exists is refused and left alone, unless it is to be replaced") {
    const ScratchFolder scratch;
    Disk disk;
    CHECK(write_folder(scratch / "sign", {{"old.txt", "precious"}}, false, disk));
    CHECK_THAT(refused_folder(scratch / "sign"), Contains("exists already"));
    CHECK_THAT(refused_folder(scratch / "sign/"), Contains("exists already"));
    CHECK(scratch.all() == in_folder("sign", {{"old.txt", "precious"}}));
    CHECK(write_folder(scratch / "sign/", sign, true, disk));
    CHECK(scratch.all() == in_folder("sign", sign_tree));
    CHECK(write_folder(scratch / "new", sign, true, disk));
}

TEST_CASE("what is no folder is not replaced by one") {
    const ScratchFolder scratch;
    Disk disk;
    write_file(scratch / "file", "precious", disk);
    fs::create_directory(scratch / "folder");
    fs::create_directory_symlink(scratch / "folder", scratch / "link");
    fs::create_symlink(scratch / "nowhere", scratch / "dangling");
    for (const bool replace : {false, true})
        for (const char* name : {"file", "link", "dangling"}) {
            CAPTURE(name, replace);
            refused_folder(scratch / name, replace);
        }
    CHECK(scratch.all().at("file") == "precious");
    CHECK(fs::is_symlink(scratch / "link"));
    // A folder below a file cannot be made.
    CHECK_THROWS_AS(write_folder(scratch / "file/sign", sign, false, disk), DiskFault);
}

TEST_CASE("names that are no folder's own, and folders above the working one, are refused") {
    const ScratchFolder scratch;
    Disk disk;
    for (const bool replace : {false, true})
        for (const char* name : {"", ".", "..", "/", "//", "./", "../", "a/..", "a/.", "../.."}) {
            CAPTURE(name, replace);
            CHECK_THAT(refused_folder(name, replace), Contains("no name"));
        }
    fs::create_directories(scratch / "a/b/c");
    fs::create_directory_symlink(scratch / "a", scratch / "also-a");
    write_file(scratch / "a/precious", "1", disk);
    CHECK(in_another_process([&] {
              fs::current_path(scratch / "a/b");
              int refusals = 0;
              for (const std::string name : {"a", "a/b", "a/../a/b", "also-a/b"})
                  refusals += write_folder(scratch / name, sign, true, disk) ? 0 : 1;
              refusals += write_folder("../b", sign, true, disk) ? 0 : 1;
              refusals += write_folder("../../a", sign, true, disk) ? 0 : 1;
              const bool others =
                  write_folder("c", sign, true, disk) && write_folder("../d", sign, true, disk);
              return others ? refusals : 100;
          }) == 6);
    CHECK(scratch.all().at("a/precious") == "1");
    CHECK(fs::exists(scratch / "a/b/c/puzzle.json"));
    CHECK(fs::exists(scratch / "a/d/puzzle.json"));
}

TEST_CASE("names that the system does not take are a fault of the disk, told as one") {
    const ScratchFolder scratch;
    Disk disk;
    const std::string longest(300, 'x');
    for (const std::string& name : {scratch / longest, scratch / (longest + "/sign")}) {
        CHECK_THROWS_AS(write_folder(name, sign, false, disk), DiskFault);
        CHECK_THROWS_AS(write_file(name, "x", disk), DiskFault);
    }
    CHECK_THROWS_AS(write_file(scratch / "no such/key.txt", "x", disk), DiskFault);
    CHECK_THROWS_AS(write_file(scratch.path(), "x", disk), DiskFault);
    CHECK(scratch.all().empty());
}

TEST_CASE("a device that is full and one that is never full are written without a file beside them") {
    Disk disk;
    CHECK_THROWS_WITH(write_file("/dev/full", "x", disk), Contains("/dev/full") && Contains("No space left"));
    CHECK_NOTHROW(write_file("/dev/null", "x", disk));
    CHECK(fs::is_character_file("/dev/full"));
    CHECK(fs::is_character_file("/dev/null"));
}

TEST_CASE("where the system itself cuts a file short nothing of it is left") {
    // A limit of the system on the size of files: the write is done in part, the next one fails.
    const ScratchFolder scratch;
    CHECK(in_another_process([&] {
              std::signal(SIGXFSZ, SIG_IGN);
              const rlimit limit{5000, 5000};
              if (::setrlimit(RLIMIT_FSIZE, &limit) != 0) return 100;
              Disk disk;
              int faults = 0;
              try {
                  write_file(scratch / "large", std::string(5001, 'x'), disk);
              } catch (const DiskFault&) {
                  ++faults;
              }
              try {
                  static_cast<void>(write_folder(scratch / "sign",
                                                 {{"a", "1"}, {"b", std::string(9000, 'x')}}, false, disk));
              } catch (const DiskFault&) {
                  ++faults;
              }
              write_file(scratch / "fits", std::string(5000, 'x'), disk);
              return faults;
          }) == 2);
    CHECK(scratch.all() == Tree{{"fits", std::string(5000, 'x')}});
}

TEST_CASE("a file is read whole, and refused where it cannot be or is too large") {
    const ScratchFolder scratch;
    Disk disk;
    const std::string bytes("a\0b\r\n\xFF", 6);
    write_file(scratch / "bytes", bytes, disk);
    CHECK(read_file(scratch / "bytes").value() == bytes);
    CHECK(read_file(scratch / "bytes", 6).value() == bytes);
    write_file(scratch / "empty", "", disk);
    CHECK(read_file(scratch / "empty").value().empty());

    const auto refusal = [&](const std::string& name, std::size_t most) {
        const auto read = read_file(name, most);
        REQUIRE_FALSE(read);
        CHECK(read.refusal().reason == Refusal::Reason::unusable);
        CHECK(read.refusal().source == name);
        CHECK_FALSE(read.refusal().advice.empty());
        return read.refusal().message;
    };
    CHECK_THAT(refusal(scratch / "bytes", 5), Contains("larger than 5 bytes"));
    CHECK_THAT(refusal(scratch / "none", 5), Contains((scratch / "none")) && Contains("No such file"));
    CHECK_THAT(refusal(scratch.path(), 5), Contains("folder"));
    CHECK_THAT(refusal("", 5), Contains("cannot be read"));
    CHECK_THAT(refusal("/dev/zero", 100'000), Contains("larger"));
    CHECK_THAT(refusal(scratch / "bytes/within", 5), Contains("cannot be read"));
}
