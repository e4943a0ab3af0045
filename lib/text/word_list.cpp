#include <algorithm>
#include <bitset>
#include <cstdint>
#include <map>
#include <optional>
#include <unordered_set>

#include <unicode/uchar.h>
#include <letterlode/text.hpp>

#include "text/direction.hpp"
#include "text/quoted.hpp"
#include "text/utf8.hpp"
#include "text/word_lines.hpp"

namespace lode {
namespace {

constexpr std::size_t faults_told = 10;
// An alphabet has room for one word more, and for a language's letters besides.
constexpr std::size_t max_different_letters = 30'000;

bool is_blank(char character) {
    return character == ' ' || character == '\t';
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
    while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
    return text;
}

// A '#' begins a comment at the start of a line and between blanks; "Bed #3" keeps its own.
std::string_view without_comment(std::string_view line) {
    for (std::size_t at = 0; at < line.size(); ++at) {
        if (line[at] != '#') continue;
        const bool opens = at == 0 || is_blank(line[at - 1]);
        const bool alone = at + 1 == line.size() || is_blank(line[at + 1]);
        if (opens && (alone || trimmed(line.substr(0, at)).empty())) return line.substr(0, at);
    }
    return line;
}

// Printable ASCII and tabs: well-formed, without controls, and in normalisation form C as it is.
bool is_plain(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char character) {
        return (character >= ' ' && character <= '~') || character == '\t';
    });
}

bool has_control(std::string_view text) {
    const icu::UnicodeString characters = to_icu(text);
    for (std::int32_t at = 0; at < characters.length();) {
        const UChar32 character = characters.char32At(at);
        if (u_charType(character) == U_CONTROL_CHAR && character != '\t') return true;
        at += U16_LENGTH(character);
    }
    return false;
}

// Collects faults, so that a maker mends a list in one go.
class Faults {
  public:
    explicit Faults(std::string_view source) { refusal_.source = source; }

    // The object's line and position are those of the first.
    void add(int line, const std::string& fault, const std::string& word, int position = 0) {
        ++count_;
        if (count_ == 1) {
            refusal_.line = line;
            refusal_.position = position;
        }
        if (!word.empty()) refusal_.words.push_back(word);
        if (count_ > faults_told) return;
        if (count_ > 1) refusal_.message += '\n';
        refusal_.message += place_in(refusal_.source, line) + fault;
    }
    // One more word that has to do with the fault.
    void blame(const std::string& word) { refusal_.words.push_back(word); }
    void advise(const std::string& advice) {
        if (std::find(refusal_.advice.begin(), refusal_.advice.end(), advice) == refusal_.advice.end())
            refusal_.advice.push_back(advice);
    }
    [[nodiscard]] bool any() const { return count_ > 0; }
    [[nodiscard]] Refusal take() {
        if (count_ > faults_told)
            refusal_.message += "\nand " + std::to_string(count_ - faults_told) + " more.";
        return std::move(refusal_);
    }

  private:
    Refusal refusal_;
    std::size_t count_ = 0;
};

// Counts letters, each once.
class DifferentLetters {
  public:
    void add(const std::string& letter) {
        if (letter.size() == 1)
            bytes_.set(static_cast<unsigned char>(letter.front()));
        else if (!longer_.contains(letter))
            longer_.insert(letter);
    }
    [[nodiscard]] std::size_t size() const { return bytes_.count() + longer_.size(); }

  private:
    std::bitset<256> bytes_;
    std::unordered_set<std::string> longer_;
};

std::string key_of(const std::vector<std::string>& letters) {
    std::string key;
    for (const auto& letter : letters) (key += letter) += '\n';
    return key;
}

}  // namespace

std::string place_in(std::string_view source, int line) {
    std::string place;
    if (!source.empty()) place += std::string(source) + ":";
    if (line > 0) place += (source.empty() ? "line " : "") + std::to_string(line) + ":";
    return place.empty() ? place : place + " ";
}

namespace {

// The fields of a table's row; nothing where a quote is not closed, or something follows a closed one.
std::optional<std::vector<std::string>> fields_of(std::string_view row, char separator) {
    std::vector<std::string> fields;
    for (;;) {
        row = trimmed(row);
        std::string field;
        if (row.starts_with('"')) {
            row.remove_prefix(1);
            for (;;) {
                const auto quote = row.find('"');
                if (quote == std::string_view::npos) return std::nullopt;
                field += row.substr(0, quote);
                row.remove_prefix(quote + 1);
                if (!row.starts_with('"')) break;
                field += '"';
                row.remove_prefix(1);
            }
            row = trimmed(row);
            if (!row.empty() && row.front() != separator) return std::nullopt;
        } else {
            const auto end = std::min(row.find(separator), row.size());
            field = trimmed(row.substr(0, end));
            row.remove_prefix(end);
        }
        fields.push_back(std::move(field));
        if (row.empty()) return fields;
        row.remove_prefix(1);
    }
}

// "word,band", whatever its case; or a header that begins so, and has other columns.
struct TableHeader {
    char separator;
    bool is_known;
};
std::optional<TableHeader> table_header(std::string_view row) {
    std::string small;
    for (const char c : row)
        if ((!is_blank(c) || c == '\t') && c != '"')
            small += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    for (const char separator : {',', ';', '\t'})
        if (const std::string beginning = std::string("word") + separator; small.starts_with(beginning))
            return TableHeader{separator, small == beginning + "band"};
    return std::nullopt;
}

// Reads a list line by line.
class ListReader {
  public:
    explicit ListReader(std::string_view source) : faults_(source) { list_.source = source; }

