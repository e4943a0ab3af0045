#ifndef LETTERLODE_LETTERLODE_ART_H
#define LETTERLODE_LETTERLODE_ART_H
/**
 * @file
 * letterlode's artwork, cutting and print for C99, C++ and every language that can call C: a puzzle in, and out
 * come files that cut and print at true size. Link letterlode-art and letterlode. The rules of letterlode.h hold
 * here too, and besides:
 *
 *  1. Names. Options are called what the command line calls them, and what one chooses among goes by name:
 *     "capsule", "second". lode_choice lists the names of an option.
 *  2. Lengths are in millimetres, x to the right and y down from the blank's upper left corner, as the viewer
 *     sees the finished piece. What a person writes ("0.5in") goes through lode_read_length and its like.
 *  3. Options. A setter judges its value at once, and one that fails leaves the options as they were. How
 *     options go together is judged where they are used. Options and worksheets have any number of readers or
 *     one writer at a time; where options are said to be nullable, NULL stands for the defaults.
 *  4. Long work takes a control, and is refused as lode_make is: exactly one of its result (LODE_OK), *refusal
 *     (LODE_REFUSED) and *error (all others) is set. Progress counts what is done, of all; it may begin anew
 *     where another way has to be tried. Cancelled work is refused as LODE_REASON_UNFINISHED.
 *  5. Results. Artwork, plans, pages and bytes never change: share them freely. None needs the handles that it
 *     was made from to be kept. The same puzzle, options and font files give the same bytes.
 *  6. Files appear whole or not at all. One that exists is left alone unless you ask to replace it; a disk that
 *     would not write is LODE_DISK_FAULT.
 *  7. Memory. Where this library runs out of it, that is a status too. Those that it draws and prints with, fontconfig,
 *     Cairo and qpdf, cope with less: where one of their own allocations fails, the process may end.
 *  8. Nothing here asks whether a puzzle is certified: lode_audit_puzzle does.
 */

#include <letterlode/letterlode.h>

