/* Lets each allocation of a whole job fail in turn, each time in a process of its own. The library must say
   that memory ran out, or give the right puzzle; and the right puzzle when there is memory again. It stands
   in for malloc, so the C++ library's memory is meant as well.

   ICU's own allocations are a case apart, since ICU remembers for good that it had no memory for its data:
   they fail in processes in which that is loaded. */
#define _GNU_SOURCE
#include <letterlode/letterlode.h>
#include <link.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/types.h>
#include <sys/wait.h>
#include <unistd.h>

#include "starving.h"

static int of_icu = 0; /* whose allocations are counted and fail */

/* Where ICU's code lies. */
enum { MOST_PARTS = 64 };
static struct { uintptr_t first, end; } icu_parts[MOST_PARTS];
static int icu_part_count = 0;

static int note_icu(struct dl_phdr_info* info, size_t size, void* data) {
    int at;
    (void)size, (void)data;
    if (strstr(info->dlpi_name, "libicu") == NULL) return 0;
    for (at = 0; at < info->dlpi_phnum && icu_part_count < MOST_PARTS; ++at) {
        if (info->dlpi_phdr[at].p_type != PT_LOAD) continue;
        icu_parts[icu_part_count].first = info->dlpi_addr + info->dlpi_phdr[at].p_vaddr;
        icu_parts[icu_part_count].end = icu_parts[icu_part_count].first + info->dlpi_phdr[at].p_memsz;
        ++icu_part_count;
    }
    return 0;
}

static int in_icu(uintptr_t address) {
    int at;
    for (at = 0; at < icu_part_count; ++at)
        if (address >= icu_parts[at].first && address < icu_parts[at].end) return 1;
    return 0;
}

static int is_meant(uintptr_t caller) {
    return of_icu == in_icu(caller);
}

/* What the job is of: in German, or with the argument "cy" in Welsh, whose alphabet has letters of several
   characters. */
static const char* words = "Leek\nK\xc3\xbcrbis\nBroad bean\n";
static const char* locale = "de";
static const char* avoided = "slug";
static const char* marks = "keep";

static void turn_welsh(void) {
    words = "Leek\nT\xc5\xb7 bach\nBan|gor\n";
    locale = "cy";
    avoided = "chwd";
    marks = "strip";
}

/* The whole way; *text is a copy of all that came out. Returns the first status that is not LODE_OK. */
static int32_t job(char* text, size_t size) {
    static const char* const grid = "L E E K\nX X X X\nA X X X\nX X X X\n";
    lode_recipe* recipe = NULL;
    lode_maker* maker = NULL;
    lode_puzzle* puzzle = NULL;
    lode_puzzle* again = NULL;
    lode_refusal* refusal = NULL;
    lode_grid* other = NULL;
    lode_judge* judge = NULL;
    lode_audit* audit = NULL;
    lode_error* error = NULL;
    const char* const* cells = NULL;
    const char *json = NULL, *json_again = NULL, *audit_json = NULL, *key = NULL;
    int32_t status;

    text[0] = '\0';
    status = lode_recipe_create(&recipe, &error);
    if (status == LODE_OK) status = lode_recipe_set_words_text(recipe, words, "a.txt", &error);
    if (status == LODE_OK) status = lode_recipe_set_locale(recipe, locale, &error);
    if (status == LODE_OK) status = lode_recipe_set_marks(recipe, marks, &error);
    if (status == LODE_OK) status = lode_recipe_set_grid(recipe, 10, 6, &error);
    if (status == LODE_OK) status = lode_recipe_add_avoided(recipe, avoided, &error);
    if (status == LODE_OK) status = lode_recipe_set_crossings(recipe, 0, LODE_ANY_NUMBER, &error);
    if (status == LODE_OK) status = lode_maker_create(&maker, &refusal, recipe, &error);
    if (status == LODE_OK) status = lode_maker_make(&puzzle, &refusal, maker, 1, NULL, &error);
    if (status == LODE_OK) status = lode_puzzle_cells(&cells, puzzle, &error);
    if (status == LODE_OK) status = lode_puzzle_json(&json, puzzle, &error);
    if (status == LODE_OK) status = lode_puzzle_from_json(&again, json, "b.json", &error);
    if (status == LODE_OK) status = lode_puzzle_json(&json_again, again, &error);
    if (status == LODE_OK) status = lode_puzzle_key_text(&key, again, &error);
    if (status == LODE_OK) status = lode_grid_from_text(&other, grid, "c.txt", recipe, &error);
    if (status == LODE_OK) status = lode_judge_create(&judge, recipe, &error);
    if (status == LODE_OK) status = lode_judge_audit(&audit, judge, other, NULL, &error);
    if (status == LODE_OK) status = lode_audit_json(&audit_json, audit, &error);
    if (status == LODE_OK) {
        counting = 0;
        snprintf(text, size, "%s%s%s%s", json, json_again, key, audit_json);
    } else if (status == LODE_REFUSED) {
        counting = 0;
        snprintf(text, size, "%s", lode_refusal_message(refusal));
    } else {
        counting = 0;
        snprintf(text, size, "%s", lode_error_message(error));
    }
    lode_audit_free(audit);
    lode_judge_free(judge);
    lode_grid_free(other);
    lode_puzzle_free(again);
    lode_puzzle_free(puzzle);
    lode_refusal_free(refusal);
    lode_maker_free(maker);
    lode_recipe_free(recipe);
    lode_error_free(error);
    return status;
}

