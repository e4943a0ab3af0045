/* A vegetable bed as a lettered sign and a worksheet, in C99, drawn and printed to memory: sign SIGN.svg
   SHEET.pdf CMakeLists.txt builds it, or

   cc -std=c99 sign.c $(pkg-config --cflags --libs letterlode-art) -o sign */
#include <letterlode/letterlode_art.h>
#include <stdio.h>
#include <stdlib.h>

/* A call that fails leaves an error that says why. This program ends there; another would tell its user. */
static void must(int32_t status, lode_error** error) {
    if (status == LODE_OK) return;
    fprintf(stderr, "%s\n", *error ? lode_error_message(*error) : lode_status_text(status));
    exit(1);
}

/* A puzzle made for its blank: the grid takes the room that margins and heading leave. */
static lode_puzzle* puzzle_on(const lode_artwork_options* options) {
    lode_recipe *recipe, *fitted;
    lode_refusal* refusal;
    lode_puzzle* puzzle;
    lode_error* error;
    must(lode_recipe_create(&recipe, &error), &error);
    must(lode_recipe_set_words_text(recipe, "Parsnip\nSweet pea\nJalape\xc3\xb1o\nLeek\n", "bed.txt", &error),
         &error);
    must(lode_recipe_on_blank(&fitted, &refusal, recipe, options, NULL, &error), &error);
    must(lode_make(&puzzle, &refusal, fitted, NULL, &error), &error);
    lode_recipe_free(fitted);
    lode_recipe_free(recipe);
    return puzzle;
}

/* What was drawn is in memory; here it goes to a file, but it could as well go to a socket. */
static void keep(const lode_bytes* bytes, const char* path) {
    FILE* file = fopen(path, "wb");
    if (!file || fwrite(lode_bytes_data(bytes), 1, lode_bytes_size(bytes), file) != lode_bytes_size(bytes) ||
        fclose(file) != 0) {
        perror(path);
        exit(1);
    }
}

static void draw(const lode_puzzle* puzzle, const lode_artwork_options* options, const char* path) {
    lode_artwork* artwork;
    lode_refusal* refusal;
    lode_bytes* svg;
    lode_error* error;
    must(lode_draw_to_hold(&artwork, &refusal, puzzle, options, NULL, &error), &error);
    printf("%.1f x %.1f mm, letters %.1f mm high\n", lode_artwork_width_mm(artwork),
           lode_artwork_height_mm(artwork), lode_artwork_cap_height_mm(artwork));
    for (size_t layer = 0; layer < lode_artwork_layer_count(artwork); ++layer)
        printf("%s: %s, pieces: %zu\n", lode_artwork_layer_name(artwork, layer),
               lode_artwork_layer_colour(artwork, layer), lode_artwork_layer_pieces(artwork, layer));
    for (size_t index = 0; index < lode_artwork_finding_count(artwork); ++index)
        printf("too narrow: %s\n", lode_artwork_finding(artwork, index));
    must(lode_artwork_drawing(&svg, artwork, "svg", &error), &error);
    keep(svg, path);
    lode_bytes_free(svg);
    lode_artwork_free(artwork);
}

static void print(const lode_puzzle* puzzle, const char* path) {
    lode_worksheets* sheets;
    lode_pages* pages;
    lode_error* error;
    must(lode_worksheets_create(&sheets, &error), &error);
    must(lode_worksheets_add(sheets, puzzle, "Vegetable bed", NULL, &error), &error);
    must(lode_print(&pages, sheets, NULL, &error), &error);
    printf("pages: %d\n", (int)lode_pages_count(pages));
    keep(lode_pages_pdf(pages), path);
    lode_pages_free(pages);
    lode_worksheets_free(sheets);
}

int main(int count, char** paths) {
    lode_artwork_options* options;
    lode_error* error;
    if (count != 3) return 2;
    must(lode_artwork_options_create(&options, &error), &error);
    must(lode_artwork_options_set_blank(options, "8x10in", &error), &error);
    must(lode_artwork_options_set_surface(options, "second", &error), &error);
    must(lode_artwork_options_set_heading(options, "Vegetables", &error), &error);
    if (lode_artwork_options_set_colour(options, "bands", "mudlike", &error) == LODE_UNUSABLE)
        printf("error: %s\n", lode_error_message(error)); /* and the bands keep the colour that they had */
    lode_error_free(error);

    lode_puzzle* puzzle = puzzle_on(options);
    draw(puzzle, options, paths[1]);
    print(puzzle, paths[2]);
    lode_puzzle_free(puzzle);
    lode_artwork_options_free(options);
    return 0;
}