    // The line without its end, and its number. False once the list is full.
    bool read(std::string_view row, int line, bool in_columns) {
        if (!is_plain(row) && !is_utf8(row)) {
            faults_.add(line, "this line is no UTF-8 text.", {});
            faults_.advise("Save the list as UTF-8.");
            return true;
        }
        row = without_comment(row);
        if (!in_columns) {
            if (!is_begun_ && !trimmed(row).empty()) {
                is_begun_ = true;
                if (const auto header = table_header(row)) {
                    separator_ = header->separator;
                    if (!header->is_known) refuse_header(line);
                    return header->is_known;
                }
            }
            return separator_ ? add_row(row, line) : add(trimmed(row), line);
        }
        while (!row.empty()) {
            const std::size_t end = column_end(row);
            std::string_view word = trimmed(row.substr(0, end));
            if (word.size() >= 2 && word.front() == '"' && word.back() == '"')
                word = trimmed(word.substr(1, word.size() - 2));
            if (!add(word, line)) return false;
            row.remove_prefix(std::min(end + 1, row.size()));
        }
        return true;
    }

    [[nodiscard]] Outcome<WordLines> take() {
        if (faults_.any()) return faults_.take();
        return std::move(list_);
    }

  private:
    // One blank stands inside a word ("Saint Malo"); two, or the separators of a table, between words.
    static std::size_t column_end(std::string_view row) {
        return std::min({row.find_first_of("\t,;"), row.find("  "), row.size()});
    }

    void refuse_header(int line) {
        faults_.add(line, "this header has other columns than word and band.", {});
        faults_.advise(
            "Write 'word,band' there, and in the column band the colour of a word's band; or leave that "
            "column "
            "and the header out.");
    }

    bool add_row(std::string_view row, int line) {
        if (trimmed(row).empty()) return true;
        const auto fields = fields_of(row, *separator_);
        if (!fields || fields->size() > 2) {
            faults_.add(line,
                        fields ? "this row has more than the two fields word and band."
                               : "a quote of this row is not closed, or something follows it.",
                        {});
            faults_.advise(
                "Write a word, a separator and a colour or none; a field that holds the separator stands in "
                "quotes.");
            return true;
        }
        const std::size_t before = list_.words.size();
        if (!add(fields->front(), line)) return false;
        if (fields->size() == 2 && list_.words.size() > before) list_.words.back().band = fields->back();
        return true;
    }

    bool add(std::string_view written, int line) {
        const bool plain = is_plain(written);
        const std::string word = plain ? std::string(written) : without_direction_marks(written);
        if (word.empty()) return true;
        if (!plain && has_control(word)) {
            faults_.add(line, "this line holds a control character.", {});
            faults_.advise("Save the list as plain text, a word a line.");
            return true;
        }
        if (list_.words.size() == max_list_words) {
            faults_.add(line, "a list holds at most " + std::to_string(max_list_words) + " words.", {});
            return false;
        }
        list_.words.push_back({plain ? word : to_utf8(composed(to_icu(word))), line});
        return true;
    }

    WordLines list_;
    Faults faults_;
    bool is_begun_ = false;          // a line that is not empty was read
    std::optional<char> separator_;  // of a table
};

}  // namespace

Outcome<WordLines> read_word_lines(std::string_view text, std::string_view source) {
    ListReader reader(source);
    text = without_byte_order_mark(text);
    for (int line = 1; !text.empty(); ++line) {
        const auto end = std::min(text.find('\n'), text.size());
        std::string_view row = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        if (row.ends_with('\r')) row.remove_suffix(1);
        if (!reader.read(row, line, false)) break;
    }
    return reader.take();
}

Outcome<WordLines> words_in_columns(const std::vector<std::string_view>& rows, std::string_view source,
                                    int first_line) {
    ListReader reader(source);
    int line = first_line;
    for (const std::string_view row : rows)
        if (!reader.read(row, line++, true)) break;
    return reader.take();
}

