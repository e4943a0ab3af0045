/* Stands in for malloc and lets an allocation fail: of those that is_meant() tells to count, the one whose number
   is set, and on wish all that follow. Included by a program once; it defines malloc. */
#include <stdint.h>
#include <stdlib.h>

/* The C library's own, under the names that it keeps for those who stand in for it. */
extern void* __libc_malloc(size_t size);
extern void* __libc_calloc(size_t count, size_t size);
extern void* __libc_realloc(void* memory, size_t size);
extern void* __libc_memalign(size_t alignment, size_t size);

static int counting = 0;
static int all_that_follow = 0;
static unsigned long allocations = 0;
static unsigned long failing = 0; /* the number of the allocation that fails, or 0 */

/* Whether allocations that are made from there are counted, and fail: the program says. */
static int is_meant(uintptr_t caller);

static int fails(const void* caller) {
    if (!counting || !is_meant((uintptr_t)caller)) return 0;
    ++allocations;
    return failing != 0 && (allocations == failing || (all_that_follow && allocations > failing));
}
#define FAILS fails(__builtin_return_address(0))
void* malloc(size_t size) {
    return FAILS ? NULL : __libc_malloc(size);
}
void* calloc(size_t count, size_t size) {
    return FAILS ? NULL : __libc_calloc(count, size);
}
void* realloc(void* memory, size_t size) {
    return FAILS ? NULL : __libc_realloc(memory, size);
}
void* aligned_alloc(size_t alignment, size_t size) {
    return FAILS ? NULL : __libc_memalign(alignment, size);
}
