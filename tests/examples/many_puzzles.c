/* Makes many puzzles from one recipe, which is checked once.
 *
 * Prints:
 *     8 made
 *     5 to choose from
 */
#include <stdio.h>

#include <letterlode/letterlode.h>

int main(void) {
    lode_recipe* recipe = NULL;
    lode_maker* maker = NULL;
    lode_puzzles* choices = NULL;
    lode_refusal* refusal = NULL;
    lode_recipe_create(&recipe, NULL);
    lode_recipe_set_words_text(recipe, "Spade\nTrowel\nRake\nWatering can\nDibber\n", NULL, NULL);
    lode_maker_create(&maker, &refusal, recipe, NULL);
    lode_refusal_free(refusal);
    lode_recipe_free(recipe); /* the maker has a copy */

    /* Threads may share a maker. Each puzzle is made again by its seed alone, on any machine. */
    int made = 0;
    for (uint64_t seed = 0; seed < 8; ++seed) {
        lode_puzzle* puzzle = NULL;
        if (lode_maker_make(&puzzle, &refusal, maker, seed, NULL, NULL) == LODE_OK) ++made;
        lode_refusal_free(refusal);
        lode_puzzle_free(puzzle);
    }
    printf("%d made\n", made);

    /* Or puzzles that differ, to choose from. */
    lode_maker_choices(&choices, &refusal, maker, 1, 5, NULL, NULL);
    printf("%d to choose from\n", (int)lode_puzzles_count(choices));

    lode_refusal_free(refusal);
    lode_puzzles_free(choices);
    lode_maker_free(maker);
    return 0;
}
