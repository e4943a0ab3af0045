/* Tells how far the work is, and stops it.
 *
 * Prints:
 *     made
 *     refused: Interrupted after an effort of 0 steps.
 */
#include <stdio.h>

#include <letterlode/letterlode.h>

/* Called now and then, on the thread that makes the puzzle. */
static void watch(void* user, uint64_t spent, uint64_t all) {
    if (spent > all / 2) lode_control_cancel(user); /* long enough */
}

int main(void) {
    lode_recipe* recipe = NULL;
    lode_control* control = NULL; /* any thread, or a signal handler, may cancel it at any time */
    lode_puzzle* puzzle = NULL;
    lode_refusal* refusal = NULL;
    lode_recipe_create(&recipe, NULL);
    lode_recipe_set_words_text(recipe, "Beetroot\nRadish\nLettuce\nSpinach\nParsnip\n", NULL, NULL);
    lode_control_create(&control, NULL);
    lode_control_set_progress(control, watch, control, NULL);

    puts(lode_make(&puzzle, &refusal, recipe, control, NULL) == LODE_OK ? "made" : "not made");
    lode_puzzle_free(puzzle);
    lode_refusal_free(refusal);

    lode_control_cancel(control);
    if (lode_make(&puzzle, &refusal, recipe, control, NULL) == LODE_REFUSED)
        printf("refused: %s\n", lode_refusal_message(refusal));

    lode_refusal_free(refusal);
    lode_puzzle_free(puzzle);
    lode_control_free(control);
    lode_recipe_free(recipe);
    return 0;
}
