#pragma once
/// What was learnt, in words.

#include <string>
#include <vector>

#include "burrow/base/quantity_text.h"
#include "burrow/day/learn.h"

namespace burrow {

struct LearnRow {
  std::string soil, what;  ///< name of the class; "steering constant"
  std::string learnt;      ///< "0.052 (0.044 to 0.061)"
  std::string before;      ///< the default: "0.040"
  std::string from;        ///< "12 bores"
};
/// Three rows a soil class, a fourth where the ends of its bores are known.   Evidence: LearnText.*
std::vector<LearnRow> learn_rows(const LearnLibrary& library, const Tables& tables);

}  // namespace burrow