#ifdef __cplusplus
extern "C" {
#endif

typedef struct lode_bytes lode_bytes;                     /**< the bytes of one file */
typedef struct lode_files lode_files;                     /**< the files of one folder */
typedef struct lode_artwork_options lode_artwork_options; /**< what is drawn, and on which blank */
typedef struct lode_artwork lode_artwork;                 /**< a puzzle as outlines in layers */
typedef struct lode_cut_options lode_cut_options;         /**< what is cut on which bed, and written of it */
typedef struct lode_plan lode_plan;                       /**< what lies where in which load */
typedef struct lode_print_options lode_print_options;     /**< how worksheets are printed */
typedef struct lode_worksheets lode_worksheets;           /**< puzzles to be printed, in order */
typedef struct lode_pages lode_pages;                     /**< worksheets and their keys as PDF */

/* ---- Names and lengths ---------------------------------------------------------------------------------- */

/** How many names the option has, by its own name: "surface", "band", "inlay", "border", "ornament", "colour"
    (layers), "format", "paper", "list", "grid-lines", "key"; 0 for any other. [nothing to own | any | 0.1] */
LODE_API size_t lode_choice_count(const char* option);
/** One of them: lode_choice("band", 0) is "capsule". [the library's, for good | any | 0.1] */
LODE_API const char* lode_choice(const char* option, size_t index);

/** Reads a length: "6mm", "0.25in", "1cm" or "12pt", up to 10 m. [no result to own | any | 0.1] */
LODE_API int32_t lode_read_length(double* mm, const char* text, lode_error** error);
/** Reads the distance of a reader: "1.5m", "60cm", "400mm", "5ft" or "24in", from 10 cm to 100 m.
    [no result to own | any | 0.1] */
LODE_API int32_t lode_read_distance(double* mm, const char* text, lode_error** error);
/** Reads the size of a bed or of film: "12x12in", "305x305mm", or a roll by its width alone, "12in", whose height
    comes as 0. [no result to own | any | 0.1] */
LODE_API int32_t lode_read_area(double* width_mm, double* height_mm, const char* text, lode_error** error);

/* ---- Bytes and files ------------------------------------------------------------------------------------ */

/** Where they begin. [the bytes' | any | 0.1] */
LODE_API const void* lode_bytes_data(const lode_bytes* bytes);
/** How many they are. A NUL stands behind them that does not count, so that bytes of text are a string.
    [nothing to own | any | 0.1] */
LODE_API size_t lode_bytes_size(const lode_bytes* bytes);
/** Writes them to a file, whole. `replace`: 0 or not 0. [nothing to own | any | 0.1] */
LODE_API int32_t lode_bytes_write(const lode_bytes* bytes, const char* path, int32_t replace,
                                  lode_error** error);
/** Frees them. [nothing to own | any, when no other uses the bytes | 0.1] */
LODE_API void lode_bytes_free(lode_bytes* bytes);

/** No files, to be put together by lode_files_add. [yours | any | 0.1] */
LODE_API int32_t lode_files_create(lode_files** files, lode_error** error);
/** Adds a copy of `size` bytes under a path inside the folder ("puzzle.json", "pages/herbs.pdf"). `data` is
    nullable where `size` is 0. A path that leaves the folder, or stands there already, cannot be used.
    [nothing to own | as the files' only user | 0.1] */
LODE_API int32_t lode_files_add(lode_files* files, const char* path, const void* data, size_t size,
                                lode_error** error);
/** How many there are. [nothing to own | as a reader of the files | 0.1] */
LODE_API size_t lode_files_count(const lode_files* files);
/** The path inside the folder: "layers/1-letters.svg".
    [the files', until they are added to | as a reader of the files | 0.1] */
LODE_API const char* lode_files_path(const lode_files* files, size_t index);
/** The bytes of one file. [the files', until they are added to | as a reader of the files | 0.1] */
LODE_API const void* lode_files_data(const lode_files* files, size_t index);
/** How many they are. [nothing to own | as a reader of the files | 0.1] */
LODE_API size_t lode_files_size(const lode_files* files, size_t index);
/** Writes all of them into a new folder, which appears whole. With `replace` it takes the place of an old one in
    one step, and that is removed with all that it holds. [nothing to own | as a reader of the files | 0.1] */
LODE_API int32_t lode_files_write(const lode_files* files, const char* folder, int32_t replace,
                                  lode_error** error);
/** Frees them. [nothing to own | any, when no other uses the files | 0.1] */
LODE_API void lode_files_free(lode_files* files);

/* ---- Artwork options ------------------------------------------------------------------------------------ */

/** Neither blank nor surface, which must be given: the wrong surface ruins film. All else has a default.
    [yours | any | 0.1] */
LODE_API int32_t lode_artwork_options_create(lode_artwork_options** options, lode_error** error);
/** A copy that goes its own way. [yours | as a reader of the options | 0.1] */
LODE_API int32_t lode_artwork_options_copy(lode_artwork_options** copy, const lode_artwork_options* options,
                                           lode_error** error);
/** The object to decorate: a size ("8x10in", "203x254mm"), a shape with a size ("heart 8x8in"; rounded, circle,
    oval, star, hexagon), or an SVG file whose outline it is ("sign.svg").
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_blank(lode_artwork_options* options, const char* blank,
                                                lode_error** error);
/** The outline of the largest thing that an SVG document draws, at its true size; `source`, which is nullable,
    names the document. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_blank_svg(lode_artwork_options* options, const char* svg,
                                                    const char* source, lode_error** error);
/** "first", on the front of the blank, or "second", on the back of a clear one, which is cut mirrored.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_surface(lode_artwork_options* options, const char* side,
                                                  lode_error** error);
/** The rim of the blank that stays clear; never set: by the blank's size.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_margin(lode_artwork_options* options, double mm, lode_error** error);
/** How much of the edge a frame hides. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_rebate(lode_artwork_options* options, double mm, lode_error** error);
/** One more hole to hang it by, kept clear: its middle and its diameter.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_add_hole(lode_artwork_options* options, double x_mm, double y_mm,
                                               double diameter_mm, lode_error** error);
/** The letters' font: a family with or without a style ("DejaVu Sans:bold"), a file, or "constructed", the built-in
    alphabet; "": that alphabet where it has every letter, and else DejaVu Sans:bold. It is looked for when the
    artwork is drawn. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_font(lode_artwork_options* options, const char* font,
                                               lode_error** error);
/** Text above the grid, in lines; "": none. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_heading(lode_artwork_options* options, const char* text,
                                                  lode_error** error);
/** The heading's font; "": the letters'. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_heading_font(lode_artwork_options* options, const char* font,
                                                       lode_error** error);
/** The height that is kept for the heading, whether it fills it or not; never set: what it needs.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_heading_area(lode_artwork_options* options, double mm,
                                                       lode_error** error);
/** Text below the grid, in lines; "": none. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_foot(lode_artwork_options* options, const char* text,
                                               lode_error** error);
/** Whether the words are set below the grid: 0 or not 0. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_word_list(lode_artwork_options* options, int32_t on,
                                                    lode_error** error);
/** What marks the words: "capsule", "brush", "ring", or "none" for a piece that is still to be solved.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_band(lode_artwork_options* options, const char* kind,
                                               lode_error** error);
/** What is cut out so that film does not lie on film: "none", "bands" or "all".
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_inlay(lode_artwork_options* options, const char* what,
                                                lode_error** error);
/** The colour of a layer, "letters", "bands", "heading", "text" or "border": "#243f3a", or by name, "seagreen".
    Bands take several in turn: "gold,seagreen". [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_colour(lode_artwork_options* options, const char* layer,
                                                 const char* colours, lode_error** error);
/** "line", "double", "rounded", "notched", "dotted" or "none". [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_border(lode_artwork_options* options, const char* style,
                                                 lode_error** error);
/** The breadth of the border's line. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_border_line(lode_artwork_options* options, double mm,
                                                      lode_error** error);
/** Below the heading, and in the corners where there is room: "leaf", "curl", "diamond" or "none".
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_ornament(lode_artwork_options* options, const char* kind,
                                                   lode_error** error);
/** The narrowest stroke that the film holds. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_least_stroke(lode_artwork_options* options, double mm,
                                                       lode_error** error);
/** The narrowest gap and counter that can be weeded. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_least_gap(lode_artwork_options* options, double mm,
                                                    lode_error** error);
/** By how much every stroke is made wider. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_embolden(lode_artwork_options* options, double mm,
                                                   lode_error** error);
/** Whether there are marks beyond the blank's corners, to lay one layer over the other: 0 or not 0.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_artwork_options_set_registration(lode_artwork_options* options, int32_t on,
                                                       lode_error** error);
/** Frees them. [nothing to own | any, when no other uses the options | 0.1] */
LODE_API void lode_artwork_options_free(lode_artwork_options* options);

/* ---- Drawing -------------------------------------------------------------------------------------------- */

/** The recipe of a puzzle that is made for its blank: with a size, or on a blank that is no rectangle with a mask,
    as the room beside heading and margins asks for it. One that names size, shape or mask comes back as it is.
    `control` is nullable. [*result and *refusal are yours | as a reader of recipe and options | 0.1] */
LODE_API int32_t lode_recipe_on_blank(lode_recipe** result, lode_refusal** refusal, const lode_recipe* recipe,
                                      const lode_artwork_options* options, const lode_control* control,
                                      lode_error** error);

/** Draws a puzzle. What cannot be drawn, or was not given, is an error (LODE_UNUSABLE).
    [yours | as a reader of the options | 0.1] */
LODE_API int32_t lode_draw(lode_artwork** artwork, const lode_puzzle* puzzle,
                           const lode_artwork_options* options, lode_error** error);
/** Draws a puzzle, and measures what its film would not hold, which takes ten times as long; before it is cut it
    must be measured. `control` is nullable. [*artwork and *refusal are yours | as a reader of the options | 0.1] */
LODE_API int32_t lode_draw_and_measure(lode_artwork** artwork, lode_refusal** refusal,
                                       const lode_puzzle* puzzle, const lode_artwork_options* options,
                                       const lode_control* control, lode_error** error);
/** The same, and where the film would not hold, with the least change after which it does: bolder strokes, or the
    built-in alphabet. Where nothing helps it is drawn as it was. `control` is nullable.
    [*artwork and *refusal are yours | as a reader of the options | 0.1] */
LODE_API int32_t lode_draw_to_hold(lode_artwork** artwork, lode_refusal** refusal, const lode_puzzle* puzzle,
                                   const lode_artwork_options* options, const lode_control* control,
                                   lode_error** error);

/** The blank's width. [nothing to own | any | 0.1] */
LODE_API double lode_artwork_width_mm(const lode_artwork* artwork);
/** The blank's height. [nothing to own | any | 0.1] */
LODE_API double lode_artwork_height_mm(const lode_artwork* artwork);
/** The side of a cell. [nothing to own | any | 0.1] */
LODE_API double lode_artwork_cell_mm(const lode_artwork* artwork);
/** Where the grid begins: the upper left corner of its first cell. [no result to own | any | 0.1] */
LODE_API int32_t lode_artwork_grid_corner(double* x_mm, double* y_mm, const lode_artwork* artwork,
                                          lode_error** error);
/** The height of the letters' capitals. [nothing to own | any | 0.1] */
LODE_API double lode_artwork_cap_height_mm(const lode_artwork* artwork);
/** Likewise of the heading; 0 where there is none. [nothing to own | any | 0.1] */
LODE_API double lode_artwork_heading_cap_mm(const lode_artwork* artwork);
/** Likewise of words and foot; 0 where there are none. [nothing to own | any | 0.1] */
LODE_API double lode_artwork_text_cap_mm(const lode_artwork* artwork);
/** What the letters are set in: family and style. [the artwork's | any | 0.1] */
LODE_API const char* lode_artwork_font(const lode_artwork* artwork);
/** Likewise of the heading; "" where there is none. [the artwork's | any | 0.1] */
LODE_API const char* lode_artwork_heading_font(const lode_artwork* artwork);

/** Layers stand in order of application; none is without pieces. [nothing to own | any | 0.1] */
LODE_API size_t lode_artwork_layer_count(const lode_artwork* artwork);
/** "border", "bands" or "bands-1" and so on, "letters", "text" or "heading". [the artwork's | any | 0.1] */
LODE_API const char* lode_artwork_layer_name(const lode_artwork* artwork, size_t layer);
/** "#rrggbb". [the artwork's | any | 0.1] */
LODE_API const char* lode_artwork_layer_colour(const lode_artwork* artwork, size_t layer);
/** How many things are lifted and laid. [nothing to own | any | 0.1] */
LODE_API size_t lode_artwork_layer_pieces(const lode_artwork* artwork, size_t layer);

/** What the maker should know before cutting, a sentence each. [nothing to own | any | 0.1] */
LODE_API size_t lode_artwork_note_count(const lode_artwork* artwork);
/** One of the notes. [the artwork's | any | 0.1] */
LODE_API const char* lode_artwork_note(const lode_artwork* artwork, size_t index);
/** What lode_draw_to_hold changed, a sentence each. [nothing to own | any | 0.1] */
LODE_API size_t lode_artwork_change_count(const lode_artwork* artwork);
/** One of the changes. [the artwork's | any | 0.1] */
LODE_API const char* lode_artwork_change(const lode_artwork* artwork, size_t index);

/** All layers at true size, as they are cut: mirrored for the second surface. `format`: "svg", "pdf" or "dxf".
    [yours | any | 0.1] */
LODE_API int32_t lode_artwork_drawing(lode_bytes** bytes, const lode_artwork* artwork, const char* format,
                                      lode_error** error);
/** One layer alone, likewise. [yours | any | 0.1] */
LODE_API int32_t lode_artwork_layer(lode_bytes** bytes, const lode_artwork* artwork, size_t layer,
                                    const char* format, lode_error** error);
/** A PNG picture of the finished piece, as its viewer sees it (never mirrored), its longer side from 64 to 8000
    pixels. [yours | any | 0.1] */
LODE_API int32_t lode_artwork_preview(lode_bytes** png, const lode_artwork* artwork, int32_t long_side_px,
                                      lode_error** error);

/** Rates the puzzle as it hangs on a wall, read from so far away; 0: from nowhere in particular.
    [yours | any | 0.1] */
LODE_API int32_t lode_rate_artwork(lode_rating** rating, const lode_artwork* artwork, double viewing_mm,
                                   lode_error** error);

/** Frees it. [nothing to own | any, when no other uses the artwork | 0.1] */
LODE_API void lode_artwork_free(lode_artwork* artwork);

/* ---- What the film does not hold ------------------------------------------------------------------------ */

/** 1 where the artwork is measured; else 0, and there are no findings. [nothing to own | any | 0.1] */
LODE_API int32_t lode_artwork_is_measured(const lode_artwork* artwork);
/** Places narrower than the least stroke or gap, the narrowest of each layer first; of equal shapes one stands for
    all. [nothing to own | any | 0.1] */
LODE_API size_t lode_artwork_finding_count(const lode_artwork* artwork);
/** A sentence: "the stroke of B at row 3, column 4 (letters) is 0.81 mm (0.032 in) wide; 7 are alike".
    [the artwork's | any | 0.1] */
LODE_API const char* lode_artwork_finding(const lode_artwork* artwork, size_t index);
/** "stroke", "gap" or "between-pieces"; more may come. [the library's, for good | any | 0.1] */
LODE_API const char* lode_artwork_finding_kind(const lode_artwork* artwork, size_t index);
/** The layer's name. [the artwork's | any | 0.1] */
LODE_API const char* lode_artwork_finding_layer(const lode_artwork* artwork, size_t index);
/** The piece: "B at row 3, column 4". [the artwork's | any | 0.1] */
LODE_API const char* lode_artwork_finding_piece(const lode_artwork* artwork, size_t index);
/** The other piece, where it is between two; else "". [the artwork's | any | 0.1] */
LODE_API const char* lode_artwork_finding_other(const lode_artwork* artwork, size_t index);
/** How wide the place is. [nothing to own | any | 0.1] */
LODE_API double lode_artwork_finding_width_mm(const lode_artwork* artwork, size_t index);
/** How many pieces have the same shape, this one among them. [nothing to own | any | 0.1] */
LODE_API size_t lode_artwork_finding_alike(const lode_artwork* artwork, size_t index);
/** Where it is on the blank. [no result to own | any | 0.1] */
LODE_API int32_t lode_artwork_finding_place(double* x_mm, double* y_mm, const lode_artwork* artwork,
                                            size_t index, lode_error** error);
/** What to do about the findings, a sentence each. [nothing to own | any | 0.1] */
LODE_API size_t lode_artwork_way_out_count(const lode_artwork* artwork);
/** One of the ways out. [the artwork's | any | 0.1] */
LODE_API const char* lode_artwork_way_out(const lode_artwork* artwork, size_t index);

/* ---- Cut options ---------------------------------------------------------------------------------------- */

/** No bed, and so no loads; no guide, no DXF, paper "a4". [yours | any | 0.1] */
LODE_API int32_t lode_cut_options_create(lode_cut_options** options, lode_error** error);
/** A copy that goes its own way. [yours | as a reader of the options | 0.1] */
LODE_API int32_t lode_cut_options_copy(lode_cut_options** copy, const lode_cut_options* options,
                                       lode_error** error);
/** What the cutter reaches, for a plan of loads: 10 mm to 10 m; a height of 0 is a roll.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_cut_options_set_bed(lode_cut_options* options, double width_mm, double height_mm,
                                          lode_error** error);
/** How much of the bed's edge it does not reach, on every side. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_cut_options_set_bed_edge(lode_cut_options* options, double mm, lode_error** error);
/** The longest load on a roll, 3 m by default. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_cut_options_set_longest_load(lode_cut_options* options, double mm, lode_error** error);
/** Film that there is of a colour, so many sheets of a size; a height of 0 is a roll of any length. Of colours that
    are never named there is film of any size. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_cut_options_add_film(lode_cut_options* options, const char* colour, double width_mm,
                                           double height_mm, int32_t sheets, lode_error** error);
/** The gap between pieces, 3 mm by default. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_cut_options_set_gap(lode_cut_options* options, double mm, lode_error** error);
/** Film beyond its pieces on each side, 5 mm by default. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_cut_options_set_film_margin(lode_cut_options* options, double mm, lode_error** error);
/** Whether pieces may be turned, as they may by default: 0 or not 0.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_cut_options_set_may_turn(lode_cut_options* options, int32_t on, lode_error** error);
/** Steps of planning at the most, 100,000,000 by default. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_cut_options_set_effort(lode_cut_options* options, uint64_t steps, lode_error** error);
/** How far the blade goes in a second, 0.1 mm to 5 m, for an estimate of the time.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_cut_options_set_speed(lode_cut_options* options, double mm_a_second, lode_error** error);
/** Whether frames, and cuts between rows, part the waste into strips: 0 or not 0.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_cut_options_set_weeding_lines(lode_cut_options* options, int32_t on, lode_error** error);
/** Whether layers and loads are written as DXF too: 0 or not 0. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_cut_options_set_dxf(lode_cut_options* options, int32_t on, lode_error** error);
/** Whether there is a true-size page to lay under or behind the blank, in tiles: 0 or not 0.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_cut_options_set_guide(lode_cut_options* options, int32_t on, lode_error** error);
/** Of job sheet and guide: "a4" or "letter". [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_cut_options_set_paper(lode_cut_options* options, const char* name, lode_error** error);
/** What the piece is called in a shop, for the job sheet, in at most 2,000 bytes; "": nothing.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_cut_options_set_order(lode_cut_options* options, const char* order, lode_error** error);
/** The longer side of the preview, 64 to 8000 pixels and 1600 by default.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_cut_options_set_preview(lode_cut_options* options, int32_t long_side_px,
                                              lode_error** error);
/** Frees them. [nothing to own | any, when no other uses the options | 0.1] */
LODE_API void lode_cut_options_free(lode_cut_options* options);

/* ---- Cutting -------------------------------------------------------------------------------------------- */

/** As few loads as possible, then as little film. The options must have a bed. Refused as LODE_REASON_IMPOSSIBLE:
    more than bed and film allow. `control` is nullable.
    [*plan and *refusal are yours | as a reader of the options | 0.1] */
LODE_API int32_t lode_plan_loads(lode_plan** plan, lode_refusal** refusal, const lode_artwork* artwork,
                                 const lode_cut_options* options, const lode_control* control,
                                 lode_error** error);

/** How many loads there are. [nothing to own | any | 0.1] */
LODE_API size_t lode_plan_load_count(const lode_plan* plan);
/** No plan has fewer loads. [nothing to own | any | 0.1] */
LODE_API size_t lode_plan_least_loads(const lode_plan* plan);
/** 1 where there are no more loads than that; else 0. [nothing to own | any | 0.1] */
LODE_API int32_t lode_plan_is_proved(const lode_plan* plan);
/** 1 where bands were taken apart to save loads; else 0. [nothing to own | any | 0.1] */
LODE_API int32_t lode_plan_bands_are_loose(const lode_plan* plan);
/** 1 where registration marks were left out, since with them the artwork is larger than the bed; else 0.
    [nothing to own | any | 0.1] */
LODE_API int32_t lode_plan_left_out_marks(const lode_plan* plan);
/** How much of the bed's length a load takes up. [nothing to own | any | 0.1] */
LODE_API double lode_plan_load_length_mm(const lode_plan* plan, size_t load);
/** What the maker should know, and why it is not proved, a sentence each. [nothing to own | any | 0.1] */
LODE_API size_t lode_plan_note_count(const lode_plan* plan);
/** One of the notes. [the plan's | any | 0.1] */
LODE_API const char* lode_plan_note(const lode_plan* plan, size_t index);
/** A load as it is cut, on a page of the size of the bed, by the options' weeding lines. `format`: "svg", "pdf" or
    "dxf". [yours | any | 0.1] */
LODE_API int32_t lode_plan_load(lode_bytes** bytes, const lode_plan* plan, size_t load, const char* format,
                                lode_error** error);
/** Frees it. [nothing to own | any, when no other uses the plan | 0.1] */
LODE_API void lode_plan_free(lode_plan* plan);

/** All files at once: layers, loads, the whole artwork, job sheet, guide, proof and preview. The artwork must be
    measured. `plan` is nullable and must be of this artwork: its loads are written, by its own bed and films;
    without it loads are planned where the options have a bed. `options` and `control` are nullable.
    [*files and *refusal are yours | as a reader of the options | 0.1] */
LODE_API int32_t lode_cut_files(lode_files** files, lode_refusal** refusal, const lode_artwork* artwork,
                                const lode_plan* plan, const lode_cut_options* options,
                                const lode_control* control, lode_error** error);
/** What is cut from what, what the film does not hold, and the loads where there is a plan, as JSON, which
    data/schema describes. Artwork, plan and options as lode_cut_files takes them.
    [yours | as a reader of the options | 0.1] */
LODE_API int32_t lode_cut_json(lode_bytes** json, const lode_artwork* artwork, const lode_plan* plan,
                               const lode_cut_options* options, lode_error** error);

/* ---- Print options -------------------------------------------------------------------------------------- */

/** A4, upright, with an answer key of rings in greys. [yours | any | 0.1] */
LODE_API int32_t lode_print_options_create(lode_print_options** options, lode_error** error);
/** A copy that goes its own way. [yours | as a reader of the options | 0.1] */
LODE_API int32_t lode_print_options_copy(lode_print_options** copy, const lode_print_options* options,
                                         lode_error** error);
/** "a4" or "letter". [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_print_options_set_page(lode_print_options* options, const char* name, lode_error** error);
/** Whether pages lie on their longer side: 0 or not 0. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_print_options_set_landscape(lode_print_options* options, int32_t on, lode_error** error);
/** What stays white at every edge, 4 to 50 mm and 12.7 mm by default.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_print_options_set_margin(lode_print_options* options, double mm, lode_error** error);
/** Of all text, by family; "": DejaVu Sans. It is looked for when the pages are printed.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_print_options_set_font(lode_print_options* options, const char* family,
                                             lode_error** error);
/** The order of the words: "alphabetical", "given" or "length". [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_print_options_set_list(lode_print_options* options, const char* order,
                                             lode_error** error);
/** Between cells: "none", "light" or "full". [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_print_options_set_grid_lines(lode_print_options* options, const char* kind,
                                                   lode_error** error);
/** This text ("Name") and a line to write on; "": none. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_print_options_set_name_line(lode_print_options* options, const char* text,
                                                  lode_error** error);
/** The same for a date. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_print_options_set_date_line(lode_print_options* options, const char* text,
                                                  lode_error** error);
/** Whether letters and words are to have 18 points and more: 0 or not 0.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_print_options_set_large_print(lode_print_options* options, int32_t on,
                                                    lode_error** error);
/** How the answer key marks words: "rings", "lines", "greyed", or "none" for no key.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_print_options_set_key(lode_print_options* options, const char* kind, lode_error** error);
/** Colours of the key's marks, in turn: "gold,seagreen,#a34a2c"; "own" for some that go together; "": greys.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_print_options_set_colours(lode_print_options* options, const char* colours,
                                                lode_error** error);
/** The title of a page of contents in front; "": no such page. [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_print_options_set_booklet(lode_print_options* options, const char* title,
                                                lode_error** error);
/** The document's date in seconds since 1970, up to the year 9999; never set: none, so that bytes repeat.
    [nothing to own | as the options' writer | 0.1] */
LODE_API int32_t lode_print_options_set_date(lode_print_options* options, int64_t seconds, lode_error** error);
/** Frees them. [nothing to own | any, when no other uses the options | 0.1] */
LODE_API void lode_print_options_free(lode_print_options* options);

/* ---- Printing ------------------------------------------------------------------------------------------- */

/** No worksheet, to be put together by lode_worksheets_add. [yours | any | 0.1] */
LODE_API int32_t lode_worksheets_create(lode_worksheets** worksheets, lode_error** error);
/** Adds a copy of a puzzle. `title` and `version` ("A", where a class has several) are nullable.
    [nothing to own | as the worksheets' writer | 0.1] */
LODE_API int32_t lode_worksheets_add(lode_worksheets* worksheets, const lode_puzzle* puzzle, const char* title,
                                     const char* version, lode_error** error);
/** How many there are. [nothing to own | as a reader of the worksheets | 0.1] */
LODE_API size_t lode_worksheets_count(const lode_worksheets* worksheets);
/** All as plain text, for a screen reader or a braille embosser, with a form feed between. `options` is nullable.
    [yours | as a reader of worksheets and options | 0.1] */
LODE_API int32_t lode_worksheets_text(lode_bytes** text, const lode_worksheets* worksheets,
                                      const lode_print_options* options, lode_error** error);
/** One as a page of HTML to be solved in a browser. `options` is nullable.
    [yours | as a reader of worksheets and options | 0.1] */
LODE_API int32_t lode_worksheets_solve_page(lode_bytes** html, const lode_worksheets* worksheets, size_t index,
                                            const lode_print_options* options, lode_error** error);
/** Frees them. [nothing to own | any, when no other uses the worksheets | 0.1] */
LODE_API void lode_worksheets_free(lode_worksheets* worksheets);

/** All as PDF, each on its page, then their keys. `options` is nullable.
    [yours | as a reader of worksheets and options | 0.1] */
LODE_API int32_t lode_print(lode_pages** pages, const lode_worksheets* worksheets,
                            const lode_print_options* options, lode_error** error);
/** The PDF: ask it for data and size, or write it; do not free it. [the pages' | any | 0.1] */
LODE_API const lode_bytes* lode_pages_pdf(const lode_pages* pages);
/** How many pages there are. [nothing to own | any | 0.1] */
LODE_API int32_t lode_pages_count(const lode_pages* pages);
/** The size of the grids' type in points, the least of all worksheets. [nothing to own | any | 0.1] */
LODE_API double lode_pages_letter_pt(const lode_pages* pages);
/** Likewise of the lists. [nothing to own | any | 0.1] */
LODE_API double lode_pages_list_pt(const lode_pages* pages);
/** 0 where large print was asked for and is not reached; else 1. [nothing to own | any | 0.1] */
LODE_API int32_t lode_pages_is_large_enough(const lode_pages* pages);
/** What came out otherwise than might be expected, a sentence each. [nothing to own | any | 0.1] */
LODE_API size_t lode_pages_note_count(const lode_pages* pages);
/** One of the notes. [the pages' | any | 0.1] */
LODE_API const char* lode_pages_note(const lode_pages* pages, size_t index);
/** What was printed, as JSON. [the pages' | any | 0.1] */
LODE_API int32_t lode_pages_json(const char** json, const lode_pages* pages, lode_error** error);
/** Frees them. [nothing to own | any, when no other uses the pages | 0.1] */
LODE_API void lode_pages_free(lode_pages* pages);

#ifdef __cplusplus
}
#endif
#endif
