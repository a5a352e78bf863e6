// One row of a design as a JSON record and back. For .cpp files only.
#pragma once

#include "core/catalogue/catalogue.h"
#include "core/io/detail/parsed_file.h"
#include "core/model/design.h"
#include "core/model/row_checks.h"

#include <memory>
#include <string>
#include <type_traits>

namespace streamwright::io {

template <class Row>
std::string row_text(const Row& row) {
    if constexpr (std::is_same_v<Row, model::DeviceTypeRow>) {
        return catalogue::write_device_type(*row.type);
    } else if constexpr (std::is_same_v<Row, model::CableTypeRow>) {
        return catalogue::write_cable_type(*row.type);
    } else {
        Json record = catalogue::json_detail::to_json_object(row);
        catalogue::json_detail::restore_unknown(record, row.unknown, catalogue::json_detail::is_plain_struct<Row>);
        return record.dump(-1, ' ', false, Json::error_handler_t::replace);
    }
}

/// `where` names file and place, and is asked for only when something is wrong.
template <class Row, class Where>
base::Result<Row> read_row(const Json& record, Where&& where) {
    if constexpr (std::is_same_v<Row, model::DeviceTypeRow> || std::is_same_v<Row, model::CableTypeRow>) {
        using Type = std::remove_cvref_t<decltype(*Row{}.type)>;
        const auto read = [&](const std::string& place) {
            const auto text = record.dump();
            if constexpr (std::is_same_v<Type, catalogue::DeviceType>)
                return catalogue::read_device_type(text, place);
            else
                return catalogue::read_cable_type(text, place);
        };
        auto type = read({});
        if (!type) return read(where()).error();
        return Row{std::make_shared<const Type>(std::move(*type))};
    } else {
        catalogue::json_detail::Reading reading;
        Row row = catalogue::json_detail::blank_of<Row>();
        if (!catalogue::json_detail::from_json_object(record, row, reading))
            return base::Error{"%1: %2 Correct it or open an older copy.", {where(), reading.trouble->english()}};
        row.unknown = std::move(reading.unknown);
        return row;
    }
}

}  // namespace streamwright::io
