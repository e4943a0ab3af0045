#pragma once
// PDF as poppler's programs read it.

#include <sstream>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "oracles/picture.hpp"

namespace judge {

// What a program prints about a PDF, which stands where the command says FILE.
inline std::string said(std::vector<std::string> command, const std::string& pdf) {
    const Folder folder;
    for (std::string& part : command)
        if (part == "FILE") part = folder.write("page.pdf", pdf);
    command.insert(command.begin(),
                   {"sh", "-c", "out=$1; shift; exec \"$@\" >\"$out\"", "sh", folder.name("out")});
    if (run(command) != 0) throw std::runtime_error(command[5] + " refused the page");
    return read(folder.name("out"));
}

inline std::string text_in(const std::string& pdf) {
    return said({"pdftotext", "-layout", "FILE", "-"}, pdf);
}

// What pdfinfo says behind a name.
inline std::string told(const std::string& pdf, const std::string& name) {
    std::istringstream lines(said({"pdfinfo", "-isodates", "FILE"}, pdf));
    for (std::string line; std::getline(lines, line);)
        if (line.starts_with(name + ":")) {
            const std::size_t at = line.find_first_not_of(' ', name.size() + 1);
            return at == std::string::npos ? "" : line.substr(at);
        }
    return "";
}

// As wide and as high in points.
inline std::pair<double, double> size_in(const std::string& pdf) {
    std::istringstream numbers(told(pdf, "Page size"));
    std::pair<double, double> size;
    std::string by;
    if (!(numbers >> size.first >> by >> size.second)) throw std::runtime_error("pdfinfo names no size");
    return size;
}

inline Picture page_picture(const std::string& pdf, int dots_an_inch, int page = 1) {
    const Folder folder;
    const std::string number = std::to_string(page);
    if (run({"pdftocairo", "-png", "-r", std::to_string(dots_an_inch), "-f", number, "-l", number,
             "-singlefile", folder.write("page.pdf", pdf), folder.name("page")}) != 0)
        throw std::runtime_error("pdftocairo refused the page");
    return read_png(read(folder.name("page.png")));
}

}  // namespace judge
