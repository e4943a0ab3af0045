#pragma once
// How an SVG document says what is drawn: attributes, style attributes and simple rules of style elements
// (CSS 2.1, chapters 4 to 6, as far as an outline depends on it).

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace lode {

// What an element hands on to what stands in it.
struct Inherited {
    bool visible = true;
    bool filled = true;
    bool stroked = false;
    bool evenodd = false;
};

struct ElementStyle {
    Inherited inherited;
    bool displayed = true;    // and not wholly transparent
    bool clipped = false;     // or masked
    std::string reshaped_by;  // a property that moves or changes the shape, which is not read here; or empty
};

// What a rule matches, and a style is worked out for.
struct StyledElement {
    std::string_view name;
    std::string_view id;
    std::string_view classes;  // with blanks between
    std::string_view style;
    // Presentation attributes: name and value.
    std::vector<std::pair<std::string_view, std::string_view>> attributes;
};

class StyleSheet {
  public:
    static constexpr std::size_t max_rules = 1'000;

    // Adds the rules of a style element that bear on what is drawn. Returns what cannot be read, where such a
    // rule could bear on it.
    [[nodiscard]] std::optional<std::string> add(std::string_view text);

    // By the cascade: attributes, then rules by specificity and order, then the style attribute, with
    // !important before all. Linear in the rules.
    [[nodiscard]] ElementStyle style_of(const StyledElement& element, const Inherited& parent) const;

  private:
    struct Declaration {
        std::string property;
        std::string value;
        bool important = false;
    };
    struct Rule {
        std::string element;  // empty: any
        std::string id;
        std::vector<std::string> classes;
        std::shared_ptr<const std::vector<Declaration>> declarations;
        [[nodiscard]] int specificity() const;
        [[nodiscard]] bool matches(const StyledElement& element) const;
    };
    static std::vector<Declaration> declarations_of(std::string_view text);
    static std::optional<Rule> simple_selector(std::string_view text);

    std::vector<Rule> rules_;
};

}  // namespace lode
