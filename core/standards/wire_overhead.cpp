#include "core/standards/wire_overhead.h"

namespace streamwright::standards {

Citation wire_overhead_source() { return {"IEEE", "802.3", "clauses 3 and 4, RFC 791, RFC 768, RFC 3550"}; }

}  // namespace streamwright::standards
