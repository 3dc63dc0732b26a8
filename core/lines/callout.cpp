#include "core/lines/callout.h"

#include "core/lines/callout_reader.h"

namespace inchwright {

Result<Callout> readCallout(std::string_view text, FeatureKind kind, Unit unit) {
  return CalloutReader(text, kind, unit).read();
}

}  // namespace inchwright
