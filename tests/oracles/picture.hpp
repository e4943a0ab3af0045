#pragma once
// Outside judges of artwork: programs that read what we wrote and say what they see. A judge that is missing
// is a failure and never a pass.

#include <cairo.h>
#include <spawn.h>
#include <stdlib.h>
#include <sys/wait.h>

#include <algorithm>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

extern char** environ;

namespace judge {

class Folder {
  public:
    Folder() {
        std::string name = (std::filesystem::temp_directory_path() / "lode-XXXXXX").string();
        if (!mkdtemp(name.data())) throw std::runtime_error("no folder for the test's files");
        path_ = name;
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    [[nodiscard]] std::string write(const std::string& name, std::string_view bytes) const {
        const auto path = path_ / name;
        std::ofstream(path, std::ios::binary) << bytes;
        return path.string();
    }
    [[nodiscard]] std::string name(const std::string& name) const { return (path_ / name).string(); }

  private:
    std::filesystem::path path_;
};

inline std::string read(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

// The program's exit code. Throws where it cannot be started.
inline int run(const std::vector<std::string>& command) {
    std::vector<char*> arguments;
    for (const std::string& one : command) arguments.push_back(const_cast<char*>(one.c_str()));
    arguments.push_back(nullptr);
    pid_t child = 0;
    if (posix_spawnp(&child, arguments[0], nullptr, nullptr, arguments.data(), environ) != 0)
        throw std::runtime_error("the outside judge " + command[0] + " is not installed");
    int status = 0;
    if (waitpid(child, &status, 0) != child || !WIFEXITED(status))
        throw std::runtime_error(command[0] + " did not end as it should");
    return WEXITSTATUS(status);
}

struct Picture {
    int width = 0;
    int height = 0;
    std::vector<unsigned char> rgb;  // three bytes a pixel

    [[nodiscard]] int darkness(int x, int y) const {
        const auto at =
            3 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x));
        return 255 - (rgb[at] + rgb[at + 1] + rgb[at + 2]) / 3;
    }
    [[nodiscard]] Picture flipped() const {
        Picture other = *this;
        const auto columns = static_cast<std::size_t>(width);
        for (std::size_t y = 0; y < static_cast<std::size_t>(height); ++y)
            for (std::size_t x = 0; x < columns; ++x)
                std::copy_n(&rgb[3 * (y * columns + x)], 3, &other.rgb[3 * (y * columns + columns - 1 - x)]);
        return other;
    }
};

inline Picture read_png(const std::string& bytes) {
    struct Source {
        const std::string* bytes;
        std::size_t at;
    } source{&bytes, 0};
    const auto pull = [](void* from, unsigned char* to, unsigned size) {
        auto& s = *static_cast<Source*>(from);
        if (s.bytes->size() - s.at < size) return CAIRO_STATUS_READ_ERROR;
        std::memcpy(to, s.bytes->data() + s.at, size);
        s.at += size;
        return CAIRO_STATUS_SUCCESS;
    };
    cairo_surface_t* const surface = cairo_image_surface_create_from_png_stream(pull, &source);
    if (cairo_surface_status(surface) != CAIRO_STATUS_SUCCESS) {
        cairo_surface_destroy(surface);
        throw std::runtime_error("this is no PNG picture that Cairo can read");
    }
    Picture picture{cairo_image_surface_get_width(surface), cairo_image_surface_get_height(surface), {}};
    const int stride = cairo_image_surface_get_stride(surface);
    const unsigned char* const data = cairo_image_surface_get_data(surface);
    for (int y = 0; y < picture.height; ++y)
        for (int x = 0; x < picture.width; ++x) {
            unsigned pixel = 0;
            std::memcpy(&pixel, data + y * stride + 4 * x, 4);
            for (const unsigned shift : {16u, 8u, 0u})
                picture.rgb.push_back(static_cast<unsigned char>(pixel >> shift & 0xFF));
        }
    cairo_surface_destroy(surface);
    return picture;
}

// What librsvg makes of it, on white, at its own size in dots an inch.
inline Picture rendered(const std::string& svg, int dots_an_inch) {
    const Folder folder;
    const std::string from = folder.write("drawing.svg", svg);
    const std::string to = folder.name("drawing.png");
    const std::string dots = std::to_string(dots_an_inch);
    if (run({"rsvg-convert", "--dpi-x", dots, "--dpi-y", dots, "--background-color", "white", "-o", to,
             from}) != 0)
        throw std::runtime_error("rsvg-convert refused the drawing");
    return read_png(read(to));
}

// What libxml2 says.
inline bool is_well_formed(const std::string& xml) {
    const Folder folder;
    return run({"xmllint", "--noout", "--nonet", folder.write("drawing.svg", xml)}) == 0;
}

// The share of pixels that differ by more than a tenth in any colour. Throws where the sizes differ.
inline double share_that_differs(const Picture& a, const Picture& b) {
    if (a.width != b.width || a.height != b.height) throw std::runtime_error("pictures of different size");
    std::size_t different = 0;
    for (std::size_t i = 0; i < a.rgb.size(); i += 3) {
        int most = 0;
        for (std::size_t j = i; j < i + 3; ++j) most = std::max(most, std::abs(a.rgb[j] - b.rgb[j]));
        different += most > 25;
    }
    return 3 * static_cast<double>(different) / static_cast<double>(a.rgb.size());
}

// How many pixels of a square about (x, y) differ clearly from those of another picture of the same size.
inline int marks(const Picture& a, const Picture& b, double x, double y, double half) {
    int count = 0;
    for (int row = static_cast<int>(y - half); row <= static_cast<int>(y + half); ++row)
        for (int column = static_cast<int>(x - half); column <= static_cast<int>(x + half); ++column)
            if (row >= 0 && row < a.height && column >= 0 && column < a.width)
                count += std::abs(a.darkness(column, row) - b.darkness(column, row)) > 60;
    return count;
}

}  // namespace judge
