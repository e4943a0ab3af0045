// A drawing as DXF, for programs that read no curves of other kinds: closed polylines and lines.
//
// Release 2000 (AC1015) is the oldest whose header states the unit, and every reader of DXF knows it. It
// wants tables, blocks and a dictionary of objects even where nothing is in them, each with a number of its
// own.

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string_view>
#include <utility>

#include <letterlode/drawing.hpp>

#include "art/number.hpp"

namespace lode {

namespace {

constexpr int decimals = 4;  // 0.1 micrometres

// --- Curves as chords

Point on(Point a, const Segment& s, double t) {
    const double u = 1 - t;
    const double p = u * u * u, q = 3 * u * u * t, r = 3 * u * t * t, v = t * t * t;
    return {p * a.x + q * s.control1.x + r * s.control2.x + v * s.to.x,
            p * a.y + q * s.control1.y + r * s.control2.y + v * s.to.y};
}

// Where one coordinate of a cubic turns back: roots of its derivative, p t^2 + 2 q t + r, inside (0, 1).
void append_turns(double a, double b, double c, double d, std::vector<double>& turns) {
    const double p = d - 3 * c + 3 * b - a;
    const double q = c - 2 * b + a;
    const double r = b - a;
    const double discriminant = q * q - p * r;
    if (!(discriminant > 0)) return;
    // The root that does not cancel, and its fellow by the product of both.
    const double away = -(q + std::copysign(std::sqrt(discriminant), q));
    const auto take = [&](double t) {
        if (t > 1e-6 && t < 1 - 1e-6) turns.push_back(t);
    };
    if (p != 0) take(away / p);
    if (away != 0) take(r / away);
}

// How many chords of equal parts of the parameter keep the tolerance: a chord over h leaves a curve by no
// more than h^2 / 8 times the greatest second derivative there, which on a cubic is at one of its ends.
int chords_of(Point a, const Segment& s, double from, double to) {
    const auto second = [&](double t) {
        const auto bend = [t](double p0, double p1, double p2, double p3) {
            return 6 * ((1 - t) * (p0 - 2 * p1 + p2) + t * (p1 - 2 * p2 + p3));
        };
        const double x = bend(a.x, s.control1.x, s.control2.x, s.to.x);
        const double y = bend(a.y, s.control1.y, s.control2.y, s.to.y);
        return std::sqrt(x * x + y * y);
    };
    const double most = std::max(second(from), second(to));
    const double chords = std::ceil((to - from) * std::sqrt(most / (8 * dxf_tolerance_mm)));
    return static_cast<int>(std::clamp(chords, 1.0, 10'000.0));
}

void append_curve(Point a, const Segment& s, std::vector<Point>& points) {
    std::vector<double> turns;
    append_turns(a.x, s.control1.x, s.control2.x, s.to.x, turns);
    append_turns(a.y, s.control1.y, s.control2.y, s.to.y, turns);
    std::sort(turns.begin(), turns.end());
    turns.push_back(1);
    double from = 0;
    for (const double to : turns) {
        const int chords = chords_of(a, s, from, to);
        for (int i = 1; i < chords; ++i) points.push_back(on(a, s, from + (to - from) * i / chords));
        points.push_back(to == 1 ? s.to : on(a, s, to));
        from = to;
    }
}

std::vector<Point> polygon_of(const Contour& contour) {
    std::vector<Point> points{contour.start};
    for (const Segment& s : contour.segments)
        if (s.curved)
            append_curve(points.back(), s, points);
        else
            points.push_back(s.to);
    return points;
}

// --- Colours by number

// The format's numbered colours are common practice and in no standard: 10 to 249 go round the hues in steps
// of 15 degrees, ten a hue, at five brightnesses by turns full and half as strong.
struct NumberedColour {
    int number = 7;
    Colour colour;
};

std::vector<NumberedColour> numbered_colours() {
    // 7 is the pen that shows on any ground, white on black or black on white.
    std::vector<NumberedColour> colours{{7, {0, 0, 0}},        {7, {255, 255, 255}},   {1, {255, 0, 0}},
                                        {2, {255, 255, 0}},    {3, {0, 255, 0}},       {4, {0, 255, 255}},
                                        {5, {0, 0, 255}},      {6, {255, 0, 255}},     {8, {128, 128, 128}},
                                        {9, {192, 192, 192}},  {252, {102, 102, 102}}, {253, {153, 153, 153}},
                                        {254, {204, 204, 204}}};
    for (int hue = 0; hue < 24; ++hue) {
        // In quarters: up to green within the first four steps while red is full, and so on round the circle.
        const int within = hue % 4;
        const std::array<std::array<int, 3>, 6> sixths{{{4, within, 0},
                                                        {4 - within, 4, 0},
                                                        {0, 4, within},
                                                        {0, 4 - within, 4},
                                                        {within, 0, 4},
                                                        {4, 0, 4 - within}}};
        const auto& quarters = sixths[static_cast<std::size_t>(hue / 4)];
        constexpr std::array brightness{255, 165, 127, 76, 38};
        for (int i = 0; i < 10; ++i) {
            const int bright = brightness[static_cast<std::size_t>(i / 2)];
            const auto part = [&](std::size_t channel) {
                const int eighths = i % 2 ? 4 + quarters[channel] : 2 * quarters[channel];
                return static_cast<std::uint8_t>(bright * eighths / 8);
            };
            colours.push_back({10 + 10 * hue + i, {part(0), part(1), part(2)}});
        }
    }
    return colours;
}

int nearest_number(Colour wanted) {
    static const std::vector<NumberedColour> colours = numbered_colours();
    const auto distance = [&](const NumberedColour& other) {
        const int red = wanted.red - other.colour.red;
        const int green = wanted.green - other.colour.green;
        const int blue = wanted.blue - other.colour.blue;
        return red * red + green * green + blue * blue;
    };
    return std::min_element(colours.begin(), colours.end(),
                            [&](const auto& a, const auto& b) { return distance(a) < distance(b); })
        ->number;
}

// --- The file

// "letters-2" where another group is called "letters" too. Names are compared without case.
std::vector<std::string> layer_names(const Drawing& drawing) {
    std::vector<std::string> names;
    std::vector<std::string> low;
    for (const DrawnGroup& group : drawing.groups) {
        std::string name;
        for (const char c : group.name) {
            const bool safe = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                              c == '-' || c == '_';
            name += safe ? c : '-';
        }
        if (name.empty() || name == "0") name = "layer";  // "0" is the format's own
        name.resize(std::min<std::size_t>(name.size(), 200));
        const auto lowered = [](std::string text) {
            for (char& c : text)
                if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
            return text;
        };
        std::string one = name;
        for (int i = 2; std::find(low.begin(), low.end(), lowered(one)) != low.end(); ++i)
            one = name + "-" + std::to_string(i);
        names.push_back(one);
        low.push_back(lowered(one));
    }
    return names;
}

class Writer {
  public:
    explicit Writer(const Drawing& drawing) : drawing_(drawing), names_(layer_names(drawing)) {}

    std::string written() {
        // The last handle is known only at the end, and the header states the next one.
        write_tables();
        write_blocks();
        write_entities();
        write_objects();
        put(0, "EOF");
        std::string rest = std::exchange(text_, {});
        write_header();
        return text_ + rest;
    }

  private:
    void put(int code, std::string_view value) {
        text_ += std::to_string(code);
        text_ += '\n';
        text_ += value;
        text_ += '\n';
    }
    void put(int code, int value) { put(code, std::to_string(value)); }
    void put_mm(int code, double mm) { put(code, decimal(mm, decimals)); }
    void put_point(int code, Point p) {
        put_mm(code, p.x);
        put_mm(code + 10, drawing_.height_mm - p.y);
    }
    static std::string hexadecimal(unsigned long handle) {
        std::string digits;
        for (; handle > 0 || digits.empty(); handle /= 16)
            digits.insert(digits.begin(), "0123456789ABCDEF"[handle % 16]);
        return digits;
    }
    std::string next_handle() { return hexadecimal(handle_++); }

    void write_header();
    void write_tables();
    void write_blocks();
    void write_entities();
    void write_objects();
    void begin_section(std::string_view name) {
        put(0, "SECTION");
        put(2, name);
    }
    // Begins a table, and gives its handle.
    std::string begin_table(std::string_view name, int records);
    // Begins a record of a table.
    std::string begin_record(const std::string& table, std::string_view kind, std::string_view subclass,
                             std::string_view name);
    void write_polyline(const Contour& contour, const std::string& layer);
    void write_line(const CutLine& line, const std::string& layer);
    void begin_entity(std::string_view kind, const std::string& layer) {
        put(0, kind);
        put(5, next_handle());
        put(330, model_space_);
        put(100, "AcDbEntity");
        put(8, layer);
    }

    const Drawing& drawing_;
    std::vector<std::string> names_;
    std::string text_;
    unsigned long handle_ = 1;
    std::string model_space_;
    std::string paper_space_;
};

void Writer::write_header() {
    begin_section("HEADER");
    const auto variable = [&](std::string_view name, int code, std::string_view value) {
        put(9, name);
        put(code, value);
    };
    variable("$ACADVER", 1, "AC1015");
    variable("$DWGCODEPAGE", 3, "ANSI_1252");
    variable("$HANDSEED", 5, hexadecimal(handle_));
    variable("$INSUNITS", 70, "4");     // millimetres
    variable("$MEASUREMENT", 70, "1");  // metric
    put(9, "$EXTMIN");
    put_point(10, {0, drawing_.height_mm});
    put_mm(30, 0);
    put(9, "$EXTMAX");
    put_point(10, {drawing_.width_mm, 0});
    put_mm(30, 0);
    put(0, "ENDSEC");
}

std::string Writer::begin_table(std::string_view name, int records) {
    const std::string handle = next_handle();
    put(0, "TABLE");
    put(2, name);
    put(5, handle);
    put(330, "0");
    put(100, "AcDbSymbolTable");
    put(70, records);
    return handle;
}

std::string Writer::begin_record(const std::string& table, std::string_view kind, std::string_view subclass,
                                 std::string_view name) {
    const std::string handle = next_handle();
    put(0, kind);
    put(kind == "DIMSTYLE" ? 105 : 5, handle);
    put(330, table);
    put(100, "AcDbSymbolTableRecord");
    put(100, subclass);
    put(2, name);
    return handle;
}

void Writer::write_tables() {
    begin_section("TABLES");
    begin_table("VPORT", 0);
    put(0, "ENDTAB");

    std::string table = begin_table("LTYPE", 3);
    for (const std::string_view name : {"ByBlock", "ByLayer", "Continuous"}) {
        begin_record(table, "LTYPE", "AcDbLinetypeTableRecord", name);
        put(70, 0);
        put(3, "");
        put(72, 65);
        put(73, 0);
        put_mm(40, 0);
    }
    put(0, "ENDTAB");

    table = begin_table("LAYER", static_cast<int>(names_.size()) + 1);
    const auto layer = [&](std::string_view name, int colour) {
        begin_record(table, "LAYER", "AcDbLayerTableRecord", name);
        put(70, 0);
        put(62, colour);
        put(6, "Continuous");
    };
    layer("0", 7);
    for (std::size_t i = 0; i < names_.size(); ++i)
        layer(names_[i], nearest_number(drawing_.groups[i].colour));
    put(0, "ENDTAB");

    table = begin_table("STYLE", 1);
    begin_record(table, "STYLE", "AcDbTextStyleTableRecord", "Standard");
    put(70, 0);
    put_mm(40, 0);
    put_mm(41, 1);
    put_mm(50, 0);
    put(71, 0);
    put_mm(42, 2.5);
    put(3, "txt");
    put(4, "");
    put(0, "ENDTAB");

    begin_table("VIEW", 0);
    put(0, "ENDTAB");
    begin_table("UCS", 0);
    put(0, "ENDTAB");

    table = begin_table("APPID", 1);
    begin_record(table, "APPID", "AcDbRegAppTableRecord", "ACAD");
    put(70, 0);
    put(0, "ENDTAB");

    table = begin_table("DIMSTYLE", 1);
    put(100, "AcDbDimStyleTable");
    put(71, 1);
    begin_record(table, "DIMSTYLE", "AcDbDimStyleTableRecord", "Standard");
    put(70, 0);
    put(0, "ENDTAB");

    table = begin_table("BLOCK_RECORD", 2);
    model_space_ = begin_record(table, "BLOCK_RECORD", "AcDbBlockTableRecord", "*Model_Space");
    put(340, "0");
    paper_space_ = begin_record(table, "BLOCK_RECORD", "AcDbBlockTableRecord", "*Paper_Space");
    put(340, "0");
    put(0, "ENDTAB");
    put(0, "ENDSEC");
}

void Writer::write_blocks() {
    begin_section("BLOCKS");
    for (const auto& [name, owner] :
         {std::pair<std::string_view, std::string>{"*Model_Space", model_space_},
          std::pair<std::string_view, std::string>{"*Paper_Space", paper_space_}}) {
        put(0, "BLOCK");
        put(5, next_handle());
        put(330, owner);
        put(100, "AcDbEntity");
        put(8, "0");
        put(100, "AcDbBlockBegin");
        put(2, name);
        put(70, 0);
        put_mm(10, 0);
        put_mm(20, 0);
        put_mm(30, 0);
        put(3, name);
        put(1, "");
        put(0, "ENDBLK");
        put(5, next_handle());
        put(330, owner);
        put(100, "AcDbEntity");
        put(8, "0");
        put(100, "AcDbBlockEnd");
    }
    put(0, "ENDSEC");
}

// Points that are the same once they are rounded are written once; what has no area is left out.
void Writer::write_polyline(const Contour& contour, const std::string& layer) {
    std::vector<std::pair<std::string, std::string>> corners;
    for (const Point p : polygon_of(contour)) {
        std::pair corner{decimal(p.x, decimals), decimal(drawing_.height_mm - p.y, decimals)};
        if (corners.empty() || corners.back() != corner) corners.push_back(std::move(corner));
    }
    while (corners.size() > 1 && corners.back() == corners.front()) corners.pop_back();
    if (corners.size() < 3) return;
    begin_entity("LWPOLYLINE", layer);
    put(100, "AcDbPolyline");
    put(90, static_cast<int>(corners.size()));
    put(70, 1);  // closed
    for (const auto& [x, y] : corners) {
        put(10, x);
        put(20, y);
    }
}

void Writer::write_line(const CutLine& line, const std::string& layer) {
    begin_entity("LINE", layer);
    put(100, "AcDbLine");
    put_point(10, line.from);
    put_mm(30, 0);
    put_point(11, line.to);
    put_mm(31, 0);
}

void Writer::write_entities() {
    begin_section("ENTITIES");
    for (std::size_t i = 0; i < names_.size(); ++i) {
        for (const Piece& piece : drawing_.groups[i].pieces)
            for (const Contour& contour : piece.path.contours) write_polyline(contour, names_[i]);
        for (const CutLine& line : drawing_.groups[i].lines) write_line(line, names_[i]);
    }
    put(0, "ENDSEC");
}

void Writer::write_objects() {
    begin_section("OBJECTS");
    const std::string root = next_handle();
    const std::string groups = next_handle();
    put(0, "DICTIONARY");
    put(5, root);
    put(330, "0");
    put(100, "AcDbDictionary");
    put(281, 1);
    put(3, "ACAD_GROUP");
    put(350, groups);
    put(0, "DICTIONARY");
    put(5, groups);
    put(330, root);
    put(100, "AcDbDictionary");
    put(281, 1);
    put(0, "ENDSEC");
}

}  // namespace

std::string to_dxf(const Drawing& drawing) {
    return Writer(drawing).written();
}

}  // namespace lode
