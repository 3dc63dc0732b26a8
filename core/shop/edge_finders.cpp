#include "core/shop/edge_finders.h"

#include "core/shop/sizes.h"

namespace inchwright {

const std::vector<EdgeFinder>& edgeFinders() {
  static const std::vector<EdgeFinder> all{
      {"edge finder, 0.200 tip", tenThousandths(2000), "FROM MEMORY (customary US)"},
      {"edge finder, 0.500 body end", tenThousandths(5000), "FROM MEMORY (customary US)"},
      {"wiggler ball", tenThousandths(2500), "FROM MEMORY"},
      {"wiggler disc", tenThousandths(1000), "FROM MEMORY"},
      {"wiggler pointer", Length(), "FROM MEMORY (point: no offset)"},
      {"edge finder, 10 mm", microns(10'000), "S19 (10 mm; about 1000 rpm; offset = tip radius)"},
      {"edge finder, 4 mm tip", microns(4000), "FROM MEMORY (customary metric)"},
      {"edge finder, 6 mm tip", microns(6000), "FROM MEMORY (customary metric)"},
  };
  return all;
}

const EdgeFinder& customaryFinder(Unit unit) {
  const Length wanted = unit == Unit::inch ? tenThousandths(2000) : microns(10'000);
  for (const EdgeFinder& finder : edgeFinders()) {
    if (finder.contact == wanted) return finder;
  }
  return edgeFinders().front();
}

}  // namespace inchwright
