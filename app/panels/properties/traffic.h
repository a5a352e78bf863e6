// The chains of numbers that several editors show: what each direction of a network port carries, how
// late a picture is, and PoE.
#pragma once

#include "app/panels/properties/property_form.h"
#include "core/analysis/facts/link_load.h"

#include <optional>

namespace streamwright::app {

/// The loads of the chosen preset; of nothing subscribed where there is none.
const analysis::PresetLoad& preset_load(const analysis::Facts& facts, std::optional<model::PresetId> preset);
QString preset_words(const model::Design& design, std::optional<model::PresetId> preset);

/// Whether the cable is part of a link between two switches.
bool is_trunk(const analysis::Facts& facts, model::CableId cable);

/// Both directions of the link or leaf that the cable belongs to.
void show_cable_loads(Figures& figures, const Document& document, model::CableId cable,
                      std::optional<model::PresetId> preset);
/// Every network port of the device.
void show_device_loads(Figures& figures, const Document& document, model::DeviceId device,
                       std::optional<model::PresetId> preset);
/// What the pictures that the decoder shows in the chosen preset are late by, part by part.
void show_latency(Figures& figures, const Document& document, model::DeviceId decoder,
                  std::optional<model::PresetId> preset);
void show_cable_poe(Figures& figures, const Document& document, model::CableId cable);
void show_device_poe(Figures& figures, const Document& document, model::DeviceId device);

}  // namespace streamwright::app
