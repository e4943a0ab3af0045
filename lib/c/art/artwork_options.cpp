#include "art/draw.hpp"
#include "c/art/handles.hpp"
#include "c/art/values.hpp"

using namespace lode::c;

namespace {

// Options that lack nothing, on a blank that bounds nothing: what is wrong with one that is set in them is
// its own fault.
lode::ArtworkOptions sound_options() {
    lode::ArtworkOptions options;
    options.blank = lode::shaped_blank("rectangle", {lode::most_blank_mm, lode::most_blank_mm});
    options.surface = lode::Surface::first;
    return options;
}

// Sets a field by draw's own judgement of its value.
template <class Set>
std::int32_t set_judged(const char* function, lode_artwork_options* options, lode_error** error,
                        const Set& set) {
    return changed(function, options, error, [&](lode_artwork_options& its) {
        lode::ArtworkOptions alone = sound_options();
        set(alone);
        if (auto fault = lode::fault_in(alone)) throw Unusable{std::move(*fault)};
        set(its.options);
    });
}

template <class Field>
std::int32_t set_length(const char* function, lode_artwork_options* options,
                        Field lode::ArtworkOptions::*field, double mm, lode_error** error) {
    return set_judged(function, options, error, [&](lode::ArtworkOptions& its) { its.*field = mm; });
}

std::int32_t set_text(const char* function, lode_artwork_options* options,
                      std::string lode::ArtworkOptions::*field, const char* given, const char* name,
                      lode_error** error) {
    return changed(function, options, error,
                   [&](lode_artwork_options& its) { its.options.*field = raw_text(given, name); });
}

// Of border and ornament, which may be none.
template <class Choice>
std::optional<Choice> chosen_or_none(const char* given, std::string_view option,
                                     std::optional<Choice> (*named)(std::string_view)) {
    return named(choice(given, option));
}

}  // namespace

std::int32_t lode_artwork_options_create(lode_artwork_options** options, lode_error** error) {
    return give_new(__func__, options, "options", error);
}

std::int32_t lode_artwork_options_copy(lode_artwork_options** copy, const lode_artwork_options* options,
                                       lode_error** error) {
    return give_copy(__func__, copy, options, error);
}

std::int32_t lode_artwork_options_set_blank(lode_artwork_options* options, const char* blank,
                                            lode_error** error) {
    return changed(__func__, options, error, [&](lode_artwork_options& its) {
        its.options.blank = taken(lode::read_blank(raw_text(blank, "blank")));
    });
}

std::int32_t lode_artwork_options_set_blank_svg(lode_artwork_options* options, const char* svg,
                                                const char* source, lode_error** error) {
    return changed(__func__, options, error, [&](lode_artwork_options& its) {
        its.options.blank = taken(lode::svg_outline(text(svg, "svg"), source_name(source)));
    });
}

std::int32_t lode_artwork_options_set_surface(lode_artwork_options* options, const char* side,
                                              lode_error** error) {
    return changed(__func__, options, error, [&](lode_artwork_options& its) {
        its.options.surface = chosen(side, "surface", lode::surface_named);
    });
}

std::int32_t lode_artwork_options_set_margin(lode_artwork_options* options, double mm, lode_error** error) {
    return set_length(__func__, options, &lode::ArtworkOptions::margin_mm, mm, error);
}

std::int32_t lode_artwork_options_set_rebate(lode_artwork_options* options, double mm, lode_error** error) {
    return set_length(__func__, options, &lode::ArtworkOptions::rebate_mm, mm, error);
}

std::int32_t lode_artwork_options_add_hole(lode_artwork_options* options, double x_mm, double y_mm,
                                           double diameter_mm, lode_error** error) {
    return changed(__func__, options, error, [&](lode_artwork_options& its) {
        lode::ArtworkOptions alone = sound_options();
        alone.holes = its.options.holes;
        alone.holes.push_back({{x_mm, y_mm}, diameter_mm});
        if (auto fault = lode::fault_in(alone)) throw Unusable{std::move(*fault)};
        its.options.holes = std::move(alone.holes);
    });
}

std::int32_t lode_artwork_options_set_font(lode_artwork_options* options, const char* font,
                                           lode_error** error) {
    return set_text(__func__, options, &lode::ArtworkOptions::font, font, "font", error);
}

std::int32_t lode_artwork_options_set_heading(lode_artwork_options* options, const char* heading,
                                              lode_error** error) {
    return set_text(__func__, options, &lode::ArtworkOptions::heading, heading, "text", error);
}

