/* Ten lines from words to a certified puzzle. */
#include <stdio.h>

#include <letterlode/letterlode.h>

int main(void) {
    lode_recipe* recipe = NULL;
    lode_puzzle* puzzle = NULL;
    const char* text = "no puzzle\n";
    lode_recipe_create(&recipe, NULL);
    lode_recipe_set_words_text(recipe, "Fennel\nSorrel\nChives\nThyme\nBay leaf\n", NULL, NULL);
    const int is_made = lode_make(&puzzle, NULL, recipe, NULL, NULL) == LODE_OK;
    if (is_made) lode_puzzle_text(&text, puzzle, NULL);
    fputs(text, stdout);
    lode_puzzle_free(puzzle);
    lode_recipe_free(recipe);
    return is_made ? 0 : 1;
}
