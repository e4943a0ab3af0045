/* Draws a puzzle on a blank, and writes all that its maker needs into a folder.
 *
 * Prints:
 *     layer: bands
 *     layer: letters
 *     layer: heading
 *     the film holds
 */
#include <stdio.h>

#include <letterlode/letterlode_art.h>

int main(void) {
    lode_recipe *recipe = NULL, *on_blank = NULL;
    lode_puzzle* puzzle = NULL;
    lode_artwork_options* options = NULL;
    lode_artwork* artwork = NULL;
    lode_files* files = NULL;
    lode_refusal* refusal = NULL;
    lode_error* error = NULL;

    /* Each call hands its failure to the same two; the first that is not LODE_OK
     * ends the row. */
    const int is_written =
        lode_recipe_create(&recipe, &error) == LODE_OK &&
        lode_recipe_set_words_text(recipe, "Spade\nTrowel\nRake\nDibber\n", "tools.txt", &error) == LODE_OK &&
        lode_artwork_options_create(&options, &error) == LODE_OK &&
        lode_artwork_options_set_blank(options, "203x254mm", &error) == LODE_OK &&
        lode_artwork_options_set_surface(options, "first", &error) == LODE_OK && /* film lies on the front */
        lode_artwork_options_set_heading(options, "Wrenbarrow Tool Shed", &error) == LODE_OK &&
        lode_recipe_on_blank(&on_blank, &refusal, recipe, options, NULL, &error) == LODE_OK &&
        lode_make(&puzzle, &refusal, on_blank, NULL, &error) == LODE_OK &&
        lode_draw_to_hold(&artwork, &refusal, puzzle, options, NULL, &error) == LODE_OK &&
        lode_cut_files(&files, &refusal, artwork, NULL, NULL, NULL, &error) == LODE_OK &&
        lode_files_write(files, "tool-shed", 0, &error) == LODE_OK;
    if (is_written) {
        for (size_t layer = 0; layer < lode_artwork_layer_count(artwork); ++layer)
            printf("layer: %s\n", lode_artwork_layer_name(artwork, layer));
        puts(lode_artwork_finding_count(artwork) == 0 ? "the film holds" : "too narrow for film");
    } else {
        fprintf(stderr, "%s\n", refusal ? lode_refusal_message(refusal) : lode_error_message(error));
    }

    lode_error_free(error);
    lode_refusal_free(refusal);
    lode_files_free(files);
    lode_artwork_free(artwork);
    lode_artwork_options_free(options);
    lode_puzzle_free(puzzle);
    lode_recipe_free(on_blank);
    lode_recipe_free(recipe);
    return is_written ? 0 : 1;
}
