#ifndef LETTERLODE_LETTERLODE_H
#define LETTERLODE_LETTERLODE_H
/** @file
 * letterlode for C99, C++ and every language that can call C: words in, a certified puzzle out. The rules:
 *
 *  1. Results. They come in out parameters, which stand first and are overwritten whatever they held. Where a
 *     call fails they are NULL or 0.
 *  2. Status. A call that can fail returns one of the codes below as an int32_t. Codes may grow: take one that
 *     you do not know for a failure.
 *  3. Errors. The last parameter, lode_error** error, may be NULL. A failure (any status but LODE_OK and
 *     LODE_REFUSED) leaves an error there, which is yours to free; every other end leaves NULL.
 *  4. Handles. All types are opaque. What a call hands out through an out parameter of a handle's type is yours:
 *     free it once with the type's own function, which passes over NULL.
 *  5. Strings. UTF-8, ended by NUL. The library copies what you pass in. What it hands out belongs to the handle
 *     that was asked and lives as long; never free it. A `source` is any name of yours for messages ("words.txt").
 *  6. Getters return their value. Asked of NULL, or of a place where there is nothing, they give NULL or 0.
 *  7. Counting. Here rows, columns and places in lists count from 0; in JSON, messages and texts, from 1.
 *  8. Threads. There is no global state and nothing to set up. Makers, puzzles, lists of puzzles, grids, audits,
 *     ratings, refusals and errors never change: share them freely. A recipe, a judge and what is said of letters
 *     as they are seen have any number of readers or one writer at a time; a control says its own.
 *  9. Safety. No exception leaves, nothing aborts, prints, or depends on the C locale. Memory that ran out is a
 *     status (at the very first calls one that ICU may keep to until the process ends). NULL is a broken call,
 *     never a crash, but where a parameter is said to be nullable.
 *  10. Each comment ends with [who owns the result | on which threads it may run | since which version].
 */

#include <stddef.h>
#include <stdint.h>

#ifndef LODE_API
#define LODE_API __attribute__((visibility("default")))
#endif

/** The version that you compile against; lode_version() is the one that is loaded. */
#define LODE_VERSION "0.1.0"
#define LODE_VERSION_MAJOR 0 /**< its first number */
#define LODE_VERSION_MINOR 1 /**< its second number */
#define LODE_VERSION_PATCH 0 /**< its third number */

/** Where a call asks how many there are to be: as many as come. */
#define LODE_ANY_NUMBER UINT64_MAX

