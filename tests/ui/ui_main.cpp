#include "support/application_for_tests.h"

int main(int argc, char** argv) {
  burrow::ApplicationForTests::without_a_display();
  burrow::ApplicationForTests app(argc, argv, QStringLiteral(BURROW_TEST_LANGUAGE));
  return app.run_tests(argc, argv);
}
