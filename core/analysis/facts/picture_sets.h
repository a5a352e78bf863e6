// What ports, links, cables, codecs and settings take of a design's picture formats, each asked once and then known by
// number; and tables that say what is left of each format at the end of a way.
#pragma once

#include "core/analysis/facts/format_space.h"
#include "core/graph/wiring.h"

#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

namespace streamwright::analysis {

/// Every raster and rate that the types in use and the ports' settings name.
FormatSpace formats_named(const graph::Wiring& wiring);

/// Number of a set, and of a table of what comes out.
using SetNo = int;
using TableNo = int;

/// What links carry, by name: costly to work out, and the same for every design that names the same rasters.
using LinkSets = std::map<std::string, FormatSet>;

class PictureSets {
public:
    /// The links known are of this very space.
    explicit PictureSets(FormatSpace space, LinkSets known = {});
    LinkSets links() const;  // those asked for

    const FormatSpace& space() const { return space_; }
    const FormatSet& set(SetNo number) const { return sets_[static_cast<std::size_t>(number)]; }

    SetNo all() const { return 0; }
    SetNo number(FormatSet set);
    SetNo both(SetNo one, SetNo other);

    /// What the port states; all where it states nothing.
    SetNo stated_by(const catalogue::PortType& port);
    /// What the port states and its link carries.
    SetNo of_port(const catalogue::PortType& port);
    /// What the link of that name carries; all where the name says nothing.
    SetNo of_link(const std::string& standard);
    /// What is no larger, no faster, no fuller, no deeper and of no other range.
    SetNo up_to(const standards::VideoFormat& format);
    SetNo only(const standards::VideoFormat& format);
    /// What an encoder of the type takes in.
    SetNo encoded(const catalogue::Codec& codec);

    /// A table names for each format that enters the way what is left of it at the end; -1: no picture.
    const std::vector<int>& table(TableNo number) const { return tables_[static_cast<std::size_t>(number)]; }
    /// All formats of the set, as they are.
    TableNo as_is(SetNo set);
    /// The way begins with what lets only the set through.
    TableNo through(SetNo set, TableNo way);
    /// The way begins with this encoder and decoder: the raster stays unless the decoder scales, the colour form is
    /// cut to what both codecs carry and then made into whatever serves best behind.
    TableNo coded(const catalogue::Codec& encoder, const catalogue::Codec& decoder, TableNo way);

    /// What enters the table's way and comes out; without_loss: an HDR picture comes out as one.
    SetNo accepted(TableNo table, bool without_loss = false);
    struct Best {
        int left = -1;     // what is left at the end
        int entering = 0;  // the best format that gives it
    };
    /// The most that can come out of the way; left -1: nothing can.
    const Best& best(TableNo table);

private:
    TableNo table_number(std::vector<int> table);

    FormatSpace space_;
    LinkSets known_;
    std::vector<FormatSet> sets_;
    std::vector<std::vector<int>> tables_;
    std::map<FormatSet, SetNo> set_numbers_;
    std::map<std::vector<int>, TableNo> table_numbers_;
    std::map<std::pair<SetNo, SetNo>, SetNo> both_;
    std::map<std::pair<SetNo, TableNo>, TableNo> through_;
    std::map<std::tuple<const void*, const void*, TableNo>, TableNo> coded_;
    std::map<std::pair<TableNo, bool>, SetNo> accepted_;
    std::map<const void*, SetNo> of_port_, encoded_;
    std::map<std::string, SetNo> of_link_;
    std::map<SetNo, TableNo> as_is_;
    std::map<TableNo, Best> best_;
};

/// The formats into which the encoder and decoder may make this one; empty: it is not encoded.
FormatSet after_codec(const FormatSpace& space, const catalogue::Codec& encoder, const catalogue::Codec& decoder,
                      int entering);

}  // namespace streamwright::analysis
