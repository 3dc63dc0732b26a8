#pragma once

#include <string>
#include <string_view>

#include "core/document/object_reader.h"
#include "core/document/object_writer.h"
#include "core/part/shop_owned.h"

namespace inchwright {

/// The members of an object `shop`. What `checkShop` looks at is not checked here.
Shop readShopObject(ObjectReader& object, Trouble& trouble);
/// One member a line; the brace itself stands `indent` blanks in.
void writeShopObject(std::string& out, const Shop& shop, int indent);

/// The same as a JSON text of its own, as the user's settings keep it for all jobs.
///
///     {"drills": ["number"], "reamers": []}
///
/// Errors: `badDocument` with a JSON pointer, as for a document.
Result<Shop> readShop(std::string_view json);
std::string writeShop(const Shop& shop);

}  // namespace inchwright
