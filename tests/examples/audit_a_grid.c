/* Judges a finished grid, whoever made it.
 *
 * Prints:
 *     not certified
 *     Sage: 1 expected, 1 there, 0 stray
 *     Mint: 1 expected, 2 there, 1 stray
 *     Dill: 1 expected, 0 there, 0 stray
 */
#include <stdio.h>

#include <letterlode/letterlode.h>

int main(void) {
    lode_recipe* recipe = NULL; /* of a recipe the words and their rules count here */
    lode_audit* audit = NULL;
    lode_error* error = NULL;
    lode_recipe_create(&recipe, NULL);
    lode_recipe_set_words_text(recipe, "Sage\nMint\nDill\n", "herb-bed.txt", NULL);

    if (lode_audit_grid_text(&audit, "MINT\nSAGE\nAMIN\nTNIM\n", "grid.txt", recipe, &error) == LODE_OK) {
        puts(lode_audit_is_certified(audit) ? "certified" : "not certified");
        for (size_t word = 0; word < lode_audit_word_count(audit); ++word)
            printf("%s: %d expected, %d there, %d stray\n", lode_audit_word(audit, word),
                   (int)lode_audit_expected(audit, word), (int)lode_audit_copy_count(audit, word),
                   (int)lode_audit_stray_count(audit, word));
    } else {
        fprintf(stderr, "%s\n", lode_error_message(error));
    }

    lode_error_free(error);
    lode_audit_free(audit);
    lode_recipe_free(recipe);
    return 0;
}
