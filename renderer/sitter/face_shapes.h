// A face and its expression in the shapes of the head package.
#pragma once

#include "setup/face_settings.h"
#include "setup/head_file.h"

namespace understudy {

// The face's age, sex and ancestry have to be there. The package measures its people at 10, 25 and 90 years and gives
// the shapes of each ancestry and sex at those ages; between them the shares run linearly.
ShapeAmounts face_shapes(const FaceSettings& face);

// Muscles move a face of each ancestry a little differently.
ShapeAmounts expression_shapes(const ExpressionSettings& expression, const Ancestry& ancestry);

}  // namespace understudy
