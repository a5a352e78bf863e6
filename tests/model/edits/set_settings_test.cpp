#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using test::done, test::refused;

TEST(SetSettings, ReplacesTheOneRow) {
    Settings row;
    row.title = "Ferrow Quay";
    auto design = done(Design{}, SetSettings{row});
    EXPECT_EQ(design.settings().title, "Ferrow Quay");
    row.headroom_percent = 70;
    design = done(design, SetSettings{row});
    EXPECT_EQ(design.settings_table.size(), 1U);
    EXPECT_EQ(design.settings().headroom_percent, 70);
}

TEST(SetSettings, KeepsUnknownKeys) {
    Design design;
    Settings row;
    row.unknown["logo"] = "\"x\"";
    design.settings_table.put(row);
    EXPECT_EQ(done(design, SetSettings{{.title = "t"}}).settings().unknown.size(), 1U);
}

TEST(SetSettings, Refuses) {
    EXPECT_SAYS(refused(Design{}, SetSettings{{.query_interval_s = 0}}), "query interval in seconds must be from 1");
    EXPECT_SAYS(refused(Design{}, SetSettings{{.query_interval_s = 10, .query_response_s = 10}}), "shorter than");
    EXPECT_SAYS(refused(Design{}, SetSettings{{.robustness = 8}}), "robustness must be from 1 to 7");
    EXPECT_SAYS(refused(Design{}, SetSettings{{.headroom_percent = 0}}), "headroom");
    EXPECT_SAYS(refused(Design{}, SetSettings{{.usual_vlan = VlanId(3)}}), "names the VLAN");
}

}  // namespace
