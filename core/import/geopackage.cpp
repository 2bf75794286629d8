#include "burrow/import/geopackage.h"

#include "burrow/language/say.h"
#include "readers/readers.h"

namespace burrow {

Result<std::string> geopackage(const std::string& features_json, const Georeference& georeference) {
  if (georeference.crs.empty())
    return fail(translated("georeference"), translated("no coordinate system"),
                translated("a system in metres, for example \"EPSG:25832\""));
  const Result<const Readers*> readers = load_readers();
  if (!readers) return tl::unexpected(readers.error());
  return (*readers)->geopackage(features_json, georeference.crs);
}

}  // namespace burrow
