#include "core/base/text.h"

#include <type_traits>

namespace streamwright::base {

namespace text_detail {

std::string name_of(const Ref& ref, const Phrasebook& book) { return book.name ? book.name(ref) : ref.text; }

std::string names_of(const std::vector<Ref>& refs, const Phrasebook& book) {
    std::string out;
    for (const auto& ref : refs) {
        if (!out.empty()) out += ", ";
        out += name_of(ref, book);
    }
    return out;
}

/// Always one decimal, so that "104.0 %" keeps its column.
std::string print_percent(Percent percent, char decimal_mark) {
    const bool negative = percent.tenths < 0;
    const auto magnitude =
        negative ? 0 - static_cast<std::uint64_t>(percent.tenths) : static_cast<std::uint64_t>(percent.tenths);
    return (negative ? "-" : "") + std::to_string(magnitude / 10) + decimal_mark + std::to_string(magnitude % 10) +
           " %";
}

}  // namespace text_detail

std::string print(const Value& value, const Phrasebook& book) {
    return std::visit(
        [&](const auto& each) -> std::string {
            using T = std::decay_t<decltype(each)>;
            if constexpr (std::is_same_v<T, std::string>)
                return each;
            else if constexpr (std::is_same_v<T, std::int64_t>)
                return std::to_string(each);
            else if constexpr (std::is_same_v<T, Percent>)
                return text_detail::print_percent(each, book.numbers.decimal_mark);
            else if constexpr (std::is_same_v<T, Ref>)
                return text_detail::name_of(each, book);
            else if constexpr (std::is_same_v<T, std::vector<Ref>>)
                return text_detail::names_of(each, book);
            else
                return print(each, book.numbers);
        },
        value);
}

std::string fill(const Text& text, const Phrasebook& book) {
    std::vector<std::string> args;
    args.reserve(text.values.size());
    for (const auto& value : text.values) args.push_back(print(value, book));
    return fill_places(book.translate ? book.translate(text.pattern) : text.pattern, args);
}

}  // namespace streamwright::base
