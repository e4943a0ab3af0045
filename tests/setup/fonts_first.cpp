// fontconfig's reader of its own XML files loses a few hundred bytes when it starts (2.14.1, seen with
// nothing but FcInit). It is started here before any test, with the watch for leaks put off, so that all that
// our code loses is still told.
#include <fontconfig/fontconfig.h>
#include <sanitizer/lsan_interface.h>

namespace {

const bool fonts_loaded = [] {
    const __lsan::ScopedDisabler nobody_watches;
    return FcInit() == FcTrue;
}();

}  // namespace
