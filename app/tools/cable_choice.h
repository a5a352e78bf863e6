// Which cable type a fresh lead takes: the last one used that fits both ends, else the first fitting one.
#pragma once

#include "app/document/library.h"
#include "core/model/design.h"

#include <vector>

namespace streamwright::app {

class CableChoice {
public:
    using Type = std::shared_ptr<const catalogue::CableType>;

    /// Those that both ends take, best first: used lately, used in the design, then as the catalogue lists them with
    /// installed cable before leads between network ports.
    std::vector<Type> fitting(const Library& library, const model::Design& design, const model::PortRef& a,
                              const model::PortRef& b) const;
    void used(const Type& type);

private:
    std::vector<catalogue::CableTypeKey> recent_;  // last first
};

}  // namespace streamwright::app
