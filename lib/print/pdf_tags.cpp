#include "print/pdf_tags.hpp"

#include <algorithm>
#include <array>
#include <stdexcept>

namespace lode {

namespace {

std::string_view structure_type(Role role) {
    switch (role) {
        case Role::section:
            return "Sect";
        case Role::heading:
            return "H1";
        case Role::subheading:
            return "H2";
        case Role::paragraph:
            return "P";
        case Role::list:
            return "L";
        case Role::list_item:
            return "LI";
        case Role::label:
            return "Lbl";
        case Role::table:
            return "Table";
        case Role::table_row:
            return "TR";
        case Role::column_header:
        case Role::row_header:
            return "TH";
        case Role::table_cell:
            return "TD";
        case Role::figure:
            return "Figure";
        case Role::contents:
            return "TOC";
        case Role::contents_item:
            return "TOCI";
        case Role::decoration:
            return "Artifact";
    }
    throw std::logic_error("no such role");
}

template <std::size_t n>
bool one_of(std::string_view type, const std::array<std::string_view, n>& types) {
    return std::find(types.begin(), types.end(), type) != types.end();
}

// Those that hold parts only; what is drawn beside these is decoration.
bool holds_parts_alone(std::string_view type) {
    return one_of(type, std::to_array<std::string_view>({"Document", "Sect", "L", "Table", "TR", "TOC"}));
}

// ISO 32000-1, 14.8.4.2 to 14.8.4.5. A type that needs a parent of its own stands nowhere else.
bool may_hold(std::string_view parent, std::string_view child) {
    constexpr auto in_line = std::to_array<std::string_view>({"Link", "Span", "Figure"});
    if (child == "LI") return parent == "L";
    if (child == "TR") return parent == "Table";
    if (child == "TH" || child == "TD") return parent == "TR";
    if (child == "TOCI") return parent == "TOC";
    if (child == "Lbl") return parent == "LI" || parent == "TOCI";
    if (parent == "L" || parent == "Table" || parent == "TR") return false;
    if (parent == "TOC") return child == "TOC";
    if (parent == "TOCI") return one_of(child, in_line) || child == "P" || child == "TOC";
    if (one_of(parent, std::to_array<std::string_view>({"P", "H1", "H2", "Lbl"})))
        return one_of(child, in_line);
    if (parent == "Link") return child == "Span" || child == "Figure";
    if (parent == "Figure") return child == "Span";
    return parent != "Span";
}

}  // namespace

PdfTags::PdfTags() {
    parts_.push_back({.type = "Document"});
}

// An item keeps what it says in a body, contents in a reference: LI holds but Lbl and LBody, TOCI no text.
std::size_t PdfTags::last_body(std::size_t item, std::string_view type) {
    if (!parts_[item].kids.empty())
        if (const auto* last = std::get_if<std::size_t>(&parts_[item].kids.back());
            last && parts_[*last].type == type)
            return *last;
    parts_.push_back({.type = type, .parent = item});
    parts_[item].kids.emplace_back(parts_.size() - 1);
    return parts_.size() - 1;
}

std::size_t PdfTags::add_part(std::string_view type) {
    std::size_t parent = open_.empty() ? 0 : open_.back().part;
    if (!open_.empty() && open_.back().decoration) throw std::logic_error("decoration holds no part");
    if (!may_hold(parts_[parent].type, type))
        throw std::logic_error("no " + std::string(type) + " may stand in a " +
                               std::string(parts_[parent].type));
    if (parts_[parent].type == "LI" && type != "Lbl") parent = last_body(parent, "LBody");
    if (parts_[parent].type == "TOCI" && (type == "Link" || type == "Span"))
        parent = last_body(parent, "Reference");
    open_.reserve(open_.size() + 1);
    parts_.push_back({.type = type, .parent = parent});
    parts_[parent].kids.emplace_back(parts_.size() - 1);
    open_.push_back({parts_.size() - 1, false});
    return parts_.size() - 1;
}

void PdfTags::begin(Role role, std::string_view description, std::string_view language) {
    if (role == Role::decoration) {
        open_.push_back({open_.empty() ? 0 : open_.back().part, true});
        return;
    }
    if (role == Role::figure && description.empty()) throw std::logic_error("a figure has no description");
    Part& part = parts_[add_part(structure_type(role))];
    part.description = description;
    part.language = language;
    if (role == Role::column_header) part.scope = "Column";
    if (role == Role::row_header) part.scope = "Row";
}

void PdfTags::begin_link(std::string_view place, std::string_view description) {
    Part& part = parts_[add_part("Link")];
    part.place = place;
    part.description = description;
}

void PdfTags::begin_span(std::string_view said) {
    parts_[add_part("Span")].said = said;
}

std::optional<std::size_t> PdfTags::holder() {
    if (open_.empty() || open_.back().decoration) return {};
    const std::size_t part = open_.back().part;
    const std::string_view type = parts_[part].type;
    if (holds_parts_alone(type)) return {};
    if (type == "LI") return last_body(part, "LBody");
    if (type == "TOCI") return last_body(part, "Reference");
    return part;
}

std::optional<std::size_t> PdfTags::block() {
    std::optional<std::size_t> part = holder();
    while (part && (parts_[*part].type == "Link" || parts_[*part].type == "Span"))
        part = parts_[*part].parent;
    return part;
}

void PdfTags::add_content(std::size_t part, int page) {
    if (marks_.size() <= static_cast<std::size_t>(page)) marks_.resize(static_cast<std::size_t>(page) + 1);
    parts_[part].kids.emplace_back(Content{page, marks_[static_cast<std::size_t>(page)]});
    ++marks_[static_cast<std::size_t>(page)];
}

// Those that tell where they are: links box by box, since what one covers may be several lines; figures and
// tables as a whole (BBox of ISO 32000-1, 14.8.5.4.3).
void PdfTags::add_extent(std::size_t part, int page, const Box& points) {
    for (std::size_t i = part; i != 0; i = parts_[i].parent) {
        Part& one = parts_[i];
        if (one.type != "Link" && one.type != "Figure" && one.type != "Table") continue;
        std::vector<Box>& boxes = one.extents[page];
        if (boxes.empty() || one.type == "Link") {
            boxes.push_back(points);
            continue;
        }
        Box& whole = boxes.front();
        whole = {std::min(whole.left, points.left), std::min(whole.top, points.top),
                 std::max(whole.right, points.right), std::max(whole.bottom, points.bottom)};
    }
}

void PdfTags::add_text(std::size_t part, std::string_view text) {
    for (std::size_t i = part; i != 0; i = parts_[i].parent)
        if (parts_[i].type == "Link")
            parts_[i].said += parts_[i].said.empty() && text.starts_with(' ') ? text.substr(1) : text;
}

void PdfTags::set_place(std::string_view name, Place place) {
    if (!places_.emplace(name, place).second)
        throw std::logic_error("the place \"" + std::string(name) + "\" is set twice");
}

void PdfTags::check_places() const {
    const auto check = [&](const std::string& name) {
        if (!places_.contains(name)) throw std::logic_error("no place is named \"" + name + "\"");
    };
    for (const Part& part : parts_)
        if (part.type == "Link") check(part.place);
    for (const Bookmark& bookmark : bookmarks_) check(bookmark.place);
}

}  // namespace lode
