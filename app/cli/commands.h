// What each verb needs, parsed; and the table of verbs.
#pragma once

#include <filesystem>
#include <iosfwd>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace CLI {
class App;
}

namespace streamwright::app {

inline constexpr int exit_done = 0;
inline constexpr int exit_errors_found = 1;
inline constexpr int exit_cannot = 2;

/// Where a verb writes.
struct Streams {
    std::ostream& out;
    std::ostream& err;
};

struct CheckOptions {
    std::filesystem::path file;
    bool json = false;
    bool rules = false;
    std::optional<std::string> explain;          // a rule
    std::optional<std::filesystem::path> types;  // a folder
};

struct LoadsOptions {
    std::filesystem::path file;
    bool json = false;
    bool worst = false;
    std::optional<std::string> preset;
    std::vector<std::string> without;  // cables, devices and ducts that have failed
};

struct DeliverOptions {
    std::filesystem::path file;
    std::filesystem::path to;
    std::vector<std::string> only;
    std::vector<std::string> formats;
    bool list = false;
};

int check_command(const CheckOptions& options, Streams streams);
int loads_command(const LoadsOptions& options, Streams streams);
int deliver_command(const DeliverOptions& options, Streams streams);

struct Verb {
    std::string_view name;
    std::string_view what;
};

/// By name.
std::span<const Verb> all_commands();

}  // namespace streamwright::app
