#include "core/deliver/rule_page.h"

#include "core/base/enum_text.h"

#include <algorithm>
#include <vector>

namespace streamwright::deliver {

namespace rule_page {

using analysis::RuleWords;
using analysis::Theme;

constexpr std::string_view gap = "\u2026";  // stands where a finding names a row or a value

/// The pattern as people read it: "%1 is %2 long" becomes "... is ... long".
std::string readable(std::string_view pattern) {
    const std::vector<std::string> gaps(9, std::string(gap));
    return base::fill_places(pattern, gaps);
}

std::string sources_of(const RuleWords& words) {
    std::string text;
    for (const auto& source : words.sources) text += (text.empty() ? "" : "; ") + source.text();
    return text.empty() ? std::string(words.no_source) : text;
}

std::size_t shown_width(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

/// Breaks a text between words so that no line is wider than the page; `lead` opens the first line and `hang` the
/// others.
std::string wrapped(std::string_view text, const std::string& lead, const std::string& hang, std::size_t page) {
    std::string out = lead;
    std::size_t column = shown_width(lead);
    bool fresh = true;
    while (!text.empty()) {
        const auto end = std::min(text.find(' '), text.size());
        const auto word = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        if (!fresh && column + 1 + shown_width(word) > page) {
            out += '\n' + hang;
            column = shown_width(hang);
        } else if (!fresh) {
            out += ' ';
            ++column;
        }
        out += word;
        column += shown_width(word);
        fresh = false;
    }
    return out + '\n';
}

// ---- for the terminal ----

std::string item(const char* name, std::string_view text) {
    if (text.empty()) return {};
    return wrapped(text, "    " + std::string(name) + ": ", "        ", 100);
}

// ---- for the guide ----

/// What Markdown would take for its own signs is kept from it.
std::string plain(std::string_view text) {
    std::string out;
    for (const char c : text) {
        if (std::string_view("*_`<|[").find(c) != std::string_view::npos) out += '\\';
        out += c;
    }
    return out;
}

std::string paragraph(std::string_view head, std::string_view text) {
    if (text.empty()) return {};
    return '\n' + wrapped(plain(text), head.empty() ? std::string() : "**" + std::string(head) + ".** ", "", 110);
}

/// As the heading's anchor is made: small letters, blanks to hyphens, all other signs gone.
std::string anchor(std::string_view heading) {
    std::string out;
    for (char c : heading) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
        if (c == ' ')
            out += '-';
        else if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-')
            out += c;
    }
    return out;
}

std::vector<const RuleWords*> rules_of(Theme theme) {
    std::vector<const RuleWords*> list;
    for (const auto& rule : analysis::all_rules())
        if (rule.words.theme == theme) list.push_back(&rule.words);
    return list;
}

std::string contents() {
    std::string out;
    for (const auto& [theme, title] : base::EnumText<Theme>::names) {
        out += "\n**[" + std::string(title) + "](#" + anchor(title) +
               ")**\n\n| Rule | Up to | What is wrong |\n|---|---|---|\n";
        for (const auto* words : rules_of(theme))
            out += "| [" + std::string(words->id) + "](#" + std::string(words->id) + ") | " +
                   std::string(base::enum_text(words->severity)) + " | " + plain(words->title) + " |\n";
    }
    return out;
}

std::string section(const RuleWords& words) {
    std::string out = "\n### " + std::string(words.id) + "\n\n**" + plain(words.title) + "** (up to " +
                      std::string(base::enum_text(words.severity)) + ")\n";
    out += paragraph("", words.meaning);
    out += paragraph("How it is measured", words.measured);
    out += paragraph("What to do", words.remedy);
    out += paragraph("What the program offers", words.offers);
    out += "\n**What it says**\n\n";
    for (const auto pattern : words.patterns) out += wrapped(plain(readable(pattern)), "- ", "  ", 110);
    return out + paragraph("Source", sources_of(words));
}

constexpr std::string_view introduction =
    "A rule looks at one thing that can go wrong on site. An **error** will not work as drawn; a **warning** works "
    "today "
    "and bites later, or works on one condition; **advice** says what the check cannot know yet. What is known to be "
    "right for this job can be accepted with a reason, which stays in the file and stands in the documents. What was "
    "accepted under an older form of a rule asks again.";
constexpr std::string_view how_to_read =
    "Each section names what the rule means on site, how it is measured, what to do, and the sentences it says: \u2026 "
    "stands where a finding names a device, a cable or a value. The same text is printed by `streamwright check "
    "--rules`, "
    "and one rule of it by `streamwright check --explain RULE`.";

}  // namespace rule_page

std::string rule_text(const analysis::RuleWords& words) {
    using namespace rule_page;
    std::string out = std::string(words.id) + " (" + std::string(base::enum_text(words.severity)) + ")\n";
    out += wrapped(std::string(words.title) + ". " + std::string(words.meaning), "    ", "    ", 100);
    out += item("theme", base::enum_text(words.theme));
    out += item("measured", words.measured);
    for (const auto pattern : words.patterns) out += item("says", readable(pattern));
    out += item("remedy", words.remedy);
    out += item("offers", words.offers);
    return out + item("source", sources_of(words));
}

std::string rules_text() {
    std::string out;
    for (const auto& rule : analysis::all_rules()) out += (out.empty() ? "" : "\n") + rule_text(rule.words);
    return out;
}

std::string rules_guide() {
    using namespace rule_page;
    std::string out =
        "<!-- Written by write_guide from the rules themselves; change those, not this page. -->\n"
        "# The rules of the check\n\n";
    out += wrapped(introduction, "", "", 110) + '\n' + wrapped(how_to_read, "", "", 110) + contents();
    for (const auto& [theme, title] : base::EnumText<Theme>::names) {
        out += "\n## " + std::string(title) + '\n';
        for (const auto* words : rules_of(theme)) out += section(*words);
    }
    return out;
}

}  // namespace streamwright::deliver
