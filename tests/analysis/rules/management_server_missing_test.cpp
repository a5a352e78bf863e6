#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::management_server_missing_test {

using testing::ElementsAre;
using testing::IsEmpty;

/// The clean design has two encoders and two decoders of one family; its decoders' type states the number.
CleanDesign stating(int most) {
    auto c = clean_design();
    auto type = types::make_decoder();
    type.codec->most_without_server = most;
    c.b.embed(std::make_shared<const catalogue::DeviceType>(type));
    return c;
}

TEST(ManagementServerMissing, firesAboveTheNumberOfTheType) {
    EXPECT_THAT(rules_found(stating(4).design()), IsEmpty()) << "four endpoints, four allowed";
    const auto c = stating(3);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("management-server-missing"));
    const auto finding = finding_of(c.design(), "management-server-missing");
    EXPECT_EQ(finding.measured, base::Value(std::int64_t{4}));
    EXPECT_EQ(finding.limit, base::Value(std::int64_t{3}));
}

TEST(ManagementServerMissing, isSilentWithAServerAndWhereTypesAreSilent) {
    auto c = stating(3);
    catalogue::DeviceType server;
    server.key = {"server"}, server.name = "Server", server.maker = "Generic";
    server.kind = catalogue::DeviceKind::management_server;
    c.b.device(server, "MS-1");
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
    EXPECT_THAT(rules_found(clean_design().design()), IsEmpty());
}

}  // namespace streamwright::test::management_server_missing_test
