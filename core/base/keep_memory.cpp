#include "core/base/keep_memory.h"

#include <cstdlib>  // says which C library this is

#if defined(__GLIBC__)
#include <malloc.h>
#endif

namespace streamwright::base {

void keep_freed_memory() {
#if defined(__GLIBC__)
    constexpr int mebibyte = 1024 * 1024;
    mallopt(M_MMAP_THRESHOLD, 32 * mebibyte);  // the most that glibc takes
    mallopt(M_TRIM_THRESHOLD, 512 * mebibyte);
    mallopt(M_TOP_PAD, 16 * mebibyte);
#endif
}

}  // namespace streamwright::base
