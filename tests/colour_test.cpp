// Colours against published values.

#include <array>
#include <catch2/catch.hpp>
#include <string>

#include <letterlode/colour.hpp>

using namespace lode;

namespace {

Colour colour(const std::string& digits) {
    return read_colour("#" + digits).value();
}

}  // namespace

// Sharma, Wu, Dalal 2005, "The CIEDE2000 Color-Difference Formula", Color Research and Application
// 30(1):21-30, table 1: L1, a1, b1, L2, a2, b2 and the difference.
TEST_CASE("CIEDE2000 gives the 34 differences of its test data") {
    constexpr std::array<std::array<double, 7>, 34> pairs{
        {{50.0000, 2.6772, -79.7751, 50.0000, 0.0000, -82.7485, 2.0425},
         {50.0000, 3.1571, -77.2803, 50.0000, 0.0000, -82.7485, 2.8615},
         {50.0000, 2.8361, -74.0200, 50.0000, 0.0000, -82.7485, 3.4412},
         {50.0000, -1.3802, -84.2814, 50.0000, 0.0000, -82.7485, 1.0000},
         {50.0000, -1.1848, -84.8006, 50.0000, 0.0000, -82.7485, 1.0000},
         {50.0000, -0.9009, -85.5211, 50.0000, 0.0000, -82.7485, 1.0000},
         {50.0000, 0.0000, 0.0000, 50.0000, -1.0000, 2.0000, 2.3669},
         {50.0000, -1.0000, 2.0000, 50.0000, 0.0000, 0.0000, 2.3669},
         {50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0009, 7.1792},
         {50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0010, 7.1792},
         {50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0011, 7.2195},
         {50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0012, 7.2195},
         {50.0000, -0.0010, 2.4900, 50.0000, 0.0009, -2.4900, 4.8045},
         {50.0000, -0.0010, 2.4900, 50.0000, 0.0010, -2.4900, 4.8045},
         {50.0000, -0.0010, 2.4900, 50.0000, 0.0011, -2.4900, 4.7461},
         {50.0000, 2.5000, 0.0000, 50.0000, 0.0000, -2.5000, 4.3065},
         {50.0000, 2.5000, 0.0000, 73.0000, 25.0000, -18.0000, 27.1492},
         {50.0000, 2.5000, 0.0000, 61.0000, -5.0000, 29.0000, 22.8977},
         {50.0000, 2.5000, 0.0000, 56.0000, -27.0000, -3.0000, 31.9030},
         {50.0000, 2.5000, 0.0000, 58.0000, 24.0000, 15.0000, 19.4535},
         {50.0000, 2.5000, 0.0000, 50.0000, 3.1736, 0.5854, 1.0000},
         {50.0000, 2.5000, 0.0000, 50.0000, 3.2972, 0.0000, 1.0000},
         {50.0000, 2.5000, 0.0000, 50.0000, 1.8634, 0.5757, 1.0000},
         {50.0000, 2.5000, 0.0000, 50.0000, 3.2592, 0.3350, 1.0000},
         {60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644},
         {63.0109, -31.0961, -5.8663, 62.8187, -29.7946, -4.0864, 1.2630},
         {61.2901, 3.7196, -5.3901, 61.4292, 2.2480, -4.9620, 1.8731},
         {35.0831, -44.1164, 3.7933, 35.0232, -40.0716, 1.5901, 1.8645},
         {22.7233, 20.0904, -46.6940, 23.0331, 14.9730, -42.5619, 2.0373},
         {36.4612, 47.8580, 18.3852, 36.2715, 50.5065, 21.2231, 1.4146},
         {90.8027, -2.0831, 1.4410, 91.1528, -1.6435, 0.0447, 1.4441},
         {90.9257, -0.5406, -0.9208, 88.6381, -0.8985, -0.7239, 1.5381},
         {6.7747, -0.2908, -2.4247, 5.8714, -0.0985, -2.2286, 0.6377},
         {2.0776, 0.0795, -1.1350, 0.9033, -0.0636, -0.5514, 0.9082}}};
    for (const auto& [l1, a1, b1, l2, a2, b2, difference] : pairs) {
        CAPTURE(l1, a1, b1, l2, a2, b2);
        CHECK(colour_difference({l1, a1, b1}, {l2, a2, b2}) == Approx(difference).margin(5e-5));
        CHECK(colour_difference({l2, a2, b2}, {l1, a1, b1}) == Approx(difference).margin(5e-5));
    }
}

