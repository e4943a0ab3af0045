/* A user of the library who writes C99: makes a puzzle and reads it cell by cell, has good and faulty grids
   judged, is refused, and cancels. What the library says of itself is compared with what this program finds
   in the cells. */
#include <letterlode/letterlode.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void check(int holds, const char* what, int line) {
    if (holds) return;
    fprintf(stderr, "program.c:%d: %s\n", line, what);
    exit(1);
}
#define CHECK(condition) check((condition) != 0, #condition, __LINE__)
#define CHECK_TEXT(text, wanted) \
    check((text) != NULL && strcmp(text, wanted) == 0, #text " is not " #wanted, __LINE__)

/* How often the word's letters can be read from some cell in some direction; one reading a direction. */
static int readings(const lode_puzzle* puzzle, size_t word) {
    const size_t length = lode_puzzle_word_length(puzzle, word);
    int32_t row, column, direction;
    int found = 0;
    for (row = 0; row < lode_puzzle_rows(puzzle); ++row)
        for (column = 0; column < lode_puzzle_columns(puzzle); ++column)
            for (direction = LODE_RIGHT; direction <= LODE_DOWN_LEFT; ++direction) {
                int32_t down, across;
                size_t at = 0;
                CHECK(lode_direction_step(&down, &across, direction, NULL) == LODE_OK);
                while (at < length) {
                    const char* cell =
                        lode_puzzle_cell(puzzle, row + down * (int32_t)at, column + across * (int32_t)at);
                    if (cell == NULL || strcmp(cell, lode_puzzle_word_letter(puzzle, word, at)) != 0) break;
                    ++at;
                }
                if (at == length) ++found;
            }
    return found;
}

static lode_recipe* recipe_of(const char* words) {
    lode_recipe* recipe = NULL;
    lode_error* error = NULL;
    CHECK(lode_recipe_create(&recipe, &error) == LODE_OK);
    CHECK(lode_recipe_set_words_text(recipe, words, "words.txt", &error) == LODE_OK);
    CHECK(error == NULL);
    return recipe;
}

static void make_a_puzzle(void) {
    lode_recipe* recipe = recipe_of("# a bed\nCarrot\nSweet pea\nJalape\xc3\xb1o\n");
    lode_puzzle *puzzle = NULL, *again = NULL;
    lode_refusal* refusal = NULL;
    lode_audit* audit = NULL;
    lode_error* error = NULL;
    const char *json = NULL, *json_again = NULL;
    size_t word;

    CHECK(lode_recipe_set_grid(recipe, 11, 10, &error) == LODE_OK);
    CHECK(lode_recipe_set_directions(recipe, "all", &error) == LODE_OK);
    CHECK(lode_recipe_set_seed(recipe, 42, &error) == LODE_OK);
    CHECK(lode_make(&puzzle, &refusal, recipe, NULL, &error) == LODE_OK);
    CHECK(refusal == NULL && error == NULL);

    CHECK(lode_puzzle_rows(puzzle) == 10 && lode_puzzle_columns(puzzle) == 11);
    CHECK(lode_puzzle_word_count(puzzle) == 3);
    CHECK_TEXT(lode_puzzle_word(puzzle, 1), "Sweet pea");
    CHECK(lode_puzzle_word_length(puzzle, 1) == 8);
    CHECK_TEXT(lode_puzzle_word_letter(puzzle, 2, 6), "\xc3\x91");
    for (word = 0; word < 3; ++word) {
        int32_t row, column, direction;
        CHECK(lode_puzzle_placement(&row, &column, &direction, puzzle, word, &error) == LODE_OK);
        CHECK_TEXT(lode_puzzle_cell(puzzle, row, column), lode_puzzle_word_letter(puzzle, word, 0));
        CHECK(readings(puzzle, word) == 1);
    }
    CHECK(lode_puzzle_cell(puzzle, 10, 0) == NULL && lode_puzzle_word(puzzle, 3) == NULL);

    CHECK(lode_audit_puzzle(&audit, puzzle, &error) == LODE_OK);
    CHECK(lode_audit_is_certified(audit) == 1);
    CHECK(lode_audit_copy_count(audit, 2) == 1 && lode_audit_stray_count(audit, 2) == 0);

    CHECK(lode_puzzle_json(&json, puzzle, &error) == LODE_OK);
    CHECK(lode_puzzle_from_json(&again, json, NULL, &error) == LODE_OK);
    CHECK(lode_puzzle_json(&json_again, again, &error) == LODE_OK);
    CHECK_TEXT(json_again, json);

    lode_audit_free(audit);
    lode_puzzle_free(again);
    lode_puzzle_free(puzzle);
    lode_recipe_free(recipe);
}

/* The audit of a grid, drawn a line a row, by the recipe's words. */
static lode_audit* audit_of(const char* grid, const lode_recipe* recipe) {
    lode_audit* audit = NULL;
    lode_error* error = NULL;
    CHECK(lode_audit_grid_text(&audit, grid, "grid.txt", recipe, &error) == LODE_OK);
    CHECK(audit != NULL && error == NULL);
    return audit;
}

static void have_grids_judged(void) {
    lode_recipe* recipe = recipe_of("Leek\nKale\n");
    lode_error* error = NULL;
    int32_t row, column, direction, length, is_stray, second_is_stray;
    lode_audit* audit;

    audit = audit_of("LEEK\nOUOA\nSTSL\nIRUE\n", recipe);
    CHECK(lode_audit_is_certified(audit) == 1);
    CHECK(lode_audit_copy_count(audit, 1) == 1 && lode_audit_expected(audit, 1) == 1);
    CHECK(lode_audit_copy(&row, &column, &direction, &length, &is_stray, audit, 1, 0, &error) == LODE_OK);
    CHECK(row == 0 && column == 3 && direction == LODE_DOWN && length == 4 && is_stray == 0);
    lode_audit_free(audit);

    /* Leek stands in the first column too. */
    audit = audit_of("L E E K\nE U O A\nE T S L\nK R U E\n", recipe);
    CHECK(lode_audit_is_certified(audit) == 0);
    CHECK(lode_audit_copy_count(audit, 0) == 2 && lode_audit_stray_count(audit, 0) == 1);
    CHECK(lode_audit_copy(&row, &column, &direction, &length, &is_stray, audit, 0, 0, &error) == LODE_OK);
    CHECK(lode_audit_copy(&row, &column, &direction, &length, &second_is_stray, audit, 0, 1, &error) ==
          LODE_OK);
    CHECK(is_stray + second_is_stray == 1);
    lode_audit_free(audit);

    /* A letter of Kale is gone. */
    audit = audit_of("LEEK\nOUOA\nSTSX\nIRUE\n", recipe);
    CHECK(lode_audit_is_certified(audit) == 0 && lode_audit_copy_count(audit, 1) == 0);
    lode_audit_free(audit);

    /* An avoided word stands in the last row. */
    CHECK(lode_recipe_add_avoided(recipe, "ru\xc3\xa9", &error) == LODE_OK);
    audit = audit_of("LEEK\nOUOA\nSTSL\nIRUE\n", recipe);
    CHECK(lode_audit_is_certified(audit) == 0 && lode_audit_avoided_count(audit) == 1);
    CHECK(lode_audit_avoided_copy(&row, &column, &direction, &length, audit, 0, &error) == LODE_OK);
    CHECK(row == 3 && column == 1 && direction == LODE_RIGHT && length == 3);
    lode_audit_free(audit);
    lode_recipe_free(recipe);
}

static void be_refused(void) {
    lode_recipe* recipe = recipe_of("Courgette\nLeek\n");
    lode_puzzle* puzzle = NULL;
    lode_refusal* refusal = NULL;
    lode_error* error = NULL;
    const char* json = NULL;

    CHECK(lode_recipe_set_grid(recipe, 4, 4, &error) == LODE_OK);
    CHECK(lode_make(&puzzle, &refusal, recipe, NULL, &error) == LODE_REFUSED);
    CHECK(puzzle == NULL && error == NULL && refusal != NULL);
    CHECK(lode_refusal_reason(refusal) == LODE_REASON_UNUSABLE);
    CHECK(strstr(lode_refusal_message(refusal), "Courgette") != NULL);
    CHECK(lode_refusal_word_count(refusal) > 0 && lode_refusal_advice_count(refusal) > 0);
    CHECK_TEXT(lode_refusal_word(refusal, 0), "Courgette");
    CHECK(lode_refusal_json(&json, refusal, &error) == LODE_OK && strstr(json, "letterlode-refusal") != NULL);
    lode_refusal_free(refusal);

    CHECK(lode_recipe_set_grid(recipe, 0, 3, &error) == LODE_UNUSABLE);
    CHECK(error != NULL && lode_error_code(error) == LODE_UNUSABLE && strlen(lode_error_message(error)) > 0);
    lode_error_free(error);
    CHECK(lode_recipe_set_grid(NULL, 4, 4, NULL) == LODE_BROKEN_CALL);
    lode_recipe_free(recipe);
}

static void cancel(void) {
    lode_recipe* recipe = recipe_of("Courgette\nLeek\n");
    lode_control* control = NULL;
    lode_puzzle* puzzle = NULL;
    lode_refusal* refusal = NULL;
    lode_error* error = NULL;

    CHECK(lode_control_create(&control, &error) == LODE_OK);
    lode_control_cancel(control);
    CHECK(lode_make(&puzzle, &refusal, recipe, control, &error) == LODE_REFUSED);
    CHECK(puzzle == NULL && lode_refusal_reason(refusal) == LODE_REASON_UNFINISHED);
    lode_refusal_free(refusal);
    lode_control_reset(control);
    CHECK(lode_make(&puzzle, &refusal, recipe, control, &error) == LODE_OK && puzzle != NULL &&
          refusal == NULL);
    lode_puzzle_free(puzzle);
    lode_control_free(control);
    lode_recipe_free(recipe);
}

int main(void) {
    CHECK_TEXT(lode_version(), LODE_VERSION);
    make_a_puzzle();
    have_grids_judged();
    be_refused();
    cancel();
    lode_error_free(NULL);
    lode_recipe_free(NULL);
    lode_control_free(NULL);
    lode_puzzle_free(NULL);
    lode_refusal_free(NULL);
    lode_audit_free(NULL);
    printf("letterlode %s: made, judged, refused, cancelled\n", lode_version());
    return 0;
}
