/* As starved.c, of artwork, cutting and print: lets an allocation fail, each time in a process of its own.
   The call must return a status that is none of success, or give the right bytes; and the right bytes when
   there is memory again. The status is LODE_OUT_OF_MEMORY wherever the loss is told to us; a library that
   keeps it to itself may make it look like a blank that is too small, or a font that is none.

   There are more than a hundred thousand of them, so that a sample is taken, spread evenly. Those of each
   library below are a case apart, since each has its own way to bear the loss. The last four do not bear
   every one, and nothing on our side of them can mend it: fontconfig goes through NULL; Cairo now and then
   writes a PDF that lacks something, or over its stack; HarfBuzz shapes without what it could not read; a
   destructor of qpdf's throws where zlib has no memory. They are starved only by name: one as an argument
   starves it alone, a number after it takes so many, and "all" after that lets all that follow fail too,
   which Clipper and qpdf do not bear either. */
#define _GNU_SOURCE
#include <letterlode/letterlode_art.h>
#include <link.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/types.h>
#include <sys/wait.h>
#include <unistd.h>

#include "starving.h"

/* Whose allocations fail; all that none of the others makes are ours, and C++'s on behalf of any. */
enum { OURS, ICU, PIXMAN, PNG, FREETYPE, BEAR_IT, CAIRO = BEAR_IT, ZLIB, HARFBUZZ, FONTCONFIG, LIBRARIES };
static const char* const names[LIBRARIES] = {"ours",   "libicu",      "libpixman",
                                             "libpng", "libfreetype", "libcairo",
                                             "libz",   "libharfbuzz", "libfontconfig"};

static int whose = OURS;

/* Where the others' code lies. */
enum { MOST_PARTS = 256 };
static struct {
    uintptr_t first, end;
    int library;
} parts[MOST_PARTS];
static int part_count = 0;

static int note_parts(struct dl_phdr_info* info, size_t size, void* data) {
    int at, library;
    const char* file = strrchr(info->dlpi_name, '/');
    (void)size, (void)data;
    for (library = ICU; library < LIBRARIES; ++library)
        if (file && strncmp(file + 1, names[library], strlen(names[library])) == 0) break;
    if (library == LIBRARIES) return 0;
    for (at = 0; at < info->dlpi_phnum && part_count < MOST_PARTS; ++at) {
        if (info->dlpi_phdr[at].p_type != PT_LOAD) continue;
        parts[part_count].first = info->dlpi_addr + info->dlpi_phdr[at].p_vaddr;
        parts[part_count].end = parts[part_count].first + info->dlpi_phdr[at].p_memsz;
        parts[part_count++].library = library;
    }
    return 0;
}

static int library_at(uintptr_t address) {
    int at;
    for (at = 0; at < part_count; ++at)
        if (address >= parts[at].first && address < parts[at].end) return parts[at].library;
    return OURS;
}

static int is_meant(uintptr_t caller) {
    return whose == library_at(caller);
}

/* Stood in for as well, so that the copy counts as its caller's. */
char* strdup(const char* text) {
    const size_t size = strlen(text) + 1;
    char* copy = FAILS ? NULL : __libc_malloc(size);
    return copy == NULL ? NULL : memcpy(copy, text, size);
}

/* All bytes that came out, as their number and a sum over them (FNV-1a). */
typedef struct {
    uint64_t sum;
    uint64_t size;
} Result;

static void take(Result* result, const void* data, size_t size) {
    const unsigned char* bytes = data;
    size_t at;
    for (at = 0; at < size; ++at) result->sum = (result->sum ^ bytes[at]) * UINT64_C(1099511628211);
    result->size += size;
}

static void take_and_free(Result* result, lode_bytes* bytes) {
    take(result, lode_bytes_data(bytes), lode_bytes_size(bytes));
    lode_bytes_free(bytes);
}

static lode_puzzle* puzzle = NULL; /* made while there is memory: starved.c is about that */
static char message[4096];

