#pragma once
// Letters of several characters that no rule of Unicode holds together, only a language's alphabet: LL in
// Welsh, DŽ in Croatian, C'H in Breton.

#include <bitset>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <unicode/uniset.h>

#include "text/clusters.hpp"

namespace lode {

// True for one that only stands for a long sound: it is another of the set with its first character written
// twice, as Hungarian ssz is sz + sz written short.
[[nodiscard]] bool is_long_form(const icu::UnicodeString& letter, const icu::UnicodeSet& exemplars);

struct JoinedLetter {
    std::vector<std::string> parts;  // a cluster each, in lower case
    std::vector<std::string> keys;   // their join_key
};

class JoinedLetters {
  public:
    JoinedLetters() = default;
    // The exemplars that are several clusters. change(cluster) is what the rules make of each.
    template <class Change>
    JoinedLetters(const icu::UnicodeSet& exemplars, const ClusterWalk& walk, Change change);

    [[nodiscard]] const std::vector<JoinedLetter>& all() const { return letters_; }
    // True where the letter with these keys is one of them.
    [[nodiscard]] bool has(const std::vector<std::string>& keys) const;

    // The one of most clusters whose keys stand at this place, or none. key(place) is an empty text where
    // nothing can be joined, and beyond the end.
    template <class KeyAt>
    [[nodiscard]] const JoinedLetter* longest_at(std::size_t at, KeyAt key) const {
        const std::string_view first = key(at);
        if (first.empty() || !begins_.test(static_cast<unsigned char>(first.front()))) return nullptr;
        for (const auto& letter : letters_) {
            if (letter.keys.front().front() != first.front()) continue;
            std::size_t same = 0;
            while (same < letter.keys.size() && key(at + same) == letter.keys[same]) ++same;
            if (same == letter.keys.size()) return &letter;
        }
        return nullptr;
    }

  private:
    void add(JoinedLetter letter);
    void sort();

    std::vector<JoinedLetter> letters_;  // the longest first
    std::bitset<256> begins_;            // the bytes with which the keys of their first parts begin
};

[[nodiscard]] std::vector<icu::UnicodeString> strings_of(const icu::UnicodeSet& set);

template <class Change>
JoinedLetters::JoinedLetters(const icu::UnicodeSet& exemplars, const ClusterWalk& walk, Change change) {
    for (const auto& text : strings_of(exemplars)) {
        JoinedLetter letter;
        walk.each(composed(text), [&](const icu::UnicodeString& cluster) {
            const icu::UnicodeString changed = change(cluster);
            letter.parts.push_back(to_utf8(changed));
            letter.keys.push_back(join_key(changed));
        });
        add(std::move(letter));
    }
    sort();
}

}  // namespace lode
