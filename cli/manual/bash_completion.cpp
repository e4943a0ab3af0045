// What bash reads. A function looks at the word that is being typed and at the one before it. Bash parts
// words at '=' too, so that "--marks=strip" comes in three. A value that nobody can guess gets no offer, not
// even of files.

#include <algorithm>

#include "manual.hpp"
#include "option_text.hpp"
#include "verbs.hpp"

namespace lode::cli {
namespace {

std::string joined(const std::vector<std::string>& words, const std::string& between) {
    std::string text;
    for (const auto& word : words) text += (text.empty() ? "" : between) + word;
    return text;
}

// What is offered for a value, as assignments: "words='none' files=1".
std::string assignments(const Offers& offers) {
    std::vector<std::string> parts;
    if (!offers.words.empty()) parts.push_back("words='" + joined(offers.words, " ") + "'");
    if (offers.several) parts.emplace_back("several=1");
    if (offers.files) parts.emplace_back("files=1");
    if (offers.folders) parts.emplace_back("folders=1");
    return joined(parts, " ");
}

bool has_offer(const Offers& offers) {
    return !offers.words.empty() || offers.files || offers.folders;
}

std::string verb_case(const Verb& verb) {
    std::vector<std::string> all;
    std::vector<std::string> free{"--help"};  // what follows these has no offer
    std::string cases;
    for (const auto& option : option_texts(verb)) {
        all.push_back(option.name);
        if (option.value.empty() || option.value_is_optional) continue;
        if (has_offer(option.offers))
            cases += "            " + option.name + ") " + assignments(option.offers) + " ;;\n";
        else
            free.push_back(option.name);
    }
    return "    " + verb.name + ")\n        options='" + joined(all, " ") + "'\n        case $before in\n" +
           cases + "            " + joined(free, " | ") +
           ") return ;;\n            *) is_value='' ;;\n        esac ;;\n";
}

constexpr const char* head =
    R"(# What bash completes a call of letterlode by. Written when the program is built, from its own descriptions.
_letterlode() {
    local current=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} verb=${COMP_WORDS[1]}
    local options='' words='' several='' files='' folders='' is_value=1 start=''
    COMPREPLY=()
    if ((COMP_CWORD == 1)); then
        mapfile -t COMPREPLY < <(compgen -W ")";

constexpr const char* middle = R"(" -- "$current")
        return
    fi
    if [[ $current == = ]]; then
        current=''
    elif [[ $before == = ]]; then
        before=${COMP_WORDS[COMP_CWORD - 2]}
    fi
    [[ $before == --* || ${COMP_WORDS[COMP_CWORD - 1]} != = ]] || return
    case $verb in
)";

constexpr const char* tail = R"(    *) return ;;
    esac
    if [[ ! $is_value ]]; then
        if [[ $current == -* ]]; then words=$options; else files=1; fi
    fi
    if [[ $several && $current == *,* ]]; then start=${current%,*},; fi
    mapfile -t COMPREPLY < <(compgen -P "$start" -W "$words" -- "${current#"$start"}")
    if [[ $files ]]; then mapfile -t -O ${#COMPREPLY[@]} COMPREPLY < <(compgen -f -- "$current"); fi
    if [[ $folders ]]; then mapfile -t -O ${#COMPREPLY[@]} COMPREPLY < <(compgen -d -- "$current"); fi
    if [[ $files || $folders ]]; then compopt -o filenames; fi
    if [[ $several || ${COMPREPLY[0]-} == *= ]]; then compopt -o nospace; fi
}
complete -F _letterlode letterlode
)";

}  // namespace

std::string bash_completion() {
    std::vector<std::string> first_words;
    std::string cases;
    for (const auto& entry : all_verbs()) {
        const Verb verb = entry.describe();
        first_words.push_back(verb.name);
        cases += verb_case(verb);
    }
    first_words.emplace_back("--help");
    first_words.emplace_back("--version");
    return head + joined(first_words, " ") + middle + cases + tail;
}

}  // namespace lode::cli