static int make_puzzle(void) {
    lode_recipe* recipe = NULL;
    lode_refusal* refusal = NULL;
    int32_t status = lode_recipe_create(&recipe, NULL);
    if (status == LODE_OK) status = lode_recipe_set_words_text(recipe, "Fig\nPea\n", NULL, NULL);
    if (status == LODE_OK) status = lode_recipe_set_grid(recipe, 5, 3, NULL);
    if (status == LODE_OK) status = lode_make(&puzzle, &refusal, recipe, NULL, NULL);
    lode_refusal_free(refusal);
    lode_recipe_free(recipe);
    return status == LODE_OK;
}

/* The whole way: drawn in a font file's letters with a heading in the built-in ones, measured, planned,
   written in every format, printed. Returns the first status that is not LODE_OK. */
static int32_t job(Result* result) {
    lode_artwork_options* options = NULL;
    lode_artwork* artwork = NULL;
    lode_cut_options* cutting = NULL;
    lode_plan* plan = NULL;
    lode_files* files = NULL;
    lode_worksheets* worksheets = NULL;
    lode_pages* pages = NULL;
    lode_bytes *picture = NULL, *dxf = NULL, *json = NULL, *text = NULL;
    lode_refusal* refusal = NULL;
    lode_error* error = NULL;
    size_t at;
    int32_t status = lode_artwork_options_create(&options, &error);
    if (status == LODE_OK) status = lode_artwork_options_set_blank(options, "oval 120x100mm", &error);
    if (status == LODE_OK) status = lode_artwork_options_set_surface(options, "second", &error);
    if (status == LODE_OK) status = lode_artwork_options_set_font(options, "DejaVu Sans:bold", &error);
    if (status == LODE_OK) status = lode_artwork_options_set_heading(options, "FIG", &error);
    if (status == LODE_OK) status = lode_artwork_options_set_heading_font(options, "constructed", &error);
    if (status == LODE_OK) status = lode_draw_and_measure(&artwork, &refusal, puzzle, options, NULL, &error);
    if (status == LODE_OK) status = lode_artwork_preview(&picture, artwork, 100, &error);
    if (status == LODE_OK) status = lode_artwork_drawing(&dxf, artwork, "dxf", &error);
    if (status == LODE_OK) status = lode_cut_options_create(&cutting, &error);
    if (status == LODE_OK) status = lode_cut_options_set_bed(cutting, 200, 200, &error);
    if (status == LODE_OK) status = lode_cut_options_set_preview(cutting, 64, &error);
    if (status == LODE_OK) status = lode_plan_loads(&plan, &refusal, artwork, cutting, NULL, &error);
    if (status == LODE_OK) status = lode_cut_json(&json, artwork, plan, cutting, &error);
    if (status == LODE_OK) status = lode_cut_files(&files, &refusal, artwork, plan, cutting, NULL, &error);
    if (status == LODE_OK) status = lode_worksheets_create(&worksheets, &error);
    if (status == LODE_OK) status = lode_worksheets_add(worksheets, puzzle, "Herb bed", NULL, &error);
    if (status == LODE_OK) status = lode_worksheets_text(&text, worksheets, NULL, &error);
    if (status == LODE_OK) status = lode_print(&pages, worksheets, NULL, &error);
    counting = 0;
    result->sum = UINT64_C(14695981039346656037);
    result->size = 0;
    message[0] = '\0';
    if (status == LODE_OK)
        take(result, lode_bytes_data(lode_pages_pdf(pages)), lode_bytes_size(lode_pages_pdf(pages)));
    else if (refusal != NULL)
        snprintf(message, sizeof message, "%s", lode_refusal_message(refusal));
    else if (error != NULL)
        snprintf(message, sizeof message, "%s", lode_error_message(error));
    for (at = 0; at < lode_files_count(files); ++at)
        take(result, lode_files_data(files, at), lode_files_size(files, at));
    take_and_free(result, picture);
    take_and_free(result, dxf);
    take_and_free(result, json);
    take_and_free(result, text);
    lode_pages_free(pages);
    lode_worksheets_free(worksheets);
    lode_files_free(files);
    lode_plan_free(plan);
    lode_cut_options_free(cutting);
    lode_artwork_free(artwork);
    lode_artwork_options_free(options);
    lode_refusal_free(refusal);
    lode_error_free(error);
    return status;
}

static Result right;

static int is_right(const Result* result) {
    return result->sum == right.sum && result->size == right.size;
}

