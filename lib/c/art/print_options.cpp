#include "c/art/handles.hpp"
#include "c/art/values.hpp"

using namespace lode::c;

std::int32_t lode_print_options_create(lode_print_options** options, lode_error** error) {
    return give_new(__func__, options, "options", error);
}

std::int32_t lode_print_options_copy(lode_print_options** copy, const lode_print_options* options,
                                     lode_error** error) {
    return give_copy(__func__, copy, options, error);
}

std::int32_t lode_print_options_set_page(lode_print_options* options, const char* name, lode_error** error) {
    return changed(__func__, options, error, [&](lode_print_options& its) {
        its.options.page = chosen(name, "page", lode::paper_named);
    });
}

std::int32_t lode_print_options_set_landscape(lode_print_options* options, std::int32_t on,
                                              lode_error** error) {
    return changed(__func__, options, error,
                   [&](lode_print_options& its) { its.options.landscape = on != 0; });
}

std::int32_t lode_print_options_set_margin(lode_print_options* options, double mm, lode_error** error) {
    return changed(__func__, options, error, [&](lode_print_options& its) {
        its.options.margin_mm =
            within(mm, lode::least_print_margin_mm, lode::most_print_margin_mm, "margin", "mm");
    });
}

std::int32_t lode_print_options_set_font(lode_print_options* options, const char* family,
                                         lode_error** error) {
    return changed(__func__, options, error,
                   [&](lode_print_options& its) { its.options.font = raw_text(family, "family"); });
}

std::int32_t lode_print_options_set_list(lode_print_options* options, const char* order, lode_error** error) {
    return changed(__func__, options, error, [&](lode_print_options& its) {
        its.options.order = chosen(order, "list", lode::list_order_named);
    });
}

std::int32_t lode_print_options_set_grid_lines(lode_print_options* options, const char* kind,
                                               lode_error** error) {
    return changed(__func__, options, error, [&](lode_print_options& its) {
        its.options.grid_lines = chosen(kind, "grid-lines", lode::grid_lines_named);
    });
}

std::int32_t lode_print_options_set_name_line(lode_print_options* options, const char* given,
                                              lode_error** error) {
    return changed(__func__, options, error,
                   [&](lode_print_options& its) { its.options.name_line = page_text(given, "name-line"); });
}

std::int32_t lode_print_options_set_date_line(lode_print_options* options, const char* given,
                                              lode_error** error) {
    return changed(__func__, options, error,
                   [&](lode_print_options& its) { its.options.date_line = page_text(given, "date-line"); });
}

std::int32_t lode_print_options_set_large_print(lode_print_options* options, std::int32_t on,
                                                lode_error** error) {
    return changed(__func__, options, error,
                   [&](lode_print_options& its) { its.options.large_print = on != 0; });
}

std::int32_t lode_print_options_set_key(lode_print_options* options, const char* kind, lode_error** error) {
    return changed(__func__, options, error, [&](lode_print_options& its) {
        const auto marks = lode::key_marks_named(choice(kind, "key"));
        its.options.key = marks.has_value();
        if (marks) its.options.key_marks = *marks;
    });
}

std::int32_t lode_print_options_set_colours(lode_print_options* options, const char* colours,
                                            lode_error** error) {
    return changed(__func__, options, error, [&](lode_print_options& its) {
        const std::string wanted = word(colours, "colours");
        if (wanted == "own")
            its.options.colours.assign(lode::key_colours.begin(), lode::key_colours.end());
        else
            its.options.colours = wanted.empty() ? std::vector<lode::Colour>() : read_colours(wanted);
    });
}

std::int32_t lode_print_options_set_booklet(lode_print_options* options, const char* title,
                                            lode_error** error) {
    return changed(__func__, options, error,
                   [&](lode_print_options& its) { its.options.contents = page_text(title, "booklet"); });
}

std::int32_t lode_print_options_set_date(lode_print_options* options, std::int64_t seconds,
                                         lode_error** error) {
    return changed(__func__, options, error, [&](lode_print_options& its) {
        constexpr std::int64_t year_9999 = 253'402'300'799;
        if (seconds < 0 || seconds > year_9999)
            throw_unusable("The date is out of bounds.",
                           "Give seconds since 1970, from 0 to " + std::to_string(year_9999) + ".");
        its.options.date = seconds;
    });
}

void lode_print_options_free(lode_print_options* options) {
    delete options;
}
