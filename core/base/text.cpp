#include "core/base/text.h"

#include "core/base/error.h"

namespace streamwright::base {

namespace text_detail {

struct Printer {
    const Phrasebook& book;

    std::string operator()(const std::string& text) const { return text; }
    std::string operator()(std::int64_t number) const { return std::to_string(number); }
    std::string operator()(const Percent& percent) const {
        return print_decimal(percent.tenths, 1, book.numbers.decimal_mark) + " %";
    }
    std::string operator()(const Ref& ref) const { return book.name ? book.name(ref) : ref.text; }
    std::string operator()(const std::vector<Ref>& refs) const {
        std::string list;
        for (const auto& ref : refs) list += (list.empty() ? "" : ", ") + (*this)(ref);
        return list;
    }
    template <class Tag>
    std::string operator()(Quantity<Tag> quantity) const {
        return print(quantity, book.numbers);
    }
};

}  // namespace text_detail

std::string print(const Value& value, const Phrasebook& book) { return std::visit(text_detail::Printer{book}, value); }

std::string fill(const Text& text, const Phrasebook& book) {
    std::vector<std::string> args;
    args.reserve(text.values.size());
    for (const auto& value : text.values) args.push_back(print(value, book));
    return fill_places(book.translate ? book.translate(text.pattern) : text.pattern, args);
}

}  // namespace streamwright::base
