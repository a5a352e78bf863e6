// Chains of numbers by what they are about; number_chains puts them together.
#pragma once

#include "core/analysis/number_chains.h"

namespace streamwright::analysis {

void add_link_chains(const Facts& facts, int cable, std::vector<NumberChain>& out);
void add_stream_chains(const Facts& facts, int stream, std::vector<NumberChain>& out);
void add_picture_chains(const Facts& facts, graph::PortAt output, std::vector<NumberChain>& out);
void add_delay_chains(const Facts& facts, int decoder, std::vector<NumberChain>& out);
void add_power_chains(const Facts& facts, int device, std::vector<NumberChain>& out);

/// Adds a line to the chain.
inline void tell(NumberChain& chain, std::string pattern, std::vector<base::Value> values, base::Value figure,
                 bool sum = false, bool over = false) {
    chain.lines.push_back({std::move(pattern), std::move(values), std::move(figure), sum, over});
}
inline void keep(NumberChain chain, std::vector<NumberChain>& out) {
    if (!chain.lines.empty()) out.push_back(std::move(chain));
}

}  // namespace streamwright::analysis
