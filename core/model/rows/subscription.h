// In one preset, one decoder input shows one stream.
#pragma once

#include "core/model/ids.h"
#include "core/model/rows/unknown_keys.h"

namespace streamwright::model {

struct Subscription {
    SubscriptionId id;
    PresetId preset;
    StreamId stream;
    DeviceId decoder;
    InputKey input;
    UnknownKeys unknown;

    using Key = SubscriptionId;
    static Subscription blank(Key key) { return {key, PresetId(0), StreamId(0), DeviceId(0), {}, {}}; }
    Key key() const { return id; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("id", s.id);
        v("preset", s.preset);
        v("stream", s.stream);
        v("decoder", s.decoder);
        v("input", s.input);
    }
    friend bool operator==(const Subscription&, const Subscription&) = default;
};

}  // namespace streamwright::model