enum { TEXT = 1 << 16 };
static char right[TEXT], got[TEXT];

/* How a process with one allocation failing may end. */
enum { RIGHT_PUZZLE, RAN_OUT, OTHER_STATUS, OTHER_PUZZLE, NO_PUZZLE_AFTERWARDS };
static const char* const ends[] = {"gave the right puzzle", "ran out of memory", "gave another status",
                                   "gave another puzzle", "gave no puzzle with memory at hand again"};

static int starved(void) {
    int32_t status;
    counting = 1;
    status = job(got, TEXT);
    if (status != LODE_OK && status != LODE_OUT_OF_MEMORY) {
        fprintf(stderr, "status %d: %s\n", (int)status, got);
        return OTHER_STATUS;
    }
    if (status == LODE_OK && strcmp(got, right) != 0) return OTHER_PUZZLE;
    if (job(got, TEXT) != LODE_OK || strcmp(got, right) != 0) return NO_PUZZLE_AFTERWARDS;
    return status == LODE_OK ? RIGHT_PUZZLE : RAN_OUT;
}

static void write_all(int to, const void* bytes, size_t size) {
    size_t done = 0;
    while (done < size) {
        const ssize_t more = write(to, (const char*)bytes + done, size - done);
        if (more <= 0) _exit(9);
        done += (size_t)more;
    }
}

static int read_all(int from, void* bytes, size_t size) {
    size_t done = 0;
    while (done < size) {
        const ssize_t more = read(from, (char*)bytes + done, size - done);
        if (more <= 0) return 0;
        done += (size_t)more;
    }
    return 1;
}

/* The right puzzle, and how many allocations it takes. Asked of a process of its own, so that this one stays
   as fresh as a user's. Returns 0 where it cannot be had. */
static unsigned long count(void) {
    unsigned long total = 0;
    int ends_of_pipe[2], there;
    pid_t child;
    if (pipe(ends_of_pipe) != 0) return 0;
    child = fork();
    if (child == 0) {
        counting = 1;
        if (job(right, TEXT) != LODE_OK) _exit(9);
        write_all(ends_of_pipe[1], &allocations, sizeof allocations);
        write_all(ends_of_pipe[1], right, TEXT);
        _exit(0);
    }
    close(ends_of_pipe[1]);
    there = child > 0 && read_all(ends_of_pipe[0], &total, sizeof total) &&
            read_all(ends_of_pipe[0], right, TEXT);
    close(ends_of_pipe[0]);
    waitpid(child, NULL, 0);
    return there ? total : 0;
}

/* Starves a process at every allocation. Returns how many ended as they must not, or 1 where none felt it. */
static unsigned long starve_each(const char* whose) {
    const unsigned long total = count();
    unsigned long number, ran_out = 0, faults = 0;
    for (number = 1; number <= total; ++number) {
        int status = 0;
        const pid_t child = fork();
        if (child == 0) {
            failing = number;
            _exit(starved());
        }
        if (child < 0 || waitpid(child, &status, 0) != child) return 1;
        if (WIFEXITED(status) && WEXITSTATUS(status) == RAN_OUT) ++ran_out;
        if (WIFSIGNALED(status)) {
            ++faults;
            fprintf(stderr, "%s allocation %lu: killed by signal %d\n", whose, number, WTERMSIG(status));
        } else if (WEXITSTATUS(status) > RAN_OUT) {
            ++faults;
            fprintf(stderr, "%s allocation %lu: %s\n", whose, number, ends[WEXITSTATUS(status)]);
        }
    }
    printf("%s %lu allocations: memory ran out %lu times, %lu faults\n", whose, total, ran_out, faults);
    return ran_out == 0 ? 1 : faults;
}

int main(int count_of_arguments, char** arguments) {
    unsigned long faults;
    if (count_of_arguments > 1 && strcmp(arguments[1], "cy") == 0) turn_welsh();
    if (dl_iterate_phdr(note_icu, NULL) != 0 || icu_part_count == 0 || icu_part_count == MOST_PARTS) {
        fprintf(stderr, "ICU is not where it was expected: in libraries of its own\n");
        return 1;
    }
    faults = starve_each("each of our");
    all_that_follow = 1;
    faults += starve_each("all from each of our");
    of_icu = 1;
    if (job(got, TEXT) != LODE_OK) return 1;
    faults += starve_each("all from each of ICU's");
    all_that_follow = 0;
    faults += starve_each("each of ICU's");
    return faults == 0 ? 0 : 1;
}
