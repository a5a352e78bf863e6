// The published schema against saved designs, by python3-jsonschema: they pass, every field written is named in the
// schema, and files that the program refuses for their form are refused by the schema too.
#include "core/io/design_json.h"
#include "tests/io/sample_design.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <string>
#include <vector>

namespace {

using namespace streamwright;

// One process for all files: starting it costs more than the checks. Prints what it finds against the expectation.
const std::string checker = R"(
import json, sys, jsonschema
schema = json.load(open(sys.argv[1]))
jsonschema.Draft7Validator.check_schema(schema)
def closed(node):
    if isinstance(node, dict):
        result = {key: closed(value) for key, value in node.items()}
        if isinstance(node.get('properties'), dict):
            result['additionalProperties'] = False
        return result
    return [closed(value) for value in node] if isinstance(node, list) else node
strict = jsonschema.Draft7Validator(closed(schema))
usual = jsonschema.Draft7Validator(schema)
wrong = 0
for path in sys.argv[2:]:
    kind = path.rsplit('.', 1)[1]
    errors = list((strict if kind == 'strict' else usual).iter_errors(json.load(open(path))))
    if (kind == 'bad') != bool(errors):
        wrong += 1
        print(path, 'passes' if kind == 'bad' else [(list(e.path), e.message[:200]) for e in errors[:3]])
sys.exit(wrong)
)";

/// What is expected of a text: "strict" (passes, and the schema names every field), "good" or "bad".
struct SchemaCase {
    std::string text, kind;
};

int disagreements(const std::vector<SchemaCase>& cases) {
    test::TempFolder folder;
    std::ofstream(folder / "check.py") << checker;
    auto command = "python3 '" + (folder / "check.py").string() +
                   "' '" STREAMWRIGHT_SOURCE_DIR "/resources/schema/streamwright-1.schema.json'";
    for (std::size_t i = 0; i < cases.size(); ++i) {
        const auto path = folder.path() / (std::to_string(i) + '.' + cases[i].kind);
        std::ofstream(path) << cases[i].text;
        command += " '" + path.string() + '\'';
    }
    return std::system(command.c_str());
}

TEST(Schema, AgreesWithTheProgram) {
    if (std::system("python3 -c 'import jsonschema' 2>/dev/null") != 0)
        GTEST_SKIP() << "python3-jsonschema is not installed";
    std::vector<SchemaCase> cases{{io::write_design(test::full_design()), "strict"},
                                  {io::write_design(test::random_design(21, 250)), "strict"},
                                  {io::write_design({}), "strict"},
                                  {"{\"format\":\"streamwright\",\"version\":1,\"novel\":1,"
                                   "\"rooms\":[{\"id\":\"000000000001\",\"x\":2}]}",
                                   "good"}};
    for (const std::string bad :
         {"{\"format\":\"other\",\"version\":1}", "{\"format\":\"streamwright\"}", "[]",
          "{\"format\":\"streamwright\",\"version\":1,\"rooms\":[{\"name\":\"x\"}]}",
          "{\"format\":\"streamwright\",\"version\":1,\"vlans\":[{\"id\":\"000000000001\",\"vid\":4095}]}",
          "{\"format\":\"streamwright\",\"version\":1,\"rooms\":[{\"id\":\"00000000000i\"}]}",
          "{\"format\":\"streamwright\",\"version\":1,\"settings\":[{},{}]}"})
        cases.push_back({bad, "bad"});
    for (const auto& each : cases) EXPECT_EQ(io::read_design(each.text, "f").ok(), each.kind != "bad") << each.text;
    EXPECT_EQ(disagreements(cases), 0);
}

}  // namespace
