#pragma once
// The one door to gzip (RFC 1952).

#include <memory>

#include "wattweek/logs/log.hpp"

namespace wattweek::logs {

/// Whether a file that begins with these bytes is compressed by gzip.
bool is_gzip(std::span<const char> beginning);

/// What `packed` holds, unpacked; several members one after the other are one. A file that ends
/// early or is damaged ends there with a `failure`.
std::unique_ptr<ByteSource> gunzip(std::unique_ptr<ByteSource> packed);

}  // namespace wattweek::logs
