// The command line: verbs on design files, without a display. Data goes to stdout, messages to stderr.
// Exit codes: 0 done, 1 done but with errors found, 2 cannot (unreadable, wrong use).
#pragma once

#include <string_view>

namespace streamwright::app {

/// Whether a first argument is a verb or a global option of the command line, rather than a file to open.
bool is_command(std::string_view word);

int run_command(int argc, char** argv);

}  // namespace streamwright::app
