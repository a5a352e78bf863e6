#include "app/cli/command_line.h"

#include "app/cli/commands.h"
#include "core/base/error.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <array>
#include <iostream>

namespace streamwright::app {

namespace command_line_detail {

/// What the full command line will have, but this version has not: refused in words instead of "unknown option".
struct Later {
    std::string_view verb, option;
};
constexpr std::array later_options{
    Later{"deliver", "--copy"}, Later{"deliver", "--language"}, Later{"size", ""}, Later{"compare", ""},
    Later{"merge", ""},
};

/// The one sentence for what comes later; empty if everything asked for is here.
std::string not_yet(int argc, char** argv) {
    const std::string_view verb = argv[1];
    for (const auto& later : later_options) {
        if (verb != later.verb) continue;
        if (later.option.empty())
            return "'" + std::string(verb) + "' is not part of this version; see 'streamwright --help' for what is.";
        for (int i = 2; i < argc; ++i) {
            const std::string_view word = argv[i];
            if (word == later.option || word.starts_with(std::string(later.option) + "="))
                return "'" + std::string(verb) + " " + std::string(later.option) +
                       "' is not part of this version; see 'streamwright " + std::string(verb) +
                       " --help' for what is.";
        }
    }
    return {};
}

std::string about(std::string_view verb) {
    for (const auto& each : all_commands())
        if (each.name == verb) return std::string(each.what);
    return {};
}

void add_check(CLI::App& app, CheckOptions& options, int& exit_code, Streams streams) {
    auto* verb = app.add_subcommand("check", about("check"));
    auto* file = verb->add_option("FILE", options.file, "Design file");
    auto* json = verb->add_flag("--json", options.json, "Print findings, or the judgement of types, as JSON");
    auto* rules = verb->add_flag("--rules", options.rules,
                                 "Print every rule: what it means, how it is measured, remedy, source; needs no file");
    auto* explain =
        verb->add_option(
                "--explain", options.explain,
                "Print one rule; with a file what it finds there, or the numbers behind a tag, port or finding")
            ->type_name("ID");
    auto* types =
        verb->add_option("--types", options.types, "Judge the device and cable types in a folder; needs no file")
            ->type_name("FOLDER");
    for (auto* alone : {rules, types}) file->excludes(alone);
    rules->excludes(json)->excludes(explain)->excludes(types);
    explain->excludes(json)->excludes(types);
    verb->callback([&options, &exit_code, streams] { exit_code = check_command(options, streams); });
}

void add_loads(CLI::App& app, LoadsOptions& options, int& exit_code, Streams streams) {
    auto* verb = app.add_subcommand("loads", about("loads"));
    verb->add_option("FILE", options.file, "Design file")->required();
    verb->add_flag("--json", options.json, "Print as JSON");
    auto* preset = verb->add_option("--preset", options.preset, "Preset by name; without it the first one");
    verb->add_flag("--worst", options.worst, "Add the terms of each worst case and a routing that attains it")
        ->excludes(preset);
    verb->add_option("--without", options.without,
                     "After the failure of this cable, device or duct, by id or tag; may be given several times")
        ->type_name("ID")
        ->expected(1)
        ->take_all();
    verb->callback([&options, &exit_code, streams] { exit_code = loads_command(options, streams); });
}

void add_deliver(CLI::App& app, DeliverOptions& options, int& exit_code, Streams streams) {
    auto* verb = app.add_subcommand("deliver", about("deliver"));
    verb->add_option("FILE", options.file, "Design file");
    auto* to = verb->add_option("--to", options.to, "Folder to write to; made if missing");
    verb->add_option("--only", options.only, "Only this document; may be given several times")->type_name("DOCUMENT");
    verb->add_option("--format", options.formats, "Only this format: csv, pdf, svg, xlsx; may be given several times");
    verb->add_flag("--list", options.list, "Name the documents and formats; needs no file")->excludes(to);
    verb->callback([&options, &exit_code, streams] { exit_code = deliver_command(options, streams); });
}

}  // namespace command_line_detail

bool is_command(std::string_view word) {
    if (word == "--help" || word == "-h" || word == "--version") return true;
    const auto named = [&](const auto& each) { return each.name == word; };
    if (std::ranges::any_of(all_commands(), named)) return true;
    return std::ranges::any_of(command_line_detail::later_options, [&](const auto& each) { return each.verb == word; });
}

int run_command(int argc, char** argv) {
    using namespace command_line_detail;
    const Streams streams{std::cout, std::cerr};
    if (const auto sentence = not_yet(argc, argv); !sentence.empty()) {
        streams.err << sentence << '\n';
        return exit_cannot;
    }
    CLI::App app{
        "Streamwright: design AV-over-IP rooms and prove on the desk that they will work on site.\n"
        "Without a verb it opens the canvas: streamwright [FILE]",
        "streamwright"};
    app.set_version_flag("--version", "streamwright 0.1.0");
    app.require_subcommand(1);
    int exit_code = exit_done;
    CheckOptions check;
    LoadsOptions loads;
    DeliverOptions deliver;
    add_check(app, check, exit_code, streams);
    add_deliver(app, deliver, exit_code, streams);
    add_loads(app, loads, exit_code, streams);
    try {
        app.parse(argc, argv);
    } catch (const CLI::Success& success) {
        return app.exit(success, streams.out, streams.err);
    } catch (const CLI::ParseError& wrong) {
        streams.err << base::printable(wrong.what()) << "; see 'streamwright --help'.\n";
        return exit_cannot;
    }
    return exit_code;
}

}  // namespace streamwright::app
