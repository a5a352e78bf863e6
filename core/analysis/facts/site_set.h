// Sets of places where inputs are, as bits: what the needs of streams are made of.
#pragma once

#include <bit>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace streamwright::analysis {

class SiteSet {
public:
    explicit SiteSet(int sites = 0) : words_((static_cast<std::size_t>(sites) + 63) / 64, 0) {}

    void add(int site) { words_[word(site)] |= bit(site); }
    bool has(int site) const { return (words_[word(site)] & bit(site)) != 0; }
    bool empty() const {
        for (const auto each : words_)
            if (each != 0) return false;
        return true;
    }
    bool meets(const SiteSet& other) const {
        for (std::size_t i = 0; i < words_.size(); ++i)
            if ((words_[i] & other.words_[i]) != 0) return true;
        return false;
    }
    bool within(const SiteSet& other) const {
        for (std::size_t i = 0; i < words_.size(); ++i)
            if ((words_[i] & ~other.words_[i]) != 0) return false;
        return true;
    }
    SiteSet& keep(const SiteSet& other) {
        for (std::size_t i = 0; i < words_.size(); ++i) words_[i] &= other.words_[i];
        return *this;
    }
    SiteSet& drop(const SiteSet& other) {
        for (std::size_t i = 0; i < words_.size(); ++i) words_[i] &= ~other.words_[i];
        return *this;
    }
    SiteSet& join(const SiteSet& other) {
        for (std::size_t i = 0; i < words_.size(); ++i) words_[i] |= other.words_[i];
        return *this;
    }
    template <class F>
    void each(F&& f) const {
        for (std::size_t i = 0; i < words_.size(); ++i)
            for (auto rest = words_[i]; rest != 0; rest &= rest - 1)
                f(static_cast<int>(i * 64) + std::countr_zero(rest));
    }
    friend bool operator==(const SiteSet&, const SiteSet&) = default;

private:
    static std::size_t word(int site) { return static_cast<std::size_t>(site) / 64; }
    static std::uint64_t bit(int site) { return std::uint64_t{1} << (static_cast<unsigned>(site) % 64); }
    std::vector<std::uint64_t> words_;
};

}  // namespace streamwright::analysis