std::int32_t lode_artwork_options_set_heading_font(lode_artwork_options* options, const char* font,
                                                   lode_error** error) {
    return set_text(__func__, options, &lode::ArtworkOptions::heading_font, font, "font", error);
}

std::int32_t lode_artwork_options_set_heading_area(lode_artwork_options* options, double mm,
                                                   lode_error** error) {
    return set_length(__func__, options, &lode::ArtworkOptions::heading_area_mm, mm, error);
}

std::int32_t lode_artwork_options_set_foot(lode_artwork_options* options, const char* foot,
                                           lode_error** error) {
    return set_text(__func__, options, &lode::ArtworkOptions::foot, foot, "text", error);
}

std::int32_t lode_artwork_options_set_word_list(lode_artwork_options* options, std::int32_t on,
                                                lode_error** error) {
    return changed(__func__, options, error,
                   [&](lode_artwork_options& its) { its.options.word_list = on != 0; });
}

std::int32_t lode_artwork_options_set_band(lode_artwork_options* options, const char* kind,
                                           lode_error** error) {
    return changed(__func__, options, error, [&](lode_artwork_options& its) {
        its.options.band = chosen(kind, "band", lode::band_kind_named);
    });
}

std::int32_t lode_artwork_options_set_inlay(lode_artwork_options* options, const char* what,
                                            lode_error** error) {
    return changed(__func__, options, error, [&](lode_artwork_options& its) {
        its.options.inlay = chosen(what, "inlay", lode::inlay_named);
    });
}

std::int32_t lode_artwork_options_set_colour(lode_artwork_options* options, const char* layer,
                                             const char* colours, lode_error** error) {
    return changed(__func__, options, error, [&](lode_artwork_options& its) {
        const std::string wanted = choice(layer, "colour");
        lode::ArtworkOptions alone = sound_options();
        alone.band_colours = read_colours(word(colours, "colours"));
        if (auto fault = lode::fault_in(alone)) throw Unusable{std::move(*fault)};
        if (wanted == "bands") {
            its.options.band_colours = std::move(alone.band_colours);
            return;
        }
        if (alone.band_colours.size() > 1)
            throw_unusable("--colour: " + wanted + " cannot have several colours.",
                           "Give one colour; only bands take several in turn.");
        const lode::Colour colour = alone.band_colours.front();
        if (wanted == "letters") its.options.letters = colour;
        if (wanted == "heading") its.options.heading_colour = colour;
        if (wanted == "text") its.options.text_colour = colour;
        if (wanted == "border") its.options.border_colour = colour;
    });
}

std::int32_t lode_artwork_options_set_border(lode_artwork_options* options, const char* style,
                                             lode_error** error) {
    return changed(__func__, options, error, [&](lode_artwork_options& its) {
        its.options.border = chosen_or_none(style, "border", lode::border_style_named);
    });
}

std::int32_t lode_artwork_options_set_border_line(lode_artwork_options* options, double mm,
                                                  lode_error** error) {
    return set_length(__func__, options, &lode::ArtworkOptions::border_line_mm, mm, error);
}

std::int32_t lode_artwork_options_set_ornament(lode_artwork_options* options, const char* kind,
                                               lode_error** error) {
    return changed(__func__, options, error, [&](lode_artwork_options& its) {
        its.options.ornament = chosen_or_none(kind, "ornament", lode::ornament_named);
    });
}

std::int32_t lode_artwork_options_set_least_stroke(lode_artwork_options* options, double mm,
                                                   lode_error** error) {
    return set_length(__func__, options, &lode::ArtworkOptions::least_stroke_mm, mm, error);
}

std::int32_t lode_artwork_options_set_least_gap(lode_artwork_options* options, double mm,
                                                lode_error** error) {
    return set_length(__func__, options, &lode::ArtworkOptions::least_gap_mm, mm, error);
}

std::int32_t lode_artwork_options_set_embolden(lode_artwork_options* options, double mm, lode_error** error) {
    return set_length(__func__, options, &lode::ArtworkOptions::embolden_mm, mm, error);
}

std::int32_t lode_artwork_options_set_registration(lode_artwork_options* options, std::int32_t on,
                                                   lode_error** error) {
    return changed(__func__, options, error,
                   [&](lode_artwork_options& its) { its.options.registration = on != 0; });
}

void lode_artwork_options_free(lode_artwork_options* options) {
    delete options;
}
