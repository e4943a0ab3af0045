/* Ten lines from words to a certified puzzle.
 *
 * Prints:
 *     V F E N N E L
 *     C S O R R E L
 *     C H I V E S Y
 *     B A Y L E A F
 *     C T H L E P M
 *     S T H Y M E W
 *     F W M E Y U L
 *     B F S S N L H
 *
 *     Fennel
 *     Sorrel
 *     Chives
 *     Thyme
 *     Bay leaf
 */
#include <stdio.h>

#include <letterlode/letterlode.h>

int main(void) {
    lode_recipe* recipe = NULL;
    lode_puzzle* puzzle = NULL;
    lode_refusal* refusal = NULL;
    const char* text = "no puzzle\n";
    lode_recipe_create(&recipe, NULL);
    lode_recipe_set_words_text(recipe, "Fennel\nSorrel\nChives\nThyme\nBay leaf\n", NULL, NULL);
    if (lode_make(&puzzle, &refusal, recipe, NULL, NULL) == LODE_OK) lode_puzzle_text(&text, puzzle, NULL);
    fputs(text, stdout);
    lode_refusal_free(refusal);
    lode_puzzle_free(puzzle);
    lode_recipe_free(recipe);
    return 0;
}
