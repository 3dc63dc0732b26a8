#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "core/document/document.h"
#include "core/part/check.h"

// Any bytes are read or refused with a reason; what was read is sound, writes, and reads back
// equal.

namespace {

using namespace inchwright;

void require(bool holds) {
  if (!holds) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const Result<Job> job = readDocument({reinterpret_cast<const char*>(data), size});
  if (!job) {
    require(!job.error().text.empty());
    require(job.error().code == ErrorCode::badDocument ||
            job.error().code == ErrorCode::newerFormat || job.error().code == ErrorCode::tooLarge);
    return 0;
  }
  require(checkJob(*job).ok());
  const std::string written = writeDocument(*job);
  const Result<Job> back = readDocument(written);
  require(back.ok());
  require(*back == *job);
  require(writeDocument(*back) == written);
  return 0;
}
