// What every edit's test asks: done it leaves a sound design and undo restores the old one exactly; refused it says
// why.
#pragma once

#include "core/model/edits/all_edits.h"
#include "core/model/integrity.h"
#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

#include <string>

namespace streamwright::test {

/// The design with the edit done. Fails the test if it is refused, leaves a broken bond, or cannot be undone exactly.
template <class Edit>
model::Design done(const model::Design& design, const Edit& edit) {
    const auto delta = model::make(design, edit);
    EXPECT_TRUE(delta.ok()) << (delta.ok() ? "" : delta.error().english());
    if (!delta.ok()) return design;
    model::Design changed = design;
    model::apply(changed, *delta);
    for (const auto& broken : model::broken_bonds(changed)) ADD_FAILURE() << broken.english();
    model::Design undone = changed;
    model::apply(undone, delta->inverse());
    EXPECT_TRUE(undone == design) << "undo does not restore the design";
    EXPECT_TRUE(model::make_edit(design, model::AnyEdit(edit)).value() == *delta);
    return changed;
}

/// The sentence of the refusal.
template <class Edit>
std::string refused(const model::Design& design, const Edit& edit) {
    const auto delta = model::make(design, edit);
    EXPECT_FALSE(delta.ok()) << "the edit was not refused";
    return delta.ok() ? std::string() : delta.error().english();
}

template <class Row>
const Row& row_of(const model::Design& design, const typename Row::Key& key) {
    const Row* row = (design.*model::table_of<Row>()).find(key);
    if (!row) throw std::runtime_error("the row is not there");
    return *row;
}

inline bool says(const std::string& sentence, const std::string& part) {
    return sentence.find(part) != std::string::npos;
}
#define EXPECT_SAYS(sentence, part) EXPECT_PRED2(::streamwright::test::says, sentence, part)

}  // namespace streamwright::test
