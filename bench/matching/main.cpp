// Finding every copy of every word in all eight directions: the finder beside Vectorscan (a general engine
// for many strings at once, Debian's libvectorscan-dev) on the same grid in the same run.
//   matching_bench [SIDE] [SEED] [RUNS]
// The grid is SIDE x SIDE letters as frequent as in English text. Words are real ones of 4 to 12 letters
// (package wamerican), then invented ones of the same frequencies. Vectorscan gets each list once as it reads
// and once backward, and lines: rows, columns and diagonals, taken out of the grid some at a time so that
// they stay near, and scanned in one call. Both must find as many copies. Times are medians of RUNS, of the
// processor's time on one thread. Without SIDE: 3000 and 10000.

#include <hs.h>
#include <time.h>

#include <algorithm>
#include <cctype>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <set>
#include <stdexcept>
#include <string>
#include <vector>

#include "find/search.hpp"
#include "random/random.hpp"

namespace {

using namespace lode;

// Lewand's percentages of the letters in English text (Cryptological Mathematics, 2000), in thousandths.
constexpr std::uint32_t share_of_letter[26] = {8167, 1492, 2782, 4253, 12702, 2228, 2015, 6094, 6966,
                                               153,  772,  4025, 2406, 6749,  7507, 1929, 95,   5987,
                                               6327, 9056, 2758, 978,  2360,  150,  1974, 74};

class EnglishLetters {
  public:
    EnglishLetters() {
        for (std::uint32_t letter = 0; letter < 26; ++letter)
            letters_.insert(letters_.end(), share_of_letter[letter], letter);
    }
    Letter draw(Random& random) const {
        return static_cast<Letter>(letters_[random.below(static_cast<std::uint32_t>(letters_.size()))]);
    }

