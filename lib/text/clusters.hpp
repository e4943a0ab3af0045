#pragma once
// Grapheme clusters: what each is to a word, and what it is compared by.

#include <memory>
#include <mutex>
#include <stdexcept>

#include <unicode/brkiter.h>
#include <unicode/locid.h>
#include <unicode/unistr.h>

#include "text/utf8.hpp"

namespace lode {

enum class Role { letter, apostrophe, left_out, unusable };

// A cluster is what its first character is: marks follow a letter, never lead it. Not for an empty one.
[[nodiscard]] Role role_of(const icu::UnicodeString& cluster);

// What has no look of its own (joiners, direction marks, variation selectors) makes no other letter. In the
// cells of a grid nothing joins, so it is left out: a word may hold U+200C and still be read.
[[nodiscard]] icu::UnicodeString without_invisible(const icu::UnicodeString& cluster);

// By which letters of several clusters are recognised: without case, and with one apostrophe for all.
[[nodiscard]] std::string join_key(const icu::UnicodeString& cluster);

// Walks texts cluster by cluster. Calls may come from several threads.
class ClusterWalk {
  public:
    explicit ClusterWalk(const icu::Locale& locale);

    template <class Visit>
    void each(const icu::UnicodeString& characters, Visit visit) const {
        const std::lock_guard lock(walking_);
        walked_ = characters;
        check(walked_);
        breaks_->setText(walked_);
        std::int32_t start = breaks_->first();
        for (std::int32_t end = breaks_->next(); end != icu::BreakIterator::DONE;
             start = end, end = breaks_->next())
            visit(walked_.tempSubStringBetween(start, end));
        if (start != walked_.length()) throw std::runtime_error("ICU stopped before the end of a text");
    }

  private:
    // A break iterator holds the text that it walks, so that one call at a time uses it. A clone for each
    // would take longer, and ICU 72 falls over one that it has no memory for.
    std::unique_ptr<icu::BreakIterator> breaks_;
    mutable icu::UnicodeString walked_;
    mutable std::mutex walking_;
};

}  // namespace lode
