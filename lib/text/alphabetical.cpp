#include "text/alphabetical.hpp"

#include <unicode/coll.h>
#include <unicode/unistr.h>

#include <algorithm>
#include <memory>
#include <new>

namespace lode {

std::vector<std::size_t> alphabetical_order(std::span<const std::string> texts, std::string_view locale) {
    UErrorCode error = U_ZERO_ERROR;
    const std::string tag(locale == "root" ? "" : locale);
    icu::Locale known = icu::Locale::forLanguageTag(tag, error);
    if (U_FAILURE(error) || known.isBogus()) known = icu::Locale::getRoot();
    error = U_ZERO_ERROR;
    std::unique_ptr<icu::Collator> collator(icu::Collator::createInstance(known, error));
    if (U_FAILURE(error) && error != U_MEMORY_ALLOCATION_ERROR) {
        error = U_ZERO_ERROR;
        collator.reset(icu::Collator::createInstance(icu::Locale::getRoot(), error));
    }
    if (U_FAILURE(error) || !collator) throw std::bad_alloc();
    std::vector<icu::UnicodeString> read;
    std::vector<std::size_t> order;
    for (const std::string& text : texts) {
        order.push_back(read.size());
        read.push_back(icu::UnicodeString::fromUTF8(text));
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        UErrorCode status = U_ZERO_ERROR;
        return collator->compare(read[a], read[b], status) == UCOL_LESS;
    });
    return order;
}

}  // namespace lode
