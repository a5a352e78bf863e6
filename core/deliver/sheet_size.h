// Paper sizes, for those who deliver without drawing.
#pragma once

#include "core/deliver/drawing/sheet_size.h"
