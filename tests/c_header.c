/* The header alone, in the strictest C99, and once more as C++: see consumers/CMakeLists.txt. Including it
   twice must do no harm. */
#include <letterlode/letterlode.h>
#include <letterlode/letterlode.h>

typedef const char* (*version_function)(void);

version_function version_of_the_library(void);

version_function version_of_the_library(void) {
    return &lode_version;
}
