#pragma once
// The parts of a document written into its PDF: tree of structure, links, places, outline, language,
// metadata.

#include <string>

#include "print/pdf_tags.hpp"

namespace lode {

struct PdfAbout {
    std::string title;     // one line of valid UTF-8
    std::string language;  // BCP 47; empty: none
    std::string date;      // ISO 8601; empty: none
    double height_pt = 0;  // of every page
};

// The pages as Cairo wrote them, with a marked stretch for each that the tags count, made whole. What is
// outside these stretches becomes an artifact where there are parts at all. The same pages and tags give the
// same bytes. Throws std::logic_error where pages and tags do not agree, std::bad_alloc where memory ran out.
std::string with_structure(const std::string& pdf, const PdfTags& tags, const PdfAbout& about);

}  // namespace lode