/* How a process may end: the last two must not be. */
enum { RIGHT_BYTES, RAN_OUT, OTHER_STATUS, OTHER_BYTES, NOT_RIGHT_AFTERWARDS, ENDS };
static const char* const ends[ENDS] = {"gave the right bytes", "ran out of memory", "gave another status",
                                       "gave other bytes",
                                       "gave not the right bytes with memory at hand again"};

static int starved(void) {
    Result got, again;
    int32_t status;
    counting = 1;
    status = job(&got);
    if (status == LODE_OK && !is_right(&got)) return OTHER_BYTES;
    if (status != LODE_OK && status != LODE_OUT_OF_MEMORY)
        fprintf(stderr, "status %d: %s\n", (int)status, message);
    if (job(&again) != LODE_OK || !is_right(&again)) return NOT_RIGHT_AFTERWARDS;
    return status == LODE_OK ? RIGHT_BYTES : status == LODE_OUT_OF_MEMORY ? RAN_OUT : OTHER_STATUS;
}

/* How many allocations the job takes of a library in a fresh process; also what is right. 0 where it cannot
   be had. */
static unsigned long count(void) {
    struct {
        unsigned long allocations;
        Result result;
    } told = {0, {0, 0}};
    int ends_of_pipe[2];
    ssize_t got = 0;
    pid_t child;
    if (pipe(ends_of_pipe) != 0) return 0;
    child = fork();
    if (child == 0) {
        counting = 1;
        if (job(&told.result) != LODE_OK) {
            fprintf(stderr, "%s\n", message);
            _exit(9);
        }
        told.allocations = allocations;
        _exit(write(ends_of_pipe[1], &told, sizeof told) == (ssize_t)sizeof told ? 0 : 9);
    }
    close(ends_of_pipe[1]);
    if (child > 0) got = read(ends_of_pipe[0], &told, sizeof told);
    close(ends_of_pipe[0]);
    waitpid(child, NULL, 0);
    right = told.result;
    return got == (ssize_t)sizeof told ? told.allocations : 0;
}

/* Starves a process at so many of the allocations, or at each where there are no more. Returns how many ended
   as they must not, or 1 where none felt it. */
static unsigned long starve(unsigned long most) {
    const unsigned long total = count();
    const unsigned long samples = total < most ? total : most;
    unsigned long sample, faults = 0, ended[ENDS] = {0};
    for (sample = 0; sample < samples; ++sample) {
        int status = 0, end;
        const unsigned long number = 1 + sample * total / samples;
        const pid_t child = fork();
        if (child == 0) {
            failing = number;
            alarm(60);
            _exit(starved());
        }
        if (child < 0 || waitpid(child, &status, 0) != child) return 1;
        end = WIFEXITED(status) ? WEXITSTATUS(status) : ENDS;
        if (end < ENDS) ++ended[end];
        if (end < OTHER_BYTES) continue;
        ++faults;
        if (end < ENDS)
            fprintf(stderr, "%s allocation %lu: %s\n", names[whose], number, ends[end]);
        else
            fprintf(stderr, "%s allocation %lu: killed by signal %d\n", names[whose], number,
                    WTERMSIG(status));
    }
    printf("%s, %lu of %lu allocations: memory ran out %lu times, %lu gave another status, %lu faults\n",
           names[whose], samples, total, ended[RAN_OUT], ended[OTHER_STATUS], faults);
    fflush(stdout);
    return ended[RAN_OUT] == 0 ? faults + 1 : faults;
}

int main(int count_of_arguments, char** arguments) {
    unsigned long faults = 0;
    const unsigned long most = count_of_arguments > 2 ? strtoul(arguments[2], NULL, 10) : 16;
    all_that_follow = count_of_arguments > 3;
    if (dl_iterate_phdr(note_parts, NULL) != 0 || part_count == 0 || part_count == MOST_PARTS) {
        fprintf(stderr, "the libraries are not where they were expected\n");
        return 1;
    }
    if (!make_puzzle() || job(&right) != LODE_OK) return 1;
    for (whose = OURS; whose < LIBRARIES; ++whose) {
        if (count_of_arguments > 1 ? strcmp(arguments[1], names[whose]) != 0 : whose >= BEAR_IT) continue;
        faults += starve(most);
    }
    return faults == 0 ? 0 : 1;
}
