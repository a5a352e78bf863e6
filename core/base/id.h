// Strong identifiers of design rows: 60 random bits, printed as 12 base-32 characters.
// There is no null id: where an id may be missing, std::optional says so.
#pragma once

#include <compare>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

namespace streamwright::base {

/// Writes 60 bits as 12 characters of the alphabet 0-9 a-z without i, l, o, u.
std::string print_id_bits(std::uint64_t bits);

/// Reads what print_id_bits wrote; nothing for any other text.
std::optional<std::uint64_t> parse_id_bits(std::string_view text);

template <class Tag>
class Id {
public:
    static constexpr std::uint64_t mask = (std::uint64_t{1} << 60) - 1;

    explicit constexpr Id(std::uint64_t bits) : bits_(bits & mask) {}

    static std::optional<Id> parse(std::string_view text) {
        const auto bits = parse_id_bits(text);
        return bits ? std::optional<Id>(Id(*bits)) : std::nullopt;
    }

    std::string text() const { return print_id_bits(bits_); }
    constexpr std::uint64_t bits() const { return bits_; }
    friend constexpr auto operator<=>(Id, Id) = default;

private:
    std::uint64_t bits_;
};

/// Makes fresh ids. Tests give a seed so that a design is built the same each time.
class IdSource {
public:
    explicit IdSource(std::uint64_t seed) : state_(seed) {}
    static IdSource from_entropy();

    std::uint64_t next_bits();

    template <class AnyId>
    AnyId next() {
        return AnyId(next_bits());
    }

private:
    std::uint64_t state_;
};

/// A strong text key, such as the key of a device type or of a port within its type.
template <class Tag>
struct Key {
    std::string text;
    friend auto operator<=>(const Key&, const Key&) = default;
};

}  // namespace streamwright::base

template <class Tag>
struct std::hash<streamwright::base::Id<Tag>> {
    std::size_t operator()(streamwright::base::Id<Tag> id) const noexcept {
        return std::hash<std::uint64_t>{}(id.bits());
    }
};

template <class Tag>
struct std::hash<streamwright::base::Key<Tag>> {
    std::size_t operator()(const streamwright::base::Key<Tag>& key) const noexcept {
        return std::hash<std::string>{}(key.text);
    }
};
