// Turns the description of a laboratory network (see tests/reference/lab/SOURCE.md) into an ordinary design.
#pragma once

#include "core/model/design.h"

#include <nlohmann/json.hpp>

#include <map>
#include <string>

namespace streamwright::lab {

/// The design of a lab input, and which row stands for which name. Tags of devices, cables and streams are the lab's
/// names, so that answers can be read back.
struct LabDesign {
    model::Design design;
    std::map<std::string, model::PortRef> link_port;  // one end of each link
    std::map<std::string, model::StreamId> streams;
};

LabDesign lab_design(const nlohmann::json& input);

}  // namespace streamwright::lab