#ifdef __cplusplus
extern "C" {
#endif

/** Status codes. */
enum {
    LODE_OK = 0,
    LODE_REFUSED = 1,      /**< of work alone: nothing was made, and the refusal says why and what would help */
    LODE_UNUSABLE = 2,     /**< what was passed in cannot be used: the error names line and word */
    LODE_BROKEN_CALL = 3,  /**< the calling program is wrong: NULL, or a place beyond a list's end */
    LODE_OUT_OF_MEMORY = 4,
    LODE_FAULT = 5,        /**< ours: please report its message */
    LODE_CANCELLED = 6,    /**< of searching a grid: you cancelled before its end */
    LODE_DISK_FAULT = 7    /**< the machine would not write: its disk is full, or the place is closed to you */
};

/** Why there is no puzzle. */
enum {
    LODE_REASON_IMPOSSIBLE = 1, /**< proved: no such puzzle exists */
    LODE_REASON_UNFINISHED = 2, /**< the effort ran out, or you cancelled, before either was known */
    LODE_REASON_UNUSABLE = 3    /**< the recipe describes no puzzle: source, line and words say where */
};

/** Directions, as a person sees them. The second four are the first four turned round, in the same order. */
enum {
    LODE_RIGHT = 0,
    LODE_DOWN = 1,
    LODE_DOWN_RIGHT = 2,
    LODE_UP_RIGHT = 3,
    LODE_LEFT = 4,
    LODE_UP = 5,
    LODE_UP_LEFT = 6,
    LODE_DOWN_LEFT = 7
};

/** What the parts of a rating are about. */
enum {
    LODE_READABILITY = 0, /**< how easily the letters are read */
    LODE_DIFFICULTY = 1   /**< how much search the puzzle asks for */
};

typedef struct lode_error lode_error;     /**< why a call failed */
typedef struct lode_recipe lode_recipe;   /**< everything that a puzzle is made from */
typedef struct lode_control lode_control; /**< a hold on work under way */
typedef struct lode_maker lode_maker;     /**< a recipe checked once, from which puzzles are made */
typedef struct lode_puzzle lode_puzzle;   /**< a grid with its words */
typedef struct lode_puzzles lode_puzzles; /**< several puzzles of one recipe */
typedef struct lode_refusal lode_refusal; /**< why there is no puzzle */
typedef struct lode_grid lode_grid;       /**< anybody's grid */
typedef struct lode_judge lode_judge;     /**< a recipe's words and rules, ready to judge many grids */
typedef struct lode_audit lode_audit;     /**< what a search of a finished grid found */
typedef struct lode_rating lode_rating;   /**< what a reader meets */
typedef struct lode_seen lode_seen;       /**< letters as they hang on a wall */

/* ---- Version and names ---------------------------------------------------------------------------------- */

/** The version that is loaded: "0.1.0". [the library's, for good | any | 0.1] */
LODE_API const char* lode_version(void);

/** A status in words ("the input cannot be used"); says so of one that this version does not know.
    [the library's, for good | any | 0.1] */
LODE_API const char* lode_status_text(int32_t status);

/** "down-right", or NULL for a number that is no direction. [the library's, for good | any | 0.1] */
LODE_API const char* lode_direction_name(int32_t direction);

/** The change of row and of column by one step in the direction, each -1, 0 or 1.
    [no result to own | any | 0.1] */
LODE_API int32_t lode_direction_step(int32_t* row, int32_t* column, int32_t direction, lode_error** error);

/* ---- Errors --------------------------------------------------------------------------------------------- */

/** The status that came with it. [nothing to own | any | 0.1] */
LODE_API int32_t lode_error_code(const lode_error* error);
/** A sentence or more; names source, line, word and position where there are any. [the error's | any | 0.1] */
LODE_API const char* lode_error_message(const lode_error* error);
/** The source that holds the fault, as you named it, or "". [the error's | any | 0.1] */
LODE_API const char* lode_error_source(const lode_error* error);
/** Its line, from 1, or 0 where there is none. [nothing to own | any | 0.1] */
LODE_API int32_t lode_error_line(const lode_error* error);
/** Its place in the first word to blame, by user-perceived characters, or else its column in the line; from 1,
    or 0 where there is none. [nothing to own | any | 0.1] */
LODE_API int32_t lode_error_position(const lode_error* error);
/** The words to blame, as you wrote them. [nothing to own | any | 0.1] */
LODE_API size_t lode_error_word_count(const lode_error* error);
/** One of them. [the error's | any | 0.1] */
LODE_API const char* lode_error_word(const lode_error* error, size_t index);
/** Ways out, a sentence each. [nothing to own | any | 0.1] */
LODE_API size_t lode_error_advice_count(const lode_error* error);
/** One of them. [the error's | any | 0.1] */
LODE_API const char* lode_error_advice(const lode_error* error, size_t index);
/** Frees it. [nothing to own | any, when no other uses the error | 0.1] */
LODE_API void lode_error_free(lode_error* error);

/* ---- Recipes -------------------------------------------------------------------------------------------- */
/* Everything that a puzzle is made from. The same recipe gives the same puzzle on every machine. A setter that
   fails leaves the recipe as it was. What a setter can tell at once it refuses at once; whether the demands can
   be met together, by these words and in this grid, is said when a puzzle is made. */

/** An empty recipe, whose defaults are: four forward directions, a square grid of the size that the words need,
    upper case, no locale in particular, seed 1, the language's avoid list. [yours | any | 0.1] */
LODE_API int32_t lode_recipe_create(lode_recipe** recipe, lode_error** error);

/** A recipe in JSON, as lode_recipe_json writes it and data/schema describes it. `source` is nullable.
    [yours | any | 0.1] */
LODE_API int32_t lode_recipe_from_json(lode_recipe** recipe, const char* json, const char* source,
                                       lode_error** error);

/** Another that says the same. [yours | as a reader of the recipe | 0.1] */
LODE_API int32_t lode_recipe_copy(lode_recipe** copy, const lode_recipe* recipe, lode_error** error);

/** The recipe as JSON. [the recipe's, until it is changed or freed | as a reader of the recipe | 0.1] */
LODE_API int32_t lode_recipe_json(const char** json, const lode_recipe* recipe, lode_error** error);

/** Frees it. [nothing to own | any, when no other uses the recipe | 0.1] */
LODE_API void lode_recipe_free(lode_recipe* recipe);

/* -- Its words */

/** Takes the words of a list in place of those it had: a word a line; blank lines, and '#' comments at the start
    of a line or between blanks, are passed over; a first line "word,band" makes it a table with a band for each
    word. What can stand in no cell is found when a puzzle is made. `source` is nullable.
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_words_text(lode_recipe* recipe, const char* text, const char* source,
                                            lode_error** error);

/** Adds one word, as the list will show it. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_add_word(lode_recipe* recipe, const char* word, lode_error** error);

/** Adds one word that stands on a line of its source, for messages, from 1, or 0 for none; and says how it is
    marked in artwork: `band` is a colour, "#rrggbb" or a keyword of CSS, or "none", or NULL or "" for one like
    the others. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_add_listed_word(lode_recipe* recipe, const char* word, int32_t line,
                                             const char* band, lode_error** error);

/** Where the words come from, for messages; nullable. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_words_source(lode_recipe* recipe, const char* source, lode_error** error);

/** Takes all words out. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_clear_words(lode_recipe* recipe, lode_error** error);

/** How many words it lists. [nothing to own | as a reader of the recipe | 0.1] */
LODE_API size_t lode_recipe_word_count(const lode_recipe* recipe);

/** One of them, as you wrote it. [the recipe's, until it is changed or freed | as a reader of the recipe | 0.1] */
LODE_API const char* lode_recipe_word(const lode_recipe* recipe, size_t word);

/** What becomes of a word that can be read inside another: "inside" counts it there, "separate" gives it a place
    of its own besides. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_nested(lode_recipe* recipe, const char* rule, lode_error** error);

/** Whether the avoid list of the locale's language counts: 0 or not 0.
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_default_avoid_list(lode_recipe* recipe, int32_t on, lode_error** error);

/** One more word that may stand nowhere, whatever its case and marks.
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_add_avoided(lode_recipe* recipe, const char* word, lode_error** error);

/** Takes those words out; the default list stays as it is. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_clear_avoided(lode_recipe* recipe, lode_error** error);

/** An avoided word that may stand all the same. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_allow(lode_recipe* recipe, const char* word, lode_error** error);

/** Allows none. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_clear_allowed(lode_recipe* recipe, lode_error** error);

/* -- Its letters */

/** The language of the words, by whose rules they are cut into letters and cased: "en", "cy", "sr-Latn"; "root"
    for none in particular. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_locale(lode_recipe* recipe, const char* tag, lode_error** error);

/** "upper", "lower" or "keep". [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_letters(lode_recipe* recipe, const char* letter_case, lode_error** error);

/** Letters of several characters that the language's alphabet has, such as LL in Welsh: "join" gives each a cell,
    "split" one a character. A bar in a word parts letters by hand: "Ban|gor".
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_digraphs(lode_recipe* recipe, const char* rule, lode_error** error);

/** The German sharp s: "double" (SS, two cells) or "keep" (one). Never set: doubled in upper case, kept
    otherwise. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_sharp_s(lode_recipe* recipe, const char* rule, lode_error** error);

/** Marks on letters: "keep", or "strip" those that can be taken off.
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_marks(lode_recipe* recipe, const char* rule, lode_error** error);

/** Hebrew final letters and the Greek final sigma: "keep", or "fold" into those within a word.
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_finals(lode_recipe* recipe, const char* rule, lode_error** error);

/* -- Its grid */

/** A grid of this size. Takes a mask back. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_grid(lode_recipe* recipe, int32_t columns, int32_t rows, lode_error** error);

/** The smallest grid that holds the words comfortably; `aspect` is columns over rows, 0.01 to 100. Takes a mask
    back. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_grid_auto(lode_recipe* recipe, double aspect, lode_error** error);

/** The smallest grid that is found; `aspect` as above. Takes a mask back.
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_grid_tight(lode_recipe* recipe, double aspect, lode_error** error);

/** "rectangle", "ellipse", "heart", "diamond" or "star", as large as the grid. Takes a mask back.
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_shape(lode_recipe* recipe, const char* name, lode_error** error);

/** A shape and size of your own, drawn a line a row: a letter or a digit for an open cell; '.', '#' or a blank
    for a closed one. `source` is nullable. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_mask_text(lode_recipe* recipe, const char* text, const char* source,
                                           lode_error** error);

/** "all", or names with commas between: "right,down". [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_directions(lode_recipe* recipe, const char* names, lode_error** error);

/** The four forward ones of the words' script again. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_clear_directions(lode_recipe* recipe, lode_error** error);

/** Another seed gives another puzzle. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_seed(lode_recipe* recipe, uint64_t seed, lode_error** error);

/** The seed. [nothing to own | as a reader of the recipe | 0.1] */
LODE_API uint64_t lode_recipe_seed(const lode_recipe* recipe);

/** Steps of search at the most, 50,000,000 by default: never seconds, so that results repeat.
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_effort(lode_recipe* recipe, uint64_t steps, lode_error** error);

/** How many different puzzles are wanted, 1 to 1000. The command line goes by it, and lode_recipe_json keeps it;
    lode_make makes one, and lode_maker_choices is told its own number.
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_choices(lode_recipe* recipe, int32_t count, lode_error** error);

/* -- What stands between its words */

/** What the cells outside all words spell in reading order; "" takes it back. There are as many of them as it has
    letters. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_message(lode_recipe* recipe, const char* message, lode_error** error);

/** What follows the message: "nothing", which is the default, or "filler" in the cells that it leaves.
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_message_then(lode_recipe* recipe, const char* what, lode_error** error);

/** How often each letter comes in the filler: "words", "language", "only-words" or "easy-weeding".
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_filler(lode_recipe* recipe, const char* way, lode_error** error);

/** Counts the letters of the language in a text, by the locale and case that the recipe has at this call, in
    place of the language's table; for the fillers "language" and "easy-weeding" alone. Refused where it holds no
    letter. `source` is nullable. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_filler_text(lode_recipe* recipe, const char* text, const char* source,
                                             lode_error** error);

/** The same by numbers of your own, a letter at a time; 0 to 1,000,000,000. A letter that has a count takes the
    new one. Whether it is one letter is said when a puzzle is made.
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_letter_count(lode_recipe* recipe, const char* letter, uint64_t count,
                                              lode_error** error);

/** Goes by the language's table again. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_clear_letter_counts(lode_recipe* recipe, lode_error** error);

/** Equal letters in a row at the most, in any direction, where one of them is filler, 3 by default; 0 for any
    number. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_longest_run(lode_recipe* recipe, int32_t letters, lode_error** error);

/** "apart": no filler letter beside one that it is easily taken for (O and Q); or "anywhere", the default.
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_look_alikes(lode_recipe* recipe, const char* where, lode_error** error);

/* -- How its words stand */

/** A word's place: the cell of its first letter, and a LODE_... direction. The word is written as in the list;
    whether it is in it, and whether the place fits the grid, is said when a puzzle is made.
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_pin(lode_recipe* recipe, const char* word, int32_t row, int32_t column,
                                 int32_t direction, lode_error** error);

/** Gives no word a place. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_clear_pins(lode_recipe* recipe, lode_error** error);

/** How many cells two or more words share, at the least and at the most: 0 and LODE_ANY_NUMBER by default, 0 and 0
    for none. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_crossings(lode_recipe* recipe, uint64_t least, uint64_t most,
                                           lode_error** error);

/** Cells between any two words at the least, in every direction: 0 to 20.
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_spacing(lode_recipe* recipe, int32_t cells, lode_error** error);

/** Exactly so many open cells outside all words; LODE_ANY_NUMBER, the default, for as many as come.
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_leftover(lode_recipe* recipe, uint64_t cells, lode_error** error);

/** The words in equal shares of the directions. Takes weights back.
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_equal_shares(lode_recipe* recipe, lode_error** error);

/** The words in shares by weight, 0 to 1,000,000 for each direction; a direction that no call names has 0. Takes
    equal shares back. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_share(lode_recipe* recipe, int32_t direction, int32_t weight,
                                       lode_error** error);

/** The words in whatever shares come. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_clear_shares(lode_recipe* recipe, lode_error** error);

/** Words that read backward, at the most; LODE_ANY_NUMBER, the default, for as many as come.
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_backward(lode_recipe* recipe, uint64_t words, lode_error** error);

/** Keeps as much as can be of an earlier puzzle: where its words stood, and its filler too where `keep_filler` is
    not 0. lode_puzzle_recipe gives the recipe to change and make again.
    [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_set_earlier(lode_recipe* recipe, const lode_puzzle* puzzle, int32_t keep_filler,
                                         lode_error** error);

/** Keeps nothing. [nothing to own | as the recipe's writer | 0.1] */
LODE_API int32_t lode_recipe_clear_earlier(lode_recipe* recipe, lode_error** error);

/* ---- Making --------------------------------------------------------------------------------------------- */

/** Called now and then, on the thread that makes the puzzle or searches the grid, with how much of the work is done
    and how much there is at the most: in steps of effort, or in rows. It may cancel the control; it must not free
    it, throw, jump out, or end its thread. */
typedef void (*lode_progress)(void* user, uint64_t done, uint64_t all);

/** A hold on work under way. [yours | any | 0.1] */
LODE_API int32_t lode_control_create(lode_control** control, lode_error** error);

/** `progress` and `user` are nullable. [you keep `user` alive as long as the control is used | while no work is
    done under the control | 0.1] */
LODE_API int32_t lode_control_set_progress(lode_control* control, lode_progress progress, void* user,
                                           lode_error** error);

/** How many processors to use at the most, 1 to 1024, 1 by default; the result is the same. Those that are not the
    calling thread end with the call. [nothing to own | while no work is done under the control | 0.1] */
LODE_API int32_t lode_control_set_threads(lode_control* control, int32_t threads, lode_error** error);

/** Whatever is done under the control, now and later, ends soon: a puzzle is refused as LODE_REASON_UNFINISHED, a
    search is LODE_CANCELLED. [nothing to own | any, at any time, and in a signal handler | 0.1] */
LODE_API void lode_control_cancel(lode_control* control);

/** Makes a cancelled control fit for new work. [nothing to own | any | 0.1] */
LODE_API void lode_control_reset(lode_control* control);

/** Frees it. [nothing to own | any, when no other uses the control | 0.1] */
LODE_API void lode_control_free(lode_control* control);

/** Places the words, fills the grid and audits it; a puzzle is given only if it is certified. Exactly one of
    three is set: *puzzle (LODE_OK), *refusal (LODE_REFUSED) or *error (all others). `control` is nullable.
    [*puzzle and *refusal are yours | as a reader of the recipe; several may share a control | 0.1] */
LODE_API int32_t lode_make(lode_puzzle** puzzle, lode_refusal** refusal, const lode_recipe* recipe,
                           const lode_control* control, lode_error** error);

/** Makes some tens of puzzles, *tried of them, and gives the one nearest to an aim: "easier", "harder" or a number
    of fixations for all words, as lode_rating_fixations counts them. They come from seeds that follow the
    recipe's, with two, four and eight directions where the recipe names none and, where `vary_filler` is not 0,
    with other filler; the puzzle's own recipe makes it again. Each has its share of the effort. `control` is
    nullable. [*puzzle and *refusal are yours | as a reader of the recipe; several may share a control | 0.1] */
LODE_API int32_t lode_make_aimed(lode_puzzle** puzzle, size_t* tried, lode_refusal** refusal,
                                 const lode_recipe* recipe, const char* aim, int32_t vary_filler,
                                 const lode_control* control, lode_error** error);

/* ---- Makers --------------------------------------------------------------------------------------------- */
/* A recipe checked once, from which puzzles are made seed by seed. A maker keeps a copy of the recipe. */

/** Checks the recipe. One that describes no puzzle is refused (LODE_REFUSED) as lode_make would refuse it.
    [*maker and *refusal are yours | as a reader of the recipe | 0.1] */
LODE_API int32_t lode_maker_create(lode_maker** maker, lode_refusal** refusal, const lode_recipe* recipe,
                                   lode_error** error);

/** The puzzle that lode_make gives of the recipe with this seed. `control` is nullable.
    [*puzzle and *refusal are yours | any; several may share a control | 0.1] */
LODE_API int32_t lode_maker_make(lode_puzzle** puzzle, lode_refusal** refusal, const lode_maker* maker,
                                 uint64_t seed, const lode_control* control, lode_error** error);

/** Up to `count` different puzzles, 1 to 1000, from seeds that follow each other, in their order; each can be made
    again by its seed alone. Fewer where many seeds give none or the same, refused where none gives one; a cancelled
    call gives what was finished. `control` is nullable.
    [*puzzles and *refusal are yours | any; several may share a control | 0.1] */
LODE_API int32_t lode_maker_choices(lode_puzzles** puzzles, lode_refusal** refusal, const lode_maker* maker,
                                    uint64_t first_seed, size_t count, const lode_control* control,
                                    lode_error** error);

/** Exactly `count` puzzles, 1 to 26, for neighbours in a class: alike in difficulty, and with as few words as can be
    at the same place in two of them. Refused where too few are alike. `control` is nullable.
    [*puzzles and *refusal are yours | any; several may share a control | 0.1] */
LODE_API int32_t lode_maker_versions(lode_puzzles** puzzles, lode_refusal** refusal, const lode_maker* maker,
                                     uint64_t first_seed, size_t count, const lode_control* control,
                                     lode_error** error);

/** Frees it. [nothing to own | any, when no other uses the maker | 0.1] */
LODE_API void lode_maker_free(lode_maker* maker);

/* ---- Lists of puzzles ----------------------------------------------------------------------------------- */

/** How many there are. [nothing to own | any | 0.1] */
LODE_API size_t lode_puzzles_count(const lode_puzzles* puzzles);
/** One of them; lode_puzzle_copy gives one of your own. [the list's | any | 0.1] */
LODE_API const lode_puzzle* lode_puzzles_at(const lode_puzzles* puzzles, size_t index);
/** Of versions, the fixations that each asks for, as lode_rating_fixations counts them; else 0.
    [nothing to own | any | 0.1] */
LODE_API double lode_puzzles_fixations(const lode_puzzles* puzzles, size_t index);
/** Of versions, how many puzzles were tried for them; else 0. [nothing to own | any | 0.1] */
LODE_API size_t lode_puzzles_tried(const lode_puzzles* puzzles);
/** Of versions, how many times a word stands at the same place in two of them; else 0.
    [nothing to own | any | 0.1] */
LODE_API size_t lode_puzzles_shared_places(const lode_puzzles* puzzles);
/** A list of the same puzzles, the best first: nearest to an aim, which lode_make_aimed describes, or, where it is
    NULL, the calmest to read. [yours | any | 0.1] */
LODE_API int32_t lode_puzzles_rank(lode_puzzles** ranked, const lode_puzzles* puzzles, const char* aim,
                                   lode_error** error);
/** Of a ranked list, what a puzzle's place goes by, less being better; else 0. [nothing to own | any | 0.1] */
LODE_API double lode_puzzles_score(const lode_puzzles* puzzles, size_t index);
/** Of a ranked list, what the score is made from, for people; else NULL. [the list's | any | 0.1] */
LODE_API const char* lode_puzzles_reason(const lode_puzzles* puzzles, size_t index);
/** The list as JSON, made at the first call. [the list's | any | 0.1] */
LODE_API int32_t lode_puzzles_json(const char** json, const lode_puzzles* puzzles, lode_error** error);
/** Frees it and its puzzles. [nothing to own | any, when no other uses the list or its puzzles | 0.1] */
LODE_API void lode_puzzles_free(lode_puzzles* puzzles);

/* ---- Refusals ------------------------------------------------------------------------------------------- */

/** A LODE_REASON_..., which may grow. [nothing to own | any | 0.1] */
LODE_API int32_t lode_refusal_reason(const lode_refusal* refusal);
/** A sentence or more; names source, line, word and position where there are any. [the refusal's | any | 0.1] */
LODE_API const char* lode_refusal_message(const lode_refusal* refusal);
/** The source that holds the fault, as you named it, or "". [the refusal's | any | 0.1] */
LODE_API const char* lode_refusal_source(const lode_refusal* refusal);
/** Its line, from 1, or 0 where there is none. [nothing to own | any | 0.1] */
LODE_API int32_t lode_refusal_line(const lode_refusal* refusal);
/** Its place in the first word to blame, by user-perceived characters, or else its column in the line; from 1,
    or 0 where there is none. [nothing to own | any | 0.1] */
LODE_API int32_t lode_refusal_position(const lode_refusal* refusal);
/** The words to blame, as you wrote them. [nothing to own | any | 0.1] */
LODE_API size_t lode_refusal_word_count(const lode_refusal* refusal);
/** One of them. [the refusal's | any | 0.1] */
LODE_API const char* lode_refusal_word(const lode_refusal* refusal, size_t index);
/** Ways out, a sentence each. [nothing to own | any | 0.1] */
LODE_API size_t lode_refusal_advice_count(const lode_refusal* refusal);
/** One of them. [the refusal's | any | 0.1] */
LODE_API const char* lode_refusal_advice(const lode_refusal* refusal, size_t index);
/** The refusal as JSON, made at the first call. [the refusal's | any | 0.1] */
LODE_API int32_t lode_refusal_json(const char** json, const lode_refusal* refusal, lode_error** error);
/** Frees it. [nothing to own | any, when no other uses the refusal | 0.1] */
LODE_API void lode_refusal_free(lode_refusal* refusal);

/* ---- Puzzles -------------------------------------------------------------------------------------------- */

/** Reads what lode_puzzle_json wrote. Its audit is not believed: the grid is judged again, and a puzzle may turn
    out not to be certified (lode_puzzle_is_certified). `source` is nullable. [yours | any | 0.1] */
LODE_API int32_t lode_puzzle_from_json(lode_puzzle** puzzle, const char* json, const char* source,
                                       lode_error** error);

/** Another that says the same. [yours | any | 0.1] */
LODE_API int32_t lode_puzzle_copy(lode_puzzle** copy, const lode_puzzle* puzzle, lode_error** error);
/** How many rows the grid has. [nothing to own | any | 0.1] */
LODE_API int32_t lode_puzzle_rows(const lode_puzzle* puzzle);
/** How many columns. [nothing to own | any | 0.1] */
LODE_API int32_t lode_puzzle_columns(const lode_puzzle* puzzle);
/** The letter of a cell, which may be several code points; NULL where the cell is closed or outside the grid.
    [the puzzle's | any | 0.1] */
LODE_API const char* lode_puzzle_cell(const lode_puzzle* puzzle, int32_t row, int32_t column);
/** All of them at once, in row order, rows times columns; listed at the first call. [the puzzle's | any | 0.1] */
LODE_API int32_t lode_puzzle_cells(const char* const** cells, const lode_puzzle* puzzle, lode_error** error);
/** Words stand in the list's order. [nothing to own | any | 0.1] */
LODE_API size_t lode_puzzle_word_count(const lode_puzzle* puzzle);
/** A word as the list shows it ("Sweet pea"). [the puzzle's | any | 0.1] */
LODE_API const char* lode_puzzle_word(const lode_puzzle* puzzle, size_t word);
/** How many cells the word fills. [nothing to own | any | 0.1] */
LODE_API size_t lode_puzzle_word_length(const lode_puzzle* puzzle, size_t word);
/** What stands in one of them. [the puzzle's | any | 0.1] */
LODE_API const char* lode_puzzle_word_letter(const lode_puzzle* puzzle, size_t word, size_t letter);
/** The longest word of the list that it can be read inside, or "". [the puzzle's | any | 0.1] */
LODE_API const char* lode_puzzle_word_inside(const lode_puzzle* puzzle, size_t word);
/** The cell of a word's first letter, and the direction in which it runs. [nothing to own | any | 0.1] */
LODE_API int32_t lode_puzzle_placement(int32_t* row, int32_t* column, int32_t* direction,
                                       const lode_puzzle* puzzle, size_t word, lode_error** error);
/** The seed that it was made with. [nothing to own | any | 0.1] */
LODE_API uint64_t lode_puzzle_seed(const lode_puzzle* puzzle);
/** 1 where its audit says so, as it does of every puzzle that was made here; else 0. [nothing to own | any | 0.1] */
LODE_API int32_t lode_puzzle_is_certified(const lode_puzzle* puzzle);
/** A copy of the recipe, with size and directions as they were chosen. [yours | any | 0.1] */
LODE_API int32_t lode_puzzle_recipe(lode_recipe** recipe, const lode_puzzle* puzzle, lode_error** error);
/** The puzzle as JSON, the project's file format, made at the first call. [the puzzle's | any | 0.1] */
LODE_API int32_t lode_puzzle_json(const char** json, const lode_puzzle* puzzle, lode_error** error);
/** The grid and its words, for people; made at the first call. [the puzzle's | any | 0.1] */
LODE_API int32_t lode_puzzle_text(const char** text, const lode_puzzle* puzzle, lode_error** error);
/** The answer key, for people; made at the first call. [the puzzle's | any | 0.1] */
LODE_API int32_t lode_puzzle_key_text(const char** text, const lode_puzzle* puzzle, lode_error** error);
/** Frees it; not one that belongs to a list. [nothing to own | any, when no other uses the puzzle | 0.1] */
LODE_API void lode_puzzle_free(lode_puzzle* puzzle);

/* ---- Grids ---------------------------------------------------------------------------------------------- */
/* Anybody's grid. It is read by a recipe's locale, case and rules for letters; nothing else of the recipe counts. */

/** Reads a grid that is drawn a line a row: letters one against the other, with blanks between, or as fields with
    tabs, semicolons or commas; '.', '#', an empty field, or a blank where all columns line up is a closed cell.
    `source` is nullable and names the grid. [yours | as a reader of the recipe | 0.1] */
LODE_API int32_t lode_grid_from_text(lode_grid** grid, const char* text, const char* source,
                                     const lode_recipe* recipe, lode_error** error);

/** The same of a page with a list of words under the grid, after a blank line: a word a line, or several with a tab,
    a comma, a semicolon or two blanks between. They become the words of the recipe. `source` is nullable.
    [*grid is yours | as the recipe's writer | 0.1] */
LODE_API int32_t lode_grid_from_page(lode_grid** grid, lode_recipe* recipe, const char* text,
                                     const char* source, lode_error** error);

/** Takes cells in row order, rows times columns of them, each a letter in either case; NULL, "", "." or "#" for a
    closed one. An error's line and position are row and column. [yours | as a reader of the recipe | 0.1] */
LODE_API int32_t lode_grid_from_cells(lode_grid** grid, const char* const* cells, int32_t rows,
                                      int32_t columns, const lode_recipe* recipe, lode_error** error);

/** A puzzle's grid without its words. [yours | any | 0.1] */
LODE_API int32_t lode_grid_from_puzzle(lode_grid** grid, const lode_puzzle* puzzle, lode_error** error);

/** How many rows it has. [nothing to own | any | 0.1] */
LODE_API int32_t lode_grid_rows(const lode_grid* grid);
/** How many columns. [nothing to own | any | 0.1] */
LODE_API int32_t lode_grid_columns(const lode_grid* grid);
/** The letter of a cell; NULL where it is closed or outside the grid. [the grid's | any | 0.1] */
LODE_API const char* lode_grid_cell(const lode_grid* grid, int32_t row, int32_t column);
/** All of them at once, in row order, as lode_grid_from_cells takes them; listed at the first call.
    [the grid's | any | 0.1] */
LODE_API int32_t lode_grid_cells(const char* const** cells, const lode_grid* grid, lode_error** error);
/** The grid for people, a line a row, as lode_grid_from_text takes it; made at the first call.
    [the grid's | any | 0.1] */
LODE_API int32_t lode_grid_text(const char** text, const lode_grid* grid, lode_error** error);
/** Frees it. [nothing to own | any, when no other uses the grid | 0.1] */
LODE_API void lode_grid_free(lode_grid* grid);

/* ---- Judges --------------------------------------------------------------------------------------------- */
/* A recipe's words, locale, case and avoid lists, checked once, by which many grids are judged; its size, shape,
   directions, seed and effort do not count. What searches a grid is built at the first one and kept. A judge keeps
   a copy of the recipe. */

/** Refused (LODE_UNUSABLE) where the words are bad, or where one stands more than once inside others, so that no
    grid can hold each once. [yours | as a reader of the recipe | 0.1] */
LODE_API int32_t lode_judge_create(lode_judge** judge, const lode_recipe* recipe, lode_error** error);

/** Adds words that may stand in a grid by chance, which its audits tell: a word a line, with what follows a '/' or
    a tab passed over, as the word lists of spelling checkers have it. `source` is nullable.
    [nothing to own | as the judge's writer | 0.1] */
LODE_API int32_t lode_judge_add_dictionary_text(lode_judge* judge, const char* text, const char* source,
                                                lode_error** error);

/** Letters that such a word has at the least, 1 to 100, 4 by default.
    [nothing to own | as the judge's writer | 0.1] */
LODE_API int32_t lode_judge_set_chance_letters(lode_judge* judge, int32_t letters, lode_error** error);

/** Judges a grid. `control` is nullable.
    [*audit is yours | as a reader of the judge; several may share a control | 0.1] */
LODE_API int32_t lode_judge_audit(lode_audit** audit, const lode_judge* judge, const lode_grid* grid,
                                  const lode_control* control, lode_error** error);

/** Judges a puzzle's grid by the judge's words, and by where the puzzle says that they stand. `control` is nullable.
    [*audit is yours | as a reader of the judge; several may share a control | 0.1] */
LODE_API int32_t lode_judge_audit_puzzle(lode_audit** audit, const lode_judge* judge, const lode_puzzle* puzzle,
                                         const lode_control* control, lode_error** error);

/** A grid as a puzzle, to be printed or drawn: each word where the audit finds it first in reading order; those
    that are missing are left out. lode_puzzle_is_certified says what the audit does. `control` is nullable.
    [*puzzle is yours | as a reader of the judge; several may share a control | 0.1] */
LODE_API int32_t lode_judge_puzzle(lode_puzzle** puzzle, const lode_judge* judge, const lode_grid* grid,
                                   const lode_control* control, lode_error** error);

/** Rates a grid, each word taken to stand where it is met first in reading order. `seen` is nullable.
    [*rating is yours | as a reader of the judge | 0.1] */
LODE_API int32_t lode_judge_rate(lode_rating** rating, const lode_judge* judge, const lode_grid* grid,
                                 const lode_seen* seen, lode_error** error);

/** Frees it. [nothing to own | any, when no other uses the judge | 0.1] */
LODE_API void lode_judge_free(lode_judge* judge);

/* ---- Audits --------------------------------------------------------------------------------------------- */
/* The independent search of a finished grid. A copy is a set of cells in a line where a word can be read; a
   stray copy is one beyond those that are expected, or that no placement explains. */

/** Judges a puzzle's grid by its own words and placements. [yours | any | 0.1] */
LODE_API int32_t lode_audit_puzzle(lode_audit** audit, const lode_puzzle* puzzle, lode_error** error);

/** Judges anybody's grid, drawn as lode_grid_from_text describes, by a recipe's words, as a judge does that is made
    for it alone. `source` is nullable and names the grid. [yours | as a reader of the recipe | 0.1] */
LODE_API int32_t lode_audit_grid_text(lode_audit** audit, const char* grid, const char* source,
                                      const lode_recipe* recipe, lode_error** error);

/** 1 where every word stands in its expected copies and nowhere else, and no avoided word stands; else 0.
    [nothing to own | any | 0.1] */
LODE_API int32_t lode_audit_is_certified(const lode_audit* audit);
/** 1 where there were more copies than are listed. [nothing to own | any | 0.1] */
LODE_API int32_t lode_audit_is_cut_short(const lode_audit* audit);
/** Words stand in the list's order. [nothing to own | any | 0.1] */
LODE_API size_t lode_audit_word_count(const lode_audit* audit);
/** A word as the list shows it. [the audit's | any | 0.1] */
LODE_API const char* lode_audit_word(const lode_audit* audit, size_t word);
/** How many copies of it there should be. [nothing to own | any | 0.1] */
LODE_API int32_t lode_audit_expected(const lode_audit* audit, size_t word);
/** How many there are, the stray ones among them; fewer than are expected say that the word is missing.
    [nothing to own | any | 0.1] */
LODE_API size_t lode_audit_copy_count(const lode_audit* audit, size_t word);
/** How many of them are stray. [nothing to own | any | 0.1] */
LODE_API size_t lode_audit_stray_count(const lode_audit* audit, size_t word);
/** One of the copies: its first cell, direction, length in cells, and 1 where it is a stray one.
    [nothing to own | any | 0.1] */
LODE_API int32_t lode_audit_copy(int32_t* row, int32_t* column, int32_t* direction, int32_t* length,
                                 int32_t* is_stray, const lode_audit* audit, size_t word, size_t copy,
                                 lode_error** error);
/** A word of the list that the copy stands inside, or "". [the audit's | any | 0.1] */
LODE_API const char* lode_audit_copy_inside(const lode_audit* audit, size_t word, size_t copy);
/** How many times an avoided word stands in the grid that is not allowed to. [nothing to own | any | 0.1] */
LODE_API size_t lode_audit_avoided_count(const lode_audit* audit);
/** The avoided word, as its list has it. [the audit's | any | 0.1] */
LODE_API const char* lode_audit_avoided(const lode_audit* audit, size_t index);
/** Where it stands. [nothing to own | any | 0.1] */
LODE_API int32_t lode_audit_avoided_copy(int32_t* row, int32_t* column, int32_t* direction, int32_t* length,
                                         const lode_audit* audit, size_t index, lode_error** error);
/** How many times an avoided word stands there that is allowed. [nothing to own | any | 0.1] */
LODE_API size_t lode_audit_allowed_count(const lode_audit* audit);
/** The allowed word, as the avoid list has it. [the audit's | any | 0.1] */
LODE_API const char* lode_audit_allowed(const lode_audit* audit, size_t index);
/** Where it stands. [nothing to own | any | 0.1] */
LODE_API int32_t lode_audit_allowed_copy(int32_t* row, int32_t* column, int32_t* direction, int32_t* length,
                                         const lode_audit* audit, size_t index, lode_error** error);
/** How many times a word of the judge's dictionary stands there by chance, longest first. It is no finding.
    [nothing to own | any | 0.1] */
LODE_API size_t lode_audit_chance_count(const lode_audit* audit);
/** That word, as the dictionary has it. [the audit's | any | 0.1] */
LODE_API const char* lode_audit_chance(const lode_audit* audit, size_t index);
/** Where it stands. [nothing to own | any | 0.1] */
LODE_API int32_t lode_audit_chance_copy(int32_t* row, int32_t* column, int32_t* direction, int32_t* length,
                                        const lode_audit* audit, size_t index, lode_error** error);
/** The audit as JSON, made at the first call. [the audit's | any | 0.1] */
LODE_API int32_t lode_audit_json(const char** json, const lode_audit* audit, lode_error** error);
/** The audit for people, made at the first call. [the audit's | any | 0.1] */
LODE_API int32_t lode_audit_text(const char** text, const lode_audit* audit, lode_error** error);
/** Frees it. [nothing to own | any, when no other uses the audit | 0.1] */
LODE_API void lode_audit_free(lode_audit* audit);

/* ---- Letters as they are seen --------------------------------------------------------------------------- */
/* How letters hang on a wall, for a rating of their size. Lengths are in mm, 0 to 1,000,000; what is never set, or
   set to 0, is not known, and what depends on it is left out. */

/** Nothing known yet, but that the letters hang 1,500 mm above the floor. [yours | any | 0.1] */
LODE_API int32_t lode_seen_create(lode_seen** seen, lode_error** error);
/** The height of the I. [nothing to own | as the writer | 0.1] */
LODE_API int32_t lode_seen_set_cap_height(lode_seen* seen, double mm, lode_error** error);
/** From the eye to the letters. [nothing to own | as the writer | 0.1] */
LODE_API int32_t lode_seen_set_viewing(lode_seen* seen, double mm, lode_error** error);
/** From the floor to the letters' baseline. [nothing to own | as the writer | 0.1] */
LODE_API int32_t lode_seen_set_baseline(lode_seen* seen, double mm, lode_error** error);
/** The width of the limb of the I. [nothing to own | as the writer | 0.1] */
LODE_API int32_t lode_seen_set_stroke(lode_seen* seen, double mm, lode_error** error);
/** The width of the O. [nothing to own | as the writer | 0.1] */
LODE_API int32_t lode_seen_set_o_width(lode_seen* seen, double mm, lode_error** error);
/** The least gap between neighbours of a row. [nothing to own | as the writer | 0.1] */
LODE_API int32_t lode_seen_set_letter_gap(lode_seen* seen, double mm, lode_error** error);
/** From a baseline to the next. [nothing to own | as the writer | 0.1] */
LODE_API int32_t lode_seen_set_line_pitch(lode_seen* seen, double mm, lode_error** error);
/** The colours of letters, bands and blank, "#rrggbb" or keywords of CSS; NULL for one that is not known.
    [nothing to own | as the writer | 0.1] */
LODE_API int32_t lode_seen_set_colours(lode_seen* seen, const char* letters, const char* bands,
                                       const char* blank, lode_error** error);
/** Frees it. [nothing to own | any, when no other uses it | 0.1] */
LODE_API void lode_seen_free(lode_seen* seen);

/* ---- Ratings -------------------------------------------------------------------------------------------- */
/* What a reader meets in a puzzle, part by part, each with a unit and a ground. */

/** Rates a puzzle without its artwork: its difficulty, and what can be said of its letters without their size.
    [yours | any | 0.1] */
LODE_API int32_t lode_rate_puzzle(lode_rating** rating, const lode_puzzle* puzzle, lode_error** error);
/** Rates a puzzle with its letters as they are seen. [yours | as a reader of `seen` | 0.1] */
LODE_API int32_t lode_rate_puzzle_as_seen(lode_rating** rating, const lode_puzzle* puzzle,
                                          const lode_seen* seen, lode_error** error);
/** Rates anybody's grid by a recipe's words, as lode_audit_grid_text takes both. `source` is nullable.
    [yours | as a reader of the recipe | 0.1] */
LODE_API int32_t lode_rate_grid_text(lode_rating** rating, const char* grid, const char* source,
                                     const lode_recipe* recipe, lode_error** error);
/** Fixations of a simulated reader who looks for all words one after the other; 0 for NULL.
    [nothing to own | any | 0.1] */
LODE_API double lode_rating_fixations(const lode_rating* rating);
/** "glance", "stroll", "search" or "patience"; more may come. [the library's, for good | any | 0.1] */
LODE_API const char* lode_rating_level(const lode_rating* rating);
/** Words stand in the list's order. [nothing to own | any | 0.1] */
LODE_API size_t lode_rating_word_count(const lode_rating* rating);
/** A word as the list shows it. [the rating's | any | 0.1] */
LODE_API const char* lode_rating_word(const lode_rating* rating, size_t word);
/** Its share of the fixations. [nothing to own | any | 0.1] */
LODE_API double lode_rating_word_fixations(const lode_rating* rating, size_t word);
/** 0 where it is not in the grid, and all of it was searched; else 1. [nothing to own | any | 0.1] */
LODE_API int32_t lode_rating_word_is_found(const lode_rating* rating, size_t word);
/** How many parts there are about LODE_READABILITY or LODE_DIFFICULTY; more may come.
    [nothing to own | any | 0.1] */
LODE_API size_t lode_rating_part_count(const lode_rating* rating, int32_t about);
/** What is measured: "backward words". [the rating's | any | 0.1] */
LODE_API const char* lode_rating_part(const lode_rating* rating, int32_t about, size_t part);
/** What was measured. [nothing to own | any | 0.1] */
LODE_API double lode_rating_part_value(const lode_rating* rating, int32_t about, size_t part);
/** In what: "percent". [the rating's | any | 0.1] */
LODE_API const char* lode_rating_part_unit(const lode_rating* rating, int32_t about, size_t part);
/** "least" or "most" where the source asks for a value, else NULL. [the library's, for good | any | 0.1] */
LODE_API const char* lode_rating_part_bound(const lode_rating* rating, int32_t about, size_t part);
/** That value; 0 where none is asked for. [nothing to own | any | 0.1] */
LODE_API double lode_rating_part_threshold(const lode_rating* rating, int32_t about, size_t part);
/** 1 where the value keeps to it or none is asked for, else 0. [nothing to own | any | 0.1] */
LODE_API int32_t lode_rating_part_is_met(const lode_rating* rating, int32_t about, size_t part);
/** The published ground, or "definition", "common practice" or "judgement". [the rating's | any | 0.1] */
LODE_API const char* lode_rating_part_source(const lode_rating* rating, int32_t about, size_t part);
/** A plain sentence, or "". [the rating's | any | 0.1] */
LODE_API const char* lode_rating_part_note(const lode_rating* rating, int32_t about, size_t part);
/** The rating as JSON, made at the first call. [the rating's | any | 0.1] */
LODE_API int32_t lode_rating_json(const char** json, const lode_rating* rating, lode_error** error);
/** The rating for people, made at the first call. [the rating's | any | 0.1] */
LODE_API int32_t lode_rating_text(const char** text, const lode_rating* rating, lode_error** error);
/** Frees it. [nothing to own | any, when no other uses the rating | 0.1] */
LODE_API void lode_rating_free(lode_rating* rating);

#ifdef __cplusplus
}
#endif
#endif
