#include "print/html_text.hpp"

#include <unicode/uchar.h>
#include <unicode/unistr.h>

namespace lode {

std::string html_text(std::string_view utf8) {
    const auto text =
        icu::UnicodeString::fromUTF8(icu::StringPiece(utf8.data(), static_cast<std::int32_t>(utf8.size())));
    icu::UnicodeString html;
    for (std::int32_t at = 0; at < text.length(); at = text.moveIndex32(at, 1)) {
        const UChar32 character = text.char32At(at);
        switch (character) {
            case '&':
                html.append(u"&amp;", -1);
                break;
            case '<':
                html.append(u"&lt;", -1);
                break;
            case '>':
                html.append(u"&gt;", -1);
                break;
            case '"':
                html.append(u"&quot;", -1);
                break;
            case '\'':
                html.append(u"&#39;", -1);
                break;
            default:
                if (u_charType(character) == U_CONTROL_CHAR)
                    html.append(u' ');
                else if (!u_hasBinaryProperty(character, UCHAR_BIDI_CONTROL))
                    html.append(character);
        }
    }
    std::string result;
    html.toUTF8String(result);
    return result;
}

std::string filled_in(std::string_view page,
                      const std::vector<std::pair<std::string_view, std::string>>& parts) {
    std::string result;
    while (true) {
        const std::size_t open = page.find("{{");
        result += page.substr(0, open);
        if (open == std::string_view::npos) return result;
        const std::size_t close = page.find("}}", open);
        const std::string_view name = page.substr(open + 2, close - open - 2);
        for (const auto& [key, value] : parts)
            if (key == name) result += value;
        page.remove_prefix(close + 2);
    }
}

}  // namespace lode
