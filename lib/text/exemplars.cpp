#include "text/exemplars.hpp"

#include <memory>
#include <new>

#include <unicode/ulocdata.h>
#include <unicode/ures.h>

#include "text/utf8.hpp"

namespace lode {
namespace {

struct CloseLocaleData {
    void operator()(ULocaleData* data) const { ulocdata_close(data); }
};

struct CloseBundle {
    void operator()(UResourceBundle* bundle) const { ures_close(bundle); }
};

// Asked for a language that it has no data for, ICU answers with the language of the environment.
bool has_data(const icu::Locale& locale) {
    UErrorCode status = U_ZERO_ERROR;
    const std::unique_ptr<UResourceBundle, CloseBundle> bundle(ures_open(nullptr, locale.getName(), &status));
    check(status, "ICU has no data of languages");
    return status != U_USING_DEFAULT_WARNING;
}

}  // namespace

void read_main_exemplars(const icu::Locale& locale, icu::UnicodeSet& set) {
    if (*locale.getName() == '\0' || !has_data(locale)) return;
    UErrorCode status = U_ZERO_ERROR;
    const std::unique_ptr<ULocaleData, CloseLocaleData> data(ulocdata_open(locale.getName(), &status));
    check(status, "ICU has no data for the letters of languages");
    ulocdata_getExemplarSet(data.get(), set.toUSet(), 0, ULOCDATA_ES_STANDARD, &status);
    // CLDR's sets are well-formed: where ICU had no memory for one, it may say otherwise, or say nothing.
    if (status == U_MALFORMED_SET || set.isBogus()) throw std::bad_alloc();
    check(status, "ICU has no data for the letters of a language");
}

}  // namespace lode
