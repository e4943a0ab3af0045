#include "c/art/handles.hpp"
#include "c/art/values.hpp"

using namespace lode::c;

namespace {

lode::PrintOptions options_or_defaults(const lode_print_options* options) {
    return options ? options->options : lode::PrintOptions();
}

std::string text_or_none(const char* given, const char* name) {
    return given ? raw_text(given, name) : std::string();
}

}  // namespace

std::int32_t lode_worksheets_create(lode_worksheets** worksheets, lode_error** error) {
    return give_new(__func__, worksheets, "worksheets", error);
}

std::int32_t lode_worksheets_add(lode_worksheets* worksheets, const lode_puzzle* puzzle, const char* title,
                                 const char* version, lode_error** error) {
    return guarded(__func__, error, [&] {
        auto& all = need(worksheets, "worksheets").worksheets;
        const lode::Puzzle& given = puzzle_in(need(puzzle, "puzzle"));
        if (all.size() >= lode::most_worksheets)
            throw_unusable("There are " + std::to_string(all.size()) + " worksheets already.",
                           "Print at most " + std::to_string(lode::most_worksheets) + " at once.");
        all.push_back({given, text_or_none(title, "title"), text_or_none(version, "version")});
        return LODE_OK;
    });
}

std::size_t lode_worksheets_count(const lode_worksheets* worksheets) {
    return worksheets ? worksheets->worksheets.size() : 0;
}

std::int32_t lode_worksheets_text(lode_bytes** text, const lode_worksheets* worksheets,
                                  const lode_print_options* options, lode_error** error) {
    return give_bytes(__func__, text, "text", error, [&] {
        const auto wanted = options_or_defaults(options);
        std::string all;
        for (const lode::Worksheet& worksheet : need(worksheets, "worksheets").worksheets)
            all += (all.empty() ? "" : "\f") + lode::worksheet_text(worksheet, wanted);
        return all;
    });
}

std::int32_t lode_worksheets_solve_page(lode_bytes** html, const lode_worksheets* worksheets,
                                        std::size_t index, const lode_print_options* options,
                                        lode_error** error) {
    return give_bytes(__func__, html, "html", error, [&] {
        const auto& worksheet = need_at(need(worksheets, "worksheets").worksheets, index, "worksheet");
        return lode::solve_page(worksheet, options_or_defaults(options));
    });
}

void lode_worksheets_free(lode_worksheets* worksheets) {
    delete worksheets;
}

std::int32_t lode_print(lode_pages** pages, const lode_worksheets* worksheets,
                        const lode_print_options* options, lode_error** error) {
    clear(pages);
    return guarded(__func__, error, [&] {
        auto& result = need(pages, "pages");
        const auto& all = need(worksheets, "worksheets").worksheets;
        auto printed = taken(lode::print_worksheets(all, options_or_defaults(options)));
        std::string json = lode::to_json(printed, all);
        std::string pdf = std::move(printed.pdf);
        result = new lode_pages{{std::move(pdf)}, std::move(printed), std::move(json)};
        return LODE_OK;
    });
}

const lode_bytes* lode_pages_pdf(const lode_pages* pages) {
    return pages ? &pages->pdf : nullptr;
}

std::int32_t lode_pages_count(const lode_pages* pages) {
    return pages ? pages->pages.pages : 0;
}

double lode_pages_letter_pt(const lode_pages* pages) {
    return pages ? pages->pages.letter_pt : 0;
}

double lode_pages_list_pt(const lode_pages* pages) {
    return pages ? pages->pages.list_pt : 0;
}

std::int32_t lode_pages_is_large_enough(const lode_pages* pages) {
    return pages && pages->pages.is_large_enough ? 1 : 0;
}

std::size_t lode_pages_note_count(const lode_pages* pages) {
    return pages ? pages->pages.notes.size() : 0;
}

const char* lode_pages_note(const lode_pages* pages, std::size_t index) {
    return pages ? entry(pages->pages.notes, index) : nullptr;
}

std::int32_t lode_pages_json(const char** json, const lode_pages* pages, lode_error** error) {
    clear(json);
    return guarded(__func__, error, [&] {
        auto& result = need(json, "json");
        result = need(pages, "pages").json.c_str();
        return LODE_OK;
    });
}

void lode_pages_free(lode_pages* pages) {
    delete pages;
}