namespace {

// The first eight bytes of a word's letters, by which words are put in order without a look at the rest.
std::uint64_t beginning_of(const std::vector<std::string>& letters) {
    std::uint64_t beginning = 0;
    int bytes = 0;
    for (const auto& letter : letters)
        for (const char byte : letter) {
            beginning = beginning << 8 | static_cast<unsigned char>(byte);
            if (++bytes == 8) return beginning;
        }
    return beginning << 8 * (8 - bytes);
}

bool are_all_different(const std::vector<Word>& words) {
    struct Place {
        std::uint64_t beginning;
        std::size_t word;
    };
    std::vector<Place> order;
    order.reserve(words.size());
    for (std::size_t word = 0; word < words.size(); ++word)
        order.push_back({beginning_of(words[word].letters), word});
    std::sort(order.begin(), order.end(), [&](const Place& a, const Place& b) {
        if (a.beginning != b.beginning) return a.beginning < b.beginning;
        return words[a.word].letters < words[b.word].letters;
    });
    return std::adjacent_find(order.begin(), order.end(), [&](const Place& a, const Place& b) {
               return a.beginning == b.beginning && words[a.word].letters == words[b.word].letters;
           }) == order.end();
}

// Most lists have no fault: theirs is spelled without a thought of how to tell one. Nothing where there is
// one.
std::optional<WordList> spelled_without_fault(const WordLines& lines, const Segmenter& segmenter) {
    WordList list;
    list.source = lines.source;
    list.words.reserve(lines.words.size());
    DifferentLetters different;
    std::size_t letters = 0;
    for (const auto& [shown, line, band] : lines.words) {
        if (shown.size() > max_word_bytes) return std::nullopt;
        auto spelling = segmenter.spell(shown);
        if (!spelling.bad.empty() || spelling.letters.size() < 2) return std::nullopt;
        for (const auto& letter : spelling.letters) different.add(letter);
        letters += spelling.letters.size();
        if (letters > max_list_letters || different.size() > max_different_letters) return std::nullopt;
        list.words.push_back({without_bars(shown), std::move(spelling.letters), line});
    }
    if (list.words.empty() || !are_all_different(list.words)) return std::nullopt;
    return list;
}

}  // namespace

Outcome<WordList> spell(const WordLines& lines, const Segmenter& segmenter) {
    if (auto list = spelled_without_fault(lines, segmenter)) return std::move(*list);
    WordList list;
    list.source = lines.source;
    Faults faults(lines.source);
    std::map<std::string, std::size_t> known;
    DifferentLetters different;
    std::size_t letters = 0;

    for (const auto& [shown, line, band] : lines.words) {
        if (shown.size() > max_word_bytes) {
            faults.add(line, quoted(shown) + " is too long for a word.", {});
            faults.advise("Write a word a line.");
            continue;
        }
        auto spelling = segmenter.spell(shown);
        if (!spelling.bad.empty()) {
            faults.add(line,
                       quoted(shown) + " holds " + quoted(spelling.bad) + " (character " +
                           std::to_string(spelling.bad_position) + "), which can stand in no cell.",
                       shown, spelling.bad_position);
            faults.advise(
                "Letters with their marks, and digits, fill cells; spaces, hyphens, apostrophes and other "
                "punctuation are shown in the list but not hidden. Leave the rest out.");
            continue;
        }
        if (spelling.letters.size() < 2) {
            faults.add(
                line,
                quoted(shown) + (spelling.letters.empty() ? " holds no letter." : " has only one letter."),
                shown);
            faults.advise("A word needs two letters or more.");
            continue;
        }
        const auto [at, is_new] = known.emplace(key_of(spelling.letters), list.words.size());
        if (!is_new) {
            const Word& first = list.words[at->second];
            faults.add(line,
                       quoted(shown) + " has the same letters as " + quoted(first.shown) +
                           (first.line > 0 ? " on line " + std::to_string(first.line) : std::string()) + ".",
                       shown);
            faults.blame(first.shown);
            faults.advise("Take one of the two out.");
            continue;
        }
        letters += spelling.letters.size();
        for (const auto& letter : spelling.letters) different.add(letter);
        list.words.push_back({without_bars(shown), std::move(spelling.letters), line});
        if (letters > max_list_letters || different.size() > max_different_letters) {
            faults.add(
                line,
                letters > max_list_letters
                    ? "up to here there are more than " + std::to_string(max_list_letters) + " letters."
                    : "up to here there are more than " + std::to_string(max_different_letters) +
                          " different letters.",
                {});
            faults.advise("Give fewer words.");
            break;
        }
    }
    if (faults.any()) return faults.take();
    if (list.words.empty()) {
        faults.add(0, "there is no word in the list.", {});
        faults.advise("Write a word a line.");
        return faults.take();
    }
    return list;
}

}  // namespace lode
