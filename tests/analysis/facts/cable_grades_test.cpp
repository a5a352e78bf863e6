#include "core/analysis/facts/cable_grades.h"

#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

namespace streamwright::test::cable_grades_test {

using catalogue::CableGrade;
using namespace base::literals;

types::CablePtr graded(types::CablePtr like, CableGrade grade) {
    auto type = *like;
    type.key = {"test.grade." + std::string(base::enum_text(grade))};
    type.grade = grade;
    return std::make_shared<const catalogue::CableType>(type);
}

/// Cables of these types from port to port, through one panel.
struct Way {
    DesignBuilder b;
    Way(const types::CablePtr& one, const types::CablePtr& other) {
        const auto left = b.device(types::switch_24(), "SW-1"), right = b.device(types::switch_24(), "SW-2"),
                   panel = b.device(types::patch_panel(), "PP-1");
        b.cable(one, port_of(left, "1"), port_of(panel, "f1"), 10_m);
        b.cable(other, port_of(panel, "r1"), port_of(right, "1"), 10_m);
    }
};

TEST(CableGrades, theWeakestOfARunCounts) {
    const auto name = [](CableGrade one, CableGrade other) {
        const Way way(graded(types::cat6a(), one), graded(types::cat6a(), other));
        const auto wiring = graph::wire(way.b.design);
        return analysis::copper_of(wiring, graph::find_runs(wiring).list.at(0))->name;
    };
    EXPECT_EQ(name(CableGrade::cat6a, CableGrade::cat5e), "Cat 5e");
    EXPECT_EQ(name(CableGrade::cat6, CableGrade::cat8), "Cat 6");
    EXPECT_EQ(name(CableGrade::cat6, CableGrade::none), "");
}

TEST(CableGrades, fibresOlderThanTheOmNamesAreWeaker) {
    // FIB-001 to FIB-004: 220 m before 275 m (62.5 um), 500 m before 550 m (50 um).
    const auto name = [](CableGrade one, CableGrade other) {
        const Way way(graded(types::om3(), one), graded(types::om3(), other));
        const auto wiring = graph::wire(way.b.design);
        return analysis::fibre_of(wiring, graph::find_runs(wiring).list.at(0))->name;
    };
    EXPECT_EQ(name(CableGrade::om1, CableGrade::old_62_5), "62.5 um, 160 MHz.km");
    EXPECT_EQ(name(CableGrade::old_50, CableGrade::om2), "50 um, 400 MHz.km");
    EXPECT_EQ(name(CableGrade::old_50, CableGrade::om1), "OM1");
    EXPECT_EQ(analysis::fibre_grade(CableGrade::old_50), standards::FibreGrade::old_50);
}

TEST(CableGrades, mixedCopperAndFibreIsNeither) {
    const Way way(types::cat6a(), types::om3());
    const auto wiring = graph::wire(way.b.design);
    const auto runs = graph::find_runs(wiring);
    EXPECT_FALSE(analysis::copper_of(wiring, runs.list.at(0)));
    EXPECT_FALSE(analysis::fibre_of(wiring, runs.list.at(0)));
}

}  // namespace streamwright::test::cable_grades_test
