/* Handles a refusal, which is a result, and an error, which says what is wrong with the call.
 *
 * Prints:
 *     error: A grid of 0x6 has no cells.
 *     refused: vegetables.txt:1: 'Artichoke' has 9 letters, and a grid of 6x6 takes words of at most 6
 *       in these directions and this shape.
 *     way out: Take a larger grid, more directions or a shorter word; --grid auto finds a size.
 */
#include <stdio.h>

#include <letterlode/letterlode.h>

int main(void) {
    lode_recipe* recipe = NULL;
    lode_puzzle* puzzle = NULL;
    lode_refusal* refusal = NULL;
    lode_error* error = NULL;
    lode_recipe_create(&recipe, NULL);
    lode_recipe_set_words_text(recipe, "Artichoke\nLeek\n", "vegetables.txt", NULL);
    if (lode_recipe_set_grid(recipe, 0, 6, &error) == LODE_UNUSABLE)
        printf("error: %s\n", lode_error_message(error));
    lode_error_free(error);
    lode_recipe_set_grid(recipe, 6, 6, NULL);

    switch (lode_make(&puzzle, &refusal, recipe, NULL, &error)) {
        case LODE_OK:
            puts("made");
            break;
        case LODE_REFUSED:
            printf("%s: %s\n",
                   lode_refusal_reason(refusal) == LODE_REASON_IMPOSSIBLE ? "impossible" : "refused",
                   lode_refusal_message(refusal));
            for (size_t i = 0; i < lode_refusal_advice_count(refusal); ++i)
                printf("way out: %s\n", lode_refusal_advice(refusal, i));
            break;
        default:
            printf("error: %s\n", lode_error_message(error)); /* codes may grow */
    }

    lode_error_free(error);
    lode_refusal_free(refusal);
    lode_puzzle_free(puzzle);
    lode_recipe_free(recipe);
    return 0;
}
