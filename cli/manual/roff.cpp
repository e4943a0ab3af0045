#include "roff.hpp"

#include <array>
#include <cstdio>

namespace lode::cli {
namespace {

// A character of UTF-8 as roff names it, "\[u00E9]"; moves past it. The text is the program's own, and valid.
std::string named_character(std::string_view text, std::size_t& at) {
    const auto first = static_cast<unsigned char>(text[at]);
    const int following = first >= 0xF0 ? 3 : first >= 0xE0 ? 2 : 1;
    unsigned code = first & (0x3FU >> following);
    for (int i = 0; i < following; ++i) code = code << 6U | (static_cast<unsigned char>(text[++at]) & 0x3FU);
    std::array<char, 16> name{};
    std::snprintf(name.data(), name.size(), "\\[u%04X]", code);
    return name.data();
}

// Whether what begins here is typed as it is: an option, or a list without blanks. It is not parted at its
// dashes.
bool is_typed(std::string_view text) {
    const auto word = text.substr(0, text.find(' '));
    return word.starts_with("--") || word.substr(0, word.size() - 1).find(',') != std::string_view::npos;
}

std::string escaped(std::string_view text, bool is_code) {
    std::string roff;
    bool is_option = false;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char c = text[at];
        if (c != ' ' && (at == 0 || text[at - 1] == ' ')) is_option = is_code || is_typed(text.substr(at));
        if (static_cast<unsigned char>(c) >= 0x80)
            roff += named_character(text, at);
        else if (c == '\\')
            roff += "\\e";
        else if (c == '\'')
            roff += "\\(aq";
        else if (c == '`')
            roff += "\\(ga";
        else if (c == '-' && is_option)
            roff += "\\-";
        else if (c == '~')
            roff += "\\(ti";
        else if (c == '^')
            roff += "\\(ha";
        else
            roff += c;
    }
    // A full stop at the start of a line would be a command.
    return roff.starts_with('.') ? "\\&" + roff : roff;
}

// "letterlode make words.txt --seed 7" in lines that an indented text of 80 columns holds.
std::vector<std::string> in_lines(const std::string& command) {
    constexpr std::size_t widest = 69;
    std::vector<std::string> lines;
    std::string rest = command;
    while (rest.size() > widest) {
        const auto at = rest.rfind(" --", widest - 2);
        if (at == std::string::npos || at == 0 || rest.find_first_not_of(' ') > at) break;
        lines.push_back(rest.substr(0, at) + " \\");
        rest = "    " + rest.substr(at + 1);
    }
    lines.push_back(rest);
    return lines;
}

}  // namespace

void Roff::paragraph(std::string_view text) {
    text_ += ".PP\n" + roff_prose(text) + "\n";
}

void Roff::section(std::string_view title) {
    text_ += ".SH " + roff_prose(title) + "\n";
}

void Roff::item(const std::string& marked_up, std::string_view text) {
    text_ += ".TP\n" + marked_up + "\n" + roff_prose(text) + "\n";
}

void Roff::commands(const std::vector<std::string>& commands) {
    text_ += ".PP\n.RS 4\n.EX\n";
    for (const auto& command : commands)
        for (const auto& one : in_lines(command)) text_ += roff_code(one) + "\n";
    text_ += ".EE\n.RE\n";
}

std::string roff_prose(std::string_view text) {
    return escaped(text, false);
}
std::string roff_code(std::string_view text) {
    return escaped(text, true);
}
std::string roff_bold(std::string_view code) {
    return "\\fB" + roff_code(code) + "\\fR";
}
std::string roff_italic(std::string_view code) {
    return "\\fI" + roff_code(code) + "\\fR";
}

}  // namespace lode::cli
