// The mechanism of migrations, with steps made for the test: there is no older version yet.
#include "core/io/design_json.h"
#include "core/io/detail/parsed_file.h"
#include "core/io/migrations/all_migrations.h"

#include <gtest/gtest.h>

#include <array>

namespace {

using namespace streamwright;
using namespace streamwright::io;

base::Result<void> rename_halls(ParsedFile& file) {
    file.top["rooms"] = file.top["halls"];
    file.top.erase("halls");
    return {};
}

base::Result<void> refuse_always(ParsedFile&) { return base::Error{"no", {}}; }

TEST(Migrations, RunStepByStepUpToTheVersionAsked) {
    const std::array<Migration, 2> steps{{{2, "add_mark",
                                           [](ParsedFile& file) -> base::Result<void> {
                                               file.top["mark"] = file.top["rooms"].size();
                                               return {};
                                           }},
                                          {1, "rename_halls", rename_halls}}};
    ParsedFile file{Json{{"halls", {1, 2}}}, 1};
    ASSERT_TRUE(migrate(file, 3, steps).ok());
    EXPECT_EQ(file.version, 3);
    EXPECT_EQ(file.top["version"], 3);
    EXPECT_EQ(file.top["mark"], 2);
    EXPECT_FALSE(file.top.contains("halls"));
}

TEST(Migrations, StopAtARefusalAndAtAMissingStep) {
    const std::array<Migration, 1> refusing{{{1, "refuse", refuse_always}}};
    ParsedFile file;
    EXPECT_FALSE(migrate(file, 2, refusing).ok());
    EXPECT_EQ(file.version, 1);
    EXPECT_FALSE(migrate(file, 2, {}).ok());
    EXPECT_TRUE(migrate(file, 1, {}).ok());
}

TEST(Migrations, LeadFromEveryVersionToThePresentOne) {
    for (int from = 1; from < format_version; ++from) {
        int found = 0;
        for (const auto& step : all_migrations()) found += step.from == from ? 1 : 0;
        EXPECT_EQ(found, 1) << from;
    }
    EXPECT_EQ(all_migrations().size(), static_cast<std::size_t>(format_version - 1));
}

}  // namespace
