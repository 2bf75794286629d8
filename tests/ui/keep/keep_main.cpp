#include <string_view>

#include "support/application_for_tests.h"
#include "ui/keep/child_window.h"

int main(int argc, char** argv) {
  burrow::ApplicationForTests::without_a_display();
  burrow::ApplicationForTests app(argc, argv, QStringLiteral("en"));
  if (argc == 6 && std::string_view(argv[1]) == burrow::test::child_word)
    return burrow::test::run_child_window(argv + 2);
  return app.run_tests(argc, argv);
}