  private:
    std::vector<std::uint32_t> letters_;
};

std::vector<std::string> english_words() {
    std::ifstream list(LODE_ENGLISH_WORDS);
    std::set<std::string> words;
    for (std::string word; std::getline(list, word);) {
        std::transform(word.begin(), word.end(), word.begin(),
                       [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
        if (word.size() >= 4 && word.size() <= 12 &&
            word.find_first_not_of("abcdefghijklmnopqrstuvwxyz") == std::string::npos)
            words.insert(word);
    }
    return {words.begin(), words.end()};
}

std::vector<std::string> some_words(std::size_t count, bool invented, const EnglishLetters& letters,
                                    Random& random) {
    if (!invented) {
        auto words = english_words();
        random.shuffle(words);
        words.resize(std::min(words.size(), count));
        return words;
    }
    std::set<std::string> words;
    while (words.size() < count) {
        std::string word(4 + random.below(9), ' ');
        for (char& letter : word) letter = static_cast<char>('a' + letters.draw(random));
        words.insert(word);
    }
    return {words.begin(), words.end()};
}

double processor_seconds() {
    timespec now{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) * 1e-9;
}

template <class Call>
double median_seconds(int runs, Call&& call) {
    std::vector<double> seconds;
    for (int run = 0; run < runs; ++run) {
        const double start = processor_seconds();
        call();
        seconds.push_back(processor_seconds() - start);
    }
    std::nth_element(seconds.begin(), seconds.begin() + runs / 2, seconds.end());
    return seconds[static_cast<std::size_t>(runs / 2)];
}

// The grid as Vectorscan likes it best: a byte a letter, and around the grid bytes that are none, so far that
// whole blocks of cells can be read at its borders.
struct PeerGrid {
    static constexpr long margin = 72;
    long side;
    std::string cells;

    explicit PeerGrid(const Grid& grid) : side(grid.size().rows) {
        cells.assign(static_cast<std::size_t>((side + 2 * margin) * stride()), '.');
        for (int row = 0; row < side; ++row)
            for (int column = 0; column < side; ++column)
                cells[index(row, column)] = static_cast<char>('a' + grid[{row, column}]);
    }
    [[nodiscard]] const char* at(long row, long column) const { return cells.data() + index(row, column); }

  private:
    [[nodiscard]] long stride() const { return side + 2 * margin; }
    [[nodiscard]] std::size_t index(long row, long column) const {
        return static_cast<std::size_t>((row + margin) * stride() + column + margin);
    }
};

// Vectorscan and the lines that it is given.
class Peer {
  public:
    explicit Peer(const std::vector<std::string>& words) {
        std::vector<std::string> literals = words;
        for (const auto& word : words) {
            const std::string backward(word.rbegin(), word.rend());
            if (backward != word)
                literals.push_back(backward);  // a palindrome is one copy from both its ends
        }
        std::vector<const char*> texts;
        std::vector<std::size_t> lengths;
        std::vector<unsigned> numbers, flags(literals.size(), 0);
        for (const auto& literal : literals) {
            texts.push_back(literal.data());
            lengths.push_back(literal.size());
            numbers.push_back(static_cast<unsigned>(numbers.size()));
        }
        hs_compile_error_t* error = nullptr;
        if (hs_compile_lit_multi(texts.data(), flags.data(), numbers.data(), lengths.data(),
                                 static_cast<unsigned>(texts.size()), HS_MODE_BLOCK, nullptr, &database_,
                                 &error) != HS_SUCCESS)
            throw std::runtime_error(error->message);
        if (hs_alloc_scratch(database_, &scratch_) != HS_SUCCESS) throw std::runtime_error("no scratch");
    }
    ~Peer() {
        hs_free_scratch(scratch_);
        hs_free_database(database_);
    }
    Peer(const Peer&) = delete;
    Peer& operator=(const Peer&) = delete;

    std::uint64_t count(const PeerGrid& grid, bool scans = true) {
        copies_ = 0;
        const long n = grid.side;
        for (long row = 0; row < n; ++row)
            if (scans) scan(grid.at(row, 0), static_cast<std::size_t>(n));
        for (long first = 0; first < n; first += at_once) take_lines(grid, first, 0, scans);
        for (long first = 1 - n; first < n; first += at_once) take_lines(grid, first, 1, scans);
        for (long first = 0; first < 2 * n; first += at_once) take_lines(grid, first, -1, scans);
        return copies_;
    }

  private:
    // Lines that are taken out at once: so many that they stay near until they are scanned.
    static constexpr long at_once = 16;

    // Lines that cross row 0 in columns first, first + 1 ..., each `slant` columns further in the next row.
    // Eight rows of eight cells are turned at a time, in registers.
    void take_lines(const PeerGrid& grid, long first, long slant, bool scans) {
        const long n = grid.side;
        long begin = 0, end = n;  // rows that one of the lines meets inside the grid
        if (slant > 0) begin = std::max(0L, -first - (at_once - 1)), end = std::min(n, n - first);
        if (slant < 0) begin = std::max(0L, first - n + 1), end = std::min(n, first + at_once);
        const auto room = static_cast<std::size_t>((end - begin + 7) / 8 * 8 + 8);
        lines_.resize(room * at_once);
        for (long row = begin; row < end; row += 8)
            for (long line = 0; line < at_once; line += 8) {
                std::uint64_t block[8];
                for (long down = 0; down < 8; ++down)
                    std::memcpy(&block[down], grid.at(row + down, first + (row + down) * slant + line), 8);
                turn(block);
                for (long across = 0; across < 8; ++across)
                    std::memcpy(
                        lines_.data() + static_cast<std::size_t>(line + across) * room + (row - begin),
                        &block[across], 8);
            }
        // What lies between a line's last row and the next line was never written, or is of no line.
        for (std::size_t line = 0; line < static_cast<std::size_t>(at_once); ++line)
            std::fill(lines_.data() + line * room + (end - begin), lines_.data() + (line + 1) * room, '.');
        if (scans) scan(lines_.data(), lines_.size());
    }

    // Byte j of block i becomes byte i of block j (Warren, Hacker's Delight, 7-3, by bytes).
    static void turn(std::uint64_t (&block)[8]) {
        const auto swap = [&](int a, int b, int bits, std::uint64_t mask) {
            const std::uint64_t moved = (block[a] >> bits ^ block[b]) & mask;
            block[b] ^= moved;
            block[a] ^= moved << bits;
        };
        for (int at = 0; at < 4; ++at) swap(at, at + 4, 32, 0x0000'0000'FFFF'FFFF);
        for (const int at : {0, 1, 4, 5}) swap(at, at + 2, 16, 0x0000'FFFF'0000'FFFF);
        for (const int at : {0, 2, 4, 6}) swap(at, at + 1, 8, 0x00FF'00FF'00FF'00FF);
    }

    void scan(const char* text, std::size_t length) {
        const auto found = [](unsigned, unsigned long long, unsigned long long, unsigned, void* copies) {
            ++*static_cast<std::uint64_t*>(copies);
            return 0;
        };
        if (hs_scan(database_, text, static_cast<unsigned>(length), 0, scratch_, found, &copies_) !=
            HS_SUCCESS)
            throw std::runtime_error("hs_scan failed");
    }
    hs_database_t* database_ = nullptr;
    hs_scratch_t* scratch_ = nullptr;
    std::uint64_t copies_ = 0;
    std::string lines_;
};

std::vector<Letters> letters_of(const std::vector<std::string>& words) {
    std::vector<Letters> all;
    for (const auto& word : words) {
        all.emplace_back();
        for (const char letter : word) all.back().push_back(static_cast<Letter>(letter - 'a'));
    }
    return all;
}

std::uint64_t count_copies(const Matcher& matcher, const Grid& grid, const SearchMeans& means,
                           unsigned threads = 1) {
    std::uint64_t copies = 0;
    SearchRules rules;
    rules.control.threads = threads;
    matcher.search_by(
        means, grid, [&](std::size_t, const Copy&) { return ++copies, true; }, rules);
    return copies;
}

void one_list(const Grid& grid, const PeerGrid& peer_grid, const std::vector<std::string>& words, int runs) {
    const double million_cells = static_cast<double>(grid.size().cells()) * 1e-6;
    const auto list = letters_of(words);
    const double build = median_seconds(5, [&] { Matcher{list}; });
    const Matcher matcher(list);
    const double peer_build = median_seconds(words.size() > 1000 ? 1 : 3, [&] { Peer{words}; });
    Peer peer(words);

    std::uint64_t copies = 0, peer_copies = 0;
    std::printf("%6zu words", words.size());
    double best = 0;
    for (const FindLoops* const loops : every_find_loops()) {
        const double seconds = median_seconds(runs, [&] {
            copies = count_copies(matcher, grid, {true, loops, 0});
        });
        if (best == 0) best = seconds;
        std::printf(" | %s %.0f", std::string(loops->name).c_str(), million_cells / seconds);
    }
    const double peer_seconds =
        median_seconds(std::min(runs, 3), [&] { peer_copies = peer.count(peer_grid); });
    const double extraction = median_seconds(1, [&] { peer.count(peer_grid, false); });
    if (copies != peer_copies) throw std::runtime_error("the two do not agree");
    const auto by_the_clock = [&](unsigned threads) {
        const auto start = std::chrono::steady_clock::now();
        if (count_copies(matcher, grid, {}, threads) != copies)
            throw std::runtime_error("threads do not agree");
        return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    };
    const double one_thread = by_the_clock(1), two_threads = by_the_clock(2);
    std::printf(
        " | two threads %.2fx by the clock\n              Vectorscan %.1f (extraction alone %.0f), scan "
        "%.2fx | build ms "
        "%.3f, Vectorscan %.3f, %.3fx; "
        "of scan %.3f | %llu copies\n",
        one_thread / two_threads, million_cells / peer_seconds, million_cells / extraction,
        peer_seconds / best, build * 1e3, peer_build * 1e3, build / peer_build, build / best,
        static_cast<unsigned long long>(copies));
    std::fflush(stdout);
}

void one_shot(const EnglishLetters& letters, Random& random) {
    Grid grid({15, 15});
    for (int row = 0; row < 15; ++row)
        for (int column = 0; column < 15; ++column) grid[{row, column}] = letters.draw(random);
    const auto list = letters_of(some_words(20, false, letters, random));
    constexpr int times = 20'000;
    std::uint64_t copies = 0;
    const auto loops = [&](auto&& call) {
        return 1e9 / times * median_seconds(9, [&] {
                   for (int time = 0; time < times; ++time) call();
               });
    };
    const Matcher matcher(list);
    const double built = loops([&] { copies += count_copies(matcher, grid, {}); });
    const double whole = loops([&] { copies += count_copies(Matcher(list), grid, {}); });
    std::printf("15x15, 20 words: search %.0f ns, with building %.0f ns\n", built, whole);
}

}  // namespace

int main(int argc, char** argv) {
    const std::uint64_t seed = argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 1;
    const int runs = argc > 3 ? std::atoi(argv[3]) : 3;
    Random random(seed);
    const EnglishLetters letters;
    one_shot(letters, random);
    const std::vector<int> sides =
        argc > 1 ? std::vector<int>{std::atoi(argv[1])} : std::vector<int>{3000, 10000};
    for (const int side : sides) {
        Grid grid({side, side});
        for (int row = 0; row < side; ++row)
            for (int column = 0; column < side; ++column) grid[{row, column}] = letters.draw(random);
        const PeerGrid peer_grid(grid);
        for (const bool invented : {false, true}) {
            std::printf("%dx%d, %s words, million cells a second\n", side, side,
                        invented ? "invented" : "English");
            for (const std::size_t count : {20, 300, 5'000, 60'000})
                one_list(grid, peer_grid, some_words(count, invented, letters, random), runs);
        }
    }
}
