// What zsh reads: one call of its own _arguments for each verb, which knows of options, of "--marks=strip"
// and of what may be given again by itself.

#include "manual.hpp"
#include "option_text.hpp"
#include "verbs.hpp"

namespace lode::cli {
namespace {

std::string joined(const std::vector<std::string>& words) {
    std::string text;
    for (const auto& word : words) text += (text.empty() ? "" : " ") + word;
    return text;
}

// For a place between single quotes, where these characters mean something to _arguments.
std::string quoted(const std::string& text, const std::string& special) {
    std::string safe;
    for (const char c : text) {
        if (special.find(c) != std::string::npos) safe += '\\';
        safe += c == '\'' ? std::string("'\\''") : std::string(1, c);
    }
    return safe;
}

std::string action(const Offers& offers) {
    const std::string words = joined(offers.words);
    if (offers.several) return " _sequence compadd - " + words;
    if (offers.files && !offers.words.empty()) return " _letterlode_words_or_files " + words;
    if (offers.files) return "_files";
    if (offers.folders) return "_files -/";
    if (!offers.words.empty() && offers.words.front().ends_with('=')) return " compadd -S \"\" - " + words;
    return offers.words.empty() ? " " : "(" + words + ")";
}

std::string specification(const OptionText& option) {
    const std::string told = "[" + quoted(option.purpose, "[]\\") + "]";
    const std::string value = quoted(option.value, ":\\") + ":" + action(option.offers);
    if (option.value.empty()) return option.name + told;
    if (option.value_is_optional) return option.name + "=-" + told + "::" + value;
    return (option.may_be_given_again ? "*" : "") + option.name + "=" + told + ":" + value;
}

std::string verb_case(const Verb& verb) {
    std::string text = "    " + verb.name + ")\n        _arguments \\\n";
    for (const auto& option : option_texts(verb)) text += "            '" + specification(option) + "' \\\n";
    return text + "            '" + (verb.takes_several_files ? "*" : "1") + ":" + quoted(verb.file, ":") +
           ":_files' ;;\n";
}

}  // namespace

std::string zsh_completion() {
    std::string verbs;
    std::string cases;
    for (const auto& entry : all_verbs()) {
        const Verb verb = entry.describe();
        verbs += "            '" + verb.name + ":" + quoted(verb.purpose, ":\\") + "'\n";
        cases += verb_case(verb);
    }
    return R"(#compdef letterlode
# What zsh completes a call of letterlode by. Written when the program is built, from its own descriptions.
_letterlode_words_or_files() {
    local -a choices=("$@")
    _alternative 'choices:choice:compadd -a choices' 'files:file:_files'
}
_letterlode() {
    if ((CURRENT == 2)); then
        local -a verbs=(
)" + verbs +
           R"(            '--help:the verbs'
            '--version:the version of the program'
        )
        _describe -t verbs verb verbs
        return
    fi
    shift words
    ((CURRENT--))
    case $words[1] in
)" + cases +
           R"(    esac
}
_letterlode "$@"
)";
}

}  // namespace lode::cli
