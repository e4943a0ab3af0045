/* The headers alone, in the strictest C99, and once more as C++: see consumers/CMakeLists.txt. The second
   brings the first with it; including either twice must do no harm. */
#include <letterlode/letterlode.h>
#include <letterlode/letterlode_art.h>

typedef const char* (*version_function)(void);

version_function version_of_the_library(void);

version_function version_of_the_library(void) {
    return &lode_version;
}

typedef int32_t (*print_function)(lode_pages**, const lode_worksheets*, const lode_print_options*,
                                  lode_error**);

print_function print_of_the_library(void);

print_function print_of_the_library(void) {
    return &lode_print;
}
