// The tables `face` and `expression`, in a head's own file and in a scene's [sitter].
#pragma once

#include "setup/face_settings.h"
#include "setup/table_reader.h"

namespace understudy {

FaceSettings read_face(TableReader table);
ExpressionSettings read_expression(TableReader table);

}  // namespace understudy
