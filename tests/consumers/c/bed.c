/* A vegetable bed as a puzzle, in C99: made, audited, rated and read cell by cell; then a grid with a fault,
   words for which there is no room, and a list that cannot be used. CMakeLists.txt builds it, or

   cc -std=c99 bed.c $(pkg-config --cflags --libs letterlode) -o bed */
#include <letterlode/letterlode.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* A call that fails leaves an error that says why. This program ends there; another would tell its user. */
static void must(int32_t status, lode_error** error) {
    if (status == LODE_OK) return;
    fprintf(stderr, "%s\n", *error ? lode_error_message(*error) : lode_status_text(status));
    exit(1);
}

static lode_recipe* recipe_of(const char* words, int32_t columns, int32_t rows) {
    lode_recipe* recipe;
    lode_error* error;
    must(lode_recipe_create(&recipe, &error), &error);
    must(lode_recipe_set_words_text(recipe, words, "bed.txt", &error), &error);
    must(lode_recipe_set_grid(recipe, columns, rows, &error), &error);
    return recipe;
}

static void print_puzzle(const lode_puzzle* puzzle) {
    for (int32_t row = 0; row < lode_puzzle_rows(puzzle); ++row)
        for (int32_t column = 0; column < lode_puzzle_columns(puzzle); ++column) {
            const char* letter = lode_puzzle_cell(puzzle, row, column); /* NULL: a closed cell */
            printf("%s%s", letter ? letter : ".", column + 1 < lode_puzzle_columns(puzzle) ? " " : "\n");
        }
    for (size_t word = 0; word < lode_puzzle_word_count(puzzle); ++word) {
        int32_t row, column, direction;
        lode_error* error;
        must(lode_puzzle_placement(&row, &column, &direction, puzzle, word, &error), &error);
        printf("%s: row %d, column %d, %s\n", lode_puzzle_word(puzzle, word), (int)row + 1, (int)column + 1,
               lode_direction_name(direction));
    }
}

static void print_audit(const lode_audit* audit) {
    puts(lode_audit_is_certified(audit) ? "certified" : "not certified");
    for (size_t word = 0; word < lode_audit_word_count(audit); ++word)
        if (lode_audit_copy_count(audit, word) == 0) printf("missing: %s\n", lode_audit_word(audit, word));
}

static void print_rating(const lode_rating* rating) {
    printf("%s, %.0f fixations\n", lode_rating_level(rating), lode_rating_fixations(rating));
    for (size_t part = 0; part < lode_rating_part_count(rating, LODE_DIFFICULTY); ++part)
        printf("%s: %.2f %s\n", lode_rating_part(rating, LODE_DIFFICULTY, part),
               lode_rating_part_value(rating, LODE_DIFFICULTY, part),
               lode_rating_part_unit(rating, LODE_DIFFICULTY, part));
}

static const char* const words = "Parsnip\nSweet pea\nJalape\xc3\xb1o\nLeek\n";

static void make_a_puzzle(void) {
    lode_recipe* recipe = recipe_of(words, 10, 8);
    lode_puzzle* puzzle;
    lode_refusal* refusal;
    lode_audit* audit;
    lode_rating* rating;
    lode_error* error;
    must(lode_make(&puzzle, &refusal, recipe, NULL, &error), &error);
    must(lode_audit_puzzle(&audit, puzzle, &error), &error);
    must(lode_rate_puzzle(&rating, puzzle, &error), &error);
    print_puzzle(puzzle);
    print_audit(audit);
    print_rating(rating);
    lode_rating_free(rating);
    lode_audit_free(audit);
    lode_puzzle_free(puzzle);
    lode_recipe_free(recipe);
}

/* In somebody's grid the L of Kale is an X. */
static void find_a_fault(void) {
    lode_recipe* recipe = recipe_of("Leek\nKale\n", 4, 4);
    lode_audit* audit;
    lode_error* error;
    must(lode_audit_grid_text(&audit, "LEEK\nOUOA\nSTSX\nIRUE\n", "grid.txt", recipe, &error), &error);
    print_audit(audit);
    lode_audit_free(audit);
    lode_recipe_free(recipe);
}

/* There is no room: that is no error, but an answer. */
static void be_refused(void) {
    lode_recipe* recipe = recipe_of(words, 8, 3);
    lode_puzzle* puzzle;
    lode_refusal* refusal;
    lode_error* error;
    int32_t status = lode_make(&puzzle, &refusal, recipe, NULL, &error);
    if (status != LODE_REFUSED) must(status, &error);
    if (refusal) printf("refused: %s\n", lode_refusal_message(refusal));
    for (size_t index = 0; index < lode_refusal_advice_count(refusal); ++index)
        printf("advice: %s\n", lode_refusal_advice(refusal, index));
    lode_refusal_free(refusal);
    lode_puzzle_free(puzzle);
    lode_recipe_free(recipe);
}

/* An error knows the place as well as the words for it. */
static void meet_an_error(void) {
    lode_recipe* recipe = recipe_of("Leek\nKale 3+4\n", 4, 4);
    lode_judge* judge;
    lode_error* error;
    if (lode_judge_create(&judge, recipe, &error) == LODE_UNUSABLE)
        printf("%s, line %d, \"%s\", character %d: %s\n", lode_error_source(error),
               (int)lode_error_line(error), lode_error_word(error, 0), (int)lode_error_position(error),
               lode_error_message(error));
    lode_error_free(error);
    lode_judge_free(judge);
    lode_recipe_free(recipe);
}

int main(void) {
    /* The library that is loaded may be newer than the header that this was compiled with, and serves all the
       same; one that would not has another SONAME, and the loader passes it over. */
    printf("letterlode %s\n", lode_version());
    if (strcmp(lode_version(), LODE_VERSION) != 0) fprintf(stderr, "compiled with %s\n", LODE_VERSION);
    make_a_puzzle();
    find_a_fault();
    be_refused();
    meet_an_error();
    return 0;
}
