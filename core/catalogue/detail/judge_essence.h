// What a type says of pictures and sound packed by open standards, held against itself. For .cpp files only.
#pragma once

#include "core/catalogue/detail/judge.h"
#include "core/catalogue/device_type.h"

namespace streamwright::catalogue::contradictions_detail {

void judge_essence(Judge& judge, const Codec& codec, const DeviceType& type);

}  // namespace streamwright::catalogue::contradictions_detail
