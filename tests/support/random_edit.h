// Draws random edits that a design takes, over every verb: what property tests feed to apply, undo and analysis.
#pragma once

#include "core/catalogue/catalogue.h"
#include "core/model/edits/all_edits.h"

#include <optional>
#include <random>

namespace streamwright::test {

/// An edit that make_edit accepts and that changes something; its verb is drawn evenly among those that can. Nothing if
/// forty tries found none. The same design, library and state of the generator give the same edit.
std::optional<model::AnyEdit> random_edit(const model::Design& design, const catalogue::Catalogue& library,
                                          std::mt19937_64& random);

/// One try at one verb (an index of AnyEdit); may be refused or change nothing.
std::optional<model::AnyEdit> random_edit_of(std::size_t verb, const model::Design& design,
                                             const catalogue::Catalogue& library, std::mt19937_64& random);

}  // namespace streamwright::test