// Computed by an independent program from the formula of WCAG 2.x; E3660E on white is 3.4 in W3C's technique
// G207.
TEST_CASE("contrast is the ratio of WCAG, and is not rounded") {
    const auto ratio = [](const char* one, const char* other) {
        return contrast_ratio(colour(one), colour(other));
    };
    CHECK(ratio("000000", "ffffff") == Approx(21.000000).margin(1e-6));
    CHECK(ratio("777777", "ffffff") == Approx(4.478089).margin(1e-6));
    CHECK(ratio("767676", "ffffff") == Approx(4.542225).margin(1e-6));
    CHECK(ratio("757575", "ffffff") == Approx(4.607518).margin(1e-6));
    CHECK(ratio("959595", "ffffff") == Approx(2.995346).margin(1e-6));
    CHECK(ratio("949494", "ffffff") == Approx(3.033470).margin(1e-6));
    CHECK(ratio("ff0000", "ffffff") == Approx(3.998477).margin(1e-6));
    CHECK(ratio("0000ff", "ffffff") == Approx(8.592471).margin(1e-6));
    CHECK(ratio("00ff00", "ffffff") == Approx(1.372190).margin(1e-6));
    CHECK(ratio("008000", "ffffff") == Approx(5.137403).margin(1e-6));
    CHECK(ratio("ffff00", "ffffff") == Approx(1.073839).margin(1e-6));
    CHECK(ratio("ffff00", "000000") == Approx(19.556000).margin(1e-6));
    CHECK(ratio("808080", "ffffff") == Approx(3.949440).margin(1e-6));
    CHECK(ratio("808080", "000000") == Approx(5.317210).margin(1e-6));
    CHECK(ratio("595959", "ffffff") == Approx(7.004729).margin(1e-6));
    CHECK(ratio("5a5a5a", "ffffff") == Approx(6.896926).margin(1e-6));
    CHECK(ratio("ff0000", "00ff00") == Approx(2.913938).margin(1e-6));
    CHECK(ratio("ff0000", "0000ff") == Approx(2.148936).margin(1e-6));
    CHECK(ratio("0000ff", "000000") == Approx(2.444000).margin(1e-6));
    CHECK(ratio("123456", "fedcba") == Approx(9.786559).margin(1e-6));
    CHECK(ratio("e3660e", "ffffff") == Approx(3.4).margin(0.05));
    CHECK(ratio("ffffff", "777777") < least_contrast);
    CHECK(ratio("959595", "ffffff") < least_contrast_of_large_text);
    CHECK(relative_luminance(colour("777777")) == Approx(0.184475).margin(1e-6));
    CHECK(relative_luminance(colour("808080")) == Approx(0.215861).margin(1e-6));
    CHECK(relative_luminance(colour("ff0000")) == Approx(0.212600).margin(1e-6));
    CHECK(relative_luminance(colour("00ff00")) == Approx(0.715200).margin(1e-6));
    CHECK(relative_luminance(colour("0000ff")) == Approx(0.072200).margin(1e-6));
    CHECK(relative_luminance(colour("757575")) == Approx(0.177888).margin(1e-6));
    CHECK(relative_luminance(colour("767676")) == Approx(0.181164).margin(1e-6));
}

// Machado, Oliveira, Fernandes 2009, severity 1, on linear sRGB; values by an independent program.
TEST_CASE("what a colour-blind reader sees is simulated as published") {
    CHECK(to_text(as_seen(colour("ff0000"), Vision::protan)) == "#6d5f00");
    CHECK(to_text(as_seen(colour("00ff00"), Vision::protan)) == "#ffe500");
    CHECK(to_text(as_seen(colour("0000ff"), Vision::protan)) == "#0059ff");
    CHECK(to_text(as_seen(colour("808080"), Vision::protan)) == "#808080");
    CHECK(to_text(as_seen(colour("ff0000"), Vision::deutan)) == "#a39000");
    CHECK(to_text(as_seen(colour("00ff00"), Vision::deutan)) == "#efd63a");
    CHECK(to_text(as_seen(colour("0000ff"), Vision::deutan)) == "#003dfb");
    CHECK(to_text(as_seen(colour("808080"), Vision::deutan)) == "#808080");
    CHECK(to_text(as_seen(colour("ff0000"), Vision::tritan)) == "#ff000f");
    CHECK(to_text(as_seen(colour("00ff00"), Vision::tritan)) == "#00f7d9");
    CHECK(to_text(as_seen(colour("0000ff"), Vision::tritan)) == "#006b96");
    CHECK(to_text(as_seen(colour("808080"), Vision::tritan)) == "#808080");
    CHECK(as_seen(colour("123456"), Vision::usual) == colour("123456"));
    CHECK(name(Vision::deutan) == "deutan");
}

// CIE 15:2004: white is (100, 0, 0) and black (0, 0, 0); greys have no chroma. The lightness of #777777
// follows from its luminance, 0.184475 (computed): 116 cbrt(Y) - 16.
TEST_CASE("L*a*b* of greys has their lightness and no hue") {
    for (const char* grey : {"ffffff", "777777", "101010", "000000"}) {
        const Lab lab = lab_of(colour(grey));
        CHECK(lab.a == Approx(0).margin(1e-9));
        CHECK(lab.b == Approx(0).margin(1e-9));
    }
    CHECK(lab_of(colour("ffffff")).lightness == Approx(100));
    CHECK(lab_of(colour("000000")).lightness == Approx(0).margin(1e-9));
    CHECK(lab_of(colour("777777")).lightness == Approx(50.0344).margin(1e-3));
}

TEST_CASE("colours have the keywords of CSS, in small letters and in capitals") {
    CHECK(read_colour("gold").value() == Colour{0xff, 0xd7, 0x00});
    CHECK(read_colour("SeaGreen").value() == Colour{0x2e, 0x8b, 0x57});
    CHECK_FALSE(read_colour("goldish"));
    CHECK_FALSE(read_colour("gol"));
}
